"""Small weather files written by the tests, and places that use them."""

from __future__ import annotations

import datetime
import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from pathlib import Path

import pytest

from anchorwatt.design.specification import DesignDay, Place

SEA = (22.0, 23.0, 24.0, 26.0, 27.0, 29.0, 30.0, 30.0, 29.0, 28.0, 26.0, 23.0)


@dataclass(frozen=True)
class HourRow:
    """One row of a weather file, in the units of the trade. `end` is the hour at which it ends."""

    date: datetime.date
    end: int
    dry_bulb: float = 28.0
    dew_point: float = 24.0
    pressure: float = 101_300.0
    wind_speed: float = 3.0
    wind_direction: float = 90.0
    direct_normal: float = 0.0
    diffuse: float = 0.0
    infrared: float = 9999.0
    cover: float = 99.0


def hour_rows(first: datetime.date, days: int) -> list[HourRow]:
    """Rows of quiet weather with a plain sun from 6 to 18 h."""
    rows = []
    for day in range(days):
        for end in range(1, 25):
            height = max(0.0, math.sin((end - 0.5 - 6.0) / 12.0 * math.pi))
            rows.append(
                HourRow(
                    first + datetime.timedelta(days=day),
                    end,
                    dry_bulb=round(28.0 - 3.0 * math.cos((end - 3.0) / 12.0 * math.pi), 1),
                    direct_normal=round(700.0 * height),
                    diffuse=round(120.0 * height),
                )
            )
    return rows


def epw_lines(rows: Iterable[HourRow]) -> list[str]:
    """An EPW file of an invented station at 25.8° N, 80.3° W."""
    heading = [
        "LOCATION,Invented Bay,-,XXX,invented,000000,25.80,-80.30,-5.0,2.0",
        "DESIGN CONDITIONS,0",
        "TYPICAL/EXTREME PERIODS,0",
        "GROUND TEMPERATURES,0",
        "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
        "COMMENTS 1,invented for a test",
        "COMMENTS 2,",
        "DATA PERIODS,1,1,Data,Sunday,1/1,12/31",
    ]
    data = [
        f"{row.date.year},{row.date.month},{row.date.day},{row.end},0,?,{row.dry_bulb},{row.dew_point},80,"
        f"{row.pressure:.0f},0,0,{row.infrared},0,{row.direct_normal},{row.diffuse},0,0,0,0,"
        f"{row.wind_direction},{row.wind_speed},5,{row.cover},9999,99999,9,999999999,0,0,0,0,0,0,0"
        for row in rows
    ]
    return heading + data


TMY3_COLUMNS = (
    "Date (MM/DD/YYYY)",
    "Time (HH:MM)",
    "DNI (W/m^2)",
    "DHI (W/m^2)",
    "OpqCld (tenths)",
    "Dry-bulb (C)",
    "Dew-point (C)",
    "Pressure (mbar)",
    "Wdir (degrees)",
    "Wspd (m/s)",
)


def tmy3_lines(rows: Iterable[HourRow]) -> list[str]:
    """A TMY3 file of the same invented station."""
    heading = [
        '000000,"INVENTED BAY",XX,-5.0,25.800,-80.300,2',
        ",".join(TMY3_COLUMNS),
    ]
    data = [
        f"{row.date:%m/%d/%Y},{row.end:02}:00,{row.direct_normal:.0f},{row.diffuse:.0f},"
        f"{-9900 if row.cover > 10 else row.cover:.0f},{row.dry_bulb},{row.dew_point},"
        f"{row.pressure / 100:.0f},{row.wind_direction:.0f},{row.wind_speed}"
        for row in rows
    ]
    return heading + data


def tmy2_lines(rows: Iterable[HourRow]) -> list[str]:
    """A TMY2 file of the same invented station."""
    heading = [" 00000 INVENTED_BAY           XX  -5 N 25 48 W  80 18     2"]
    data = [
        f" {row.date:%y%m%d}{row.end:02}00000000"
        f"0000?0{row.direct_normal:04.0f}?0{row.diffuse:04.0f}?0"
        "0000?00000?00000?00000?0"
        f"05?0{row.cover:02.0f}?0{row.dry_bulb * 10:04.0f}A7{row.dew_point * 10:04.0f}A7080A7"
        f"{row.pressure / 100:04.0f}A7{row.wind_direction:03.0f}A7{row.wind_speed * 10:03.0f}A7"
        "0200A777777A79999999999040F8100F8000A788A7"
        for row in rows
    ]
    return heading + data


WRITERS: dict[str, Callable[[Iterable[HourRow]], list[str]]] = {
    "EPW": epw_lines,
    "TMY3": tmy3_lines,
    "TMY2": tmy2_lines,
}


@dataclass(frozen=True)
class Station:
    """Writes weather files into the test's folder."""

    folder: Path

    rows = staticmethod(hour_rows)

    def write(self, format_name: str, rows: Iterable[HourRow]) -> Path:
        return self.write_lines(format_name, WRITERS[format_name](rows))

    def write_lines(self, format_name: str, lines: Iterable[str]) -> Path:
        path = self.folder / f"station.{format_name.lower()}"
        path.write_text("\n".join(lines) + "\n", encoding="utf-8")
        return path

    @staticmethod
    def lines(format_name: str, rows: Iterable[HourRow]) -> list[str]:
        return WRITERS[format_name](rows)


@pytest.fixture
def station(tmp_path: Path) -> Station:
    return Station(tmp_path)


REAL = Place(
    latitude=math.nan,
    longitude=math.nan,
    hours_east=math.nan,
    weather_file="pvlib:12839.tm2",
    month=7,
    day=21,
    design_day=None,
    sea_temperatures=SEA,
    heading=math.nan,
)

HOT_DAY = DesignDay(
    highest_dry_bulb=33.0,
    daily_range=8.0,
    dew_point=25.0,
    wind_speed=3.0,
    wind_direction=1.5,
    turbidity=3.5,
)


@pytest.fixture
def real_place() -> Place:
    """The real weather of a hot coastal station that pvlib's wheel carries."""
    return REAL


@pytest.fixture
def design_place() -> Place:
    """A hot design day at the same spot."""
    return replace(
        REAL,
        latitude=math.radians(25.8),
        longitude=math.radians(-80.2),
        hours_east=-5.0,
        weather_file="",
        design_day=HOT_DAY,
    )
