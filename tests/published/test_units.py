"""Conversion factors and wire sizes as handbooks print them. Tolerance: half of the last digit printed."""

from __future__ import annotations

import pytest

from anchorwatt.units import WireGauge, convert, parse

HANDBOOK = "ASHRAE Handbook, Units and Conversions, table 1, Conversions to I-P and SI Units"
FAO = "FAO document T0713E, chapter 13, Conversion factors"
TEXTBOOK = "a mechanical engineering text, appendix A, table A.1 (title not shown in the copy seen)"
NIST = "from memory: NIST SP 811, appendix B.8"

# written, dimension, unit of the printed value, printed value, half of its last digit, source
FACTORS = [
    ("1 Btu", "energy", "J", 1055.056, 0.0005, HANDBOOK),
    ("1 Btu/h", "power", "W", 0.2930711, 0.5e-7, HANDBOOK),
    ("1 Btu/(h·ft²)", "heat flux", "W/m²", 3.154591, 0.5e-6, HANDBOOK),
    ("1 Btu/(h·ft²·°F)", "thermal transmittance", "W/(m²·K)", 5.678263, 0.5e-6, HANDBOOK),
    ("1 Btu/(h·ft·°F)", "conductivity", "W/(m·K)", 1.730735, 0.5e-6, HANDBOOK),
    ("1 Btu·in/(h·ft²·°F)", "conductivity", "W/(m·K)", 0.1442279, 0.5e-7, HANDBOOK),
    ("1 Btu/(lb·°F)", "specific heat", "kJ/(kg·K)", 4.1868, 1e-12, HANDBOOK + ", exact"),
    ("1 in²", "area", "mm²", 645.16, 1e-9, HANDBOOK),
    # The handbook prints 16.3874 mL, which is not 2.54³ mL: another table stands here instead.
    ("1 in³", "volume", "cm³", 16.387, 0.0005, "AFE, chapter 140, Helpful Conversions"),
    ("1 kWh", "energy", "MJ", 3.60, 1e-12, HANDBOOK + ", exact"),
    ("1 nmi", "length", "km", 1.852, 1e-12, HANDBOOK + ", exact"),
    ("1 mph", "speed", "km/h", 1.609344, 1e-12, HANDBOOK),
    ("1 mbar", "pressure", "kPa", 0.100, 1e-12, HANDBOOK + ", exact"),
    ("1 oz", "mass", "g", 28.35, 0.005, HANDBOOK),
    ("1 psi", "pressure", "Pa", 6895.0, 0.5, FAO),
    ("1 hp", "power", "kW", 0.746, 0.0005, FAO),
    ("1 PS", "power", "kW", 0.735499, 0.5e-6, TEXTBOOK),
    ("1 RT", "power", "kW", 3.517, 0.0005, FAO),
    ("1 gal", "volume", "L", 3.785, 0.0005, FAO),
    ("1 ft³", "volume", "L", 28.3168, 0.5e-4, FAO),
    ("1 lb/ft³", "density", "kg/m³", 16.0185, 0.5e-4, FAO),
    ("1 inH2O", "pressure", "Pa", 249.0889, 0.5e-4, NIST + ", inch of water, conventional"),
    ("1 ftH2O", "pressure", "Pa", 2989.067, 0.5e-3, NIST + ", foot of water, conventional"),
    ("1 inHg", "pressure", "Pa", 3386.389, 0.5e-3, NIST + ", inch of mercury, conventional"),
    ("1 cfm", "volume flow", "L/s", 0.4719474, 0.5e-7, NIST),
    ("1 gal/min", "volume flow", "L/s", 0.06309020, 0.5e-8, NIST),
    ("1 kn", "speed", "m/s", 0.5144444, 0.5e-7, NIST),
    ("1 rpm", "rotational speed", "rad/s", 0.1047198, 0.5e-7, NIST),
]

GAUGE_TABLE = "ASTM B258 diameters in inches, from memory"
DIAMETERS = [
    ("4/0 AWG", 0.4600),
    ("3/0 AWG", 0.4096),
    ("2/0 AWG", 0.3648),
    ("1/0 AWG", 0.3249),
    ("1 AWG", 0.2893),
    ("2 AWG", 0.2576),
    ("3 AWG", 0.2294),
    ("4 AWG", 0.2043),
    ("5 AWG", 0.1819),
    ("6 AWG", 0.1620),
    ("8 AWG", 0.1285),
    ("10 AWG", 0.1019),
    ("12 AWG", 0.0808),
    ("14 AWG", 0.0641),
    ("16 AWG", 0.0508),
    ("18 AWG", 0.0403),
    ("20 AWG", 0.0320),
    ("36 AWG", 0.0050),
]


@pytest.mark.parametrize(
    ("written", "dimension", "unit", "printed", "half_digit"),
    [pytest.param(*row[:5], id=f"{row[5]}: {row[0]}") for row in FACTORS],
)
def test_a_factor_is_as_printed(written: str, dimension: str, unit: str, printed: float, half_digit: float) -> None:
    reading = convert(parse(written, dimension), unit, dimension)
    assert reading == pytest.approx(printed, rel=0, abs=half_digit)


@pytest.mark.parametrize(("gauge", "printed"), [pytest.param(*row, id=f"{GAUGE_TABLE}: {row[0]}") for row in DIAMETERS])
def test_a_gauge_is_as_thick_as_printed(gauge: str, printed: float) -> None:
    diameter = WireGauge.parse(gauge).diameter
    assert convert(diameter, "in") == pytest.approx(printed, rel=0, abs=0.5e-4)
