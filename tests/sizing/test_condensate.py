"""Water that the coils drain."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.physics.moist_air import latent_heat
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.condensate import ADVICE, Condensate, condensed, wettest_hour
from tests.simulation import boats


@cache
def usual() -> tuple[Simulation, Condensate]:
    boat = boats.boat(2)
    simulation = Simulation(boat)
    return simulation, condensed(boat, simulation)


def test_water_is_the_latent_energy_of_the_night() -> None:
    simulation, found = usual()
    energy = float(simulation.night.summary.latent_energy[0].sum())
    assert found.night == pytest.approx(energy / latent_heat(12.0), rel=1e-6)
    assert found.day > found.night > 0.0


def test_cabins_make_up_the_boat() -> None:
    _, found = usual()
    assert math.fsum(cabin.night for cabin in found.cabins) == pytest.approx(found.night)
    assert math.fsum(cabin.day for cabin in found.cabins) == pytest.approx(found.day)
    assert math.fsum(cabin.share for cabin in found.cabins) == pytest.approx(1.0)


def test_the_peak_is_no_less_than_the_mean_and_a_drain_carries_it() -> None:
    _, found = usual()
    assert found.day / 86_400.0 < found.peak < found.drain_flow


def test_a_boat_that_is_never_cooled_drains_nothing() -> None:
    boat = boats.boat(1)
    warm = replace(boat, plan=tuple(replace(period, set_points=(math.nan,)) for period in boat.plan))
    found = condensed(warm, Simulation(warm))
    assert (found.night, found.day, found.peak) == (0.0, 0.0, 0.0)
    assert found.cabins[0].share == 0.0


@given(st.lists(st.floats(0.0, 1.0), min_size=1, max_size=200), st.sampled_from((60.0, 600.0, 3600.0)))
def test_the_wettest_hour_lies_between_mean_and_highest(rates: list[float], step: float) -> None:
    rate = np.array(rates)
    found = wettest_hour(rate, step)
    assert rate.max() + 1e-9 >= found
    hour = round(3600.0 / step)
    for first in range(0, rate.size - hour + 1, hour):
        assert found >= rate[first : first + hour].mean() - 1e-9


def test_every_advice_has_its_source() -> None:
    assert all(advice.text and advice.source for advice in ADVICE)
    assert any("bilge" in advice.text for advice in ADVICE)
    assert any("exhaust" in advice.text for advice in ADVICE)
