"""The closed table of units, against pint."""

from __future__ import annotations

import math

import pint
import pytest

from anchorwatt.units import DIMENSIONS, parse
from anchorwatt.units.table import Dimension, Unit, dimension_named, plain_unit

# How pint writes each unit of the table. Its own Btu is a rounded one: Btu_it is the table's.
IN_PINT = {
    "mm": "mm", "cm": "cm", "m": "m", "km": "km", "in": "inch", "ft": "foot", "yd": "yard",
    "nmi": "nautical_mile",
    "mm²": "mm**2", "cm²": "cm**2", "m²": "m**2", "in²": "inch**2", "ft²": "foot**2",
    "cm³": "cm**3", "mL": "milliliter", "L": "liter", "m³": "m**3", "in³": "inch**3", "ft³": "foot**3",
    "gal": "US_liquid_gallon",
    "g": "gram", "kg": "kilogram", "t": "metric_ton", "oz": "ounce", "lb": "pound",
    "s": "second", "min": "minute", "h": "hour", "d": "day",
    "W": "watt", "kW": "kilowatt", "Btu/h": "Btu_it/hour", "kBtu/h": "1000*Btu_it/hour", "hp": "horsepower",
    "PS": "metric_horsepower", "RT": "12000*Btu_it/hour",
    "VA": "volt*ampere", "kVA": "kilovolt*ampere",
    "J": "joule", "kJ": "kilojoule", "MJ": "megajoule", "Wh": "watt*hour", "kWh": "kilowatt*hour",
    "Btu": "Btu_it", "kBtu": "1000*Btu_it",
    "C": "coulomb", "mAh": "milliampere*hour", "Ah": "ampere*hour",
    "mA": "milliampere", "A": "ampere", "kA": "kiloampere",
    "mV": "millivolt", "V": "volt", "kV": "kilovolt",
    "Ω/m": "ohm/m", "Ω/km": "ohm/km", "Ω/kft": "ohm/(1000*foot)",
    "µΩ": "microohm", "mΩ": "milliohm", "Ω": "ohm",
    "m/s": "m/s", "km/h": "km/hour", "kn": "knot", "mph": "mile/hour", "ft/s": "foot/second",
    "ft/min": "foot/minute",
    "m³/s": "m**3/s", "m³/h": "m**3/hour", "L/s": "liter/s", "L/min": "liter/minute", "L/h": "liter/hour",
    "cfm": "foot**3/minute", "gal/min": "US_liquid_gallon/minute", "gal/h": "US_liquid_gallon/hour",
    "kg/s": "kg/s", "g/s": "gram/s", "kg/h": "kg/hour", "g/h": "gram/hour", "lb/h": "pound/hour",
    "Pa": "pascal", "hPa": "hectopascal", "kPa": "kilopascal", "MPa": "megapascal", "mbar": "millibar",
    "bar": "bar", "psi": "psi", "inH₂O": "inH2O", "ftH₂O": "ftH2O", "mH₂O": "mH2O",
    "inHg": "inHg",
    "rpm": "revolution/minute", "rad/s": "radian/second",
    "°": "degree", "rad": "radian", "° N": "degree", "° S": "-1*degree", "° E": "degree", "° W": "-1*degree",
    "ppm": "ppm", "m³/m³": "meter**3/meter**3",
    "%": "percent", "%/K": "percent/kelvin", "1/K": "1/kelvin", "%/°F": "percent/delta_degF",
    "Hz": "1/second", "kHz": "1000/second",
    "ach": "1/hour", "1/s": "1/second",
    "W/(m·K)": "watt/m/kelvin", "mW/(m·K)": "milliwatt/m/kelvin",
    "Btu/(h·ft·°F)": "Btu_it/hour/foot/delta_degF",
    "Btu·in/(h·ft²·°F)": "Btu_it*inch/hour/foot**2/delta_degF",
    "kg/m³": "kg/m**3", "kg/L": "kg/liter", "lb/ft³": "pound/foot**3",
    "J/(kg·K)": "joule/kg/kelvin", "kJ/(kg·K)": "kilojoule/kg/kelvin",
    "Btu/(lb·°F)": "Btu_it/pound/delta_degF",
    "W/(m²·K)": "watt/m**2/kelvin", "Btu/(h·ft²·°F)": "Btu_it/hour/foot**2/delta_degF",
    "J/K": "joule/kelvin", "kJ/K": "kilojoule/kelvin", "MJ/K": "megajoule/kelvin", "Wh/K": "watt*hour/kelvin",
    "Btu/°F": "Btu_it/delta_degF",
    "W/K": "watt/kelvin", "kW/K": "kilowatt/kelvin", "Btu/(h·°F)": "Btu_it/hour/delta_degF",
    "kg/m²": "kg/m**2", "g/m²": "gram/m**2", "lb/ft²": "pound/foot**2",
    "kg/m": "kg/m", "g/m": "gram/m", "lb/ft": "pound/foot", "oz/ft": "ounce/foot",
    "W/m²": "watt/m**2", "kW/m²": "kilowatt/m**2", "Btu/(h·ft²)": "Btu_it/hour/foot**2",
    "N": "newton", "kN": "kilonewton", "lbf": "pound_force",
}  # fmt: skip
TEMPERATURE_IN_PINT = {"°C": "degC", "°F": "degF", "K": "kelvin"}
DIFFERENCE_IN_PINT = {"°C": "delta_degC", "°F": "delta_degF", "K": "kelvin"}
INSIDE_IN_PINT = {
    "m³/m³": "dimensionless",
    "m": "m", "m²": "m**2", "m³": "m**3", "kg": "kg", "s": "s", "K": "kelvin", "W": "watt", "VA": "watt",
    "J": "joule", "C": "coulomb", "A": "ampere", "V": "volt", "Ω": "ohm", "m/s": "m/s", "m³/s": "m**3/s",
    "kg/s": "kg/s", "Pa": "pascal", "rad/s": "radian/second", "rad": "radian", "": "dimensionless",
    "1/K": "1/kelvin", "Hz": "1/second", "1/s": "1/second", "W/(m·K)": "watt/m/kelvin", "kg/m³": "kg/m**3",
    "J/(kg·K)": "joule/kg/kelvin", "W/(m²·K)": "watt/m**2/kelvin", "J/K": "joule/kelvin",
    "W/K": "watt/kelvin", "kg/m": "kg/m", "kg/m²": "kg/m**2", "W/m²": "watt/m**2", "Ω/m": "ohm/m",
    "N": "newton",
}  # fmt: skip

ROWS = [(dimension, unit) for dimension in DIMENSIONS.values() for unit in dimension.units]


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    return pint.UnitRegistry(cache_folder=None)


@pytest.mark.parametrize(
    ("dimension", "unit"), [pytest.param(*row, id=f"pint: {row[0].name}, {row[1].symbol}") for row in ROWS]
)
def test_unit_is_what_pint_says(registry: pint.UnitRegistry, dimension: Dimension, unit: Unit) -> None:
    quantity = parse(f"0.7 {unit.symbol}", dimension.name)
    if dimension.name == "temperature":
        expected = registry.Quantity(0.7, TEMPERATURE_IN_PINT[unit.symbol]).to("degC").magnitude
    elif dimension.name == "temperature difference":
        expected = registry.Quantity(0.7, DIFFERENCE_IN_PINT[unit.symbol]).to("kelvin").magnitude
    else:
        expected = (0.7 * registry(IN_PINT[unit.symbol])).to(INSIDE_IN_PINT[dimension.si]).magnitude
    assert float(quantity) == pytest.approx(expected, rel=1e-13)


@pytest.mark.parametrize("dimension", DIMENSIONS.values(), ids=lambda dimension: dimension.name)
def test_a_spelling_means_one_unit(dimension: Dimension) -> None:
    spelt = [plain_unit(spelling) for unit in dimension.units for spelling in unit.spellings]
    assert len(spelt) == len(set(spelt))


@pytest.mark.parametrize("dimension", DIMENSIONS.values(), ids=lambda dimension: dimension.name)
def test_every_spelling_is_read_and_gives_its_unit(dimension: Dimension) -> None:
    for unit in dimension.units:
        for spelling in unit.spellings:
            quantity = parse(f" 1   {spelling} ", dimension.name)
            assert quantity.unit == unit.symbol
            assert quantity == parse(f"1 {unit.symbol}", dimension.name)
            if not spelling[0].isdigit():
                assert parse(f"1{spelling}", dimension.name) == quantity


@pytest.mark.parametrize("dimension", DIMENSIONS.values(), ids=lambda dimension: dimension.name)
def test_the_example_is_read(dimension: Dimension) -> None:
    assert math.isfinite(parse(dimension.example, dimension.name))


@pytest.mark.parametrize("dimension", DIMENSIONS.values(), ids=lambda dimension: dimension.name)
def test_kin_have_the_same_units(dimension: Dimension) -> None:
    if dimension.kin:
        assert DIMENSIONS[dimension.kin].units is dimension.units
        assert not DIMENSIONS[dimension.kin].kin


@pytest.mark.parametrize(("dimension", "unit"), ROWS)
def test_every_unit_names_its_source(dimension: Dimension, unit: Unit) -> None:
    assert len(unit.source) > 5


def test_a_dimension_that_does_not_exist_is_told() -> None:
    with pytest.raises(ValueError, match="no dimension 'lenght'; there are length"):
        dimension_named("lenght")
