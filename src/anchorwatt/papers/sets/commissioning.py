"""The commissioning file: a test sheet by system for the sea and the air of the test day."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from anchorwatt.assessment.commissioning import commissioning
from anchorwatt.papers.document import Chapter, Document, NewPage, Printed, Signatures
from anchorwatt.papers.page import Content, Gap, Paragraph, Side, Words, section, table
from anchorwatt.papers.sets.chapters import cautions, paper
from anchorwatt.papers.sets.crew import BLANK
from anchorwatt.units import System, convert, show, unit_for

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.commissioning import Commissioning, Reading, Trial

Plain = dict[str, Any]

SUBJECT = "What to do, what to expect today, what to accept, and what a pass proves"
BOXES = "□ pass  □ fail"
SIGNED = "Every reading stands above with its verdict; what failed was mended and tested again, or is told beside it."
WHO_SIGN = ("who tested", "the licensed electrician", "the certified refrigeration technician")
INSTRUMENTS = (
    "insulation tester, 500 V",
    "low-resistance tester",
    "earth-fault tester",
    "multimeter",
    "clamp meter, AC and DC",
    "power meter",
    "thermometers, a pair",
    "hygrometer",
    "flow hood or anemometer",
    "refrigerant gauges and scale",
    "sound level meter",
    "thermal camera",
)


def document(assessment: Assessment, system: System, sea: float | None, air: float | None) -> Document:
    """The test sheet for a sea and an air temperature, °C; None = the design day's.

    Raises
    ------
    OutOfRange
        a temperature that no test day has.
    """
    made = commissioning(assessment, system, sea, air)
    body: list[Printed] = [cautions(assessment), _day(made, system), NewPage()]
    systems = dict.fromkeys(test.system for test in made.tests)
    body += [
        Chapter(name, tuple(_test(test, system) for test in made.tests if test.system == name)) for name in systems
    ]
    body.append(Chapter("Signed", (Paragraph(SIGNED), Signatures(WHO_SIGN))))
    return paper(assessment, system, "commissioning", "Commissioning file", SUBJECT, tuple(body), whole=1.0)


def sheet_rows(assessment: Assessment, system: System, sea: float | None, air: float | None) -> list[Plain]:
    """The test sheet as a table to fill in, a row a reading; every cell is words.

    Raises
    ------
    OutOfRange
        a temperature that no test day has.
    """
    return [
        {
            "system": test.system,
            "trial": test.name,
            "reading": one.what,
            **_accepted(one, system),
            "found": "",
            "verdict": "",
            "date": "",
            "by": "",
        }
        for test in commissioning(assessment, system, sea, air).tests
        for one in test.readings
    ]


def _accepted(one: Reading, system: System) -> Plain:
    """What is expected and accepted, in one unit for the row."""
    if one.words:
        return {"expected": one.words, "accept_from": "", "to": "", "unit": ""}
    known = [abs(value) for value in (one.expected, one.low, one.high) if not math.isnan(value)]
    unit = show(max(known), one.dimension, system).rpartition(" ")[2] if known else unit_for(one.dimension, system)

    def cell(value: float) -> str:
        if math.isnan(value):
            return ""
        # Three digits, which is what a meter shows; a hyphen before them would make a formula of the cell.
        return f"{float(f'{convert(value, unit, one.dimension):.3g}'):.10g}".replace("-", "−")

    return {"expected": cell(one.expected), "accept_from": cell(one.low), "to": cell(one.high), "unit": unit}


def _day(made: Commissioning, system: System) -> Chapter:
    heads = ("", "this sheet is for", "which is", "design day, warmest", "measured")
    sides: tuple[Side, ...] = ("<", ">", "<", ">", "<")
    rows = [
        (name, show(today, "temperature", system), _typed(typed), show(design, "temperature", system), BLANK)
        for name, today, typed, design in (
            ("sea", made.sea, made.sea_typed, made.design_sea),
            ("air outdoors", made.air, made.air_typed, made.design_air),
        )
    ]
    people = [(BLANK, BLANK, BLANK) for _ in range(4)]
    instruments = [(name, BLANK, BLANK, BLANK) for name in INSTRUMENTS]
    return Chapter(
        "The day, the people, the instruments",
        (
            table(heads, sides, rows, shares=(3, 4, 4, 4, 5)),
            Paragraph(
                "If the sea or the air measured is more than 2 K (4 °F) off, print this sheet again for them. Test in "
                "the order of the sheet: nothing comes alive before its dead tests have passed. A fail stops the "
                "tests that follow from it until it is mended and tested again."
            ),
            Paragraph(
                "The same readings stand in the workbook that goes with this sheet: filled in and saved as CSV, it "
                "gives the hand-over file its results."
            ),
            Gap(),
            table(
                ("date", "who tested", "licence or certificate"),
                ("<", "<", "<"),
                people,
                caption="People",
                shares=(2, 5, 5),
            ),
            Gap(),
            table(
                ("instrument", "make and serial number", "calibrated on", "until"),
                ("<", "<", "<", "<"),
                instruments,
                caption="Instruments",
                shares=(5, 8, 3, 3),
            ),
        ),
    )


def _typed(typed: bool) -> str:
    return "typed in" if typed else "the design day's"


def _test(test: Trial, system: System) -> Content:
    heads = ("reading of", "expected", "accept from", "to", "reading", "verdict")
    sides: tuple[Side, ...] = ("<", "<", ">", ">", "<", "<")
    rows = [_row(one, system) for one in test.readings]
    return section(
        test.name,
        *(Words("Caution. ", "fails").then(words, "strong") for words in test.cautions),
        Paragraph(test.do),
        table(heads, sides, rows, shares=(23, 16, 8, 8, 10, 11)),
        Words(f"Expected: {test.how} Source: {test.source}.", "aside"),
        Words("A pass today proves: ", "strong").then(test.proves),
        Words("It leaves open: ", "strong").then(test.leaves_open),
    )


def _row(one: Reading, system: System) -> tuple[str | Words, ...]:
    if one.words:
        return (one.what, Words(one.words, "strong"), "", "", BLANK, BOXES if one.judged else "")
    # A dash in "expected" would read as nought.
    expected = "" if math.isnan(one.expected) else show(one.expected, one.dimension, system)
    low, high = ("" if math.isnan(bound) else show(bound, one.dimension, system) for bound in (one.low, one.high))
    return (one.what, Words(expected, "strong"), low, high, BLANK, BOXES)
