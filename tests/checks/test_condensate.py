"""Every rule about dew and mould: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Specification
from tests.checks.night import Case, as_it_is, cabins, finding, nobody, sure
from tests.simulation import boats


def dry(boat: Specification) -> Specification:
    """Nobody aboard and little dew outdoors."""
    return replace(nobody(boat), place=boats.place(replace(boats.DAY, dew_point=18.0)))


def cold_sea(boat: Specification) -> Specification:
    return replace(boat, place=replace(boat.place, sea_temperatures=(17.0,) * 12))


def tropical_barn(boat: Specification) -> Specification:
    """Plants of a hotel that dry a gale of outdoor air: hundreds of litres an hour."""
    handlers = tuple(boats.handler(f"handler {c}", c, 150e3) for c in range(2))
    plant = boats.plant(boats.circuit(300e3, 80e3), handlers)
    windy = tuple(replace(cabin, fresh_air=3.0) for cabin in boat.cabins)
    always = tuple(replace(period, set_points=(24.0, 24.0)) for period in boat.plan)
    power = replace(boats.bank(capacity=2e5), discharge_current=1e5)
    inverter = replace(boat.inverter, rated_power=200e3)
    return replace(boat, cabins=windy, plant=plant, plan=always, bank=power, inverter=inverter, transformer=None)


CASES = {
    "condensate-drains": Case(as_it_is, tropical_barn),
    "surfaces-dry": Case(dry, cold_sea),
    "surfaces-free-of-mould": Case(as_it_is, cold_sea),
}


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    assert sure(name, CASES[name].holds).verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    assert sure(name, CASES[name].fails).verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.condensate"} == {*CASES}


@pytest.mark.parametrize("name", ["surfaces-dry", "surfaces-free-of-mould"])
def test_lockers_that_are_never_cooled_are_left_alone(name: str) -> None:
    stowage = cabins(use="stowage")

    def stowed(boat: Specification) -> Specification:
        uncooled = tuple(replace(period, set_points=(float("nan"),) * 2) for period in boat.plan)
        return replace(stowage(boat), plan=uncooled)

    assert finding(name, stowed) is None


def test_dew_on_the_hull_is_told_with_its_temperature() -> None:
    found = sure("surfaces-dry", cold_sea)
    assert 17.0 < found.value < found.limit < 35.0
