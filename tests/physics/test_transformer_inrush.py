"""Laws of a transformer's inrush and of its voltage."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.transformer_inrush import (
    inrush_ratio,
    inrush_survived,
    peak_current,
    secondary_voltage,
    time_above,
    transformed_share,
)

FIRST = st.floats(1.0, 40.0)
DECAY = st.floats(0.01, 2.0)
VOLTS = st.floats(50.0, 500.0)
SHARES, TIMES = (1.2, 1.5, 2.0), (1800.0, 60.0, 3.0)


@given(FIRST, DECAY, st.floats(0.5, 40.0))
def test_time_above_is_the_inverse_of_the_envelope(first: float, decay: float, ratio: float) -> None:
    time = time_above(ratio, first, decay)
    if first > ratio:
        assert inrush_ratio(time, first, decay) == pytest.approx(ratio, rel=1e-9)
    else:
        assert time == 0.0


@given(FIRST, DECAY, st.floats(0.0, 5.0), st.floats(0.001, 5.0))
def test_an_inrush_only_falls(first: float, decay: float, time: float, later: float) -> None:
    assert inrush_ratio(time + later, first, decay) <= inrush_ratio(time, first, decay) <= first


@given(FIRST, st.floats(500.0, 2e4), st.floats(500.0, 2e4))
def test_what_a_small_inverter_bears_a_larger_one_bears(first: float, transformer: float, inverter: float) -> None:
    small = inrush_survived(first, transformer, inverter, SHARES, TIMES)
    large = inrush_survived(first, transformer, 2.0 * inverter, SHARES, TIMES)
    assert large or not small


@pytest.mark.parametrize(("first", "survived"), [(1.0, True), (2.0, True), (2.01, False), (10.0, False)])
def test_the_first_peak_must_be_on_the_list(first: float, survived: bool) -> None:
    assert inrush_survived(first, 5000.0, 5000.0, SHARES, TIMES) is survived


@pytest.mark.parametrize(("decay", "survived"), [(0.1, True), (10.0, True), (11.0, False)])
def test_it_may_not_last_longer_than_its_time_on_the_list(decay: float, survived: bool) -> None:
    """From 2 to 1.5 times the rating it takes 0.288 of the decay; 3 s are listed."""
    assert 10.0 * math.log(2.0 / 1.5) < 3.0 < 11.0 * math.log(2.0 / 1.5)
    assert inrush_survived(2.0, 5000.0, 5000.0, SHARES, TIMES, decay) is survived


def test_an_inverter_without_overload_bears_its_rating_only() -> None:
    assert inrush_survived(1.0, 5000.0, 5000.0, (), ())
    assert not inrush_survived(1.1, 5000.0, 5000.0, (), ())


@given(st.floats(0.0, 2e4), VOLTS)
def test_a_peak_stands_over_the_effective_current_by_the_root_of_two(apparent: float, voltage: float) -> None:
    assert peak_current(apparent, voltage) * voltage == pytest.approx(math.sqrt(2.0) * apparent)


@given(VOLTS, VOLTS, st.floats(0.0, 1.5), st.floats(0.0, 0.1))
def test_voltage_falls_with_load_from_the_ratio_of_turns(
    primary: float, secondary: float, load: float, copper: float
) -> None:
    idle = secondary_voltage(primary, primary, secondary, 0.0, copper)
    assert idle == pytest.approx(secondary)
    assert secondary_voltage(primary, primary, secondary, load, copper) <= idle


@given(VOLTS, VOLTS)
def test_an_autotransformer_transforms_less_than_all_and_nothing_at_equal_voltages(low: float, high: float) -> None:
    assert transformed_share(low, low) == 0.0
    assert 0.0 <= transformed_share(low, high) == transformed_share(high, low) < 1.0


@pytest.mark.parametrize(
    "call",
    [
        lambda: peak_current(-1.0, 120.0),
        lambda: peak_current(1.0, 0.0),
        lambda: inrush_ratio(-0.1, 10.0),
        lambda: inrush_ratio(0.1, -10.0),
        lambda: inrush_ratio(0.1, 10.0, 0.0),
        lambda: time_above(0.0, 10.0),
        lambda: time_above(1.0, -1.0),
        lambda: time_above(1.0, 10.0, 0.0),
        lambda: inrush_survived(10.0, 0.0, 5000.0, SHARES, TIMES),
        lambda: inrush_survived(10.0, 5000.0, 0.0, SHARES, TIMES),
        lambda: secondary_voltage(120.0, 0.0, 240.0, 0.5, 0.03),
        lambda: secondary_voltage(120.0, 120.0, 0.0, 0.5, 0.03),
        lambda: secondary_voltage(120.0, 120.0, 240.0, -0.5, 0.03),
        lambda: secondary_voltage(120.0, 120.0, 240.0, 0.5, -0.03),
        lambda: transformed_share(0.0, 120.0),
        lambda: transformed_share(120.0, 0.0),
    ],
)
def test_nonsense_is_refused(call: Callable[[], object]) -> None:
    with pytest.raises(OutOfRange):
        call()
