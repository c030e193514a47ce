"""From the engine's shaft to the bank: nothing is made and nothing is lost on the way."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.physics.alternator import alternator_losses, shaft_power
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.runs import Run, Simulation
from tests.simulation import boats

CLOSES = 1e-6


@cache
def simulation() -> Simulation:
    """Two engines, three unlike alternators, in the air of a compartment and in typed air."""
    small = replace(boats.alternator("small", rated=70.0), efficiency=0.70, pulley_ratio=2.9)
    in_compartment = replace(
        boats.engine((boats.alternator("one"), small), name="port"), cabin=0, air_temperature=math.nan
    )
    other = boats.engine((boats.alternator("two", rated=120.0),), power=60e3, name="starboard")
    return Simulation(replace(boats.boat(2), engines=(in_compartment, other)))


@cache
def run() -> Run:
    made = simulation().recharge
    assert made is not None
    return made


def generated() -> Floats:
    """W of all alternators, step by step, from the direct-current bus: what it gives less what the bank gives."""
    series = run().series
    power: Floats = series.dc_load[0] + series.inverter_input[0] - series.current[0] * series.voltage[0]
    return power


def losses_and_shaft() -> tuple[float, float]:
    """J lost in the alternators and J at their shafts, from currents and windings by the physics alone."""
    found, specification = run(), simulation().specification
    amps, windings = found.series.alternator_current[0], found.series.alternator_winding[0]
    state = simulation().night.end.alternator[0, :, 0]
    before = np.concatenate((state[:, None], windings[:, :-1]), axis=1)
    voltage = generated() / np.maximum(amps.sum(axis=0), 1e-12)
    lost = shaft = 0.0
    a = 0
    for g, engine in enumerate(specification.engines):
        for machine in engine.alternators:
            for k in range(amps.shape[1]):
                if amps[a, k] <= 0.0:
                    continue
                rotor = found.forcing.engine_speed[0, g, k] * machine.pulley_ratio
                figures = (amps[a, k], voltage[k], rotor, before[a, k], machine.rated_current, machine.efficiency)
                lost += alternator_losses(*figures) * found.step
                shaft += shaft_power(*figures) * found.step
            a += 1
    return lost, shaft


def test_the_alternators_charge_in_earnest() -> None:
    assert float(run().summary.alternator_energy[0]) > 5e6
    assert (run().series.alternator_current[0].max(axis=1) > 20.0).all()


def test_shaft_is_output_and_losses() -> None:
    lost, shaft = losses_and_shaft()
    summary = run().summary
    assert float(summary.shaft_energy[0]) == pytest.approx(shaft, rel=CLOSES)
    assert float(summary.shaft_energy[0]) == pytest.approx(float(summary.alternator_energy[0]) + lost, rel=CLOSES)


def test_output_is_what_loads_and_bank_take() -> None:
    summary = run().summary
    used = float(summary.dc_load_energy[0] + summary.inverter_energy[0] - summary.bank_out[0])
    assert float(summary.alternator_energy[0]) == pytest.approx(used, rel=CLOSES)
    assert float(generated().sum()) * run().step == pytest.approx(used, rel=CLOSES)


def test_what_the_bank_takes_is_stored_or_lost_in_it() -> None:
    summary = run().summary
    into_bank = -float(summary.bank_out[0])
    assert into_bank > 0.0
    assert into_bank == pytest.approx(float(summary.bank_stored[0] + summary.bank_loss[0]), rel=CLOSES)


def test_from_the_shaft_to_the_bank_it_closes() -> None:
    lost, _ = losses_and_shaft()
    summary = run().summary
    loads = float(summary.dc_load_energy[0] + summary.inverter_energy[0])
    bank = float(summary.bank_stored[0] + summary.bank_loss[0])
    assert float(summary.shaft_energy[0]) == pytest.approx(lost + loads + bank, rel=CLOSES)
