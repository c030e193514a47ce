"""Laws of a converter."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.inverter import (
    converter_input,
    converter_output,
    output_of_best_efficiency,
    overload_time,
    temperature_factor,
)

RATED = st.floats(100.0, 2e4)
NO_LOAD = st.floats(0.0, 0.03)  # of the rating
LINEAR = st.floats(0.0, 0.1)
QUADRATIC = st.floats(0.0, 0.15)
LOAD = st.floats(0.0, 1.5)


@given(RATED, NO_LOAD, LINEAR, QUADRATIC, LOAD)
def test_output_undoes_input(rated: float, no_load: float, linear: float, quadratic: float, load: float) -> None:
    constants = (rated, no_load * rated, linear, quadratic)
    taken = converter_input(load * rated, *constants)
    assert converter_output(taken, *constants) == pytest.approx(load * rated, rel=1e-9, abs=1e-9 * rated)


@given(RATED, NO_LOAD, LINEAR, QUADRATIC, LOAD)
def test_it_never_gives_more_than_it_takes(
    rated: float, no_load: float, linear: float, quadratic: float, load: float
) -> None:
    assert converter_input(load * rated, rated, no_load * rated, linear, quadratic) >= load * rated


@given(RATED, st.floats(0.001, 0.03), LINEAR, st.floats(0.01, 0.15), LOAD)
def test_nothing_beats_the_output_of_best_efficiency(
    rated: float, no_load: float, linear: float, quadratic: float, load: float
) -> None:
    best = output_of_best_efficiency(rated, no_load * rated, quadratic)
    output = max(1e-6, min(load, 1.0)) * rated
    constants = (rated, no_load * rated, linear, quadratic)
    assert best / converter_input(best, *constants) >= output / converter_input(output, *constants) - 1e-12


@given(st.floats(-10.0, 90.0), st.floats(0.0, 5.0))
def test_warmer_air_never_gives_more(air: float, more: float) -> None:
    cool, warm = (temperature_factor(t, 40.0, 0.015, 65.0) for t in (air, air + more))
    assert 0.0 <= warm <= cool <= 1.0


@pytest.mark.parametrize(
    ("share", "time"),
    [(0.0, math.inf), (1.0, math.inf), (1.01, 1800.0), (1.2, 1800.0), (1.21, 60.0), (2.0, 3.0), (2.1, 0.0)],
)
def test_overload_is_read_on_the_safe_side(share: float, time: float) -> None:
    assert overload_time(share, (1.2, 1.5, 2.0), (1800.0, 60.0, 3.0)) == time


def test_an_inverter_without_overload_gives_none() -> None:
    assert overload_time(1.001, (), ()) == 0.0


def test_no_supply_no_output() -> None:
    assert converter_output(24.0, 3000.0, 24.0, 0.03, 0.05) == 0.0
    assert converter_output(0.0, 3000.0, 24.0, 0.03, 0.05) == 0.0


def test_without_quadratic_loss_full_load_is_best() -> None:
    assert output_of_best_efficiency(3000.0, 24.0, 0.0) == 3000.0


@pytest.mark.parametrize(
    "call",
    [
        lambda: temperature_factor(40.0, 40.0, -0.01, 65.0),
        lambda: overload_time(-0.1, (1.2,), (60.0,)),
        lambda: converter_input(-1.0, 3000.0, 24.0, 0.03, 0.05),
        lambda: converter_input(1.0, 0.0, 24.0, 0.03, 0.05),
        lambda: converter_output(1.0, 0.0, 24.0, 0.03, 0.05),
        lambda: converter_output(1.0, 3000.0, 24.0, -1.0, 0.05),
        lambda: converter_output(1.0, 3000.0, 24.0, 0.03, -0.05),
        lambda: output_of_best_efficiency(0.0, 24.0, 0.05),
        lambda: output_of_best_efficiency(3000.0, -24.0, 0.05),
        lambda: output_of_best_efficiency(3000.0, 24.0, -0.05),
    ],
)
def test_nonsense_is_refused(call: Callable[[], object]) -> None:
    with pytest.raises(OutOfRange):
        call()
