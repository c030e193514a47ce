"""The lead-acid bank that a lithium one replaces, on the same night and with the same alternators."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import LeadAcidBank, Specification
from anchorwatt.physics.battery import current_for_power
from anchorwatt.physics.lead_acid import (
    full_charge,
    lead_acid_charge_time,
    peukert_capacity,
    rest_voltage,
)
from anchorwatt.simulation.runs import LONGEST_HOLD, Run, Simulation

EASY_CHARGES = (0.80, 0.90)
"""States of charge to which it is brought before the tail grows long."""


UNFILLED = 0.85
"""State of charge at which charging by engine usually ends, before the tail. From memory."""


@dataclass(frozen=True)
class LeadAcidNight:
    """The replaced bank on this night."""

    bank: LeadAcidBank
    power: float  # W, mean of the night at the bank's terminals
    current: float  # A, at that power in the middle of the usable share
    capacity_at_current: float  # A s, by Peukert
    usable_energy: float  # J of the usable share, at that current
    hold: float  # s
    holds: bool
    hold_unfilled: float  # s, where charging stopped at `UNFILLED` before the night
    charge_at_dawn: float  # ampere-hours left over the rated ones, at dawn or where the usable share ended
    taken: float  # A s that the night took
    strings_needed: float  # of such strings, to hold the night; inf = no power is drawn
    mass_needed: float  # kg of so many, whole strings
    available: float  # A that the alternators have for charging, nan = none
    recharge: tuple[tuple[float, float], ...]  # state of charge and s from dawn to reach it; the last is full
    efficiency: float  # energy out over energy in
    cycles: float  # such nights in its life
    years: float  # of its life, by cycles alone


@dataclass(frozen=True)
class LithiumNight:
    """The design's own bank by the same measures."""

    usable_energy: float  # J from the charge at the start of the night to the reserve, this night going on
    hold: float  # s
    holds: bool
    recharge_time: float  # s to the charge with which nights begin, nan = not within a day
    efficiency: float  # energy out over energy in, of the night and its recharge
    mass: float  # kg


@dataclass(frozen=True)
class ReplacedBank:
    """Both banks side by side."""

    lead_acid: LeadAcidNight
    lithium: LithiumNight


def replaced_bank(specification: Specification, simulation: Simulation) -> ReplacedBank | None:
    """The lead-acid bank beside the lithium one; None where the design names none."""
    bank = specification.replaced
    if bank is None:
        return None
    return ReplacedBank(_lead_acid(bank, specification, simulation), _lithium(specification, simulation))


def _lead_acid(bank: LeadAcidBank, specification: Specification, simulation: Simulation) -> LeadAcidNight:
    brief, length = specification.brief, simulation.dawn - simulation.night_start
    power = max(0.0, float(simulation.night.summary.bank_out[0]) / length)
    middle = rest_voltage(1.0 - 0.5 * bank.usable_share, bank.empty_voltage, bank.full_voltage)
    # A power that the bank cannot give at all is counted at the current where it gives its most.
    peak = middle * middle / (4.0 * bank.resistance)
    current = current_for_power(min(power, peak), middle, bank.resistance)
    capacity = peukert_capacity(current, bank.capacity, bank.peukert) if current > 0.0 else bank.capacity
    usable = capacity * bank.usable_share
    held = usable / current if current > 0.0 and power <= peak else (LONGEST_HOLD if power <= 0.0 else 0.0)
    taken = min(usable, current * length)
    left = max(0.0, 1.0 - taken / bank.capacity)
    needed = _strings_needed(bank, power, brief.hold, middle)
    available = charging_current(simulation.recharge)
    depth = taken / capacity
    cycles = bank.cycle_life * bank.usable_share / depth if depth > 0.0 else math.inf
    voltage = middle - current * bank.resistance
    return LeadAcidNight(
        bank=bank,
        power=power,
        current=current,
        capacity_at_current=capacity,
        usable_energy=usable * voltage,
        hold=min(LONGEST_HOLD, held),
        holds=held >= brief.hold,
        hold_unfilled=min(LONGEST_HOLD, held) * max(0.0, 1.0 - (1.0 - UNFILLED) / bank.usable_share),
        charge_at_dawn=left,
        taken=taken,
        strings_needed=needed,
        mass_needed=math.ceil(needed) * bank.mass / bank.parallel if math.isfinite(needed) else math.inf,
        available=available,
        recharge=tuple((to, _charge_time(bank, left, to, available)) for to in (*EASY_CHARGES, full_charge())),
        efficiency=bank.charge_efficiency * voltage / bank.absorb_voltage,
        cycles=cycles,
        years=cycles / brief.nights_per_year if brief.nights_per_year > 0.0 else math.inf,
    )


def _charge_time(bank: LeadAcidBank, charge_from: float, charge_to: float, available: float) -> float:
    if math.isnan(available):
        return math.nan
    return lead_acid_charge_time(
        charge_from, charge_to, bank.capacity, bank.charge_rate, available, bank.charge_efficiency
    )


def _strings_needed(bank: LeadAcidBank, power: float, hold: float, middle: float) -> float:
    """Strings of that battery whose usable share carries the power for the hours asked for."""
    if power <= 0.0:
        return 0.0
    capacity, resistance = bank.capacity / bank.parallel, bank.resistance * bank.parallel

    def holds(strings: float) -> bool:
        peak = middle * middle / (4.0 * resistance / strings)
        if power >= peak:
            return False
        current = current_for_power(power, middle, resistance / strings)
        given = peukert_capacity(current, capacity * strings, bank.peukert)
        return given * bank.usable_share / current >= hold

    low, high = 0.0, 1.0
    while not holds(high):
        low, high = high, 2.0 * high
    for _ in range(50):
        strings = 0.5 * (low + high)
        low, high = (low, strings) if holds(strings) else (strings, high)
    return high


def charging_current(recharge: Run | None) -> float:
    """A into the lithium bank while it takes all that is there: the mean of the fuller half of the recharge's minutes.

    The end of the recharge, where the bank's own tail holds the current down, is left out so that the lead-acid bank
    is told what alternators and sun have to give. nan without a recharge.
    """
    if recharge is None:
        return math.nan
    into = np.sort(np.clip(-recharge.series.current[0], 0.0, None))
    return float(into[into.size // 2 :].mean()) if into.size else math.nan


def _lithium(specification: Specification, simulation: Simulation) -> LithiumNight:
    brief, bank = specification.brief, specification.bank
    night, hold, recharge = simulation.night, simulation.hold, simulation.recharge
    reached = float(hold.summary.reserve_at[0])
    until = hold.series.current.shape[1] if math.isnan(reached) else math.ceil(reached / hold.step)
    power = hold.series.current[0, :until] * hold.series.voltage[0, :until]
    out, lost = float(night.summary.bank_out[0]), float(night.summary.bank_loss[0])
    giving = out / (out + lost) if out > 0.0 else math.nan
    taking = math.nan
    if recharge is not None:
        taken = -float(recharge.summary.bank_out[0])
        taking = (taken - float(recharge.summary.bank_loss[0])) / taken if taken > 0.0 else math.nan
    held = LONGEST_HOLD if math.isnan(reached) else reached
    return LithiumNight(
        usable_energy=float(power.sum()) * hold.step,
        hold=held,
        holds=held >= brief.hold,
        recharge_time=math.nan if recharge is None else float(recharge.summary.full_at[0]),
        efficiency=giving * taking,
        mass=bank.mass,
    )
