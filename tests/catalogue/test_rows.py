"""Rows as engineering: figures that must hang together, whoever changes them."""

from __future__ import annotations

import math

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue.air_handler import AirHandler
from anchorwatt.catalogue.appliance import Appliance
from anchorwatt.catalogue.battery_module import BatteryModule
from anchorwatt.catalogue.cell import Cell
from anchorwatt.catalogue.chilled_water_unit import ChilledWaterUnit
from anchorwatt.catalogue.circuit import Circuit
from anchorwatt.catalogue.condensing_unit import CondensingUnit
from anchorwatt.catalogue.dc_dc import DirectConverter
from anchorwatt.catalogue.duct import Duct
from anchorwatt.catalogue.glazing import Glazing
from anchorwatt.catalogue.inverter import Inverter
from anchorwatt.catalogue.part import Part
from anchorwatt.catalogue.refrigerant import Refrigerant, RefrigerantSafety


def rows(kind: str) -> list[Part]:
    return list(catalogue.rows(kind).values())


def ids(part: Part) -> str:
    return part.name


CIRCUITS = rows("condensing_unit") + rows("self_contained_unit") + rows("chilled_water_unit")


@pytest.mark.parametrize("unit", CIRCUITS, ids=ids)
def test_a_plant_stays_below_carnot(unit: Part) -> None:
    assert isinstance(unit, Circuit)
    cold, warm = unit.rated_evaporating + 273.15, unit.rated_sea + 273.15
    assert unit.rated_capacity / unit.rated_power < cold / (warm - cold)


@pytest.mark.parametrize("unit", rows("condensing_unit") + rows("chilled_water_unit"), ids=ids)
def test_the_condenser_stands_12_k_over_the_sea_at_its_rating(unit: Part) -> None:
    assert isinstance(unit, Circuit)
    rejected = unit.rated_capacity + unit.rated_power
    effectiveness = 1.0 - math.exp(-unit.condenser_ntu)
    over = rejected / (effectiveness * unit.sea_flow * 1023.0 * 3993.0)
    assert math.isclose(over, 12.0, abs_tol=0.5)


@pytest.mark.parametrize("unit", rows("condensing_unit"), ids=ids)
def test_a_seawater_pump_reaches_what_small_pumps_reach(unit: Part) -> None:
    assert isinstance(unit, CondensingUnit)
    assert 0.1 <= unit.sea_flow * unit.pump_head / unit.pump_power <= 0.3
    assert unit.condenser_loss + unit.strainer_loss < 0.5 * unit.pump_head


@pytest.mark.parametrize("unit", rows("condensing_unit"), ids=ids)
def test_charge_lies_between_compact_water_cooled_and_split_units(unit: Part) -> None:
    """0.10 to 0.20 kg/kW in the compact ones, 0.25 to 0.35 in air-cooled splits, from memory; small ones hold more."""
    assert isinstance(unit, CondensingUnit)
    assert 0.10 < unit.charge / (unit.rated_capacity / 1e3) < 0.40


@pytest.mark.parametrize("unit", rows("chilled_water_unit"), ids=ids)
def test_the_water_pump_moves_the_chillers_heat(unit: Part) -> None:
    """From 3 to 12 m of water at an efficiency of 0.25, motor included."""
    assert isinstance(unit, ChilledWaterUnit)
    flow = unit.rated_capacity / (4186.0 * 1000.0 * unit.water_rise)
    assert 3.0 < 0.25 * unit.water_pump_power / (flow * 9806.65) < 12.0
    assert unit.supply_temperature - unit.evaporator_approach == unit.rated_evaporating


def test_every_refrigerant_that_a_circuit_may_hold_has_its_safety_record() -> None:
    assert catalogue.names("refrigerant") == Refrigerant.__args__  # type: ignore[attr-defined]


def test_only_what_burns_has_a_flammable_limit() -> None:
    for row in rows("refrigerant"):
        assert isinstance(row, RefrigerantSafety)
        assert (row.flammable_limit is None) == (row.safety_class in ("A1", "B1"))


def test_a_loosely_laid_duct_takes_more_than_a_stretched_one_and_a_rigid_one_least() -> None:
    rigid, stretched, loose = (
        catalogue.find("duct", name)
        for name in ("smooth rigid duct", "stretched flexible duct", "loosely laid flexible duct")
    )
    assert isinstance(rigid, Duct)
    assert isinstance(stretched, Duct)
    assert isinstance(loose, Duct)
    assert rigid.roughness < stretched.roughness == loose.roughness
    assert rigid.bend_loss < stretched.bend_loss < loose.bend_loss
    assert rigid.stretch_factor == stretched.stretch_factor == 1.0 < loose.stretch_factor


@pytest.mark.parametrize("unit", rows("air_handler"), ids=ids)
def test_what_a_fan_has_to_spare_is_a_part_of_its_power(unit: Part) -> None:
    assert isinstance(unit, AirHandler)
    assert 0.05 < unit.static_pressure * unit.airflow / unit.fan_power < 0.2


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


@pytest.mark.parametrize("unit", rows("dc_dc"), ids=ids)
def test_a_dc_dc_converter_loses_8_to_12_percent_at_its_rating(unit: Part) -> None:
    """Of isolated types of this size, from memory."""
    assert isinstance(unit, DirectConverter)
    lost = unit.no_load_power / unit.rated_power + unit.linear + unit.quadratic
    assert 0.08 <= lost / (1.0 + lost) <= 0.12


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


@pytest.mark.parametrize("kind", catalogue.kinds())
def test_the_generic_catalogue_names_no_supplier(kind: str) -> None:
    assert {row.supplier for row in catalogue.rows(kind).values()} == {None}
