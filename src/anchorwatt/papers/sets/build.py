"""The build file: what to buy and when, what to cut, what to do in which order, and every drawing."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from anchorwatt.papers import fit, price, weight, wiring
from anchorwatt.papers.document import Chapter, Document
from anchorwatt.papers.page import Content, Paragraph, section, table
from anchorwatt.papers.sets import mounting, purchase, tasks
from anchorwatt.papers.sets.chapters import cautions, chapter, day_of, drawings, paper
from anchorwatt.sizing.terminals import Core, cores
from anchorwatt.sizing.terminations import lug_stud
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.wiring import WiredCircuit

Plain = dict[str, Any]

SUBJECT = "What to buy and when, wire schedule and cut list, tasks with hold points, mounting, and every drawing"

TORQUES = (
    ("M5", "#10", "4 N·m", "35 lbf·in"),
    ("M6", "1/4 in", "7 N·m", "62 lbf·in"),
    ("M8", "5/16 in", "14 N·m", "124 lbf·in"),
    ("M10", "3/8 in", "27 N·m", "239 lbf·in"),
    ("M12", "1/2 in", "45 N·m", "398 lbf·in"),
)
"""For a clean dry stud of stainless steel A2-70 or brass with a copper lug, the lower end of what sheets say. From
memory: the sheet of the maker of what is bolted decides."""

TORQUE_NOTE = (
    "Torques from memory, for clean dry studs and copper lugs: the sheet of the maker of the part decides. Lug on the "
    "bar, washer, spring washer, nut; nothing between lug and bar. Mark each nut when it is done, sign, and go round "
    "again after a week and after a season."
)


def document(assessment: Assessment, system: System, cost: bool = False) -> Document:
    """The build file of a design; what parts and hours cost the yard stands in it only when asked for."""

    def of(heading: str, *body: Content) -> Chapter:
        return chapter(assessment, heading, *body)

    body = (
        cautions(assessment),
        of("What to buy", *_bought(assessment, system, cost)),
        of("Purchase list", *purchase.purchase_list(assessment)),
        of("Tasks and hold points", *tasks.in_order(assessment)),
        of("Wire schedule", wiring.screen(assessment, system, cost)),
        of("Cut list", *_cut_list(assessment, system)),
        of("Torques", _torques(assessment), Paragraph(TORQUE_NOTE)),
        of("Where parts stand", weight.screen(assessment, system)),
        of("Mounting and ventilation", mounting.clearances(assessment, system), fit.screen(assessment, system)),
        Chapter("Drawings", drawings(assessment, system)),
    )
    return paper(assessment, system, "build", "Build file", SUBJECT, body, contents=1)


def _bought(assessment: Assessment, system: System, cost: bool) -> tuple[Content, ...]:
    """The bill of materials; with the yard's view of the price when that is asked for."""
    if cost:
        return (price.screen(assessment, day_of(assessment), cost=True, system=system),)
    story = assessment.offer
    return (price.contents(story.priced), section("Not counted", *map(Paragraph, story.not_counted)))


def workbook_sheets(assessment: Assessment, cost: bool = False) -> dict[str, list[Plain]]:
    """The tables of the build file as sheets of a workbook; what things cost the yard only when asked for."""
    bill = [
        {key: cell for key, cell in row.items() if not isinstance(cell, list | dict)}
        for row in price.bill(assessment, cost)
    ]
    cuts = [
        {
            "marker": core.marker,
            "from": core.start.whole,
            "to": core.end.whole,
            "size": wired.conductor.conductor.name,
            "colour": core.colour,
            "length_m": round(wired.circuit.length, 2),
            "function": wired.circuit.function,
        }
        for wired, core in _cut(assessment)
    ]
    return {
        "bill of materials": bill,
        "purchase list": purchase.purchase_rows(assessment),
        "tasks": tasks.rows(assessment),
        **({"labour": price.labour(assessment)} if cost else {}),
        "wires": wiring.rows(assessment, cost),
        "cut list": cuts,
    }


def _cut(assessment: Assessment) -> list[tuple[WiredCircuit, Core]]:
    """Every conductor with its circuit."""
    schedule = assessment.wiring.wiring.circuits
    circuits = {wired.tag: wired for wired in schedule}
    return [(circuits[core.circuit], core) for core in cores(schedule)]


def _cut_list(assessment: Assessment, system: System) -> list[Content]:
    """Every conductor by size, the thickest first, and by colour, the longest first."""
    groups: dict[str, list[tuple[WiredCircuit, Core]]] = {}
    for wired, core in sorted(_cut(assessment), key=lambda one: -one[0].conductor.conductor.area):
        groups.setdefault(wired.conductor.conductor.name, []).append((wired, core))
    parts: list[Content] = [
        Paragraph(
            "One row a conductor, with the length one way of the wire schedule: lay a tape along the run before it "
            "is cut. Both ends carry its marker."
        )
    ]
    heads = ("marker", "colour", "length", "from", "to", "ends of the circuit")
    for size, found in groups.items():
        rows = [
            (
                core.marker,
                core.colour,
                show(wired.circuit.length, "length", system),
                core.start.whole,
                core.end.whole,
                wired.lug,
            )
            for wired, core in sorted(found, key=lambda one: (one[1].colour, -one[0].circuit.length))
        ]
        listed = table(heads, ("<", "<", ">", "<", "<", "<"), rows, shares=(4, 4, 3, 5, 5, 8))
        parts.append(section(size, listed))
    return parts


def _torques(assessment: Assessment) -> Content:
    """A row a size of stud, with the circuits whose lugs are bolted to it."""
    metric = assessment.specification.wiring.metric
    bolted: dict[str, list[str]] = {}
    for one in assessment.wiring.wiring.circuits:
        bolted.setdefault(lug_stud(one.circuit, one.conductor, metric), []).append(one.tag)
    rows = [
        (stud, inches, torque, pounds, " ".join(bolted.get(stud if metric else inches, ())) or "—", "")
        for stud, inches, torque, pounds in TORQUES
    ]
    heads = ("stud", "or", "torque", "", "lugs of circuits", "tightened, signed")
    return table(heads, ("<", "<", ">", ">", "<", "<"), rows, free=4)
