"""The weather file formats that pvlib reads, and what it does not check.

pvlib turns text into columns; here the rows are first checked one by one, so that a fault is reported with
its line, and the columns are then brought to SI, missing values to nan.
"""

from __future__ import annotations

import calendar
import datetime
import io
import math
import re
import warnings
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from anchorwatt.climate.station import HOURS_OF_A_YEAR, Floats, HourTable, next_dates
from anchorwatt.errors import BadWeather, Problem

if TYPE_CHECKING:
    import pandas as pd

SHORTEST_FILE = 24
"""Hours. Less than a day cannot hold a design day."""


@dataclass(frozen=True)
class Column:
    """Where a format keeps one of the table's quantities, and how to bring it to SI."""

    name: str
    factor: float
    missing: Callable[[Floats], Any]  # which raw values stand for "not known"


@dataclass(frozen=True)
class Format:
    """One format: how its rows look, which columns count."""

    name: str
    first_row: int  # rows of heading before the hours
    row: re.Pattern[str]  # groups year, month, day, hour
    row_shape: str  # for the error message
    columns: dict[str, Column]
    calm_is_zero: bool  # direction 0 means "no wind" rather than north


def at_least(limit: float) -> Callable[[Floats], Any]:
    """Missing are values from `limit` up."""
    return lambda values: values >= limit


def at_most(limit: float) -> Callable[[Floats], Any]:
    """Missing are values from `limit` down."""
    return lambda values: values <= limit


EPW = Format(
    name="EPW",
    first_row=8,
    row=re.compile(r"(?P<year>\d{4}),\s*(?P<month>\d{1,2}),\s*(?P<day>\d{1,2}),\s*(?P<hour>\d{1,2}),"),
    row_shape="year,month,day,hour 1 to 24,...",
    columns={
        "dry_bulb": Column("temp_air", 1.0, at_least(99.9)),
        "dew_point": Column("temp_dew", 1.0, at_least(99.9)),
        "pressure": Column("atmospheric_pressure", 1.0, at_least(999999)),
        "wind_speed": Column("wind_speed", 1.0, at_least(999)),
        "wind_direction": Column("wind_direction", math.pi / 180.0, at_least(999)),
        "direct_normal": Column("dni", 1.0, at_least(9999)),
        "diffuse_horizontal": Column("dhi", 1.0, at_least(9999)),
        "sky_infrared": Column("ghi_infrared", 1.0, lambda values: (values >= 9999) | (values <= 0)),
        "opaque_cover": Column("opaque_sky_cover", 0.1, at_least(99)),
    },
    calm_is_zero=False,
)

TMY3 = Format(
    name="TMY3",
    first_row=2,
    row=re.compile(r"(?P<month>\d{2})/(?P<day>\d{2})/(?P<year>\d{4}),(?P<hour>\d{2}):00,"),
    row_shape="MM/DD/YYYY,HH:00 with HH 01 to 24,...",
    columns={
        "dry_bulb": Column("temp_air", 1.0, at_most(-9900)),
        "dew_point": Column("temp_dew", 1.0, at_most(-9900)),
        "pressure": Column("pressure", 100.0, at_most(-9900)),
        "wind_speed": Column("wind_speed", 1.0, at_most(-9900)),
        "wind_direction": Column("wind_direction", math.pi / 180.0, at_most(-9900)),
        "direct_normal": Column("dni", 1.0, at_most(-9900)),
        "diffuse_horizontal": Column("dhi", 1.0, at_most(-9900)),
        "opaque_cover": Column("OpqCld (tenths)", 0.1, lambda values: (values < 0) | (values > 10)),
    },
    calm_is_zero=True,
)

TMY2 = Format(
    name="TMY2",
    first_row=1,
    row=re.compile(r" (?P<year>\d{2})(?P<month>\d{2})(?P<day>\d{2})(?P<hour>\d{2}).{133}"),
    row_shape="a blank, YYMMDDHH with HH 01 to 24, and 133 characters of data",
    columns={
        "dry_bulb": Column("DryBulb", 0.1, at_least(9999)),
        "dew_point": Column("DewPoint", 0.1, at_least(9999)),
        "pressure": Column("Pressure", 100.0, at_least(9999)),
        "wind_speed": Column("Wspd", 0.1, at_least(999)),
        "wind_direction": Column("Wdir", math.pi / 180.0, at_least(999)),
        "direct_normal": Column("DNI", 1.0, at_least(9999)),
        "diffuse_horizontal": Column("DHI", 1.0, at_least(9999)),
        "opaque_cover": Column("OpqCld", 0.1, at_least(99)),
    },
    calm_is_zero=True,
)

LIMITS: dict[str, tuple[float, float, float, str]] = {
    # quantity: least and most in SI, scale to the unit of the message, that unit
    "dry_bulb": (-60.0, 60.0, 1.0, "°C"),
    "dew_point": (-60.0, 40.0, 1.0, "°C"),
    "pressure": (50_000.0, 110_000.0, 0.01, "mbar"),
    "wind_speed": (0.0, 100.0, 1.0, "m/s"),
    "wind_direction": (0.0, 2.0 * math.pi + 1e-9, 180.0 / math.pi, "°"),
    "direct_normal": (0.0, 1500.0, 1.0, "W/m²"),
    "diffuse_horizontal": (0.0, 1500.0, 1.0, "W/m²"),
    "sky_infrared": (0.0, 800.0, 1.0, "W/m²"),
    "opaque_cover": (0.0, 1.0, 10.0, "tenths"),
}
"""No place on the sea exceeds these; a value outside is damage, not weather."""


@dataclass(frozen=True)
class Hour:
    """The interval that a row covers, by its start."""

    year: int
    month: int
    day: int
    hour: int


def read_hours(path: Path, content: bytes) -> HourTable:
    """The hours of a weather file in any of the three formats.

    pvlib's reader for TMY2 opens the file by itself, so the path is needed next to the content.
    """
    lines = text_of(path.name, content).splitlines()
    layout = format_of(path.name, lines)
    hours = check_rows(path.name, layout, lines)
    data, meta = read_with_pvlib(path, layout, lines)
    if len(data) != len(hours):
        raise fault(path.name, None, f"{len(data)} readable hours in {len(hours)} rows", "rows of one shape")
    return table(path.name, layout, hours, data, meta)


def fault(file: str, line: int | None, found: str, allowed: str, key: str = "") -> BadWeather:
    return BadWeather(str(Problem(file, line, key, found, allowed)))


def text_of(file: str, content: bytes) -> str:
    """The file as text. Station names are often in Latin-1; the figures are ASCII in any case."""
    if b"\0" in content:
        line = content[: content.index(b"\0")].count(b"\n") + 1
        raise fault(file, line, "a zero byte", "plain text")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return content.decode("latin-1")


def format_of(file: str, lines: Sequence[str]) -> Format:
    """Tell the format by the file's heading; its name may be anything."""
    first = lines[0] if lines else ""
    second = lines[1] if len(lines) > 1 else ""
    if first.upper().startswith("LOCATION,"):
        return EPW
    if second.startswith("Date (MM/DD/YYYY),Time (HH:MM)"):
        return TMY3
    if re.match(r" \d{5} .+ [NS] +\d+ +\d+ [EW] +\d+ +\d+ +-?\d+", first):
        return TMY2
    found = f'the heading "{first[:40]}"' if first.strip() else "an empty file"
    raise fault(
        file,
        1,
        found,
        'EPW (begins with "LOCATION,"), TMY3 (second line begins with "Date (MM/DD/YYYY)") or TMY2',
    )


def check_rows(file: str, layout: Format, lines: Sequence[str]) -> list[Hour]:
    """Every row of hours has the right shape and follows the one before."""
    last = len(lines)
    while last > 0 and not lines[last - 1].strip():
        last -= 1
    if layout is EPW:
        check_epw_heading(file, lines[: layout.first_row])
    rows = lines[layout.first_row : last]
    if len(rows) < SHORTEST_FILE:
        raise fault(file, last, f"{len(rows)} hours", f"{SHORTEST_FILE} hours to a year")
    if len(rows) > max(HOURS_OF_A_YEAR):
        line = layout.first_row + max(HOURS_OF_A_YEAR) + 1
        raise fault(file, line, f"{len(rows)} hours", "one year of hours at most")
    fields = (lines[layout.first_row - 1] if layout is TMY3 else rows[0]).count(",")
    hours: list[Hour] = []
    for line, row in enumerate(rows, start=layout.first_row + 1):
        match = layout.row.match(row)
        if match is None:
            raise fault(file, line, f'"{row[:24]}"', layout.row_shape)
        if row.count(",") != fields:
            raise fault(file, line, f"{row.count(',') + 1} fields", f"{fields + 1} fields in every row")
        hour = interval(*(int(match[name]) for name in ("year", "month", "day", "hour")))
        if hour is None:
            raise fault(file, line, f'the date and hour "{row[:16].strip()}"', layout.row_shape)
        if hours and not follows(hours[-1], hour):
            raise fault(
                file,
                line,
                f"{hour.day}/{hour.month} {hour.hour + 1:02}:00",
                f"the hour after {hours[-1].day}/{hours[-1].month} {hours[-1].hour + 1:02}:00 (day/month)",
            )
        hours.append(hour)
    return hours


def check_epw_heading(file: str, heading: Sequence[str]) -> None:
    """An EPW file has eight heading lines; the last tells how many rows make an hour."""
    wanted = "DATA PERIODS"
    if len(heading) < EPW.first_row or not heading[-1].upper().startswith(wanted):
        raise fault(file, len(heading), "another heading", f'eight heading lines, the last "{wanted},1,1,..."')
    parts = heading[-1].split(",")
    if len(parts) < 3 or parts[2].strip() != "1":
        found = parts[2].strip() if len(parts) > 2 else "nothing"
        raise fault(file, len(heading), found, "1 row an hour", "DATA PERIODS, rows an hour")
    if len(heading[0].split(",")) < 10:
        raise fault(file, 1, f'"{heading[0][:40]}"', "LOCATION and nine fields", "LOCATION")


def interval(year: int, month: int, day: int, hour: int) -> Hour | None:
    """The interval that ends at the stated hour, 1 to 24; 0 stands for 24 of the day before."""
    year = year if year >= 100 else 1900 + year  # TMY2 has two digits; its hours are of 1961 to 1990
    if year == 0 or not 1 <= month <= 12 or not 0 <= hour <= 24:
        return None
    if not 1 <= day <= calendar.monthrange(year, month)[1]:
        return None
    if hour > 0:
        return Hour(year, month, day, hour - 1)
    before = datetime.date(year, month, day) - datetime.timedelta(days=1)
    return Hour(before.year, before.month, before.day, 23)


def follows(before: Hour, hour: Hour) -> bool:
    return hour.hour == (before.hour + 1) % 24 and (hour.month, hour.day) in next_dates(
        before.month, before.day, before.hour
    )


def read_with_pvlib(path: Path, layout: Format, lines: Sequence[str]) -> tuple[pd.DataFrame, dict[str, Any]]:
    """The columns, as pvlib reads them."""
    import pandas as pd
    from pvlib import iotools

    try:
        with warnings.catch_warnings():
            # a damaged value turns a column into text, which pandas warns of; it is found below by line
            warnings.simplefilter("ignore", pd.errors.DtypeWarning)
            if layout is EPW:
                data, meta = iotools.read_epw(io.StringIO("\n".join(lines)))
            elif layout is TMY3:
                data, meta = iotools.read_tmy3(io.StringIO("\n".join(lines)))
            else:
                data, meta = iotools.read_tmy2(path)
    except (ValueError, KeyError, IndexError, TypeError, OverflowError, pd.errors.ParserError) as error:
        line = first_damaged_line(layout, lines)
        raise fault(path.name, line, str(error).strip()[:80], f"figures as {layout.name} has them") from None
    return data, meta


def first_damaged_line(layout: Format, lines: Sequence[str]) -> int | None:
    """Which line pvlib cannot read. In the other two formats the heading is all that is left to blame."""
    if layout is not TMY2:
        return 1
    # after the date come only digits, blanks, minus signs and one-letter flags
    flags = re.compile(r"[A-Z?]")
    for line, row in enumerate(lines[layout.first_row :], start=layout.first_row + 1):
        if re.search(r"[^ \d?A-Z-]", row) or len(flags.findall(row)) != TMY2_FLAGS:
            return line
    return 1


TMY2_FLAGS = 21
"""Source flags in a TMY2 row (user's manual, NREL 1995, table 3-2)."""


def table(file: str, layout: Format, hours: Sequence[Hour], data: pd.DataFrame, meta: dict[str, Any]) -> HourTable:
    """The columns in SI, each value checked."""
    first_line = layout.first_row + 1
    columns = {name: column(file, layout, name, data, first_line) for name in LIMITS}
    direction, speed = columns["wind_direction"], columns["wind_speed"]
    calm = (speed == 0.0) | (direction == 0.0) if layout.calm_is_zero else speed == 0.0
    columns["wind_direction"] = np.where(calm, np.nan, direction)
    latitude, longitude = float(meta["latitude"]), float(meta["longitude"])
    hours_east, elevation = float(meta["TZ"]), float(meta["altitude"])
    for key, value, limit in (("latitude", latitude, 90.0), ("longitude", longitude, 180.0)):
        if not abs(value) <= limit:
            raise fault(file, 1, f"{value:g}°", f"-{limit:g}° to {limit:g}°", key)
    if not -12.0 <= hours_east <= 14.0:
        raise fault(file, 1, f"{hours_east:g} h", "-12 h to 14 h", "time zone")
    return HourTable(
        file=file,
        place_name=place_name(meta),
        format=layout.name,
        latitude=math.radians(latitude),
        longitude=math.radians(longitude),
        hours_east=hours_east,
        elevation=elevation,
        first_line=first_line,
        year=np.array([hour.year for hour in hours], dtype=np.int64),
        month=np.array([hour.month for hour in hours], dtype=np.int64),
        day=np.array([hour.day for hour in hours], dtype=np.int64),
        hour=np.array([hour.hour for hour in hours], dtype=np.int64),
        **columns,
    )


def column(file: str, layout: Format, name: str, data: pd.DataFrame, first_line: int) -> Floats:
    """One quantity in SI. A format that lacks it gives nan throughout."""
    import pandas as pd

    source = layout.columns.get(name)
    if source is None:
        return np.full(len(data), np.nan)
    if source.name not in data.columns:
        raise fault(file, layout.first_row, "no such column", f"the columns of {layout.name}", source.name)
    raw = data[source.name]
    values = np.asarray(pd.to_numeric(raw, errors="coerce"), dtype=np.float64)
    unread = np.flatnonzero(~np.isfinite(values))
    if len(unread):
        row = int(unread[0])
        found = raw.iloc[row]
        shown = "nothing" if isinstance(found, float) and math.isnan(found) else f'"{found}"'
        raise fault(file, first_line + row, shown, "a number", source.name)
    least, most, scale, unit = LIMITS[name]
    result = np.where(source.missing(values), np.nan, values * source.factor)
    with np.errstate(invalid="ignore"):
        outside = np.flatnonzero((result < least) | (result > most))
    if len(outside):
        row = int(outside[0])
        raise fault(
            file,
            first_line + row,
            f"{result[row] * scale:g} {unit}",
            f"{least * scale:g} to {most * scale:g} {unit}",
            source.name,
        )
    return result


def place_name(meta: dict[str, Any]) -> str:
    """The station as the file names it."""
    parts = [str(meta.get(key, "")).strip().strip('"') for key in ("city", "City", "Name", "state-prov")]
    parts += [str(meta.get(key, "")).strip() for key in ("State", "country")]
    return " ".join(part for part in parts if part and part not in ("-", "NA"))
