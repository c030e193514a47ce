"""The planned week: what sinks slowly, and what the usual boat does."""

from __future__ import annotations

from anchorwatt.checks import Verdict
from tests.checks.changed import TWO_CABINS
from tests.checks.found import sure
from tests.checks.holds_and_fails.week import LARGE_BANK


def test_a_week_that_sinks_slowly_stays_above_its_reserve() -> None:
    assert sure("week-above-reserve", LARGE_BANK).verdict is Verdict.HOLDS


def test_the_usual_boat_moves_each_day() -> None:
    assert all(day.passage for day in TWO_CABINS.week)
