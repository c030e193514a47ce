"""Where everything stands: plan and profile to scale, each part by its mass, and the centre of gravity."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from anchorwatt.drawings.chart import BLUE, SKY, VERMILION
from anchorwatt.drawings.hull_outline import FREEBOARD, decks, ends, profile
from anchorwatt.drawings.labels import Labels
from anchorwatt.drawings.lettering import clipped
from anchorwatt.drawings.plan_view import HULL, View, hulls_from_above, scale_bar
from anchorwatt.drawings.sheet import FRAME, INK, QUIET_INK, Box, Path, Point, Sheet, Text, line, ring
from anchorwatt.drawings.svg import svg
from anchorwatt.drawings.title_block import EDGE, SMALL, SUBTITLE, foot_block, title_block
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.places import MassAt, PlacesStory
    from anchorwatt.design import specification as spec

WIDTH = 900.0
_SIDE_ROOM = 66.0
_HIGHEST = 360.0  # points of the plan
_PROFILE_HIGHEST = 320.0
_TAGGED, _LIGHT = 18, 3.0  # as many of the heaviest get a tag, and only from so many kg on
_LEAST_RADIUS = 2.5
_TAG = 11.0
_SPACE = 9.5
_COLUMNS, _ROW = 3, 16.0
_DASHED = (4.0, 3.0)
_RING, _DOT = 7.5, 3.2
_MARGIN = 14.0  # round a view, for labels

Metres = tuple[float, float]


def places_picture(assessment: Assessment, system: System) -> str:
    """Draw where everything stands.

    Parameters
    ----------
    assessment : of the design
    system : "si" or "us", the units of the figures

    Returns
    -------
    The text of an SVG file. Its root has `data-scale`, points for a metre, and the point of the aft end of the
    waterline in both views, `data-plan-origin-x` and so on: from above starboard is down, from the side up is up.
    Each mark has `data-key`, the key of its place in the design file; `data-view`, "plan" or "profile"; `data-x` and
    `data-y`, its middle on the sheet; `data-forward`, `data-starboard` and `data-up` in metres.
    """
    return svg(_sheet(assessment, system))


def _sheet(assessment: Assessment, system: System) -> Sheet:
    boat, story, places = assessment.specification, assessment.weight, assessment.places
    finding = story.finding(system)
    about = (
        f"{clipped(boat.name, SUBTITLE, 300.0)} · discs: what is brought aboard, by mass, grey where nobody said its "
        "place; dashed rings: what is taken ashore; dashed boxes: spaces. G, centre of gravity: ring before, dot after "
    )
    items, y = title_block(finding, about.rstrip(), WIDTH)
    stern, bow = ends(boat)
    low, high = _heights(boat, places)
    scale = min((WIDTH - 2 * EDGE - _SIDE_ROOM) / (bow - stern), _HIGHEST / boat.beam, _PROFILE_HIGHEST / (high - low))
    left = EDGE + _SIDE_ROOM + 0.5 * (WIDTH - 2 * EDGE - _SIDE_ROOM - scale * (bow - stern)) - scale * stern

    y += 30.0
    items.append(Text((EDGE, y), f"Profile, bow to the right: {story.trim(system)}", SUBTITLE, bold=True))
    y += _MARGIN
    side = View(scale, (left, y + scale * high), -1.0)
    items += _profile(boat, places, side, y - 8.0, y + scale * (high - low) + _MARGIN)
    y += scale * (high - low) + _MARGIN

    y += 30.0
    items.append(Text((EDGE, y), f"Plan: {story.heel(system)}", SUBTITLE, bold=True))
    y += _MARGIN
    above = View(scale, (left, y + 0.5 * scale * boat.beam), 1.0)
    items += _plan(boat, places, above, y - 8.0, y + scale * boat.beam + _MARGIN)
    y += scale * boat.beam + _MARGIN + 14.0
    items += scale_bar(boat.length, scale, (left + scale * stern, y), system)

    y += 12.0
    listed, y = _list(places, y, system)
    items += listed
    y += 6.0
    notes = (f"Centre of gravity: it {places.shift(system)}.", _dots(places), story.level(system))
    more, y = foot_block([note for note in notes if note], y, WIDTH)
    sketched = "Hull sketched from its length, beam, draught and waterplane."
    below, height = foot_block((sketched, *story.cautions, *assessment.cautions), y - EDGE + 6.0, WIDTH)
    data = (
        ("scale", f"{scale:.4f}"),
        ("plan-origin-x", f"{above.origin[0]:.2f}"),
        ("plan-origin-y", f"{above.origin[1]:.2f}"),
        ("profile-origin-x", f"{side.origin[0]:.2f}"),
        ("profile-origin-y", f"{side.origin[1]:.2f}"),
    )
    return Sheet(WIDTH, height, finding, _description(assessment, system), (*items, *more, *below), data)


def _heights(boat: spec.Specification, places: PlacesStory) -> Metres:
    """m under and over the waterline that the profile shows."""
    ups = [one.carried.position.up for one in places.masses]
    ups += [space.centre.up + sign * 0.5 * space.size[2] for space in places.spaces for sign in (-1.0, 1.0)]
    ups += [cabin.centre.up + 0.5 * cabin.height for cabin in boat.cabins if cabin.deck == "main"]
    ups += [places.gravity_after.up, places.gravity_before.up]
    largest = max((_radius(one) for one in places.masses), default=0.0)
    return min(*ups, -boat.draught) - largest, max(*ups, 1.3 * FREEBOARD * boat.length) + largest


def _profile(boat: spec.Specification, places: PlacesStory, view: View, top: float, foot: float) -> list[Path | Text]:
    water = view.origin[1]
    items: list[Path | Text] = []
    for cabin in boat.cabins:
        if cabin.deck == "main":
            # The hull, drawn after it, hides how far a deckhouse is drawn down to meet it.
            foot_up, head_up = 0.5 * FREEBOARD * boat.length, cabin.centre.up + 0.5 * cabin.height
            aft, fore = cabin.centre.forward - 0.5 * cabin.length, cabin.centre.forward + 0.5 * cabin.length
            house = [(aft, foot_up), (fore, foot_up), (fore, head_up), (aft, head_up)]
            items.append(Path(view.shape(house), FRAME, 0.8, fill=HULL))
    items.append(Path(view.shape(profile(boat)), FRAME, 1.2, fill=HULL, key="boat"))
    sea = ((EDGE, water), (WIDTH - EDGE, water), (WIDTH - EDGE, foot), (EDGE, foot))
    items += [Path(sea, fill=SKY, fill_opacity=0.14), line((EDGE, water), (WIDTH - EDGE, water), BLUE, 1.0)]
    boxes = [(space.name, view.shape(_side_of(space.centre, space.size[0], space.size[2]))) for space in places.spaces]
    marks = [view(one.carried.position.forward, one.carried.position.up) for one in places.masses]
    gravity = [view(point.forward, point.up) for point in (places.gravity_before, places.gravity_after)]
    labels = Labels((EDGE, top, WIDTH - EDGE, foot), lines=[(EDGE, water, WIDTH - EDGE, water)])
    return items + _marked(places, boxes, marks, gravity, view.scale, "profile", labels)


def _plan(boat: spec.Specification, places: PlacesStory, view: View, top: float, foot: float) -> list[Path | Text]:
    items: list[Path | Text] = hulls_from_above(boat, view)
    stern, bow = ends(boat)
    middle = (view(stern, 0.0), view(bow, 0.0))
    items.append(Path(middle, QUIET_INK, 0.8, (8.0, 3.0, 2.0, 3.0)))
    boxes = []
    for space in places.spaces:
        x, y, half_x, half_y = space.centre.forward, space.centre.starboard, 0.5 * space.size[0], 0.5 * space.size[1]
        corners = [
            (x - half_x, y - half_y),
            (x + half_x, y - half_y),
            (x + half_x, y + half_y),
            (x - half_x, y + half_y),
        ]
        boxes.append((space.name, view.shape(corners)))
    marks = [view(one.carried.position.forward, one.carried.position.starboard) for one in places.masses]
    gravity = [view(point.forward, point.starboard) for point in (places.gravity_before, places.gravity_after)]
    left = view(min(x for outline in decks(boat) for x, _ in outline), 0.0)[0]
    axis = (middle[0][0], middle[0][1], middle[1][0], middle[1][1])
    # Left of the hull stand the words for its sides.
    labels = Labels((EDGE, top, WIDTH - EDGE, foot), [(EDGE, top, left, foot)], [axis])
    return items + _marked(places, boxes, marks, gravity, view.scale, "plan", labels)


def _side_of(centre: spec.Point, length: float, height: float) -> list[Metres]:
    x, up = centre.forward, centre.up
    return [
        (x - 0.5 * length, up - 0.5 * height),
        (x + 0.5 * length, up - 0.5 * height),
        (x + 0.5 * length, up + 0.5 * height),
        (x - 0.5 * length, up + 0.5 * height),
    ]


def _marked(
    places: PlacesStory,
    boxes: Sequence[tuple[str, tuple[Point, ...]]],
    marks: Sequence[Point],
    gravity: Sequence[Point],
    scale: float,
    view: str,
    labels: Labels,
) -> list[Path | Text]:
    """Spaces, masses and the centre of gravity of one view, with their labels."""
    items: list[Path | Text] = [
        Path((*corners, corners[0]), QUIET_INK, 0.9, _DASHED, key=f"spaces.{name}", told=name)
        for name, corners in boxes
    ]
    rooms = [(name, _bounds(corners)) for name, corners in boxes]
    for _, room in rooms:
        labels.outline(*room)
    radii = [max(scale * _radius(one), _LEAST_RADIUS) for one in places.masses]
    for (x, y), radius in zip(marks, radii, strict=True):
        labels.taken.append((x - radius, y - radius, x + radius, y + radius))
    for x, y in gravity:
        labels.taken.append((x - _RING, y - _RING, x + _RING, y + _RING))
    named: list[Path | Text] = list(labels.beside("G", _TAG, gravity[1], (_RING, _RING)))
    tagged = _tagged(places)
    for one, mark, radius in zip(places.masses, marks, radii, strict=True):
        items.append(_disc(one, mark, radius, view))
        if one in tagged:
            named += labels.beside(_tag(one), _TAG, mark, (radius, radius), one.key)
    for name, (left, top, right, bottom) in rooms:
        middle, reach = (0.5 * (left + right), 0.5 * (top + bottom)), (0.5 * (right - left), 0.5 * (bottom - top))
        named += labels.beside(clipped(name, _SPACE, 120.0), _SPACE, middle, reach, quiet=True)
    items.append(
        Path((*ring(gravity[0], _RING), ring(gravity[0], _RING)[0]), INK, 1.6, told="centre of gravity before")
    )
    items.append(Path(ring(gravity[1], _DOT), fill=INK, told="centre of gravity after"))
    return items + named


def _bounds(corners: Sequence[Point]) -> Box:
    across, down = [x for x, _ in corners], [y for _, y in corners]
    return min(across), min(down), max(across), max(down)


def _radius(one: MassAt) -> float:
    """m: a disc whose area goes with the mass."""
    return 0.03 * math.sqrt(abs(one.carried.mass) / 3.0) + 0.02


def _tagged(places: PlacesStory) -> list[MassAt]:
    return [one for one in places.masses if abs(one.carried.mass) >= _LIGHT][:_TAGGED]


def _tag(one: MassAt) -> str:
    return one.carried.tag or clipped(one.carried.name.partition(":")[0], _TAG, 110.0, bold=True)


def _disc(one: MassAt, mark: Point, radius: float, view: str) -> Path:
    position = one.carried.position
    data = (
        ("view", view),
        ("x", f"{mark[0]:.2f}"),
        ("y", f"{mark[1]:.2f}"),
        ("forward", f"{position.forward:.4f}"),
        ("starboard", f"{position.starboard:.4f}"),
        ("up", f"{position.up:.4f}"),
    )
    told = f"{one.carried.tag} {one.carried.name}".strip()
    corners = ring(mark, radius)
    if one.carried.mass < 0.0:
        return Path(
            (*corners, corners[0]), VERMILION, 1.6, _DASHED, key=one.key, told=f"taken ashore: {told}", data=data
        )
    fill = BLUE if one.carried.placed else FRAME
    return Path(corners, "#ffffff", 0.8, fill=fill, fill_opacity=0.8, key=one.key, told=told, data=data)


def _list(places: PlacesStory, y: float, system: System) -> tuple[list[Path | Text], float]:
    """Tags with names and masses, down the columns."""
    tagged = _tagged(places)
    rows = -(-len(tagged) // _COLUMNS)
    wide = (WIDTH - 2 * EDGE) / _COLUMNS
    items: list[Path | Text] = []
    for number, one in enumerate(tagged):
        column, row = divmod(number, rows)
        x, at = EDGE + wide * column, y + _ROW * (row + 1)
        name = one.carried.name if one.carried.mass >= 0.0 else f"taken ashore: {one.carried.name}"
        start = x if not one.carried.tag else x + 32.0
        if one.carried.tag:
            items.append(Text((x, at), one.carried.tag, _TAG, bold=True))
        end = x + wide - 24.0
        items.append(Text((start, at), clipped(name, _TAG, end - 62.0 - start), _TAG))
        mass = show(abs(one.carried.mass), "mass", system)
        items.append(Text((end, at), mass, _TAG, QUIET_INK, anchor="end"))
    return items, y + _ROW * rows


def _dots(places: PlacesStory) -> str:
    small = [one.carried.tag or one.carried.name for one in places.masses if one not in _tagged(places)]
    if not small:
        return ""
    shown = ", ".join(clipped(name, SMALL, 120.0) for name in small[:24])
    return f"Dots without a tag, the lightest: {shown}{' and others' if len(small) > 24 else ''}."


def _description(assessment: Assessment, system: System) -> str:
    places, story = assessment.places, assessment.weight
    parts = "; ".join(
        f"{one.carried.tag} {one.carried.name}, {show(abs(one.carried.mass), 'mass', system)}".strip()
        + (" taken ashore" if one.carried.mass < 0.0 else "")
        + f", {show(one.carried.position.forward, 'length', system)} forward, "
        f"{show(abs(one.carried.position.starboard), 'length', system)} to "
        f"{'starboard' if one.carried.position.starboard >= 0.0 else 'port'}"
        for one in _tagged(places)
    )
    return (
        f"Profile ({story.trim(system)}) and plan ({story.heel(system)}) of the boat with each mass as a disc at its "
        f"place. The centre of gravity {places.shift(system)}. The heaviest: {parts or 'none'}."
    )
