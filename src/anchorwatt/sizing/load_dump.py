"""What the alternators do to the boat's direct-current side when the bank is taken off them at full charge."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.load_dump import (
    clamped_energy,
    longest_dump,
    source_resistance,
    suppressed_peak,
    unsuppressed_peak,
    voltage_across,
)
from anchorwatt.simulation.runs import Simulation


@dataclass(frozen=True)
class LoadDump:
    """All alternators at their charging speed lose the bank together. nan where the standard has no figure."""

    resistance: float  # ohm behind all of them
    resistances: tuple[float, ...]  # ohm behind each
    peak: float  # V with nothing left on them and nothing that holds it down
    loads: float  # W of direct-current loads that stay on them
    across: float  # V across those loads
    suppressed: float  # V that a suppressor of this class lets through
    energy: float  # J that a clamp at that voltage takes, on the alternator that drives it hardest


def load_dump(specification: Specification, simulation: Simulation) -> LoadDump | None:
    """The load dump of this boat; None without an alternator."""
    run = simulation.recharge
    if run is None:
        return None
    bank = specification.bank
    resistances = tuple(
        source_resistance(bank.nominal_voltage, engine.charging_speed * machine.pulley_ratio, machine.rated_current)
        for engine in specification.engines
        for machine in engine.alternators
    )
    together = 1.0 / sum(1.0 / one for one in resistances)
    # The inverter may sleep: only what always draws is counted on.
    loads = float(np.min(run.forcing.dc_load[0]))
    left = bank.absorb_voltage**2 / loads if loads > 0.0 else math.inf
    try:
        peak, suppressed = unsuppressed_peak(bank.nominal_voltage), suppressed_peak(bank.nominal_voltage)
        lasts = longest_dump(bank.nominal_voltage)
    except OutOfRange:
        return LoadDump(together, resistances, math.nan, loads, math.nan, math.nan, math.nan)
    return LoadDump(
        resistance=together,
        resistances=resistances,
        peak=peak,
        loads=loads,
        across=voltage_across(peak, together, left),
        suppressed=suppressed,
        energy=clamped_energy(peak, bank.absorb_voltage, min(resistances), suppressed, lasts),
    )
