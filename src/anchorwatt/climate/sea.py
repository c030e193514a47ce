"""The sea's temperature from its monthly means."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from anchorwatt.errors import OutOfRange

Floats = NDArray[np.float64]

YEAR_LENGTH = 365.25
"""Days."""


def sea_temperature(monthly: Sequence[float], date: datetime.date, time: Floats) -> Floats:
    """Sea temperature, °C: each month's mean at its middle, straight lines between, round the year.

    Parameters
    ----------
    monthly : °C, January to December
    date : the day on which `time` is 0 at midnight
    time : s

    Example
    -------
    >>> steady = sea_temperature([29.0] * 12, datetime.date(2025, 8, 3), np.array([0.0]))
    >>> float(steady[0])
    29.0
    """
    if len(monthly) != 12:
        raise OutOfRange("sea temperatures are given for 12 months; found", len(monthly))
    middles = (np.arange(12.0) + 0.5) * YEAR_LENGTH / 12.0
    day = date.timetuple().tm_yday - 1 + np.asarray(time) / 86_400.0
    return np.interp(day, middles, np.asarray(monthly, dtype=np.float64), period=YEAR_LENGTH)
