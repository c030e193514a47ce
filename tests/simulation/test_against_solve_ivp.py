"""The whole coupled run against scipy's `solve_ivp` on the same equations.

Tolerances are those of the brief for this program: cabin temperature within 0.1 K, energy within 0.5 %.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from anchorwatt.simulation.forcing import forcing
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats
from tests.simulation.reference import solve

HOUR = 3600.0


def ordinary() -> Simulation:
    return Simulation(boats.boat(2))


def compressor_too_small() -> Simulation:
    """Half the compressor that the cabins ask for: it binds for hours and capacity is shared."""
    small = boats.boat(2)
    plant = replace(small.plant, circuit=boats.circuit(2200.0, 600.0))
    return Simulation(replace(small, plant=plant, plan=boats.plan(2, 2, set_point=23.0)))


def one_cabin_first() -> Simulation:
    """The same, with one cabin served first."""
    small = boats.boat(2)
    handlers = (boats.handler("first", 0, 4500.0, priority=3.0), boats.handler("second", 1, 4500.0))
    plant = replace(small.plant, circuit=boats.circuit(2200.0, 600.0), handlers=handlers)
    return Simulation(replace(small, plant=plant, plan=boats.plan(2, 2, set_point=23.0)))


def one_handler_for_both() -> Simulation:
    """One handler that blows into its own cabin and the next."""
    made = boats.boat(2)
    both = replace(boats.handler("both", 0, 6000.0), outlets=(boats.outlet(0, 0.6), boats.outlet(1, 0.4)))
    return Simulation(replace(made, plant=replace(made.plant, handlers=(both,))))


def heated() -> Simulation:
    """The plant turned round in cold weather, heating as the ordinary one cools."""
    made, cold = boats.boat(2), replace(boats.DAY, highest_dry_bulb=10.0, dew_point=3.0)
    off = (math.nan,) * 2
    plan = tuple(replace(p, set_points=off, warm_points=tuple(t - 5.0 for t in p.set_points)) for p in made.plan)
    return Simulation(replace(made, place=replace(boats.place(cold), sea_temperatures=(12.0,) * 12), plan=plan))


@pytest.mark.parametrize("make", [ordinary, compressor_too_small, one_cabin_first, one_handler_for_both, heated])
def test_night_agrees(make: object) -> None:
    simulation = make()  # type: ignore[operator]
    start, end = 19.5 * HOUR, 24.5 * HOUR  # the plan starts cooling half an hour in
    before = simulation.run("before", -24 * HOUR, start, simulation.first_state(29.0), live=False)
    run = simulation.run("night", start, end, before.end)
    reference = solve(
        simulation.boat,
        forcing(simulation.specification, simulation.outside, start, end),
        before.end,
        simulation.step,
    )
    apart = np.abs(run.series.air[0] - reference.air[:, 1:])
    assert apart.max() < 0.1
    assert np.abs(run.series.humidity[0] - reference.humidity[:, 1:]).max() < 1e-4
    assert float(run.summary.bank_out[0]) == pytest.approx(reference.night_energy, rel=0.005)
    assert np.abs(run.series.charge[0] - reference.charge[1:]).max() < 5e-4


def test_the_small_compressor_does_bind() -> None:
    simulation = compressor_too_small()
    before = simulation.run("before", -24 * HOUR, 20 * HOUR, simulation.first_state(29.0), live=False)
    run = simulation.run("night", 20 * HOUR, 21 * HOUR, before.end)
    half_an_hour = 30
    assert run.series.air[0, 0, half_an_hour] > run.forcing.set_point[0, 0, 0] + 1.0


def test_ten_second_steps_give_the_same_night() -> None:
    """The brief: one-minute steps give the same night as ten-second steps to 0.02 K."""
    nights = [Simulation(boats.boat(2), step).night for step in (60.0, 10.0)]
    coarse, fine = (night.series.air[0] for night in nights)
    assert np.abs(coarse - fine[:, 5::6]).max() < 0.02
