"""Ducts and pipes: the plan with what runs from condensing unit to handlers and on to the cabins, and the list."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from anchorwatt.drawings.hull_outline import Metres
from anchorwatt.drawings.sheet import Path
from anchorwatt.drawings.sheets.body import AIR, LAYERS, LINE, REFRIGERANT, THICK, Body
from anchorwatt.drawings.sheets.fluid_parts import bore
from anchorwatt.drawings.sheets.listing import ROW, Column, Row
from anchorwatt.drawings.sheets.route_plan import (
    NAMED,
    RoutePlan,
    Stop,
    along_the_axes,
    along_then_across,
    route_plan,
    stretches,
    unsaid,
)
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.design.specification import Handler, Item, Point
    from anchorwatt.drawings.sheets.paper import Paper

COLUMNS = (
    Column("what", 24.0),
    Column("from", 36.0),
    Column("to", 52.0),
    Column("inside", 17.0, "end"),
    Column("length", 16.0, "end"),
    Column("flow", 18.0, "end"),
)

NOTES = (
    (
        "Full line: refrigerant, both lines; broken: supply air. Ways run along the boat's axes and are not to be "
        "measured: lengths are those of the list, from the design."
    ),
    (
        "The design says the length of the seawater hose but not where through-hull, strainer and outlet are: it is "
        "listed and not drawn. Sizes of refrigerant lines are those of the unit's maker."
    ),
)


def duct_route_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """The plan with ducts and refrigerant lines where their ends are known, and the list of all of them."""
    boat = assessment.specification
    handlers = _handlers(assessment)
    unit = next((item for item in boat.items if item.kind == "condensing_unit"), None)
    rows = _rows(assessment, handlers, unit, system)
    plan = route_plan(
        boat, paper, system, "Ducts and pipes in plan: port above, starboard below", (), ROW * (len(rows) + 1)
    )
    stops: list[Stop] = []
    lines: dict[str, tuple[Metres, ...]] = {}
    ducts: dict[str, tuple[Metres, ...]] = {}
    if unit is not None:
        stops.append(Stop(unit.tag, unit.position, unit.placed))
    for handler, item in handlers:
        if item is None:
            continue
        stops.append(Stop(item.tag, item.position, item.placed))
        if unit is not None:
            lines[item.tag] = _way(unit.position, item.position)
        for number, outlet in enumerate(handler.outlets, 1):
            at = boat.cabins[outlet.cabin].centre
            stops.append(Stop(_grille(item, number), at, False))
            # Across last: the refrigerant line comes across at the handler, and a duct there would hide it.
            here, there = (item.position.forward, item.position.starboard), (at.forward, at.starboard)
            ducts[_grille(item, number)] = along_then_across(here, there)
    _draw(plan, lines, REFRIGERANT, LINE, ())
    _draw(plan, ducts, AIR, THICK, (3.0, 1.2))
    left_out = plan.stops(stops)
    guessed = [stop.tag for stop in stops if not stop.known]
    return plan.bodies(
        paper,
        COLUMNS,
        rows,
        name="ducts-and-pipes",
        title="Ducts and pipes",
        about="Plan of the boat with ducts from air handlers to the cabins that they blow into and refrigerant lines "
        "from the condensing unit to the handlers, and their list with size and length.",
        notes=(*_notes(guessed), *unsaid(left_out)),
    )


def _notes(guessed: Sequence[str]) -> tuple[str, ...]:
    more = " …" if len(guessed) > NAMED else ""
    estimated = (
        "Estimated places, open squares: the design does not say where in its cabin a grille is, so it stands at the "
        f"middle: {', '.join(guessed[:NAMED])}{more}."
    )
    return (*NOTES, *((estimated,) if guessed else ()))


def _way(start: Point, end: Point) -> tuple[Metres, ...]:
    return along_the_axes((start.forward, start.starboard), (end.forward, end.starboard), 0.0)


def _handlers(assessment: Assessment) -> list[tuple[Handler, Item | None]]:
    """Handlers with the parts that they are."""
    boat = assessment.specification
    coils = [item for item in boat.items if item.kind == "air_handler"]
    handlers = boat.plant.handlers
    return [(handler, coils[n] if n < len(coils) else None) for n, handler in enumerate(handlers)]


def _grille(item: Item, number: int) -> str:
    return f"{item.tag}.{number}"


def _draw(
    plan: RoutePlan, ways: dict[str, tuple[Metres, ...]], layer: str, width: float, dashes: tuple[float, ...]
) -> None:
    drawn = {name: way for name, way in ways.items() if len(way) > 1}
    for stretch in stretches(drawn):
        points = plan.view.shape((stretch.start, stretch.end))
        data = (("runs", " ".join(stretch.runs)),)
        told = ", ".join(stretch.runs)
        plan.items.append(Path(points, LAYERS[layer], width, dashes, told=told, data=data, layer=layer))
        plan.room.run(points)


def _rows(
    assessment: Assessment, handlers: Sequence[tuple[Handler, Item | None]], unit: Item | None, system: System
) -> list[Row]:
    boat = assessment.specification
    source = "condensing unit" if unit is None else f"{unit.tag} condensing unit"
    sea = boat.plant.sea
    flow = show(assessment.seawater.flow, "liquid flow", system)
    rows = [
        Row(
            (
                "seawater",
                "through-hull",
                f"{source}, overboard",
                bore(sea.diameter, system),
                show(sea.length, "length", system),
                flow,
            ),
            "seawater",
        )
    ]
    for handler, item in handlers:
        name = handler.name if item is None else f"{item.tag} {handler.name}"
        length = show(handler.line_length, "length", system)
        rows.append(Row(("refrigerant", source, name, "by the maker", length, "–"), f"line {handler.name}"))
    for (handler, item), air in zip(handlers, assessment.handlers_air, strict=True):
        tag = "" if item is None else item.tag
        for number, (outlet, run) in enumerate(zip(handler.outlets, air.runs, strict=True), 1):
            where = boat.cabins[outlet.cabin].name
            grille = f"{tag}.{number} " if tag else ""
            rows.append(
                Row(
                    (
                        "supply air",
                        f"{tag} {handler.name}".strip(),
                        f"{grille}{outlet.name}, {where}",
                        bore(outlet.duct.diameter, system),
                        show(outlet.duct.length, "length", system),
                        show(run.airflow, "volume flow", system),
                    ),
                    f"duct {handler.name}, {outlet.name}",
                )
            )
    return rows
