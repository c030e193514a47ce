"""What happens when something fails: every fault that the boat can have, told from its runs."""

from __future__ import annotations

from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.fault_story import Fault
from anchorwatt.sizing.faults_by_night import inverter, module, seawater, shore
from anchorwatt.sizing.faults_while_charging import alternators, contactor, throttle


def faults(specification: Specification, simulation: Simulation) -> tuple[Fault, ...]:
    """Every fault that the boat can have, in the order of the night and then of the charge."""
    found = [
        seawater(specification, simulation),
        inverter(specification, simulation),
        module(specification, simulation),
        shore(specification, simulation),
        *alternators(specification, simulation),
        contactor(specification, simulation),
        throttle(specification, simulation),
    ]
    return tuple(one for one in found if one is not None)
