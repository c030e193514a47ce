"""Free room on a sheet: where words can stand without lying over a line, a mark or other words."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from anchorwatt.drawings.lettering import text_width
from anchorwatt.drawings.sheet import QUIET_INK, Anchor, Box, Path, Point, Text
from anchorwatt.drawings.sheets.body import LABELS, SMALL, THIN

FloatArray = NDArray[np.float64]

_UP, _DOWN = 0.75, 0.24  # of a letter's size over and under its baseline
_LEADING = 1.2
_CLEAR = 0.5  # mm kept round words
_TURNS = tuple(math.radians(turn) for turn in (0.0, 180.0, 315.0, 225.0, 45.0, 135.0, 270.0, 90.0))
_FINE = tuple(math.radians(15.0 * number) for number in range(24))
_OFF = (1.0, 2.5, 4.0, 6.0, 8.5, 12.0, 16.0, 21.0, 27.0, 34.0, 42.0)
_TRIED = 9  # places along each side of a box that words are tried at
_LED = 2.5  # mm from the mark beyond which words are led to it
_NEAR = 12.0  # mm up to which words are put without trying finer turns


def cuts(start: Point, end: Point, box: Box) -> bool:
    """Whether a line between two points touches a box."""
    if (start[0] < box[0] and end[0] < box[0]) or (start[0] > box[2] and end[0] > box[2]):
        return False
    if (start[1] < box[1] and end[1] < box[1]) or (start[1] > box[3] and end[1] > box[3]):
        return False
    low, high = 0.0, 1.0
    for axis in (0, 1):
        first, way = start[axis], end[axis] - start[axis]
        near, far = box[axis], box[axis + 2]
        if abs(way) < 1e-12:
            if not near <= first <= far:
                return False
            continue
        one, other = sorted(((near - first) / way, (far - first) / way))
        low, high = max(low, one), min(high, other)
        if low > high:
            return False
    return True


def cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether the lines a to b and c to d cross, ends left out."""

    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < -1e-9 and side(c, d, a) * side(c, d, b) < -1e-9


class Lines:
    """Straight lines, many of them, of which those near a box are found fast."""

    def __init__(self) -> None:
        self._ends: list[tuple[Point, Point]] = []
        self._boxes: FloatArray = np.empty((0, 4))

    def add(self, points: Sequence[Point]) -> None:
        """A line through points."""
        self._ends += pairwise(points)

    def touch(self, box: Box) -> bool:
        """Whether one of them touches a box."""
        return any(cuts(*one, box) for one in self._near(box))

    def crossed(self, start: Point, end: Point) -> bool:
        """Whether a line from start to end crosses one of them, ends left out."""
        (ax, ay), (bx, by) = start, end
        return any(cross(start, end, *one) for one in self._near((min(ax, bx), min(ay, by), max(ax, bx), max(ay, by))))

    def _near(self, box: Box) -> Iterator[tuple[Point, Point]]:
        if len(self._boxes) != len(self._ends):
            ends = np.array(self._ends)
            self._boxes = np.hstack([ends.min(axis=1), ends.max(axis=1)])
        if not self._ends:
            return
        left, top, right, bottom = box
        low_x, low_y, high_x, high_y = self._boxes.T
        near = (high_x >= left) & (low_x <= right) & (high_y >= top) & (low_y <= bottom)
        for number in np.flatnonzero(near):
            yield self._ends[number]


@dataclass
class Room:
    """What is in the way on a part of a sheet; it grows with each thing put there."""

    frame: Box
    boxes: list[Box] = field(default_factory=list)
    lines: Lines = field(default_factory=Lines)
    faint: Lines = field(default_factory=Lines)  # kept off where there is room elsewhere
    _edges: FloatArray = field(default_factory=lambda: np.empty((0, 4)), repr=False)

    def run(self, points: Sequence[Point], faint: bool = False) -> None:
        """Keep words off a line through points."""
        (self.faint if faint else self.lines).add(points)

    def free(self, box: Box, faint: bool) -> bool:
        """Whether a box lies in the frame, over nothing; `faint`: nor over a faint line."""
        left, top, right, bottom = self.frame
        if box[0] < left or box[1] < top or box[2] > right or box[3] > bottom:
            return False
        if any(self._near(box)) or self.lines.touch(box):
            return False
        return not faint or not self.faint.touch(box)

    def _near(self, box: Box) -> Iterator[Box]:
        """Boxes that share area with a box."""
        if len(self._edges) != len(self.boxes):
            self._edges = np.array(self.boxes)
        if not self.boxes:
            return
        left, top, right, bottom = self._edges.T
        near = (right > box[0]) & (left < box[2]) & (bottom > box[1]) & (top < box[3])
        for number in np.flatnonzero(near):
            yield self.boxes[number]

    def put(
        self, lines: Sequence[str], places: Iterable[Point], size: float, key: str = "", anchor: Anchor = "middle",
        *, faint: bool = True,
    ) -> list[Text]:  # fmt: skip
        """Words, line under line, at the first of the places (of the block's middle) where they are free; else none."""
        wide = max((text_width(one, size) for one in lines), default=0.0)
        high = size * (_UP + _DOWN + _LEADING * (len(lines) - 1))
        for x, y in places:
            box = (
                x - 0.5 * wide - _CLEAR,
                y - 0.5 * high - _CLEAR,
                x + 0.5 * wide + _CLEAR,
                y + 0.5 * high + _CLEAR,
            )
            if not self.free(box, faint):
                continue
            self.boxes.append(box)
            at = {"start": x - 0.5 * wide, "middle": x, "end": x + 0.5 * wide}[anchor]
            first = y - 0.5 * high + _UP * size
            return [
                Text((at, first + number * _LEADING * size), one, size, key=key, anchor=anchor, layer=LABELS)
                for number, one in enumerate(lines)
            ]
        return []

    def inside(
        self, lines: Sequence[str], box: Box, size: float = SMALL, key: str = "", outline: Sequence[Point] = ()
    ) -> list[Text]:
        """Words somewhere in a box, or in an outline within it, from its top left corner on; none where there is no
        room."""
        wide = max((text_width(one, size) for one in lines), default=0.0) + 2 * _CLEAR + 0.6
        high = size * (_UP + _DOWN + _LEADING * (len(lines) - 1)) + 2 * _CLEAR + 0.6
        left, top, right, bottom = box
        loose, slack = right - left - wide, bottom - top - high
        if loose < 0.0 or slack < 0.0:
            return []
        across, down = (min(math.ceil(space / 2.0) + 1, _TRIED) for space in (loose, slack))
        places = [
            (left + 0.5 * wide + _share(i, across) * loose, top + 0.5 * high + _share(j, down) * slack)
            for j in range(down)
            for i in range(across)
        ]
        if outline:
            places = [place for place in places if holds(outline, place)]
        return self.put(lines, places, size, key)

    def beside(
        self,
        lines: Sequence[str],
        mark: Point,
        reach: float,
        size: float = SMALL,
        key: str = "",
        *,
        strict: bool = False,
        close: bool = False,
    ) -> list[Path | Text]:
        """Words as near to a mark as there is room, led to it where they stand off it; none where there is no room.

        `strict`: nor where there is room over faint lines alone; `close`: nor where they would have to be led to it.
        """
        offs = [off for off in _OFF if off <= _LED] if close else list(_OFF)
        found = self._beside(lines, mark, reach, size, key, offs, faint=True)
        if found or strict:
            return found
        found = self._beside(lines, mark, reach, size, key, offs, faint=False)
        # Words led across a line are read more easily than none.
        return found or self._beside(lines, mark, reach, size, key, offs, faint=False, across=True)

    def _beside(
        self,
        lines: Sequence[str],
        mark: Point,
        reach: float,
        size: float,
        key: str,
        offs: Sequence[float],
        *,
        faint: bool,
        across: bool = False,
    ) -> list[Path | Text]:
        wide = max((text_width(one, size) for one in lines), default=0.0)
        half = 0.5 * wide, 0.5 * size * (_UP + _DOWN + _LEADING * (len(lines) - 1))
        for off in offs:
            for turn in _TURNS if off <= _NEAR else _FINE:
                away = reach + off
                place = (
                    mark[0] + math.cos(turn) * (away + half[0]),
                    mark[1] + math.sin(turn) * (away + half[1]),
                )
                led = off > _LED
                leader = _leader(mark, reach, place, half)
                box = (place[0] - half[0], place[1] - half[1], place[0] + half[0], place[1] + half[1])
                if not self.free(box, faint) or (led and self._blocked(leader, mark, across)):
                    continue
                found = self.put(lines, (place,), size, key, faint=faint)
                if found and led:
                    self.lines.add(leader)
                    return [Path(leader, QUIET_INK, THIN, layer=LABELS), *found]
                if found:
                    return list(found)
        return []

    def _blocked(self, leader: tuple[Point, Point], mark: Point, across: bool) -> bool:
        """Whether a leader would run through words or, where it may not, across a line."""
        (ax, ay), (bx, by) = leader
        along = (min(ax, bx), min(ay, by), max(ax, bx), max(ay, by))
        through = any(cuts(*leader, one) for one in self._near(along) if not _holds(one, mark))
        return through or (not across and self.lines.crossed(*leader))


def holds(outline: Sequence[Point], point: Point) -> bool:
    """Whether a point lies within a closed outline."""
    x, y = point
    within = False
    for (ax, ay), (bx, by) in zip(outline, (*outline[1:], outline[0]), strict=True):
        if (ay > y) is not (by > y) and x < ax + (y - ay) / (by - ay) * (bx - ax):
            within = not within
    return within


def _share(number: int, count: int) -> float:
    return number / (count - 1) if count > 1 else 0.5


def _holds(box: Box, point: Point) -> bool:
    return box[0] <= point[0] <= box[2] and box[1] <= point[1] <= box[3]


def _leader(mark: Point, reach: float, place: Point, half: Point) -> tuple[Point, Point]:
    """From the edge of a mark to the nearest point of its words."""
    x = min(max(mark[0], place[0] - half[0]), place[0] + half[0])
    y = min(max(mark[1], place[1] - half[1]), place[1] + half[1])
    long = math.hypot(x - mark[0], y - mark[1]) or 1.0
    begin = mark[0] + (x - mark[0]) * reach / long, mark[1] + (y - mark[1]) * reach / long
    finish = x - (x - mark[0]) * 0.4 / long, y - (y - mark[1]) * 0.4 / long
    return begin, finish
