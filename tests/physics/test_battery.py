"""Laws of the bank: its power balance, its limits, its charge and its energy."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.battery import (
    acceptance,
    bank_resistance,
    bank_temperature,
    change_of_charge,
    current_for_power,
    highest_power,
    open_circuit_voltage,
    resistance_factor,
    stored_energy,
    terminal_voltage,
)

VOLTAGE = st.floats(8.0, 60.0)
RESISTANCE = st.floats(0.0, 0.5)
LIMIT = st.floats(0.0, 2000.0)
SHARE = st.floats(0.0, 1.0)
CHARGE = (0, 0.05, 0.10, 0.15, 0.20, 0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.90, 0.95, 0.98, 0.99, 1.0)
CELL = (
    *(2.000, 2.785, 2.978, 3.108, 3.169, 3.206, 3.253, 3.266),
    *(3.269, 3.274, 3.310, 3.314, 3.316, 3.350, 3.415, 3.598),
)
CAPACITY = 100.0 * 3600.0


@given(VOLTAGE, RESISTANCE, st.floats(-3.0, 1.0))
def test_the_current_carries_exactly_the_power(voltage: float, resistance: float, share: float) -> None:
    power = share * voltage * voltage / (4.0 * max(resistance, 1e-3))
    current = current_for_power(power, voltage, resistance)
    carried = current * terminal_voltage(current, voltage, resistance)
    assert carried == pytest.approx(power, rel=1e-7, abs=1e-9)


@given(VOLTAGE, st.floats(1e-3, 0.5), st.floats(0.0, 0.999999))
def test_discharge_stays_on_the_side_where_more_current_is_more_power(
    voltage: float, resistance: float, share: float
) -> None:
    current = current_for_power(share * voltage * voltage / (4.0 * resistance), voltage, resistance)
    assert 0.0 <= current <= voltage / (2.0 * resistance) * (1.0 + 1e-12)


@given(VOLTAGE, st.floats(-1e4, 1e4))
def test_without_resistance_current_is_power_over_voltage(voltage: float, power: float) -> None:
    assert current_for_power(power, voltage, 0.0) == pytest.approx(power / voltage, rel=1e-12)


@given(VOLTAGE, st.floats(-1e3, 1e3))
def test_a_tiny_resistance_loses_no_digits(voltage: float, power: float) -> None:
    """To first order in R the current is P/E (1 + R P/E²)."""
    resistance = 1e-12
    first_order = power / voltage * (1.0 + resistance * power / voltage**2)
    assert current_for_power(power, voltage, resistance) == pytest.approx(first_order, rel=1e-14)


@given(VOLTAGE, st.floats(1e-3, 0.5))
def test_matched_load_halves_the_voltage(voltage: float, resistance: float) -> None:
    current = current_for_power(voltage * voltage / (4.0 * resistance) * (1.0 - 1e-14), voltage, resistance)
    assert terminal_voltage(current, voltage, resistance) == pytest.approx(0.5 * voltage, rel=1e-6)


def test_more_than_the_bank_can_give_is_refused() -> None:
    with pytest.raises(OutOfRange, match="must not pass what the bank can give"):
        current_for_power(13.0**2 / 0.04 * 1.001, 13.0, 0.01)


@given(VOLTAGE, RESISTANCE, LIMIT, SHARE)
def test_highest_power_keeps_both_limits(voltage: float, resistance: float, limit: float, share: float) -> None:
    lowest = share * voltage
    power = highest_power(voltage, resistance, limit, lowest)
    assert power >= 0.0
    current = current_for_power(power * (1.0 - 1e-12), voltage, resistance)
    assert current <= limit * (1.0 + 1e-5) + 1e-9
    assert terminal_voltage(current, voltage, resistance) >= lowest * (1.0 - 1e-5)


@given(VOLTAGE, st.floats(1e-3, 0.5), st.floats(1.0, 2000.0), st.floats(0.0, 0.99))
def test_highest_power_uses_one_limit_to_the_full(
    voltage: float, resistance: float, limit: float, share: float
) -> None:
    """A little more power breaks the current limit, the voltage limit, or what the bank can give at all."""
    lowest = share * voltage
    more = highest_power(voltage, resistance, limit, lowest) * 1.001 + 1e-6
    try:
        current = current_for_power(more, voltage, resistance)
    except OutOfRange:
        return
    assert current > limit or terminal_voltage(current, voltage, resistance) < lowest


def test_a_bank_below_its_lowest_voltage_gives_nothing() -> None:
    assert highest_power(24.0, 0.01, 200.0, 24.0) == 0.0


@given(VOLTAGE, RESISTANCE, LIMIT, VOLTAGE, st.floats(-20.0, 60.0))
def test_acceptance_passes_neither_limit(
    voltage: float, resistance: float, limit: float, absorb: float, temperature: float
) -> None:
    current = acceptance(voltage, resistance, limit, absorb, temperature, 0.0, 45.0)
    assert 0.0 <= current <= limit
    if current > 0.0:
        assert terminal_voltage(-current, voltage, resistance) <= absorb * (1.0 + 1e-12)


def test_acceptance_tails_off_as_the_bank_fills() -> None:
    """Eight cells, 8 milliohm, 28 V: the full limit on the plateau, then down to nothing before 100 %."""
    taken = [
        acceptance(8 * open_circuit_voltage(charge, CHARGE, CELL), 0.008, 100.0, 28.0, 25.0, 0.0, 45.0)
        for charge in (0.5, 0.9, 0.985, 0.99, 0.994, 1.0)
    ]
    assert taken[:2] == [100.0, 100.0]
    assert all(later <= earlier for earlier, later in pairwise(taken))
    assert 0.0 < taken[4] < 50.0
    assert taken[5] == 0.0


@pytest.mark.parametrize(
    ("temperature", "current"),
    [(-0.1, 0.0), (0.0, 0.0), (2.5, 50.0), (5.0, 100.0), (40.0, 100.0), (42.5, 50.0), (45.0, 0.0)],
)
def test_a_frozen_or_hot_bank_takes_no_charge(temperature: float, current: float) -> None:
    assert acceptance(26.0, 0.008, 100.0, 28.0, temperature, 0.0, 45.0) == pytest.approx(current)


@given(st.floats(-60.0, 119.0), st.floats(0.01, 1.0))
def test_warmer_is_less_resistance(temperature: float, more: float) -> None:
    assert resistance_factor(temperature + more) < resistance_factor(temperature)
    assert resistance_factor(temperature) > 0.4


def test_resistance_is_as_stated_at_25_degrees() -> None:
    assert resistance_factor(25.0) == 1.0
    assert bank_resistance(0.01, 0.5, (0.0, 0.5, 1.0), (1.6, 1.0, 1.1), 25.0) == 0.01


@given(st.floats(-20.0, 60.0), st.floats(-20.0, 60.0), st.floats(0.0, 2000.0), st.floats(0.0, 50.0), st.integers(1, 20))
def test_the_bank_warms_the_same_in_one_step_or_many(
    start: float, around: float, loss: float, conductance: float, parts: int
) -> None:
    at_once = bank_temperature(start, around, loss, 120e3, conductance, 3600.0)
    in_parts = start
    for _ in range(parts):
        in_parts = bank_temperature(in_parts, around, loss, 120e3, conductance, 3600.0 / parts)
    assert in_parts == pytest.approx(at_once, rel=1e-9, abs=1e-9)


def test_a_warm_bank_in_a_cold_place_cools_towards_it() -> None:
    assert bank_temperature(40.0, 20.0, 0.0, 100e3, 10.0, 1e6) == pytest.approx(20.0)
    assert bank_temperature(20.0, 20.0, 100.0, 100e3, 10.0, 1e6) == pytest.approx(30.0)


@given(SHARE, SHARE)
def test_more_charge_is_more_energy(one: float, other: float) -> None:
    assume(abs(one - other) > 1e-9)
    low, high = sorted((one, other))
    assert stored_energy(high, CHARGE, CELL, CAPACITY) > stored_energy(low, CHARGE, CELL, CAPACITY)


@given(st.floats(0.01, 0.99))
def test_voltage_is_the_slope_of_energy(charge: float) -> None:
    step = 1e-6
    assume(all(abs(charge - point) > 2.0 * step for point in CHARGE))
    above = stored_energy(charge + step, CHARGE, CELL, CAPACITY)
    below = stored_energy(charge - step, CHARGE, CELL, CAPACITY)
    slope = (above - below) / (2.0 * step * CAPACITY)
    assert slope == pytest.approx(open_circuit_voltage(charge, CHARGE, CELL), rel=1e-6)


@given(st.floats(-500.0, 500.0), st.floats(1.0, 3600.0), st.integers(1, 50))
def test_charge_counted_in_parts_is_charge_counted_at_once(current: float, duration: float, parts: int) -> None:
    at_once = change_of_charge(current, duration, CAPACITY)
    in_parts = math.fsum(change_of_charge(current, duration / parts, CAPACITY) for _ in range(parts))
    assert in_parts == pytest.approx(at_once, rel=1e-12, abs=1e-15)


@pytest.mark.parametrize(
    "call",
    [
        lambda: current_for_power(1.0, 0.0, 0.01),
        lambda: current_for_power(1.0, 12.0, -0.01),
        lambda: highest_power(12.0, -0.01, 1.0, 10.0),
        lambda: highest_power(12.0, 0.01, -1.0, 10.0),
        lambda: acceptance(12.0, -0.01, 1.0, 14.0, 25.0, 0.0, 45.0),
        lambda: acceptance(12.0, 0.01, -1.0, 14.0, 25.0, 0.0, 45.0),
        lambda: bank_temperature(25.0, 25.0, 1.0, 0.0, 1.0, 1.0),
        lambda: bank_temperature(25.0, 25.0, 1.0, 1.0, -1.0, 1.0),
        lambda: bank_resistance(-0.01, 0.5, CHARGE, CELL, 25.0),
        lambda: stored_energy(0.5, CHARGE, CELL, 0.0),
        lambda: change_of_charge(1.0, 1.0, 0.0),
        lambda: resistance_factor(-273.15),
    ],
)
def test_nonsense_is_refused(call: Callable[[], object]) -> None:
    with pytest.raises(OutOfRange):
        call()
