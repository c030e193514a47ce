"""The table of weather: instants, the meaning of an hour, the wrap round the year, the two sources."""

from __future__ import annotations

import datetime
import math
from dataclasses import fields, replace
from typing import Any

import numpy as np
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.climate import Weather, weather
from anchorwatt.climate.station import read_station
from anchorwatt.design.specification import DesignDay, Place
from anchorwatt.errors import BadWeather, OutOfRange

HOUR = 3600.0
FIRST = datetime.date(1987, 7, 1)
SERIES = [field.name for field in fields(Weather) if field.type == "Floats"]


def at(table: Weather, name: str, hour: float) -> float:
    """A series at an hour after midnight of the design day."""
    return float(np.interp(hour * HOUR, table.time, getattr(table, name)))


def hourly(table: Weather, values: Any) -> Any:
    """Means of each hour by the trapezium rule."""
    count = round(HOUR / table.step)
    middles = 0.5 * (values[1:] + values[:-1])
    return middles.reshape(-1, count).mean(axis=1)


@pytest.fixture
def two_days(station: Any, real_place: Place) -> Place:
    """Three days of invented weather round 2 July."""
    path = station.write("EPW", station.rows(FIRST, 3))
    return replace(real_place, weather_file=str(path), month=7, day=2)


# ---- instants


def test_instants_run_from_midnight_to_midnight(two_days: Place) -> None:
    table = weather(two_days, 1, 1, 60.0)
    assert table.time[0] == -86_400.0
    assert table.time[-1] == 2 * 86_400.0
    assert np.allclose(np.diff(table.time), 60.0)
    assert (table.year, table.month, table.day) == (1987, 7, 2)


@pytest.mark.parametrize("source", ["real_place", "design_place"])
def test_every_series_is_finite_and_of_one_length(source: str, request: pytest.FixtureRequest) -> None:
    table = weather(request.getfixturevalue(source), 2, 1, 300.0)
    assert len(SERIES) == 14
    for name in SERIES:
        values = getattr(table, name)
        assert values.shape == table.time.shape, name
        assert np.isfinite(values).all(), name


@pytest.mark.parametrize(
    ("before", "after", "step"), [(-1, 0, 60.0), (0, -1, 60.0), (0, 0, 0.0), (0, 0, 7.3), (0, 0, 1e-4)]
)
def test_absurd_spans_are_refused(design_place: Place, before: int, after: int, step: float) -> None:
    with pytest.raises(OutOfRange, match="found"):
        weather(design_place, before, after, step)


def test_the_step_does_not_change_the_weather(real_place: Place) -> None:
    fine, coarse = weather(real_place, 1, 0, 60.0), weather(real_place, 1, 0, 600.0)
    for name in SERIES:
        assert getattr(fine, name)[::10] == pytest.approx(getattr(coarse, name), abs=1e-4), name


# ---- what an hour of a file means


@pytest.mark.parametrize("name", ["EPW", "TMY3", "TMY2"])
def test_a_reading_belongs_to_the_stated_hour(station: Any, real_place: Place, name: str) -> None:
    rows = station.rows(FIRST, 3)
    rows[24 + 13] = replace(rows[24 + 13], dry_bulb=36.0, wind_speed=9.0)  # the row that says 14
    place = replace(real_place, weather_file=str(station.write(name, rows)), month=7, day=2)
    table = weather(place, 0, 0, 60.0)
    assert table.time[table.dry_bulb.argmax()] == 14 * HOUR
    assert table.time[table.wind_speed.argmax()] == 14 * HOUR


@pytest.mark.parametrize("name", ["EPW", "TMY3", "TMY2"])
def test_the_sun_of_a_row_shines_in_the_hour_before_it(station: Any, real_place: Place, name: str) -> None:
    rows = [replace(row, direct_normal=0.0, diffuse=0.0) for row in station.rows(FIRST, 3)]
    rows[24 + 13] = replace(rows[24 + 13], direct_normal=600.0, diffuse=90.0)  # the row that says 14
    place = replace(real_place, weather_file=str(station.write(name, rows)), month=7, day=2)
    table = weather(place, 0, 0, 60.0)
    within = (table.time > 13 * HOUR) & (table.time < 14 * HOUR)
    away = (table.time < 13 * HOUR - 120.0) | (table.time > 14 * HOUR + 120.0)
    for values in (table.direct_normal, table.diffuse_horizontal):
        assert values[within].min() > 0.0
        assert values[away].max() < 1e-6


@pytest.mark.parametrize("file", ["pvlib:12839.tm2", "pvlib:723170TYA.CSV"], ids=["25.8 N by the sea", "36 N inland"])
@pytest.mark.parametrize("month", [1, 4, 7, 10])
def test_the_energy_of_each_hour_is_kept(real_place: Place, file: str, month: int) -> None:
    table = weather(replace(real_place, weather_file=file, month=month, day=3), 0, 20, 60.0)
    station = read_station(file)
    first = int(np.flatnonzero((station.month == month) & (station.day == 3))[0])
    rows = slice(first, first + 21 * 24)
    up = (table.sun_elevation > 0.0).astype(float)
    sunny = hourly(table, up) > 0.5  # hours of less sun are limited to what clear air lets through
    for name in ("direct_normal", "diffuse_horizontal"):
        wanted = getattr(station, name)[rows]
        got = hourly(table, getattr(table, name))
        assert got[sunny] == pytest.approx(wanted[sunny], rel=0.02, abs=3.0)  # the rule crosses the edge
        assert got.sum() == pytest.approx(wanted.sum(), rel=0.002)


def test_no_sun_before_it_rises(real_place: Place) -> None:
    table = weather(real_place, 3, 3, 60.0)
    down = table.sun_elevation <= 0.0
    assert down.any()
    assert table.direct_normal[down].max() == 0.0
    assert table.diffuse_horizontal[down].max() == 0.0
    assert table.global_horizontal[down].max() == 0.0


def test_the_level_plane_has_both_parts(real_place: Place) -> None:
    table = weather(real_place, 0, 0, 60.0)
    height = np.maximum(0.0, np.sin(table.sun_elevation))
    assert table.global_horizontal == pytest.approx(table.direct_normal * height + table.diffuse_horizontal)


def test_wind_is_steady_through_an_hour_and_a_calm_keeps_it(station: Any, real_place: Place) -> None:
    rows = station.rows(FIRST, 1)
    rows[9] = replace(rows[9], wind_direction=200.0)
    rows[10] = replace(rows[10], wind_speed=0.0, wind_direction=0.0)
    place = replace(real_place, weather_file=str(station.write("EPW", rows)), month=7, day=1)
    table = weather(place, 0, 0, 60.0)
    inside = (table.time >= 9.5 * HOUR) & (table.time < 11.5 * HOUR)
    assert np.degrees(table.wind_direction[inside]) == pytest.approx(200.0)
    assert np.degrees(table.wind_direction[~inside]) == pytest.approx(90.0)


def test_a_file_that_rounds_the_dew_point_over_the_dry_bulb(station: Any, real_place: Place) -> None:
    rows = [replace(row, dry_bulb=25.0, dew_point=25.3) for row in station.rows(FIRST, 1)]
    table = weather(replace(real_place, weather_file=str(station.write("EPW", rows)), month=7, day=1), 0, 0, 600.0)
    assert (table.dew_point <= table.dry_bulb).all()


# ---- the sky


def test_the_sky_comes_from_the_files_infrared(station: Any, real_place: Place) -> None:
    # black body at 290.00 K: 401.05 W/m2 (Stefan-Boltzmann, CODATA 2018 constant)
    rows = [replace(row, infrared=401.05) for row in station.rows(FIRST, 1)]
    table = weather(replace(real_place, weather_file=str(station.write("EPW", rows)), month=7, day=1), 0, 0, 600.0)
    assert table.sky_temperature == pytest.approx(290.0 - 273.15, abs=0.005)


def test_clouds_warm_the_sky(station: Any, real_place: Place) -> None:
    skies = []
    for cover in (0.0, 5.0, 10.0):
        rows = [replace(row, cover=cover) for row in station.rows(FIRST, 1)]
        place = replace(real_place, weather_file=str(station.write("EPW", rows)), month=7, day=1)
        skies.append(weather(place, 0, 0, 600.0).sky_temperature.mean())
    assert skies[0] < skies[1] < skies[2]


def test_a_sky_taken_as_clear_is_said(two_days: Place, station: Any) -> None:
    assert "sky taken as clear" in weather(two_days, 0, 0, 600.0).source
    rows = [replace(row, cover=3.0) for row in station.rows(FIRST, 3)]
    station.write("EPW", rows)
    assert "sky" not in weather(two_days, 0, 0, 600.0).source


# ---- days: wrap, choice, and those that are not there


def test_the_year_closes(real_place: Place) -> None:
    station = read_station("pvlib:12839.tm2")
    table = weather(replace(real_place, month=1, day=1), 1, 0, 600.0)
    assert at(table, "dry_bulb", -1.0) == station.dry_bulb[-2]  # 31 December 23:00
    assert at(table, "dry_bulb", 0.0) == station.dry_bulb[-1]
    assert at(table, "dry_bulb", 1.0) == station.dry_bulb[0]
    last = weather(replace(real_place, month=12, day=31), 0, 1, 600.0)
    assert at(last, "dry_bulb", 25.0) == station.dry_bulb[0]


def test_a_short_file_serves_the_days_it_holds(two_days: Place) -> None:
    weather(two_days, 1, 1, 600.0)
    with pytest.raises(BadWeather, match=r"hours from 1 July to 3 July; allowed: a file that holds the days"):
        weather(two_days, 2, 0, 600.0)
    with pytest.raises(BadWeather, match=r"station\.epw"):
        weather(two_days, 0, 2, 600.0)


@pytest.mark.parametrize(("month", "day"), [(2, 30), (13, 1), (7, 0), (0, 5), (8, 1)])
def test_a_date_that_the_file_lacks(two_days: Place, month: int, day: int) -> None:
    with pytest.raises(BadWeather, match=f"found day {day} of month {month}"):
        weather(replace(two_days, month=month, day=day), 0, 0, 600.0)


def test_a_missing_value_matters_only_on_the_days_asked_for(station: Any, real_place: Place) -> None:
    rows = station.rows(FIRST, 3)
    rows[60] = replace(rows[60], dry_bulb=99.9)  # 3 July, 13:00
    place = replace(real_place, weather_file=str(station.write("EPW", rows)), month=7, day=1)
    weather(place, 0, 0, 600.0)
    with pytest.raises(BadWeather, match=r"station\.epw:69: dry_bulb: found a missing value"):
        weather(replace(place, day=3), 0, 0, 600.0)


def test_the_boats_own_clock_shifts_the_file(two_days: Place) -> None:
    by_file = weather(two_days, 0, 0, 600.0)
    ahead = weather(replace(two_days, hours_east=-4.0), 0, 0, 600.0)
    for hour in (3.0, 10.0, 23.0):
        assert at(ahead, "dry_bulb", hour) == pytest.approx(at(by_file, "dry_bulb", hour - 1.0))
    noons = [table.time[table.sun_elevation.argmax()] for table in (by_file, ahead)]
    assert noons[1] - noons[0] == pytest.approx(HOUR, abs=600.0)


def test_a_place_at_the_other_side_of_the_globe_is_refused(real_place: Place) -> None:
    with pytest.raises(BadWeather, match=r"12839.tm2.*while the sun is down there.*25.80° N, -80.27° E"):
        weather(replace(real_place, longitude=math.radians(100.0)), 0, 0, 600.0)


def test_the_source_names_file_place_and_day(real_place: Place) -> None:
    table = weather(real_place, 0, 0, 600.0)
    assert table.source == "real weather, file 12839.tm2 (TMY2, MIAMI FL), 21 July"
    assert "/" not in table.source
    assert (
        "the file's night of the highest enthalpy" in weather(replace(real_place, month=0, day=0), 0, 0, 600.0).source
    )


def test_either_a_file_or_a_design_day(real_place: Place, design_place: Place) -> None:
    with pytest.raises(BadWeather, match="found both"):
        weather(replace(design_place, weather_file="pvlib:12839.tm2"), 0, 0, 600.0)
    with pytest.raises(BadWeather, match="found neither"):
        weather(replace(real_place, weather_file=""), 0, 0, 600.0)


def test_a_file_without_any_wind(station: Any, real_place: Place) -> None:
    rows = [replace(row, wind_speed=0.0, wind_direction=0.0) for row in station.rows(FIRST, 1)]
    with pytest.raises(BadWeather, match="wind direction: found none in the whole file"):
        weather(replace(real_place, weather_file=str(station.write("EPW", rows)), month=7, day=1), 0, 0, 600.0)


# ---- design days


def test_a_design_day_spans_its_range(design_place: Place) -> None:
    table = weather(design_place, 1, 1, 60.0)
    assert table.dry_bulb.max() == pytest.approx(33.0)
    assert table.dry_bulb.min() == pytest.approx(25.0)
    assert table.source.startswith("design day, 33.0 °C falling by 8.0 K, dew point 25.0 °C")


def test_a_design_days_dew_point_stops_at_the_dry_bulb(design_place: Place) -> None:
    assert design_place.design_day is not None
    day = replace(design_place.design_day, dew_point=27.0)
    table = weather(replace(design_place, design_day=day), 0, 0, 60.0)
    assert table.dew_point == pytest.approx(np.minimum(27.0, table.dry_bulb))


def test_a_clear_sky_is_near_an_independent_one(design_place: Place) -> None:
    # Haurwitz 1945 as in pvlib: global sun by zenith alone; under a high sun, where the two should agree
    from pvlib.clearsky import haurwitz

    table = weather(design_place, 0, 0, 60.0)
    high = table.sun_elevation > math.radians(50.0)
    zenith = pd.Series(90.0 - np.degrees(table.sun_elevation[high]))
    other = haurwitz(zenith)["ghi"].to_numpy()
    assert table.global_horizontal[high] == pytest.approx(other, rel=0.06)


def test_a_thicker_air_dims_the_sun(design_place: Place) -> None:
    assert design_place.design_day is not None
    clear, thick = (
        weather(
            replace(design_place, design_day=replace(design_place.design_day, turbidity=turbidity)),
            0,
            0,
            600.0,
        )
        for turbidity in (2.5, 5.0)
    )
    assert clear.direct_normal.sum() > thick.direct_normal.sum()
    assert clear.diffuse_horizontal.sum() < thick.diffuse_horizontal.sum()


@pytest.mark.parametrize(("month", "day"), [(0, 0), (2, 29), (6, 31)])
def test_a_design_day_needs_a_date(design_place: Place, month: int, day: int) -> None:
    with pytest.raises(BadWeather, match="allowed: a date of a common year"):
        weather(replace(design_place, month=month, day=day), 0, 0, 600.0)


@pytest.mark.parametrize("lacking", ["latitude", "longitude", "hours_east"])
def test_a_design_day_needs_a_place(design_place: Place, lacking: str) -> None:
    unknown: dict[str, Any] = {lacking: math.nan}
    with pytest.raises(BadWeather, match="needs latitude, longitude and the hours east"):
        weather(replace(design_place, **unknown), 0, 0, 600.0)


@settings(max_examples=40, deadline=None)
@given(
    latitude=st.floats(-89.9, 89.9),
    longitude=st.floats(-180.0, 180.0),
    month=st.integers(1, 12),
    highest=st.floats(-10.0, 50.0),
    daily_range=st.floats(0.0, 25.0),
    below=st.floats(0.0, 30.0),
    turbidity=st.floats(1.0, 8.0),
)
def test_any_design_day_anywhere_is_sound(
    latitude: float,
    longitude: float,
    month: int,
    highest: float,
    daily_range: float,
    below: float,
    turbidity: float,
) -> None:
    day = DesignDay(highest, daily_range, min(40.0, highest - below), 2.0, 0.0, turbidity)
    place = Place(
        math.radians(latitude),
        math.radians(longitude),
        longitude / 15.0,
        "",
        month,
        15,
        day,
        (20.0,) * 12,
        math.nan,
    )
    table = weather(place, 1, 0, 1200.0)
    for name in SERIES:
        assert np.isfinite(getattr(table, name)).all(), name
    down = table.sun_elevation <= 0.0
    assert (table.direct_normal[down] == 0.0).all()
    assert table.direct_normal.min() >= 0.0
    assert table.diffuse_horizontal.min() >= 0.0
    assert table.direct_normal.max() < 1200.0
    assert (table.dew_point <= table.dry_bulb).all()
    assert (table.sky_temperature <= table.dry_bulb + 1e-9).all()
    assert table.humidity_ratio.min() > 0.0
