"""Rows of the catalogue against where they are from."""

from __future__ import annotations

import math

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue.cell import Cell
from anchorwatt.catalogue.construction import Construction
from anchorwatt.catalogue.material import Material
from anchorwatt.catalogue.person import Person
from anchorwatt.catalogue.refrigerant import RefrigerantSafety
from anchorwatt.catalogue.sea import Sea
from anchorwatt.catalogue.shore_service import ShoreService

PYBAMM = "PyBaMM's 2013 iron phosphate set, arXiv 1709.03970 and J. Electrochem. Soc. 167 080534, 25 °C"


# State of charge %, V a cell: the table that was rebuilt from the set; printed to 1 mV.
OPEN_CIRCUIT = [
    (0, 2.000),
    (10, 2.978),
    (20, 3.169),
    (50, 3.266),
    (80, 3.310),
    (95, 3.316),
    (100, 3.598),
]


@pytest.mark.parametrize(("charge", "voltage"), OPEN_CIRCUIT, ids=[f"{PYBAMM}: {row[0]} %" for row in OPEN_CIRCUIT])
def test_open_circuit_voltage_of_a_cell(charge: float, voltage: float) -> None:
    cell = catalogue.find("cell", "lithium iron phosphate")
    assert isinstance(cell, Cell)
    table = dict(zip((round(100 * point, 6) for point in cell.charge_points), cell.open_circuit_voltages, strict=True))
    assert math.isclose(table[charge], voltage, abs_tol=0.0005)


# °F, January to December, federal coastal water temperature tables, Key West, Florida; rows are whole °C.
KEY_WEST = (69, 70, 75, 78, 82, 85, 87, 87, 86, 82, 76, 72)


@pytest.mark.parametrize(
    "month", range(12), ids=[f"coastal water temperature tables, Key West, month {m + 1}" for m in range(12)]
)
def test_sea_temperature_of_key_west(month: int) -> None:
    sea = catalogue.find("sea", "Key West")
    assert isinstance(sea, Sea)
    assert math.isclose(sea.temperatures[month], (KEY_WEST[month] - 32) / 1.8, abs_tol=0.6)


# W/(m K), kg/m3: prEN 12524 and EN ISO 10456, tables of design values.
MATERIALS = [
    ("glass-fibre laminate", 0.40, 1900.0),
    ("light plywood", 0.13, 500.0),
    ("teak", 0.18, 700.0),
    ("aluminium", 160.0, 2800.0),
]


@pytest.mark.parametrize(
    ("name", "conductivity", "density"), MATERIALS, ids=[f"prEN 12524: {row[0]}" for row in MATERIALS]
)
def test_materials(name: str, conductivity: float, density: float) -> None:
    material = catalogue.find("material", name)
    assert isinstance(material, Material)
    assert (material.conductivity, material.density) == (conductivity, density)


def test_a_person_at_rest_gives_75_and_40_watts_at_24_degrees() -> None:
    """Air-conditioning textbook, 5th ed., table 7.16: seated at rest, 115 W in all."""
    person = catalogue.find("person", "at rest")
    assert isinstance(person, Person)
    assert (person.sensible, person.latent) == (75.0, 40.0)


# Volt-amperes that may be taken for hours: 80 % of the rating.
SHORE = [("120 V 30 A", 2880.0), ("120/240 V 50 A", 9600.0), ("230 V 16 A", 2944.0), ("230 V 32 A", 5888.0)]


@pytest.mark.parametrize(("name", "power"), SHORE, ids=[f"rating of the trade: {row[0]}" for row in SHORE])
def test_shore_services(name: str, power: float) -> None:
    service = catalogue.find("shore_service", name)
    assert isinstance(service, ShoreService)
    assert math.isclose(service.voltage * service.legs * service.current * service.continuous_share, power)


# m2 K/W of the layers alone, computed in the reference from the conductivities above, printed to 1e-3.
SANDWICHES = [("solid glass-fibre", 0.025), ("foam-cored", 0.586)]


@pytest.mark.parametrize(("name", "resistance"), SANDWICHES, ids=[f"layers in series: {row[0]}" for row in SANDWICHES])
def test_layers_in_series(name: str, resistance: float) -> None:
    construction = catalogue.find("construction", name)
    assert isinstance(construction, Construction)
    total = sum(layer.thickness / layer.material.conductivity for layer in construction.layers)
    assert math.isclose(total, resistance, abs_tol=0.0005)


CLASSES = [("R410A", "A1"), ("R32", "A2L")]


@pytest.mark.parametrize(
    ("name", "safety_class"), CLASSES, ids=[f"ASHRAE 34-2022, as a page tabulates it: {row[0]}" for row in CLASSES]
)
def test_safety_class_of_a_refrigerant(name: str, safety_class: str) -> None:
    row = catalogue.find("refrigerant", name)
    assert isinstance(row, RefrigerantSafety)
    assert row.safety_class == safety_class


# kg/m3 and, of the warming potential, times carbon dioxide.
REFRIGERANTS = [
    ("R410A", "practical_limit", 0.44, "EN 378-1, as a unit's installation manual prints it"),
    ("R410A", "warming_potential", 2088.0, "IPCC 4th report, as a unit's manual prints it"),
    ("R410A", "limit_with_ventilation", 0.42, "EN 378-1, QLMV, from memory"),
    ("R410A", "limit_with_two_measures", 0.42, "EN 378-1, QLAV, from memory"),
    ("R32", "flammable_limit", 0.307, "IEC 60335-2-40:2018, as two installation manuals print it"),
    ("R32", "practical_limit", 0.061, "EN 378-1, from memory"),
    ("R32", "limit_with_ventilation", 0.063, "EN 378-1, QLMV, from memory"),
    ("R32", "limit_with_two_measures", 0.15, "EN 378-1, QLAV, from memory"),
    ("R32", "warming_potential", 675.0, "IPCC 4th report, from memory"),
    ("R134a", "practical_limit", 0.25, "EN 378-1, from memory"),
    ("R134a", "limit_with_ventilation", 0.28, "EN 378-1, QLMV, from memory"),
    ("R134a", "limit_with_two_measures", 0.58, "EN 378-1, QLAV, from memory"),
    ("R134a", "warming_potential", 1430.0, "IPCC 4th report, from memory"),
]


@pytest.mark.parametrize(
    ("name", "figure", "value"),
    [row[:3] for row in REFRIGERANTS],
    ids=[f"{row[3]}: {row[0]}, {row[1]}" for row in REFRIGERANTS],
)
def test_safety_figures_of_a_refrigerant(name: str, figure: str, value: float) -> None:
    assert getattr(catalogue.find("refrigerant", name), figure) == value


def test_the_practical_limit_of_r32_is_a_fifth_of_its_flammable_limit() -> None:
    """EN 378-1, from memory: the practical limit of what burns is a fifth of its lower flammable limit."""
    row = catalogue.find("refrigerant", "R32")
    assert isinstance(row, RefrigerantSafety)
    assert row.flammable_limit is not None
    assert math.isclose(row.practical_limit, 0.2 * row.flammable_limit, abs_tol=0.0005)
