"""The shared plant turned round to heat."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.design.specification import Specification
from anchorwatt.simulation.cooling import MIRROR
from anchorwatt.simulation.plant import EVAPORATING_COUNT, EVAPORATING_START, SEA_COUNT, SEA_START, SEA_STEP, map_value
from anchorwatt.simulation.plant_map import heating_map, plant_map
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats

WARM = 20.0


def cold_boat(sea: float = 11.0, air: float = 8.0) -> Specification:
    """Three cabins kept at 20 °C day and night in cold weather."""
    made = boats.boat(3)
    place = replace(boats.place(replace(boats.DAY, highest_dry_bulb=air, dew_point=2.0)), sea_temperatures=(sea,) * 12)
    off, on = (math.nan,) * 3, (WARM,) * 3
    plan = tuple(replace(period, set_points=off, warm_points=on) for period in made.plan)
    return replace(made, place=place, plan=plan)


@cache
def simulation(step: float = 60.0) -> Simulation:
    return Simulation(cold_boat(), step)


def test_cabins_are_kept_warm() -> None:
    """A proportional thermostat holds within its band of 1 K under the set point."""
    run = simulation().night
    assert run.series.air[0].min() > WARM - 1.0
    assert run.series.air[0].max() < WARM + 0.1
    assert run.series.heating[0].min() > 0.0


def test_nothing_is_cooled_or_dried() -> None:
    run = simulation().night
    assert run.series.sensible[0].max() == 0.0
    assert run.series.latent[0].max() == 0.0


def test_heat_balance_closes() -> None:
    s = simulation().night.summary
    given = float(s.heating_energy[0].sum())
    assert given > 1e6
    assert float(s.heat_in[0] - s.heat_stored[0]) == pytest.approx(0.0, abs=1e-6 * given)


def test_gives_more_than_it_draws() -> None:
    """More heat than electricity, less than Carnot between the sea and the coldest coil that serves."""
    s = simulation().night.summary
    given, drawn = float(s.heating_energy[0].sum()), float(s.compressor_energy[0])
    warm = 38.0 + 273.15
    assert 1.0 < given / drawn < warm / (warm - (11.0 + 273.15))


def test_ten_second_steps_give_the_same_night() -> None:
    coarse, fine = simulation().night.series.air[0], simulation(10.0).night.series.air[0, :, 5::6]
    assert np.abs(coarse - fine).max() < 0.02


def test_a_cold_sea_slows_it() -> None:
    """At 0 °C the leaving water would be near freezing at more than a slow speed: full speed gives no more."""
    made = heating_map(boats.circuit())
    at_full, warm = (map_value(made.capacity, MIRROR - 45.0, sea, 8) for sea in (0.0, 16.0))
    assert 0.0 < at_full < 0.3 * warm
    assert at_full == map_value(made.capacity, MIRROR - 45.0, 0.0, 5)


def test_capacity_rises_with_the_sea_and_power_stays_below_heat() -> None:
    made = heating_map(boats.circuit())
    for row in range(EVAPORATING_COUNT):
        full = made.capacity[row, :, -1]
        assert (np.diff(full) >= -1e-9).all()
        assert (made.power[row] <= made.capacity[row] + 1e-9).all()


def test_heating_cop_is_below_carnot() -> None:
    made = heating_map(boats.circuit())
    for i in range(EVAPORATING_COUNT):
        condensing = MIRROR - (EVAPORATING_START + i)
        for j in range(SEA_COUNT):
            sea = SEA_START + SEA_STEP * j
            # Above the condensing temperature the sea needs no pump at all: no bound there.
            if condensing > sea + 3.0:
                bound = (condensing + 273.15) / (condensing - sea)
                given, drawn = made.capacity[i, j], made.power[i, j]
                assert (given <= bound * drawn + 1e-9).all()


def test_same_machine_both_ways() -> None:
    """Swept volume and efficiency are those that the cooling rating gave."""
    heat, cool = heating_map(boats.circuit()), plant_map(boats.circuit())
    assert (heat.swept_flow, heat.efficiency_scale) == (cool.swept_flow, cool.efficiency_scale)
