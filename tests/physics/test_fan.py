"""A fan whose speed is controlled."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.fan import ELECTRONICS_SHARE, fan_power


def test_a_stopped_fan_takes_nothing() -> None:
    assert fan_power(60.0, 0.0) == 0.0


@given(st.floats(0.0, 500.0))
def test_full_airflow_takes_the_rated_power(rated: float) -> None:
    assert fan_power(rated, 1.0) == pytest.approx(rated)


@given(st.floats(1.0, 500.0), st.floats(0.01, 1.4), st.floats(0.001, 0.1))
def test_more_air_takes_more_power(rated: float, share: float, more: float) -> None:
    assert fan_power(rated, share + more) > fan_power(rated, share)


@given(st.floats(1.0, 500.0), st.floats(0.01, 1.0))
def test_power_lies_between_the_fan_law_and_proportion(rated: float, share: float) -> None:
    power = fan_power(rated, share)
    assert rated * share**3 <= power + 1e-9
    assert power <= rated * (ELECTRONICS_SHARE + share) + 1e-9


@pytest.mark.parametrize(("rated", "share"), [(-1.0, 0.5), (60.0, -0.1), (60.0, 1.6), (60.0, math.nan)])
def test_impossible_fans_are_refused(rated: float, share: float) -> None:
    with pytest.raises(OutOfRange):
        fan_power(rated, share)
