from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.drawings.chart import Panel, Scale, Series, hour_ticks, round_step, simplified, spread, ticks

readings = st.floats(-1e4, 1e4)


@given(readings, st.floats(1e-3, 1e4))
def test_ticks_enclose_the_readings_and_are_even(low: float, span: float) -> None:
    found = ticks(low, low + span)
    steps = [b - a for a, b in pairwise(found)]
    assert found[0] <= low + 1e-6 * span
    assert found[-1] >= low + span * (1 - 1e-6)
    assert steps == pytest.approx([steps[0]] * len(steps))
    assert 2 <= len(found) <= 8


def test_ticks_of_one_reading_still_make_a_scale() -> None:
    found = ticks(25.0, 25.0)
    assert found[0] <= 25.0 < found[-1]


@given(st.floats(1e-6, 1e6))
def test_steps_are_round(span: float) -> None:
    step = round_step(span, 5)
    mantissa = step / 10 ** math.floor(math.log10(step) + 1e-9)
    assert min(abs(mantissa - one) for one in (1.0, 2.0, 5.0)) < 1e-6
    assert span / step <= 5 + 1e-6


@pytest.mark.parametrize(("hours", "step"), [(10, 1), (12, 1), (14, 2), (24, 2), (48, 6), (100, 12)])
def test_hours_are_named_at_round_steps(hours: int, step: int) -> None:
    found = hour_ticks(0.0, hours * 3600.0)
    assert found[1] - found[0] == step * 3600.0


@given(st.lists(st.floats(0.0, 100.0), min_size=1, max_size=8))
def test_labels_never_crowd_and_stay_inside(wanted: list[float]) -> None:
    places = sorted(spread(wanted, 10.0, -20.0, 120.0))
    assert all(b - a >= 10.0 - 1e-9 for a, b in pairwise(places))
    assert places[0] >= -20.0 - 1e-9
    assert places[-1] <= 120.0 + 1e-9


@given(st.lists(st.floats(0.0, 100.0), min_size=1, max_size=8, unique=True))
def test_labels_keep_the_order_of_their_lines(wanted: list[float]) -> None:
    places = spread(wanted, 10.0, -20.0, 120.0)
    assert sorted(range(len(wanted)), key=wanted.__getitem__) == sorted(range(len(places)), key=places.__getitem__)


def test_labels_with_room_stand_where_they_are_wanted() -> None:
    assert spread([10.0, 40.0, 90.0], 10.0, 0.0, 100.0) == [10.0, 40.0, 90.0]


@given(st.lists(st.floats(0.0, 50.0), min_size=2, max_size=60))
def test_a_simplified_line_stays_within_its_detail(heights: list[float]) -> None:
    points = [(float(x), y) for x, y in enumerate(heights)]
    kept = simplified(points, 0.5)
    assert kept[0] == points[0]
    assert kept[-1] == points[-1]
    for x, y in points:
        before = max(point for point in kept if point[0] <= x)
        after = min(point for point in kept if point[0] >= x)
        run = after[0] - before[0] or 1.0
        away = abs((after[0] - before[0]) * (y - before[1]) - (x - before[0]) * (after[1] - before[1]))
        assert away / math.hypot(run, after[1] - before[1]) <= 0.5 + 1e-9


def test_a_gap_in_the_readings_is_a_gap_in_the_line() -> None:
    panel = Panel(Scale(0.0, 4.0, 0.0, 40.0), Scale(0.0, 1.0, 10.0, 0.0))
    series = Series("k", "name", [0, 1, 2, 3, 4], [0.5, 0.6, math.nan, 0.4, 0.5], "#000000")
    assert len(panel.curve(series)) == 2


def test_a_scale_maps_its_ends() -> None:
    scale = Scale(20.0, 30.0, 100.0, 0.0)
    assert (scale(20.0), scale(25.0), scale(30.0)) == (100.0, 50.0, 0.0)
