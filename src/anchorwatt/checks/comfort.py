"""Rules about how people feel."""

from __future__ import annotations

from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.sizing.comfort import WIDEST, worst_votes
from anchorwatt.sizing.occupancy import slept_in


@rule(
    "comfort-asleep",
    "How far from neither warm nor cool do people asleep feel in the worst hour after the first (below 0: cool)?",
    "ratio",
    "ISO 7730, annex A, category C: predicted mean vote within 0.7 either way, from memory; 0.7 met asleep lies below "
    "the 0.8 met for which that standard holds, so that the vote is a guide",
    "Too cool: a higher set point, or a thicker cover in the plan's people. Too warm: a lower set point, a thinner "
    "cover, a larger air handler, or less sun and heat stored in that cabin.",
)
def comfort_asleep(evidence: Evidence) -> Measured | None:
    votes = worst_votes(evidence.comfort, slept_in(evidence.specification, evidence.simulation.night))
    if not votes:
        return None
    worst = max(votes.values(), key=abs)
    return at_most(worst, WIDEST) if worst >= 0.0 else at_least(worst, -WIDEST)
