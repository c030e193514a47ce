"""Loads by cause and hour: whole, and told for the right hours."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.assessment.gains import CAUSES, GROUPS, BoatGains, boat_gains
from anchorwatt.assessment.load_story import (
    PULL_DOWN,
    REACHED,
    HotBoat,
    LoadStory,
    load_story,
    single_skinned,
    uncovered,
)
from anchorwatt.design.specification import Outside, Specification
from anchorwatt.simulation.plant import full_capacity
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats


@cache
def simulation() -> Simulation:
    return Simulation(boats.boat(3))


@cache
def gains() -> BoatGains:
    return boat_gains(simulation().specification, simulation())


def test_causes_make_the_load() -> None:
    for cabin in gains().cabins:
        whole = sum((values for _, values in cabin.causes), np.zeros(24))
        assert whole == pytest.approx(cabin.total, abs=1e-6)


def test_groups_make_the_load() -> None:
    whole = sum((values for _, values in gains().groups), np.zeros(24))
    assert whole == pytest.approx(gains().total, abs=1e-6)
    assert sorted(cause for _, some in GROUPS for cause in some) == sorted(CAUSES)


def test_the_boats_peak_is_not_above_its_cabins_peaks() -> None:
    assert gains().peak <= gains().sum_of_peaks * (1.0 + 1e-9)
    assert 0.0 < gains().diversity <= 1.0 + 1e-9


def test_no_sun_by_night() -> None:
    sun = dict(gains().causes)["sun through glass"]
    assert sun[[0, 1, 2, 3, 22, 23]] == pytest.approx(0.0, abs=1e-9)
    assert sun.max() > 0.0


def test_people_are_where_the_plan_puts_them() -> None:
    """Two sleepers a cabin by night, 146 W together; two awake in the first by day."""
    people = dict(gains().causes)
    night = people["people"][2] + people["people's moisture"][2]
    assert night == pytest.approx(3 * 2 * (46.0 + 27.0), rel=1e-6)
    noon = people["people"][12] + people["people's moisture"][12]
    assert noon == pytest.approx(2 * (65.0 + 50.0), rel=1e-6)


def test_an_uncooled_boat_has_no_load() -> None:
    made = boats.boat(1)
    never = replace(made, plan=tuple(replace(p, set_points=(math.nan,)) for p in made.plan))
    found = boat_gains(never, Simulation(never))
    assert found.cabins == ()
    assert found.peak == 0.0
    assert math.isnan(found.diversity)
    assert load_story(never, Simulation(never), found) is None


def shaded() -> Specification:
    """Every window covered, an awning over every deck."""
    made = boats.boat(2)
    cabins = []
    for cabin in made.cabins:
        surfaces = tuple(replace(s, sun_left=0.2, sky_left=0.3) if s.name == "deck" else s for s in cabin.surfaces)
        windows = tuple(replace(w, cover_factor=0.1) for w in cabin.windows)
        cabins.append(replace(cabin, surfaces=surfaces, windows=windows))
    return replace(made, cabins=tuple(cabins))


@cache
def story() -> LoadStory:
    made = shaded()
    running = Simulation(made)
    found = load_story(made, running, boat_gains(made, running))
    assert found is not None
    return found


def test_taking_covers_off_brings_more() -> None:
    assert story().uncovered > 1.05 * story().peak
    bare = uncovered(shaded())
    assert all(w.cover_factor == 1.0 for cabin in bare.cabins for w in cabin.windows)
    assert all(s.sun_left == s.sky_left == 1.0 for cabin in bare.cabins for s in cabin.surfaces)


def test_pulling_down_a_hot_boat_takes_more_than_keeping_it_cool() -> None:
    assert story().pull_down > 1.5 * story().peak


def test_a_single_skin_brings_more() -> None:
    assert story().single_skin > 1.2 * story().peak
    assert story().bare > max(story().single_skin, story().uncovered)
    skinned = single_skinned(shaded())
    for before, after in zip(shaded().cabins[0].surfaces, skinned.cabins[0].surfaces, strict=True):
        assert (after.layers == before.layers) == (before.outside is Outside.NOTHING)


def hot() -> HotBoat:
    return HotBoat(simulation(), 3600.0 * gains().peak_hour)


def test_a_plant_that_gets_there_in_time_is_just_large_enough() -> None:
    """What it gives brings the boat there; nine tenths of that plant do not."""
    boat, left = hot(), simulation().uncooled(3600.0 * gains().peak_hour)
    full = full_capacity(simulation().boat.plant.plant_capacity[0], 11.0, 28.0)
    times = next(t for t in np.arange(0.2, 8.0, 0.02) if boat.cooled(t, PULL_DOWN, left)[1][-1] <= REACHED)
    assert boat.power() <= 1.05 * times * full
    assert boat.power() == pytest.approx(boat.cooled(times, PULL_DOWN, left)[0].series.plant_load[0].mean(), rel=0.05)
    assert boat.cooled(0.9 * times, PULL_DOWN, left)[1][-1] > REACHED


def test_a_larger_plant_is_quicker() -> None:
    made = boats.boat(3)
    larger = replace(made, plant=replace(made.plant, circuit=boats.circuit(14_000.0, 3800.0)))
    slow, quick = (HotBoat(Simulation(one), 15.0 * 3600.0).own_time() for one in (made, larger))
    assert quick <= slow


def test_machines_that_stand_nowhere_add_nothing() -> None:
    assert dict(gains().causes)["machinery"] == pytest.approx(0.0, abs=1e-9)


def test_an_inverter_in_a_cabin_is_machinery() -> None:
    """What it loses comes out of that cabin, and a little through the bulkhead out of the next."""
    made = boats.boat(2)
    there = replace(made, inverter=replace(made.inverter, cabin=0))
    running = Simulation(there)
    found = boat_gains(there, running)
    lost = (running.loads.series.inverter_input[0] - running.loads.series.inverter_output[0]).mean()
    by_cabin = [float(dict(cabin.causes)["machinery"].mean()) for cabin in found.cabins]
    assert lost > 10.0
    assert by_cabin[0] > 5.0 * by_cabin[1] > 0.0
    assert sum(by_cabin) == pytest.approx(lost, rel=0.25)
    assert sum(by_cabin) < lost
    assert sum(found.total) > sum(boat_gains(made, Simulation(made)).total)


def test_the_largest_causes_come_first() -> None:
    shares = [share for _, share in story().largest]
    assert shares == sorted(shares, reverse=True)
    assert shares[0] <= 1.0 + 1e-9
