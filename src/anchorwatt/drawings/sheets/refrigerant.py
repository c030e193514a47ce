"""The refrigerant schematic: condensing unit to air handlers, liquid and suction line of each."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from anchorwatt.drawings.sheets.beside import Block, Listed, Words, beside
from anchorwatt.drawings.sheets.body import REFRIGERANT, Body
from anchorwatt.drawings.sheets.fluid_parts import READ, Marks, handler_things, part
from anchorwatt.drawings.sheets.listing import Column, Row
from anchorwatt.drawings.sheets.paper import Paper
from anchorwatt.drawings.sheets.tree import Branch, InLine, Link, Thing, Tree, tree_bodies
from anchorwatt.sizing.ends import Ends
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.design.specification import Handler

CERTIFIED = (
    "Refrigerant only by certified people: it burns skin with cold, it smothers in a small cabin, and its pressure "
    "bursts what is not made for it. The standards and the law where the boat lies decide."
)

BY_MAKER = "size by the maker's sheet"

PRACTICE = (
    (
        "Which size a line has, how high it may rise and how long it may be, is in the maker's sheet of the unit: "
        "Anchorwatt does not size refrigerant lines. Service valves are shown at the unit as is usual, from memory:"
        " the maker's sheet tells how many there are."
    ),
    (
        "Insulate suction lines all the way, seal their insulation against damp air, fasten lines against chafe, "
        "and keep joints out of sleeping cabins: common practice, no source."
    ),
    "Any occupied cabin that a line merely passes through counts too, and the design does not know of it.",
)

COLUMNS = (Column("charge and limits", 84.0), Column("figure", 26.0, "end"), Column("from", 40.0))


def refrigerant_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """The shared plant's refrigerant: out of the unit by the liquid line, back by the suction line."""
    boat = assessment.specification
    ends, marks = Ends(boat), Marks(assessment)
    rating = show(boat.plant.circuit.rated_capacity, "heat flow", system)
    unit = Thing(ends.plant.tag, ends.plant.name, rating, "COMPRESSOR", boat.plant.name)
    branches = tuple(
        Branch(
            thing,
            tuple(_line(unit, handler, thing, marks, number, system) for number in (1, 2)),
        )
        for handler, thing in handler_things(assessment, system)
    )
    sheets = tree_bodies(
        (Tree(unit, right=branches),) if branches else (),
        paper,
        name="refrigerant",
        title="Refrigerant schematic",
        about=f"{len(branches)} air handlers, each with its liquid and its suction line to the condensing unit.",
        notes=(READ, "→ runs from the unit to the handler, ← back to it, while it cools."),
        cautions=(CERTIFIED,),
    )
    return beside(sheets, paper, _blocks(assessment, system))


def _line(unit: Thing, handler: Handler, thing: Thing, marks: Marks, number: int, system: System) -> Link:
    """The liquid line, 1, or the suction line, 2, of a handler."""
    tag = part(thing.tag, "W", number)
    length = marks.marked(show(handler.line_length, "length", system), "handlers", handler.name, "line_length")
    name = ("liquid →", "← suction")[number - 1]
    valve = InLine("VALVE", part(thing.tag, "Q", number), "", unit.tag)
    told = f"{tag}, {('liquid', 'suction')[number - 1]} line of {thing.name}: {length}, {BY_MAKER}"
    start, end = (unit.tag, thing.tag) if number == 1 else (thing.tag, unit.tag)
    return Link(f"line:{tag}", tag, REFRIGERANT, f"{tag}  {name}  {length}", BY_MAKER, start, end, (valve,), told)


def _blocks(assessment: Assessment, system: System) -> tuple[Block, ...]:
    boat, found = assessment.specification, assessment.refrigerant
    plant, safety = boat.plant, boat.plant.safety
    unit, standard, worked = "unit's rating", "safety standards", "worked out"
    rows: list[tuple[str, str, str]] = [
        ("refrigerant", safety.name, unit),
        ("safety class", safety.safety_class, "ISO 817, ASHRAE 34"),
        ("warming potential over 100 years", f"{safety.warming_potential:g}", standard),
        ("charge of the unit as delivered", show(plant.charge, "mass", system), unit),
        ("which is for lines of, all together", show(plant.charged_length, "length", system), unit),
    ]
    words = [Words(one) for one in PRACTICE]
    if found is None:
        words.append(Words("The plant reaches no occupied cabin: charge and limits are not worked out."))
    else:
        cabin = boat.cabins[found.cabin].name
        rows += [
            ("lines, one way, all handlers together", show(found.line_length, "length", system), worked),
            ("charge with those lines", show(found.charge, "mass", system), worked),
            (f"smallest cabin: {cabin}", show(found.volume, "volume", system), "design"),
            ("if all of it leaked into that cabin", show(found.concentration, "density", system), worked),
            ("practical limit", show(found.practical_limit, "density", system), standard),
            ("limit with ventilation (QLMV)", show(found.limit_with_ventilation, "density", system), standard),
            ("limit with two measures (QLAV)", show(found.limit_with_two_measures, "density", system), standard),
        ]
        if not math.isnan(found.largest_charge):
            rows.append(("largest charge, as it burns", show(found.largest_charge, "mass", system), worked))
        words += [Words(f"It asks for {found.measures.value}: {one}.") for one in found.remedies]
        words.append(Words(f"Limits: {safety.source}. A first look: the standard in force decides."))
    listed = tuple(Row(cells, f"refrigerant: {cells[0]}") for cells in rows)
    return (Listed("Refrigerant", COLUMNS, listed), *words)
