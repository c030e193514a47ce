"""Carbon dioxide through a run: against the closed form of one cabin, and laws for several."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.linalg import expm

from anchorwatt.design.specification import Occupants, Period, Specification
from anchorwatt.physics.carbon_dioxide import OUTDOOR, concentration_after, steady_concentration
from anchorwatt.simulation.plants import CABIN_AIR_DENSITY
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.air_quality import (
    BREATHED_DENSITY,
    LIMITS,
    breathed_out,
    cabin_air,
    carbon_dioxide,
    fresh_air_needed,
    outdoor_flow,
    through,
)
from tests.simulation import boats

HOUR = 3600.0
SLEEPER = 3.3e-6
"""m³/s of one sleeper, as warm as the cabin."""


def sleepers(person_breathes: float, all_day: bool) -> Specification:
    """Two people in 12 m³ with half an air change an hour, whatever the wind does."""
    boat = boats.boat(1)
    person = replace(boats.ASLEEP, carbon_dioxide=person_breathes)
    asleep = (Occupants(0, 2.0, person),)
    plan = tuple(
        replace(period, occupants=asleep if all_day or period is boat.plan[-1] else ()) for period in boat.plan
    )
    (cabin,) = boat.cabins
    flow = 12.0 * 0.5 / HOUR
    return replace(boat, cabins=(replace(cabin, volume=12.0, leakage=0.0, fresh_air=flow),), plan=plan)


@cache
def two(all_day: bool = True) -> tuple[Specification, Simulation]:
    made = sleepers(SLEEPER * CABIN_AIR_DENSITY / BREATHED_DENSITY, all_day)
    return made, Simulation(made)


@cache
def usual() -> tuple[Specification, Simulation]:
    made = boats.boat(2)
    return made, Simulation(made)


def test_two_sleepers_in_twelve_cubic_metres() -> None:
    """The closed form of one cabin: 420 ppm and 0.0066 L/s over half an air change an hour make 4380 ppm."""
    specification, simulation = two()
    found = carbon_dioxide(specification, simulation, simulation.night)
    assert 1e6 * found[0] == pytest.approx(np.full(600, 4380.0), rel=1e-9)


def test_a_night_rises_as_the_closed_form() -> None:
    """Asleep from 8 in the evening, an hour before the night begins: that hour counts."""
    specification, simulation = two(all_day=False)
    run = simulation.night
    found = carbon_dioxide(specification, simulation, run)[0]
    flow, generation = 12.0 * 0.5 / HOUR, 2.0 * SLEEPER
    expected = [
        concentration_after(float(clock) - 20.0 * HOUR, OUTDOOR, generation, flow, 12.0, OUTDOOR) for clock in run.clock
    ]
    # The sleepers of the night before have left e^(-6.5) of theirs by then.
    assert found == pytest.approx(expected, rel=5e-3)
    assert found[-1] < steady_concentration(generation, flow, OUTDOOR)


def test_runs_that_follow_each_other_join() -> None:
    specification, simulation = usual()
    night, day = (carbon_dioxide(specification, simulation, run) for run in (simulation.night, simulation.day))
    joined = through(specification, simulation, simulation.day, night[:, -1])
    assert day == pytest.approx(joined)


def test_a_day_by_itself_comes_back_to_where_it_began() -> None:
    specification, simulation = usual()
    run = simulation.loads
    found = carbon_dioxide(specification, simulation, run)
    again = through(specification, simulation, run, found[:, -1])
    assert again[:, -1] == pytest.approx(found[:, -1], rel=1e-3)


def test_with_nobody_aboard_the_air_is_that_outdoors() -> None:
    boat, _ = usual()
    empty = replace(boat, plan=tuple(replace(period, occupants=()) for period in boat.plan))
    simulation = Simulation(empty)
    assert carbon_dioxide(empty, simulation, simulation.night) == pytest.approx(np.full((2, 600), OUTDOOR), rel=1e-12)
    assert cabin_air(empty, simulation) == ()


def test_air_needed_brings_a_cabin_to_the_limit() -> None:
    specification, simulation = usual()
    generation = breathed_out(specification, simulation.night).max(axis=1)
    for limit in LIMITS:
        flow = fresh_air_needed(specification, simulation.night, limit)
        assert OUTDOOR + generation / flow == pytest.approx(np.full(2, limit))


def test_the_cabins_air_in_short() -> None:
    specification, simulation = usual()
    for air in cabin_air(specification, simulation):
        shares = carbon_dioxide(specification, simulation, simulation.night)[air.cabin]
        flows = outdoor_flow(simulation.night)[air.cabin]
        assert air.people == 2.0
        assert air.highest == shares.max()
        assert air.at_end == shares[-1]
        assert air.outdoor_flow == pytest.approx(flows.mean())
        assert air.least_flow == pytest.approx(flows.min() / 2.0)
        assert list(air.needed) == sorted(air.needed, reverse=True)


@st.composite
def systems(draw: st.DrawFn) -> tuple[Any, Any, Any, np.ndarray[Any, Any]]:
    """A specification, a simulation and a run with just what the balance reads, and a start."""
    cabins, rows, steps = draw(st.integers(1, 5)), draw(st.integers(1, 3)), draw(st.integers(1, 4))

    def floats(low: float, high: float, *shape: int) -> np.ndarray[Any, Any]:
        count = int(np.prod(shape))
        drawn = draw(st.lists(st.floats(low, high), min_size=count, max_size=count))
        return np.array(drawn, dtype=float).reshape(shape)

    doors = np.triu(floats(0.0, 0.1, cabins, cabins), 1)
    person = replace(boats.SEATED, carbon_dioxide=draw(st.floats(0.0, 1e-5)))
    occupants = tuple(Occupants(c, float(draw(st.integers(0, 4))), person) for c in range(cabins))
    day = replace(boats.plan(cabins, 0)[0], start=0.0, end=0.0, occupants=occupants)
    plan: tuple[Period, ...] = (day,)
    step = draw(st.sampled_from((60.0, 600.0, 3600.0)))
    run = SimpleNamespace(
        name="night",
        start=0.0,
        step=step,
        clock=step * np.arange(1, rows * steps + 1),
        forcing=SimpleNamespace(
            film_row=np.repeat(np.arange(rows), steps), renewed_flow=floats(0.0, 0.1, 1, rows, cabins)
        ),
    )
    fabric = SimpleNamespace(air_mass=floats(2.0, 60.0, 1, cabins), exchange=(doors + doors.T)[None])
    simulation = SimpleNamespace(boat=SimpleNamespace(fabric=fabric))
    return SimpleNamespace(plan=plan, cabins=(None,) * cabins), simulation, run, floats(OUTDOOR, 0.01, cabins)


@settings(max_examples=60)
@given(systems())
def test_all_carbon_dioxide_is_accounted_for(system: tuple[Any, Any, Any, np.ndarray[Any, Any]]) -> None:
    """What is breathed out is what the cabins hold more and what has left; its integral is found by another way."""
    specification, simulation, run, start = system
    fabric, forcing = simulation.boat.fabric, run.forcing
    mass, exchange = fabric.air_mass[0], fabric.exchange[0]
    found = through(specification, simulation, run, start)
    breathed = breathed_out(specification, run) * CABIN_AIR_DENSITY
    cabins, left, now = mass.size, 0.0, start
    for row, flow in enumerate(forcing.renewed_flow[0]):
        steps = np.flatnonzero(forcing.film_row == row)
        # Shares, their integrals over time, and one.
        system_of_row = np.zeros((2 * cabins + 1, 2 * cabins + 1))
        system_of_row[:cabins, :cabins] = (exchange - np.diag(exchange.sum(axis=1) + flow)) / mass[:, None]
        system_of_row[:cabins, -1] = (flow * OUTDOOR + breathed[:, steps[0]]) / mass
        system_of_row[cabins : 2 * cabins, :cabins] = np.eye(cabins)
        time = run.step * steps.size
        end = expm(system_of_row * time) @ np.concatenate((now, np.zeros(cabins), [1.0]))
        left += float(flow @ (end[cabins : 2 * cabins] - OUTDOOR * time))
        now = end[:cabins]
    made = float(breathed.sum()) * run.step
    held = float(mass @ (found[:, -1] - start))
    scale = made + float(mass @ start) + abs(left)
    assert held - made + left == pytest.approx(0.0, abs=1e-9 * scale)


@settings(max_examples=60)
@given(systems())
def test_no_cabin_falls_below_the_outdoors_or_rises_over_all_of_them_shut(
    system: tuple[Any, Any, Any, np.ndarray[Any, Any]],
) -> None:
    specification, simulation, run, start = system
    found = through(specification, simulation, run, start)
    mass = simulation.boat.fabric.air_mass[0]
    made = np.cumsum(breathed_out(specification, run) * CABIN_AIR_DENSITY, axis=1) * run.step
    # Were nothing to leave, no cabin could hold more than the fullest at the start and all that was breathed since.
    most = start.max() + made.sum(axis=0) / mass.min()
    assert (found >= OUTDOOR * (1.0 - 1e-9)).all()
    assert (found <= most * (1.0 + 1e-9)).all()


@settings(max_examples=40)
@given(systems(), st.floats(1.1, 3.0))
def test_more_outdoor_air_never_makes_a_cabin_staler(
    system: tuple[Any, Any, Any, np.ndarray[Any, Any]], times: float
) -> None:
    specification, simulation, run, start = system
    stale = through(specification, simulation, run, start)
    run.forcing.renewed_flow = run.forcing.renewed_flow * times
    fresh = through(specification, simulation, run, start)
    assert (fresh <= stale * (1.0 + 1e-9)).all()
