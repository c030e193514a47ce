"""Rules about the air of compartments, where electrical parts stand in no locker of their own.

What stands in a space is held against that space's air by the rules about fit.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, rule
from anchorwatt.sizing.fit import LoosePart

WARM = 3.0
"""K to spare below which it is near."""

JUDGED_BY_THEIR_WORK = ("inverter", "dc_dc", "battery_module")
"""Kinds of which other rules say whether, in their compartment's air, they give what is asked of them."""


@rule(
    "compartment-cool-enough",
    "How warm is the compartment of the part that has the least to spare there, of those that stand in no locker?",
    "temperature",
    "heat balance of the compartment with engine and parts in it, in its hottest hour; and the part's own rating",
    "A blower or more of it, a cooler compartment, a part that bears more, or a locker with air of its own.",
)
def compartment_cool_enough(evidence: Evidence) -> Measured | None:
    found = evidence.fit
    rated = [part for part in found.loose_parts if part.item.kind not in JUDGED_BY_THEIR_WORK]
    known = [part for part in rated if part.hour is not None]
    unknown = [part for part in rated if part.hour is None]
    if not rated:
        return None
    words = f"the file does not say in which compartment {_named(unknown)} is"
    if not known:
        return Measured(math.nan, rated[0].item.highest_air, Verdict.CANNOT_TELL, words)
    hot = [part for part in known if not part.cool_enough]
    worst = min(hot or known, key=lambda part: part.spare)
    limit = worst.item.highest_air
    air = limit - worst.spare
    if hot:
        return Measured(air, limit, Verdict.FAILS, _named(hot))
    if unknown:
        return Measured(air, limit, Verdict.CANNOT_TELL, words)
    return Measured(air, limit, Verdict.HOLDS if worst.spare >= WARM else Verdict.NEAR, _named([worst]))


def _named(parts: Sequence[LoosePart]) -> str:
    return ", ".join(f"{part.item.tag} {part.item.name}" for part in parts)
