"""American wire gauge."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import BadQuantity
from anchorwatt.units import WireGauge

gauges = st.integers(-3, 40).map(WireGauge)


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("8 AWG", 8),
        ("AWG 8", 8),
        ("8awg", 8),
        ("1/0 AWG", 0),
        ("4/0 AWG", -3),
        ("0000 AWG", -3),
        ("0 AWG", 0),
        ("00 AWG", -1),
    ],
)
def test_it_reads(text: str, number: int) -> None:
    assert WireGauge.parse(text).number == number


@pytest.mark.parametrize(
    "text", ["", "8", "AWG", "5/0 AWG", "41 AWG", "-1 AWG", "8.5 AWG", "8 SWG", "00000 AWG", "8 AWG 8"]
)
def test_it_refuses(text: str) -> None:
    with pytest.raises(BadQuantity, match='allowed: a wire gauge from "4/0 AWG" to "40 AWG"'):
        WireGauge.parse(text)


@pytest.mark.parametrize("value", [8, None])
def test_what_is_no_text_is_refused(value: object) -> None:
    with pytest.raises(BadQuantity, match="without AWG"):
        WireGauge.parse(value)  # type: ignore[arg-type]


@pytest.mark.parametrize("number", [-4, 41])
def test_there_are_no_others(number: int) -> None:
    with pytest.raises(ValueError, match="from -3"):
        WireGauge(number)


@given(gauges)
def test_it_is_written_as_it_is_read(gauge: WireGauge) -> None:
    assert WireGauge.parse(str(gauge)) == gauge


@given(gauges, gauges)
def test_a_larger_number_is_a_thinner_wire(one: WireGauge, other: WireGauge) -> None:
    assert (one < other) == (one.area > other.area)


def test_the_series_ends_where_its_definition_says() -> None:
    assert WireGauge(-3).diameter == pytest.approx(0.46 * 0.0254, rel=1e-12)
    assert WireGauge(36).diameter == pytest.approx(0.005 * 0.0254, rel=1e-12)
