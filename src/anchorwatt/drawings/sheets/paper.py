"""Paper that drawings are made for: its size, its frame, its zones, and where a layout may draw.

Sizes are those of ISO 216 and ASME Y14.1. Margins of 20 mm on the left and 10 mm else, and zones lettered down and
numbered across without I and O, follow ISO 5457; its fields are 50 mm long, from memory.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from anchorwatt.drawings.sheet import Box, Point

PaperName = Literal["A3", "ANSI B"]

LEFT, MARGIN = 20.0, 10.0
"""mm from the paper's edge to the frame, where it is bound and elsewhere."""

FOOT = 36.0
"""mm of height of the title block and of what stands beside it."""

GAP = 4.0
"""mm that a layout keeps off the frame."""

FIELD = 50.0
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


@dataclass(frozen=True)
class Paper:
    """One size of paper, lying. Lengths in mm."""

    name: PaperName
    width: float
    height: float

    @property
    def frame(self) -> Box:
        """The frame round everything drawn."""
        return LEFT, MARGIN, self.width - MARGIN, self.height - MARGIN

    @property
    def body(self) -> Box:
        """Where a layout may draw."""
        left, top, right, bottom = self.frame
        return left + GAP, top + GAP, right - GAP, bottom - FOOT - GAP

    @property
    def columns(self) -> int:
        """Zones across: an even number, of about 50 mm."""
        left, _, right, _ = self.frame
        return 2 * round((right - left) / (2.0 * FIELD))

    @property
    def rows(self) -> int:
        """Zones down: an even number, of about 50 mm."""
        _, top, _, bottom = self.frame
        return 2 * round((bottom - top) / (2.0 * FIELD))

    def zone(self, point: Point) -> str:
        """The zone of a point, such as C4; a point outside the frame counts as in the nearest.

        Example
        -------
        >>> PAPERS["A3"].zone((22.0, 12.0)), PAPERS["A3"].zone((409.0, 286.0))
        ('A1', 'F8')
        """
        left, top, right, bottom = self.frame
        across = int((point[0] - left) / (right - left) * self.columns)
        down = int((point[1] - top) / (bottom - top) * self.rows)
        return f"{LETTERS[min(max(down, 0), self.rows - 1)]}{min(max(across, 0), self.columns - 1) + 1}"


PAPERS: dict[PaperName, Paper] = {
    "A3": Paper("A3", 420.0, 297.0),
    "ANSI B": Paper("ANSI B", 431.8, 279.4),
}
