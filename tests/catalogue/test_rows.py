"""Rows as engineering: figures that must hang together, whoever changes them."""

from __future__ import annotations

import math

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue.air_handler import AirHandler
from anchorwatt.catalogue.appliance import Appliance
from anchorwatt.catalogue.battery_module import BatteryModule
from anchorwatt.catalogue.cell import Cell
from anchorwatt.catalogue.condensing_unit import CondensingUnit
from anchorwatt.catalogue.glazing import Glazing
from anchorwatt.catalogue.inverter import Inverter
from anchorwatt.catalogue.part import Part
from anchorwatt.catalogue.self_contained_unit import SelfContainedUnit


def rows(kind: str) -> list[Part]:
    return list(catalogue.rows(kind).values())


def ids(part: Part) -> str:
    return part.name


@pytest.mark.parametrize("unit", rows("condensing_unit") + rows("self_contained_unit"), ids=ids)
def test_a_plant_stays_below_carnot(unit: Part) -> None:
    assert isinstance(unit, CondensingUnit | SelfContainedUnit)
    cold, warm = unit.rated_evaporating + 273.15, unit.rated_sea + 273.15
    assert unit.rated_capacity / unit.rated_power < cold / (warm - cold)


@pytest.mark.parametrize("unit", rows("condensing_unit"), ids=ids)
def test_the_condenser_stands_12_k_over_the_sea_at_its_rating(unit: Part) -> None:
    assert isinstance(unit, CondensingUnit)
    rejected = unit.rated_capacity + unit.rated_power
    effectiveness = 1.0 - math.exp(-unit.condenser_ntu)
    over = rejected / (effectiveness * unit.sea_flow * 1023.0 * 3993.0)
    assert math.isclose(over, 12.0, abs_tol=0.5)


@pytest.mark.parametrize("unit", rows("air_handler"), ids=ids)
def test_airflow_and_fan_follow_the_trade(unit: Part) -> None:
    assert isinstance(unit, AirHandler)
    assert math.isclose(unit.airflow / unit.rated_capacity, 50e-6, rel_tol=0.02)
    assert math.isclose(unit.fan_power / unit.airflow, 640.0, rel_tol=0.02)


@pytest.mark.parametrize("module", rows("battery_module"), ids=ids)
def test_a_module_gives_back_94_to_98_percent_at_a_fifth_to_half_of_its_capacity_an_hour(
    module: Part,
) -> None:
    assert isinstance(module, BatteryModule)
    for rate in (0.2, 0.5):
        current = rate * module.capacity / 3600.0
        drop = current * module.resistance / module.nominal_voltage
        back = (1.0 - drop) / (1.0 + drop)
        assert 0.93 < back < 0.99
    assert 6.0 < module.mass / (module.nominal_voltage * module.capacity / 3.6e6) < 11.0


def test_a_full_cell_is_over_a_resting_one_and_an_empty_one_under_it() -> None:
    for cell in rows("cell"):
        assert isinstance(cell, Cell)
        assert cell.open_circuit_voltages[0] < cell.nominal_voltage < cell.open_circuit_voltages[-1]


@pytest.mark.parametrize("inverter", rows("inverter"), ids=ids)
def test_an_inverter_is_best_below_its_rating(inverter: Part) -> None:
    assert isinstance(inverter, Inverter)
    best = math.sqrt(inverter.no_load_power / (inverter.quadratic * inverter.rated_power))
    assert 0.2 < best < 0.6


def test_heat_of_a_load_is_never_more_than_its_power() -> None:
    for appliance in rows("appliance"):
        assert isinstance(appliance, Appliance)
        assert appliance.sensible_share + appliance.latent_share <= 1.0


def test_darker_and_double_glazing_let_less_through() -> None:
    glazing = catalogue.rows("glazing")
    clear, grey, double = (
        glazing[name] for name in ("single clear glass 6 mm", "single grey glass 6 mm", "double clear glass 6-12-6")
    )
    assert isinstance(clear, Glazing)
    assert isinstance(grey, Glazing)
    assert isinstance(double, Glazing)
    assert grey.solar_gain < clear.solar_gain
    assert double.u_value < clear.u_value
