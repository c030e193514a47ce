"""Piecewise-linear tables: the one way a curve is read in the kernel."""

from __future__ import annotations

from typing import Protocol, SupportsIndex


class Table(Protocol):
    """A one-dimensional row of numbers: a tuple or a numpy array."""

    def __len__(self) -> int: ...

    def __getitem__(self, index: SupportsIndex, /) -> float: ...


def interpolate(x: float, xs: Table, ys: Table) -> float:
    """Read a piecewise-linear curve, held at its end values outside its points.

    Parameters
    ----------
    x : in the unit of xs
    xs : the points, rising, at least one
    ys : the values at the points, in any one unit

    Returns
    -------
    in the unit of ys

    Raises
    ------
    Nothing. That xs rises is the caller's duty: checking it at every call would cost more than the reading.

    Source
    ------
    Linear interpolation, any numerical text; numpy.interp is the reference in the tests.

    Example
    -------
    >>> interpolate(1.5, (0.0, 1.0, 2.0), (0.0, 10.0, 30.0))
    20.0
    """
    last = len(xs) - 1
    if x <= xs[0]:
        return ys[0]
    if x >= xs[last]:
        return ys[last]
    lower = 0
    upper = last
    while upper - lower > 1:
        middle = (lower + upper) // 2
        if xs[middle] <= x:
            lower = middle
        else:
            upper = middle
    share = (x - xs[lower]) / (xs[upper] - xs[lower])
    return ys[lower] + share * (ys[upper] - ys[lower])


def integral(x: float, xs: Table, ys: Table) -> float:
    """Area under the curve that `interpolate` reads, from zero to x, exactly.

    Parameters
    ----------
    x : in the unit of xs; below zero the area is counted negative
    xs : the points, rising, at least one
    ys : the values at the points, in any one unit

    Returns
    -------
    in the unit of xs times the unit of ys

    Raises
    ------
    Nothing.

    Source
    ------
    The trapezium rule, which is exact on a piecewise-linear curve.

    Example
    -------
    >>> integral(1.5, (0.0, 1.0, 2.0), (0.0, 10.0, 30.0))
    12.5
    """
    start = min(x, 0.0)
    end = max(x, 0.0)
    last = len(xs) - 1
    # The curve is level outside its points.
    area = ys[0] * max(0.0, min(end, xs[0]) - start) + ys[last] * max(0.0, end - max(start, xs[last]))
    for index in range(last):
        left = max(start, xs[index])
        right = min(end, xs[index + 1])
        if right > left:
            slope = (ys[index + 1] - ys[index]) / (xs[index + 1] - xs[index])
            middle = ys[index] + slope * (0.5 * (left + right) - xs[index])
            area += middle * (right - left)
    if x < 0.0:
        return -area
    return area
