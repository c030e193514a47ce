"""Engines as bodies that keep their heat."""

from __future__ import annotations

import math
from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import SIDES, minimal

from anchorwatt import catalogue, design
from anchorwatt.design.specification import Engine, Specification

ENGINE_ROOM = {"use": "machinery", "deck": "below", "floor_area": "5 m2", "sides": SIDES}
BLOCK = ("block_heat_capacity", "block_conductance", "block_temperature", "blower")


def specified(engine: str = "slow diesel 90 kW", **changes: Any) -> Specification:
    cabins = {**minimal()["cabins"], "engine room": ENGINE_ROOM}
    entry = minimal()["charging"]["engines"]["engine"]
    engines = {"engine": {**entry, "engine": engine, **changes}}
    return design.specify(design.parse(as_text(minimal(cabins=cabins, charging={"engines": engines}))))


def made(engine: str = "slow diesel 90 kW", **changes: Any) -> Engine:
    (one,) = specified(engine, **changes).engines
    return one


def test_an_engine_stands_in_no_compartment_unless_the_file_says_so() -> None:
    assert made().cabin == -1
    assert made(cabin="engine room").cabin == 2


def test_its_heat_is_on_the_list_of_estimates_only_where_it_warms_a_compartment() -> None:
    def told(**changes: Any) -> set[str]:
        return {one.key.rpartition(".")[2] for one in specified(**changes).estimates}.intersection(BLOCK)

    assert told() == set()
    assert told(cabin="engine room") == set(BLOCK)
    assert told(cabin="engine room", blower="80 L/s") == set(BLOCK) - {"blower"}


@pytest.mark.parametrize("engine", catalogue.names("engine"))
def test_an_engine_cools_over_hours_and_warms_its_compartment_by_hundreds_of_watts(engine: str) -> None:
    """200 to 500 W for 3 to 6 h after motoring, from memory, of the engines of such boats: 20 to 150 kW."""
    one = made(engine, cabin="engine room")
    hours = one.block_capacity / one.block_conductance / 3600.0
    assert 2.5 < hours < 8.0
    assert 100.0 < one.block_conductance * (one.block_temperature - 45.0) < 650.0


def test_a_blower_is_estimated_for_a_machinery_space_only() -> None:
    assert made(cabin="engine room").blower == 0.05
    assert made(cabin="saloon").blower == 0.0


def test_what_is_typed_is_taken() -> None:
    one = made(
        cabin="engine room", block_heat_capacity="400 kJ/K", block_conductance="9 W/K", block_temperature="85 °C"
    )
    assert (one.block_capacity, one.block_conductance, one.block_temperature) == (400e3, 9.0, 85.0)


def test_losses_go_where_the_file_says() -> None:
    base = minimal()
    ac = {
        "inverter": {**base["ac"]["inverter"], "cabin": "cabin"},
        "charger": {"unit": "charger 24 V 1.7 kW", "cabin": "saloon"},
        "transformer": {"unit": "isolation transformer 5 kVA", "cabin": "cabin"},
    }
    dc = {**base["dc"], "bank": {**base["dc"]["bank"], "cabin": "saloon"}}
    it = design.specify(design.parse(as_text(minimal(ac=ac, dc=dc))))
    assert it.charger is not None
    assert it.transformer is not None
    assert (it.inverter.cabin, it.charger.cabin, it.transformer.cabin, it.bank.cabin) == (1, 0, 1, 0)
    bare = design.specify(design.parse(as_text(minimal(ac={**ac, "transformer": "isolation transformer 5 kVA"}))))
    assert bare.transformer is not None
    assert (bare.transformer.cabin, bare.bank.cabin) == (-1, -1)
    assert math.isclose(bare.transformer.rated_power, it.transformer.rated_power)
