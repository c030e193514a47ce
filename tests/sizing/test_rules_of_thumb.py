"""Rules of thumb, worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.sizing.rules_of_thumb import rules_of_thumb
from tests.simulation import boats

FOOT = 0.3048
WATT = 0.29307107


def test_a_cabin_of_1000_cubic_feet() -> None:
    """Common practice, no source: 10 to 12 Btu/h for each ft³ below, 16 to 19 of a saloon, 100 a ft² of floor."""
    floor, height = 160.0 * FOOT**2, 6.25 * FOOT
    made = boats.boat(2)
    cabins = tuple(
        replace(cabin, use=use, floor_area=floor, height=height)
        for cabin, use in zip(made.cabins, ("sleeping", "saloon"), strict=True)
    )
    found = rules_of_thumb(replace(made, cabins=cabins), (0, 1))
    below, saloon = found.cabins
    assert (below.low / WATT, below.high / WATT) == pytest.approx((10_000.0, 12_000.0), rel=1e-6)
    assert (saloon.low / WATT, saloon.high / WATT) == pytest.approx((16_000.0, 19_000.0), rel=1e-6)
    assert below.by_floor / WATT == pytest.approx(16_000.0, rel=1e-6)
    assert found.boat / WATT == pytest.approx(28_000.0, rel=1e-6)


def test_only_cooled_cabins_count() -> None:
    made = boats.boat(3)
    assert rules_of_thumb(made, (1,)).boat == pytest.approx(rules_of_thumb(made, (0, 1, 2)).boat / 3.0)
