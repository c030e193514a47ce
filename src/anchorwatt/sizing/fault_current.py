"""What a short circuit could draw: from the bank, from one string, after a circuit, and on the AC side.

All figures are upper bounds, which a device must be able to interrupt: full charge, warm cells, only the part of the
resistance that acts at once. What alternators, charger and sun would add is told beside it, not added: they give way.
A management system's transistors are credited with nothing.
"""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.design.fill_power import HIGHEST_OF_60_HZ, VOLTAGE_WITHOUT_SHORE
from anchorwatt.design.specification import Bank, Specification
from anchorwatt.physics.battery import OHMIC_SHARE
from anchorwatt.physics.fault_current import (
    fault_current,
    fault_current_after,
    parallel_resistance,
    string_resistance,
    transformer_fault_current,
)
from anchorwatt.sizing.setting import Input

AMPERE_HOUR = 3600.0  # A s

CELL_RESISTANCE = 0.20e-3
"""ohm at 1 kHz of a large iron-phosphate cell, at most: the sheet of a cell of 202 Ah. It goes with 1/capacity."""

CELL_CAPACITY = 202.0 * AMPERE_HOUR
"""A s of that cell."""

LINK_RESISTANCE = 0.05e-3
"""ohm of a link from one cell to the next. From memory."""

ALTERNATOR_SHARE = 1.5
"""Of its rated current that an alternator gives into a short, its own reactance in the way. From memory."""

CONVERTER_SHARE = 1.1
"""Of its rated current that an electronic charger gives before it limits itself. From memory."""

SOLAR_SHARE = 1.1
"""Of the current at full power that panels give into a short. From memory."""

TRANSFORMER_SHORT = 0.04
"""Short-circuit voltage of a small dry transformer, share of its primary voltage. From memory."""

SHORE_60_HZ, SHORE_50_HZ = 3000.0, 6000.0
"""A that devices on shore power must interrupt: ABYC E-11 for 120 V 30 and 50 A, by a trade table; IEC 60898 breakers
as piers have them, from memory."""


@dataclass(frozen=True)
class Contribution:
    """What another source adds to a fault on the DC side while it runs."""

    name: str
    current: float  # A
    why: str


@dataclass(frozen=True)
class BankFault:
    """What a short circuit draws from the bank."""

    voltage: float  # V, open circuit, full
    strings: int
    resistance_of_string: float  # ohm
    resistance: float  # ohm of the whole bank at its terminals
    string: float  # A from one string
    bank: float  # A at the bank's terminals, all strings
    governed_by: str  # which of the two resistances is the lower, in words
    contributions: tuple[Contribution, ...]
    inputs: tuple[Input, ...]

    @property
    def through_string_device(self) -> float:
        """A that the device of one string must interrupt: its own string's, or that of all others back into it."""
        return max(self.string, (self.strings - 1) * self.string)

    @property
    def added(self) -> float:
        """A of all other sources together, if all ran at that moment."""
        return sum(one.current for one in self.contributions)

    def after(self, loop: float) -> float:
        """A of a fault after so many ohm of cable, out and back, from the bank's terminals on."""
        return fault_current_after(self.voltage, self.bank, loop)

    def string_after(self, loop: float) -> float:
        """A that one string gives after so many ohm of cable, out and back."""
        return fault_current_after(self.voltage, self.string, loop)


def prospective(specification: Specification) -> BankFault:
    """What a short circuit draws from a design's bank."""
    bank = specification.bank
    voltage = bank.cells * max(bank.open_circuit_voltages)
    each, words, inputs = _string(bank)
    whole = parallel_resistance(each, bank.parallel)
    return BankFault(
        voltage=voltage,
        strings=bank.parallel,
        resistance_of_string=each,
        resistance=whole,
        string=fault_current(voltage, each),
        bank=fault_current(voltage, whole),
        governed_by=words,
        contributions=_contributions(specification),
        inputs=(Input("open-circuit voltage, full", voltage, "voltage", "computed"), *inputs),
    )


def prospective_after(specification: Specification, loop: float) -> float:
    """A of a fault after so many ohm of cable, out and back, from the bank's terminals on."""
    return prospective(specification).after(loop)


def _string(bank: Bank) -> tuple[float, str, tuple[Input, ...]]:
    """ohm of one string: the lower of what its maker's figure leaves at once, and what such cells have."""
    stated = OHMIC_SHARE * bank.resistance * bank.parallel
    capacity = bank.capacity / bank.parallel
    cell = CELL_RESISTANCE * CELL_CAPACITY / capacity
    usual = string_resistance(bank.cells, cell, LINK_RESISTANCE)
    inputs = (
        Input("stated resistance of a string", bank.resistance * bank.parallel, "resistance", "catalogue"),
        Input("share of it that acts at once", OHMIC_SHARE, "share", "estimated"),
        Input("resistance of such a cell", cell, "resistance", "estimated"),
        Input("resistance of a link", LINK_RESISTANCE, "resistance", "estimated"),
    )
    if stated <= usual:
        return stated, "the part of the stated resistance that acts at once", inputs
    return usual, "cells of that capacity and their links", inputs


def _contributions(specification: Specification) -> tuple[Contribution, ...]:
    volts = specification.bank.nominal_voltage
    found = [
        Contribution(
            machine.name, ALTERNATOR_SHARE * machine.rated_current, "its own reactance limits it; its field collapses"
        )
        for engine in specification.engines
        for machine in engine.alternators
    ]
    if specification.charger is not None:
        current = CONVERTER_SHARE * specification.charger.rated_power / volts
        found.append(Contribution(specification.charger.name, current, "its electronics limit it"))
    if specification.solar is not None:
        found.append(
            Contribution("sun", SOLAR_SHARE * specification.solar.peak_power / volts, "panels are current sources")
        )
    return tuple(found)


def inverter_fault(specification: Specification) -> float:
    """A that the inverter gives into a short on the AC side: its highest overload, which its electronics limit."""
    inverter, transformer, shore = specification.inverter, specification.transformer, specification.shore
    supplied = VOLTAGE_WITHOUT_SHORE if shore is None else shore.voltage
    volts = supplied if transformer is None else transformer.primary_voltage
    return inverter.rated_power / volts * max((1.0, *inverter.overload_shares))


def shore_fault(specification: Specification) -> float:
    """A that shore power is taken to give into a short at the inlet; 0 without a shore service."""
    shore = specification.shore
    if shore is None:
        return 0.0
    return SHORE_60_HZ if shore.voltage <= HIGHEST_OF_60_HZ else SHORE_50_HZ


def transformer_fault(specification: Specification) -> float:
    """A after the transformer, no more than what feeds it passes on; without one, what feeds the loads."""
    feeding = max(shore_fault(specification), inverter_fault(specification))
    made = specification.transformer
    if made is None:
        return feeding
    own = transformer_fault_current(made.rated_power, made.secondary_voltage, TRANSFORMER_SHORT)
    return min(own, feeding * made.primary_voltage / made.secondary_voltage)


def alternating_fault(specification: Specification, source: str) -> float:
    """A of a fault on the AC side by what feeds it: "shore", "inverter" or "transformer"."""
    if source == "inverter":
        # Behind the transfer switch shore may feed the same wires.
        return inverter_fault(specification)
    if source == "shore":
        return max(shore_fault(specification), inverter_fault(specification))
    return transformer_fault(specification)
