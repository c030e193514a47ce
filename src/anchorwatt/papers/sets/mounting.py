"""Room that each part asks for where it is mounted: its size, what is kept free round it, air, and the way to it."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from anchorwatt.papers.page import Content, Paragraph, Words, section, table
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, convert

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.design.specification import Item

CLEAR = (
    "Clear: kept free on every side but the one that it stands on. Up to: air round it up to which it gives its "
    "rating. A dash is what the catalogue does not know; its figures are invented, so the maker's sheet decides, and "
    "a part is measured before anything is cut."
)


def clearances(assessment: Assessment, system: System) -> Content:
    """A row a part of the design."""
    spaces = assessment.specification.spaces
    unit = "mm" if system == "si" else "in"
    heads = (
        "",
        "part",
        f"size, {unit}",
        f"clear\n{unit}",
        "worked\non from",
        f"up to\n{heading_unit('temperature', system)}",
        "stands in",
    )
    rows = [
        (
            Words(item.tag, "strong"),
            (f"{item.count} × " if item.count > 1 else "")
            + (item.name or item.key)
            + (", upright" if item.upright else ""),
            _size(item, unit),
            _length(item.clearance, unit),
            item.service or "—",
            reading(item.highest_air, "temperature", system),
            spaces[item.space].name if item.space >= 0 else "—",
        )
        for item in assessment.specification.items
    ]
    return section(
        "What each part asks for", table(heads, ("<", "<", ">", ">", "<", ">", "<"), rows, free=1), Paragraph(CLEAR)
    )


def _size(item: Item, unit: str) -> str:
    return "—" if any(map(math.isnan, item.size)) else " × ".join(_length(side, unit) for side in item.size)


def _length(value: float, unit: str) -> str:
    return "—" if math.isnan(value) else f"{convert(value, unit, 'length'):.{0 if unit == 'mm' else 1}f}"
