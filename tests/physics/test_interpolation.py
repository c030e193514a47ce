"""Piecewise-linear reading and its area."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.physics.interpolation import integral, interpolate

VALUE = st.floats(-1e3, 1e3)
STEPS = st.lists(st.floats(0.01, 10.0), min_size=0, max_size=20)


@st.composite
def curves(draw: st.DrawFn) -> tuple[tuple[float, ...], tuple[float, ...]]:
    xs = [draw(st.floats(-20.0, 20.0))]
    for step in draw(STEPS):
        xs.append(xs[-1] + step)
    ys = draw(st.lists(VALUE, min_size=len(xs), max_size=len(xs)))
    return tuple(xs), tuple(ys)


@given(curves(), st.floats(-100.0, 300.0))
def test_reads_as_numpy_does(curve: tuple[tuple[float, ...], tuple[float, ...]], x: float) -> None:
    xs, ys = curve
    assert interpolate(x, xs, ys) == pytest.approx(float(np.interp(x, xs, ys)), abs=1e-8)


@given(curves())
def test_passes_through_its_points(curve: tuple[tuple[float, ...], tuple[float, ...]]) -> None:
    xs, ys = curve
    assert [interpolate(x, xs, ys) for x in xs] == pytest.approx(list(ys), abs=1e-8)


@given(curves(), st.floats(-100.0, 300.0))
def test_array_and_tuple_read_the_same(curve: tuple[tuple[float, ...], tuple[float, ...]], x: float) -> None:
    xs, ys = curve
    assert interpolate(x, np.array(xs), np.array(ys)) == interpolate(x, xs, ys)


def test_nan_stays_nan() -> None:
    assert math.isnan(interpolate(math.nan, (0.0, 1.0, 2.0), (1.0, 2.0, 3.0)))


@given(curves(), st.floats(-100.0, 100.0), st.floats(-100.0, 100.0))
def test_area_grows_by_the_trapezia_under_the_curve(
    curve: tuple[tuple[float, ...], tuple[float, ...]], one: float, other: float
) -> None:
    """Between two places the area is numpy's trapezium sum over the curve's own corners."""
    xs, ys = curve
    low, high = min(one, other), max(one, other)
    inside = [x for x in xs if low < x < high]
    grid = np.array([low, *inside, high])
    expected = float(np.trapezoid(np.interp(grid, xs, ys), grid))
    assert integral(high, xs, ys) - integral(low, xs, ys) == pytest.approx(expected, rel=1e-9, abs=1e-6)


@given(curves())
def test_area_begins_at_zero(curve: tuple[tuple[float, ...], tuple[float, ...]]) -> None:
    assert integral(0.0, *curve) == 0.0
