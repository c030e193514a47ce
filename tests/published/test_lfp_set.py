"""The catalogue's lithium iron phosphate cell against the functions of PyBaMM's 2013 LFP parameter set itself.

`test_battery.py` holds the same cell against the equations as printed; here the set's own code is evaluated, as a
test-only dependency.
"""

from __future__ import annotations

import math
import os
from functools import cache
from typing import Any

import pytest
from scipy.optimize import brentq

from anchorwatt.catalogue.cell import Cell
from anchorwatt.catalogue.part import typed
from anchorwatt.physics.battery import ACTIVATION_ENERGY, open_circuit_voltage

CELL = typed(Cell, "lithium iron phosphate")
FARADAY = 96485.33212
AS_TABULATED = 0.003  # V


@cache
def lfp() -> Any:
    """The parameter set; nothing is sent anywhere."""
    os.environ["PYBAMM_DISABLE_TELEMETRY"] = "true"
    import pybamm

    return pybamm.ParameterValues("Prada2013")


def potential(electrode: str, filling: float) -> float:
    import pybamm

    return float(lfp().evaluate(lfp()[f"{electrode} electrode OCP [V]"](pybamm.Scalar(filling))))


def sites(electrode: str) -> float:
    """mol/m² of the electrode's face that its particles can hold."""
    held = lfp()[f"Maximum concentration in {electrode.lower()} electrode [mol.m-3]"]
    share = lfp()[f"{electrode} electrode active material volume fraction"]
    return float(held * share * lfp()[f"{electrode} electrode thickness [m]"])


def full(electrode: str) -> float:
    """Filling of an electrode in the set's full cell."""
    filled = lfp()[f"Initial concentration in {electrode.lower()} electrode [mol.m-3]"]
    return float(filled / lfp()[f"Maximum concentration in {electrode.lower()} electrode [mol.m-3]"])


def after(given: float) -> float:
    """Open-circuit voltage when that many mol/m² have left the full negative electrode."""
    positive = potential("Positive", full("Positive") + given / sites("Positive"))
    return positive - potential("Negative", full("Negative") - given / sites("Negative"))


@cache
def given_when_empty() -> float:
    return float(brentq(lambda given: after(given) - lfp()["Lower voltage cut-off [V]"], 0.3, 0.49))


def voltage(charge: float) -> float:
    return after((1.0 - charge) * given_when_empty())


def test_pybamm_prada_2013_capacity_between_its_cut_offs_is_2_303_ah() -> None:
    area = lfp()["Electrode height [m]"] * lfp()["Electrode width [m]"]
    capacity = given_when_empty() * FARADAY * area / 3600.0
    assert capacity == pytest.approx(2.303, abs=0.0005)
    assert capacity == pytest.approx(lfp()["Nominal cell capacity [A.h]"], abs=0.05)


@pytest.mark.parametrize(
    ("charge", "printed"),
    [
        pytest.param(1.0, 3.598, id="pybamm-prada-2013-full"),
        pytest.param(0.5, 3.266, id="pybamm-prada-2013-half"),
        pytest.param(0.0, 2.000, id="pybamm-prada-2013-empty"),
    ],
)
def test_the_sets_voltage_and_ours(charge: float, printed: float) -> None:
    assert voltage(charge) == pytest.approx(printed, abs=0.0005)
    ours = open_circuit_voltage(charge, CELL.charge_points, CELL.open_circuit_voltages)
    assert ours == pytest.approx(voltage(charge), abs=AS_TABULATED)


@pytest.mark.parametrize(
    ("charge", "ours"),
    list(zip(map(float, CELL.charge_points), map(float, CELL.open_circuit_voltages), strict=True)),
    ids=[f"pybamm-prada-2013-{point.text}" for point in CELL.charge_points],
)
def test_every_point_of_the_catalogues_cell_lies_on_the_set(charge: float, ours: float) -> None:
    assert ours == pytest.approx(voltage(charge), abs=AS_TABULATED)


@pytest.mark.parametrize("temperature", [0.0, 10.0, 35.0], ids=lambda value: f"pybamm-prada-2013-{value}-C")
def test_charge_transfer_of_the_positive_electrode_has_our_activation_energy(temperature: float) -> None:
    """Its exchange current at that temperature over that at 25 °C."""
    import pybamm

    flowing = lfp()["Positive electrode exchange-current density [A.m-2]"]

    def current(celsius: float) -> float:
        half = lfp()["Maximum concentration in positive electrode [mol.m-3]"]
        arguments = (pybamm.Scalar(value) for value in (1200.0, 0.5 * half, half, celsius + 273.15))
        return float(lfp().evaluate(flowing(*arguments)))

    ours = math.exp(-ACTIVATION_ENERGY / 8.314462618 * (1.0 / (temperature + 273.15) - 1.0 / 298.15))
    assert ours == pytest.approx(current(temperature) / current(25.0), rel=1e-4)
