"""Checks: one small function a rule, all in one registry, all returning the same record."""

from __future__ import annotations

from anchorwatt.checks import (
    ac_safety,
    ac_side,
    air,
    bank,
    brief,
    charging,
    comfort,
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
    refrigerant,
    seawater,
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
    fit,
    offer,
    conductors,
    protection,
    ac_safety,
    lithium,
)
"""The modules whose rules are registered by being imported here."""


def check(evidence: Evidence) -> tuple[Finding, ...]:
    """Apply every rule that the design has something to say to."""
    findings = [rule.find(evidence) for rule in rules()]
    return tuple(finding for finding in findings if finding is not None)


__all__ = ["SUBJECTS", "Evidence", "Finding", "Rule", "Verdict", "check", "rules"]
