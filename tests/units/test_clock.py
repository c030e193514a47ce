"""Times of day."""

from __future__ import annotations

import contextlib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import BadQuantity
from anchorwatt.units import parse_clock, show_clock


@pytest.mark.parametrize(
    ("text", "time"), [("00:00", 0.0), ("7:05", 25_500.0), ("21:30", 77_400.0), ("24:00", 86_400.0)]
)
def test_it_reads(text: str, time: float) -> None:
    clock = parse_clock(text)
    assert (float(clock), clock.text, clock.dimension) == (time, text, "clock time")


@pytest.mark.parametrize("text", ["", "24:01", "25:00", "12:60", "9 pm", "21.30", "2130", "-1:00", "12:00:00", "١٢:٠٠"])
def test_it_refuses(text: str) -> None:
    with pytest.raises(BadQuantity, match='allowed: a time of day from "00:00" to "24:00"'):
        parse_clock(text)


@pytest.mark.parametrize("value", [1290, None, 21.5])
def test_what_is_no_text_is_refused(value: object) -> None:
    with pytest.raises(BadQuantity, match="a time of day"):
        parse_clock(value)  # type: ignore[arg-type]


@given(st.integers(0, 24 * 60 - 1))
def test_every_minute_of_the_day_goes_there_and_back(minute: int) -> None:
    assert parse_clock(show_clock(60.0 * minute)) == 60.0 * minute


@given(st.text(max_size=8))
def test_any_text_is_read_or_refused(text: str) -> None:
    with contextlib.suppress(BadQuantity):
        assert 0.0 <= parse_clock(text) <= 86_400.0
