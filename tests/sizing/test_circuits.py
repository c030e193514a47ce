"""Circuits that follow from a boat."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace
from functools import cache

import pytest

from anchorwatt.design.specification import CircuitWish, EngineBattery, Point, Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.circuits import Circuit, circuits
from anchorwatt.sizing.conductors import ENGINE_SPACE
from anchorwatt.sizing.ends import Ends, along_axes
from tests.simulation import boats

WISH = CircuitWish("W1", math.nan, "", 0, math.nan, "", 0, math.nan)


def rich() -> Specification:
    """Two alternators, two strings, sun and an engine battery."""
    made = boats.boat(2)
    engine = replace(boats.engine((boats.alternator("port"), boats.alternator("starboard"))), cabin=1)
    battery = EngineBattery(replace(made.inverter, rated_power=500.0), 4.0, 1000.0, 2.0, 12.0)
    return replace(
        made, engines=(engine,), bank=replace(made.bank, parallel=2), engine_battery=battery, solar=boats.SUNNY
    )


@cache
def simulation() -> Simulation:
    return Simulation(rich())


def found(specification: Specification | None = None) -> tuple[Circuit, ...]:
    return circuits(specification or rich(), simulation())


def named(function: str, among: tuple[Circuit, ...] | None = None) -> Circuit:
    return next(one for one in among or found() if one.function == function)


def test_tags_are_given_once_and_in_order() -> None:
    assert [one.tag for one in found()] == [f"W{number}" for number in range(1, len(found()) + 1)]


@pytest.mark.parametrize(
    "function",
    [
        "bank string 1 of 2",
        "main feeder",
        "inverter supply",
        "port output",
        "starboard output",
        "charger output",
        "solar panels",
        "solar controller output",
        "DC-DC converter supply",
        "engine battery charge",
        "DC panel feeder",
        "shore inlet",
        "shore to transfer switch",
        "charger supply",
        "inverter output",
        "AC panel feeder",
        "cooling plant",
        "seawater pump",
        "battery monitor",
        "temperature of the bank",
        "bonding, DC negative",
    ],
)
def test_every_connection_is_there_once(function: str) -> None:
    assert Counter(one.function for one in found())[function] == 1


def test_every_load_and_every_handler_has_a_circuit() -> None:
    made = rich()
    functions = {one.function for one in found()}
    assert {load.name for load in made.loads} <= functions
    assert {f"fan, {handler.name}" for handler in made.plant.handlers} <= functions


def test_a_boat_without_shore_sun_and_engine_battery_has_fewer() -> None:
    bare = replace(rich(), shore=None, charger=None, solar=None, engine_battery=None)
    functions = {one.function for one in found(bare)}
    assert not functions & {"shore inlet", "charger output", "solar panels", "DC-DC converter supply"}
    assert "cooling plant" in functions


def test_the_inverter_is_wired_for_its_rating_at_the_lowest_voltage() -> None:
    made = rich()
    current = named("inverter supply").continuous
    assert current > made.inverter.rated_power / made.bank.nominal_voltage
    assert current < made.inverter.rated_power / (0.8 * made.bank.cut_off_voltage)


def test_an_alternator_is_wired_for_its_set_limit() -> None:
    one = named("port output")
    machine = rich().engines[0].alternators[0]
    assert (one.continuous, one.peak) == (machine.current_limit, machine.rated_current)


def test_strings_share_what_the_main_feeder_carries() -> None:
    strings = [one for one in found() if one.function.startswith("bank string")]
    main = named("main feeder")
    assert len(strings) == 2
    assert sum(one.continuous for one in strings) >= main.continuous
    assert all(one.continuous < main.continuous for one in strings)


def test_peaks_are_never_less_than_what_runs_for_long() -> None:
    assert all(one.peak >= one.continuous >= 0.0 for one in found())


def test_runs_that_touch_an_engine_space_are_hot() -> None:
    made = rich()
    ends = {one.tag: one for one in Ends(made).alternators}
    for one in found():
        if one.start in ends or one.end in ends:
            assert one.ambient >= ENGINE_SPACE


def test_a_length_follows_the_places_of_its_ends() -> None:
    made = rich()
    ends = Ends(made)
    one = named("main feeder")
    apart = along_axes(ends.bank_bus.position, ends.dc_bus.position)
    assert math.isclose(one.length, made.wiring.routing_factor * apart + made.wiring.slack)


def test_distances_go_along_the_axes() -> None:
    assert along_axes(Point(1.0, -2.0, 0.5), Point(4.0, 1.0, 0.0)) == 6.5


def test_a_typed_length_is_taken() -> None:
    made = rich()
    wish = replace(WISH, length=7.5, bundled=9, highest_drop=0.02)
    one = found(replace(made, wiring=replace(made.wiring, wishes=(wish,))))[0]
    assert (one.length, one.length_typed, one.bundled, one.highest_drop) == (7.5, True, 9, 0.02)


def test_direct_current_has_two_poles_and_alternating_an_earth_more() -> None:
    for one in found():
        assert one.cores == one.poles + (one.system == "ac")
        assert (one.frequency > 0.0) == (one.system == "ac")


def test_a_service_of_two_legs_has_three_poles() -> None:
    made = rich()
    assert made.shore is not None
    split = replace(made, shore=replace(made.shore, voltage=120.0, legs=2))
    assert [named("shore inlet", found(one)).poles for one in (made, split)] == [made.shore.legs + 1, 3]
