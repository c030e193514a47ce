"""The seawater schematic: through-hull, seacock, strainer, pump, condenser, overboard."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.drawings.sheets.beside import Listed, Words, beside
from anchorwatt.drawings.sheets.body import WATER, Body
from anchorwatt.drawings.sheets.fluid_parts import READ, Marks, bore, part
from anchorwatt.drawings.sheets.listing import Column, Row
from anchorwatt.drawings.sheets.paper import Paper
from anchorwatt.drawings.sheets.tree import Branch, InLine, Link, Thing, Tree, tree_bodies
from anchorwatt.sizing.ends import Ends
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

SINKS = (
    "A through-hull, a hose or a strainer below the waterline can sink the boat: a seacock within reach, two clips "
    "a hose end, and a qualified yard; close it when nobody is aboard."
)

UNKNOWN = (
    (
        "The design knows one hose from the through-hull to the outlet: how it is shared among the stretches is for"
        " the yard. It does not know where through-hull, strainer and outlet are. An outlet that heel or trim can "
        "put under water needs a seacock of its own and a loop above the waterline: from memory of practice."
    ),
    (
        "Pump below the waterline, strainer before it, hose rising all the way to the condenser so that air leaves:"
        " common practice, no source."
    ),
)

COLUMNS = (Column("at the rated flow", 84.0), Column("figure", 26.0, "end"), Column("from", 40.0))


def seawater_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """The shared plant's seawater, from the sea and overboard again; it runs from left to right."""
    sheets = tree_bodies(
        (_tree(assessment, system),),
        paper,
        name="seawater",
        title="Seawater schematic",
        about="Seawater from the through-hull by seacock, strainer and pump to the condenser and overboard.",
        notes=(READ,),
        cautions=(SINKS,),
    )
    rows = _rows(assessment, system)
    return beside(sheets, paper, (Listed("Seawater circuit", COLUMNS, rows), *(Words(words) for words in UNKNOWN)))


def _tree(assessment: Assessment, system: System) -> Tree:
    boat, found = assessment.specification, assessment.seawater
    ends, sea, marks = Ends(boat), boat.plant.sea, Marks(assessment)
    plant, pump = ends.plant.tag, ends.pump
    opening = marks.marked(bore(sea.through_hull, system), "seawater", "through_hull")
    inlet = Thing(part(plant, "X", 1), "sea inlet, through-hull", opening, "THROUGH-HULL")
    strained = show(sea.strainer_loss, "pressure", system)
    strainer = Thing(part(plant, "H", 1), "strainer", strained, "STRAINER", f"strainer, takes {strained}")
    pumped = Thing(pump.tag, pump.name, show(boat.plant.pump_power, "power", system), "PUMP")
    heat = show(found.heat_rejected, "heat flow", system)
    condenser = Thing(
        plant, "condenser", heat, "HEAT-EXCHANGER", f"condenser of {boat.plant.name}, {heat} into the water"
    )
    outlet = Thing(part(plant, "X", 2), "overboard outlet", "", "OVERBOARD")
    seacock = InLine("VALVE", part(plant, "Q", 1), "seacock", inlet.tag)
    size = marks.marked(bore(sea.diameter, system), "seawater", "hose_diameter")
    speed = f"{show(found.flow, 'liquid flow', system)}, {show(found.hose_velocity, 'velocity', system)}"

    def hose(number: int, start: Thing, end: Thing, *in_line: InLine) -> Link:
        tag = part(plant, "W", number)
        told = f"{tag}, hose from {start.name} to {end.name}: {size} inside, {speed}"
        return Link(f"line:{tag}", tag, WATER, f"{tag}  {size} inside", speed, start.tag, end.tag, in_line, told)

    return Tree(
        condenser,
        left=(
            Branch(
                pumped,
                (hose(3, pumped, condenser),),
                (
                    Branch(
                        strainer,
                        (hose(2, strainer, pumped),),
                        (Branch(inlet, (hose(1, inlet, strainer, seacock),)),),
                    ),
                ),
            ),
        ),
        right=(Branch(outlet, (hose(4, condenser, outlet),)),),
    )


def _rows(assessment: Assessment, system: System) -> tuple[Row, ...]:
    boat, found = assessment.specification, assessment.seawater
    sea, marks = boat.plant.sea, Marks(assessment)

    def origin(name: str) -> str:
        return "estimated" if marks.estimated("seawater", name) else "design file"

    unit, worked = "unit's rating", "worked out"
    rows = (
        ("hose, inside", bore(sea.diameter, system), origin("hose_diameter")),
        ("hose, all of it, there and overboard", show(sea.length, "length", system), origin("hose_length")),
        ("right-angled bends and fittings like them", f"{sea.bends:g}", origin("bends")),
        ("through-hull, inside", show(sea.through_hull, "length", system), origin("through_hull")),
        ("lift over the waterline", show(sea.lift, "length", system), origin("lift")),
        ("flow", show(found.flow, "liquid flow", system), unit),
        ("velocity in the hose", show(found.hose_velocity, "velocity", system), worked),
        ("velocity in the through-hull", show(found.through_hull_velocity, "velocity", system), worked),
        ("pressure that the strainer takes", show(sea.strainer_loss, "pressure", system), unit),
        ("pressure that the condenser takes", show(sea.condenser_loss, "pressure", system), unit),
        ("pressure that all of it takes, lift too", show(found.pressure_needed, "pressure", system), worked),
        ("pressure that the pump gives", show(found.pump_pressure, "pressure", system), unit),
        ("heat into the water", show(found.heat_rejected, "heat flow", system), unit),
        ("water warmer by", show(found.rise, "temperature difference", system), worked),
        ("warmest sea of the year's months", show(found.warmest_sea, "temperature", system), "place"),
        ("condensing in it", show(found.condensing, "temperature", system), worked),
    )
    return tuple(Row(cells, f"seawater: {cells[0]}") for cells in rows)
