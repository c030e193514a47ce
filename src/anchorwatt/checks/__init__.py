"""Checks: one small function a rule, all in one registry, all returning the same record."""

from __future__ import annotations

from collections.abc import Iterator

from anchorwatt.checks import (
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
from anchorwatt.checks.finding import Finding, Verdict
from anchorwatt.checks.registry import Evidence, Rule, rules

SUBJECTS = (
    brief,
    cooling,
    power,
    ac_side,
    supply,
    bank,
    charging,
    ducts,
    refrigerant,
    seawater,
    air,
    comfort,
    condensate,
    week,
    weight,
    faults,
    redundancy,
    fit,
    compartments,
    offer,
    conductors,
    protection,
    ac_safety,
    lithium,
)
"""The modules whose rules are registered by being imported here."""


def check(evidence: Evidence) -> tuple[Finding, ...]:
    """Apply every rule that the design has something to say to."""
    return tuple(finding for finding in found_in_turn(evidence) if finding is not None)


def found_in_turn(evidence: Evidence) -> Iterator[Finding | None]:
    """What each rule finds, one after the other; None where the design has nothing to say to it."""
    for rule in rules():
        yield rule.find(evidence)


__all__ = ["SUBJECTS", "Evidence", "Finding", "Rule", "Verdict", "check", "found_in_turn", "rules"]
