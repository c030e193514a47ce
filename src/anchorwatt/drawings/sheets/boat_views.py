"""The boat to scale, from above and from the side, bow to the right: hull, cabins, spaces, parts by their real size."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, cast

from anchorwatt.drawings.cabin_shapes import Floor, layers
from anchorwatt.drawings.hull_outline import FREEBOARD, Metres, decks, ends, profile
from anchorwatt.drawings.lettering import clipped, text_width, wrapped
from anchorwatt.drawings.plan_view import View, scale_bar
from anchorwatt.drawings.sheet import QUIET_INK, Box, Item, Path, Point, Text
from anchorwatt.drawings.sheets.body import HULL, LABELS, LAYERS, LINE, PARTS, SMALL, TEXT, THIN
from anchorwatt.drawings.sheets.room import Room
from anchorwatt.units import System, convert

if TYPE_CHECKING:
    from anchorwatt.assessment.cabin_plan import CabinMoment
    from anchorwatt.design import specification as spec

SKETCHED = "Hull sketched from length, beam, draught and waterplane; cabins from the area of their soles."
TURNED = (
    "Parts are drawn by their size, length along the boat, several of a kind side by side; a cross where no size is "
    "known."
)

SEEN_THROUGH = ("solar_panel",)
"""Kinds that lie over the rest, which is seen through them."""

_CROSS = 0.9  # mm of half a cross
_DASHES, _CHAIN = (2.4, 1.2), (6.0, 1.2, 1.2, 1.2)
_TICK = 1.6
_CROWD = 24  # outlines beyond which there is no room for names led to them
_NAME = 40.0  # mm of width of a name
STATIONS_HIGH = 6.0
"""mm of height of the scale of stations."""


@dataclass(frozen=True)
class Reach:
    """How far what is drawn reaches, in m."""

    aft: float
    fore: float
    port: float
    starboard: float
    low: float
    high: float

    @property
    def long(self) -> float:
        return self.fore - self.aft

    @property
    def across(self) -> float:
        return self.starboard - self.port

    @property
    def tall(self) -> float:
        return self.high - self.low


def reach(boat: spec.Specification, points: Sequence[spec.Point] = ()) -> Reach:
    """Of hull, cabins, spaces and parts, and of further points."""
    outlines = [point for outline in decks(boat) for point in outline]
    outline = profile(boat)
    places = [*points, *(item.position for item in boat.items), *(space.centre for space in boat.spaces)]
    boxes = [box for item in boat.items for box in _boxes(item)]
    sides = [side_box(cabin.centre, cabin.length, cabin.height) for cabin in boat.cabins]
    sides += [side_box(space.centre, space.size[0], space.size[2]) for space in boat.spaces]
    plans = [plan_box(space) for space in boat.spaces]
    floor_corners = [corner for floor in floors(boat) for corner in floor.outline]
    along = [
        *(x for x, _ in outlines),
        *(p.forward for p in places),
        *(x for box in boxes for x in (box[0], box[3])),
        *(x for side in sides for x in (side[0], side[2])),
        *(x for x, _ in floor_corners),
    ]
    across = [
        *(y for _, y in outlines),
        *(p.starboard for p in places),
        *(y for box in boxes for y in (box[1], box[4])),
        *(y for plan in plans for y in (plan[1], plan[3])),
        *(y for _, y in floor_corners),
    ]
    up = [
        *(y for _, y in outline),
        *(p.up for p in places),
        *(z for box in boxes for z in (box[2], box[5])),
        *(z for side in sides for z in (side[1], side[3])),
    ]
    return Reach(min(along), max(along), min(across), max(across), min(up), max(up))


def _boxes(item: spec.Item) -> tuple[tuple[float, float, float, float, float, float], ...]:
    """Each of a part's units: aft, port and low, then fore, starboard and high; none where its size is unknown."""
    if any(math.isnan(one) for one in item.size):
        return ()
    long, broad, tall = item.size
    rows = _rows(item)
    files = item.count // rows
    at = item.position
    return tuple(
        (
            at.forward + (row - 0.5 * rows) * long,
            at.starboard + (file - 0.5 * files) * broad,
            at.up - 0.5 * tall,
            at.forward + (row + 1 - 0.5 * rows) * long,
            at.starboard + (file + 1 - 0.5 * files) * broad,
            at.up + 0.5 * tall,
        )
        for row in range(rows)
        for file in range(files)
    )


def _rows(item: spec.Item) -> int:
    """Rows along the boat in which several of a kind stand: as near to a square as their number allows."""
    long, broad, _ = item.size
    shapes = [rows for rows in range(1, item.count + 1) if item.count % rows == 0]
    return min(shapes, key=lambda rows: (abs(math.log(rows * long / (item.count // rows * broad))), rows))


def part(item: spec.Item, view: View, name: str) -> list[Path]:
    """A part in one view, "plan" or "profile": a rectangle a unit, or a cross."""
    first, second = (1, 4) if name == "plan" else (2, 5)
    boxes = _boxes(item)
    told = f"{item.tag} {item.name}"
    data = (("part", item.tag), ("view", name))
    if not boxes:
        at = item.position
        return cross(view(at.forward, at.starboard if name == "plan" else at.up), item.tag, told, data)
    seen = {(box[0], box[first], box[3], box[second]) for box in boxes}
    return [
        Path(
            view.shape(_rectangle(*box)), LAYERS[PARTS], LINE, fill="" if item.kind in SEEN_THROUGH else "#ffffff",
            key=item.tag, told=told, data=data, layer=PARTS,
        )
        for box in sorted(seen)
    ]  # fmt: skip


def cross(
    at: Point, key: str = "", told: str = "", data: tuple[tuple[str, str], ...] = (), colour: str = LAYERS[PARTS]
) -> list[Path]:
    """The mark of a place whose extent nobody knows."""
    x, y = at
    return [
        Path(((x - _CROSS, y + sign * _CROSS), (x + _CROSS, y - sign * _CROSS)), colour, LINE, (), "", 1.0, key, told,
             data, PARTS)
        for sign in (1.0, -1.0)
    ]  # fmt: skip


def _rectangle(aft: float, low: float, fore: float, high: float) -> list[Metres]:
    return [(aft, low), (fore, low), (fore, high), (aft, high), (aft, low)]


def from_above(boat: spec.Specification, view: View) -> Iterator[Path]:
    """Decks, cabins, spaces and the centreline, seen from above."""
    for outline in decks(boat):
        yield Path((*view.shape(outline), view(*outline[0])), LAYERS[HULL], LINE, key="boat", layer=HULL)
    stern, bow = ends(boat)
    yield Path((view(stern, 0.0), view(bow, 0.0)), LAYERS[HULL], THIN, _CHAIN, layer=HULL)
    for floor in floors(boat):
        dashes = _DASHES if floor.cabin.deck == "main" else ()
        corners = view.shape([*floor.outline, floor.outline[0]])
        key = f"cabins.{floor.cabin.name}"
        yield Path(corners, LAYERS[HULL], THIN, dashes, key=key, told=floor.cabin.name, layer=HULL)
    for space in boat.spaces:
        corners = view.shape(_rectangle(*plan_box(space)))
        yield Path(corners, QUIET_INK, THIN, (0.8, 0.8), key=f"spaces.{space.name}", told=space.name, layer=HULL)


@lru_cache(maxsize=4)
def floors(boat: spec.Specification) -> tuple[Floor, ...]:
    """The soles of all cabins, those of the main deck last."""
    found: list[Floor] = []
    for deck in ("below", "main"):
        # A floor's shape reads place, length and area alone, which a cabin of the specification has too.
        cabins = cast("Sequence[CabinMoment]", [cabin for cabin in boat.cabins if cabin.deck == deck])
        found += [floor for layer in layers(boat, cabins) for floor in layer]
    return tuple(found)


def plan_box(space: spec.Space) -> Box:
    """Aft, port, fore, starboard, m."""
    at, (long, broad, _) = space.centre, space.size
    return at.forward - 0.5 * long, at.starboard - 0.5 * broad, at.forward + 0.5 * long, at.starboard + 0.5 * broad


def side_box(at: spec.Point, long: float, tall: float) -> Box:
    """Aft, low, fore, high, m."""
    return at.forward - 0.5 * long, at.up - 0.5 * tall, at.forward + 0.5 * long, at.up + 0.5 * tall


def from_the_side(boat: spec.Specification, view: View, left: float, right: float) -> Iterator[Path]:
    """Hull, cabins, spaces and the waterline, seen from starboard.

    `left`, `right`: between which the waterline is drawn.
    """
    for cabin in boat.cabins:
        if cabin.deck == "main":
            aft, _, fore, high = side_box(cabin.centre, cabin.length, cabin.height)
            low = min(cabin.centre.up - 0.5 * cabin.height, 0.5 * FREEBOARD * boat.length)
            house = view.shape(_rectangle(aft, low, fore, high))
            yield Path(house, LAYERS[HULL], THIN, key=f"cabins.{cabin.name}", told=cabin.name, layer=HULL)
    outline = view.shape([*profile(boat), profile(boat)[0]])
    yield Path(outline, LAYERS[HULL], LINE, key="boat", layer=HULL)
    for cabin in boat.cabins:
        if cabin.deck != "main":
            box = view.shape(_rectangle(*side_box(cabin.centre, cabin.length, cabin.height)))
            yield Path(box, LAYERS[HULL], THIN, _DASHES, key=f"cabins.{cabin.name}", told=cabin.name, layer=HULL)
    for space in boat.spaces:
        box = view.shape(_rectangle(*side_box(space.centre, space.size[0], space.size[2])))
        yield Path(box, QUIET_INK, THIN, (0.8, 0.8), key=f"spaces.{space.name}", told=space.name, layer=HULL)
    water = view.origin[1]
    yield Path(((left, water), (right, water)), "#0b4f8a", LINE, _CHAIN, key="waterline", told="waterline", layer=HULL)


def stations(view: View, found: Reach, top: float, system: System) -> Iterator[Item]:
    """A scale along the boat, forward of the aft end of the waterline."""
    unit, step = ("m", 1) if system == "si" else ("ft", 5)
    metre = 1.0 / convert(1.0, unit, "length")
    while step * metre * view.scale < 8.0:
        step *= 2
    # The words at the ends stay within the view, too.
    room = 0.5 * text_width(f"−{step * 10} {unit}", SMALL) / view.scale
    first, last = math.ceil((found.aft + room) / metre / step), math.floor((found.fore - room) / metre / step)
    y = top + _TICK
    places = [(number * step, view(number * step * metre, 0.0)[0]) for number in range(first, last + 1)]
    yield Path(((places[0][1], y), (places[-1][1], y)), QUIET_INK, THIN, layer=LABELS)
    for reading, x in places:
        yield Path(((x, y - _TICK), (x, y)), QUIET_INK, THIN, layer=LABELS)
        words = f"{reading} {unit}" if reading == places[-1][0] else f"{reading}".replace("-", "−")
        yield Text((x, y + 2.9), words, SMALL, QUIET_INK, anchor="middle", key="station", layer=LABELS)


def bar(boat: spec.Specification, scale: float, at: Point, system: System) -> list[Path | Text]:
    """The scale bar."""
    return scale_bar(boat.length, scale, at, system, letters=SMALL, height=1.4, width=LINE, gap=1.5)


def heading(at: Point, words: str) -> Text:
    """What a view shows."""
    return Text(at, words, TEXT, bold=True, layer=LABELS)


def named(boat: spec.Specification, view: View, room: Room, side: bool) -> list[Path | Text]:
    """Names of cabins and spaces in their outline, else led to it; none where there is no room for that."""
    shapes: list[tuple[str, str, list[Metres]]] = []
    if side:
        for cabin in boat.cabins:
            box = side_box(cabin.centre, cabin.length, cabin.height)
            shapes.append((f"cabins.{cabin.name}", cabin.name, _rectangle(*box)))
        for space in boat.spaces:
            box = side_box(space.centre, space.size[0], space.size[2])
            shapes.append((f"spaces.{space.name}", space.name, _rectangle(*box)))
    else:
        shapes += [(f"cabins.{floor.cabin.name}", floor.cabin.name, floor.outline) for floor in floors(boat)]
        shapes += [(f"spaces.{space.name}", space.name, _rectangle(*plan_box(space))) for space in boat.spaces]
    found: list[Path | Text] = []
    for key, name, outline in shapes:
        corners = view.shape(outline)
        across, down = [x for x, _ in corners], [y for _, y in corners]
        box = (min(across), min(down), max(across), max(down))
        told = clipped(name, SMALL, _NAME)
        folded = wrapped(told, SMALL, 0.6 * text_width(told, SMALL))
        middle = (0.5 * (box[0] + box[2]), 0.5 * (box[1] + box[3]))
        found += (
            room.inside([told], box, SMALL, key, corners)
            or room.inside(folded, box, SMALL, key, corners)
            or (room.beside([told], middle, 0.0, SMALL, key, strict=True) if len(shapes) <= _CROWD else [])
        )
    return found
