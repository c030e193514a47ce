from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.physics.condenser import condensing_temperature, effectiveness
from anchorwatt.sizing.seawater import seawater_flow
from tests.simulation import boats


def test_the_rise_carries_capacity_and_power_away() -> None:
    found = seawater_flow(boats.boat(1))
    assert found.heat_rejected == pytest.approx(7000.0 + 1900.0)
    assert found.rise * found.flow * 1023.0 * 3993.0 == pytest.approx(found.heat_rejected)


def test_velocities_are_flow_over_area() -> None:
    found = seawater_flow(boats.boat(1))
    assert found.hose_velocity * 0.025**2 == pytest.approx(found.through_hull_velocity * 0.032**2)


def test_a_narrower_hose_needs_more_pressure_and_power() -> None:
    boat = boats.boat(1)
    narrow = replace(boat, plant=replace(boat.plant, sea=replace(boats.SEA_HOSE, diameter=0.016)))
    assert seawater_flow(narrow).pressure_needed > seawater_flow(boat).pressure_needed
    assert seawater_flow(narrow).pump_efficiency > seawater_flow(boat).pump_efficiency


def test_condenser_and_strainer_count() -> None:
    boat = boats.boat(1)
    clean = replace(boat, plant=replace(boat.plant, sea=replace(boats.SEA_HOSE, condenser_loss=0.0, strainer_loss=0.0)))
    assert seawater_flow(boat).pressure_needed - seawater_flow(clean).pressure_needed == pytest.approx(15_000.0)


def test_it_condenses_over_the_warmest_sea_of_the_year() -> None:
    boat = boats.boat(1)
    warm = replace(boat, place=replace(boat.place, sea_temperatures=(*[24.0] * 11, 31.0)))
    found, circuit = seawater_flow(warm), warm.plant.circuit
    assert found.warmest_sea == 31.0
    effective = effectiveness(circuit.condenser_ntu)
    expected = condensing_temperature(31.0, found.heat_rejected, circuit.sea_flow, effective)
    assert found.condensing == pytest.approx(expected)
