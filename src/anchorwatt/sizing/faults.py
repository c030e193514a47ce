"""What happens when something fails: every fault that the boat can have, told from its runs."""

from __future__ import annotations

from functools import cached_property

from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.fault_story import Fault
from anchorwatt.sizing.faults_by_night import inverter, module, seawater, shore
from anchorwatt.sizing.faults_while_charging import alternators, contactor, throttle


class Faults:
    """The faults of a boat; those that rules look at one by one are run one by one."""

    def __init__(self, specification: Specification, simulation: Simulation) -> None:
        self.specification = specification
        self.simulation = simulation

    @cached_property
    def inverter_trips(self) -> Fault:
        """The inverter off for two hours of the night."""
        return inverter(self.specification, self.simulation)

    @cached_property
    def module_lost(self) -> Fault:
        """One string of the bank lost in the middle of the night."""
        return module(self.specification, self.simulation)

    @cached_property
    def shore_sags(self) -> Fault | None:
        """Shore power that fails by night; None without a shore service."""
        return shore(self.specification, self.simulation)

    @cached_property
    def every(self) -> tuple[Fault, ...]:
        """Every fault that the boat can have, in the order of the night and then of the charge."""
        specification, simulation = self.specification, self.simulation
        found = [
            seawater(specification, simulation),
            self.inverter_trips,
            self.module_lost,
            self.shore_sags,
            *alternators(specification, simulation),
            contactor(specification, simulation),
            throttle(specification, simulation),
        ]
        return tuple(one for one in found if one is not None)
