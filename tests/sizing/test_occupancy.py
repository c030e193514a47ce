"""Who is where through a run."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np

from anchorwatt.design.specification import Occupants, Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.occupancy import most_of_them, people, periods, slept_in
from tests.simulation import boats

HOUR = 3600.0


@cache
def simulation() -> Simulation:
    return Simulation(boats.boat(2))


def uneven(specification: Specification) -> Specification:
    """One child asleep and two adults awake in the first cabin by night."""
    groups = (Occupants(0, 1.0, boats.ASLEEP), Occupants(0, 2.0, boats.SEATED))
    return replace(specification, plan=(*specification.plan[:-1], replace(specification.plan[-1], occupants=groups)))


def test_people_follow_the_plan_through_the_day() -> None:
    run = simulation().day  # from 7 in the morning to 9 in the evening
    present = people(simulation().specification, run)
    by_day, from_eight = run.clock <= 44.0 * HOUR, run.clock > 44.0 * HOUR
    assert set(present[0, by_day]) == {2.0}
    assert set(present[1, by_day]) == {0.0}
    assert (present[:, from_eight] == 2.0).all()


def test_a_night_that_is_held_on_keeps_its_people() -> None:
    run = simulation().hold
    assert (people(simulation().specification, run) == 2.0).all()
    assert periods(simulation().specification, run)[0] == (simulation().specification.plan[-1],)


def test_people_are_under_way_while_the_night_is_put_back() -> None:
    run = simulation().recharge
    assert run is not None
    assert np.array_equal(np.unique(people(simulation().specification, run), axis=1), [[2.0], [0.0]])


def test_the_largest_group_speaks_for_a_cabin() -> None:
    night = uneven(simulation().specification).plan[-1]
    found = most_of_them(night, 0)
    assert found is not None
    assert found.person == boats.SEATED
    assert most_of_them(night, 1) is None


def test_sleepers_and_sleeping_cabins_count_as_slept_in() -> None:
    usual, run = simulation().specification, simulation().night
    saloons = replace(usual, cabins=tuple(replace(cabin, use="saloon") for cabin in usual.cabins))
    assert slept_in(usual, run) == (0, 1)
    assert slept_in(saloons, run) == (0, 1)
    assert slept_in(uneven(saloons), run) == (0,)
    awake = replace(saloons.plan[-1], occupants=(Occupants(1, 2.0, boats.SEATED),))
    assert slept_in(replace(saloons, plan=(*saloons.plan[:-1], awake)), run) == ()
    assert slept_in(replace(usual, plan=(*usual.plan[:-1], awake)), run) == (1,)
