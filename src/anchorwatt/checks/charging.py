"""Rules about alternators, belts and what they ask of engine and bank."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.simulation.runs import LONGEST_RECHARGE
from anchorwatt.sizing.regulator import RegulatorSheet

PRACTICE = "common practice, no source"
MAKER = "the part's own rating"
MID_RANGE = (0.45, 0.80)
"""Shares of rated engine speed between which it has most to spare."""
FAST_ENOUGH = 0.5
"""Share of the rated current, cold, that an alternator should reach at the charging speed."""


def _named(measured: Measured, evidence: Evidence, sheet: RegulatorSheet) -> Measured:
    """The same with the machine that it is about."""
    engine = evidence.specification.engines[sheet.engine]
    return replace(measured, note=f"{engine.alternators[sheet.machine].name} on {engine.name}")


@rule(
    "belt-at-charging-speed",
    "Cold, at the charging speed, does the belt carry what the regulator's current limit lets the alternator give?",
    "current",
    "constant effective tension: below its reference speed a belt's limit is torque; what belts carry is from memory",
    "A belt with more ribs, a higher charging speed, or a current limit by speed, as `anchorwatt regulator` tells it.",
)
def belt_at_charging_speed(evidence: Evidence) -> Measured | None:
    worst: Measured | None = None
    for sheet in evidence.regulators:
        row = sheet.at(evidence.specification.engines[sheet.engine].charging_speed)
        if worst is None or row.asked * worst.limit > worst.value * row.belt:
            worst = _named(at_most(row.asked, row.belt), evidence, sheet)
    return worst


@rule(
    "crank-side-load",
    "Is what the belts pull sideways at the front of the crankshaft within what the engine's maker allows?",
    "force",
    "tight and slack side by the belt's tension ratio, as if all belts pulled the same way; the limit is the maker's",
    "Ask the engine's maker, for the place of each pulley round the crankshaft, and write the answer as "
    "side_load_limit; alternators on opposite sides, a larger pulley or a jackshaft with its own bearings pull less.",
)
def crank_side_load(evidence: Evidence) -> Measured | None:
    loads = evidence.side_loads
    if not loads:
        return None
    over = [one for one in loads if one.load > one.limit]
    unasked = [one for one in loads if math.isnan(one.limit)]
    told = max(over or unasked or loads, key=lambda one: one.load if math.isnan(one.limit) else one.load / one.limit)
    return replace(at_most(told.load, told.limit), note=evidence.specification.engines[told.engine].name)


@rule(
    "hold-keeps-winding",
    "With nothing but the regulator's held temperature to look after it, does every winding settle within its class?",
    "temperature",
    MAKER,
    "Lower the held temperature, bring cooler air to the alternator, or take one of a higher insulation class.",
)
def hold_keeps_winding(evidence: Evidence) -> Measured | None:
    worst: Measured | None = None
    for sheet in evidence.regulators:
        limit = evidence.specification.engines[sheet.engine].alternators[sheet.machine].highest_winding
        if worst is None or limit - sheet.hottest_winding < worst.limit - worst.value:
            worst = _named(at_most(sheet.hottest_winding, limit, near=0.05), evidence, sheet)
    return worst


@rule(
    "mid-range-power-spare",
    "In mid-range, the propeller turning, does the engine leave what its alternators take at their current limits?",
    "shaft power",
    PRACTICE,
    "Smaller alternators, a lower current limit by speed, a propeller of less pitch, or charging at anchor.",
)
def mid_range_power_spare(evidence: Evidence) -> Measured | None:
    worst: Measured | None = None
    for number, engine in enumerate(evidence.specification.engines):
        sheets = [sheet for sheet in evidence.regulators if sheet.engine == number]
        if not sheets:
            continue
        pairs = [
            (sum(row.spare for row in rows), sum(row.asked_power for row in rows))
            for rows in zip(*(sheet.rows for sheet in sheets), strict=True)
            if MID_RANGE[0] <= rows[0].engine_speed / engine.rated_speed <= MID_RANGE[1]
        ]
        if not pairs:  # an engine that idles near its rated speed has no mid-range
            continue
        spare, asked = max(pairs, key=lambda pair: pair[0] - pair[1])
        if worst is None or spare - asked < worst.value - worst.limit:
            worst = replace(at_least(spare, asked), note=engine.name)
    return worst


@rule(
    "alternators-turn-fast-enough",
    "At the charging speed, does every alternator turn fast enough for half its rated current, cold?",
    "share",
    PRACTICE,
    "A higher charging speed, a smaller pulley on the alternator, or one made for low speed.",
)
def alternators_turn_fast_enough(evidence: Evidence) -> Measured | None:
    shares = []
    for sheet in evidence.regulators:
        engine = evidence.specification.engines[sheet.engine]
        shares.append(sheet.at(engine.charging_speed).cold / engine.alternators[sheet.machine].rated_current)
    return at_least(min(shares), FAST_ENOUGH) if shares else None


@rule(
    "alternators-within-bank",
    "Do all alternators together, at their current limits, stay within the bank's charging current?",
    "current",
    "the management system opens above its charging current, at full charge: a load dump",
    "Share the bank's charging current out as `anchorwatt regulator` tells it, or more modules in parallel.",
)
def alternators_within_bank(evidence: Evidence) -> Measured | None:
    limits = [machine.current_limit for engine in evidence.specification.engines for machine in engine.alternators]
    return at_most(sum(limits), evidence.specification.bank.charge_current, near=0.02) if limits else None


@rule(
    "load-dump",
    "If the bank is taken off the alternators at full charge, does the voltage stay below what suppression promises?",
    "voltage",
    "ISO 16750-2, load dump: unsuppressed and suppressed peak of 12 and 24 V systems, read second-hand; at 48 V it has "
    "no figure",
    "Avalanche diodes in the alternators or a clamp at each output post (clamp_voltage in the file), and a management "
    "system that cuts the field before it opens.",
)
def load_dump(evidence: Evidence) -> Measured | None:
    dump = evidence.load_dump
    if dump is None:
        return None
    clamps = [m.clamp_voltage for engine in evidence.specification.engines for m in engine.alternators]
    if dump.across <= dump.suppressed or not any(math.isnan(clamp) for clamp in clamps):
        # np.fmin: at a voltage for which the standard has no figure the clamps are all that is known.
        return at_most(float(np.fmin(dump.across, max(clamps))), dump.suppressed, near=0.0)
    return Measured(dump.across, dump.suppressed, Verdict.CANNOT_TELL, "what clamps it is not in the file")


@rule(
    "one-alternator-lost",
    "With any one alternator out of work, do the others put the night back within a day?",
    "time",
    PRACTICE,
    "A third alternator, two of a size that each can do it, shore power, or a shorter night.",
)
def one_alternator_lost(evidence: Evidence) -> Measured | None:
    if len(evidence.regulators) < 2:
        return None
    longest = 0.0
    for sheet in evidence.regulators:
        run = evidence.simulation.recharge_at(None, False, (sheet.place,))
        full_at = math.nan if run is None else float(run.summary.full_at[0])
        longest = max(longest, math.inf if math.isnan(full_at) else full_at)
    return at_most(longest, LONGEST_RECHARGE)
