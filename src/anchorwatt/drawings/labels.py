"""Short labels beside the marks that they name, none over another, led to their mark where they stand off it."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from anchorwatt.drawings.lettering import text_width
from anchorwatt.drawings.sheet import FRAME, INK, QUIET_INK, Box, Path, Point, Text, line

_TURNS = (0.0, 180.0, 330.0, 210.0, 30.0, 150.0, 270.0, 90.0, 300.0, 240.0, 60.0, 120.0)
_OFF = (2.5, 9.0, 17.0, 26.0, 36.0, 48.0, 62.0, 80.0, 100.0)
_NEAR = 36.0  # points up to which a label goes to keep off lines; beyond, it stands across one
_LED = 5.0  # points from the mark beyond which a label is led to it


@dataclass
class Labels:
    """Labels put one after the other into a frame; what is in the way grows with each."""

    frame: Box
    taken: list[Box] = field(default_factory=list)  # no label ever stands there
    lines: list[Box] = field(default_factory=list)  # kept off where there is room elsewhere

    def outline(self, left: float, top: float, right: float, bottom: float) -> None:
        """Keep labels off the four sides of a box, where that can be."""
        self.lines += [
            (left, top, right, top),
            (left, bottom, right, bottom),
            (left, top, left, bottom),
            (right, top, right, bottom),
        ]

    def beside(
        self, words: str, size: float, mark: Point, reach: Point, key: str = "", quiet: bool = False
    ) -> list[Path | Text]:
        """A label as near to a mark as there is room; nothing where there is none.

        Parameters
        ----------
        mark : middle of the mark
        reach : half its width and half its height
        quiet : whether the label is of less weight
        """
        half = 0.5 * text_width(words, size, not quiet), 0.5 * size
        for lines in (self.lines, []):
            for off in _OFF:
                if lines and off > _NEAR:
                    break
                for turn in _TURNS:
                    across, down = math.cos(math.radians(turn)), math.sin(math.radians(turn))
                    middle = (
                        mark[0] + across * (reach[0] + off + half[0]),
                        mark[1] + down * (reach[1] + off + half[1]),
                    )
                    box = (
                        middle[0] - half[0] - 1.0,
                        middle[1] - half[1] - 1.0,
                        middle[0] + half[0] + 1.0,
                        middle[1] + half[1] + 1.0,
                    )
                    if self._free(box, lines):
                        self.taken.append(box)
                        # Letters stand on a baseline a third of their size below their middle.
                        at = middle[0], middle[1] + 0.34 * size
                        text = Text(at, words, size, QUIET_INK if quiet else INK, not quiet, "middle", key)
                        return [text] if off <= _LED else [_leader(mark, reach, middle, half), text]
        return []

    def _free(self, box: Box, lines: list[Box]) -> bool:
        left, top, right, bottom = self.frame
        inside = left <= box[0] and top <= box[1] and box[2] <= right and box[3] <= bottom
        return (
            inside
            and not any(
                box[0] < other[2] and other[0] < box[2] and box[1] < other[3] and other[1] < box[3]
                for other in self.taken
            )
            and not any(
                box[0] <= other[2] and other[0] <= box[2] and box[1] <= other[3] and other[1] <= box[3]
                for other in lines
            )
        )


def _leader(mark: Point, reach: Point, middle: Point, half: Point) -> Path:
    """A line from the edge of a mark to the side of its label."""
    aside, down = middle[0] - mark[0], middle[1] - mark[1]
    away = math.hypot(aside, down)
    start = mark[0] + aside * reach[0] / away, mark[1] + down * reach[1] / away
    if abs(down) < half[1]:
        return line(start, (middle[0] - math.copysign(half[0] + 1.0, aside), middle[1]), FRAME, 0.9)
    x = min(max(mark[0], middle[0] - half[0]), middle[0] + half[0])
    return line(start, (x, middle[1] - math.copysign(half[1], down)), FRAME, 0.9)
