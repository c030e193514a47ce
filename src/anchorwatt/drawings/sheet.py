"""The drawing model: a sheet of a given size with lines, areas and texts on it.

Lengths are points of the sheet, x to the right and y downward from its top left corner. What a sheet
looks like in a file is a writer's business (`svg`).
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]

INK = "#1f1f1f"
QUIET_INK = "#555555"  # 7.5 : 1 on white, above WCAG 2.2 AA
GRID = "#e2e2e2"
FRAME = "#8a8a8a"

_SIDES = 40  # of the polygon that stands for a circle


@dataclass(frozen=True)
class Path:
    """A line through points, or an area when it is filled."""

    points: tuple[Point, ...]
    colour: str = ""  # of the line, "" = none
    width: float = 1.0
    dashes: tuple[float, ...] = ()
    fill: str = ""  # "" = none
    fill_opacity: float = 1.0
    key: str = ""  # what it stands for, e.g. a column's key
    told: str = ""  # what is said where a pointer rests on it, "" = nothing
    data: tuple[tuple[str, str], ...] = ()  # further facts for a page that shows it, by name


@dataclass(frozen=True)
class Text:
    """One line of text; `at` is the point on its baseline that `anchor` names."""

    at: Point
    words: str
    size: float
    colour: str = INK
    bold: bool = False
    anchor: Anchor = "start"
    key: str = ""


@dataclass(frozen=True)
class Sheet:
    """A drawing. Items later in the tuple lie above earlier ones."""

    width: float
    height: float
    title: str
    description: str  # for those who cannot see the drawing
    items: tuple[Path | Text, ...]
    data: tuple[tuple[str, str], ...] = ()  # facts of the whole for a page that shows it, by name


def line(start: Point, end: Point, colour: str, width: float = 1.0, dashes: tuple[float, ...] = ()) -> Path:
    """A straight line."""
    return Path((start, end), colour, width, dashes)


def rectangle(left: float, top: float, right: float, bottom: float, fill: str, opacity: float = 1.0) -> Path:
    """A filled rectangle without outline."""
    return Path(((left, top), (right, top), (right, bottom), (left, bottom)), fill=fill, fill_opacity=opacity)


def ring(centre: Point, radius: float) -> tuple[Point, ...]:
    """Corners of a circle, the first one to the right of its centre."""
    turns = (2.0 * math.pi * number / _SIDES for number in range(_SIDES))
    return tuple((centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn)) for turn in turns)
