"""The duct schematic: every air handler with what it draws through and what it blows through."""

from __future__ import annotations

import dataclasses
import math
from typing import TYPE_CHECKING

from anchorwatt.drawings.sheets.beside import Listed, beside
from anchorwatt.drawings.sheets.body import AIR, Body
from anchorwatt.drawings.sheets.fluid_parts import READ, Marks, bore, grille, handler_things, part
from anchorwatt.drawings.sheets.listing import Column, Row
from anchorwatt.drawings.sheets.paper import Paper
from anchorwatt.drawings.sheets.tree import Branch, Link, Thing, Tree, tree_bodies
from anchorwatt.sizing.ducts import DuctRun, HandlerAir
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from collections.abc import Sequence

    from anchorwatt.assessment import Assessment
    from anchorwatt.design.specification import Cabin, Handler, Outlet

MONOXIDE = (
    "Carbon monoxide kills asleep: no grille, duct or handler may draw from the engine space or the bilge; seal all"
    " that passes through them, and keep an alarm in every sleeping cabin."
)

AIR_FLOWS = (
    "Air runs from left to right, at full fan. The design knows a return grille's face and no return duct. Dampers "
    "are not shown: a fan with more to spare is turned down when the boat is commissioned."
)

FIRST_DUCT = 4
"""Number of a handler's first duct, after its liquid line, suction line and drain hose."""

HANDLERS = (
    Column("handler", 20.0),
    Column("rated", 24.0, "end"),
    Column("gives", 24.0, "end"),
    Column("ducts take", 24.0, "end"),
    Column("fan has", 24.0, "end"),
)
GRILLES = (
    Column("grille", 20.0),
    Column("wanted", 24.0, "end"),
    Column("gets", 24.0, "end"),
    Column("through it", 24.0, "end"),
    Column("duct, grille", 24.0, "end"),
)


def duct_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """Each handler in a row of its own: return grille, handler, supply grilles."""
    handlers, marks = handler_things(assessment, system), Marks(assessment)
    every = tuple(zip(handlers, assessment.handlers_air, strict=True))
    cabins = assessment.specification.cabins
    trees = [_tree(handler, thing, air, cabins, marks, system) for (handler, thing), air in every]
    count = sum(len(air.runs) for air in assessment.handlers_air)
    sheets = tree_bodies(
        trees,
        paper,
        name="ducts",
        title="Duct schematic",
        about=f"{len(trees)} air handlers with their return grilles and {count} supply grilles.",
        notes=(READ, AIR_FLOWS),
        cautions=(MONOXIDE,),
        stacked=True,
    )
    if not every:
        return sheets
    fans = tuple(_fan_row(thing, air, system) for (_, thing), air in every)
    runs = tuple(
        _grille_row(grille(thing.tag, number), run, system)
        for (_, thing), air in every
        for number, run in enumerate(air.runs, 1)
    )
    return beside(sheets, paper, (Listed("Fans", HANDLERS, fans), Listed("Grilles", GRILLES, runs)))


def _tree(
    handler: Handler, thing: Thing, air: HandlerAir, cabins: Sequence[Cabin], marks: Marks, system: System
) -> Tree:
    own = cabins[handler.cabin].name
    face = show(handler.return_area, "area", system, digits=2)
    marked = marks.marked(face, "handlers", handler.name, "return_grille", "area")
    tag = grille(thing.tag, 0)
    back = Thing(
        tag, f"return grille, {own}", marked, "GRILLE", f"{tag}, return grille of {thing.tag} in {own}, {face}"
    )
    drawn = f"{show(air.airflow, 'volume flow', system)}, {show(air.return_velocity, 'velocity', system)} at its face"
    link = Link(f"air:{tag}", tag, AIR, "return air", drawn, tag, thing.tag, (), f"return air of {thing.tag}: {drawn}")
    runs = zip(handler.outlets, air.runs, strict=True)
    return Tree(
        dataclasses.replace(thing, name=handler.name),
        left=(Branch(back, (link,)),),
        right=tuple(
            _duct(handler, thing, outlet, run, number, cabins[outlet.cabin].name, marks, system)
            for number, (outlet, run) in enumerate(runs, 1)
        ),
    )


def _duct(
    handler: Handler, thing: Thing, outlet: Outlet, run: DuctRun, number: int, cabin: str, marks: Marks, system: System
) -> Branch:
    duct = outlet.duct
    key = ("handlers", handler.name, "outlets", outlet.name, "duct")
    at, tag = grille(thing.tag, number), part(thing.tag, "W", FIRST_DUCT - 1 + number)
    size = marks.marked(bore(duct.diameter, system), *key, "diameter")
    length = marks.marked(show(duct.length, "length", system), *key, "length")
    bends = marks.marked(f"{duct.bends:g} bends", *key, "bends")
    face = marks.marked(show(duct.grille_area, "area", system, digits=2), *key, "grille_area")
    flow = f"{show(run.airflow, 'volume flow', system)}, {show(run.velocity, 'velocity', system)}, {bends}"
    told = (
        f"{tag}, duct from {thing.tag} to {at}, {outlet.name} in {cabin}: {size} inside, {length} long, {flow}, "
        f"{show(duct.insulation, 'length', system)} of insulation"
    )
    end = Thing(at, f"{outlet.name}, {cabin}", face, "GRILLE", f"{at}, {outlet.name} in {cabin}, {face}")
    above = f"{tag}  {size} inside, {length} long"
    return Branch(end, (Link(f"air:{tag}", tag, AIR, above, flow, thing.tag, at, (), told),))


def _fan_row(thing: Thing, air: HandlerAir, system: System) -> Row:
    cells = (
        thing.tag,
        show(air.rated_airflow, "volume flow", system),
        show(air.airflow, "volume flow", system),
        _pressure(air.pressure_needed),
        _pressure(air.spare_pressure),
    )
    return Row(cells, f"fan:{thing.tag}")


def _grille_row(tag: str, run: DuctRun, system: System) -> Row:
    cells = (
        tag,
        show(run.wanted, "volume flow", system),
        show(run.airflow, "volume flow", system),
        show(run.grille_velocity, "velocity", system),
        _pressure(run.pressure),
    )
    return Row(cells, f"grille:{tag}")


def _pressure(value: float) -> str:
    """In Pa whatever the system: in psi a duct's pressure rounds to nothing. A dash where a handler has no duct."""
    return show(value, "pressure", "si") if math.isfinite(value) else "–"
