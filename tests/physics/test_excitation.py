"""Laws of the field."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.excitation import field_share

SHARE = st.floats(0.0, 1.0)
SPEED = st.floats(100.0, 1500.0)


@given(SPEED)
def test_full_current_takes_the_full_field(speed: float) -> None:
    assert field_share(1.0, 90.0, speed) == pytest.approx(1.0)


@given(SHARE, SHARE, SPEED)
def test_more_current_takes_more_field(one: float, other: float, speed: float) -> None:
    less, more = sorted((one, other))
    assert field_share(less, 90.0, speed) <= field_share(more, 90.0, speed)


@given(SHARE, SPEED)
def test_it_takes_no_less_field_than_current(share: float, speed: float) -> None:
    assert share - 1e-12 <= field_share(share, 90.0, speed) <= 1.0 + 1e-12


@given(SPEED)
def test_no_current_flows_below_the_field_that_makes_the_voltage(speed: float) -> None:
    """E = k f n must reach the voltage, as it does at the cut-in speed with the full field."""
    assert field_share(0.0, 90.0, speed) * speed == pytest.approx(90.0)


@pytest.mark.parametrize("arguments", [(-0.1, 90.0, 300.0), (1.1, 90.0, 300.0), (0.5, -1.0, 300.0), (0.5, 90.0, 80.0)])
def test_nonsense_is_refused(arguments: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        field_share(*arguments)
