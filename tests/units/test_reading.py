"""What a writer may write, and what is refused."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from anchorwatt.errors import BadQuantity
from anchorwatt.units import DIMENSIONS, Quantity, Refused, convert, parse
from anchorwatt.units.pattern import pattern_of
from anchorwatt.units.table import spellings

READ = [
    ("12 ft", "length", 3.6576),
    ("12ft", "length", 3.6576),
    ("+12 ft", "length", 3.6576),
    (".5 m", "length", 0.5),
    ("5. m", "length", 5.0),
    ("1.5e2 mm", "length", 0.15),
    ("3/8 in", "length", 0.009525),
    ("1 1/2 in", "length", 0.0381),
    ("1-1/2 in", "length", 0.0381),
    ("-1 1/2 in", "length", -0.0381),
    ("1½ in", "length", 0.0381),
    ("½ in", "length", 0.0127),
    ("6 ft 4 in", "length", 1.9304),
    ("-6 ft 4 in", "length", -1.9304),
    ("6' 4\"", "length", 1.9304),
    ("6′4″", "length", 1.9304),
    ("6 ft 4 1/2 in", "length", 1.9431),
    ("12 000 Btu/h", "power", 3516.8528420666667),
    ("12\u202f000 Btu/h", "power", 3516.8528420666667),
    ("1 200.5 W", "power", 1200.5),
    ("2 tons", "heat flow", 7033.705684133333),
    ("84 °F", "temperature", 260.0 / 9.0),
    ("84 ºF", "temperature", 260.0 / 9.0),
    ("84 ℉", "temperature", 260.0 / 9.0),
    ("84\u00a0degF", "temperature", 260.0 / 9.0),
    ("−40 °F", "temperature", -40.0),
    ("300 K", "temperature", 26.85),
    ("9 °F", "temperature difference", 5.0),
    ("1 h 30 min", "time", 5400.0),
    ("1 d 2 h 3 min 4 s", "time", 93784.0),
    ("90 deg", "angle", math.pi / 2),
    ("60 rpm", "rotational speed", 2 * math.pi),
    ("0.5 mΩ", "resistance", 0.0005),
    ("0.5 m\u2126", "resistance", 0.0005),
    ("5.8 W/(m²·K)", "thermal transmittance", 5.8),
    ("5.8 W/(m^2 K)", "thermal transmittance", 5.8),
    ("5.8 W / m2K", "thermal transmittance", 5.8),
    ("20 %", "share", 0.2),
    ("20%", "share", 0.2),
    ("25.8° N", "latitude", math.radians(25.8)),
    ("33.9° S", "latitude", -math.radians(33.9)),
    ("25° 48' N", "latitude", math.radians(25.8)),
    ("25°48′0.0″N", "latitude", math.radians(25.8)),
    ("80° 18.0' W", "longitude", -math.radians(80.3)),
    ("-80.3 deg", "longitude", -math.radians(80.3)),
]

REFUSED = [
    ("", "length", "an empty text", "a length such as"),
    ("   ", "length", "an empty text", "mm, cm, m, km, in, ft, yd, nmi"),
    ("12", "length", "a bare number without a unit", "a length such as"),
    ("0.2", "share", "a bare number without a unit", 'a share such as "20 %", in %'),
    ("ft", "length", "does not begin with a number", "a length"),
    ("twelve ft", "length", "does not begin with a number", "a length"),
    ("12 fet", "length", 'unit "fet" is unknown, perhaps "ft"', "a length"),
    ("12 KW", "power", 'perhaps "kW"', "a power"),
    ("5 btu", "energy", 'perhaps "Btu"', "an energy"),
    ("12 V", "length", "which is a voltage", "a length"),
    ("50 amps", "speed", "which is an electric current", "a speed"),
    ("24 kBtu/h", "energy", "which is a power", "an energy"),
    ("5 C", "length", "which is a temperature or a temperature difference or an electric charge", "a length"),
    ("12 MV", "voltage", 'unit "MV" is unknown', "a voltage"),
    ("12,000 Btu/h", "power", "a comma may mean thousands or decimals", "a power"),
    ("0,5 m", "length", "a comma may mean thousands or decimals", "a length"),
    ("12 0001 W", "power", "does not begin with a number that can be read", "a power"),
    ("1 2 m", "length", "does not begin with a number that can be read", "a length"),
    ("12 m 3", "length", "unknown", "a length"),
    ("1/0 in", "length", "a division by zero", "a length"),
    ("1 1/0 in", "length", "a division by zero", "a length"),
    ("9**9**9 m", "length", "unknown", "a length"),
    ("2^3 m", "length", "unknown", "a length"),
    ("10² m", "length", "does not begin with a number that can be read", "a length"),
    ("9*999 m", "length", "unknown", "a length"),
    ("2*m", "length", "unknown", "a length"),
    ("1_000 m", "length", "unknown", "a length"),
    ("0x10 m", "length", "unknown", "a length"),
    ("٣ m", "length", "does not begin with a number", "a length"),
    ("nan m", "length", "does not begin with a number", "a length"),
    ("inf m", "length", "does not begin with a number", "a length"),
    ("1e300 m", "length", "absurdly large", "a length"),
    ("1e9999 m", "length", "unknown", "a length"),
    ("1e-300 m", "length", "absurdly small", "a length"),
    ("--3 m", "length", "does not begin with a number", "a length"),
    ("3 m\n4 m", "length", "unknown", "a length"),
    ("6 ft 14 in", "length", "where 14 in makes a whole ft", "a length"),
    ("6.5 ft 4 in", "length", "unknown", "a length"),
    ("4 in 6 ft", "length", "unknown", "a length"),
    ("6 ft -4 in", "length", "unknown", "a length"),
    ("6 m 4 in", "length", "unknown", "a length"),
    ("1 h 90 min", "time", "where 90 min makes a whole h", "a length of time"),
    ("x" * 5000, "length", "a text of 5000 characters", "a length"),
    ("-2 m²", "area", '"-2 m²"', "an area not below zero"),
    ("-1 h", "time", '"-1 h"', "not below zero"),
    ("-300 °C", "temperature", '"-300 °C"', "a temperature not below -273.15 °C"),
    ("91° N", "latitude", '"91° N"', "a latitude not above"),
    ("25° 48' W", "latitude", "unknown", "a latitude"),
    ("25° 60' N", "latitude", "unknown", "a latitude"),
    ("25° 48.5' 3\" N", "latitude", "unknown", "a latitude"),
    ("-80.3° W", "longitude", "both a minus sign and a hemisphere", "a longitude"),
    ("-80° 18' W", "longitude", "both a minus sign and a hemisphere", "a longitude"),
    ("4/0 AWG", "area", "which is a wire gauge", "an area"),
]


@pytest.mark.parametrize(("text", "dimension", "value"), READ)
def test_it_reads(text: str, dimension: str, value: float) -> None:
    quantity = parse(text, dimension)
    assert float(quantity) == pytest.approx(value, rel=1e-14)
    assert quantity.text == text
    assert quantity.dimension == dimension


@pytest.mark.parametrize(("text", "dimension", "found", "allowed"), REFUSED)
def test_it_refuses_and_says_why(text: str, dimension: str, found: str, allowed: str) -> None:
    with pytest.raises(BadQuantity) as refusal:
        parse(text, dimension)
    assert isinstance(refusal.value, Refused)
    assert found in refusal.value.found
    assert allowed in refusal.value.allowed
    assert str(refusal.value) == f"found {refusal.value.found}; allowed: {refusal.value.allowed}"
    assert len(str(refusal.value)) < 400


@pytest.mark.parametrize("value", [12, 12.5, True, None, ["12 m"], {"m": 12}, b"12 m", 10**400])
def test_what_is_no_text_is_refused(value: object) -> None:
    with pytest.raises(BadQuantity, match="without a unit; allowed: a length such as"):
        parse(value, "length")  # type: ignore[arg-type]


def test_one_foot_and_twelve_inches_are_the_same_float() -> None:
    assert parse("1 ft", "length") == parse("12 in", "length") == parse("0.3048 m", "length")


dimensions = st.sampled_from(sorted(DIMENSIONS))
names = sorted({spelling for name in DIMENSIONS for spelling in spellings(name)})
signs = [*"0123456789 /.-−+e½'\"°²*·,()", "^2", "\u00a0"]
fragments = st.sampled_from([*signs, *names])


@given(st.one_of(st.text(max_size=80), st.lists(fragments, max_size=12).map("".join)), dimensions)
@example("9**9**9 m", "length")
@example("1 1/2 1/2 in", "length")
@example("°", "angle")
@example("0/1 m", "length")
def test_any_text_is_read_or_refused(text: str, dimension: str) -> None:
    try:
        quantity = parse(text, dimension)
    except BadQuantity:
        return
    assert math.isfinite(quantity)
    assert quantity.text == text.strip()
    assert re.search(pattern_of(dimension), text), "the schema marks a text that the reader takes"
    assert parse(quantity.text, dimension) == quantity


@st.composite
def quantities(draw: st.DrawFn) -> tuple[str, str, float, str]:
    dimension = draw(dimensions)
    name = draw(st.sampled_from(sorted(spellings(dimension))))
    number = draw(st.floats(min_value=0.001, max_value=99_000).map(lambda value: float(f"{value:.6g}")))
    return f"{number} {name}", dimension, number, name


@given(quantities())
def test_a_quantity_converts_back_to_what_was_written(written: tuple[str, str, float, str]) -> None:
    text, dimension, number, name = written
    try:
        quantity = parse(text, dimension)
    except BadQuantity:
        kind = DIMENSIONS[dimension]
        assert kind.highest is not None or kind.lowest is not None
        return
    assert convert(quantity, name, dimension) == pytest.approx(number, rel=1e-12, abs=1e-10)


@given(st.integers(0, 300), st.integers(0, 11), st.integers(1, 15))
def test_feet_and_inches_add_up(feet: int, inches: int, sixteenths: int) -> None:
    quantity = parse(f"{feet} ft {inches} {sixteenths}/16 in", "length")
    assert float(quantity) == pytest.approx((feet * 12 + inches + sixteenths / 16) * 0.0254, rel=1e-14)


@pytest.mark.parametrize("dimension", sorted(DIMENSIONS))
def test_a_kin_reads_the_same(dimension: str) -> None:
    kin = DIMENSIONS[dimension].kin
    if kin:
        example_text = DIMENSIONS[dimension].example
        assert parse(example_text, kin) == parse(example_text, dimension)
        assert isinstance(parse(example_text, kin), Quantity)
