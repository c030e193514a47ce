"""Single losses in closed form, against runs of the boat that lost the part, and by the laws that they must keep."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import pytest

from anchorwatt.design.specification import Specification
from anchorwatt.simulation.arrays import UNCOOLED
from anchorwatt.simulation.faults import without_string
from anchorwatt.simulation.forcing import Stretch, period_at
from anchorwatt.simulation.runs import LONGEST_HOLD, Simulation
from anchorwatt.sizing.redundancy import Loss, Redundancy, redundancy
from tests.checks.holds_and_fails.redundancy import charged, strings, with_engine_battery
from tests.simulation import boats

HUNGRY = replace(boats.boat(2), bank=replace(boats.bank(capacity=300.0), parallel=2))
"""A boat whose bank is small enough for every hold to end within two days."""


@cache
def found(boat: Specification) -> tuple[Simulation, Redundancy]:
    simulation = Simulation(boat)
    return simulation, redundancy(boat, simulation)


def loss(boat: Specification, key: str) -> Loss:
    (one,) = [one for one in found(boat)[1].losses if one.key == key]
    return one


def held(simulation: Simulation, **changes: object) -> float:
    """s until the reserve in a run of a boat that lost something before the night."""
    night = Stretch(period_at(simulation.specification, simulation.night_start))
    end = simulation.night_start + LONGEST_HOLD
    run = simulation.run("hold", simulation.night_start, end, simulation.before.end, held=night, **changes)  # type: ignore[arg-type]
    return float(run.summary.reserve_at[0])


def test_hours_with_a_string_lost_are_those_of_a_run_within_a_tenth() -> None:
    simulation, _ = found(HUNGRY)
    run = held(simulation, boat=without_string(simulation.boat, 2))
    assert loss(HUNGRY, "bank-string").hold == pytest.approx(run, rel=0.10)


def test_hours_without_the_plant_are_those_of_a_run_within_a_tenth() -> None:
    simulation, _ = found(HUNGRY)
    run = held(simulation, mode=UNCOOLED)
    assert not math.isnan(run)
    assert loss(HUNGRY, "condensing-unit").hold == pytest.approx(run, rel=0.10)


def test_the_sound_boat_holds_as_long_as_its_run() -> None:
    simulation, told = found(HUNGRY)
    assert told.sound.hold == pytest.approx(float(simulation.hold.summary.reserve_at[0]))


def test_the_sound_boat_has_all_its_cooling_and_charging() -> None:
    _, told = found(HUNGRY)
    assert (told.sound.cooling, told.sound.charging) == (1.0, 1.0)


def test_what_the_handlers_take_with_them_is_the_whole_cooling() -> None:
    _, told = found(HUNGRY)
    assert sum(1.0 - one.cooling for one in told.losses if one.key.startswith("handler")) == pytest.approx(1.0)


@pytest.mark.parametrize("boat", [HUNGRY, strings(1), charged(2, sun=True, dock=True)], ids=["two", "one", "charged"])
def test_no_loss_gives_more_than_the_sound_boat(boat: Specification) -> None:
    told = found(boat)[1]
    assert all(one.cooling <= told.sound.cooling and one.charging <= told.sound.charging for one in told.losses)


def test_keys_are_unlike() -> None:
    told = found(with_engine_battery(charged(2, sun=True, dock=True)))[1]
    assert len({one.key for one in told.losses}) == len(told.losses)


def test_the_only_string_takes_everything() -> None:
    one = loss(strings(1), "bank-string")
    assert (one.cooling, one.hold, one.charging, one.direct) == (0.0, 0.0, 0.0, "nothing")


def test_one_engine_of_one_leaves_no_way_home_by_engine() -> None:
    assert loss(charged(1), "engine-1").home == "no"


def test_one_engine_of_two_leaves_the_other() -> None:
    assert loss(charged(2), "engine-1").home == "on the others"


def test_one_alternator_of_two_alike_leaves_half() -> None:
    assert loss(charged(2), "alternator-1").charging == pytest.approx(0.5, rel=0.02)


def test_the_inverter_takes_all_cooling_on_the_bank() -> None:
    assert loss(HUNGRY, "inverter").cooling == 0.0


def test_one_of_two_inverters_that_carries_the_night_alone_stops_nothing() -> None:
    pair = boats.item("ac.inverter.unit", "inverter", "inverter", 2, 20.0, 1000.0, "EUR")
    assert loss(replace(HUNGRY, items=(pair,)), "inverter").cooling == 1.0


def test_one_of_two_inverters_too_small_for_the_night_stops_a_part_of_the_cooling() -> None:
    pair = boats.item("ac.inverter.unit", "inverter", "inverter", 2, 20.0, 1000.0, "EUR")
    peak = float(found(HUNGRY)[0].night.summary.peak_inverter_power[0])
    small = replace(HUNGRY, items=(pair,), inverter=replace(HUNGRY.inverter, rated_power=1.5 * peak))
    assert 0.0 < loss(small, "inverter").cooling < 1.0
