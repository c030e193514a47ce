"""Laws of the load dump."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.load_dump import (
    clamped_energy,
    longest_dump,
    source_resistance,
    suppressed_peak,
    unsuppressed_peak,
    voltage_across,
)


@given(st.floats(10.0, 60.0), st.floats(100.0, 1500.0), st.floats(20.0, 500.0), st.floats(1.1, 4.0))
def test_resistance_rises_with_speed_and_falls_with_size(
    voltage: float, speed: float, rated: float, factor: float
) -> None:
    one = source_resistance(voltage, speed, rated)
    assert source_resistance(voltage, factor * speed, rated) == pytest.approx(factor * one, rel=1e-9)
    assert source_resistance(voltage, speed, factor * rated) == pytest.approx(one / factor, rel=1e-9)


@pytest.mark.parametrize("nominal", [12.0, 12.8, 24.0, 25.6])
def test_suppression_holds_it_far_below_the_peak(nominal: float) -> None:
    assert 1.15 * nominal < suppressed_peak(nominal) < 0.5 * unsuppressed_peak(nominal)
    assert 0.0 < longest_dump(nominal) < 1.0


@pytest.mark.parametrize("function", [unsuppressed_peak, suppressed_peak, longest_dump])
@pytest.mark.parametrize("nominal", [6.0, 48.0, 51.2])
def test_other_systems_are_not_guessed(function: Callable[[float], float], nominal: float) -> None:
    with pytest.raises(OutOfRange):
        function(nominal)


@given(st.floats(60.0, 110.0), st.floats(0.1, 4.0), st.floats(0.04, 0.4), st.floats(20.0, 50.0))
def test_energy_is_the_integral_of_the_clamps_power(peak: float, ohm: float, duration: float, clamp: float) -> None:
    time = np.linspace(0.0, 6.0 * duration, 200_001)
    source = 14.0 + (peak - 14.0) * np.exp(-time * math.log(10.0) / duration)
    power = clamp * np.maximum(0.0, source - clamp) / ohm
    energy = float(np.sum(0.5 * (power[1:] + power[:-1]) * np.diff(time)))
    assert clamped_energy(peak, 14.0, ohm, clamp, duration) == pytest.approx(energy, rel=1e-4)


def test_a_clamp_above_the_peak_takes_nothing() -> None:
    assert clamped_energy(80.0, 14.0, 0.5, 90.0, 0.4) == 0.0


@given(st.floats(0.0, 1e4))
def test_loads_hold_it_down_but_never_lift_it(load: float) -> None:
    assert 0.0 <= voltage_across(100.0, 0.5, load) < 100.0
    assert voltage_across(100.0, 0.5, math.inf) == 100.0


@pytest.mark.parametrize(
    ("function", "arguments"),
    [
        (source_resistance, (0.0, 400.0, 100.0)),
        (source_resistance, (12.0, -1.0, 100.0)),
        (source_resistance, (12.0, 400.0, 0.0)),
        (voltage_across, (100.0, -1.0, 1.0)),
        (voltage_across, (100.0, 0.0, 0.0)),
        (clamped_energy, (100.0, 14.0, 0.0, 35.0, 0.4)),
        (clamped_energy, (100.0, 14.0, 0.5, 14.0, 0.4)),
        (clamped_energy, (100.0, 14.0, 0.5, 35.0, 0.0)),
    ],
)
def test_nonsense_is_refused(function: Callable[..., object], arguments: tuple[object, ...]) -> None:
    with pytest.raises(OutOfRange):
        function(*arguments)
