"""Rules about what the loss of any single part leaves.

How long a bank with a string lost lasts, and that the engines' battery can stand in for it, are told by the rules about
faults and lithium banks. Of cooling there is no rule: a design has one shared plant, whose loss always stops it; the
table of losses says so.
"""

from __future__ import annotations

from collections.abc import Sequence

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, rule
from anchorwatt.sizing.redundancy import Loss

PRACTICE = "common practice, no source"


@rule(
    "direct-current-after-any-loss",
    "How many single parts take the supply of lights, navigation and bilge with them?",
    "count",
    PRACTICE,
    "A bank of two strings or more, each with its own management; or a battery of their own for the loads that keep "
    "the boat safe.",
)
def direct_current_after_any_loss(evidence: Evidence) -> Measured:
    found = evidence.redundancy.losses
    dark = [loss for loss in found if loss.direct == "nothing"]
    if dark:
        return Measured(float(len(dark)), 0.0, Verdict.FAILS, _named(dark))
    spare = [loss for loss in found if loss.direct == "the engines' battery"]
    if spare:
        note = f"{_named(spare)}: then only what is led to the engines' battery too"
        return Measured(0.0, 0.0, Verdict.NEAR, note)
    return Measured(0.0, 0.0, Verdict.HOLDS)


@rule(
    "charging-after-any-loss",
    "How much charging away from the dock does the worst loss of a single part leave?",
    "power",
    f"{PRACTICE}; near where only the dock is left",
    "A second alternator, better on another engine; solar panels; a charger for the dock.",
)
def charging_after_any_loss(evidence: Evidence) -> Measured:
    found = evidence.redundancy.losses
    least = min(loss.at_anchor for loss in found)
    nothing = [loss for loss in found if loss.at_anchor <= 0.0 and loss.ashore <= 0.0]
    only_ashore = [loss for loss in found if loss.at_anchor <= 0.0 < loss.ashore]
    if nothing:
        return Measured(least, 0.0, Verdict.FAILS, f"none at all: {_named(nothing)}")
    if only_ashore:
        return Measured(least, 0.0, Verdict.NEAR, f"only at the dock: {_named(only_ashore)}")
    return Measured(least, 0.0, Verdict.HOLDS, _named([loss for loss in found if loss.at_anchor == least]))


def _named(found: Sequence[Loss]) -> str:
    return ", ".join(loss.part for loss in found)
