"""The week: its balances, why it fails, and the shortest engine time."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.design.specification import PlannedDay, Specification
from anchorwatt.simulation.forcing import DAY, week_timetable
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.week import (
    FINENESS,
    SLIDE,
    Week,
    alternator_power,
    planned_week,
    settled,
    shortest_engine_time,
    week_of,
)
from tests.simulation import boats

HOUR = 3600.0
EVENING = tuple(PlannedDay(False, 17 * HOUR, 2 * HOUR) for _ in range(7))


def boat(**changes: object) -> Specification:
    return boats.boat(2, **changes)


@cache
def simulated(name: str) -> tuple[Specification, Simulation]:
    made = {
        "plan": boat(),
        "sunny": boat(solar=boats.SUNNY, week=EVENING),
        "lying": boat(week=(PlannedDay(False, 8 * HOUR, 0.0),) * 7),
        "small": boat(bank=boats.bank(capacity=90.0)),
        "weak": boat(inverter=replace(boat().inverter, rated_power=250.0)),
        "sinking": boat(bank=boats.bank(capacity=6000.0), week=(PlannedDay(False, 8 * HOUR, 0.0),) * 7),
    }[name]
    return made, Simulation(made)


@cache
def week(name: str) -> Week:
    made, simulation = simulated(name)
    return planned_week(made, simulation)


@pytest.mark.parametrize("name", ["plan", "sunny", "lying", "small"])
def test_the_days_add_up_to_the_run(name: str) -> None:
    found, summary = week(name), week(name).run.summary
    assert len(found.days) == 7
    assert sum(day.alternator_energy for day in found.days) == pytest.approx(
        float(summary.alternator_energy[0]), rel=1e-6, abs=1.0
    )
    assert found.solar_energy == pytest.approx(float(summary.solar_energy[0]), rel=1e-9)
    assert found.lowest == pytest.approx(float(summary.lowest_charge[0]))
    assert found.lowest == min(day.lowest for day in found.days)
    assert found.charge_at_start == pytest.approx(simulated(name)[0].brief.charge_at_start)
    assert found.evenings[-1] == float(found.run.end.charge[0])


def test_alternators_are_what_the_buses_and_the_bank_took() -> None:
    run = week("plan").run
    assert float(alternator_power(run).sum()) * run.step == pytest.approx(
        float(run.summary.alternator_energy[0]), rel=1e-6
    )
    stopped = run.forcing.engine_speed[0, 0] == 0.0
    assert float(np.max(alternator_power(run)[stopped])) < 1e-6


def test_a_day_at_anchor_does_not_move_and_charges_for_as_long_as_it_says() -> None:
    for day in week("sunny").days:
        assert not day.passage
        assert day.engine_time == day.charging_time == 2 * HOUR
    for day in week("plan").days:
        assert day.passage
        assert (day.engine_time, day.charging_time) == (3 * HOUR, 0.0)


def test_a_week_without_charging_fails_at_the_reserve_and_names_the_hour() -> None:
    found = week("lying").failure
    assert found is not None
    assert found.cause == "reserve"
    run, reserve = week("lying").run, simulated("lying")[0].brief.reserve
    k = round((found.at - run.start) / run.step)
    assert run.series.charge[0, k] <= reserve + 1e-3
    assert run.series.charge[0, : k - 1].min() > reserve
    assert found.words.startswith(("night", "day"))
    assert "reserve" in found.words


def test_a_bank_that_starts_below_its_reserve_and_empties_is_cut_off() -> None:
    made, simulation = simulated("small")
    low = replace(made, brief=replace(made.brief, reserve=0.0))
    found = week_of(low, simulation.week_weather, Simulation(low).week()).failure
    assert found is not None
    assert found.cause == "cut off"


def test_an_inverter_too_small_for_the_plant_is_the_cause() -> None:
    found = week("weak").failure
    assert found is not None
    assert found.cause == "inverter"


def test_a_bank_that_sinks_slowly_fails_by_not_being_full() -> None:
    """A bank for weeks: never near its reserve, and emptier each evening."""
    found = week("sinking")
    assert found.lowest > simulated("sinking")[0].brief.reserve
    assert found.failure is not None
    assert found.failure.cause == "not full"
    assert found.evenings[-1] < found.evening_wanted


@pytest.mark.parametrize(
    ("evenings", "wanted"),
    [
        ((0.9, 0.8), 0.8),
        ((0.9, 0.8, 0.7), 0.8),
        ((0.9, 0.7, 0.6, 0.65, 0.5), 0.6),
        ((0.9, 0.7, 0.6, 0.65, 0.5, 0.4), 0.6),
    ],
)
def test_the_last_evening_is_held_against_the_first_that_are_the_weeks_own(
    evenings: tuple[float, ...], wanted: float
) -> None:
    assert settled(evenings) == wanted


def lived(name: str, start: float, time: float) -> Week:
    """A week at anchor with the engines on from an hour of the day."""
    made, simulation = simulated(name)
    days = (PlannedDay(False, start, time),) * 7
    timetable = week_timetable(made, simulation.night_start, days)
    begins = simulation.night_start
    run = simulation.run(
        "week", begins, begins + 7 * DAY, simulation.before.end, held=timetable, outside=simulation.week_outside
    )
    return week_of(made, simulation.week_weather, run)


def test_the_shortest_engine_time_keeps_it_going_and_less_does_not() -> None:
    made, simulation = simulated("sunny")
    found = shortest_engine_time(made, simulation)
    assert found.usual_start == 17 * HOUR
    assert 0.0 < found.time <= found.usual_time
    assert found.time <= found.longest
    assert found.time % FINENESS == 0.0
    assert found.week.failure is None
    assert found.week.lowest >= made.brief.reserve
    assert found.week.evenings[-1] >= settled(found.week.evenings) - SLIDE
    assert lived("sunny", found.start, found.time - FINENESS).failure is not None
    assert "with 5 min less" in found.binds


def test_no_hour_of_starting_that_was_tried_needs_less() -> None:
    made, simulation = simulated("sunny")
    found = shortest_engine_time(made, simulation)
    assert {found.start, found.usual_start} <= set(found.tried)
    for start in found.tried:
        assert lived("sunny", start, found.time - FINENESS).failure is not None


def test_the_usual_hour_is_that_of_the_simulations_own_week() -> None:
    made, simulation = simulated("sunny")
    found = shortest_engine_time(made, simulation)
    run = simulation.week(found.usual_time, at_anchor=True)
    assert week_of(made, simulation.week_weather, run).failure is None


def test_a_bank_that_cannot_hold_a_night_is_not_saved_by_any_engine() -> None:
    made, simulation = simulated("small")
    found = shortest_engine_time(made, simulation)
    assert math.isnan(found.time)
    assert found.week.failure is not None
    assert found.binds == found.week.failure.words


def test_without_alternators_none_suffices_and_it_says_so() -> None:
    made = boat(engines=(boats.engine(()),))
    found = shortest_engine_time(made, Simulation(made))
    assert math.isnan(found.time)
    assert "no alternator" in found.binds


def test_enough_sun_needs_no_engine() -> None:
    made = boat(solar=replace(boats.SUNNY, peak_power=6000.0))
    found = shortest_engine_time(made, Simulation(made))
    assert found.time == 0.0
    assert found.week.solar_share == 1.0


def test_more_engine_never_leaves_less_in_the_bank() -> None:
    _, simulation = simulated("sinking")
    left = [float(simulation.week(hours * HOUR, at_anchor=True).end.charge[0]) for hours in (0, 1, 2, 4)]
    assert left == sorted(left)
    assert left[-1] > left[0]


def test_days_last_from_night_to_night() -> None:
    starts = [day.start for day in week("plan").days]
    assert starts == [simulated("plan")[1].night_start + n * DAY for n in range(7)]
