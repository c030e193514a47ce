"""Laws of the belt."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.belt import belt_power_limit

POWER = st.floats(100.0, 15e3)
SPEED = st.floats(0.0, 2000.0)
REFERENCE = st.floats(200.0, 1000.0)


def test_the_same_tension_carries_5_kw_at_5000_rpm_and_3_kw_at_3000() -> None:
    """P = (T1 - T2) v on a 65 mm pulley: 294 N in both."""
    rpm = math.pi / 30.0
    at_reference = belt_power_limit(5000.0, 5000.0 * rpm, 5000.0 * rpm)
    slower = belt_power_limit(5000.0, 5000.0 * rpm, 3000.0 * rpm)
    assert at_reference / (5000.0 * rpm * 0.0325) == pytest.approx(294.0, abs=0.5)
    assert slower / (3000.0 * rpm * 0.0325) == pytest.approx(294.0, abs=0.5)


@given(POWER, REFERENCE, st.floats(0.01, 1.0))
def test_torque_is_held_below_the_reference_speed(power: float, reference: float, share: float) -> None:
    speed = share * reference
    assert belt_power_limit(power, reference, speed) / speed == pytest.approx(power / reference, rel=1e-12)


@given(POWER, REFERENCE, st.floats(1.0, 5.0))
def test_power_is_held_above_it(power: float, reference: float, share: float) -> None:
    assert belt_power_limit(power, reference, share * reference) == pytest.approx(power, rel=1e-12)


@pytest.mark.parametrize("arguments", [(-1.0, 500.0, 300.0), (1.0, 0.0, 300.0), (1.0, 500.0, -1.0)])
def test_nonsense_is_refused(arguments: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        belt_power_limit(*arguments)
