"""Laws of ageing."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.ageing import (
    YEAR,
    aged_resistance,
    calendar_loss,
    calendar_stress,
    capacity_left,
    cycle_loss,
    mixed_stress,
    throughput_loss,
)

TEMPERATURE = st.floats(-20.0, 60.0)
CHARGE = st.floats(0.0, 1.0)
SHARE = st.floats(0.0, 1.0)


def test_the_reference_is_a_cell_at_25_degrees_half_full() -> None:
    assert calendar_stress(25.0, 0.5) == 1.0


@given(TEMPERATURE, CHARGE, st.floats(0.1, 15.0))
def test_heat_and_charge_age_a_resting_cell(temperature: float, charge: float, warmer: float) -> None:
    assert calendar_stress(temperature + warmer, charge) > calendar_stress(temperature, charge)
    assert calendar_stress(temperature, 1.0) >= calendar_stress(temperature, charge)


@given(st.floats(0.001, 0.05), st.floats(0.2, 4.0), st.floats(0.01, 20.0))
def test_four_times_the_time_loses_twice_as_much(first_year: float, stress: float, years: float) -> None:
    one, four = (calendar_loss(first_year, stress, n * years * YEAR) for n in (1.0, 4.0))
    assert four == pytest.approx(min(1.0, 2.0 * one), rel=1e-12)


@given(st.floats(0.1, 5.0), st.floats(0.1, 5.0), SHARE, st.floats(0.1, 10.0))
def test_taking_turns_loses_as_much_as_one_after_the_other(
    first: float, second: float, share: float, years: float
) -> None:
    """By the root law: the second goes on from where the first would have got in its own time."""
    small = 0.001
    after_first = calendar_loss(small, first, share * years * YEAR)
    as_if = (after_first / (small * second)) ** 2 * YEAR
    both = calendar_loss(small, second, as_if + (1.0 - share) * years * YEAR)
    assert calendar_loss(small, mixed_stress(first, second, share), years * YEAR) == pytest.approx(both, rel=1e-9)


@given(st.floats(500.0, 10_000.0), st.floats(0.5, 0.9), st.floats(0.0, 1.0))
def test_cycles_lose_no_more_than_is_warranted_within_the_cycle_life(life: float, left: float, part: float) -> None:
    assert cycle_loss(part * life, life, left, 25.0) <= (1.0 - left) * (1.0 + 1e-12)
    assert cycle_loss(life, life, left, 25.0) == pytest.approx(1.0 - left, rel=1e-12)


@given(st.floats(1.0, 5000.0), TEMPERATURE, st.floats(1.0, 10.0))
def test_the_scaled_law_warms_as_the_published_one_does(cycles: float, temperature: float, warmer: float) -> None:
    published = throughput_loss(cycles, temperature + warmer, 0.5) / throughput_loss(cycles, temperature, 0.5)
    scaled = cycle_loss(cycles, 1e6, 0.8, temperature + warmer) / cycle_loss(cycles, 1e6, 0.8, temperature)
    assert scaled == pytest.approx(published, rel=1e-9)


@given(st.floats(0.0, 0.5))
def test_below_the_lowest_rate_tested_the_lowest_counts(rate: float) -> None:
    assert throughput_loss(1000.0, 30.0, rate) == throughput_loss(1000.0, 30.0, 0.5)


@pytest.mark.parametrize("rate", [2.0, 6.0])
def test_the_published_factor_has_no_jump_at_a_tested_rate(rate: float) -> None:
    below, above = (throughput_loss(500.0, 25.0, rate + side) for side in (-1e-9, 1e-9))
    assert above == pytest.approx(below, rel=1e-6)


@given(SHARE, SHARE)
def test_what_is_left_is_a_share(calendar: float, cycles: float) -> None:
    left = capacity_left(calendar, cycles)
    assert 0.0 <= left <= 1.0
    assert left == pytest.approx(max(0.0, 1.0 - calendar - cycles))


@given(SHARE, st.floats(0.5, 0.95), st.floats(1.0, 3.0))
def test_resistance_grows_with_what_is_lost(left: float, warranted: float, factor: float) -> None:
    assert aged_resistance(1.0, warranted, factor) == 1.0
    assert aged_resistance(warranted, warranted, factor) == pytest.approx(factor)
    assert aged_resistance(left, warranted, factor) >= 1.0


def test_a_warranty_of_the_whole_capacity_keeps_the_factor() -> None:
    assert aged_resistance(1.0, 1.0, 1.5) == 1.5


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: calendar_stress(90.0, 0.5),
        lambda: calendar_stress(25.0, 1.1),
        lambda: calendar_loss(-0.01, 1.0, YEAR),
        lambda: calendar_loss(0.01, -1.0, YEAR),
        lambda: calendar_loss(0.01, 1.0, -1.0),
        lambda: mixed_stress(1.0, 1.0, 1.1),
        lambda: mixed_stress(-1.0, 1.0, 0.5),
        lambda: throughput_loss(-1.0, 25.0, 0.5),
        lambda: throughput_loss(1.0, 99.0, 0.5),
        lambda: throughput_loss(1.0, 25.0, 11.0),
        lambda: cycle_loss(-1.0, 3000.0, 0.8, 25.0),
        lambda: cycle_loss(1.0, 0.0, 0.8, 25.0),
        lambda: cycle_loss(1.0, 3000.0, 1.8, 25.0),
        lambda: cycle_loss(1.0, 3000.0, 0.8, -99.0),
        lambda: capacity_left(-0.1, 0.1),
        lambda: aged_resistance(1.1, 0.8, 1.5),
        lambda: aged_resistance(0.9, math.inf, 1.5),
        lambda: aged_resistance(0.9, 0.8, 0.9),
    ],
)
def test_nonsense_is_refused(wrong: Callable[[], float]) -> None:
    with pytest.raises(OutOfRange):
        wrong()
