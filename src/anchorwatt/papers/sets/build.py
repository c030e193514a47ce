"""The build file: what to buy and when, what to cut, what to do in which order, and every drawing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from anchorwatt.drawings.sheets.sheet_set import sheet_set
from anchorwatt.papers import fit, price, weight, wiring
from anchorwatt.papers.document import Chapter, Document
from anchorwatt.papers.page import Content, Paragraph, Table, Words, section, table
from anchorwatt.papers.sets import mounting, purchase
from anchorwatt.papers.sets.chapters import cautions, chapter, date_of, drawings, paper
from anchorwatt.sizing.terminals import Core, cores
from anchorwatt.sizing.terminations import lug_stud
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.wiring import WiredCircuit

Plain = dict[str, Any]

SUBJECT = "What to buy and when, wire schedule and cut list, tasks with hold points, mounting, and every drawing"

HOLD_POINTS = (
    ("before the old plant is taken out", "photographs of what is there; every circuit that stays is named"),
    (
        "before joinery is closed",
        "routes, supports and chafe looked at; ducts sealed; condensate runs by trial with water",
    ),
    ("before the bank is connected", "insulation and polarity measured; every torque signed; fuses in; covers on"),
    ("before an alternator is belted up", "regulator settings read back; stop of the field proved; belts aligned"),
    (
        "before shore power is plugged in",
        "earth continuity measured; neutral bond at one place; earth-fault device tried",
    ),
    ("before the seacock is opened", "hoses clipped twice; strainer closed; somebody stands by the seacock"),
    ("before refrigerant is let in", "lines pressed and evacuated by a certified person, readings written down"),
    ("before the boat leaves the yard", "the commissioning file filled in and signed; the hand-over file aboard"),
)
"""Where work stops until somebody has looked and signed: what before, and what must hold. Practice, from memory."""

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


def document(assessment: Assessment, system: System) -> Document:
    """The build file of a design."""
    today = price.day(date_of(assessment) or None)

    def of(heading: str, *body: Content) -> Chapter:
        return chapter(assessment, heading, *body)

    sheets = sheet_set(assessment, "ANSI B" if system == "us" else "A3", system)
    body = (
        cautions(assessment),
        of("What to buy, and when", price.screen(assessment, today, cost=True, system=system)),
        of("Purchase list", *purchase.purchase_list(assessment)),
        of("Tasks and hold points", _tasks(assessment), Paragraph(HOLD), _hold_points()),
        of("Wire schedule", wiring.screen(assessment, system)),
        of("Cut list", *_cut_list(assessment, system)),
        of("Torques", _torques(assessment), Paragraph(TORQUE_NOTE)),
        of("Where parts stand", weight.screen(assessment, system)),
        of("Mounting and ventilation", mounting.clearances(assessment, system), fit.screen(assessment, system)),
        Chapter("Drawings", drawings(sheets)),
    )
    return paper(assessment, system, "build", "Build file", SUBJECT, body, contents=1)


HOLD = (
    "Work stops at each hold point until somebody who is competent for it has looked and signed. The points are "
    "practice, from memory; local codes and licensed or certified people decide which apply and who signs."
)


def workbook_sheets(assessment: Assessment) -> dict[str, list[Plain]]:
    """The tables of the build file as sheets of a workbook."""
    bill = [
        {key: cell for key, cell in row.items() if not isinstance(cell, list | dict)}
        for row in price.bill(assessment, cost=True)
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
        "labour": price.labour(assessment),
        "wires": wiring.rows(assessment),
        "cut list": cuts,
        "hold points": [{"before": before, "what must hold": what} for before, what in HOLD_POINTS],
    }


def _tasks(assessment: Assessment) -> Content:
    """Tasks in the order of the design, with room to sign."""
    rows = [
        (f"{number}", row["task"], f"{row['labour_hours']:g} h", "")
        for number, row in enumerate(price.labour(assessment), 1)
    ]
    return section("Tasks, in order", table(("", "task", "hours", "done, signed"), (">", "<", ">", "<"), rows))


def _hold_points() -> Content:
    rows = [(Words(before, "strong"), what, "") for before, what in HOLD_POINTS]
    return section("Hold points", table(("stop", "what must hold", "looked at, signed"), ("<", "<", "<"), rows))


def _cut(assessment: Assessment) -> list[tuple[WiredCircuit, Core]]:
    """Every conductor with its circuit."""
    schedule = assessment.wiring.wiring.circuits
    circuits = {wired.tag: wired for wired in schedule}
    return [(circuits[core.circuit], core) for core in cores(schedule)]


def _cut_list(assessment: Assessment, system: System) -> list[Content]:
    """Every conductor by size and colour, the longest first."""
    groups: dict[tuple[str, str], list[tuple[WiredCircuit, Core]]] = {}
    for wired, core in _cut(assessment):
        groups.setdefault((wired.conductor.conductor.name, core.colour), []).append((wired, core))
    parts: list[Content] = [
        Paragraph(
            "One row a conductor, with the length one way of the wire schedule: lay a tape along the run before it "
            "is cut. Both ends carry its marker."
        )
    ]
    for (size, colour), found in groups.items():
        rows = [
            (core.marker, show(wired.circuit.length, "length", system), core.start.whole, core.end.whole, wired.lug)
            for wired, core in sorted(found, key=lambda one: -one[0].circuit.length)
        ]
        parts.append(section(f"{size}, {colour}", _cuts(rows)))
    return parts


def _cuts(rows: Sequence[tuple[str, ...]]) -> Table:
    return table(("marker", "length", "from", "to", "ends of the circuit"), ("<", ">", "<", "<", "<"), rows)


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
