"""Arrangement: plan and profile to scale with every mass of the weight story numbered, and the list of them.

Behind it follow the routes of cables, and of ducts and pipes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from anchorwatt.drawings.plan_view import View
from anchorwatt.drawings.sheet import INK, Item, Path, Point, Text, ring
from anchorwatt.drawings.sheets import boat_views
from anchorwatt.drawings.sheets.balloons import BAND, Mark, Rows, balloons
from anchorwatt.drawings.sheets.body import LAYERS, LINE, PARTS, SMALL, Body
from anchorwatt.drawings.sheets.listing import GAP, ROW, Column, Row, columns_of, rows_in, table, wide
from anchorwatt.drawings.sheets.room import Room
from anchorwatt.drawings.sheets.scales import BOAT, Scale, largest
from anchorwatt.units import System, convert, show, unit_for

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.places import MassAt
    from anchorwatt.design import specification as spec
    from anchorwatt.drawings.sheets.boat_views import Reach
    from anchorwatt.drawings.sheets.paper import Paper

_HEAD = 5.0  # mm of height of the words over a view
_BETWEEN = 3.0
_FOOT = 5.0  # mm under the plan, for the scale bar
_FIXED = 2 * _HEAD + _BETWEEN + boat_views.STATIONS_HIGH + 2 * BAND + _FOOT
_NAMED = 20  # parts that a note names
_LONGER = 34.0  # mm that names get more where there is room
_G_RING, _G_DOT = 2.2, 0.8
_G = "centre of gravity"

KEY = (
    (
        "Dashed: cabins of the main deck in plan, of the lower deck in profile; dotted: spaces. A: taken ashore, shown "
        "by a red cross; W: all cables, at the middle of their mass."
    ),
    "Forward from the aft end of the waterline, starboard from the centreline (port negative), up from the waterline.",
)


@dataclass(frozen=True)
class Numbered:
    """A mass with the number of its balloon."""

    number: str
    mass: MassAt

    @property
    def key(self) -> str:
        """What it is called in a comparison of two revisions."""
        return self.mass.carried.tag or self.mass.carried.name


def numbered(assessment: Assessment) -> tuple[Numbered, ...]:
    """Every mass of the weight story once: parts from 1 in the order of the design, A1 on for what goes ashore, then
    the cables, W. So a part that is added renumbers only what follows it in that order."""
    order = {item.tag: number for number, item in enumerate(assessment.specification.items)}
    masses = assessment.places.masses
    parts = sorted((one for one in masses if one.carried.tag in order), key=lambda one: order[one.carried.tag])
    ashore = [one for one in masses if not one.carried.tag]
    rest = [one for one in masses if one.carried.tag and one.carried.tag not in order]
    return (
        *(Numbered(f"{number}", one) for number, one in enumerate(parts, 1)),
        *(Numbered(f"A{number}", one) for number, one in enumerate(ashore, 1)),
        *(Numbered(one.carried.tag, one) for one in rest),
    )


def arrangement_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """Plan and profile with the list of parts.

    Parameters
    ----------
    system : scales of metric rules or of those in inches to the foot, and the units of the figures
    """
    boat, places = assessment.specification, assessment.places
    left, top, right, bottom = paper.body
    points = [*(one.carried.position for one in places.masses), places.gravity_before, places.gravity_after]
    found = boat_views.reach(boat, points)
    scale = largest(BOAT[system], (right - left, bottom - top - _FIXED), (found.long, found.tall + found.across))
    listed = list(numbered(assessment))
    loose = right - left - found.long * scale.per_metre - GAP - wide(_columns(system))
    beside = loose >= 0.0
    columns = _columns(system, min(max(loose, 0.0), _LONGER))
    rows = [*(_row(one, system) for one in listed), _total(assessment, system)]
    gravity = _gravity(assessment, system)
    deep = (len(gravity) + 1) * ROW
    side_by_side = int((right - left - wide(_gravity_columns(system))) / (wide(columns) + GAP))

    def numbers_below(height: float) -> int:
        """Masses that tables under the views have room for, beside that of the centre of gravity."""
        return side_by_side * rows_in(height) - 1

    bodies: list[Body] = []
    waiting: Sequence[Numbered] = listed
    while waiting or not bodies:
        views, waiting, used = _views(assessment, waiting, found, scale, paper, system)
        if beside:
            x = right - wide(columns)
            listing, rows = _taken(columns, rows, (x, top, right, bottom - deep - GAP))
            views += [*listing, *table(_gravity_columns(system), gravity, (x, bottom - deep))]
        elif len(listed) <= numbers_below(bottom - used):
            x = right - wide(_gravity_columns(system))
            listing, rows = _taken(columns, rows, (left, used, x - GAP, bottom))
            views += [*listing, *table(_gravity_columns(system), gravity, (x, used))]
        bodies.append(_body(assessment, views, scale.name, len(bodies), system))
    columns = columns if beside else _columns(system, _LONGER)
    while rows:
        items = [] if beside else list(table(_gravity_columns(system), gravity, (left, top)))
        more, rows = _taken(columns, rows, (left, top if beside else top + deep + GAP, right, bottom))
        bodies.append(_body(assessment, [*items, *more], "none", len(bodies), system))
    return tuple(bodies)


def _taken(
    columns: Sequence[Column], rows: Sequence[Row], room: tuple[float, float, float, float]
) -> tuple[list[Item], list[Row]]:
    items, rest = columns_of(columns, rows, room)
    return items, list(rest)


def _body(assessment: Assessment, items: Sequence[Item], scale: str, number: int, system: System) -> Body:
    places = assessment.places
    unsure = [one.carried.tag for one in places.masses if not one.carried.placed and one.key]
    more = " …" if len(unsure) > _NAMED else ""
    guessed = f"Estimated places, which nobody has said: {', '.join(unsure[:_NAMED])}{more}." if unsure else ""
    told = "plan and profile of the boat" if scale != "none" else "list of parts"
    notes = (boat_views.SKETCHED, boat_views.TURNED, *KEY, guessed)
    return Body(
        "arrangement" if not number else f"arrangement-{number + 1}",
        "Arrangement" if not number else f"Arrangement ({number + 1})",
        f"Arrangement: {told}, each mass of the installation numbered and listed with its place. "
        f"The centre of gravity {places.shift(system)}.",
        tuple(items),
        notes=tuple(words for words in notes if words),
        scale=scale,
    )


def _views(
    assessment: Assessment, waiting: Sequence[Numbered], found: Reach, scale: Scale, paper: Paper, system: System
) -> tuple[list[Item], Sequence[Numbered], float]:
    """Both views with as many balloons as go round the plan; what is still to be numbered; and where they end."""
    boat = assessment.specification
    left, top, _, _ = paper.body
    per = scale.per_metre
    right = left + found.long * per
    ahead = left - found.aft * per
    items: list[Item] = [boat_views.heading((left, top + 3.0), "Profile, bow to the right")]
    y = top + _HEAD
    side = View(per, (ahead, y + found.high * per), -1.0)
    room = Room((left, y, right, y + found.tall * per))
    items += _drawn(boat_views.from_the_side(boat, side, left, right), room)
    items += _parts(assessment, side, "profile", room)
    items += _gravity_marks(assessment, side, room, profile=True)
    items += room.inside(["waterline"], (left, side.origin[1] + 0.2, right, side.origin[1] + 6.0), key="waterline")
    items += boat_views.named(boat, side, room, side=True)
    y += found.tall * per + _BETWEEN
    items += boat_views.stations(side, found, y, system)
    y += boat_views.STATIONS_HIGH
    items.append(boat_views.heading((left, y + 3.0), "Plan: port above, starboard below"))
    y += _HEAD + BAND
    above = View(per, (ahead, y - found.port * per), 1.0)
    foot = y + found.across * per
    room = Room((left, y, right, foot))
    items += _drawn(boat_views.from_above(boat, above), room)
    items += _parts(assessment, above, "plan", room)
    rows = Rows(left, right, y - BAND + 2 * 3.2, foot + BAND - 2 * 3.2)
    now, later = waiting[: rows.count], waiting[rows.count :]
    marks = [_mark(one, above) for one in now]
    leaders, placed = balloons(marks, rows)
    for leader in leaders:
        room.run(leader.points)
    items += leaders
    items += _gravity_marks(assessment, above, room, profile=False)
    items += boat_views.named(boat, above, room, side=False)
    items += placed
    items += boat_views.bar(boat, per, (left, foot + BAND + _FOOT - 0.6), system)
    return items, later, foot + BAND + _FOOT + GAP


def _drawn(paths: Iterator[Path], room: Room) -> Iterator[Path]:
    """Outlines that words keep off where they can."""
    for path in paths:
        room.run(path.points, faint=True)
        yield path


def _mark(one: Numbered, view: View) -> Mark:
    carried = one.mass.carried
    told = f"{carried.tag} {carried.name}".strip()
    return Mark(one.number, one.key, told, view(carried.position.forward, carried.position.starboard))


def _parts(assessment: Assessment, view: View, name: str, room: Room) -> list[Path]:
    """Parts by their size; what goes ashore and the cables by a cross. Words keep off them."""
    items = {item.tag: item for item in assessment.specification.items}
    found: list[Path] = []
    for one in assessment.places.masses:
        carried = one.carried
        if carried.tag in items:
            found += boat_views.part(items[carried.tag], view, name)
            continue
        at = view(carried.position.forward, carried.position.starboard if name == "plan" else carried.position.up)
        colour = "#b00000" if carried.mass < 0.0 else LAYERS[PARTS]
        key = carried.tag or carried.name
        found += boat_views.cross(at, key, carried.name, (("part", key), ("view", name)), colour)
    # The largest first, so that none hides another.
    found.sort(key=lambda path: -_area(path))
    for path in found:
        room.run(path.points)
    return found


def _area(path: Path) -> float:
    across, down = [x for x, _ in path.points], [y for _, y in path.points]
    return (max(across) - min(across)) * (max(down) - min(down))


def _gravity_marks(assessment: Assessment, view: View, room: Room, profile: bool) -> Iterator[Path | Text]:
    """A ring where the centre of gravity was, a dot where it is."""
    places = assessment.places

    def on(point: spec.Point) -> Point:
        return view(point.forward, point.up if profile else point.starboard)

    before, after = on(places.gravity_before), on(places.gravity_after)
    corners = ring(before, _G_RING)
    yield Path((*corners, corners[0]), INK, LINE, key=f"{_G} before", told=f"{_G} before", layer=PARTS)
    yield Path(ring(after, _G_DOT), fill=INK, key=f"{_G} after", told=f"{_G} after", layer=PARTS)
    room.boxes.append((before[0] - _G_RING, before[1] - _G_RING, before[0] + _G_RING, before[1] + _G_RING))
    room.boxes.append((after[0] - _G_DOT, after[1] - _G_DOT, after[0] + _G_DOT, after[1] + _G_DOT))
    yield from room.beside(["G"], before, _G_RING, SMALL, _G)


def _columns(system: System, longer: float = 0.0) -> tuple[Column, ...]:
    metre = "m" if system == "si" else "ft"
    return (
        Column("no.", 8.0),
        Column("tag", 9.0),
        Column("part", 30.0 + longer),
        Column(f"mass, {unit_for('mass', system)}", 15.0, "end"),
        Column(f"fwd, {metre}", 12.0, "end"),
        Column(f"stbd, {metre}", 12.5, "end"),
        Column(f"up, {metre}", 11.0, "end"),
    )


def _row(one: Numbered, system: System) -> Row:
    carried = one.mass.carried
    return Row(
        (
            one.number,
            carried.tag or "–",
            carried.name,
            _number(carried.mass, unit_for("mass", system), 1),
            *_place(carried.position, system),
        ),
        one.key,
    )


def _total(assessment: Assessment, system: System) -> Row:
    mass = _number(assessment.weight.figures.floats.mass, unit_for("mass", system), 1)
    return Row(("", "", "brought aboard less taken ashore", mass, "", "", ""), "mass")


def _place(position: spec.Point, system: System) -> tuple[str, str, str]:
    unit, digits = ("m", 2) if system == "si" else ("ft", 1)
    return (
        _number(position.forward, unit, digits),
        _number(position.starboard, unit, digits),
        _number(position.up, unit, digits),
    )


def _number(value: float, unit: str, digits: int) -> str:
    words = f"{convert(value, unit):.{digits}f}".replace("-", "−")
    return words.removeprefix("−") if not words.strip("−0.") else words


def _gravity_columns(system: System) -> tuple[Column, ...]:
    metre = "m" if system == "si" else "ft"
    return (
        Column("G", 36.0),
        Column("mass of boat", 26.0, "end"),
        Column(f"fwd, {metre}", 12.0, "end"),
        Column(f"stbd, {metre}", 12.5, "end"),
        Column(f"up, {metre}", 11.0, "end"),
    )


def _gravity(assessment: Assessment, system: System) -> list[Row]:
    places, boat = assessment.places, assessment.specification
    floats = assessment.weight.figures.floats
    return [
        Row(
            ("before: ring", show(boat.displacement, "mass", system), *_place(places.gravity_before, system)),
            f"{_G} before",
        ),
        Row(
            ("after: dot", show(floats.displacement, "mass", system), *_place(places.gravity_after, system)),
            f"{_G} after",
        ),
    ]
