"""Laws of fault currents, and a bank against the network's own equations."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import linalg

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.fault_current import (
    fault_current,
    fault_current_after,
    parallel_resistance,
    string_resistance,
    transformer_fault_current,
)

volts = st.floats(10.0, 60.0)
milliohms = st.floats(1e-5, 1e-2)
strings = st.integers(1, 8)
cells = st.integers(1, 16)


def network(voltages: list[float], resistances: list[float], loop: float) -> float:
    """A through the short behind `loop`: one string after another from earth to a bus, solved for the bus's voltage.

    Unknowns are the currents of the strings, and that of the short; Kirchhoff's laws are the rows.
    """
    count = len(voltages)
    rows, right = np.zeros((count + 1, count + 1)), np.zeros(count + 1)
    for number in range(count):  # round each string and the short: E = R i + loop i_short
        rows[number, number] = resistances[number]
        rows[number, count] = loop
        right[number] = voltages[number]
    rows[count, :count], rows[count, count] = 1.0, -1.0  # at the bus
    return float(linalg.solve(rows, right)[count])


@given(cells, strings, st.floats(2.5, 3.65), milliohms, milliohms, milliohms, milliohms)
def test_a_bank_behind_a_cable_is_the_networks_solution(
    series: int, parallel: int, volts: float, cell: float, link: float, path: float, loop: float
) -> None:
    string = string_resistance(series, cell, link, path)
    voltage = series * volts
    bank = fault_current(voltage, parallel_resistance(string, parallel))
    found = fault_current_after(voltage, bank, loop)
    assert found == pytest.approx(network([voltage] * parallel, [string] * parallel, loop), rel=1e-9)


@given(volts, strings, milliohms)
def test_strings_add(voltage: float, parallel: int, string: float) -> None:
    one = fault_current(voltage, string)
    assert fault_current(voltage, parallel_resistance(string, parallel)) == pytest.approx(parallel * one)


@given(volts, st.floats(10.0, 50e3), milliohms, milliohms)
def test_more_cable_never_lets_more_through(voltage: float, current: float, one: float, other: float) -> None:
    short, long = sorted((one, other))
    assert fault_current_after(voltage, current, long) <= fault_current_after(voltage, current, short) <= current


@given(volts, st.floats(10.0, 50e3), milliohms, milliohms)
def test_two_cables_in_a_row_are_one(voltage: float, current: float, one: float, other: float) -> None:
    twice = fault_current_after(voltage, fault_current_after(voltage, current, one), other)
    assert twice == pytest.approx(fault_current_after(voltage, current, one + other))


@given(cells, milliohms, milliohms)
def test_series_cells_alone_do_not_add_to_the_fault(series: int, cell: float, link: float) -> None:
    one = fault_current(3.3, string_resistance(1, cell, link))
    assert fault_current(3.3 * series, string_resistance(series, cell, link)) == pytest.approx(one)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: string_resistance(0, 1e-3, 0.0), "cell"),
        (lambda: string_resistance(4, -1e-3, 0.0), "negative"),
        (lambda: parallel_resistance(1e-3, 0), "string"),
        (lambda: parallel_resistance(-1e-3, 2), "negative"),
        (lambda: fault_current(-1.0, 1e-3), "voltage"),
        (lambda: fault_current(13.0, 0.0), "positive"),
        (lambda: fault_current_after(0.0, 100.0, 1e-3), "voltage"),
        (lambda: fault_current_after(13.0, 0.0, 1e-3), "positive"),
        (lambda: fault_current_after(13.0, 100.0, -1e-3), "negative"),
        (lambda: transformer_fault_current(0.0, 120.0, 0.04), "positive"),
        (lambda: transformer_fault_current(5e3, 120.0, 0.0), "positive"),
    ],
)
def test_what_cannot_be_is_refused(call: Callable[[], float], words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        call()
