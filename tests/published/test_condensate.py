"""Water out of the air against steam tables, a code's drains and published dew points."""

from __future__ import annotations

import pytest

from anchorwatt.physics.condensate import (
    WATER_DENSITY,
    condensate,
    drain_flow,
    margin_over_dew,
    temperature_at_humidity,
)
from anchorwatt.physics.moist_air import humidity_ratio

SEA_LEVEL = 101_325.0
HOUR = 3600.0
TON = 12_000.0 * 0.29307107
INCH = 0.0254

# °C, kJ/kg
STEAM = [(10.0, 2477.2), (20.0, 2453.5), (25.0, 2441.7)]


@pytest.mark.parametrize(
    ("temperature", "heat"), STEAM, ids=[f"steam tables, from memory: {row[0]:g} C" for row in STEAM]
)
def test_condensate_of_the_steam_tables(temperature: float, heat: float) -> None:
    """3600 s over the heat of evaporation, kg/h for each kW; the heat of this program is within 0.2 %."""
    assert HOUR * condensate(1000.0, temperature) == pytest.approx(HOUR / heat, rel=0.002)


def test_condensate_of_a_boat_by_hand() -> None:
    """5 kW at a sensible share of 0.65, 2450 kJ/kg, by hand: 2.5 L/h, to its last figure."""
    assert HOUR * condensate(5000.0 * 0.35, 15.0) == pytest.approx(2.55, abs=0.05)


CODE = "International Mechanical Code 307.2.2, as the city code of Rapid City 15.26.180 prints it"
# Inches, tons of refrigeration.
DRAINS = [(0.75, 20.0), (1.0, 40.0), (1.25, 90.0), (1.5, 125.0), (2.0, 250.0)]


@pytest.mark.parametrize(("inches", "tons"), DRAINS, ids=[f"{CODE}: {inches:g} in" for inches, _ in DRAINS])
def test_a_codes_drains_carry_what_the_code_allows_on_them(inches: float, tons: float) -> None:
    """At the 1 % that codes ask for, a third of the load latent (ours): the formula gives no less than the code."""
    water = condensate(tons * TON / 3.0, 12.0) / WATER_DENSITY
    assert drain_flow(inches * INCH, 0.01) >= water


def test_dew_point_and_mould_line_of_a_cool_room() -> None:
    """Window trade's note on humidity (maker withheld): 20 °C and 50 %: dew at 9.3 °C, mould line 12.6 °C."""
    ratio = humidity_ratio(20.0, 0.5, SEA_LEVEL)
    assert 20.0 - margin_over_dew(20.0, ratio, SEA_LEVEL) == pytest.approx(9.3, abs=0.05)
    assert temperature_at_humidity(ratio, 0.8, SEA_LEVEL) == pytest.approx(12.6, abs=0.05)
