"""Words and tables in the room that a schematic leaves on its sheets: right of it, or below it where it is wide."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass

from anchorwatt.drawings.lettering import clipped, text_width, wrapped
from anchorwatt.drawings.sheet import Arc, Box, Item, Path, Placed, Text
from anchorwatt.drawings.sheets.body import LABELS, SMALL, TEXT, Body, Reference, of_several
from anchorwatt.drawings.sheets.listing import Column, Row, rows_in, table, wide
from anchorwatt.drawings.sheets.paper import Paper

LEADING = 3.6
"""mm from line to line."""

WIDEST = 150.0
"""mm of a line of words: longer ones are hard to read."""

_GAP = 6.0  # mm between the schematic and what is beside it, and between two of those
_HEADING = 5.0  # mm of a table's heading
_PLACE = "88/M88"  # the widest that a reference is resolved to


@dataclass(frozen=True)
class Words:
    """A paragraph."""

    words: str


@dataclass(frozen=True)
class Listed:
    """A table with its heading."""

    heading: str
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]


Block = Words | Listed


def beside(bodies: Sequence[Body], paper: Paper, blocks: Sequence[Block]) -> tuple[Body, ...]:
    """Put words and tables beside the schematic, one below the other, on as many sheets as they need."""
    wanted = max((wide(one.columns) for one in blocks if isinstance(one, Listed)), default=0.0)
    left: list[Block] = list(blocks)
    made = []
    for body in bodies:
        items, left = _filled(left, _room(body, paper, wanted))
        made.append(dataclasses.replace(body, items=(*body.items, *items)))
    first, number = bodies[0], len(bodies)
    while left:
        number += 1
        items, left = _filled(left, paper.body)
        name, title = of_several(first.name, first.title, number)
        made.append(dataclasses.replace(first, name=name, title=title, items=tuple(items), anchors=()))
    return tuple(made)


def _room(body: Body, paper: Paper, wanted: float) -> Box:
    """Right of all that stands on the sheet where that is wide enough, else below it."""
    left, top, right, bottom = paper.body
    boxes = [_box(item) for item in body.items]
    over = max((box[2] for box in boxes), default=left - _GAP) + _GAP
    if right - over >= wanted:
        return over, top, right, bottom
    return left, max((box[3] for box in boxes), default=top - _GAP) + _GAP, right, bottom


def _box(item: Item | Reference) -> Box:
    if isinstance(item, Placed):
        return item.box
    if isinstance(item, Arc):
        (x, y), radius = item.centre, item.radius
        return x - radius, y - radius, x + radius, y + radius
    if isinstance(item, Path):
        xs, ys = zip(*item.points, strict=True)
        return min(xs), min(ys), max(xs), max(ys)
    words = item.words if isinstance(item, Text) else item.before + _PLACE
    width = text_width(words, item.size)
    start = item.at[0] - width * {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
    return start, item.at[1] - item.size, start + width, item.at[1] + 0.3 * item.size


def _filled(blocks: Sequence[Block], room: Box) -> tuple[list[Item], list[Block]]:
    """What of the blocks goes into a room, and what is left."""
    left, top, right, bottom = room
    items: list[Item] = []
    rest = list(blocks)
    y = top
    while rest:
        block = rest.pop(0)
        if isinstance(block, Words):
            lines = wrapped(block.words, SMALL, min(right - left, WIDEST))
            fit = max(int((bottom - y) / LEADING), 0)
            for number, words in enumerate(lines[:fit]):
                items.append(Text((left, y + (number + 0.8) * LEADING), words, SMALL, layer=LABELS))
            y += (len(lines[:fit]) + 0.5) * LEADING
            if lines[fit:]:
                return items, [Words(" ".join(lines[fit:])), *rest]
            continue
        fit = rows_in(bottom - y - _HEADING)
        if fit < 1:
            return items, [block, *rest]
        heading = clipped(block.heading, TEXT, right - left, bold=True)
        items.append(Text((left, y + TEXT), heading, TEXT, bold=True, layer=LABELS))
        drawn = list(table(block.columns, block.rows[:fit], (left, y + _HEADING)))
        items += drawn
        y = max(_box(item)[3] for item in drawn) + _GAP
        if block.rows[fit:]:
            return items, [dataclasses.replace(block, rows=block.rows[fit:]), *rest]
    return items, rest
