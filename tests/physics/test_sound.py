"""Laws of a sound in the open."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.sound import level_at_distance

METRES = st.floats(0.1, 1000.0)


@given(st.floats(20.0, 120.0), METRES)
def test_where_it_was_measured_nothing_is_lost(level: float, distance: float) -> None:
    assert level_at_distance(level, distance, distance) == pytest.approx(level)


@given(st.floats(20.0, 120.0), METRES, METRES)
def test_ten_times_as_far_is_20_decibels_less(level: float, reference: float, distance: float) -> None:
    near = level_at_distance(level, reference, distance)
    assert level_at_distance(level, reference, 10.0 * distance) == pytest.approx(near - 20.0)


@pytest.mark.parametrize(("reference", "distance"), [(0.0, 1.0), (1.0, 0.0), (1.0, -2.0)])
def test_limits(reference: float, distance: float) -> None:
    with pytest.raises(OutOfRange, match="distances must be positive"):
        level_at_distance(60.0, reference, distance)
