"""Views of the boat to scale: metres onto a sheet, the hull's outline, a scale bar."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from anchorwatt.drawings.chart import round_step
from anchorwatt.drawings.hull_outline import decks
from anchorwatt.drawings.sheet import FRAME, INK, QUIET_INK, Path, Point, Text, line
from anchorwatt.drawings.title_block import SMALL
from anchorwatt.units import System, convert

if TYPE_CHECKING:
    from anchorwatt.design.specification import Specification
    from anchorwatt.drawings.hull_outline import Metres

HULL = "#f2f4f6"
_BAR = 5.0  # points of height
_SHARE_OF_LENGTH = 0.3  # of the boat that the bar is at most


@dataclass(frozen=True)
class View:
    """The boat on a sheet, bow to the right: seen from above starboard is down, seen from the side up is up."""

    scale: float  # points for a metre
    origin: Point  # of the aft end of the waterline, on the centreline or at the waterline
    downward: float  # 1 where the second length grows down the sheet, -1 where it grows up

    def __call__(self, forward: float, across: float) -> Point:
        """Where a point of the boat lies on the sheet."""
        return self.origin[0] + self.scale * forward, self.origin[1] + self.downward * self.scale * across

    def shape(self, points: Sequence[Metres]) -> tuple[Point, ...]:
        """An outline of the boat on the sheet."""
        return tuple(self(*point) for point in points)


def hulls_from_above(boat: Specification, view: View) -> list[Path | Text]:
    """The deck's outline, with the words that say which way the boat lies."""
    items: list[Path | Text] = [
        Path(view.shape(outline), FRAME, 1.2, fill=HULL, fill_opacity=1.0, key="boat") for outline in decks(boat)
    ]
    half = 0.5 * boat.beam
    left = min(x for outline in decks(boat) for x, _ in outline)
    x = view(left, 0.0)[0] - 6.0
    items.append(Text((x, view(0.0, -half)[1] + SMALL), "port", SMALL, QUIET_INK, anchor="end"))
    items.append(Text((x, view(0.0, half)[1]), "starboard", SMALL, QUIET_INK, anchor="end"))
    return items


def scale_bar(
    length: float,
    scale: float,
    at: Point,
    system: System,
    *,
    letters: float = SMALL,
    height: float = _BAR,
    width: float = 1.2,
    gap: float = 6.0,
) -> list[Path | Text]:
    """A bar of a round length with its reading, its left end at `at`.

    Parameters
    ----------
    length : m of the boat
    scale : points for a metre, or whatever the sheet is measured in
    letters, height, width, gap : of the reading, of the bar, of its line, and between bar and reading
    """
    unit = "m" if system == "si" else "ft"
    reading = 0.5 * round_step(2.0 * _SHARE_OF_LENGTH * convert(length, unit, "length"), 1)
    points = scale * reading / convert(1.0, unit, "length")
    x, y = at
    middle = x + 0.5 * points
    return [
        Path(((x, y - height), (x, y), (x + points, y), (x + points, y - height)), INK, width),
        line((middle, y - height), (middle, y), INK, width),
        Text((x + points + gap, y), f"{reading:g} {unit}", letters),
    ]
