"""An hour held and hot."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import pytest

from anchorwatt.design.specification import Doing, Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.charging_hour import HOT_SPACE, MOMENTS, ChargingHour, charging_hours
from tests.simulation import boats


def hot_boat() -> Specification:
    """A boat whose alternator stands in air so hot that its regulator must fold back."""
    machine = replace(boats.alternator(), frame_conductance=20.0)
    engine = replace(boats.engine((machine,)), air_temperature=55.0)
    return replace(boats.boat(1), engines=(engine,))


@cache
def hours() -> tuple[ChargingHour, ...]:
    boat = hot_boat()
    return charging_hours(boat, Simulation(boat))


def test_under_way_at_anchor_and_in_hot_air() -> None:
    assert [(hour.at_anchor, hour.given_air) for hour in hours()][2] == (True, HOT_SPACE)
    assert [hour.at_anchor for hour in hours()] == [False, True, True]
    assert hours()[1].speeds == pytest.approx((1200 * boats.RPM,))


def test_running_hot_gives_more_and_is_hotter() -> None:
    for hour in hours():
        assert not hour.alike
        assert hour.hot is not None
        assert hour.hot.energy > hour.held.energy
        assert hour.hot.hottest_winding > hour.held.hottest_winding
        assert hour.hot.hottest_frame > hour.held.hottest_frame


def test_both_start_alike_and_part_later() -> None:
    hour = hours()[1]
    assert [moment.after for moment in hour.held.moments] == [60.0 * minute for minute in MOMENTS]
    assert hour.hot is not None
    assert hour.held.moments[0] == hour.hot.moments[0]
    assert hour.held.moments[-1].current < hour.hot.moments[-1].current


def test_held_keeps_the_frame_within_hold_and_band() -> None:
    machine = boats.alternator()
    for hour in hours():
        assert hour.held.hottest_frame <= machine.hold_temperature + machine.fold_band


def test_energy_is_current_times_voltage_over_the_hour() -> None:
    hour = hours()[1]
    mean = hour.held.energy / 3600.0
    currents = [moment.current for moment in hour.held.moments]
    assert 24.0 * min(currents) < mean < 28.5 * max(currents)


def test_minutes_over_the_insulations_limit_are_counted() -> None:
    (engine,) = hot_boat().engines
    weak = replace(engine.alternators[0], highest_winding=110.0)
    boat = replace(hot_boat(), engines=(replace(engine, alternators=(weak,)),))
    hour = charging_hours(boat, Simulation(boat))[1]
    assert hour.hot is not None
    assert 0.0 < hour.hot.over < 3600.0
    assert hour.hot.over >= hour.held.over
    assert hour.highest_winding == 110.0


def test_a_cool_boat_says_that_both_are_alike() -> None:
    machine = replace(boats.alternator(), frame_conductance=80.0)
    cool = replace(boats.engine((machine,)), air_temperature=20.0)
    boat = replace(boats.boat(1), engines=(cool,))
    hour = charging_hours(boat, Simulation(boat))[0]
    assert hour.alike
    assert hour.air == 20.0
    assert hour.reached_in > 20.0


def test_a_boat_that_only_charges_at_anchor_is_told_so_once() -> None:
    boat = hot_boat()
    moored = replace(boat, plan=tuple(replace(period, doing=Doing.AT_ANCHOR, boat_speed=0.0) for period in boat.plan))
    found = charging_hours(moored, Simulation(moored))
    assert [(hour.at_anchor, math.isnan(hour.given_air)) for hour in found] == [(True, True), (True, False)]


def test_no_alternator_no_hour() -> None:
    bare = replace(boats.boat(1), engines=(boats.engine(()),))
    assert charging_hours(bare, Simulation(bare)) == ()


def test_an_alternator_that_burns_is_told_and_stops_nothing() -> None:
    starved = replace(boats.alternator(), frame_conductance=8.0, hot_loss=0.05)
    boat = replace(boats.boat(1), engines=(replace(boats.engine((starved,)), air_temperature=60.0),))
    hour = charging_hours(boat, Simulation(boat))[0]
    assert hour.hot is None
    assert not hour.alike
    assert hour.held.hottest_frame < 106.0
