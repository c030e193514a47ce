"""The bank as it is told: its build, its limits, its temperature, its years, and the bank that it replaces."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.assessment.records import Column, Table
from anchorwatt.checks import Evidence
from anchorwatt.design.specification import Bank, CutOff, Specification
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.sizing.bank_life import BankLife
from anchorwatt.sizing.bank_state import BankState
from anchorwatt.sizing.replaced_bank import ReplacedBank

# What goes dark when the management system opens one side, in words.
LOST = {
    "charge": "charging stops; loads run on. An alternator that feels it first can be destroyed",
    "discharge": "every DC load and the inverter stop; charging may go on",
    "both": "everything on the bank goes dark, charging too",
}


@dataclass(frozen=True)
class Limit:
    """One of the management system's limits and how near these runs come to it."""

    cut_off: CutOff
    lost: str  # what the boat loses with it, in words
    nearest: float  # in the limit's dimension, of night, day and recharge


@dataclass(frozen=True)
class BankStory:
    """All that is told of the bank."""

    bank: Bank
    state: BankState
    limits: tuple[Limit, ...]
    night: Table  # charge, current, voltage and temperature of the cells
    recharge: Table | None
    required: float  # s that the bank must hold
    life: BankLife
    replaced: ReplacedBank | None


def bank_story(specification: Specification, simulation: Simulation, evidence: Evidence) -> BankStory:
    """Everything that is told of the bank."""
    state, bank, recharge = evidence.bank_state, specification.bank, simulation.recharge
    lowest = min(float(run.series.charge[0].min()) for run in (simulation.night, simulation.day))
    return BankStory(
        bank=bank,
        state=state,
        limits=tuple(Limit(one, LOST[one.disconnects], nearest(one, bank, state, lowest)) for one in bank.management),
        night=cells_table(simulation.night),
        recharge=None if recharge is None else cells_table(recharge),
        required=specification.brief.hold,
        life=evidence.bank_life,
        replaced=evidence.replaced_bank,
    )


def nearest(cut_off: CutOff, bank: Bank, state: BankState, lowest_charge: float) -> float:
    """How near night, day and recharge come to a limit; which side counts follows from where the limit lies."""
    runs = [run for run in (state.night, state.day, state.recharge) if run is not None]
    if cut_off.dimension == "voltage":
        if cut_off.limit > bank.nominal_voltage:
            return max(run.highest_voltage for run in runs)
        return min(run.lowest_voltage for run in runs)
    if cut_off.dimension == "share":
        return lowest_charge
    if cut_off.dimension == "current":
        if cut_off.disconnects == "charge":
            return 0.0 if state.recharge is None else state.recharge.highest_current
        return max(run.highest_current for run in (state.night, state.day))
    if cut_off.disconnects == "charge" and state.recharge is not None:
        runs = [state.recharge]
    if cut_off.limit > 0.5 * (bank.lowest_discharge_temperature + bank.highest_discharge_temperature):
        return max(run.hottest for run in runs)
    return min(run.coldest for run in runs)


def cells_table(run: Run) -> Table:
    """The bank through a run."""
    series = run.series
    return Table(
        run.name,
        run.clock,
        (
            Column("charge_pct", "state of charge", "share", series.charge[0]),
            Column("bank_current_A", "current, out positive", "current", series.current[0]),
            Column("bank_voltage_V", "voltage", "voltage", series.voltage[0]),
            Column("cells_C", "cells", "temperature", series.bank_temperature[0]),
        ),
    )
