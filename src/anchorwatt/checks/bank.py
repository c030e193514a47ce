"""Rules about the lithium bank: its night when aged, its temperature, its currents and its voltages."""

from __future__ import annotations

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.sizing.bank_life import AgedNight

BRIEF = "the brief"
MAKER = "the part's own rating"
PRACTICE = "common practice, no source"
LARGER = "Add modules in parallel, cool fewer cabins, raise set points, or cover windows and hatches."
CELL_MARGIN = 0.05
"""V a cell between absorb voltage and overvoltage cut-off, for cells that are not alike."""
HIGHEST_FLOAT = 3.40
"""V a cell."""


@rule(
    "aged-bank-holds-night",
    "Does the bank still hold the hours asked for at the end of its warranty, as it ages here?",
    "time",
    "the brief; ageing from memory, see `anchorwatt bank`",
    LARGER,
)
def aged_bank_holds_night(evidence: Evidence) -> Measured:
    return _held(evidence, evidence.bank_life.computed)


@rule(
    "warranted-bank-holds-night",
    "Would the bank hold the hours asked for with no more capacity left than is warranted?",
    "time",
    "the brief; the module's warranty",
    LARGER,
)
def warranted_bank_holds_night(evidence: Evidence) -> Measured:
    return _held(evidence, evidence.bank_life.warranted)


def _held(evidence: Evidence, night: AgedNight) -> Measured:
    found = at_least(night.hold, evidence.specification.brief.hold)
    if night.unserved > 0.0:
        return Measured(found.value, found.limit, Verdict.FAILS)
    return found


@rule(
    "bank-cycles-within-life",
    "Do the warranty's years take no more full cycles than the modules are made for?",
    "share",
    MAKER,
    "Add modules in parallel, so that each gives less.",
)
def bank_cycles_within_life(evidence: Evidence) -> Measured:
    bank = evidence.specification.bank
    return at_most(evidence.bank_life.year.full_cycles * bank.warranted_years / bank.cycle_life, 1.0)


@rule(
    "bank-not-too-hot-to-charge",
    "Do the cells stay cool enough to be charged while the engines put the night back?",
    "temperature",
    MAKER,
    "Move the bank to a cooler place, give it air, or charge it with less current.",
)
def bank_not_too_hot_to_charge(evidence: Evidence) -> Measured | None:
    # Beyond its limits the bank takes nothing at all: what counts is how warm it is when charging is asked of it.
    recharge = evidence.bank_state.recharge
    if recharge is None:
        return None
    return at_most(recharge.hottest, evidence.specification.bank.highest_charge_temperature)


@rule(
    "bank-not-too-cold-to-charge",
    "Are the cells warm enough to be charged while the engines put the night back?",
    "temperature",
    MAKER,
    "Move the bank to a warmer place, insulate it, or warm it before it is charged.",
)
def bank_not_too_cold_to_charge(evidence: Evidence) -> Measured | None:
    recharge = evidence.bank_state.recharge
    if recharge is None:
        return None
    return at_least(recharge.coldest, evidence.specification.bank.lowest_charge_temperature)


@rule(
    "bank-not-too-hot-at-night",
    "Do the cells stay below the temperature at which the management system disconnects?",
    "temperature",
    MAKER,
    "Move the bank to a cooler place, give it air, or draw less from it.",
)
def bank_not_too_hot_at_night(evidence: Evidence) -> Measured:
    state = evidence.bank_state
    hottest = max(state.night.hottest, state.day.hottest)
    return at_most(hottest, evidence.specification.bank.highest_discharge_temperature)


@rule(
    "bank-not-too-cold-at-night",
    "Do the cells stay above the temperature at which the management system disconnects?",
    "temperature",
    MAKER,
    "Move the bank to a warmer place, or insulate it.",
)
def bank_not_too_cold_at_night(evidence: Evidence) -> Measured:
    state = evidence.bank_state
    coldest = min(state.night.coldest, state.day.coldest)
    return at_least(coldest, evidence.specification.bank.lowest_discharge_temperature)


@rule(
    "bank-carries-peak",
    "Does the bank's discharge current cover the highest loads of night and day together?",
    "current",
    MAKER,
    "More modules in parallel, a higher voltage, or loads that do not run together.",
)
def bank_carries_peak(evidence: Evidence) -> Measured:
    return at_most(evidence.bank_state.peak_current, evidence.specification.bank.discharge_current)


@rule(
    "voltage-at-reserve",
    "Aged and down to the reserve, does the bank keep its voltage above the cut-off under the highest load?",
    "voltage",
    MAKER,
    "A higher reserve, more modules in parallel, shorter and thicker links, or a smaller highest load.",
)
def voltage_at_reserve(evidence: Evidence) -> Measured:
    return at_least(evidence.bank_state.voltage_at_reserve, evidence.specification.bank.cut_off_voltage, near=0.03)


@rule(
    "reserve-above-cut-off",
    "Is the reserve above the charge at which the management system disconnects?",
    "share",
    MAKER,
    "A higher reserve in the brief.",
)
def reserve_above_cut_off(evidence: Evidence) -> Measured:
    specification = evidence.specification
    return at_least(specification.brief.reserve, specification.bank.cut_off_charge)


@rule(
    "charger-and-sun-within-bank",
    "Do charger and sun together give no more than the bank may be charged with?",
    "current",
    MAKER,
    "Set a lower charging current, or more modules in parallel.",
)
def charger_and_sun_within_bank(evidence: Evidence) -> Measured | None:
    given = evidence.bank_state.charger_and_sun
    return at_most(given, evidence.specification.bank.charge_current) if given > 0.0 else None


@rule(
    "cells-have-room-to-differ",
    "Does the absorb voltage leave 0.05 V a cell to the overvoltage cut-off, for cells that are not alike?",
    "voltage",
    PRACTICE,
    "A lower absorb voltage: a contactor that opens under charge can destroy alternators and what hangs on the bus.",
)
def cells_have_room_to_differ(evidence: Evidence) -> Measured | None:
    bank = evidence.specification.bank
    limits = [one.limit for one in bank.management if one.dimension == "voltage" and one.disconnects == "charge"]
    if not limits:
        return None
    return at_most(bank.absorb_voltage, min(limits) - CELL_MARGIN * bank.cells, near=0.01)


@rule(
    "float-rests-the-bank",
    "Is the float voltage low enough that a full bank rests?",
    "voltage",
    "3.35 to 3.40 V a cell, or none at all; from memory",
    "A lower float voltage, or a charger that ends.",
)
def float_rests_the_bank(evidence: Evidence) -> Measured:
    bank = evidence.specification.bank
    return at_most(bank.float_voltage, HIGHEST_FLOAT * bank.cells, near=0.0)
