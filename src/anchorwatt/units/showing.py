"""From SI values to what a screen shows, in SI units or in those of a yard that works in US units."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal, overload

from anchorwatt.units.clock import show_clock
from anchorwatt.units.position import HEMISPHERES
from anchorwatt.units.quantity import Quantity
from anchorwatt.units.refusal import Refused, quoted
from anchorwatt.units.table import DIMENSIONS, Unit, dimension_named, plain_unit, spellings

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

System = Literal["si", "us"]


@dataclass(frozen=True)
class Shown:
    """A unit to show a dimension in while the reading, as rounded, stays below a limit."""

    unit: str
    decimals: int
    below: float = math.inf


def _rows(*rows: tuple[str, int] | tuple[str, int, float]) -> tuple[Shown, ...]:
    return tuple(Shown(*row) for row in rows)


# The last row of a list is the dimension's main unit, which heads tables and columns.
_SHOWN: dict[str, tuple[tuple[Shown, ...], tuple[Shown, ...]]] = {
    "length": (
        _rows(("mm", 1, 10), ("mm", 0, 100), ("m", 2, 10), ("m", 1)),
        _rows(("in", 2, 12), ("ft", 1, 20), ("ft", 0)),
    ),
    "area": (_rows(("m²", 2, 10), ("m²", 1)), _rows(("ft²", 1, 10), ("ft²", 0))),
    "cross-section": (_rows(("mm²", 2, 10), ("mm²", 1, 100), ("mm²", 0)),) * 2,
    "volume": (_rows(("m³", 2, 10), ("m³", 1)), _rows(("ft³", 1, 10), ("ft³", 0))),
    "liquid volume": (_rows(("L", 1, 100), ("L", 0)), _rows(("gal", 1, 100), ("gal", 0))),
    "mass": (_rows(("kg", 1, 10), ("kg", 0)), _rows(("lb", 1, 10), ("lb", 0))),
    "time": (_rows(("s", 0, 60), ("min", 0, 120), ("h", 1)),) * 2,
    "temperature": (_rows(("°C", 1)), _rows(("°F", 0))),
    "temperature difference": (_rows(("K", 1)), _rows(("°F", 1))),
    "power": (_rows(("W", 0, 1000), ("kW", 2, 10), ("kW", 1)),) * 2,
    "heat flow": (_rows(("W", 0, 1000), ("kW", 2, 10), ("kW", 1)), _rows(("Btu/h", 0, 1000), ("kBtu/h", 1))),
    "shaft power": (_rows(("kW", 1, 100), ("kW", 0)), _rows(("hp", 1, 100), ("hp", 0))),
    "apparent power": (_rows(("VA", 0, 1000), ("kVA", 1)),) * 2,
    "energy": (_rows(("Wh", 0, 1000), ("kWh", 1)),) * 2,
    "charge": (_rows(("Ah", 1, 10), ("Ah", 0)),) * 2,
    "current": (_rows(("mA", 0, 1000), ("A", 1, 100), ("A", 0)),) * 2,
    "voltage": (_rows(("mV", 0, 1000), ("V", 1)),) * 2,
    "resistance": (_rows(("µΩ", 0, 1000), ("mΩ", 2, 10), ("mΩ", 1, 1000), ("Ω", 2)),) * 2,
    "linear resistance": (_rows(("Ω/km", 3, 1), ("Ω/km", 2)), _rows(("Ω/kft", 4, 0.1), ("Ω/kft", 3))),
    "speed": (_rows(("kn", 1)),) * 2,
    "velocity": (_rows(("m/s", 1)), _rows(("ft/min", 0))),
    "volume flow": (_rows(("m³/h", 1, 10), ("m³/h", 0)), _rows(("cfm", 1, 10), ("cfm", 0))),
    "liquid flow": (_rows(("L/min", 1, 100), ("L/min", 0)), _rows(("gal/min", 1, 100), ("gal/min", 0))),
    "fuel flow": (_rows(("L/h", 1)), _rows(("gal/h", 2))),
    "mass flow": (_rows(("kg/h", 2)), _rows(("lb/h", 2))),
    "pressure": (_rows(("Pa", 0, 1000), ("kPa", 1, 100), ("kPa", 0)), _rows(("psi", 1))),
    "rotational speed": (_rows(("rpm", 0)),) * 2,
    "angle": (_rows(("°", 1)),) * 2,
    "share": (_rows(("%", 1, 10), ("%", 0)),) * 2,
    "per kelvin": (_rows(("%/K", 2)), _rows(("%/°F", 2))),
    "frequency": (_rows(("Hz", 0)),) * 2,
    "air changes": (_rows(("ach", 1)),) * 2,
    "conductivity": (_rows(("W/(m·K)", 3)), _rows(("Btu·in/(h·ft²·°F)", 2))),
    "density": (_rows(("kg/m³", 3, 1), ("kg/m³", 1, 100), ("kg/m³", 0)), _rows(("lb/ft³", 4, 0.1), ("lb/ft³", 1))),
    "specific heat": (_rows(("J/(kg·K)", 0)), _rows(("Btu/(lb·°F)", 3))),
    "thermal transmittance": (_rows(("W/(m²·K)", 2)), _rows(("Btu/(h·ft²·°F)", 2))),
    "heat capacity": (_rows(("kJ/K", 0)), _rows(("Btu/°F", 0))),
    "thermal conductance": (_rows(("W/K", 1)), _rows(("Btu/(h·°F)", 1))),
    "areal mass": (_rows(("kg/m²", 1)), _rows(("lb/ft²", 2))),
    "linear mass": (_rows(("g/m", 0)), _rows(("oz/ft", 2))),
    "share by volume": (_rows(("ppm", 0)),) * 2,
    "force": (_rows(("N", 0, 10_000), ("kN", 1)), _rows(("lbf", 0))),
    "heat flux": (_rows(("W/m²", 0)), _rows(("Btu/(h·ft²)", 0))),
}


NOTHING = {"current": "A", "voltage": "V"}
"""Units of nothing at all, where the smallest would look like a reading."""


def show(value: float, dimension: str, system: System, digits: int | None = None) -> str:
    """Write a value for a screen, in a unit and to a rounding that suit its size.

    Parameters
    ----------
    value : SI
    dimension : name of a dimension in `table.DIMENSIONS`, or "clock time"
    system : "si" or "us"
    digits : significant digits; left out, what people read off for that quantity

    Returns
    -------
    Number and unit; "—" for a value that is not known (nan).

    Example
    -------
    >>> show(28.9, "temperature", "us"), show(7063.0, "heat flow", "us"), show(14.02, "length", "us")
    ('84 °F', '24.1 kBtu/h', '46 ft')
    >>> show(25.9e6, "energy", "si"), show(1080.0, "time", "si"), show(0.2, "share", "si")
    ('7.2 kWh', '18 min', '20 %')
    >>> show(7063.0, "heat flow", "si", digits=2), show(0.0, "current", "si")
    ('7.1 kW', '0 A')
    """
    if math.isnan(value):
        return "—"
    if dimension == "clock time":
        return show_clock(value)
    if dimension in HEMISPHERES:
        letter = HEMISPHERES[dimension][0 if value >= 0 else 1]
        return f"{abs(math.degrees(value)):.{_decimals(abs(math.degrees(value)), digits, 2)}f}° {letter}"
    rows = _rows_of(dimension, system)
    if value == 0.0 and dimension in NOTHING:
        return f"0 {NOTHING[dimension]}"
    for row in rows:
        reading = _reading(value, _unit_of(row.unit, dimension))
        if abs(round(reading, row.decimals)) < row.below or row is rows[-1]:
            return _with_unit(_number(reading, _decimals(reading, digits, row.decimals)), row.unit)
    raise AssertionError("a dimension is shown in no unit")


def unit_for(dimension: str, system: System) -> str:
    """Name the main unit of a dimension, for the head of a table or the name of a column.

    Example
    -------
    >>> unit_for("heat flow", "us"), unit_for("heat flow", "si")
    ('kBtu/h', 'kW')
    """
    if dimension in HEMISPHERES:
        return "°"
    return _rows_of(dimension, system)[-1].unit


@overload
def convert(value: float, unit: str, dimension: str | None = None) -> float: ...
@overload
def convert(value: NDArray[np.float64], unit: str, dimension: str | None = None) -> NDArray[np.float64]: ...
def convert(value: float | NDArray[np.float64], unit: str, dimension: str | None = None) -> float | NDArray[np.float64]:
    """Convert an SI value, or an array of them, to a unit.

    Parameters
    ----------
    value : SI; a temperature in °C
    unit : in any spelling of the table
    dimension : needed only for a temperature difference, since "°F" alone is taken as a temperature

    Returns
    -------
    The reading in that unit.

    Raises
    ------
    BadQuantity
        No such unit.

    Example
    -------
    >>> convert(0.3048, "in"), convert(25.0, "°F"), convert(5.0, "°F", "temperature difference")
    (12.0, 77.0, 9.0)
    """
    return _reading(value, _unit_of(unit, dimension))


def write(value: float, unit: str, dimension: str) -> Quantity:
    """Make a quantity from an SI value, written in a given unit with up to nine digits, as for a file.

    Example
    -------
    >>> write(0.0381, "in", "length").text
    '1.5 in'
    """
    named = _unit_of(unit, dimension)
    return Quantity(value, _with_unit(f"{_reading(value, named):.9g}", named.symbol), dimension, named.symbol)


@overload
def _reading(value: float, unit: Unit) -> float: ...
@overload
def _reading(value: NDArray[np.float64], unit: Unit) -> NDArray[np.float64]: ...
def _reading(value: float | NDArray[np.float64], unit: Unit) -> float | NDArray[np.float64]:
    # Numerator and denominator one after the other: 0.3 m is then 300 mm and not 299.99999999999994 mm.
    return value * float(unit.factor.denominator) / float(unit.factor.numerator) + float(unit.zero)


def _unit_of(name: str, dimension: str | None) -> Unit:
    key = plain_unit(name)
    for candidate in [dimension] if dimension else DIMENSIONS:
        if key in spellings(candidate):
            return spellings(candidate)[key]
    raise Refused(f"the unit {quoted(name)}", "a unit of the table" + (f" for {dimension}" if dimension else ""))


def _rows_of(dimension: str, system: System) -> tuple[Shown, ...]:
    dimension_named(dimension)
    if system not in ("si", "us"):
        raise ValueError(f'the system of units is "si" or "us", not {system!r}')
    return _SHOWN[dimension][0 if system == "si" else 1]


def _decimals(reading: float, digits: int | None, usual: int) -> int:
    if digits is None:
        return usual
    if reading == 0 or math.isinf(reading):
        return 0
    return digits - 1 - math.floor(math.log10(abs(reading)))


def _number(reading: float, decimals: int) -> str:
    if math.isinf(reading):
        return "∞" if reading > 0 else "−∞"
    rounded = round(reading, decimals) + 0.0
    places = max(decimals, 0)
    text = f"{abs(rounded):,.{places}f}" if abs(rounded) >= 10_000 else f"{abs(rounded):.{places}f}"
    minus = "−" if rounded < 0 else ""
    return minus + text.replace(",", "\u00a0")


def _with_unit(number: str, unit: str) -> str:
    return f"{number}{unit}" if unit.startswith("°") and unit not in ("°C", "°F") else f"{number} {unit}"
