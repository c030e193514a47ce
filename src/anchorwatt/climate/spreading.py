"""From the means of an hour to the instants within it.

Straight lines between hourly values put the sun over the horizon before it rises and lose energy at noon. So
it is the clear-sky share (the sun over a shape that follows its height) that runs smoothly from hour to hour,
by the smoothing of Rymes and Myers: average each point with its neighbours, give each hour its own mean back,
and again. The shape makes night dark, the means keep the energy.

Source: M. Rymes and D. Myers, Mean preserving algorithm for smoothly interpolating averaged data, Solar
Energy 71, 2001 (the method's idea, from memory; the weighting by the sun's shape is ours).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

HOUR = 3600.0

POINTS = 30
"""Points in an hour at which the share is held."""

PASSES_A_POINT = 2
"""Rounds of smoothing for each point of an hour. About two let an hour's value spread over the hour."""

TRUSTED = 0.5
"""Share of an hour that must be lit before its clear-sky share says anything about its neighbours."""

HIGHEST_SHARE = 5_000.0
"""W/m2, near four times the sun outside the air: room for air clearer than the shape's at the horizon.

Limits the minutes of sun in an hour that is mostly dark, where a file's modelled sun can be stronger than any
air would let through. What is cut is a few Wh/m2 a day.
"""


@dataclass(frozen=True, eq=False)
class Spread:
    """Instants whose hourly means are those of the file."""

    values: Floats
    lost: float  # share of the energy that fell in hours without sun, where it cannot be put


def points_within(first: float, hours: int, points: int = POINTS) -> Floats:
    """The instants of (hours, points) at the middle of equal parts of each hour, s."""
    offsets = (np.arange(points) + 0.5) * (HOUR / points)
    return first + HOUR * np.arange(hours)[:, None] + offsets


def spread(means: Floats, first: float, within: Floats, time: Floats, shape: Floats) -> Spread:
    """Values at `time` whose hourly means are `means`.

    Parameters
    ----------
    means : of each hour
    first : s, start of the first hour
    within : shape at `points_within(first, len(means))`
    time : s, instants wanted, all within the hours
    shape : shape at `time`
    """
    mean_shape = within.mean(axis=1)
    lit = mean_shape > 0.0
    trusted = np.mean(within > 0.0, axis=1) >= TRUSTED
    if not trusted.any():
        trusted = lit
    total = float(means.sum())
    lost = float(means[~lit].sum()) / total if total > 0.0 else 0.0
    if not trusted.any():
        return Spread(np.zeros_like(time), lost)
    points = points_within(first, len(means), within.shape[1])
    share = smooth_share(means, within, trusted)
    placed = (share * within).mean(axis=1)
    factor = np.where(placed > 0.0, means / np.where(placed > 0.0, placed, 1.0), 0.0)
    share = share * factor[:, None]
    share[~trusted] = np.minimum(share[~trusted], HIGHEST_SHARE)
    # Within its own hour's points: an instant next to an hour's edge must not borrow from the other side.
    hour = np.clip((time - first) // HOUR, 0, len(means) - 1).astype(np.int64)
    inside = np.clip(time, points[hour, 0], points[hour, -1])
    return Spread(np.interp(inside, points.ravel(), share.ravel()) * shape, lost)


def smooth_share(means: Floats, within: Floats, trusted: NDArray[np.bool_]) -> Floats:
    """Clear-sky share at the points of each hour, smooth, with the hours' means all but kept."""
    count, points = within.shape
    rows = np.flatnonzero(trusted)
    target, weight = means[rows], within[rows]
    mean_weight = weight.mean(axis=1)
    # Dark hours and slivers of sun take the share of the nearest trusted hour, so that night leaves no mark.
    padded = np.empty(count * points + 2)
    padded[1:-1] = np.repeat((target / mean_weight)[nearest(rows, count)], points)
    share = np.empty((count, points))
    flat = share.reshape(-1)
    for _ in range(PASSES_A_POINT * points):
        padded[0], padded[-1] = padded[1], padded[-2]
        np.add(padded[:-2], padded[1:-1], out=flat)
        flat += padded[2:]
        flat /= 3.0
        kept = share[rows]
        kept += ((target - np.einsum("ij,ij->i", kept, weight) / points) / mean_weight)[:, None]
        # A share is never quite 0, so that the factor that closes the balance finds something to scale.
        share[rows] = np.maximum(kept, 1e-9, out=kept)
        padded[1:-1] = flat
    return np.maximum(share, 1e-9)


def nearest(rows: NDArray[np.int64], count: int) -> NDArray[np.int64]:
    """Which of the rising `rows` is nearest to each of `count` rows, the earlier of two that are as near."""
    row = np.arange(count)
    after = np.clip(np.searchsorted(rows, row), 0, len(rows) - 1)
    before = np.maximum(after - 1, 0)
    return np.where(np.abs(row - rows[before]) <= np.abs(rows[after] - row), before, after)
