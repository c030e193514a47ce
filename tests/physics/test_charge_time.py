"""Laws of charging and discharging in closed form."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad, solve_ivp

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.battery import current_for_power
from anchorwatt.physics.charge_time import (
    charge_where_voltage_is_reached,
    constant_current_time,
    constant_power_time,
    tail_time,
    tail_time_constant,
)

CAPACITY = 360_000.0


@given(st.floats(20.0, 200.0), st.floats(0.5, 4.0), st.floats(0.001, 0.02))
def test_current_is_continuous_where_the_voltage_is_reached(current: float, slope: float, resistance: float) -> None:
    absorb = 25.0 + 0.8 * slope + current * resistance
    charge = charge_where_voltage_is_reached(current, 25.0, slope, resistance, absorb)
    assert (absorb - 25.0 - slope * charge) / resistance == pytest.approx(current, rel=1e-9)


def test_a_voltage_out_of_reach_is_held_at_the_ends() -> None:
    assert charge_where_voltage_is_reached(10.0, 25.0, 2.0, 0.01, 40.0) == 1.0
    assert charge_where_voltage_is_reached(10.0, 25.0, 2.0, 0.01, 20.0) == 0.0


@given(st.floats(0.5, 4.0), st.floats(0.001, 0.02), st.floats(1.0, 50.0))
def test_the_tail_is_the_exponential_of_the_differential_equation(slope: float, resistance: float, tail: float) -> None:
    start = 100.0
    constant = tail_time_constant(slope, resistance, CAPACITY)
    time = tail_time(start, tail, constant)
    solved = solve_ivp(
        lambda _, i: -i * slope / (resistance * CAPACITY), (0.0, time), [start], rtol=1e-9, atol=1e-9, method="LSODA"
    )
    assert solved.y[0, -1] == pytest.approx(tail, rel=1e-6)


def test_no_time_when_there_already() -> None:
    assert constant_current_time(0.9, 0.5, CAPACITY, 10.0) == 0.0
    assert tail_time(5.0, 10.0, 1800.0) == 0.0


@given(st.floats(100.0, 8000.0), st.floats(0.0, 4.0), st.floats(0.0, 0.01), st.floats(0.0, 0.5), st.floats(0.6, 1.0))
def test_constant_power_is_the_integral_of_the_quadratics_current(
    power: float, slope: float, resistance: float, last: float, first: float
) -> None:
    def slowness(charge: float) -> float:
        return CAPACITY / current_for_power(power, 22.0 + slope * charge, resistance)

    exact = quad(slowness, last, first)[0]
    found = constant_power_time(power, first, last, CAPACITY, 22.0, slope, resistance)
    assert found == pytest.approx(exact, rel=1e-6)


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: charge_where_voltage_is_reached(10.0, 25.0, 0.0, 0.01, 27.0),
        lambda: charge_where_voltage_is_reached(-10.0, 25.0, 1.0, 0.01, 27.0),
        lambda: constant_current_time(0.1, 0.9, 0.0, 10.0),
        lambda: constant_current_time(0.1, 0.9, CAPACITY, 0.0),
        lambda: tail_time_constant(0.0, 0.01, CAPACITY),
        lambda: tail_time_constant(1.0, 0.01, 0.0),
        lambda: tail_time_constant(1.0, -0.01, CAPACITY),
        lambda: tail_time(10.0, 0.0, 100.0),
        lambda: tail_time(10.0, 1.0, -100.0),
        lambda: constant_power_time(0.0, 1.0, 0.0, CAPACITY, 25.0, 1.0, 0.01),
        lambda: constant_power_time(100.0, 1.0, 0.0, 0.0, 25.0, 1.0, 0.01),
        lambda: constant_power_time(100.0, 1.0, 0.0, CAPACITY, 25.0, -1.0, 0.01),
        lambda: constant_power_time(100.0, 0.0, 1.0, CAPACITY, 25.0, 1.0, 0.01),
        lambda: constant_power_time(1e6, 1.0, 0.0, CAPACITY, 25.0, 1.0, 0.01),
    ],
)
def test_nonsense_is_refused(wrong: Callable[[], float]) -> None:
    with pytest.raises(OutOfRange):
        wrong()
