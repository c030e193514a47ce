"""Rules about the week ahead."""

from __future__ import annotations

import math

from anchorwatt.checks.registry import Evidence, Measured, at_least, rule
from anchorwatt.simulation.forcing import DAY

BRIEF = "the brief, and the week of the design file"


@rule(
    "week-above-reserve",
    "Does the bank stay above its reserve through the week?",
    "share",
    BRIEF,
    "More engine on the day before, later in the day; fewer cabins cooled; a larger bank.",
)
def week_above_reserve(evidence: Evidence) -> Measured:
    return at_least(evidence.week.lowest, evidence.specification.brief.reserve)


@rule(
    "week-keeps-going",
    "Does the last evening of the week find the bank as full as the first ones?",
    "share",
    BRIEF,
    "More engine, more sun or a day on shore power: each day takes more than is put back.",
)
def week_keeps_going(evidence: Evidence) -> Measured:
    return at_least(evidence.week.evenings[-1], evidence.week.evening_wanted, near=0.0)


@rule(
    "week-supplied",
    "How long does every load have its supply, of the whole week?",
    "time",
    BRIEF,
    "See with “anchorwatt week” why it is lost: a larger inverter, loads apart from each other, or more charge.",
)
def week_supplied(evidence: Evidence) -> Measured:
    length = len(evidence.week.days) * DAY
    lost = float(evidence.week.run.summary.lost_at[0])
    return at_least(length if math.isnan(lost) else lost, length, near=0.0)
