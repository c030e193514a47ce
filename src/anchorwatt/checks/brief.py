"""Rules that hold the design against its brief."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.simulation.runs import LONGEST_HOLD
from anchorwatt.sizing.offer import exchanged, rate_told
from anchorwatt.units import Money

BRIEF = "the brief"


@rule(
    "bank-holds-night",
    "Does the bank hold the hours asked for, down to the reserve?",
    "time",
    BRIEF,
    "Add modules in parallel, cool fewer cabins, raise set points, or cover windows and hatches.",
)
def bank_holds_night(evidence: Evidence) -> Measured:
    reached = float(evidence.simulation.hold.summary.reserve_at[0])
    return at_least(LONGEST_HOLD if math.isnan(reached) else reached, evidence.specification.brief.hold)


@rule(
    "reserve-at-dawn",
    "Is the reserve still in the bank at dawn?",
    "share",
    BRIEF,
    "Add modules in parallel, cool fewer cabins, raise set points, or cover windows and hatches.",
)
def reserve_at_dawn(evidence: Evidence) -> Measured:
    return at_least(float(evidence.simulation.night.end.charge[0]), evidence.specification.brief.reserve)


@rule(
    "night-without-interruption",
    "Is everything served through the night?",
    "energy",
    BRIEF,
    "See which limit is met first: the bank's charge, its current limit, or the inverter's rating.",
)
def night_without_interruption(evidence: Evidence) -> Measured:
    return at_most(float(evidence.simulation.night.summary.unserved_energy[0]), 0.0)


@rule(
    "recharge-in-time",
    "Do the engines put the night back in the hours allowed?",
    "time",
    BRIEF,
    "Larger or more alternators, a higher voltage, a belt that carries more, or more hours under way.",
)
def recharge_in_time(evidence: Evidence) -> Measured:
    run = evidence.simulation.recharge
    if run is None:
        return at_most(math.nan, evidence.specification.brief.recharge)
    reached = float(run.summary.full_at[0])
    return at_most(math.inf if math.isnan(reached) else reached, evidence.specification.brief.recharge)


@rule(
    "mass-limit",
    "Is the mass brought aboard within the limit (refrigerant and its lines, ducts and hoses not counted)?",
    "mass",
    BRIEF,
    "Lighter modules, fewer of them, fewer air handlers, or shorter cables.",
)
def mass_limit(evidence: Evidence) -> Measured | None:
    if math.isnan(evidence.specification.brief.mass_limit):
        return None
    return at_most(evidence.weight.added, evidence.specification.brief.mass_limit)


@rule(
    "price-limit",
    "Is the price of the parts within the limit (engines, cables, ducts, pipes and labour not counted)?",
    "money",
    BRIEF,
    "Fewer modules or smaller parts; type your own prices, in the limit's currency, where the catalogue's do not hold.",
)
def price_limit(evidence: Evidence) -> Measured | None:
    if not evidence.specification.brief.price_limit:
        return None
    limit, found = Money.parse(evidence.specification.brief.price_limit), evidence.prices
    offer = evidence.specification.offer
    parts = [exchanged(one.amount, one.currency, limit.currency, offer) for one in found.totals]
    total = math.nan if found.unknown or not parts else sum(amount for amount, _ in parts)
    measured = at_most(total, float(limit.amount))
    if measured.verdict is not Verdict.CANNOT_TELL:
        rates = dict.fromkeys(rate for _, used in parts for rate in used)
        return replace(measured, note="; ".join((f"in {limit.currency}", *(rate_told(rate, offer) for rate in rates))))
    if found.unknown:
        return replace(measured, note=f"in {limit.currency}; no price of {', '.join(found.unknown)}")
    if not found.totals:
        return replace(measured, note=f"in {limit.currency}; no parts are listed")
    return replace(measured, note=f"in {limit.currency}; the parts come to {found.in_words}, which is not converted")
