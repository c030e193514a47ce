"""The seawater circuit: pressures that add up, and balances."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.condenser import SEAWATER_DENSITY, sea_out
from anchorwatt.physics.sea_circuit import (
    GRAVITY,
    flow_for_rise,
    hose_pressure,
    hydraulic_power,
    pressure_needed,
    pump_efficiency,
)

flows = st.floats(5e-5, 2e-3)
lengths = st.floats(0.5, 20.0)
diameters = st.floats(0.012, 0.06)


@given(st.floats(100.0, 50_000.0), st.floats(0.5, 15.0))
def test_the_flow_for_a_rise_rises_so_much(heat: float, rise: float) -> None:
    assert sea_out(25.0, heat, flow_for_rise(heat, rise)) - 25.0 == pytest.approx(rise)


@given(flows, lengths, diameters, st.floats(0.0, 8.0), st.floats(1.05, 2.0))
def test_a_hose_takes_more_with_flow_and_less_with_width(
    flow: float, length: float, diameter: float, bends: float, more: float
) -> None:
    taken = hose_pressure(flow, length, diameter, bends)
    assert hose_pressure(flow * more, length, diameter, bends) > taken
    assert hose_pressure(flow, length, diameter * more, bends) < taken
    assert hose_pressure(flow, length * more, diameter, bends) > taken
    assert hose_pressure(flow, length, diameter, bends + more) > taken


@given(flows, lengths, diameters, st.floats(0.0, 4.0), st.floats(0.1, 2.0))
def test_lift_and_losses_come_on_top(flow: float, length: float, diameter: float, lift: float, more: float) -> None:
    low = pressure_needed(flow, length, diameter, 4.0, lift, diameter, 0.0)
    high = pressure_needed(flow, length, diameter, 4.0, lift + more, diameter, 500.0)
    assert low > hose_pressure(flow, length, diameter, 4.0)
    assert high - low == pytest.approx(SEAWATER_DENSITY * GRAVITY * more + 500.0)


def test_without_flow_only_the_lift_is_left() -> None:
    assert pressure_needed(0.0, 5.0, 0.025, 4.0, 1.0, 0.03, 0.0) == pytest.approx(SEAWATER_DENSITY * GRAVITY)


def test_efficiency_is_hydraulic_over_electric_power() -> None:
    assert pump_efficiency(5e-4, 40_000.0, 100.0) == pytest.approx(hydraulic_power(5e-4, 40_000.0) / 100.0)


def test_impossible_circuits_are_refused() -> None:
    for heat in ((-1.0, 5.0), (1.0, 0.0)):
        with pytest.raises(OutOfRange):
            flow_for_rise(*heat)
    for hose in ((1e-4, -1.0, 0.02, 1.0), (1e-4, 1.0, 0.02, -1.0), (1e-4, 1.0, 0.0, 1.0), (-1e-4, 1.0, 0.02, 1.0)):
        with pytest.raises(OutOfRange):
            hose_pressure(*hose)
    for circuit in ((1e-4, 1.0, 0.02, 1.0, -1.0, 0.02, 0.0), (1e-4, 1.0, 0.02, 1.0, 1.0, 0.02, -1.0)):
        with pytest.raises(OutOfRange):
            pressure_needed(*circuit)
    with pytest.raises(OutOfRange):
        hydraulic_power(1e-4, -1.0)
    with pytest.raises(OutOfRange):
        pump_efficiency(1e-4, 1.0, 0.0)
