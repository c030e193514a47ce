"""Dew and damp on inside surfaces."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.design.specification import Specification
from anchorwatt.physics.moist_air import dew_point, relative_humidity
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.dew import SurfaceDew, dew
from tests.simulation import boats


def over_sea(sea: float) -> Specification:
    boat = boats.boat(1)
    return replace(boat, place=replace(boat.place, sea_temperatures=(sea,) * 12))


@cache
def on(sea: float) -> tuple[Simulation, SurfaceDew]:
    made = over_sea(sea)
    simulation = Simulation(made)
    (found,) = dew(made, simulation)
    return simulation, found


def test_the_least_margin_is_of_the_two_runs_together() -> None:
    simulation, found = on(28.0)
    margins = []
    for run in (simulation.night, simulation.day):
        for k, at in list(enumerate(run.clock))[4::5]:
            surface, wet = float(run.series.coldest[0, 0, k]), float(run.series.humidity[0, 0, k])
            margins.append((surface - dew_point(wet, float(run.forcing.pressure[0])), float(at)))
    assert (found.margin, found.at) == pytest.approx(min(margins))
    assert found.surface - found.dew_point == pytest.approx(found.margin)
    assert found.wet == pytest.approx(300.0 * sum(margin < 0.0 for margin, _ in margins))


def test_humidity_is_that_of_the_air_cooled_to_the_surface() -> None:
    simulation, found = on(28.0)
    shares = [
        relative_humidity(float(surface), float(wet), float(run.forcing.pressure[0]))
        for run in (simulation.night, simulation.day)
        for surface, wet in zip(run.series.coldest[0, 0, 4::5], run.series.humidity[0, 0, 4::5], strict=True)
    ]
    assert found.humidity == pytest.approx(np.mean(shares))
    assert found.highest_humidity == pytest.approx(max(shares))


def test_a_colder_sea_brings_dew() -> None:
    warm, cold = on(28.0)[1], on(17.0)[1]
    assert cold.margin < warm.margin
    assert cold.margin < 0.0 < cold.wet
    assert cold.surface < warm.surface
