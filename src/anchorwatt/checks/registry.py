"""Rules and the one registry that holds them.

A rule is a function of the evidence that returns value, limit and verdict; the decorator carries its
identifier, question, source and remedy. Registering an identifier twice is an error.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from anchorwatt.checks.finding import Finding, Verdict
from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation


@dataclass(frozen=True)
class Evidence:
    """What rules may look at."""

    specification: Specification
    simulation: Simulation


@dataclass(frozen=True)
class Measured:
    """What a rule found, before it is told."""

    value: float
    limit: float
    verdict: Verdict


Measure = Callable[[Evidence], Measured | None]
"""A rule's own function; None when the design has nothing that the rule is about."""


@dataclass(frozen=True)
class Rule:
    id: str
    question: str
    dimension: str
    source: str
    remedy: str
    measure: Measure

    def find(self, evidence: Evidence) -> Finding | None:
        """Apply the rule; None when the design has nothing that it is about."""
        found = self.measure(evidence)
        if found is None:
            return None
        return Finding(
            self.id,
            self.question,
            found.value,
            found.limit,
            self.dimension,
            found.verdict,
            self.source,
            self.remedy,
        )


_rules: dict[str, Rule] = {}


def rule(
    id: str,  # noqa: A002 - the field's own word
    question: str,
    dimension: str,
    source: str,
    remedy: str,
) -> Callable[[Measure], Measure]:
    """Register a rule."""

    def register(measure: Measure) -> Measure:
        if id in _rules:
            raise ValueError(f"rule {id} is registered twice")
        _rules[id] = Rule(id, question, dimension, source, remedy, measure)
        return measure

    return register


def rules() -> tuple[Rule, ...]:
    """All rules, in the order in which they were registered."""
    return tuple(_rules.values())


def at_most(value: float, limit: float, near: float = 0.1) -> Measured:
    """Holds when value ≤ limit; near within the share `near` below it; cannot tell when either is nan."""
    if math.isnan(value) or math.isnan(limit):
        return Measured(value, limit, Verdict.CANNOT_TELL)
    if value > limit:
        return Measured(value, limit, Verdict.FAILS)
    return Measured(value, limit, Verdict.NEAR if value > limit - near * abs(limit) else Verdict.HOLDS)


def at_least(value: float, limit: float, near: float = 0.1) -> Measured:
    """Holds when value ≥ limit; near within the share `near` above it; cannot tell when either is nan."""
    if math.isnan(value) or math.isnan(limit):
        return Measured(value, limit, Verdict.CANNOT_TELL)
    if value < limit:
        return Measured(value, limit, Verdict.FAILS)
    return Measured(value, limit, Verdict.NEAR if value < limit + near * abs(limit) else Verdict.HOLDS)
