"""The sea between the middles of the months."""

from __future__ import annotations

import datetime

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.climate.sea import sea_temperature
from anchorwatt.errors import OutOfRange

MONTHLY = [22.0, 23.0, 24.0, 26.0, 27.0, 29.0, 30.0, 30.0, 29.0, 28.0, 26.0, 23.0]
NOON = np.array([43_200.0])


@pytest.mark.parametrize(
    ("month", "day", "expected"),
    [(1, 16, 22.0), (7, 16, 30.0), (12, 16, 23.0)],
)
def test_a_month_has_its_mean_at_its_middle(month: int, day: int, expected: float) -> None:
    assert sea_temperature(MONTHLY, datetime.date(2025, month, day), NOON)[0] == pytest.approx(expected, abs=0.1)


def test_the_year_closes() -> None:
    old = sea_temperature(MONTHLY, datetime.date(2025, 12, 31), np.array([86_400.0]))[0]
    new = sea_temperature(MONTHLY, datetime.date(2025, 1, 1), np.array([0.0]))[0]
    assert old == pytest.approx(new, abs=0.02)
    assert 22.0 < new < 23.0


@given(st.lists(st.floats(-2.0, 36.0), min_size=12, max_size=12), st.integers(0, 364))
def test_the_sea_stays_between_its_months(monthly: list[float], day: int) -> None:
    date = datetime.date(2025, 1, 1) + datetime.timedelta(days=day)
    sea = sea_temperature(monthly, date, np.array([-86_400.0, 0.0, 86_400.0]))
    assert sea.min() >= min(monthly) - 1e-9
    assert sea.max() <= max(monthly) + 1e-9


def test_twelve_months_are_needed() -> None:
    with pytest.raises(OutOfRange, match="12 months; found 11"):
        sea_temperature(MONTHLY[:11], datetime.date(2025, 1, 1), NOON)
