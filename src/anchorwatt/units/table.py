"""The closed table of units: what may be written for each dimension, and its exact factor to SI.

A unit that is not here does not exist for Anchorwatt. Factors are exact rational numbers (those with
pi hold the nearest float), so that "12 in" and "0.3048 m" are the same float. Spellings are told apart
by case: MV is never read as mV.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

SI = "SI Brochure, 9th edition (BIPM 2019), tables 1 to 8"
YARD = "international yard and pound agreement, 1959: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg"
BTU = "5th International Conference on the Properties of Steam, 1956: 1 Btu/(lb °F) = 4186.8 J/(kg K)"
GALLON = "US liquid gallon, 231 cubic inches (NIST Handbook 44, appendix C)"
NIST = "NIST Special Publication 811 (2008), appendix B"
KNOT = "international nautical mile, 1852 m (First International Extraordinary Hydrographic Conference, 1929)"
TRADE = "definition of the trade"

_INCH = Fraction("0.0254")
_FOOT = 12 * _INCH
_POUND = Fraction("0.45359237")
_GRAVITY = Fraction("9.80665")
_PER_FAHRENHEIT = Fraction(5, 9)
_BTU = Fraction("4186.8") * _POUND * _PER_FAHRENHEIT
_GALLON = 231 * _INCH**3
_HOUR = 3600
_DEGREE = Fraction(math.pi) / 180
_ZERO_CELSIUS = Fraction("273.15")


@dataclass(frozen=True)
class Unit:
    """One unit of one dimension: SI value = (reading - zero) x factor."""

    symbol: str
    spellings: tuple[str, ...]
    factor: Fraction
    zero: Fraction
    source: str


@dataclass(frozen=True)
class Dimension:
    """A kind of quantity: what it is called, what it may be written in, how low it may be."""

    name: str
    phrase: str  # as it reads in a sentence: "a length"
    si: str  # the unit inside the program
    units: tuple[Unit, ...]
    example: str
    lowest: float | None = None  # SI; None = any sign
    highest: float | None = None
    kin: str = ""  # the dimension whose units it shares, when only its showing differs


def _unit(symbol: str, factor: Fraction | int, source: str, *spellings: str, zero: Fraction | int = 0) -> Unit:
    return Unit(symbol, (symbol, *spellings), Fraction(factor), Fraction(zero), source)


_LENGTH = (
    _unit("mm", Fraction(1, 1000), SI, "millimetre", "millimetres", "millimeter", "millimeters"),
    _unit("cm", Fraction(1, 100), SI, "centimetre", "centimetres", "centimeter", "centimeters"),
    _unit("m", 1, SI, "metre", "metres", "meter", "meters"),
    _unit("km", 1000, SI),
    _unit("in", _INCH, YARD, "inch", "inches", '"'),
    _unit("ft", _FOOT, YARD, "foot", "feet", "'"),
    _unit("yd", 3 * _FOOT, YARD, "yard", "yards"),
    _unit("nmi", 1852, KNOT, "NM"),
)
_AREA = (
    _unit("mm²", Fraction(1, 10**6), SI),
    _unit("cm²", Fraction(1, 10**4), SI),
    _unit("m²", 1, SI, "sq m"),
    _unit("in²", _INCH**2, YARD, "sq in"),
    _unit("ft²", _FOOT**2, YARD, "sq ft", "sqft"),
)
_VOLUME = (
    _unit("cm³", Fraction(1, 10**6), SI, "cc"),
    _unit("mL", Fraction(1, 10**6), SI, "ml"),
    _unit("L", Fraction(1, 1000), SI, "l", "litre", "litres", "liter", "liters"),
    _unit("m³", 1, SI),
    _unit("in³", _INCH**3, YARD, "cu in"),
    _unit("ft³", _FOOT**3, YARD, "cu ft"),
    _unit("gal", _GALLON, GALLON, "US gal", "gallon", "gallons"),
)
_MASS = (
    _unit("g", Fraction(1, 1000), SI),
    _unit("kg", 1, SI),
    _unit("t", 1000, SI, "tonne", "tonnes"),
    _unit("oz", _POUND / 16, YARD),
    _unit("lb", _POUND, YARD, "lbs"),
)
_TIME = (
    _unit("s", 1, SI, "sec", "second", "seconds"),
    _unit("min", 60, SI, "minute", "minutes"),
    _unit("h", _HOUR, SI, "hr", "hrs", "hour", "hours"),
    _unit("d", 24 * _HOUR, SI, "day", "days"),
)
_TEMPERATURE = (
    _unit("°C", 1, SI, "degC", "deg C", "C"),
    _unit("°F", _PER_FAHRENHEIT, NIST, "degF", "deg F", "F", zero=32),
    _unit("K", 1, SI, zero=_ZERO_CELSIUS),
)
_TEMPERATURE_DIFFERENCE = (
    _unit("K", 1, SI),
    _unit("°C", 1, SI, "degC", "deg C", "C"),
    _unit("°F", _PER_FAHRENHEIT, NIST, "degF", "deg F", "F"),
)
_POWER = (
    _unit("W", 1, SI, "watt", "watts"),
    _unit("kW", 1000, SI),
    _unit("Btu/h", _BTU / _HOUR, BTU, "Btu/hr", "BTU/h", "BTU/hr", "btu/h", "btu/hr"),
    _unit("kBtu/h", 1000 * _BTU / _HOUR, BTU, "kBtu/hr", "kBTU/h", "kBTU/hr", "kbtu/h", "kbtu/hr"),
    _unit("hp", 550 * _FOOT * _POUND * _GRAVITY, NIST, "HP"),
    _unit("PS", 75 * _GRAVITY, NIST, "metric hp"),
    _unit("RT", 12000 * _BTU / _HOUR, NIST, "ton", "tons", "TR"),
)
_APPARENT_POWER = (_unit("VA", 1, SI), _unit("kVA", 1000, SI))
_ENERGY = (
    _unit("J", 1, SI),
    _unit("kJ", 1000, SI),
    _unit("MJ", 10**6, SI),
    _unit("Wh", _HOUR, SI, "W h"),
    _unit("kWh", 1000 * _HOUR, SI, "kW h"),
    _unit("Btu", _BTU, BTU, "BTU"),
    _unit("kBtu", 1000 * _BTU, BTU, "kBTU"),
)
_CHARGE = (
    _unit("C", 1, SI, "A s"),
    _unit("mAh", Fraction(_HOUR, 1000), SI),
    _unit("Ah", _HOUR, SI, "A h", "amp-hour", "amp-hours"),
)
_CURRENT = (
    _unit("mA", Fraction(1, 1000), SI),
    _unit("A", 1, SI, "amp", "amps", "ampere", "amperes"),
    _unit("kA", 1000, SI),
)
_VOLTAGE = (
    _unit("mV", Fraction(1, 1000), SI),
    _unit("V", 1, SI, "volt", "volts"),
    _unit("kV", 1000, SI),
)
_RESISTANCE = (
    _unit("µΩ", Fraction(1, 10**6), SI, "uohm", "µohm"),
    _unit("mΩ", Fraction(1, 1000), SI, "mohm"),
    _unit("Ω", 1, SI, "ohm", "ohms"),
)
_LINEAR_RESISTANCE = (
    _unit("Ω/m", 1, SI, "ohm/m"),
    _unit("Ω/km", Fraction(1, 1000), SI, "ohm/km", "mΩ/m", "mohm/m"),
    _unit("Ω/kft", Fraction(1, 1000) / _FOOT, YARD, "ohm/kft"),
)
_SPEED = (
    _unit("m/s", 1, SI),
    _unit("km/h", Fraction(1000, _HOUR), SI),
    _unit("kn", Fraction(1852, _HOUR), KNOT, "kt", "kts", "knot", "knots"),
    _unit("mph", 5280 * _FOOT / _HOUR, YARD),
    _unit("ft/s", _FOOT, YARD),
    _unit("ft/min", _FOOT / 60, YARD, "fpm"),
)
_VOLUME_FLOW = (
    _unit("m³/s", 1, SI),
    _unit("m³/h", Fraction(1, _HOUR), SI),
    _unit("L/s", Fraction(1, 1000), SI, "l/s"),
    _unit("L/min", Fraction(1, 60_000), SI, "l/min"),
    _unit("L/h", Fraction(1, 1000 * _HOUR), SI, "l/h"),
    _unit("cfm", _FOOT**3 / 60, YARD, "CFM", "ft³/min"),
    _unit("gal/min", _GALLON / 60, GALLON, "gpm", "GPM"),
    _unit("gal/h", _GALLON / _HOUR, GALLON, "gph", "GPH"),
)
_MASS_FLOW = (
    _unit("kg/s", 1, SI),
    _unit("g/s", Fraction(1, 1000), SI),
    _unit("kg/h", Fraction(1, _HOUR), SI),
    _unit("g/h", Fraction(1, 1000 * _HOUR), SI),
    _unit("lb/h", _POUND / _HOUR, YARD),
)
_PRESSURE = (
    _unit("Pa", 1, SI),
    _unit("hPa", 100, SI),
    _unit("kPa", 1000, SI),
    _unit("MPa", 10**6, SI),
    _unit("mbar", 100, SI),
    _unit("bar", 10**5, SI),
    _unit("psi", _POUND * _GRAVITY / _INCH**2, NIST),
    _unit("inH₂O", 1000 * _GRAVITY * _INCH, NIST + ", conventional water", "in H2O", "inWC", "inwc"),
    _unit("ftH₂O", 1000 * _GRAVITY * _FOOT, NIST + ", conventional water", "ft H2O"),
    _unit("mH₂O", 1000 * _GRAVITY, NIST + ", conventional water", "m H2O"),
    _unit("inHg", Fraction("13595.1") * _GRAVITY * _INCH, NIST + ", conventional mercury", "in Hg"),
)
_ROTATIONAL_SPEED = (
    _unit("rpm", _DEGREE * 6, SI, "RPM", "r/min", "rev/min", "1/min"),
    _unit("rad/s", 1, SI),
)
_ANGLE = (
    _unit("°", _DEGREE, SI, "deg", "degree", "degrees"),
    _unit("rad", 1, SI),
)
_LATITUDE = (
    _unit("° N", _DEGREE, SI, "°N", "deg N"),
    _unit("° S", -_DEGREE, SI, "°S", "deg S"),
    *_ANGLE,
)
_LONGITUDE = (
    _unit("° E", _DEGREE, SI, "°E", "deg E"),
    _unit("° W", -_DEGREE, SI, "°W", "deg W"),
    *_ANGLE,
)
_SHARE = (_unit("%", Fraction(1, 100), SI, "percent", "pct"),)
_PER_KELVIN = (
    _unit("%/K", Fraction(1, 100), SI, "%/°C", "%/degC", "%/C"),
    _unit("1/K", 1, SI, "1/°C"),
    _unit("%/°F", Fraction(1, 100) / _PER_FAHRENHEIT, NIST, "%/degF", "%/F"),
)
_FREQUENCY = (_unit("Hz", 1, SI), _unit("kHz", 1000, SI))
_AIR_CHANGES = (
    _unit("ach", Fraction(1, _HOUR), TRADE, "ACH", "1/h"),
    _unit("1/s", 1, SI),
)
_CONDUCTIVITY = (
    _unit("W/(m·K)", 1, SI, "W/mK", "W/m K", "W/(mK)", "W/m/K"),
    _unit("mW/(m·K)", Fraction(1, 1000), SI, "mW/mK", "mW/m K"),
    _unit("Btu/(h·ft·°F)", _BTU / _HOUR / _FOOT / _PER_FAHRENHEIT, NIST, "Btu/(h ft F)", "Btu/(hr ft °F)"),
    _unit(
        "Btu·in/(h·ft²·°F)",
        _BTU * _INCH / _HOUR / _FOOT**2 / _PER_FAHRENHEIT,
        NIST,
        "Btu in/(h ft2 F)",
        "Btu in/(hr ft2 °F)",
    ),
)
_DENSITY = (
    _unit("kg/m³", 1, SI),
    _unit("kg/L", 1000, SI, "kg/l", "g/cm³", "g/mL"),
    _unit("lb/ft³", _POUND / _FOOT**3, YARD, "lb/cu ft"),
)
_SPECIFIC_HEAT = (
    _unit("J/(kg·K)", 1, SI, "J/kgK", "J/kg K", "J/(kgK)", "J/kg/K"),
    _unit("kJ/(kg·K)", 1000, SI, "kJ/kgK", "kJ/kg K", "kJ/(kgK)", "kJ/kg/K"),
    _unit("Btu/(lb·°F)", _BTU / _POUND / _PER_FAHRENHEIT, BTU, "Btu/(lb F)", "Btu/lb °F", "Btu/lb F"),
)
_THERMAL_TRANSMITTANCE = (
    _unit("W/(m²·K)", 1, SI, "W/m2K", "W/m2 K", "W/(m2K)", "W/m2/K"),
    _unit(
        "Btu/(h·ft²·°F)",
        _BTU / _HOUR / _FOOT**2 / _PER_FAHRENHEIT,
        NIST,
        "Btu/(h ft2 F)",
        "Btu/(hr ft2 °F)",
        "Btu/h ft2 °F",
        "Btu/h ft2 F",
    ),
)
_HEAT_CAPACITY = (
    _unit("J/K", 1, SI),
    _unit("kJ/K", 1000, SI),
    _unit("MJ/K", 10**6, SI),
    _unit("Wh/K", _HOUR, SI),
    _unit("Btu/°F", _BTU / _PER_FAHRENHEIT, NIST, "Btu/F", "Btu/degF"),
)
_THERMAL_CONDUCTANCE = (
    _unit("W/K", 1, SI, "W/°C"),
    _unit("kW/K", 1000, SI),
    _unit("Btu/(h·°F)", _BTU / _HOUR / _PER_FAHRENHEIT, NIST, "Btu/(h F)", "Btu/h °F", "Btu/h F"),
)
_AREAL_MASS = (
    _unit("kg/m²", 1, SI),
    _unit("g/m²", Fraction(1, 1000), SI),
    _unit("lb/ft²", _POUND / _FOOT**2, YARD),
)
_LINEAR_MASS = (
    _unit("kg/m", 1, SI),
    _unit("g/m", Fraction(1, 1000), SI),
    _unit("lb/ft", _POUND / _FOOT, YARD),
    _unit("oz/ft", _POUND / 16 / _FOOT, YARD),
)
_SHARE_BY_VOLUME = (
    _unit("m³/m³", 1, SI),
    _unit("ppm", Fraction(1, 1_000_000), SI),
    _unit("%", Fraction(1, 100), SI),
)
_FORCE = (
    _unit("N", 1, SI),
    _unit("kN", 1000, SI),
    _unit("lbf", _POUND * _GRAVITY, NIST),
)
_HEAT_FLUX = (
    _unit("W/m²", 1, SI),
    _unit("kW/m²", 1000, SI),
    _unit("Btu/(h·ft²)", _BTU / _HOUR / _FOOT**2, NIST, "Btu/h ft2"),
)

_ALL = (
    Dimension("length", "a length", "m", _LENGTH, "12 ft"),
    Dimension("area", "an area", "m²", _AREA, "4.5 m²", lowest=0.0),
    Dimension("cross-section", "a cross-section", "m²", _AREA, "70 mm²", lowest=0.0, kin="area"),
    Dimension("volume", "a volume", "m³", _VOLUME, "12 m³", lowest=0.0),
    Dimension("liquid volume", "a volume of liquid", "m³", _VOLUME, "200 L", lowest=0.0, kin="volume"),
    Dimension("mass", "a mass", "kg", _MASS, "65 kg"),
    Dimension("time", "a length of time", "s", _TIME, "10 h", lowest=0.0),
    Dimension("temperature", "a temperature", "°C", _TEMPERATURE, "84 °F", lowest=-273.15),
    Dimension("temperature difference", "a temperature difference", "K", _TEMPERATURE_DIFFERENCE, "5 K"),
    Dimension("power", "a power", "W", _POWER, "1.5 kW"),
    Dimension("heat flow", "a heat flow", "W", _POWER, "24 kBtu/h", kin="power"),
    Dimension("shaft power", "a shaft power", "W", _POWER, "120 hp", kin="power"),
    Dimension("apparent power", "an apparent power", "VA", _APPARENT_POWER, "3 kVA", lowest=0.0),
    Dimension("energy", "an energy", "J", _ENERGY, "10 kWh"),
    Dimension("charge", "an electric charge", "C", _CHARGE, "280 Ah"),
    Dimension("current", "an electric current", "A", _CURRENT, "180 A"),
    Dimension("voltage", "a voltage", "V", _VOLTAGE, "25.6 V"),
    Dimension("resistance", "an electric resistance", "Ω", _RESISTANCE, "0.6 mΩ", lowest=0.0),
    Dimension("linear resistance", "a resistance per length", "Ω/m", _LINEAR_RESISTANCE, "0.272 Ω/km", lowest=0.0),
    Dimension("speed", "a speed", "m/s", _SPEED, "7 kn"),
    Dimension("velocity", "a velocity of air or water", "m/s", _SPEED, "2 m/s", kin="speed"),
    Dimension("volume flow", "a volume flow", "m³/s", _VOLUME_FLOW, "350 cfm"),
    Dimension("liquid flow", "a flow of liquid", "m³/s", _VOLUME_FLOW, "8 gal/min", kin="volume flow"),
    Dimension("fuel flow", "a flow of fuel", "m³/s", _VOLUME_FLOW, "9 L/h", kin="volume flow"),
    Dimension("mass flow", "a mass flow", "kg/s", _MASS_FLOW, "2 kg/h"),
    Dimension("pressure", "a pressure", "Pa", _PRESSURE, "30 psi"),
    Dimension("rotational speed", "a rotational speed", "rad/s", _ROTATIONAL_SPEED, "2400 rpm"),
    Dimension("angle", "an angle", "rad", _ANGLE, "15 deg"),
    Dimension("latitude", "a latitude", "rad", _LATITUDE, "25.8° N", lowest=-math.pi / 2, highest=math.pi / 2),
    Dimension("longitude", "a longitude", "rad", _LONGITUDE, "80.3° W", lowest=-math.pi, highest=math.pi),
    Dimension("share", "a share", "", _SHARE, "20 %"),
    Dimension("per kelvin", "a change with temperature", "1/K", _PER_KELVIN, "-0.35 %/K"),
    Dimension("frequency", "a frequency", "Hz", _FREQUENCY, "60 Hz", lowest=0.0),
    Dimension("air changes", "a rate of air changes", "1/s", _AIR_CHANGES, "0.5 ach", lowest=0.0),
    Dimension("conductivity", "a thermal conductivity", "W/(m·K)", _CONDUCTIVITY, "0.035 W/(m K)", lowest=0.0),
    Dimension("density", "a density", "kg/m³", _DENSITY, "80 kg/m³", lowest=0.0),
    Dimension("specific heat", "a specific heat", "J/(kg·K)", _SPECIFIC_HEAT, "1200 J/(kg K)", lowest=0.0),
    Dimension(
        "thermal transmittance",
        "a thermal transmittance",
        "W/(m²·K)",
        _THERMAL_TRANSMITTANCE,
        "5.8 W/(m² K)",
        lowest=0.0,
    ),
    Dimension("heat capacity", "a heat capacity", "J/K", _HEAT_CAPACITY, "250 kJ/K", lowest=0.0),
    Dimension("thermal conductance", "a thermal conductance", "W/K", _THERMAL_CONDUCTANCE, "12 W/K", lowest=0.0),
    Dimension("areal mass", "a mass per area", "kg/m²", _AREAL_MASS, "6 kg/m²", lowest=0.0),
    Dimension("linear mass", "a mass per length", "kg/m", _LINEAR_MASS, "0.3 oz/ft", lowest=0.0),
    Dimension("share by volume", "a share by volume", "m³/m³", _SHARE_BY_VOLUME, "1000 ppm", lowest=0.0),
    Dimension("force", "a force", "N", _FORCE, "450 N", lowest=0.0),
    Dimension("heat flux", "a heat flux", "W/m²", _HEAT_FLUX, "900 W/m²"),
)

DIMENSIONS = {dimension.name: dimension for dimension in _ALL}

_SIGNS = str.maketrans(
    {
        "\u00a0": " ",
        "\u2007": " ",
        "\u2009": " ",
        "\u202f": " ",
        "\u03bc": "\u00b5",
        "\u2126": "\u03a9",
        "º": "°",
        "˚": "°",
        "℃": "°C",
        "℉": "°F",
        "′": "'",
        "’": "'",
        "″": '"',
        "”": '"',
        "−": "-",
        "⁄": "/",
    }
)
# Powers and products mean something in a unit only: a number must not change by them.
_RAISED = str.maketrans({"²": "2", "³": "3", "₂": "2"})
_CARET = re.compile(r"(?<=[a-zA-Z])\^(?=[23])")
_PRODUCT = re.compile(r"(?<=[a-zA-Z0-9)]) ?[·⋅*] ?(?=[a-zA-Z°])")


def plain(text: str) -> str:
    """Bring the many ways to type a space, a minus, a degree or a quote to one.

    Example
    -------
    >>> print(plain("−3  ℃"), plain("6′ 4″"))
    -3 °C 6' 4"
    """
    return re.sub(" +", " ", text.translate(_SIGNS)).strip()


@lru_cache(maxsize=1024)
def plain_unit(text: str) -> str:
    """Bring a unit to the one way in which it is looked up.

    Example
    -------
    >>> plain_unit("W / (m²·K)"), plain_unit("W/(m^2 K)")
    ('W/(m2 K)', 'W/(m2 K)')
    """
    flat = _PRODUCT.sub(" ", _CARET.sub("", plain(text).translate(_RAISED)))
    return re.sub(" ?([/()%]) ?", r"\1", flat)


_LOOKUP = {
    dimension.name: {plain_unit(spelling): unit for unit in dimension.units for spelling in unit.spellings}
    for dimension in _ALL
}


def dimension_named(name: str) -> Dimension:
    """Look a dimension up by its name; a name that does not exist is a programmer's mistake."""
    if name not in DIMENSIONS:
        raise ValueError(f"no dimension {name!r}; there are {', '.join(DIMENSIONS)}")
    return DIMENSIONS[name]


def spellings(dimension: str) -> dict[str, Unit]:
    """Every spelling of a dimension's units, in plain signs, and its unit."""
    dimension_named(dimension)
    return _LOOKUP[dimension]
