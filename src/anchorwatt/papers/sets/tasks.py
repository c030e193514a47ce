"""The tasks of the job in order, with the hold points between them, and room to sign."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from anchorwatt.design.hold_points import HoldPoint
from anchorwatt.papers.page import Content, Paragraph, Table, Words, section, table
from anchorwatt.sizing.job_order import job_order

if TYPE_CHECKING:
    from collections.abc import Sequence

    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.offer import Labour

Plain = dict[str, Any]

HOLD = (
    "Work stops at each hold point until somebody who is competent for it has looked and signed. The points are "
    "practice, from memory; local codes and licensed or certified people decide which apply and who signs."
)
ALSO = "No task of this design asks for these; where one is met all the same, work stops there too."
ALSO_HEADING = "Also, where it applies"


def in_order(assessment: Assessment) -> list[Content]:
    """Tasks with hold points at their places; points that no task asks for stand by themselves behind them."""
    order = job_order(assessment.offer.priced.labour)
    parts: list[Content] = [Paragraph(HOLD), _listed(order.steps)]
    if order.also:
        parts.append(section(ALSO_HEADING, Paragraph(ALSO), _listed(order.also)))
    return parts


def rows(assessment: Assessment) -> list[Plain]:
    """The same as a mapping a step."""
    order = job_order(assessment.offer.priced.labour)
    steps = [(step, "") for step in order.steps] + [(step, ALSO_HEADING.lower()) for step in order.also]
    return [
        {
            "task": "" if isinstance(step, HoldPoint) else step.name,
            "labour_hours": None if isinstance(step, HoldPoint) else float(step.hours),
            "hold_point": step.stop if isinstance(step, HoldPoint) else "",
            "what_must_hold": step.holds if isinstance(step, HoldPoint) else "",
            "remark": remark,
            "signed": "",
        }
        for step, remark in steps
    ]


def _listed(steps: Sequence[Labour | HoldPoint]) -> Table:
    """A row a step; tasks are numbered, and say what is left alone until a stop further down."""
    found: list[tuple[str | Words, ...]] = []
    number = 0
    for place, step in enumerate(steps):
        if isinstance(step, HoldPoint):
            found.append(("", Words(f"{step.stop}:", "strong").then(f"\n{step.holds}"), "", ""))
        else:
            number += 1
            waits = [point.waits for point in _ahead(steps[place:], step.name) if point.waits]
            told = Words(step.name).then("".join(f"\n{words}" for words in waits), "aside")
            found.append((f"{number}", told, f"{step.hours:g} h", ""))
    return table(
        ("", "task, or stop", "hours", "date, signed"), (">", "<", ">", "<"), found, free=1, shares=(1, 14, 2, 5)
    )


def _ahead(steps: Sequence[Labour | HoldPoint], task: str) -> list[HoldPoint]:
    """Hold points still to come that are about the work of a task."""
    return [step for step in steps if isinstance(step, HoldPoint) and step.looks_at[0] == task]
