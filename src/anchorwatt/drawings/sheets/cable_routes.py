"""Cable routes: the plan with all cables along the boat's axes, and the list of them with their lengths."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from anchorwatt.drawings.sheet import Path
from anchorwatt.drawings.sheets.body import LAYERS, ROUTES, SMALL, Body
from anchorwatt.drawings.sheets.listing import GAP, ROW, Column, Row, wide
from anchorwatt.drawings.sheets.route_plan import NAMED, RoutePlan, Stop, along_the_axes, route_plan, stretches, unsaid
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.drawings.sheets.paper import Paper
    from anchorwatt.sizing.wiring import WiredCircuit

_ONE = 0.25  # mm of width of one cable
_TOLD, _LONG = 4, 12.0  # cables from which on a stretch says how many, and mm that it is long then
_TRUNK = 0.0  # m to starboard of the line that cables run along where it is no way round

COLUMNS = (
    Column("tag", 9.0),
    Column("circuit", 33.0),
    Column("from → to", 19.0),
    Column("size", 17.0),
    Column("one way", 14.0, "end"),
)


def cable_route_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """The plan with all routes, and the list of cables on as many sheets as it takes."""
    wired = assessment.wiring.wiring.circuits
    boat = assessment.specification
    points = [point for one in wired for point in one.circuit.places or ()]
    plan = route_plan(
        boat, paper, system, "Cable routes in plan: port above, starboard below", points, _listed(len(wired), paper)
    )
    _routes(plan, wired)
    stops = _stops(assessment)
    left_out = plan.stops(stops)
    return plan.bodies(
        paper,
        COLUMNS,
        [_row(one, system) for one in wired],
        name="cable-routes",
        title="Cable routes",
        about=f"Plan of the boat with the routes of {len(wired)} cables along its axes, and their list with size and "
        "length.",
        notes=(*_notes(assessment, stops, system), *unsaid(left_out)),
    )


def _listed(count: int, paper: Paper) -> float:
    """mm of height that the list would have in as many columns as go side by side."""
    left, _, right, _ = paper.body
    return ROW * (math.ceil(count / max(int((right - left + GAP) / (wide(COLUMNS) + GAP)), 1)) + 1)


def _notes(assessment: Assessment, stops: Sequence[Stop], system: System) -> tuple[str, ...]:
    guessed = [stop.tag for stop in stops if not stop.known]
    wiring = assessment.specification.wiring
    ways = (
        f"Routes run along the boat's axes, as lengths are counted: distance times {wiring.routing_factor:g}, and "
        f"{show(wiring.slack, 'length', system)} of slack; rises and falls are not seen in plan. The yard finds the "
        "way round joinery, clear of heat and bilge water, and keeps AC away from DC."
    )
    more = " …" if len(guessed) > NAMED else ""
    estimated = (
        "Open squares are estimated places, the middle of a compartment or beside a part: "
        f"{', '.join(guessed[:NAMED])}{more}."
    )
    return (
        ways,
        "A line is wider the more cables it stands for; the number beside it tells how many.",
        *((estimated,) if guessed else ()),
    )


def _routes(plan: RoutePlan, wired: Sequence[WiredCircuit]) -> None:
    ways = {}
    for one in wired:
        if one.circuit.places is None:
            continue
        start, end = one.circuit.places
        way = along_the_axes((start.forward, start.starboard), (end.forward, end.starboard), _TRUNK)
        if len(way) > 1:
            ways[one.tag] = way
    found = sorted(stretches(ways), key=lambda stretch: len(stretch.runs))
    drawn: list[tuple[int, Path]] = []
    for stretch in found:
        points = plan.view.shape((stretch.start, stretch.end))
        width = _ONE * math.sqrt(len(stretch.runs))
        data = (("circuits", " ".join(stretch.runs)),)
        drawn.append(
            (
                len(stretch.runs),
                Path(points, LAYERS[ROUTES], width, told=", ".join(stretch.runs), data=data, layer=ROUTES),
            )
        )
        plan.room.run(points)
    plan.items += [path for _, path in drawn]
    for count, path in reversed(drawn):
        (x, y), (other_x, other_y) = path.points
        if count < _TOLD or math.dist(*path.points) < _LONG:
            continue
        off = 0.5 * path.width + 2.0
        middle = 0.5 * (x + other_x), 0.5 * (y + other_y)
        ways_off = ((0.0, -off), (0.0, off)) if y == other_y else ((off + 0.8, 0.0), (-off - 0.8, 0.0))
        places = [(middle[0] + a, middle[1] + b) for a, b in ways_off]
        plan.items += plan.room.put([f"{count}"], places, SMALL)


def _stops(assessment: Assessment) -> list[Stop]:
    placed = {item.position for item in assessment.specification.items if item.placed}
    tags = {item.tag for item in assessment.specification.items}
    found: dict[str, Stop] = {}
    for one in assessment.wiring.wiring.circuits:
        if one.circuit.places is None:
            continue
        for tag, at in zip((one.circuit.start, one.circuit.end), one.circuit.places, strict=True):
            known = at in placed and tag in tags
            found.setdefault(tag, Stop(tag, at, known))
    return list(found.values())


def _row(one: WiredCircuit, system: System) -> Row:
    circuit, conductor = one.circuit, one.conductor
    return Row(
        (
            circuit.tag,
            circuit.function,
            f"{circuit.start} → {circuit.end}",
            conductor.size,
            show(circuit.length, "length", system),
        ),
        f"circuit:{circuit.function}",
    )
