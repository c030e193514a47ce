"""The engineering file: what the design rests on, what follows from it, every check and every formula."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt import drawings
from anchorwatt.papers import (
    bank,
    check,
    faults,
    fit,
    generator,
    loads,
    plant,
    power,
    recharge,
    regulator,
    screens,
    voltage,
    week,
    weight,
    wiring,
)
from anchorwatt.papers.document import Document, Picture, Printed
from anchorwatt.papers.page import Content, Paragraph, Words, section, table
from anchorwatt.papers.sets.chapters import cautions, chapter, paper
from anchorwatt.papers.sets.formulas import formulas
from anchorwatt.units import System

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

SUBJECT = "Inputs, loads, plant, bank, charging, wiring, weight, every check, and the formulas they rest on"


def document(assessment: Assessment, system: System) -> Document:
    """The engineering file of a design."""
    pictures = {
        "The night: charge, cabins and power": drawings.night_picture(assessment, system),
        "Gains of the boat by cause and hour": drawings.gains_picture(assessment, system),
        "What the plant gives and draws over seawater and load": drawings.plant_picture(assessment, system),
        "Engine power, propeller and belts over engine speed": drawings.engine_picture(assessment, system),
        "How the boat floats with the parts": drawings.heel_trim_picture(assessment, system),
    }
    night, gains, map_, engine, floats = (Picture(svg, told) for told, svg in pictures.items())

    def of(heading: str, *body: Printed) -> Printed:
        return chapter(assessment, heading, *body)

    body = (
        cautions(assessment),
        of(
            "The answers",
            section("Where the weather is from", Words(assessment.weather_source)),
            _answers(assessment, system),
        ),
        of("The night", night, screens.night(assessment, system)),
        of("Loads by cabin and hour", gains, loads.screen(assessment, system)),
        of("The cooling plant", map_, plant.screen(assessment, system)),
        of("The bank", bank.screen(assessment, system)),
        of("Inverter, transformer and shore power", power.screen(assessment, system)),
        of("Recharging at the engine", engine, recharge.screen(assessment, system)),
        of("Regulators", regulator.screen(assessment, system)),
        of("A week of days", week.screen(assessment, system)),
        of("When something fails", faults.screen(assessment, system, commands=False)),
        of("12, 24 and 48 V", voltage.screen(assessment, system)),
        of("Beside a generator", generator.screen(assessment, system)),
        of("Wiring", wiring.screen(assessment, system)),
        of("Weight, heel and trim", floats, weight.screen(assessment, system)),
        of("What fits where", fit.screen(assessment, system)),
        of("Every check", check.screen(assessment, system)),
        of("Every estimate", Paragraph(ESTIMATED), screens.estimates(assessment)),
        of("Every formula", *_formulas()),
    )
    return paper(assessment, system, "engineering", "Engineering file", SUBJECT, body, contents=1)


ESTIMATED = (
    "Figures that nobody typed, each with the rule that gave it, in the units of the design file. Whoever knows better "
    "types the figure there; it is then no estimate any more."
)


def _answers(assessment: Assessment, system: System) -> Content:
    """Each answer of the headline with how it was found."""
    rows = []
    for answer in assessment.headline:
        found = screens.figure(answer.value, answer.dimension, system)
        about = Words(answer.question, "strong")
        if answer.note:
            about = about.then(f"\n{answer.note}", "aside")
        how = Words(f"{answer.why.formula}.").then(f"\n{answer.why.source}", "aside")
        rows.append((about, Words(found, "strong"), how))
    return table(("answer", "", "how, and source"), ("<", ">", "<"), rows)


def _formulas() -> list[Content]:
    found = formulas()
    parts: list[Content] = [
        Paragraph(
            "In SI units, temperatures in °C. What is said to be from memory, or common practice without a source, is "
            "an editable default and no more."
        )
    ]
    for subject in dict.fromkeys(one.subject for one in found):
        rows = [
            (Words(one.name, "strong").then(f"\n{one.about}"), one.source) for one in found if one.subject == subject
        ]
        parts.append(section(subject, table(("what it gives", "source"), ("<", "<"), rows, shares=(2, 3))))
    return parts
