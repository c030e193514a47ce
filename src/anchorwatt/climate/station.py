"""A weather file as a table of hours, whatever its format.

EPW, TMY3 and TMY2 agree on time: an hour's radiation is the mean of the sixty minutes that end at the
stated hour, everything else is read at that hour, and clocks show local standard time all year. A table
therefore holds hours by the interval they cover, and `dry_bulb` and its like belong to its end.
"""

from __future__ import annotations

import datetime
import functools
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from anchorwatt.errors import BadWeather, Problem

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]

LARGEST_FILE = 20_000_000
"""Bytes. A year of hours takes about 2 MB in each of the formats."""

HOURS_OF_A_YEAR = (8760, 8784)

IN_PVLIB = "pvlib:"


@dataclass(frozen=True, eq=False)
class HourTable:
    """The hours of a weather file, in a row without a gap. Missing values are nan."""

    file: str  # its name, without folders
    place_name: str
    format: str  # "EPW", "TMY3" or "TMY2"
    latitude: float  # rad
    longitude: float  # rad
    hours_east: float  # h
    elevation: float  # m
    first_line: int  # line of the file that holds the first hour
    year: Integers  # of the interval's start
    month: Integers
    day: Integers
    hour: Integers  # 0 to 23, the interval's start
    dry_bulb: Floats  # °C, end of the interval
    dew_point: Floats  # °C, end of the interval
    pressure: Floats  # Pa, end of the interval
    wind_speed: Floats  # m/s, end of the interval
    wind_direction: Floats  # rad, from; end of the interval; nan also in a calm
    direct_normal: Floats  # W/m2, mean of the interval
    diffuse_horizontal: Floats  # W/m2, mean of the interval
    sky_infrared: Floats  # W/m2 on a level plane, mean of the interval; nan where the format has none
    opaque_cover: Floats  # 0 to 1 of the sky, end of the interval

    def __len__(self) -> int:
        return len(self.year)

    @property
    def whole_year(self) -> bool:
        """Whether the last hour leads back to the first."""
        ends_where_it_began = (self.hour[0] == (self.hour[-1] + 1) % 24) and (
            (self.month[0], self.day[0]) in next_dates(int(self.month[-1]), int(self.day[-1]), int(self.hour[-1]))
        )
        return len(self) in HOURS_OF_A_YEAR and ends_where_it_began

    def date_of(self, row: int) -> datetime.date:
        """The day of a row."""
        return datetime.date(int(self.year[row]), int(self.month[row]), int(self.day[row]))

    def problem(self, row: int | None, key: str, found: str, allowed: str) -> BadWeather:
        """The error that points at a row of the file."""
        line = None if row is None else self.first_line + row
        return BadWeather(str(Problem(self.file, line, key, found, allowed)))


def next_dates(month: int, day: int, hour: int) -> tuple[tuple[int, int], ...]:
    """The dates (month, day) on which the hour after `hour` may fall, leap years and others."""
    if hour < 23:
        return ((month, day),)
    if (month, day) == (2, 28):
        return ((2, 29), (3, 1))
    lengths = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
    if day < lengths[month - 1]:
        return ((month, day + 1),)
    return ((month % 12 + 1, 1),)


def read_station(weather_file: str) -> HourTable:
    """Read a weather file: a path, or ``pvlib:NAME`` for one that pvlib's wheel carries.

    Keeps the files it has read in memory, each until it changes on disk, and their tables on disk (`kept`).
    """
    path = find(weather_file)
    try:
        status = path.stat()
    except (OSError, ValueError) as error:  # ValueError: a zero character in the path
        raise unusable(weather_file, getattr(error, "strerror", None) or "an unreadable path") from None
    if not path.is_file():
        raise unusable(weather_file, "something that is not a file")
    if status.st_size > LARGEST_FILE:
        raise unusable(weather_file, f"{status.st_size} bytes")
    return _read(path.absolute(), status.st_mtime_ns, status.st_size)


@functools.lru_cache(maxsize=8)
def _read(path: Path, _changed: int, _size: int) -> HourTable:
    from anchorwatt.climate.formats import read_hours
    from anchorwatt.climate.kept import kept

    try:
        content = path.read_bytes()
    except OSError as error:
        raise unusable(path.name, error.strerror or "an unreadable file") from None
    return kept(path.name, content, lambda: read_hours(path, content))


def unusable(file: str, found: str) -> BadWeather:
    """The error for a file that cannot even be opened."""
    return BadWeather(
        str(Problem(file, None, "", found, f"a weather file (EPW, TMY3, TMY2) up to {LARGEST_FILE} bytes"))
    )


def find(weather_file: str) -> Path:
    """The path of a weather file. Never the network: an address counts as a file that is not there."""
    if not weather_file.startswith(IN_PVLIB):
        return Path(weather_file)
    name = weather_file.removeprefix(IN_PVLIB)
    folder = pvlib_data()
    carried = sorted(
        path.name
        for path in folder.iterdir()
        if path.suffix.lower() == ".tm2" or path.stem.lower().endswith(("ty", "tya"))
    )
    if name not in carried:
        allowed = ", ".join(IN_PVLIB + each for each in carried)
        raise BadWeather(str(Problem(weather_file, None, "", "no such file in pvlib", allowed)))
    return folder / name


def pvlib_data() -> Path:
    """Folder of the data files in pvlib's wheel."""
    import importlib.util

    found = importlib.util.find_spec("pvlib")
    if found is None or found.origin is None:  # a broken installation: say so rather than fail later
        raise BadWeather("pvlib is not installed, so no weather file can be read")
    return Path(found.origin).parent / "data"
