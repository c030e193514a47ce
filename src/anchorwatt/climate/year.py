"""A whole year of a weather file as one table."""

from __future__ import annotations

import calendar
import math
from dataclasses import replace
from functools import lru_cache
from pathlib import Path

import numpy as np

from anchorwatt.climate.series import HOUR, Detail, Weather, instants, of_station
from anchorwatt.climate.station import HourTable, find, read_station
from anchorwatt.design.specification import Place
from anchorwatt.errors import BadWeather

YEAR_STEP = 900.0
"""s."""

LEAD_IN_DAYS = 28
"""Days before 1 January, taken from the year's end, in which a building forgets how it began."""

LONG = Detail(sun_grid=1800.0, points=12, derived_step=HOUR)
"""For a year: the sun to 0.0002°, its share at each five minutes, humidity and sky at the file's hours."""

NO_SEA = (math.nan,) * 12


def weather_year(weather_file: str | Path, step: float = YEAR_STEP) -> Weather:
    """The calendar year of a weather file, 1 January to 31 December, with the weeks before it.

    Time 0 is the midnight at which 1 January begins; `LEAD_IN_DAYS` days of December, those of the file's own end,
    come before it at negative times.

    Parameters
    ----------
    weather_file : path of an EPW, TMY3 or TMY2 file, or ``pvlib:NAME`` for one that the library pvlib carries
    step : s between instants, a whole part of an hour

    Raises
    ------
    BadWeather
        The file is missing, damaged or does not hold a whole year.
    OutOfRange
        A step that does not divide the day.

    Example
    -------
    >>> year = weather_year("pvlib:12839.tm2")
    >>> (year.month, year.day, float(year.time[-1]) / 86_400.0)
    (1, 1, 365.0)
    """
    return year_at(
        Place(math.nan, math.nan, math.nan, str(weather_file), 1, 1, None, NO_SEA, math.nan),
        step,
    )


def year_at(place: Place, step: float = YEAR_STEP) -> Weather:
    """The calendar year of a place's weather file; see `weather_year`."""
    if not place.weather_file:
        raise BadWeather("place: found a design day; allowed: a weather file, since a year needs one")
    status = _status(place.weather_file)
    return _year(replace(place, month=1, day=1, design_day=None), step, status)


def _status(weather_file: str) -> tuple[int, int]:
    """What tells a changed file from the one that was read before."""
    try:
        status = find(weather_file).stat()
    except (OSError, ValueError):
        return 0, 0  # reading it will say what is wrong
    return status.st_mtime_ns, status.st_size


@lru_cache(maxsize=4)
def _year(place: Place, step: float, _status: tuple[int, int]) -> Weather:
    table = read_station(place.weather_file)
    if not table.whole_year:
        raise table.problem(None, "", f"{len(table)} hours", "a whole year of hours, the last leading to the first")
    time = instants(LEAD_IN_DAYS, len(table) // 24 - 1, step)
    return of_station(place, like_its_length(table), time, step, LONG)


def like_its_length(table: HourTable) -> HourTable:
    """The table in a calendar year of its own number of days, so that the sun keeps step with the dates.

    A typical year's January may be of a leap year, and then the sun would know a 29 February that the table lacks.
    """
    january = int(table.year[np.flatnonzero(table.month == 1)[0]])
    while (len(table) == 8784) != calendar.isleap(january):
        january += 1
    return replace(table, year=np.full(len(table), january, dtype=np.int64))
