"""The strip of a week: its size, its levels, its reserve."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.assessment.week import StripColumn
from anchorwatt.papers.strip_chart import LEVELS, WIDTH, per_day, strip_chart


def drawn(charges: list[float], reserve: float = 0.2, engine: str = "") -> list[str]:
    return strip_chart([StripColumn(charge, engine) for charge in charges], 1, reserve).split("\n")


@given(
    days=st.integers(min_value=1, max_value=14),
    charge=st.floats(min_value=0.0, max_value=1.0),
    reserve=st.floats(min_value=0.0, max_value=0.8),
)
def test_it_fits_the_page_and_has_ten_levels(days: int, charge: float, reserve: float) -> None:
    columns = [StripColumn(charge, "at anchor")] * (days * per_day(days))
    lines = strip_chart(columns, days, reserve).split("\n")
    assert len(lines) == LEVELS + 2
    assert max(map(len, lines)) <= 6 + WIDTH <= 78


@pytest.mark.parametrize(("charge", "full"), [(0.0, 0), (0.1, 1), (0.55, 5), (1.0, 10)])
def test_bars_are_as_high_as_the_charge(charge: float, full: int) -> None:
    assert sum("█" in line for line in drawn([charge])) == full


def test_half_a_level_is_half_a_block() -> None:
    assert sum("▄" in line for line in drawn([0.55])) == 1
    assert sum("▄" in line for line in drawn([0.54])) == 0


def test_the_reserve_is_a_line_where_the_bank_lies_below_it() -> None:
    lines = drawn([0.1, 0.5], reserve=0.3)
    assert [line for line in lines if "_" in line] == [lines[6]]
    assert lines[6] == " 40 % _█"


def test_engines_and_days_stand_below() -> None:
    lines = drawn([0.5] * per_day(1), engine="under way")
    assert lines[-2] == "      " + "w" * per_day(1)
    assert lines[-1] == "      |1"
