"""Tables on a sheet: columns of fixed width, rows of fixed height, each word clipped to its cell."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from anchorwatt.drawings.lettering import clipped
from anchorwatt.drawings.sheet import INK, QUIET_INK, Item, Path, Point, Text
from anchorwatt.drawings.sheets.body import LABELS, LINE, NOTES, SMALL, THIN

ROW = 4.2
"""mm of a row."""

GAP = 4.0
"""mm between two columns of a listing."""

_PAD = 0.9
_BASE = 1.3  # mm of a baseline over the foot of its row


@dataclass(frozen=True)
class Column:
    """One column of a table."""

    head: str
    width: float  # mm
    side: Literal["start", "end"] = "start"


@dataclass(frozen=True)
class Row:
    """One row, with the name of what it stands for."""

    cells: tuple[str, ...]
    key: str = ""


def wide(columns: Sequence[Column]) -> float:
    """mm of a table of those columns."""
    return sum(one.width for one in columns)


def rows_in(height: float) -> int:
    """Rows that a table of that height, mm, has under its head."""
    return max(int((height + 1e-9) / ROW) - 1, 0)


def table(columns: Sequence[Column], rows: Sequence[Row], at: Point) -> Iterator[Item]:
    """A table with its head, its top left corner at a point."""
    left, top = at
    right, bottom = left + wide(columns), top + ROW * (len(rows) + 1)
    yield Path(((left, top), (right, top), (right, bottom), (left, bottom), (left, top)), INK, LINE, layer=NOTES)
    for number in range(1, len(rows) + 1):
        y = top + ROW * number
        yield Path(((left, y), (right, y)), INK if number == 1 else QUIET_INK, THIN, layer=NOTES)
    heads = Row(tuple(column.head for column in columns))
    for number, row in enumerate((heads, *rows)):
        y, x = top + ROW * (number + 1) - _BASE, left
        for column, words in zip(columns, row.cells, strict=True):
            told = clipped(words, SMALL, column.width - 2 * _PAD)
            if told:
                edge = x + _PAD if column.side == "start" else x + column.width - _PAD
                colour = INK if number else QUIET_INK
                yield Text((edge, y), told, SMALL, colour, anchor=column.side, key=row.key, layer=LABELS)
            x += column.width


def columns_of(
    columns: Sequence[Column], rows: Sequence[Row], room: tuple[float, float, float, float]
) -> tuple[list[Item], Sequence[Row]]:
    """As many tables side by side as go into a room, filled one after the other; and the rows that are left."""
    left, top, right, bottom = room
    most, step = rows_in(bottom - top), wide(columns) + GAP
    items: list[Item] = []
    x = left
    while rows and most and x + wide(columns) <= right + 1e-6:
        items += table(columns, rows[:most], (x, top))
        rows, x = rows[most:], x + step
    return items, rows
