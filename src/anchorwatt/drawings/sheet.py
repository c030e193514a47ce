"""The drawing model: a sheet of a given size with lines, areas, texts and placed symbols on it.

Lengths are in the sheet's own unit, x to the right and y downward from its top left corner: points for pictures,
millimetres of paper for drawings that a yard builds from. What a sheet looks like in a file is a writer's business
(`svg`, `as_dxf`, `as_pdf`). Texts are in the language that is spoken while they are drawn (`languages`).
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from anchorwatt.languages import said

Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]
Box = tuple[float, float, float, float]
"""Left, top, right, bottom."""

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
    layer: str = ""  # of a CAD file, "" = the sheet's own


@dataclass(frozen=True)
class Arc:
    """Part of a circle from one angle on to another, degrees clockwise from the right as one looks; or all of it."""

    centre: Point
    radius: float
    start: float = 0.0
    end: float = 360.0
    colour: str = INK
    width: float = 1.0
    fill: str = ""  # "" = none; of a whole circle only
    layer: str = ""

    @property
    def whole(self) -> bool:
        return self.end - self.start >= 360.0

    def at(self, degrees: float) -> Point:
        """The point of its circle at an angle."""
        turn = math.radians(degrees)
        return self.centre[0] + self.radius * math.cos(turn), self.centre[1] + self.radius * math.sin(turn)


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
    layer: str = ""

    def __post_init__(self) -> None:
        object.__setattr__(self, "words", said(self.words))


@dataclass(frozen=True)
class Block:
    """A symbol, drawn once and placed often. Its points count from its own origin.

    Blocks of one name are the same: a CAD file holds one of them.
    """

    name: str  # letters, digits and hyphens
    items: tuple[Path | Arc | Text, ...]
    terminals: tuple[tuple[str, Point], ...]  # where conductors end on it, by name
    box: Box  # round all of it

    def terminal(self, name: str) -> Point:
        """Where that terminal lies.

        Raises
        ------
        KeyError
            it has no such terminal.
        """
        return dict(self.terminals)[name]


@dataclass(frozen=True)
class Attribute:
    """A text that belongs to one placed block, which a CAD user edits in place."""

    name: str  # "TAG", "PART", "RATING", ...
    words: str
    at: Point  # from the block's origin
    size: float
    anchor: Anchor = "start"
    bold: bool = False
    colour: str = INK
    shown: bool = True

    def __post_init__(self) -> None:
        object.__setattr__(self, "words", said(self.words))


@dataclass(frozen=True)
class Placed:
    """A block put on the sheet."""

    block: Block
    at: Point
    attributes: tuple[Attribute, ...] = ()
    key: str = ""
    told: str = ""
    data: tuple[tuple[str, str], ...] = ()
    layer: str = ""

    def terminal(self, name: str) -> Point:
        """Where one of its terminals lies on the sheet."""
        x, y = self.block.terminal(name)
        return self.at[0] + x, self.at[1] + y

    @property
    def box(self) -> Box:
        """Round its symbol, on the sheet."""
        left, top, right, bottom = self.block.box
        x, y = self.at
        return x + left, y + top, x + right, y + bottom


Item = Path | Arc | Text | Placed


@dataclass(frozen=True)
class Sheet:
    """A drawing. Items later in the tuple lie above earlier ones."""

    width: float
    height: float
    title: str
    description: str  # for those who cannot see the drawing
    items: tuple[Item, ...]
    data: tuple[tuple[str, str], ...] = ()  # facts of the whole for a page that shows it, by name
    unit: Literal["px", "mm"] = "px"
    name: str = ""  # of the file that it goes to, without its ending


def words_on(sheet: Sheet) -> Iterator[str]:
    """All words that are seen on a sheet."""
    for item in sheet.items:
        if isinstance(item, Text):
            yield item.words
        elif isinstance(item, Placed):
            yield from (one.words for one in item.attributes if one.shown)
            yield from (one.words for one in item.block.items if isinstance(one, Text))


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
