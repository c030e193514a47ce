"""Comfort by hour of the night."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from anchorwatt.design.specification import Occupants
from anchorwatt.physics.comfort import predicted_mean_vote
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.comfort import AIR_SPEED, ComfortHour, comfort
from tests.simulation import boats

HOUR = 3600.0


@cache
def night() -> tuple[Simulation, tuple[ComfortHour, ...]]:
    boat = boats.boat(2)
    simulation = Simulation(boat)
    return simulation, comfort(boat, simulation)


def test_every_hour_of_the_night_in_every_cabin_with_people() -> None:
    _, hours = night()
    clock = [(21 + hour) % 24 * HOUR for hour in range(10)]
    assert [(hour.cabin, hour.start) for hour in hours] == [(c, at) for c in range(2) for at in clock]
    assert {(hour.activity, hour.people) for hour in hours} == {("asleep", 2.0)}


def test_the_vote_is_of_the_hours_mean_state() -> None:
    simulation, hours = night()
    third = hours[2]
    part = slice(120, 180)
    assert third.air == pytest.approx(simulation.night.series.air[0, 0, part].mean())
    assert third.radiant == pytest.approx(simulation.night.series.radiant[0, 0, part].mean())
    assert third.operative == pytest.approx(0.5 * (third.air + third.radiant))
    expected = predicted_mean_vote(third.air, third.radiant, AIR_SPEED, third.humidity, 0.7, 1.2)
    assert third.vote == pytest.approx(expected)
    assert 0.05 <= third.dissatisfied < 1.0


def test_asleep_lies_outside_the_standard_and_awake_within() -> None:
    boat = boats.boat(2)
    groups = (Occupants(0, 2.0, boats.SEATED), Occupants(1, 2.0, boats.ASLEEP))
    made = replace(boat, plan=(*boat.plan[:-1], replace(boat.plan[-1], occupants=groups)))
    found = comfort(made, Simulation(made))
    assert {(hour.cabin, hour.within_standard) for hour in found} == {(0, True), (1, False)}


def test_part_of_an_hour_at_the_end_counts_and_empty_cabins_do_not() -> None:
    boat = boats.boat(2)
    groups = (Occupants(1, 1.0, boats.ASLEEP),)
    made = replace(
        boat,
        plan=(*boat.plan[:-1], replace(boat.plan[-1], occupants=groups)),
        brief=replace(boat.brief, hold=2.5 * HOUR),
    )
    found = comfort(made, Simulation(made))
    assert [(hour.cabin, hour.start) for hour in found] == [(1, 21 * HOUR), (1, 22 * HOUR), (1, 23 * HOUR)]
