"""A cabin of one node against its exact exponential."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from anchorwatt.design.specification import Window
from anchorwatt.physics.moist_air import CP_AIR
from anchorwatt.simulation.arrays import UNCOOLED
from anchorwatt.simulation.forcing import forcing
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats


def bare(step: float) -> Simulation:
    """A cabin without walls or people; only a window and a leak, the outdoor air steady."""
    cabin = replace(
        boats.cabin("box"),
        surfaces=(),
        furnishing_area=0.0,
        leakage=6.0 / 3600.0,
        fresh_air=0.0,
        windows=(Window("window", 2.0, 5.0, 0.0, 1, 1.0, 0.0, math.pi / 2),),
    )
    made = boats.boat(1)
    quiet = tuple(replace(period, occupants=()) for period in boats.plan(1, 0))
    steady = boats.place(replace(boats.DAY, daily_range=0.0))
    return Simulation(replace(made, cabins=(cabin,), loads=(), place=steady, plan=quiet), step)


@pytest.mark.parametrize("step", [10.0, 60.0])
def test_decay_is_exponential(step: float) -> None:
    simulation = bare(step)
    boat, outdoor = simulation.boat, float(simulation.weather.dry_bulb[0])
    flow = forcing(simulation.specification, simulation.outside, 0.0, 3600.0).outdoor_flow[0, 0, 0]
    conductance = float(boat.fabric.window_conductance[0, 0] + flow * CP_AIR)
    time_constant = float(boat.fabric.air_mass[0, 0]) * CP_AIR / conductance
    start = simulation.first_state(outdoor - 10.0)
    run = simulation.run("decay", 0.0, 3600.0, start, mode=UNCOOLED, live=False)
    time = np.arange(1, run.series.air.shape[2] + 1) * step
    exact = outdoor - 10.0 * np.exp(-time / time_constant)
    # The method is of second order: a fifth of a kelvin of a step of 60 s over a time constant near 170 s.
    assert np.abs(run.series.air[0, 0] - exact).max() < 10.0 * 0.2 * (step / time_constant) ** 2
