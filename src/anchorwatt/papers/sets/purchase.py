"""The purchase list: every line of the bill of materials by kind of part, with its lead time and its order-by date."""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterable
from typing import TYPE_CHECKING, Any

from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Paragraph, Words, section, table

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.offer import Line

Plain = dict[str, Any]

BY_KIND = (
    "By kind of part, what must be ordered first on top: the catalogue names no suppliers, so the yard writes its own "
    "beside each line. To order is the count with spares. Fuses, breakers, bars and lugs are in the wire schedule."
)


def purchase_list(assessment: Assessment) -> list[Content]:
    """A table a kind, with room for the supplier and the order."""
    heads = ("part", "to order", "lead time\ndays", "order by", "supplier, order number")
    parts: list[Content] = [Paragraph(BY_KIND)]
    for kind, lines in _by_kind(assessment).items():
        rows = [(Words(line.name), _ordered(line), _days(line), _date(line), "") for line in lines]
        parts.append(section(kind.replace("_", " ").capitalize(), table(heads, ("<", ">", ">", "<", "<"), rows)))
    return parts


def purchase_rows(assessment: Assessment) -> list[Plain]:
    """The same as a mapping a line."""
    return [
        {
            "kind": kind.replace("_", " "),
            "part": line.name,
            "to_order": float(line.quantity),
            "unit": line.unit,
            "lead_time_days": in_unit(line.lead_time, "d", "time"),
            "order_by": None if line.order_by is None else line.order_by.isoformat(),
            "tags": " ".join(line.tags),
            "supplier": "",
            "order_number": "",
        }
        for kind, lines in _by_kind(assessment).items()
        for line in lines
    ]


def _by_kind(assessment: Assessment) -> dict[str, list[Line]]:
    """Lines by kind; within a kind and among kinds the earliest date to order by comes first, the unknown last."""
    kinds: dict[str, list[Line]] = {}
    for line in _soonest(assessment.offer.priced.lines):
        kinds.setdefault(line.kind, []).append(line)
    return kinds


def _soonest(lines: Iterable[Line]) -> list[Line]:
    return sorted(lines, key=lambda line: line.order_by or datetime.date.max)


def _ordered(line: Line) -> str:
    return f"{line.quantity:f}" if line.unit == "each" else f"{line.quantity:f} {line.unit}"


def _days(line: Line) -> str:
    return "—" if math.isnan(line.lead_time) else f"{in_unit(line.lead_time, 'd', 'time'):g}"


def _date(line: Line) -> str:
    return "—" if line.order_by is None else line.order_by.isoformat()
