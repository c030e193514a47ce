"""Weather, sun and sea at equally spaced instants round one day."""

from __future__ import annotations

import datetime
import math
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from anchorwatt.climate import design_day, spreading
from anchorwatt.climate.night import night_means
from anchorwatt.climate.sea import sea_temperature
from anchorwatt.climate.station import HourTable, read_station
from anchorwatt.climate.sun import GRID, beam_shape, level_shape, sun_outside, sun_path
from anchorwatt.design.specification import DesignDay, Place
from anchorwatt.errors import BadWeather, OutOfRange
from anchorwatt.physics.cloud import cloudy_sky_temperature
from anchorwatt.physics.envelope import STEFAN_BOLTZMANN
from anchorwatt.physics.moist_air import humidity_ratio_from_dew_point
from anchorwatt.physics.sun_and_sky import sky_temperature

Floats = NDArray[np.float64]

DAY = 86_400.0
HOUR = 3_600.0

MISPLACED = 0.05
"""Share of a file's sun that may fall into dark hours. More says that the place or its clock is wrong."""

AIR_FOR_REFRACTION = 15.0
"""°C, good enough for the refraction of every day."""

DERIVED_STEP = 600.0
"""s between the instants at which humidity and sky are worked out; straight lines between."""

LARGEST_TABLE = 5_000_000
"""Instants."""

MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


@dataclass(frozen=True)
class Detail:
    """How closely sun and humidity are followed between a file's hours."""

    sun_grid: float  # s between the sun's positions that are computed in full
    points: int  # in an hour, at which the sun's share is held
    derived_step: float  # s between the instants at which humidity and sky are worked out


FINE = Detail(GRID, spreading.POINTS, DERIVED_STEP)


@dataclass(frozen=True, eq=False)
class Weather:
    """Everything outside the boat at equally spaced instants of local standard time."""

    place_name: str
    source: str  # for screens: where the figures come from
    latitude: float  # rad, north positive
    longitude: float  # rad, east positive
    year: int  # of the design day
    month: int
    day: int
    step: float  # s
    time: Floats  # s, 0 = midnight at the start of the design day
    dry_bulb: Floats  # °C
    dew_point: Floats  # °C
    humidity_ratio: Floats  # kg/kg
    pressure: Floats  # Pa
    wind_speed: Floats  # m/s
    wind_direction: Floats  # rad, from; steady through an hour, in a calm as before it
    direct_normal: Floats  # W/m2
    diffuse_horizontal: Floats  # W/m2
    global_horizontal: Floats  # W/m2, the two together on a level plane
    sky_temperature: Floats  # °C
    sun_elevation: Floats  # rad, apparent
    sun_azimuth: Floats  # rad from north
    sea_temperature: Floats  # °C


def weather(place: Place, days_before: int, days_after: int, step: float) -> Weather:
    """Weather from midnight `days_before` days before the design day to midnight `days_after` days after it.

    Parameters
    ----------
    place : where and when, and the weather file or design day
    days_before : whole days before the design day
    days_after : whole days after the end of the design day
    step : s between instants, a whole part of a day

    Raises
    ------
    BadWeather
        The file is missing, damaged or does not hold the days, or the place lacks something.
    OutOfRange
        Days negative, a step that does not divide the day, or a table of absurd size.
    """
    instants(days_before, days_after, step)  # refuses what is wrong with them before the file is read
    if place.weather_file and place.design_day is not None:
        raise BadWeather("place: found both a weather file and a design day; allowed: one of them")
    table = read_station(place.weather_file) if place.weather_file else None
    return _kept(replace(place, heading=math.nan), table, days_before, days_after, step)


@lru_cache(maxsize=8)
def _kept(place: Place, table: HourTable | None, days_before: int, days_after: int, step: float) -> Weather:
    """The weather of a place, whatever its boat's heading; kept for those asked for last, about 2 MB each."""
    time = instants(days_before, days_after, step)
    if table is not None:
        return of_station(place, table, time, step)
    if place.design_day is not None:
        return of_design_day(place, place.design_day, time, step)
    raise BadWeather("place: found neither a weather file nor a design day; allowed: one of them")


def instants(days_before: int, days_after: int, step: float) -> Floats:
    """The instants of the table, s from midnight at the start of the design day; both ends included."""
    if days_before < 0 or days_after < 0:
        raise OutOfRange("days before and after are not negative; found", min(days_before, days_after))
    if step <= 0.0 or not math.isclose(DAY / step, round(DAY / step), rel_tol=1e-9):
        raise OutOfRange("a step divides the day into whole parts; found", step)
    count = (days_before + 1 + days_after) * round(DAY / step)
    if count > LARGEST_TABLE:
        raise OutOfRange(f"a table holds up to {LARGEST_TABLE} instants; found", count)
    return np.arange(count + 1, dtype=np.float64) * step - days_before * DAY


def of_design_day(place: Place, day: DesignDay, time: Floats, step: float) -> Weather:
    """The table of a design day, every day alike but for the sun's path."""
    if math.isnan(place.latitude) or math.isnan(place.longitude) or math.isnan(place.hours_east):
        raise BadWeather("place: a design day needs latitude, longitude and the hours east of its clock")
    try:
        date = datetime.date(design_day.YEAR, place.month, place.day)
    except ValueError:
        raise BadWeather(
            f"place: found day {place.day} of month {place.month}; allowed: a date of a common year, since a "
            "design day has no warmest night to choose"
        ) from None
    pressure = design_day.SEA_LEVEL_PRESSURE
    path = sun_path(
        place.latitude,
        place.longitude,
        place.hours_east,
        date,
        float(time[0]),
        float(time[-1]),
        pressure,
        AIR_FOR_REFRACTION,
        0.0,
    )
    elevation, azimuth = path.at(time)
    beam, diffuse = design_day.clear_sky(elevation, day.turbidity, sun_outside(date), pressure)
    dry_bulb = design_day.dry_bulb_of(day, time)
    dew_point = np.minimum(day.dew_point, dry_bulb)
    steady = np.ones_like(time)
    humidity, sky = humidity_and_sky(
        time, dry_bulb, dew_point, pressure * steady, 0.0 * steady, np.full_like(time, np.nan)
    )
    return Weather(
        place_name="",
        source=(
            f"design day, {day.highest_dry_bulb:.1f} °C falling by {day.daily_range:.1f} K, dew point "
            f"{day.dew_point:.1f} °C, clear sky of Linke turbidity {day.turbidity:g}"
        ),
        latitude=place.latitude,
        longitude=place.longitude,
        year=date.year,
        month=date.month,
        day=date.day,
        step=step,
        time=time,
        dry_bulb=dry_bulb,
        dew_point=dew_point,
        humidity_ratio=humidity,
        pressure=pressure * steady,
        wind_speed=day.wind_speed * steady,
        wind_direction=day.wind_direction * steady,
        direct_normal=beam,
        diffuse_horizontal=diffuse,
        global_horizontal=beam * level_shape(elevation) + diffuse,
        sky_temperature=sky,
        sun_elevation=elevation,
        sun_azimuth=azimuth,
        sea_temperature=sea_temperature(place.sea_temperatures, date, time),
    )


def of_station(place: Place, table: HourTable, time: Floats, step: float, detail: Detail = FINE) -> Weather:
    """The table of days out of a weather file."""
    latitude = table.latitude if math.isnan(place.latitude) else place.latitude
    longitude = table.longitude if math.isnan(place.longitude) else place.longitude
    hours_east = table.hours_east if math.isnan(place.hours_east) else place.hours_east
    shift = hours_east - table.hours_east
    midnight = row_of_day(place, table, time, shift)
    rows = rows_for(table, time, midnight, shift)
    if rows is None:
        raise table.problem(
            None,
            "",
            f"hours from {date_text(table, 0)} to {date_text(table, len(table) - 1)}",
            f"a file that holds the days asked for round {date_text(table, midnight)}",
        )
    date = table.date_of(midnight)
    first = (int(rows[0]) - midnight + shift) * HOUR  # s, start of the first interval
    rows = rows % len(table)
    ends = first + HOUR * (np.arange(len(rows)) + 1.0)

    def read_at(name: str) -> Floats:
        return np.asarray(np.interp(time, ends, known(table, name, rows)), dtype=np.float64)

    dry_bulb = read_at("dry_bulb")
    dew_point = np.minimum(read_at("dew_point"), dry_bulb)  # files round the two apart
    pressure = read_at("pressure")
    path = sun_path(
        latitude,
        longitude,
        hours_east,
        date,
        float(min(first, time[0])),
        float(max(ends[-1], time[-1])),
        float(pressure.mean()),
        AIR_FOR_REFRACTION,
        table.elevation,
        detail.sun_grid,
    )
    elevation, azimuth = path.at(time)
    within, _ = path.at(spreading.points_within(first, len(rows), detail.points))
    beam = spreading.spread(known(table, "direct_normal", rows), first, beam_shape(within), time, beam_shape(elevation))
    diffuse = spreading.spread(
        known(table, "diffuse_horizontal", rows), first, level_shape(within), time, level_shape(elevation)
    )
    if max(beam.lost, diffuse.lost) > MISPLACED:
        raise table.problem(
            None,
            "latitude, longitude, hours east",
            f"{max(beam.lost, diffuse.lost):.0%} of the file's sun while the sun is down there",
            f"a place near the file's own: {math.degrees(table.latitude):.2f}° N, "
            f"{math.degrees(table.longitude):.2f}° E, {table.hours_east:g} h",
        )
    cover = table.opaque_cover[rows]
    infrared = np.interp(time, ends - 0.5 * HOUR, table.sky_infrared[rows])
    humidity, sky = humidity_and_sky(
        time, dry_bulb, dew_point, pressure, np.interp(time, ends, np.nan_to_num(cover)), infrared, detail.derived_step
    )
    return Weather(
        place_name=table.place_name,
        source=source_text(place, table, date, bool(np.isnan(infrared).any() and np.isnan(cover).any())),
        latitude=latitude,
        longitude=longitude,
        year=date.year,
        month=date.month,
        day=date.day,
        step=step,
        time=time,
        dry_bulb=dry_bulb,
        dew_point=dew_point,
        humidity_ratio=humidity,
        pressure=pressure,
        wind_speed=read_at("wind_speed"),
        wind_direction=held_direction(table)[rows][nearest_end(time, float(ends[0]), len(rows))],
        direct_normal=beam.values,
        diffuse_horizontal=diffuse.values,
        global_horizontal=beam.values * level_shape(elevation) + diffuse.values,
        sky_temperature=sky,
        sun_elevation=elevation,
        sun_azimuth=azimuth,
        sea_temperature=sea_temperature(place.sea_temperatures, date, time),
    )


def row_of_day(place: Place, table: HourTable, time: Floats, shift: float) -> int:
    """Row of the interval that begins the design day."""
    midnights = np.flatnonzero(table.hour == 0)
    if (place.month, place.day) != (0, 0):
        for row in midnights:
            if (table.month[row], table.day[row]) == (place.month, place.day):
                return int(row)
        raise table.problem(
            None, "month and day", f"day {place.day} of month {place.month}", "a date that the file holds"
        )
    fitting = np.array([row for row in midnights if rows_for(table, time, int(row), shift) is not None], dtype=np.int64)
    means = night_means(table, fitting, round(shift))
    if not np.isfinite(means).any():
        raise table.problem(None, "", "no whole night with the days asked for round it", "a longer file")
    return int(fitting[np.nanargmax(means)])


def rows_for(table: HourTable, time: Floats, midnight: int, shift: float) -> NDArray[np.int64] | None:
    """Rows that the instants need, uncut over the year's end; none if the file does not hold them.

    The instant at which a file begins has no reading, since the first belongs to the end of the first hour: a
    file that begins on the first day asked for lends that hour its first reading.
    """
    first = midnight + math.floor(time[0] / HOUR - shift) - 1
    last = midnight + math.floor(time[-1] / HOUR - shift)
    if not table.whole_year:
        if first < -1 or last > len(table):
            return None
        first, last = max(first, 0), min(last, len(table) - 1)
    return np.arange(first, last + 1)


def known(table: HourTable, name: str, rows: NDArray[np.int64]) -> Floats:
    """A quantity at given rows, none of them missing."""
    values: Floats = getattr(table, name)[rows]
    missing = np.flatnonzero(np.isnan(values))
    if len(missing):
        raise table.problem(int(rows[missing[0]]), name, "a missing value", "a value at every hour asked for")
    return values


def held_direction(table: HourTable) -> Floats:
    """Wind direction with calms (and unknowns) as the hour before: a boat stays as she lies."""
    direction = table.wind_direction
    blowing = np.flatnonzero(~np.isnan(direction))
    if not len(blowing):
        raise table.problem(None, "wind direction", "none in the whole file", "a direction at some hour")
    before = np.searchsorted(blowing, np.arange(len(table)), side="right") - 1
    if not table.whole_year:
        before = np.maximum(before, 0)
    return np.asarray(direction[blowing[before]], dtype=np.float64)  # -1 leads back to the year's last


def nearest_end(time: Floats, first_end: float, count: int) -> NDArray[np.int64]:
    """Which reading is nearest to each instant: the wind is steady from half past to half past."""
    return np.clip(np.floor((time - first_end) / HOUR + 0.5), 0, count - 1).astype(np.int64)


def humidity_and_sky(
    time: Floats,
    dry_bulb: Floats,
    dew_point: Floats,
    pressure: Floats,
    cover: Floats,
    infrared: Floats,
    derived_step: float = DERIVED_STEP,
) -> tuple[Floats, Floats]:
    """Humidity ratio and sky temperature, °C; the sky from its infrared where that is known."""
    nodes = np.linspace(time[0], time[-1], 1 + max(1, math.ceil((time[-1] - time[0]) / derived_step)))
    air, dew, press, clouds = (np.interp(nodes, time, each).tolist() for each in (dry_bulb, dew_point, pressure, cover))
    ratio = [humidity_ratio_from_dew_point(d, p) for d, p in zip(dew, press, strict=True)]
    sky = [
        cloudy_sky_temperature(sky_temperature(a, d, p), a, c)
        for a, d, p, c in zip(air, dew, press, clouds, strict=True)
    ]
    measured = (infrared / STEFAN_BOLTZMANN) ** 0.25 - 273.15
    return (
        np.interp(time, nodes, ratio),
        np.where(np.isnan(measured), np.interp(time, nodes, sky), measured),
    )


def date_text(table: HourTable, row: int) -> str:
    """The date of a row, as "3 August"."""
    return f"{table.day[row]} {MONTHS[int(table.month[row]) - 1]}"


def source_text(place: Place, table: HourTable, date: datetime.date, clear: bool) -> str:
    """What screens say of a real day."""
    choice = "the file's night of the highest enthalpy, " if (place.month, place.day) == (0, 0) else ""
    sky = ", sky taken as clear where the file does not say" if clear else ""
    when = f"{date.day} {MONTHS[date.month - 1]}"
    return f"real weather, file {table.file} ({table.format}, {table.place_name}), {choice}{when}{sky}"
