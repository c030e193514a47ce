"""Permitted charge of refrigerant against tables that installation manuals print."""

from __future__ import annotations

import pytest

from anchorwatt.physics.refrigerant_charge import (
    charge_without_area_rule,
    largest_charge,
    leak_concentration,
    least_floor_area,
)

R32, R290 = 0.307, 0.038
"""kg/m³, lower flammable limits as those manuals print them."""
OLD_R32 = 0.306

MANUAL = "IEC 60335-2-40:2018, annex GG, table in an R-32 unit's installation manual"

# kg, release height m, least floor m².
AREAS = [
    (1.84, 0.6, 28.81),
    (1.90, 0.6, 30.72),
    (2.00, 0.6, 34.04),
    (2.30, 0.6, 45.02),
    (3.00, 0.6, 76.60),
    (3.50, 0.6, 104.26),
]


@pytest.mark.parametrize(("charge", "height", "area"), AREAS, ids=[f"{MANUAL}, {m:g} kg {h:g} m" for m, h, _ in AREAS])
def test_least_floor(charge: float, height: float, area: float) -> None:
    assert least_floor_area(R32, charge, height) == pytest.approx(area, abs=0.006)


# Floor m², largest charge kg at 0.6 m.
CHARGES = [(1.0, 0.138), (6.0, 0.829), (7.0, 0.907), (10.0, 1.084), (20.0, 1.533), (45.0, 2.299)]


@pytest.mark.parametrize(("area", "charge"), CHARGES, ids=[f"{MANUAL}, another maker's, {a:g} m2" for a, _ in CHARGES])
def test_largest_charge(area: float, charge: float) -> None:
    """0.3 %; the manual cuts off its last digit."""
    assert largest_charge(R32, area, 0.6) == pytest.approx(charge, rel=0.003)


# An older table, of the rule with the square root only: where the second rule of 2018 does not bind.
OLDER = [
    (OLD_R32, 10.0, 0.6, 1.08),
    (OLD_R32, 15.0, 0.6, 1.32),
    (OLD_R32, 30.0, 0.6, 1.87),
    (OLD_R32, 10.0, 1.8, 3.24),
    (OLD_R32, 15.0, 2.2, 4.85),
    (R290, 10.0, 0.6, 0.08),
    (R290, 10.0, 2.2, 0.29),
    (R290, 50.0, 1.8, 0.53),
]
TABLE = "IEC 60335-2-40, table GG.1, in an older installation manual"


@pytest.mark.parametrize(
    ("limit", "area", "height", "charge"), OLDER, ids=[f"{TABLE}, LFL {f:g}, {a:g} m2, {h:g} m" for f, a, h, _ in OLDER]
)
def test_largest_charge_of_the_older_table(limit: float, area: float, height: float, charge: float) -> None:
    """It prints two digits after the point, cut off or rounded."""
    assert largest_charge(limit, area, height) == pytest.approx(charge, abs=0.0105)


def test_charge_without_an_area_rule() -> None:
    """Installation manual of an R-32 unit: no floor area is asked for under 1.842 kg."""
    assert charge_without_area_rule(R32) == pytest.approx(1.842, abs=0.0005)


# kg, m³, within the practical limit of R-410A, 0.44 kg/m³ (EN 378-1, as installation manuals print it).
ROOMS = [(3.0, 8.0, True), (3.0, 6.0, False)]


@pytest.mark.parametrize(
    ("charge", "volume", "within"), ROOMS, ids=[f"EN 378-1, 0.44 kg/m3, {v:g} m3" for _, v, _ in ROOMS]
)
def test_concentration_against_the_practical_limit(charge: float, volume: float, within: bool) -> None:
    assert (leak_concentration(charge, volume) <= 0.44) is within
