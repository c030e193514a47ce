"""Outdoor air by itself, against handbook tables, another standard's form and ranges of practice."""

from __future__ import annotations

import math

import pytest

from anchorwatt.physics.moist_air import density, enthalpy, humidity_ratio
from anchorwatt.physics.ventilation import STACK, WIND, leakage_in_wind, opening_flow

HOUR = 3600.0
CABIN = 12.0
"""m³."""

HANDBOOK = (
    "ASHRAE Handbook - Fundamentals 2001 chapter 26, basic model, as a building-energy program's documentation has it"
)
COEFFICIENTS = [
    (f"{HANDBOOK}: stack, one storey", STACK, 0.000145),
    (f"{HANDBOOK}: wind, one storey, no shelter", WIND, 0.000319),
]


@pytest.mark.parametrize(("ours", "published"), [row[1:] for row in COEFFICIENTS], ids=[row[0] for row in COEFFICIENTS])
def test_coefficients_of_the_handbook(ours: float, published: float) -> None:
    assert ours == pytest.approx(published, abs=5e-7)


def test_leakage_of_the_handbooks_formula_by_hand() -> None:
    """The same handbook: A sqrt(Cs |dT| + Cw v²). 100 cm², 5 K and 4 m/s give 7.635 L/s, by hand; 5 K alone 2.693."""
    both = leakage_in_wind(1.0, 4.0, 5.0) / leakage_in_wind(1.0, 0.0, 5.0)
    assert both == pytest.approx(7.635 / 2.693, rel=5e-4)


# In a light wind and at 10 m/s, for boats that are tight and middling in light wind.
CLOSED = [("from memory: closed modern boat, tight", 0.2), ("from memory: closed modern boat, middling", 0.3)]


@pytest.mark.parametrize("light", [row[1] for row in CLOSED], ids=[row[0] for row in CLOSED])
def test_closed_boat_in_a_strong_wind(light: float) -> None:
    """0.2 to 0.5 air changes an hour in a light wind, 0.5 to 1.0 in 10 m/s; from memory."""
    assert 0.5 <= HOUR * leakage_in_wind(light / HOUR, 10.0, 6.0) <= 1.0
    assert 0.2 <= HOUR * leakage_in_wind(light / HOUR, 3.0, 6.0) <= 0.5


@pytest.mark.parametrize("wind", [4.0, 6.0, 10.0], ids=lambda wind: f"from memory: one hatch on its vent, {wind:g} m/s")
def test_hatch_on_its_vent_position(wind: float) -> None:
    """3 to 8 air changes an hour; from memory. 0.1 m² free, in a cabin of 12 m³."""
    assert 3.0 <= HOUR * opening_flow(0.1, wind, 6.0, 0.3) / CABIN <= 8.0


AIRING = "EN 16798-7 table 11, airing by one side, as public programs have it"


@pytest.mark.parametrize("wind", [1.0, 3.0, 6.0], ids=lambda wind: f"{AIRING}: {wind:g} m/s")
def test_opening_is_of_the_size_of_another_standards(wind: float) -> None:
    """A / 2 sqrt(max(0.001 v², 0.0035 H dT)): two forms for the same flow; ours is the larger by up to 60 %."""
    other = 0.1 / 2.0 * math.sqrt(max(0.001 * wind * wind, 0.0035 * 0.3 * 5.0))
    assert other <= opening_flow(0.1, wind, 5.0, 0.3) <= 1.6 * other


def test_outdoor_air_of_iso_7547_costs_what_it_costs() -> None:
    """By hand from two libraries: 35 °C 70 % to 27 °C 50 %, 48.7 W for each L/s, here for a whole hatch."""
    outside, inside = humidity_ratio(35.0, 0.7, 101_325.0), humidity_ratio(27.0, 0.5, 101_325.0)
    flow = opening_flow(0.1, 4.0, 8.0, 0.3)
    heat = flow * density(35.0, outside, 101_325.0) * (enthalpy(35.0, outside) - enthalpy(27.0, inside))
    assert heat / (1000.0 * flow) == pytest.approx(48.7, rel=0.006)
