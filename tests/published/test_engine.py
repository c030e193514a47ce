"""Diesel fuel and what is left for the alternators, against published figures."""

from __future__ import annotations

import math

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue.engine import Engine
from anchorwatt.physics.engine import (
    DIESEL_DENSITY,
    DIESEL_HEATING_VALUE,
    fuel_flow,
    fuel_volume,
    spare_power,
)

HOUR = 3600.0


def litres_an_hour(power: float, speed: float, displacement: float, friction: float, efficiency: float) -> float:
    flow = fuel_flow(power, speed, displacement, friction, efficiency, DIESEL_HEATING_VALUE)
    return 1000.0 * fuel_volume(flow * HOUR)


def test_uk_government_fuel_properties_2025_diesel_holds_9_905_kwh_a_litre() -> None:
    heating_value_by_volume = DIESEL_DENSITY * DIESEL_HEATING_VALUE / 3.6e9
    assert heating_value_by_volume == pytest.approx(9.905, abs=0.0005)


def test_eu_2020_728_a_running_diesel_burns_0_220_litre_more_for_each_kwh() -> None:
    """0.220 L/kWh with 9.905 kWh/L is a marginal efficiency of 45.9 %; printed to 0.001 L."""
    idle = litres_an_hour(0.0, 200.0, 0.0025, 150e3, 0.459)
    loaded = litres_an_hour(1000.0, 200.0, 0.0025, 150e3, 0.459)
    assert loaded - idle == pytest.approx(0.220, abs=0.0005)


def test_public_8_kw_generator_chart_lies_on_a_willans_line() -> None:
    """Trade chart, maker withheld: 1.48, 2.05, 2.61 L/h at 50, 75, 100 % of 8 kW. The line through the outer
    points must give the middle one. Its speed does not matter for that: 1500 rpm is assumed."""
    speed = 1500.0 * math.pi / 30.0
    slope = (2.61 - 1.48) / 4000.0 / HOUR / 1000.0 * DIESEL_DENSITY  # kg/J
    efficiency = 1.0 / (slope * DIESEL_HEATING_VALUE)
    at_no_power = 1.48 - 0.5 * 8000.0 * (2.61 - 1.48) / 4000.0  # L/h
    friction_power = at_no_power / HOUR / 1000.0 * DIESEL_DENSITY * efficiency * DIESEL_HEATING_VALUE
    displacement = 0.001
    friction = friction_power * 4.0 * math.pi / (displacement * speed)
    assert litres_an_hour(6000.0, speed, displacement, friction, efficiency) == pytest.approx(2.05, abs=0.01)


@pytest.mark.parametrize(
    ("load", "lowest", "highest"),
    [(1.00, 235, 260), (0.75, 230, 250), (0.50, 240, 265), (0.25, 280, 330), (0.10, 420, 550)],
    ids=lambda value: f"from-memory-small-diesel-{value}",
)
def test_small_diesel_specific_fuel(load: float, lowest: float, highest: float) -> None:
    """One engine, 40 kW at 3000 rpm from 2.0 litres, on one Willans line, lies in the whole row, g/kWh.

    Its 80 kPa is less than a real engine's friction, because the line keeps the indicated efficiency,
    which in truth falls towards full load.
    """
    power = load * 40e3
    flow = fuel_flow(power, 3000.0 * math.pi / 30.0, 0.0020, 80e3, 0.385, DIESEL_HEATING_VALUE)
    assert lowest <= flow / power * 3.6e9 <= highest


SMALL = {1.00: (235, 260), 0.75: (230, 250), 0.50: (240, 265), 0.25: (280, 330), 0.10: (420, 550)}
LARGE = {1.00: (210, 225), 0.75: (205, 215), 0.50: (210, 225), 0.25: (240, 270), 0.10: (330, 420)}


@pytest.mark.parametrize("name", catalogue.names("engine"), ids=lambda name: f"from-memory-{name}")
def test_specific_fuel_of_the_catalogues_engines(name: str) -> None:
    """Bands of small (20 to 60 kW) and of large modern diesels, g/kWh. At full load inside; at part load along a
    propeller's curve, where speed falls with the cube root of the load, no more than 8 % outside: a Willans line keeps
    the friction that a real engine sheds."""
    made = catalogue.find("engine", name)
    assert isinstance(made, Engine)
    for load, (lowest, highest) in (SMALL if made.rated_power <= 60e3 else LARGE).items():
        power, speed = load * made.rated_power, made.rated_speed * math.cbrt(load)
        figures = (float(made.displacement), float(made.friction_pressure), float(made.indicated_efficiency))
        specific = fuel_flow(power, speed, *figures, DIESEL_HEATING_VALUE) / power * 3.6e9
        slack = 0.0 if load == 1.0 else 0.08
        assert (1.0 - slack) * lowest <= specific <= (1.0 + slack) * highest, load


def test_from_memory_a_boat_diesel_idles_on_0_8_to_2_litres_an_hour() -> None:
    assert 0.8 <= litres_an_hour(0.0, 850.0 * math.pi / 30.0, 0.0030, 150e3, 0.385) <= 2.0


def test_public_fuel_sensor_manual_example_250_hp_of_engine_and_125_hp_of_hull() -> None:
    """Trade manual p. 18, maker withheld: at 1200 rpm able to make 250 hp, the hull asks 125 hp."""
    horsepower = 745.7
    assert spare_power(250 * horsepower, 125 * horsepower, 0.0) == pytest.approx(125 * horsepower)
