"""Laws of a shore service's legs."""

from __future__ import annotations

import cmath
import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.split_phase import apparent_power, current_under_sag, leg_current, neutral_current

LOAD = st.floats(0.0, 12_000.0)
VOLTS = st.floats(90.0, 250.0)


@given(LOAD, LOAD, LOAD, VOLTS)
def test_neutral_is_the_sum_of_the_phasors(first: float, second: float, across: float, voltage: float) -> None:
    """Legs half a cycle apart, by complex arithmetic; what lies across both legs drops out."""
    one = cmath.rect(leg_current(first, across, voltage), 0.0)
    other = cmath.rect(leg_current(second, across, voltage), math.pi)
    assert neutral_current(first, second, voltage) == pytest.approx(abs(one + other), abs=1e-9)


@given(LOAD, LOAD, LOAD, VOLTS)
def test_legs_together_carry_the_whole_load(first: float, second: float, across: float, voltage: float) -> None:
    legs = leg_current(first, across, voltage) + leg_current(second, across, voltage)
    assert legs * voltage == pytest.approx(first + second + across)


@given(LOAD, VOLTS)
def test_balanced_legs_leave_the_neutral_without_current(load: float, voltage: float) -> None:
    assert neutral_current(load, load, voltage) == 0.0
    assert neutral_current(load, 0.0, voltage) == leg_current(load, 0.0, voltage)


@given(VOLTS, st.floats(0.0, 100.0, allow_subnormal=False))
def test_two_legs_give_twice_what_one_gives(voltage: float, current: float) -> None:
    assert apparent_power(voltage, 2, current) == pytest.approx(2.0 * apparent_power(voltage, 1, current))


@given(LOAD, VOLTS, st.floats(0.0, 0.5))
def test_a_load_that_holds_its_power_draws_more_when_the_voltage_sags(power: float, voltage: float, sag: float) -> None:
    assert current_under_sag(power, voltage, sag) * voltage * (1.0 - sag) == pytest.approx(power)
    assert current_under_sag(power, voltage, sag) >= current_under_sag(power, voltage, 0.0)


@pytest.mark.parametrize(
    "call",
    [
        lambda: leg_current(-1.0, 0.0, 120.0),
        lambda: leg_current(1.0, -1.0, 120.0),
        lambda: leg_current(1.0, 0.0, 0.0),
        lambda: neutral_current(1.0, -1.0, 120.0),
        lambda: apparent_power(0.0, 1, 16.0),
        lambda: apparent_power(120.0, 3, 16.0),
        lambda: apparent_power(120.0, 1, -16.0),
        lambda: current_under_sag(-1.0, 120.0, 0.1),
        lambda: current_under_sag(1.0, 0.0, 0.1),
        lambda: current_under_sag(1.0, 120.0, 1.0),
        lambda: current_under_sag(1.0, 120.0, -0.1),
    ],
)
def test_nonsense_is_refused(call: Callable[[], object]) -> None:
    with pytest.raises(OutOfRange):
        call()
