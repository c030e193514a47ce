"""The purchase list: every line of the bill of materials by supplier, with its lead time and its order-by date."""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Paragraph, Words, section, table
from anchorwatt.papers.price import kind_told, slack_told, time_told
from anchorwatt.papers.sets.chapters import day_of

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.offer import Line

Plain = dict[str, Any]

BY_SUPPLIER = (
    "By supplier, what must be ordered first on top. To order is the count with spares. Fuses, breakers, bars and lugs "
    "are in the wire schedule."
)
NOBODY = "No supplier named"
WRITE = (
    "The generic catalogue names no suppliers; the yard's own catalogue files may (supplier:). Write beside each line "
    "who it is ordered from."
)


def purchase_list(assessment: Assessment) -> list[Content]:
    """A table a supplier, with room for the order; what nobody is named for comes last, with room for who sells it."""
    story = assessment.offer
    told = f"{time_told(story, day_of(assessment))} {slack_told(story)}"
    parts: list[Content] = [Paragraph(BY_SUPPLIER), Paragraph(told)]
    for supplier, lines in _by_supplier(story.priced.lines).items():
        note = "order number" if supplier else "supplier, order number"
        heads = ("part", "which is", "to order", "lead time\ndays", "order by", note)
        rows = [
            (Words(line.name), kind_told(line.kind), _ordered(line), _days(line), _date(line), "") for line in lines
        ]
        listed = table(heads, ("<", "<", ">", ">", "<", "<"), rows, shares=(5, 4, 2, 2, 3, 5))
        parts.append(section(supplier, listed) if supplier else section(NOBODY, Paragraph(WRITE), listed))
    return parts


def purchase_rows(assessment: Assessment) -> list[Plain]:
    """The same as a mapping a line."""
    return [
        {
            "supplier": supplier,
            "kind": kind_told(line.kind),
            "part": line.name,
            "to_order": float(line.quantity),
            "unit": line.unit,
            "lead_time_days": in_unit(line.lead_time, "d", "time"),
            "order_by": None if line.order_by is None else line.order_by.isoformat(),
            "tags": " ".join(line.tags),
            "order_number": "",
        }
        for supplier, lines in _by_supplier(assessment.offer.priced.lines).items()
        for line in lines
    ]


def _by_supplier(lines: Iterable[Line]) -> dict[str, list[Line]]:
    """Lines by supplier, that of nobody last; in each and among them the earliest date first, the unknown last."""
    found: dict[str, list[Line]] = {}
    for line in sorted(lines, key=lambda line: line.order_by or datetime.date.max):
        found.setdefault(line.supplier, []).append(line)
    if "" in found:
        found[""] = found.pop("")
    return found


def _ordered(line: Line) -> str:
    return f"{line.quantity:f}" if line.unit == "each" else f"{line.quantity:f} {line.unit}"


def _days(line: Line) -> str:
    return "—" if math.isnan(line.lead_time) else f"{in_unit(line.lead_time, 'd', 'time'):g}"


def _date(line: Line) -> str:
    return "—" if line.order_by is None else line.order_by.isoformat()
