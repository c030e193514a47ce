"""The condensate schematic: drip tray of every handler, trap, drain hose, and where the water goes."""

from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

from anchorwatt.drawings.sheets.beside import Listed, Words, beside
from anchorwatt.drawings.sheets.body import WATER, Body
from anchorwatt.drawings.sheets.fluid_parts import READ, handler_things, part
from anchorwatt.drawings.sheets.listing import Column, Row
from anchorwatt.drawings.sheets.paper import Paper
from anchorwatt.drawings.sheets.tree import Branch, InLine, Link, Thing, Tree, tree_bodies
from anchorwatt.physics.condensate import WATER_DENSITY
from anchorwatt.sizing.condensate import DRAIN, SLOPE
from anchorwatt.sizing.ends import Ends
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

FUMES = (
    "A drain that ends in the bilge or near an exhaust can bring petrol vapour and carbon monoxide into the cabin: "
    "end it in a sump or overboard, and keep its trap full. An outlet near the waterline can flood the boat."
)

UNKNOWN = (
    "The design says neither which way a drain takes nor its length nor its size: the size and the fall on the "
    "lines are those of a usual drain, from memory of practice. Nor does it say on which side of its fan a tray "
    "lies: a trap is shown in each drain. A line stands for both outlets of a tray."
)

COLUMNS = (
    Column("out of the air of", 60.0),
    Column("in the night", 26.0, "end"),
    Column("in 24 hours", 26.0, "end"),
)


def condensate_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """Every handler's drain to the sump or outlet; water runs from left to right."""
    plant = Ends(assessment.specification).plant.tag
    end = Thing(part(plant, "C", 1), "sump with its own pump, or overboard above the waterline", "", "DRAIN")
    usual = f"usual: {show(DRAIN, 'length', system)} inside, fall {show(SLOPE, 'share', system)}"
    drains = []
    for handler, thing in handler_things(assessment, system):
        tag = part(thing.tag, "W", 3)
        trap = InLine("TRAP", part(thing.tag, "R", 1), "", thing.tag)
        told = f"{tag}, drain hose from the drip tray of {thing.name}"
        link = Link(f"line:{tag}", tag, WATER, f"{tag}  drain hose", usual, thing.tag, end.tag, (trap,), told)
        tray = dataclasses.replace(thing, name=f"drip tray, {handler.name}", rating="")
        drains.append(Branch(tray, (link,)))
    sheets = tree_bodies(
        (Tree(end, left=tuple(drains)),) if drains else (),
        paper,
        name="condensate",
        title="Condensate schematic",
        about=f"{len(drains)} air handlers, each with its trap and drain hose to a sump or overboard.",
        notes=(READ, UNKNOWN),
        cautions=(FUMES,),
    )
    listed = Listed("Condensate", COLUMNS, _rows(assessment, system))
    found = assessment.condensate
    flows = (
        f"In the wettest hour {show(found.peak_flow, 'fuel flow', system)} of all handlers together; one usual drain "
        f"carries {show(found.drain_volume, 'fuel flow', system)}, half full."
    )
    advice = [Words(f"{one.text} ({one.source})") for one in assessment.drain_advice]
    return beside(sheets, paper, (listed, Words(flows), *advice))


def _rows(assessment: Assessment, system: System) -> tuple[Row, ...]:
    """Water by cabin: which handler of a cabin it runs off is not known."""
    found, cabins = assessment.condensate, assessment.specification.cabins

    def volume(mass: float) -> str:
        return show(mass / WATER_DENSITY, "liquid volume", system)

    rows = [
        Row((cabins[one.cabin].name, volume(one.night), volume(one.day)), f"condensate:{cabins[one.cabin].name}")
        for one in found.cabins
        if one.day > 0.0
    ]
    night, day = (show(one, "liquid volume", system) for one in (found.night_volume, found.day_volume))
    return (*rows, Row(("the boat", night, day), "condensate:the boat"))
