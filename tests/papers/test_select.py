from __future__ import annotations

from tests.papers import fake

from anchorwatt.assessment import Verdict
from anchorwatt.papers.select import hourly, some_rows, worst_first
from anchorwatt.units import show_clock


def test_worst_first() -> None:
    order = (Verdict.HOLDS, Verdict.NEAR, Verdict.CANNOT_TELL, Verdict.FAILS)
    found = [one.verdict for one in worst_first(fake.finding(verdict) for verdict in order)]
    assert found == list(reversed(order))


def test_the_last_row_is_always_shown() -> None:
    table = fake.night(("saloon",), hours=2.5)
    assert [show_clock(table.clock[row]) for row in hourly(table)] == ["22:00", "23:00", "23:30"]


def test_a_short_run_is_shown_in_short_steps_and_a_long_one_in_long_steps() -> None:
    short, long = fake.night((), hours=0.5), fake.night((), hours=24.0)
    assert len(some_rows(short)) == 6
    assert len(some_rows(long)) == 24
