"""Rules about parts in their spaces: the opening, room, hands, and the heat that they give off there.

They speak of the parts that the file puts into a space; a design that puts none anywhere hears nothing.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, rule
from anchorwatt.sizing.fit import PartFit

TIGHT = 0.01
"""m to spare in an opening below which it is near: a rough edge, a strap, a hand."""
WARM = 3.0
"""K to spare below which it is near."""
SIZELESS = "no size of {}"
PRACTICE = "common practice, no source"


@rule(
    "goes-through-opening",
    "How much does the tightest opening leave a part that goes through it?",
    "length",
    "the parts' own sizes; level, not aslant",
    "A wider door or hatch, a smaller part, or another space: `anchorwatt fit` names those that would take it.",
)
def goes_through_opening(evidence: Evidence) -> Measured | None:
    parts = evidence.fit.parts
    known = [part for part in parts if part.sized]
    if not parts:
        return None
    if not known:
        return Measured(math.nan, 0.0, Verdict.CANNOT_TELL, SIZELESS.format(_names(parts)))
    tightest = min(known, key=lambda part: part.through)
    stuck = [part for part in known if part.through < 0.0]
    if stuck:
        return Measured(tightest.through, 0.0, Verdict.FAILS, _names(stuck))
    return _if_known(parts, tightest.through, Verdict.NEAR if tightest.through < TIGHT else Verdict.HOLDS)


@rule(
    "fits-in-space",
    "How many parts find no room beside their neighbours, clearances kept?",
    "count",
    "the parts' own sizes and clearances; for three boxes and more a search that may miss an arrangement",
    "A larger space, fewer parts in it, or another space: `anchorwatt fit` names those that would take them.",
)
def fits_in_space(evidence: Evidence) -> Measured | None:
    parts = evidence.fit.parts
    return _counted(parts, [part for part in parts if part.sized and not part.together])


@rule(
    "serviceable",
    "How many parts that have room cannot be worked on where they stand?",
    "count",
    f"{PRACTICE}: an arm's length from the opening, a hand's room before the side that is worked on",
    "Turn the service side to the opening, move what stands before it, or widen the opening for a person.",
)
def serviceable(evidence: Evidence) -> Measured | None:
    parts = evidence.fit.parts
    return _counted(parts, [part for part in parts if part.together and not part.serviced])


@rule(
    "space-cool-enough",
    "How warm is the air round the part that has the least to spare there?",
    "temperature",
    "heat balance of the space, and the part's own rating; near where it derates and still gives what is asked",
    "More air through the space, a cooler compartment, or another space: `anchorwatt fit` says how much air.",
)
def space_cool_enough(evidence: Evidence) -> Measured | None:
    rated = [part for part in evidence.fit.parts if not math.isnan(part.limit)]
    if not rated:
        return None
    known = [part for part in rated if not math.isnan(part.air)]
    if not known:
        words = "the file does not say in which compartment the space of {} is"
        return Measured(math.nan, rated[0].limit, Verdict.CANNOT_TELL, words.format(_names(rated)))
    hot = [part for part in known if not part.cool_enough]
    worst = min(hot or known, key=lambda part: part.spare)
    if hot:
        return Measured(worst.air, worst.limit, Verdict.FAILS, _names(hot))
    verdict = Verdict.HOLDS if worst.spare >= WARM else Verdict.NEAR
    note = ""
    if worst.spare < 0.0:
        warm = [part for part in known if part.spare < 0.0]
        note = f"{_names(warm)}: at least {min(part.kept for part in warm):.0%} of the rating is left, which is enough"
    return Measured(worst.air, worst.limit, verdict, note)


def _counted(parts: Sequence[PartFit], failing: Sequence[PartFit]) -> Measured | None:
    if not parts:
        return None
    if failing:
        return Measured(float(len(failing)), 0.0, Verdict.FAILS, _names(failing))
    return _if_known(parts, 0.0, Verdict.HOLDS)


def _if_known(parts: Sequence[PartFit], value: float, verdict: Verdict) -> Measured:
    """What has no size cannot be said to fit."""
    unknown = [part for part in parts if not part.sized]
    if unknown:
        return Measured(value, 0.0, Verdict.CANNOT_TELL, SIZELESS.format(_names(unknown)))
    return Measured(value, 0.0, verdict)


def _names(parts: Sequence[PartFit]) -> str:
    return ", ".join(f"{part.item.tag} {part.item.name}" for part in parts)
