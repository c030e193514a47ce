"""A whole year of a weather file: its energy, its wrap, its calendar, its refusals."""

from __future__ import annotations

import datetime

import numpy as np
import pytest
from tests.climate.conftest import REAL, Station, hour_rows

from anchorwatt.climate import irradiance_on, weather, weather_year
from anchorwatt.climate.station import read_station
from anchorwatt.climate.year import LEAD_IN_DAYS, like_its_length, year_at
from anchorwatt.design.specification import Place
from anchorwatt.errors import BadWeather, OutOfRange

FILES = ("pvlib:12839.tm2", "pvlib:723170TYA.CSV", "pvlib:703165TY.csv")


@pytest.mark.parametrize("file", FILES)
@pytest.mark.parametrize("step", [600.0, 900.0])
@pytest.mark.parametrize("name", ["direct_normal", "diffuse_horizontal"])
def test_the_year_keeps_the_files_sun(file: str, step: float, name: str) -> None:
    year, table = weather_year(file, step), read_station(file)
    values = getattr(year, name)[year.time >= 0.0]
    hours = (0.5 * (values[:-1] + values[1:])).reshape(len(table), -1).mean(axis=1)
    assert hours.sum() == pytest.approx(getattr(table, name).sum(), rel=2e-3)
    assert np.abs(hours - getattr(table, name)).mean() < 2.0


@pytest.mark.parametrize("file", FILES)
def test_readings_stand_at_the_ends_of_their_hours(file: str) -> None:
    year, table = weather_year(file), read_station(file)
    on_the_hour = np.flatnonzero((year.time > 0.0) & (year.time % 3600.0 == 0.0))
    assert year.dry_bulb[on_the_hour] == pytest.approx(table.dry_bulb)
    assert year.pressure[on_the_hour] == pytest.approx(table.pressure)


def test_december_comes_before_january() -> None:
    year = weather_year(FILES[0])
    days = round(86_400.0 / year.step)
    assert year.time[0] == -LEAD_IN_DAYS * 86_400.0
    lead_in, december = year.dry_bulb[1 : LEAD_IN_DAYS * days], year.dry_bulb[-LEAD_IN_DAYS * days : -1]
    assert lead_in == pytest.approx(december)


def test_a_day_of_the_year_is_that_day_by_itself() -> None:
    year = weather_year(FILES[0], 600.0)
    day = weather(REAL, 1, 1, 600.0)
    start = (datetime.date(2001, 7, 21) - datetime.date(2001, 1, 1)).days * 86_400.0
    rows = np.flatnonzero((year.time >= start) & (year.time <= start + 86_400.0))
    alone = (day.time >= 0.0) & (day.time <= 86_400.0)
    assert year.dry_bulb[rows] == pytest.approx(day.dry_bulb[alone])
    assert year.humidity_ratio[rows] == pytest.approx(day.humidity_ratio[alone], rel=2e-3)
    assert year.sun_elevation[rows] == pytest.approx(day.sun_elevation[alone], abs=2e-3)
    assert year.direct_normal[rows].mean() == pytest.approx(day.direct_normal[alone].mean(), rel=0.01)


def test_the_sun_outside_the_air_follows_the_year() -> None:
    year = weather_year(FILES[0])
    january, july = (np.flatnonzero(year.time == day * 86_400.0 + 43_200.0)[0] for day in (2, 183))
    level = irradiance_on(year, 0.0, 0.0)
    bright = level.around_sun / np.maximum(year.direct_normal * year.diffuse_horizontal, 1.0)
    # The earth's path is 0.0167 out of round and nearest to the sun in January.
    assert bright[july] / bright[january] == pytest.approx((1.0167 / 0.9833) ** 2, rel=0.005)


def test_a_leap_january_does_not_shift_the_sun() -> None:
    table = read_station(FILES[0])
    assert not set(like_its_length(table).year.tolist()) & {1960, 1964, 1984, 1988}


def test_a_part_of_a_year_is_refused(station: Station) -> None:
    path = station.write("EPW", hour_rows(datetime.date(2023, 6, 1), 40))
    with pytest.raises(BadWeather, match="960 hours; allowed: a whole year"):
        weather_year(path)


def test_a_design_day_is_no_year(design_place: Place) -> None:
    with pytest.raises(BadWeather, match="a year needs one"):
        year_at(design_place)


def test_a_missing_file_is_named() -> None:
    with pytest.raises(BadWeather, match=r"nowhere\.epw"):
        weather_year("nowhere.epw")


def test_a_step_divides_the_day() -> None:
    with pytest.raises(OutOfRange, match="whole parts"):
        weather_year(FILES[0], 1000.0)


def test_a_year_is_read_once() -> None:
    assert weather_year(FILES[0]) is weather_year(FILES[0])
