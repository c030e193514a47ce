"""The hand-over file: what stays aboard, for the crew, the next technician and whoever buys the boat."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from anchorwatt.drawings.sheets.sheet_set import sheet_set
from anchorwatt.papers import bank, faults, regulator, wiring
from anchorwatt.papers.document import Chapter, Document, NewPage, Printed, Signatures
from anchorwatt.papers.page import Content, Paragraph, Side, Words, page, section, table
from anchorwatt.papers.sets.chapters import cautions, chapter, drawings, paper
from anchorwatt.papers.sets.crew import BLANK, emergencies, living
from anchorwatt.papers.sets.merged import NOT_ARCHIVAL, Manual
from anchorwatt.papers.sets.upkeep import calendar, warranty
from anchorwatt.units import System, show, show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

SUBJECT: Final = "Living with it, emergencies, settings as left, serial numbers, upkeep, and the drawings"


@dataclass(frozen=True)
class Result:
    """What a commissioning test came to."""

    test: str
    found: str
    verdict: str


TESTS: Final = (
    "insulation of each circuit",
    "polarity",
    "voltage drop under load",
    "earth-fault device trips",
    "charge current by engine speed",
    "alternator temperature after an hour",
    "air temperature split and flow at each grille",
    "seawater flow",
    "refrigerant charge and leaks",
    "condensate runs off",
    "noise by night",
    "a night on the bank, shore power unplugged",
)
"""What is tried before the boat is handed over, where no results are given."""


def document(
    assessment: Assessment, system: System, manuals: Sequence[Manual] = (), results: Sequence[Result] = ()
) -> Document:
    """The hand-over file of a design.

    Parameters
    ----------
    manuals : that `merged` puts behind it; the cover says that the whole is then no PDF/A
    results : of commissioning; without any there is a table to fill in

    Raises
    ------
    BadDesign
        the file has a serial number for a part that there is not.
    """

    def of(heading: str, *body: Printed) -> tuple[Printed, ...]:
        return (NewPage(), chapter(assessment, heading, *body))

    sheets = sheet_set(assessment, "ANSI B" if system == "us" else "A3", system)
    told = f"{SUBJECT}. {NOT_ARCHIVAL}" if manuals else SUBJECT
    body: tuple[Printed, ...] = (
        *of("How to live with the system", *living(assessment, system)),
        *of("When the alarm sounds", *emergencies(assessment, system)),
        *of("Cautions", *_cautions(assessment)),
        *of("What fails, what protects, what the crew does", *_fail_safe(assessment, system)),
        *of("Settings as left", *_settings(assessment, system)),
        *of("Serial numbers", *_register(assessment)),
        *of("Circuits", _circuits(assessment, system)),
        *of("Maintenance calendar", *calendar(assessment)),
        *of("Warranty", *warranty(assessment)),
        *of("Commissioning results", *_results(results)),
        chapter(assessment, "Makers' manuals", *_manuals(manuals)),
        chapter(assessment, "Handed over", Paragraph(HANDED), Signatures(("the yard", "the owner or skipper"))),
        Chapter("Drawings", (Paragraph(AS_BUILT), *drawings(sheets))),
    )
    return paper(assessment, system, "handover", "Hand-over file", told, body, contents=1)


AS_BUILT: Final = (
    "The drawings show the design file as it stood when this was printed. Whoever built or changed something otherwise "
    "marks it here by hand, signs it, and puts it into the file: only then are these the drawings as built."
)
HANDED: Final = (
    "The crew was shown: switching on and off, strainer and seacock, shore power, the bank's switch and its alarms, "
    "both pages for the crew. Alarms, extinguishers and life jackets were seen. Where something was not shown, it is "
    "written beside the name."
)


def _cautions(assessment: Assessment) -> list[Content]:
    """Every caution that the pages say, each once."""
    said = cautions(assessment)
    return [
        *(part for part in said.body if isinstance(part, Words)),
        section("The bank", *(Paragraph(words) for words in bank.CAUTIONS)),
        section("Where engines turn", *(Paragraph(words) for words in assessment.regulator.cautions)),
        section("Wiring", *(Paragraph(words) for words in assessment.wiring.cautions)),
        section("Where parts stand", *(Paragraph(words) for words in assessment.fit.cautions)),
    ]


def _fail_safe(assessment: Assessment, system: System) -> list[Content]:
    rows = []
    for found in assessment.faults:
        told = {part: words for part, _, words in found.story(system)}
        fails = Words(found.fault.name, "strong").then(f"\n{told['lost']}")
        crew = Words(f"Sees: {told['sees']}").then(f"\nDoes: {told['does']}")
        rows.append((fails, told["protects"], crew))
    heads = ("what fails, and what is lost", "what protects", "what the crew sees and does")
    return [
        Paragraph(PRACTICE),
        table(heads, ("<", "<", "<"), rows) if rows else Paragraph("This boat has nothing of what these are about."),
        faults.single_losses(assessment, system),
    ]


PRACTICE: Final = (
    "Figures come from runs of this design. What protects and what the crew does is common practice, no source; the "
    "makers' instructions come first."
)


def _settings(assessment: Assessment, system: System) -> list[Content]:
    return [
        Paragraph(LEFT),
        section("Thermostats", _thermostats(assessment, system)),
        section("Converters and shore power", _converters(assessment, system)),
        section("What the bank's management disconnects", page(*bank.limits(assessment.bank, system))),
        *regulator.set_up(assessment, system),
    ]


LEFT: Final = (
    "Figures are those of the design. Whoever left something set otherwise writes it beside the figure, with date and "
    "name; a line is for what the design does not know."
)


def _thermostats(assessment: Assessment, system: System) -> Content:
    specification = assessment.specification
    rows = []
    for number, cabin in enumerate(specification.cabins):
        spans: dict[float, list[str]] = {}
        for period in specification.plan:
            point = period.set_points[number]
            if not math.isnan(point):
                spans.setdefault(point, []).append(f"{show_clock(period.start)} to {show_clock(period.end)}")
        if spans:
            said = "\n".join(f"{show(at, 'temperature', system)}: {', '.join(when)}" for at, when in spans.items())
            rows.append((Words(cabin.name, "strong"), said, BLANK))
    return table(("cabin", "cooled to", "as left"), ("<", "<", "<"), rows)


def _converters(assessment: Assessment, system: System) -> Content:
    found = assessment.specification
    inverter, shore, charger, pack = found.inverter, found.shore, found.charger, found.bank
    rows: list[tuple[str, str]] = [
        (f"inverter {inverter.name}", _output(inverter.output_voltage, inverter.output_frequency, system)),
        ("inverter stops on low voltage of the bank", show(pack.cut_off_voltage, "voltage", system)),
    ]
    if charger is not None:
        rows += [
            (f"charger {charger.name}, absorb", show(pack.absorb_voltage, "voltage", system)),
            ("charger, float", show(pack.float_voltage, "voltage", system)),
            ("charger, current at which the bank counts as full", show(pack.tail_current, "current", system)),
            ("charger, most into the bank", show(pack.charge_current, "current", system)),
        ]
    if shore is not None:
        rows += [
            ("shore current limit, each leg", show(shore.current_limit, "current", system)),
            ("shore voltage below which the charger gives way", show(shore.lowest_voltage, "voltage", system)),
        ]
    lines = [(Words(what, "strong"), value, BLANK) for what, value in rows]
    return table(("", "design", "as left"), ("<", ">", "<"), lines)


def _output(voltage: float, frequency: float, system: System) -> str:
    told = [show(voltage, "voltage", system), show(frequency, "frequency", system)]
    known = [words for words, value in zip(told, (voltage, frequency), strict=True) if not math.isnan(value)]
    return ", ".join(known) or BLANK


def _register(assessment: Assessment) -> list[Content]:
    rows = [
        (
            Words(one.item.tag, "strong"),
            f"{one.item.count} × {one.item.name}" if one.item.count > 1 else one.item.name,
            one.place or "—",
            one.serial or "\n".join(BLANK for _ in range(one.item.count)),
        )
        for one in assessment.register
    ]
    return [
        table(("", "part", "stands in", "serial number"), ("<", "<", "<", "<"), rows),
        Paragraph("A number goes into the design file under serials, by the part's tag: then it is printed here."),
    ]


def _circuits(assessment: Assessment, system: System) -> Content:
    heads, rows = wiring.schedule(assessment, system)
    sides: tuple[Side, ...] = ("<", "<", ">", ">", "<", ">", "<")
    return table(heads, sides, [(Words(row[0], "strong"), *row[1:]) for row in rows])


def _results(results: Sequence[Result]) -> list[Content]:
    if results:
        rows = [(Words(one.test, "strong"), one.found, one.verdict) for one in results]
        return [table(("test", "found", "verdict"), ("<", "<", "<"), rows)]
    blank = [(Words(test, "strong"), BLANK, BLANK, BLANK) for test in TESTS]
    return [
        Paragraph("Not given when this was printed: fill in from the commissioning file, and sign each."),
        table(("test", "found", "verdict", "date, by whom"), ("<", "<", "<", "<"), blank),
    ]


def _manuals(manuals: Sequence[Manual]) -> list[Content]:
    if not manuals:
        return [
            Paragraph("None is bound in: keep the makers' manuals aboard beside this file, and name them here."),
            *(Words(BLANK) for _ in range(6)),
        ]
    rows = [(Words(one.name, "strong"), str(one.pages)) for one in manuals]
    return [
        Paragraph(f"They follow behind the drawings, each with a bookmark. {NOT_ARCHIVAL}"),
        table(("file", "pages"), ("<", ">"), rows),
    ]
