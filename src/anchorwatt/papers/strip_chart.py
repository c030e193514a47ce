"""The state of charge through a week, drawn with characters."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from anchorwatt.assessment.week import StripColumn

WIDTH = 70
"""Characters for all days, beside the scale."""

LEVELS = 10
_MARKS = {"": " ", "at anchor": "a", "under way": "w"}


def per_day(days: int) -> int:
    """Columns of one day."""
    return WIDTH // days


def strip_chart(columns: Sequence[StripColumn], days: int, reserve: float) -> str:
    """Bars of ten levels, the reserve as a line, engines and days below.

    Parameters
    ----------
    columns : `per_day(days)` of them a day
    days : how many
    reserve : state of charge that is drawn as a line
    """
    lines = []
    for level in range(LEVELS, 0, -1):
        floor = (level - 1) / LEVELS
        drawn = "".join(_cell(column.charge, floor, reserve) for column in columns)
        scale = f"{100 * level // LEVELS:3d} %" if level % 2 == 0 else "     "
        lines.append(f"{scale} {drawn}")
    marks = "".join(_MARKS[column.engine] for column in columns)
    lines.append(f"      {marks}")
    width = per_day(days)
    lines.append("      " + "".join(f"|{number + 1}".ljust(width) for number in range(days)))
    return "\n".join(line.rstrip() for line in lines)


def _cell(charge: float, floor: float, reserve: float) -> str:
    """One level of one column."""
    step = 1.0 / LEVELS
    if charge >= floor + step - 1e-9:
        return "█"
    if charge >= floor + 0.5 * step:
        return "▄"
    return "_" if floor - 1e-9 <= reserve < floor + step - 1e-9 and reserve > 0.0 else " "
