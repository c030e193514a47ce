"""The hourly shares of the daily range."""

from __future__ import annotations

import numpy as np
import pytest

from anchorwatt.climate.design_day import dry_bulb_of
from anchorwatt.design.specification import DesignDay

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
