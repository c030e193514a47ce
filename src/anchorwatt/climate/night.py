"""The hardest night of a weather file."""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from anchorwatt.climate.station import HourTable
from anchorwatt.physics.moist_air import enthalpy, humidity_ratio_from_dew_point

NIGHT_BEGINS, NIGHT_ENDS = 21, 31
"""Hours of local standard time: 21:00 to 07:00 of the next day."""


@lru_cache(maxsize=8)
def enthalpies(table: HourTable) -> NDArray[np.float64]:
    """Enthalpy of the outside air at the end of each hour, J/kg of dry air; nan where a value is missing.

    Kept for the files used last.
    """
    result = np.full(len(table), np.nan)
    dew_points = np.minimum(table.dew_point, table.dry_bulb)
    known = np.isfinite(dew_points) & np.isfinite(table.pressure)
    for row in np.flatnonzero(known):
        ratio = humidity_ratio_from_dew_point(float(dew_points[row]), float(table.pressure[row]))
        result[row] = enthalpy(float(table.dry_bulb[row]), ratio)
    return result


def night_means(table: HourTable, midnights: NDArray[np.int64], shift: int) -> NDArray[np.float64]:
    """Mean enthalpy from 21:00 to 07:00 of the nights that begin on given days, J/kg.

    Parameters
    ----------
    table : the hours
    midnights : rows of the intervals that begin the days
    shift : whole hours by which the boat's clock is ahead of the file's
    """
    outside = enthalpies(table)
    hours = np.arange(NIGHT_BEGINS, NIGHT_ENDS + 1)
    # the row that ends at hour h of the day is h - 1 rows after the row that begins at midnight
    rows = midnights[:, None] + hours - 1 - shift
    if table.whole_year:
        rows = rows % len(table)
    inside = (rows >= 0) & (rows < len(table))
    values = np.where(inside, outside[np.clip(rows, 0, len(table) - 1)], np.nan)
    return np.asarray(values.mean(axis=1), dtype=np.float64)
