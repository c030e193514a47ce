"""Weather files: what is read, and what is refused."""

from __future__ import annotations

import datetime
import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from anchorwatt.climate.station import LARGEST_FILE, pvlib_data, read_station
from anchorwatt.errors import BadWeather

FORMATS = ("EPW", "TMY3", "TMY2")
FIRST = datetime.date(1987, 7, 1)


@pytest.mark.parametrize("name", FORMATS)
def test_the_three_formats_tell_the_same_weather(station: Any, name: str) -> None:
    rows = station.rows(FIRST, 2)
    table = read_station(str(station.write(name, rows)))
    assert table.format == name
    assert len(table) == 48
    assert table.dry_bulb == pytest.approx([row.dry_bulb for row in rows])
    assert table.dew_point == pytest.approx([row.dew_point for row in rows])
    assert table.pressure == pytest.approx([row.pressure for row in rows])
    assert table.wind_speed == pytest.approx([row.wind_speed for row in rows])
    assert np.degrees(table.wind_direction) == pytest.approx([row.wind_direction for row in rows])
    assert table.direct_normal == pytest.approx([row.direct_normal for row in rows])
    assert table.diffuse_horizontal == pytest.approx([row.diffuse for row in rows])


@pytest.mark.parametrize("name", FORMATS)
def test_the_heading_places_the_station(station: Any, name: str) -> None:
    table = read_station(str(station.write(name, station.rows(FIRST, 1))))
    assert math.degrees(table.latitude) == pytest.approx(25.8)
    assert math.degrees(table.longitude) == pytest.approx(-80.3)
    assert table.hours_east == -5.0
    assert table.elevation == 2.0
    assert "INVENTED" in table.place_name.upper()


@pytest.mark.parametrize("name", FORMATS)
def test_hours_are_kept_by_the_interval_they_cover(station: Any, name: str) -> None:
    table = read_station(str(station.write(name, station.rows(FIRST, 2))))
    assert (table.day[0], table.hour[0]) == (1, 0)
    assert (table.day[23], table.hour[23]) == (1, 23)
    assert (table.day[24], table.hour[24]) == (2, 0)


def test_a_real_file_against_its_own_text() -> None:
    # columns of the TMY2 user's manual (NREL 1995), table 3-2, counted from 1 without the leading blank
    lines = (pvlib_data() / "12839.tm2").read_text(encoding="ascii").splitlines()[1:]
    table = read_station("pvlib:12839.tm2")

    def column(first: int, last: int) -> list[float]:
        return [float(line[first : last + 1]) for line in lines]

    assert table.whole_year
    assert table.dry_bulb * 10.0 == pytest.approx(column(67, 70))
    assert table.dew_point * 10.0 == pytest.approx(column(73, 76))
    assert table.pressure / 100.0 == pytest.approx(column(84, 87))
    assert table.wind_speed * 10.0 == pytest.approx(column(95, 97))
    assert table.direct_normal == pytest.approx(column(23, 26))
    assert table.diffuse_horizontal == pytest.approx(column(29, 32))


def test_a_year_put_together_from_different_years_is_whole() -> None:
    table = read_station("pvlib:723170TYA.CSV")
    assert table.whole_year
    assert len(set(table.year.tolist())) > 1


def test_midnight_written_as_zero_belongs_to_the_day_before(station: Any) -> None:
    rows = station.rows(FIRST, 2)
    lines = station.lines("TMY3", rows)
    lines = [line.replace("07/01/1987,24:00", "07/02/1987,00:00") for line in lines]
    lines = [line.replace("07/02/1987,24:00", "07/03/1987,00:00") for line in lines]
    table = read_station(str(station.write_lines("TMY3", lines)))
    assert (table.day[23], table.hour[23]) == (1, 23)


def test_missing_values_are_not_figures(station: Any) -> None:
    rows = station.rows(FIRST, 1)
    rows[5] = replace(rows[5], dry_bulb=99.9, wind_direction=999.0)
    table = read_station(str(station.write("EPW", rows)))
    assert np.flatnonzero(np.isnan(table.dry_bulb)).tolist() == [5]
    assert np.flatnonzero(np.isnan(table.wind_direction)).tolist() == [5]


def test_a_calm_has_no_direction(station: Any) -> None:
    rows = station.rows(FIRST, 1)
    rows[3] = replace(rows[3], wind_speed=0.0, wind_direction=0.0)
    rows[4] = replace(rows[4], wind_speed=2.0, wind_direction=0.0)
    assert np.isnan(read_station(str(station.write("EPW", rows))).wind_direction).nonzero()[0].tolist() == [3]
    # the TMY formats write 360 for north, so a 0 with some wind is unknown
    assert np.isnan(read_station(str(station.write("TMY3", rows))).wind_direction).nonzero()[0].tolist() == [
        3,
        4,
    ]


def test_a_changed_file_is_read_again(station: Any) -> None:
    rows = station.rows(FIRST, 1)
    path = station.write("EPW", rows)
    assert read_station(str(path)).dry_bulb[0] == rows[0].dry_bulb
    rows[0] = replace(rows[0], dry_bulb=31.25)
    station.write("EPW", rows)
    assert read_station(str(path)).dry_bulb[0] == 31.25


def test_accents_in_a_station_name_are_no_fault(station: Any, tmp_path: Path) -> None:
    lines = station.lines("EPW", station.rows(FIRST, 1))
    path = tmp_path / "latin.epw"
    path.write_bytes("\n".join(lines).replace("Invented Bay", "Bahía Inventada").encode("latin-1"))
    assert "Bahía" in read_station(str(path)).place_name


# ---- what is refused: file name, line where there is one, what was found, what is allowed


def edited(station: Any, name: str, line: int, text: str) -> Path:
    """A sound file with one line (counted from 1) replaced."""
    lines = station.lines(name, station.rows(FIRST, 2))
    lines[line - 1] = text
    path: Path = station.write_lines(name, lines)
    return path


def refusal(path: Path | str) -> str:
    with pytest.raises(BadWeather) as caught:
        read_station(str(path))
    return str(caught.value)


def test_a_missing_file(tmp_path: Path) -> None:
    message = refusal(tmp_path / "nowhere.epw")
    assert "nowhere.epw" in message
    assert "No such file" in message
    assert "allowed: a weather file" in message


def test_a_folder(tmp_path: Path) -> None:
    assert "not a file" in refusal(tmp_path)


def test_an_address_is_never_fetched() -> None:
    assert "No such file" in refusal("https://station.invalid/some.epw")


def test_a_file_that_is_too_large(tmp_path: Path) -> None:
    path = tmp_path / "large.epw"
    with path.open("wb") as file:
        file.truncate(LARGEST_FILE + 1)
    message = refusal(path)
    assert f"found {LARGEST_FILE + 1} bytes" in message
    assert str(LARGEST_FILE) in message.split("allowed")[1]


@pytest.mark.parametrize("name", ["nowhere.tm2", "../__init__.py", "Altitude.h5", ""])
def test_a_name_that_pvlib_does_not_carry(name: str) -> None:
    message = refusal(f"pvlib:{name}")
    assert f"pvlib:{name}" in message
    assert "pvlib:12839.tm2" in message.split("allowed")[1]


@pytest.mark.parametrize(
    ("content", "found"),
    [
        (b"", "an empty file"),
        (b"anchorwatt: 1\nname: not weather\n", 'the heading "anchorwatt: 1"'),
        (b"%PDF-1.7\n\0\0\0\0", "a zero byte"),
    ],
    ids=["empty", "another text", "not text"],
)
def test_a_file_of_another_kind(tmp_path: Path, content: bytes, found: str) -> None:
    path = tmp_path / "other.epw"
    path.write_bytes(content)
    message = refusal(path)
    assert message.startswith("other.epw:")
    assert found in message


@pytest.mark.parametrize("name", FORMATS)
def test_a_file_cut_short_in_its_first_day(station: Any, name: str) -> None:
    message = refusal(station.write(name, station.rows(FIRST, 1)[:10]))
    assert "found 10 hours; allowed: 24 hours to a year" in message


def test_a_file_of_more_than_a_year(station: Any) -> None:
    message = refusal(station.write("EPW", station.rows(datetime.date(1987, 1, 1), 367)))
    assert f":{8 + 8784 + 1}: found {367 * 24} hours" in message


@pytest.mark.parametrize(("name", "heading"), [("EPW", 8), ("TMY3", 2), ("TMY2", 1)])
def test_a_lost_row_shows_where(station: Any, name: str, heading: int) -> None:
    rows = station.rows(FIRST, 2)
    del rows[20]
    message = refusal(station.write(name, rows))
    assert f":{heading + 21}: found 1/7 22:00; allowed: the hour after 1/7 20:00" in message


@pytest.mark.parametrize(("name", "heading"), [("EPW", 8), ("TMY3", 2), ("TMY2", 1)])
def test_a_row_cut_off_shows_where(station: Any, name: str, heading: int) -> None:
    lines = station.lines(name, station.rows(FIRST, 2))
    line = heading + 30
    message = refusal(edited(station, name, line, lines[line - 1][:30]))
    assert f"station.{name.lower()}:{line}: found " in message


@pytest.mark.parametrize(("name", "heading"), [("EPW", 8), ("TMY3", 2), ("TMY2", 1)])
def test_text_in_place_of_a_figure_shows_where(station: Any, name: str, heading: int) -> None:
    line = heading + 30
    text = station.lines(name, station.rows(FIRST, 2))[line - 1]
    damaged = text[:70] + "x" + text[71:] if name == "TMY2" else text.replace("24.0", "24.o")
    message = refusal(edited(station, name, line, damaged))
    assert f"station.{name.lower()}:{line}:" in message
    assert "allowed: " in message


def test_a_blank_line_between_rows_shows_where(station: Any) -> None:
    assert "station.epw:20: found" in refusal(edited(station, "EPW", 20, ""))


@pytest.mark.parametrize("date", ["1987,13,2,3", "1987,6,31,3", "1987,7,2,25", "1987,2,29,3", "0,7,2,3"])
def test_a_date_that_is_none_shows_where(station: Any, date: str) -> None:
    text = station.lines("EPW", station.rows(FIRST, 2))[34]
    assert "station.epw:35: found" in refusal(edited(station, "EPW", 35, date + "," + text.split(",", 4)[4]))


@pytest.mark.parametrize(
    ("change", "key", "allowed"),
    [
        ({"dry_bulb": 75.0}, "temp_air", "-60 to 60 °C"),
        ({"dew_point": 55.0}, "temp_dew", "-60 to 40 °C"),
        ({"pressure": 1013.0}, "atmospheric_pressure", "500 to 1100 mbar"),
        ({"wind_speed": -2.0}, "wind_speed", "0 to 100 m/s"),
        ({"wind_direction": 400.0}, "wind_direction", "0 to 360 °"),
        ({"direct_normal": -5.0}, "dni", "0 to 1500 W/m²"),
        ({"diffuse": 2000.0}, "dhi", "0 to 1500 W/m²"),
        ({"cover": 12.0}, "opaque_sky_cover", "0 to 10 tenths"),
    ],
    ids=lambda value: next(iter(value)) if isinstance(value, dict) else "",
)
def test_a_figure_that_no_weather_has(station: Any, change: dict[str, float], key: str, allowed: str) -> None:
    rows = station.rows(FIRST, 2)
    rows[9] = replace(rows[9], **change)
    message = refusal(station.write("EPW", rows))
    assert f"station.epw:18: {key}: found" in message
    assert f"allowed: {allowed}" in message


def test_a_column_that_is_not_there(station: Any) -> None:
    lines = station.lines("TMY3", station.rows(FIRST, 1))
    lines[1] = lines[1].replace("DNI (W/m^2)", "DNI (kW/m^2)")
    message = refusal(station.write_lines("TMY3", lines))
    assert "station.tmy3:2: dni: found no such column" in message


def test_rows_shorter_than_an_hour(station: Any) -> None:
    message = refusal(edited(station, "EPW", 8, "DATA PERIODS,1,4,Data,Sunday,1/1,12/31"))
    assert "station.epw:8: DATA PERIODS, rows an hour: found 4; allowed: 1 row an hour" in message


def test_a_heading_without_a_place(station: Any) -> None:
    assert "station.epw:1: LOCATION:" in refusal(edited(station, "EPW", 1, "LOCATION,Nowhere"))


def test_a_place_off_the_globe(station: Any) -> None:
    text = "LOCATION,Invented Bay,-,XXX,invented,000000,95.80,-80.30,-5.0,2.0"
    assert "latitude: found 95.8°; allowed: -90° to 90°" in refusal(edited(station, "EPW", 1, text))


def test_a_heading_that_holds_no_figures(station: Any) -> None:
    text = "LOCATION,Invented Bay,-,XXX,invented,000000,north,-80.30,-5.0,2.0"
    assert "station.epw:1: found" in refusal(edited(station, "EPW", 1, text))
