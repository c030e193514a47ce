"""Numbered balloons in rows over and under a view, led to their parts so that no two leaders cross.

Each part gets the slot that makes the sum of all leaders shortest: of two straight leaders that cross, exchanging the
slots would make both together shorter, so none cross. Leaders end at the inner edge of a row, so none runs through a
balloon.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from anchorwatt.drawings.sheet import INK, QUIET_INK, Arc, Attribute, Block, Path, Placed, Point, ring
from anchorwatt.drawings.sheets.body import LABELS, LINE, SMALL, THIN

RADIUS = 3.2
"""mm of a balloon."""

PITCH = 2 * RADIUS + 0.6
CLEARANCE = 5.0
"""mm between the view and a row of balloons."""

BAND = CLEARANCE + 2 * RADIUS
"""mm of height that a row takes."""

_DOT = 0.45

BALLOON = Block(
    "balloon",
    (Arc((0.0, 0.0), RADIUS, colour=INK, width=LINE, layer=LABELS),),
    (),
    (-RADIUS, -RADIUS, RADIUS, RADIUS),
)


@dataclass(frozen=True)
class Mark:
    """What a balloon points at."""

    number: str
    key: str
    told: str
    at: Point


@dataclass(frozen=True)
class Rows:
    """Where balloons may stand: slots along two lines."""

    left: float
    right: float
    over: float  # y of the lower edge of the upper row
    under: float  # y of the upper edge of the lower row

    @property
    def count(self) -> int:
        """Slots in both rows."""
        return 2 * self._across

    @property
    def _across(self) -> int:
        return max(int((self.right - self.left) / PITCH + 1e-9), 1)

    def slots(self) -> list[tuple[Point, float]]:
        """Where a leader ends, and which way its balloon's middle lies from there."""
        across = [self.left + (number + 0.5) * PITCH for number in range(self._across)]
        return [*(((x, self.over), -RADIUS) for x in across), *(((x, self.under), RADIUS) for x in across)]


def balloons(marks: Sequence[Mark], rows: Rows) -> tuple[list[Path], list[Placed]]:
    """Leaders and balloons, a mark each.

    Raises
    ------
    ValueError
        there are more marks than slots.
    """
    slots = rows.slots()
    if len(marks) > len(slots):
        raise ValueError(f"{len(marks)} balloons, room for {len(slots)}")
    if not marks:
        return [], []
    # Loaded where it is used: most of the program's runs draw no balloon.
    from scipy.optimize import linear_sum_assignment

    far = [[math.dist(mark.at, slot) for slot, _ in slots] for mark in marks]
    _, chosen = linear_sum_assignment(far)
    leaders: list[Path] = []
    placed: list[Placed] = []
    for mark, number in zip(marks, chosen, strict=True):
        (x, y), way = slots[number]
        data = (("leader", mark.number),)
        leaders.append(Path((mark.at, (x, y)), QUIET_INK, THIN, key=mark.key, data=data, layer=LABELS))
        leaders.append(Path(ring(mark.at, _DOT), fill=QUIET_INK, key=mark.key, layer=LABELS))
        words = Attribute("ITEM", mark.number, (0.0, 0.36 * SMALL), SMALL, "middle")
        placed.append(Placed(BALLOON, (x, y + way), (words,), mark.key, mark.told, layer=LABELS))
    return leaders, placed
