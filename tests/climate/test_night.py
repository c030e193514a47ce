"""The hardest night of a file, found again with another library."""

from __future__ import annotations

import datetime
import math
from dataclasses import replace
from typing import Any

import numpy as np
import pytest

from anchorwatt.climate import weather
from anchorwatt.climate.station import read_station
from anchorwatt.design.specification import Place
from anchorwatt.errors import BadWeather


@pytest.mark.parametrize("file", ["pvlib:12839.tm2", "pvlib:723170TYA.CSV"])
def test_the_night_of_the_highest_enthalpy_by_psychrolib(real_place: Place, file: str) -> None:
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    table = read_station(file)
    enthalpy = np.array(
        [
            psychrolib.GetMoistAirEnthalpy(dry, psychrolib.GetHumRatioFromTDewPoint(min(dew, dry), pressure))
            for dry, dew, pressure in zip(
                table.dry_bulb.tolist(), table.dew_point.tolist(), table.pressure.tolist(), strict=True
            )
        ]
    )
    # readings at 21, 22, ... 31 h after each midnight; row r ends at hour r + 1
    nights = [np.roll(enthalpy, -(24 * day + 20))[:11].mean() for day in range(365)]
    row = 24 * int(np.argmax(nights))
    found = weather(replace(real_place, weather_file=file, month=0, day=0), 2, 2, 600.0)
    assert (found.month, found.day) == (table.month[row], table.day[row])


def test_a_short_file_offers_only_nights_with_their_days(station: Any, real_place: Place) -> None:
    rows = station.rows(datetime.date(1987, 7, 1), 5)
    rows = [replace(row, dew_point=20.0 + (4.0 if row.date.day == 5 else 0.1 * row.date.day)) for row in rows]
    place = replace(
        real_place,
        weather_file=str(station.write("EPW", rows)),
        month=0,
        day=0,
        latitude=math.nan,
    )
    # the damp fifth has no night after it in the file; the night from 4 to 5 July is part damp
    assert weather(place, 0, 0, 600.0).day == 4
    assert weather(place, 1, 2, 600.0).day == 3
    with pytest.raises(BadWeather, match="no whole night"):
        weather(place, 3, 3, 600.0)


def test_a_night_with_a_missing_value_is_passed_over(station: Any, real_place: Place) -> None:
    rows = station.rows(datetime.date(1987, 7, 1), 4)
    rows = [replace(row, dew_point=20.0 + 0.5 * row.date.day) for row in rows]
    rows[2 * 24 + 22] = replace(rows[2 * 24 + 22], dew_point=99.9)
    place = replace(real_place, weather_file=str(station.write("EPW", rows)), month=0, day=0)
    assert weather(place, 0, 0, 600.0).day == 2
