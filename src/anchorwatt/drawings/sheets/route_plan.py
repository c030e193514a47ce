"""The plan that routes are drawn on, and the marks of what they lead to."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from anchorwatt.drawings.hull_outline import Metres
from anchorwatt.drawings.lettering import wrapped
from anchorwatt.drawings.plan_view import View
from anchorwatt.drawings.sheet import INK, Box, Item, Path, Point
from anchorwatt.drawings.sheets import boat_views
from anchorwatt.drawings.sheets.body import LINE, PARTS, SMALL, Body, of_several
from anchorwatt.drawings.sheets.listing import Column, Row, columns_of
from anchorwatt.drawings.sheets.room import Room
from anchorwatt.drawings.sheets.scales import BOAT, Scale, largest
from anchorwatt.units import System

if TYPE_CHECKING:
    from anchorwatt.design import specification as spec
    from anchorwatt.drawings.sheets.paper import Paper

NAMED = 40
"""Tags that a note names."""

_SHARE = 0.62  # of the sheet's height that the plan takes at most
_HEAD, _FOOT = 5.0, 13.0
_MARGIN = 9.0  # mm round the boat, for tags
_MARK = 0.9  # mm of half a mark
_TOGETHER = 2.4  # mm within which marks are one
_CROWD = 80  # marks beyond which there is no room for tags led to them
_LABEL = 26.0  # mm of width of a label with several tags


@dataclass(frozen=True)
class Stop:
    """What a route leads to."""

    tag: str
    at: spec.Point
    known: bool  # whether somebody said where it stands


def unsaid(tags: Sequence[str]) -> tuple[str, ...]:
    """The note on tags that there was no room for, if any."""
    if not tags:
        return ()
    more = " …" if len(tags) > NAMED else ""
    return (f"No room in the plan for the tags {', '.join(tags[:NAMED])}{more}: the list has them.",)


@dataclass
class RoutePlan:
    """The boat from above, ready for routes."""

    scale: Scale
    view: View
    room: Room
    items: list[Item]
    below: Box  # what is left under it

    def bodies(
        self,
        paper: Paper,
        columns: Sequence[Column],
        rows: Sequence[Row],
        *,
        name: str,
        title: str,
        about: str,
        notes: tuple[str, ...],
    ) -> tuple[Body, ...]:
        """The plan with the list of what runs there under it, and further sheets for the rest of the list."""
        made: list[Body] = []
        items, room = self.items, self.below
        while rows or not made:
            listed, rows = columns_of(columns, rows, room)
            number = len(made) + 1
            made.append(
                Body(
                    *of_several(name, title, number),
                    about,
                    (*items, *listed),
                    notes=notes if number == 1 else (),
                    scale=self.scale.name if number == 1 else "none",
                )
            )
            items, room = [], paper.body
        return tuple(made)

    def stops(self, stops: Sequence[Stop]) -> tuple[str, ...]:
        """Marks with their tags: full where the place is known, open where it is an estimate.

        Returns the tags that there is no room for.
        """
        marks: list[tuple[Point, list[Stop]]] = []
        for stop in stops:
            at = self.view(stop.at.forward, stop.at.starboard)
            near = next((held for there, held in marks if math.dist(there, at) <= _TOGETHER), None)
            if near is None:
                marks.append((at, [stop]))
            elif stop.tag not in [other.tag for other in near]:
                near.append(stop)
        for (x, y), held in marks:
            corners = (
                (x - _MARK, y - _MARK), (x + _MARK, y - _MARK), (x + _MARK, y + _MARK), (x - _MARK, y + _MARK),
                (x - _MARK, y - _MARK),
            )  # fmt: skip
            fill = INK if any(stop.known for stop in held) else "#ffffff"
            self.items.append(Path(corners, INK, LINE, fill=fill, told=", ".join(s.tag for s in held), layer=PARTS))
            self.room.boxes.append((x - _MARK, y - _MARK, x + _MARK, y + _MARK))
        unsaid: list[str] = []
        for at, held in marks:
            lines = wrapped(", ".join(stop.tag for stop in held), SMALL, _LABEL)
            key = held[0].tag if len(held) == 1 else ""
            told = self.room.beside(lines, at, _MARK, SMALL, key, close=len(marks) > _CROWD)
            self.items += told
            if not told:
                unsaid += [stop.tag for stop in held]
        return tuple(unsaid)


def route_plan(
    boat: spec.Specification, paper: Paper, system: System, words: str, points: Sequence[spec.Point], listed: float
) -> RoutePlan:
    """The boat from above at the largest scale that leaves room for a list under it.

    Parameters
    ----------
    words : what the plan shows
    points : places that it must reach
    listed : mm of height that the list would like; it gets what is left, and 38 % of the sheet at least
    """
    left, top, right, bottom = paper.body
    found = boat_views.reach(boat, points)
    high = max(_SHARE * (bottom - top), bottom - top - listed) - _HEAD - _FOOT - 2 * _MARGIN
    room = (right - left - 2 * _MARGIN, high)
    scale = largest(BOAT[system], room, (found.long, found.across))
    per = scale.per_metre
    y = top + _HEAD + _MARGIN
    view = View(per, (left + _MARGIN - found.aft * per, y - found.port * per), 1.0)
    foot = y + found.across * per + _MARGIN
    items: list[Item] = [boat_views.heading((left, top + 3.0), words)]
    # Beside the boat there may be room, too.
    free = Room((left, top + _HEAD, right, foot))
    for path in boat_views.from_above(boat, view):
        items.append(path)
        free.run(path.points, faint=True)
    items += boat_views.stations(view, found, foot, system)
    y = foot + boat_views.STATIONS_HIGH + 3.0
    items += boat_views.bar(boat, per, (left + _MARGIN, y), system)
    return RoutePlan(scale, view, free, items, (left, foot + _FOOT, right, bottom))


def along_then_across(start: Metres, end: Metres) -> tuple[Metres, ...]:
    """A way along the boat and then across it, as short as the axes allow."""
    corner = (end[0], start[1])
    return tuple(dict.fromkeys((start, corner, end)))


def along_the_axes(start: Metres, end: Metres, trunk: float) -> tuple[Metres, ...]:
    """A way along the boat's axes, no longer than it must be: across to the trunk or toward it, along, and across.

    Example
    -------
    >>> along_the_axes((1.0, -1.0), (5.0, 2.0), 0.0)
    ((1.0, -1.0), (1.0, 0.0), (5.0, 0.0), (5.0, 2.0))
    >>> along_the_axes((1.0, 1.0), (5.0, 2.0), 0.0)
    ((1.0, 1.0), (5.0, 1.0), (5.0, 2.0))
    """
    low, high = sorted((start[1], end[1]))
    at = min(max(trunk, low), high)
    way = [start]
    for point in ((start[0], at), (end[0], at), end):
        if point != way[-1]:
            way.append(point)
    return tuple(way)


@dataclass(frozen=True)
class Stretch:
    """A straight piece of way, and what runs there."""

    start: Metres
    end: Metres
    runs: tuple[str, ...]


def stretches(ways: Mapping[str, Sequence[Metres]]) -> tuple[Stretch, ...]:
    """The ways cut where something joins or leaves, each piece once with all that runs there."""
    lines: dict[tuple[int, float], list[tuple[float, float, str]]] = {}
    for name, way in ways.items():
        for start, end in pairwise(way):
            axis = 0 if math.isclose(start[1], end[1], abs_tol=1e-9) else 1
            low, high = sorted((start[axis], end[axis]))
            lines.setdefault((axis, round(start[1 - axis], 6)), []).append((round(low, 6), round(high, 6), name))
    found: list[Stretch] = []
    for (axis, fixed), pieces in lines.items():
        cuts = sorted({at for low, high, _ in pieces for at in (low, high)})
        held: list[tuple[float, float, tuple[str, ...]]] = []
        for low, high in pairwise(cuts):
            runs = tuple(dict.fromkeys(name for a, b, name in pieces if a <= low and high <= b))
            if held and held[-1][1] == low and held[-1][2] == runs:
                held[-1] = (held[-1][0], high, runs)
            elif runs:
                held.append((low, high, runs))
        for low, high, runs in held:
            ends = ((low, fixed), (high, fixed)) if axis == 0 else ((fixed, low), (fixed, high))
            found.append(Stretch(*ends, runs))
    return tuple(found)
