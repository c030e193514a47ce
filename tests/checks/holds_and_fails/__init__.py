"""For every rule a boat on which it holds and one on which it fails: a module a subject, as the rules have it."""

from __future__ import annotations

from tests.checks.holds_and_fails import (
    ac_safety,
    ac_side,
    air,
    bank,
    brief,
    charging,
    comfort,
    compartments,
    condensate,
    conductors,
    cooling,
    ducts,
    faults,
    fit,
    lithium,
    offer,
    power,
    protection,
    redundancy,
    refrigerant,
    seawater,
    supply,
    week,
    weight,
)
from tests.checks.holds_and_fails.case import Case

BY_SUBJECT: dict[str, dict[str, Case]] = {
    "ac safety": ac_safety.CASES,
    "ac side": ac_side.CASES,
    "air": air.CASES,
    "bank": bank.CASES,
    "brief": brief.CASES,
    "charging": charging.CASES,
    "comfort": comfort.CASES,
    "compartments": compartments.CASES,
    "condensate": condensate.CASES,
    "conductors": conductors.CASES,
    "cooling": cooling.CASES,
    "ducts": ducts.CASES,
    "faults": faults.CASES,
    "fit": fit.CASES,
    "lithium": lithium.CASES,
    "offer": offer.CASES,
    "power": power.CASES,
    "protection": protection.CASES,
    "redundancy": redundancy.CASES,
    "refrigerant": refrigerant.CASES,
    "seawater": seawater.CASES,
    "supply": supply.CASES,
    "week": week.CASES,
    "weight": weight.CASES,
}
EVERY = {name: case for cases in BY_SUBJECT.values() for name, case in cases.items()}
