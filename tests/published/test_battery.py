"""Lithium iron phosphate against published equations and values.

The open-circuit voltage comes from the half-cell equations of PyBaMM's 2013 LFP parameter set (it names
J. Electrochem. Soc. 160 A616): the positive electrode from arXiv 1709.03970, the graphite from
J. Electrochem. Soc. 167 080534, the window 0.81 / 0.0038 and the electrode sizes from the set itself.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq

from anchorwatt.physics.battery import open_circuit_voltage, resistance_factor, stored_energy

CHARGE = (0, 0.05, 0.10, 0.15, 0.20, 0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.90, 0.95, 0.98, 0.99, 1.0)
VOLTAGE = (
    *(2.000, 2.785, 2.978, 3.108, 3.169, 3.206, 3.253, 3.266),
    *(3.269, 3.274, 3.310, 3.314, 3.316, 3.350, 3.415, 3.598),
)

NEGATIVE_AT_FULL = 0.81
POSITIVE_AT_FULL = 0.0038
AREA = 0.6 * 0.3  # m²
NEGATIVE_SITES = 3.4e-5 * 0.58 * 30555.0  # mol/m²
POSITIVE_SITES = 8e-5 * 0.374 * 22806.0  # mol/m²
FARADAY = 96485.33212


def equations(given: float) -> float:
    """Open-circuit voltage when `given` mol/m² of lithium have left the full negative electrode."""
    x = NEGATIVE_AT_FULL - given / NEGATIVE_SITES
    y = POSITIVE_AT_FULL + given / POSITIVE_SITES
    positive = 3.4077 - 0.020269 * y + 0.5 * math.exp(-150 * y) - 0.9 * math.exp(-30 * (1 - y))
    negative = (
        1.9793 * math.exp(-39.3631 * x)
        + 0.2482
        - 0.0909 * math.tanh(29.8538 * (x - 0.1234))
        - 0.04478 * math.tanh(14.9159 * (x - 0.2769))
        - 0.0205 * math.tanh(30.4444 * (x - 0.6103))
    )
    return positive - negative


GIVEN_AT_EMPTY = brentq(lambda given: equations(given) - 2.0, 0.3, 0.49)


def voltage_by_equations(charge: float) -> float:
    return equations((1.0 - charge) * GIVEN_AT_EMPTY)


def test_pybamm_2013_lfp_set_holds_its_capacity() -> None:
    """The set's note: 2.3 Ah between 3.6 V and 2.0 V."""
    assert pytest.approx(2.3, abs=0.05) == GIVEN_AT_EMPTY * FARADAY * AREA / 3600.0


@pytest.mark.parametrize(
    ("charge", "voltage"),
    list(zip(CHARGE, VOLTAGE, strict=True)),
    ids=lambda value: f"pybamm-2013-lfp-{value}",
)
def test_table_row_follows_from_the_half_cell_equations(charge: float, voltage: float) -> None:
    assert voltage_by_equations(charge) == pytest.approx(voltage, abs=0.0006)
    assert open_circuit_voltage(charge, CHARGE, VOLTAGE) == pytest.approx(voltage, abs=1e-12)


@pytest.mark.parametrize("charge", [0.125, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.925, 0.965])
def test_between_the_rows_the_straight_line_is_near_the_half_cell_equations(charge: float) -> None:
    """20 mV: where the curve bends at a quarter of charge; on the plateau it is far nearer."""
    assert open_circuit_voltage(charge, CHARGE, VOLTAGE) == pytest.approx(voltage_by_equations(charge), abs=0.020)


def test_energy_of_the_table_is_that_of_the_half_cell_equations() -> None:
    exact = quad(voltage_by_equations, 0.0, 1.0, limit=200)[0]
    assert stored_energy(1.0, CHARGE, VOLTAGE, 1.0) == pytest.approx(exact, rel=0.005)


@pytest.mark.parametrize(
    ("temperature", "printed"),
    [
        pytest.param(0.0, 4.31, id="pybamm-2013-lfp-39570-J-mol-at-0-C"),
        pytest.param(10.0, 2.33, id="pybamm-2013-lfp-39570-J-mol-at-10-C"),
        pytest.param(35.0, 0.60, id="pybamm-2013-lfp-39570-J-mol-at-35-C"),
    ],
)
def test_charge_transfer_part(temperature: float, printed: float) -> None:
    """The set's exchange current falls by this factor, so the resistance of charge transfer rises by it."""
    assert (resistance_factor(temperature) - 0.4) / 0.6 == pytest.approx(printed, abs=0.005)


@pytest.mark.parametrize(
    ("temperature", "printed"),
    [(-10.0, 5.4), (0.0, 3.0), (10.0, 1.8), (25.0, 1.0), (35.0, 0.76), (45.0, 0.62)],
    ids=lambda value: f"from-memory-40-60-split-{value}",
)
def test_whole_resistance(temperature: float, printed: float) -> None:
    tolerance = 0.05 if printed >= 1.0 else 0.005
    assert resistance_factor(temperature) == pytest.approx(printed, abs=tolerance)


def test_the_table_reads_the_same_from_an_array() -> None:
    charges = np.linspace(-0.1, 1.1, 50)
    by_numpy = np.interp(charges, CHARGE, VOLTAGE)
    ours = [open_circuit_voltage(float(charge), CHARGE, VOLTAGE) for charge in charges]
    assert ours == pytest.approx(by_numpy.tolist(), abs=1e-12)
