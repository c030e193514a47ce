"""What screens show."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import BadQuantity
from anchorwatt.units import DIMENSIONS, System, convert, parse, show, unit_for, write
from anchorwatt.units.table import spellings

ROWS: list[tuple[float, str, System, str]] = [
    (260.0 / 9.0, "temperature", "us", "84 °F"),
    (28.888, "temperature", "si", "28.9 °C"),
    (-0.04, "temperature", "si", "0.0 °C"),
    (-5.0, "temperature", "si", "−5.0 °C"),
    (5.0, "temperature difference", "us", "9.0 °F"),
    (7063.0, "heat flow", "us", "24.1 kBtu/h"),
    (7063.0, "heat flow", "si", "7.06 kW"),
    (999.4, "power", "si", "999 W"),
    (999.6, "power", "si", "1.00 kW"),
    (1500.0, "power", "us", "1.50 kW"),
    (89_484.0, "shaft power", "us", "120 hp"),
    (14.02, "length", "us", "46 ft"),
    (1.9304, "length", "us", "6.3 ft"),
    (0.0381, "length", "us", "1.50 in"),
    (0.0381, "length", "si", "38 mm"),
    (14.02, "length", "si", "14.0 m"),
    (25.9e6, "energy", "si", "7.2 kWh"),
    (1080.0, "time", "si", "18 min"),
    (37_440.0, "time", "us", "10.4 h"),
    (45.0, "time", "si", "45 s"),
    (0.2, "share", "si", "20 %"),
    (0.056, "share", "si", "5.6 %"),
    (280 * 3600.0, "charge", "us", "280 Ah"),
    (0.0006, "resistance", "si", "600 µΩ"),
    (14_500.0, "mass", "si", "14\u00a0500 kg"),
    (3.6, "speed", "us", "7.0 kn"),
    (251.33, "rotational speed", "si", "2400 rpm"),
    (206_843.0, "pressure", "us", "30.0 psi"),
    (math.radians(15.0), "angle", "si", "15.0°"),
    (-1.4014993893514467, "longitude", "si", "80.30° W"),
    (0.45, "latitude", "us", "25.78° N"),
    (77_400.0, "clock time", "us", "21:30"),
    (math.nan, "temperature", "si", "—"),
    (math.inf, "time", "si", "∞ h"),
    (0.0, "power", "si", "0 W"),
]
systems: st.SearchStrategy[System] = st.sampled_from(["si", "us"])


@pytest.mark.parametrize(("value", "dimension", "system", "shown"), ROWS)
def test_it_shows(value: float, dimension: str, system: System, shown: str) -> None:
    assert show(value, dimension, system) == shown


@pytest.mark.parametrize(("digits", "shown"), [(1, "7 kW"), (2, "7.1 kW"), (3, "7.06 kW"), (5, "7.0630 kW")])
def test_it_shows_as_many_digits_as_asked(digits: int, shown: str) -> None:
    assert show(7063.0, "heat flow", "si", digits) == shown


def test_it_rounds_large_readings_to_the_digits_asked() -> None:
    assert show(14_534.0, "mass", "si", 2) == "15\u00a0000 kg"


@given(st.sampled_from(sorted(DIMENSIONS)), systems, st.floats(min_value=0.02, max_value=1.4))
def test_what_is_shown_can_be_read_back(dimension: str, system: System, value: float) -> None:
    # Eight digits, so that only the units are on trial; 0.02 to 1.4 is within every dimension's limits.
    assert float(parse(show(value, dimension, system, 8), dimension)) == pytest.approx(value, rel=1e-5)


@pytest.mark.parametrize("dimension", sorted(DIMENSIONS))
@pytest.mark.parametrize("system", ["si", "us"])
def test_the_main_unit_is_of_the_table(dimension: str, system: System) -> None:
    assert unit_for(dimension, system) in {unit.symbol for unit in spellings(dimension).values()}


def test_an_unknown_system_is_told() -> None:
    with pytest.raises(ValueError, match='"si" or "us", not \'imperial\''):
        show(1.0, "length", "imperial")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("value", "unit", "dimension", "reading"),
    [
        (0.3, "mm", None, 300.0),
        (25.0, "°F", None, 77.0),
        (5.0, "degF", "temperature difference", 9.0),
        (25.0, "K", None, 298.15),
        (3.6e6, "kWh", None, 1.0),
        (math.pi, "deg", None, 180.0),
        (0.00047194745, "cfm", None, 1.0000000138),
    ],
)
def test_it_converts(value: float, unit: str, dimension: str | None, reading: float) -> None:
    assert convert(value, unit, dimension) == pytest.approx(reading, rel=1e-9)


def test_it_converts_arrays() -> None:
    for unit in spellings("power"):
        assert convert(np.array([0.0, 500.0]), unit)[1] == convert(500.0, unit)
    np.testing.assert_allclose(convert(np.array([0.0, 100.0]), "°F"), [32.0, 212.0])


@pytest.mark.parametrize(("unit", "dimension"), [("furlong", None), ("V", "length")])
def test_a_unit_that_does_not_exist_is_told(unit: str, dimension: str | None) -> None:
    with pytest.raises(BadQuantity, match=unit):
        convert(1.0, unit, dimension)


@pytest.mark.parametrize(
    ("value", "unit", "dimension", "text"),
    [
        (0.0381, "in", "length", "1.5 in"),
        (0.35, "%", "share", "35 %"),
        (-1.4014993893514467, "° W", "longitude", "80.3° W"),
        (0.3, "mm", "length", "300 mm"),
    ],
)
def test_it_writes_a_value_in_a_unit(value: float, unit: str, dimension: str, text: str) -> None:
    written = write(value, unit, dimension)
    assert written.text == text
    assert float(parse(written.text, dimension)) == pytest.approx(value, rel=1e-8)
