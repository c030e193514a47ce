"""The hand-over file: what stays aboard, for the crew, the next technician and whoever buys the boat."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from anchorwatt.assessment.commissioning import commissioning
from anchorwatt.assessment.trial_results import Filled, trial_results
from anchorwatt.papers import bank, faults, regulator, wiring
from anchorwatt.papers.document import Behind, Chapter, Document, NewPage, Printed, Signatures
from anchorwatt.papers.page import Content, Paragraph, Side, Words, page, section, table
from anchorwatt.papers.sets import results
from anchorwatt.papers.sets.chapters import cautions, chapter, full_sheets, paper
from anchorwatt.papers.sets.crew import BLANK, emergencies, living
from anchorwatt.papers.sets.merged import NOT_ARCHIVAL, Manual
from anchorwatt.papers.sets.upkeep import calendar, warranty
from anchorwatt.units import System, show, show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

WHOLE: Final = 0.45
"""Share of a page up to which a section stays on one: tables to write in are not parted if they need not be."""

SUBJECT: Final = "Living with it, emergencies, settings as left, serial numbers, upkeep, and the drawings"


def document(
    assessment: Assessment, system: System, manuals: Sequence[Manual] = (), filled: Sequence[Filled] = ()
) -> Document:
    """The hand-over file of a design.

    Parameters
    ----------
    manuals : that `merged` puts behind it; the cover says that the whole is then no PDF/A
    filled : of the trials, the commissioning file's table read back; without any there is one to fill in by hand

    Raises
    ------
    BadDesign
        the file has a serial number for a part that there is not.
    BadResults
        the results are of another boat's trials.
    """

    def of(heading: str, *body: Printed) -> tuple[Printed, ...]:
        return (NewPage(), chapter(assessment, heading, *body))

    told = f"{SUBJECT}. {NOT_ARCHIVAL}" if manuals else SUBJECT
    body: tuple[Printed, ...] = (
        *of("How to live with the system", *living(assessment, system)),
        *of("When the alarm sounds", *emergencies(assessment, system)),
        *of("Cautions", *_cautions(assessment)),
        *of("What fails, what protects, what the crew does", *_fail_safe(assessment, system)),
        chapter(assessment, "Settings as left", *_settings(assessment, system)),
        *of("Serial numbers", *_register(assessment)),
        *of("Circuits", _circuits(assessment, system)),
        *of("Maintenance calendar", *calendar(assessment)),
        *of("Warranty", *warranty(assessment)),
        *of("Commissioning results", *_results(assessment, system, filled)),
        *of("Makers' manuals", *_manuals(manuals)),
        chapter(assessment, "Handed over", Paragraph(HANDED), Signatures(("the yard", "the owner or skipper"))),
        # The table of contents lists them with their pages.
        Chapter("Drawings", (Paragraph(AS_BUILT), *full_sheets(assessment, system))),
    )
    return paper(assessment, system, "handover", "Hand-over file", told, body, whole=WHOLE)


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
        Paragraph(faults.PRACTICE),
        table(heads, ("<", "<", "<"), rows, shares=(5, 4, 8)) if rows else Paragraph(NO_FAULTS),
        faults.single_losses(assessment, system),
    ]


NO_FAULTS: Final = "This boat has nothing of what these are about."


def _settings(assessment: Assessment, system: System) -> list[Printed]:
    regulators = regulator.as_left(assessment, system, BLANK)
    return [
        Paragraph(LEFT),
        section("Thermostats", _thermostats(assessment, system)),
        section("Converters and shore power", _converters(assessment, system)),
        section("What the bank's management disconnects", page(*bank.limits(assessment.bank, system, BLANK))),
        *((NewPage(), *regulators) if regulators else ()),
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
    return table(("cabin", "cooled to", "as left"), ("<", "<", "<"), rows, shares=(5, 11, 5))


def _converters(assessment: Assessment, system: System) -> Content:
    found = assessment.specification
    inverter, shore, charger, pack = found.inverter, found.shore, found.charger, found.bank
    rows: list[tuple[str, str]] = [
        ("inverter, output", _output(inverter.output_voltage, inverter.output_frequency, system)),
        ("inverter, stops on low voltage of the bank", show(pack.cut_off_voltage, "voltage", system)),
    ]
    if charger is not None:
        rows += [
            ("charger, absorb", show(pack.absorb_voltage, "voltage", system)),
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
    return table(("", "design", "as left"), ("<", ">", "<"), lines, shares=regulator.LEFT_SHARES)


def _output(voltage: float, frequency: float, system: System) -> str:
    told = [show(voltage, "voltage", system), show(frequency, "frequency", system)]
    known = [words for words, value in zip(told, (voltage, frequency), strict=True) if not math.isnan(value)]
    return ", ".join(known) or BLANK


def _register(assessment: Assessment) -> list[Content]:
    rows = [
        (
            Words(one.item.tag, "strong"),
            one.item.counted,
            one.place or "—",
            one.serial or "\n".join(BLANK for _ in range(one.item.count)),
        )
        for one in assessment.register
    ]
    return [
        table(("", "part", "stands in", "serial number"), ("<", "<", "<", "<"), rows, shares=(2, 9, 6, 10)),
        Paragraph("A number goes into the design file under serials, by the part's tag: then it is printed here."),
    ]


def _circuits(assessment: Assessment, system: System) -> Content:
    heads, rows = wiring.schedule(assessment, system)
    sides: tuple[Side, ...] = ("<", "<", ">", ">", "<", ">", "<")
    lines: list[tuple[str | Words, ...]] = [(Words(row[0], "strong"), *row[1:]) for row in rows]
    return table(heads, sides, lines, shares=(4, 36, 4, 5, 8, 4, 15))


def _results(assessment: Assessment, system: System, filled: Sequence[Filled]) -> list[Content]:
    # Names of trials and readings are the same for every sea and air.
    trials = commissioning(assessment, system).tests
    return results.told(trial_results(trials, filled)) if filled else results.to_fill_in(trials)


def _manuals(manuals: Sequence[Manual]) -> list[Printed]:
    if not manuals:
        return [
            Paragraph("None is bound in: keep the makers' manuals aboard beside this file, and name them here."),
            *(Words(BLANK) for _ in range(8)),
        ]
    return [
        Paragraph(f"They follow behind the last page of this file, each with a bookmark. {NOT_ARCHIVAL}"),
        Behind(("file", "pages", "begins on page"), tuple((one.name, one.pages) for one in manuals)),
    ]
