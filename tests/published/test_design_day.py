"""The hourly shares of the daily range."""

from __future__ import annotations

import re

import numpy as np
import pytest

from anchorwatt.climate import weather
from anchorwatt.climate.design_day import dry_bulb_of
from anchorwatt.design import parse, specify, starter_text
from anchorwatt.design.specification import DesignDay
from anchorwatt.physics.moist_air import relative_humidity

# ASHRAE Handbook Fundamentals 2021, page 14.13, table 6 (dry bulb), hour of local time -> share, as quoted by
# a public source; 33 °C and 10 K make the share readable in the answer.
TABLE_6 = [
    (1, 0.88), (2, 0.92), (3, 0.95), (4, 0.98), (5, 1.00), (6, 0.98), (7, 0.91), (8, 0.74),
    (9, 0.55), (10, 0.38), (11, 0.23), (12, 0.13), (13, 0.05), (14, 0.00), (15, 0.00), (16, 0.06),
    (17, 0.14), (18, 0.24), (19, 0.39), (20, 0.50), (21, 0.59), (22, 0.68), (23, 0.75), (24, 0.82),
]  # fmt: skip


@pytest.mark.parametrize(("hour", "share"), TABLE_6, ids=[f"ASHRAE 2021 14.13 table 6 hour {h}" for h, _ in TABLE_6])
def test_dry_bulb(hour: int, share: float) -> None:
    day = DesignDay(33.0, 10.0, 24.0, 3.0, 0.0, 3.5)
    found = dry_bulb_of(day, np.array([hour * 3600.0]))[0]
    assert found == pytest.approx(33.0 - 10.0 * share, abs=0.05)


def test_summer_outdoors_of_iso_7547() -> None:
    """ISO 7547:2002, summer: outdoors 35 °C and 70 % (training slides). A day that says so reaches just that."""
    text = starter_text("trawler-14m")
    day = "design_day: {highest_dry_bulb: 35 °C, daily_range: 6 K, relative_humidity: 70 %}"
    place = re.sub(
        r"  weather: .*\n  day: .*\n",
        f"  {day}\n  day: 21 July\n  latitude: 25.8° N\n  longitude: 80.3° W\n",
        text,
    )
    made = weather(specify(parse(place)).place, 0, 1, 600.0)
    hottest = int(np.argmax(made.dry_bulb))
    assert made.dry_bulb[hottest] == pytest.approx(35.0, abs=0.05)
    humid = relative_humidity(float(made.dry_bulb[hottest]), float(made.humidity_ratio[hottest]), 101_325.0)
    assert humid == pytest.approx(0.70, abs=0.005)
