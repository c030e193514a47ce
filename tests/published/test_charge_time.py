"""The simulation's own stepping of the bank against closed forms.

Kirchhoff's law and conservation of charge with a straight line for the open-circuit voltage have exact solutions; what
the kernel does step by step must come to them.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.simulation import boats

from anchorwatt.physics.charge_time import (
    charge_where_voltage_is_reached,
    constant_current_time,
    constant_power_time,
    tail_time,
    tail_time_constant,
)
from anchorwatt.simulation.arrays import Floats, Power
from anchorwatt.simulation.electric import bank_limits, bank_step
from anchorwatt.simulation.power import power_arrays

CAPACITY, EMPTY, SLOPE, RESISTANCE = 100.0 * 3600.0, 25.0, 2.0, 0.010
CURRENT, ABSORB, TAIL = 80.0, 26.8, 4.0
WARM = 25.0  # °C, where the resistance is the nominal one

LINEAR = replace(
    boats.bank(1, 100.0),
    capacity=CAPACITY,
    resistance=RESISTANCE,
    charge_points=(0.0, 1.0),
    open_circuit_voltages=(EMPTY, EMPTY + SLOPE),
    resistance_points=(1.0, 1.0),
    charge_current=CURRENT,
    discharge_current=500.0,
    absorb_voltage=ABSORB,
    cut_off_voltage=15.0,
)


def arrays(slope: float = SLOPE) -> Power:
    bank = replace(LINEAR, open_circuit_voltages=(EMPTY, EMPTY + slope))
    return power_arrays(boats.boat(1, bank=bank))


def curves(power: Power) -> tuple[Floats, Floats, Floats, Floats]:
    return power.bank[0], power.bank_charge[0], power.bank_voltage[0], power.bank_factor[0]


def charged(step: float) -> tuple[float, float]:
    """s of constant current and s of the tail, as the simulation's steps have them, from a fifth of the charge."""
    parts = curves(arrays())
    charge, steady, tail = 0.2, 0.0, 0.0
    while True:
        _, takes, power = bank_limits(charge, step, CAPACITY, WARM, *parts, 1.0)
        if takes <= TAIL:
            return steady, tail
        if takes >= CURRENT * (1.0 - 1e-9):
            steady += step
        else:
            tail += step
        charge, *_ = bank_step(charge, -power, step, CAPACITY, WARM, *parts, 1.0)


REACHED = charge_where_voltage_is_reached(CURRENT, EMPTY, SLOPE, RESISTANCE, ABSORB)
STEADY = constant_current_time(0.2, REACHED, CAPACITY, CURRENT)
FALLING = tail_time(CURRENT, TAIL, tail_time_constant(SLOPE, RESISTANCE, CAPACITY))


def test_conservation_of_charge_time_of_the_constant_current_part() -> None:
    assert charged(1.0)[0] == pytest.approx(STEADY, abs=2.0)


def test_kirchhoff_time_of_the_constant_voltage_tail() -> None:
    """Steps of a second, in each of which the current is held: half a step of the time constant at most."""
    assert charged(1.0)[1] == pytest.approx(FALLING, rel=1e-3)


def test_kirchhoff_a_step_of_a_minute_is_near_enough() -> None:
    """The kernel's own step, whole steps counted."""
    assert sum(charged(60.0)) == pytest.approx(STEADY + FALLING, rel=0.02)


@pytest.mark.parametrize(
    "power",
    [500.0, 2000.0, 8000.0],
    ids=lambda power: f"R I² − E I + P = 0 by the quadratic formula, {power:.0f} W",
)
def test_steady_power_at_a_steady_voltage(power: float) -> None:
    """The textbook root (E − sqrt(E² − 4 R P))/(2 R), the energy from store over it, and what is lost."""
    current = (EMPTY - math.sqrt(EMPTY**2 - 4.0 * RESISTANCE * power)) / (2.0 * RESISTANCE)
    after, found, voltage, lost = bank_step(0.9, power, 60.0, CAPACITY, WARM, *curves(arrays(0.0)), 1.0)
    assert found == pytest.approx(current, rel=1e-9)
    assert voltage == pytest.approx(EMPTY - current * RESISTANCE, rel=1e-9)
    assert lost == pytest.approx(current * current * RESISTANCE, rel=1e-9)
    assert 0.9 - after == pytest.approx(current * 60.0 / CAPACITY, rel=1e-9)


@pytest.mark.parametrize(
    "power",
    [500.0, 2000.0, 8000.0],
    ids=lambda power: f"the quadratic's current integrated over a straight line, {power:.0f} W",
)
def test_time_of_a_steady_power_while_the_voltage_falls(power: float) -> None:
    """Counted in whole steps of a second and the part of the last one."""
    exact = constant_power_time(power, 0.9, 0.2, CAPACITY, EMPTY, SLOPE, RESISTANCE)
    parts, charge, time = curves(arrays()), 0.9, 0.0
    while charge > 0.2:
        before = charge
        charge, *_ = bank_step(charge, power, 1.0, CAPACITY, WARM, *parts, 1.0)
        time += 1.0 if charge > 0.2 else (before - 0.2) / (before - charge)
    assert time == pytest.approx(exact, rel=1e-6)
