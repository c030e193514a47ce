"""Rules about weight and how the boat floats with it.

Heel, trim and stability are told from the places of the parts. While most of the mass has no place they are told
as "cannot tell": a guessed place is no evidence.
"""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule

HIGHEST_HEEL = math.radians(1.0)
"""rad that the installation may give; from half of it on the verdict is near. From memory: 0.5 to 1°."""
HIGHEST_TRIM = 0.005
"""Share of the waterline: 6.5 cm of 13 m, an angle of 0.3°."""
GREATEST_LOSS = 0.05
"""Share of the metacentric height that may be lost."""
FEW = 0.5
"""Share of the mass whose place somebody has said, below which nothing is told."""
MOST = 0.8
"""Share from which it is enough to go on with."""

PLACES = "no place is given for {share:.0%} of the mass: name them under places: in the file"
CENTRED = (
    "Move a part to the other side, as `anchorwatt weight` says; the heaviest part needs the smallest move. Type the "
    "metacentric height from an inclining test if you have one."
)


@rule(
    "parts-have-a-place",
    "For how much of the mass has somebody said where it stands?",
    "share",
    "common practice, no source",
    "Name the places under places: in the file, by tag or by what a part is.",
)
def parts_have_a_place(evidence: Evidence) -> Measured | None:
    if not evidence.specification.items:
        return None
    found = evidence.weight
    if found.placed == 0.0:
        return Measured(0.0, MOST, Verdict.CANNOT_TELL, "no part has a place under places: in the file")
    return at_least(found.placed, MOST)


@rule(
    "heel-from-weight",
    "By how much does the installation heel the boat?",
    "angle",
    "from memory: half a degree is seen, one degree is felt",
    CENTRED,
)
def heel_from_weight(evidence: Evidence) -> Measured | None:
    if not evidence.specification.items:
        return None
    return _told(evidence, abs(evidence.weight.floats.heel), HIGHEST_HEEL, near=0.5)


@rule(
    "trim-from-weight",
    "By how much does the installation change the trim, bow and stern together?",
    "length",
    "common practice, no source: half a hundredth of the waterline",
    "Move the heaviest parts towards the centre of flotation, a little aft of amidships.",
)
def trim_from_weight(evidence: Evidence) -> Measured | None:
    if not evidence.specification.items:
        return None
    limit = HIGHEST_TRIM * evidence.specification.waterline
    return _told(evidence, abs(evidence.weight.floats.trim), limit, near=0.25)


@rule(
    "stability-height-kept",
    "What share of its metacentric height does the installation leave the boat?",
    "share",
    "common practice, no source",
    "Move the heaviest parts lower: bank and transformer below the waterline, near the middle.",
)
def stability_height_kept(evidence: Evidence) -> Measured | None:
    if not evidence.specification.items:
        return None
    before, after = evidence.specification.metacentric_height, evidence.weight.floats.metacentric_height
    found = at_least(after / before, 1.0 - GREATEST_LOSS, near=0.02)
    return _unless_unplaced(evidence, found)


def _told(evidence: Evidence, value: float, limit: float, near: float) -> Measured:
    found = at_most(value, limit, near)
    if math.isnan(value):  # too far over for the formula, or no stability left
        found = Measured(value, limit, Verdict.FAILS, "beyond 10°, where the formula ends")
    return _unless_unplaced(evidence, found)


def _unless_unplaced(evidence: Evidence, found: Measured) -> Measured:
    weight = evidence.weight
    note = PLACES.format(share=1.0 - weight.placed)
    if weight.placed < FEW:
        return replace(found, verdict=Verdict.CANNOT_TELL, note=note)
    return replace(found, note=note) if weight.placed < MOST and not found.note else found
