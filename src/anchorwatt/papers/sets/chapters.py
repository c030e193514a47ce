"""Pages of the screens as chapters of a paper: what every page says again, its title and the cautions, is left out."""

from __future__ import annotations

import datetime
from typing import TYPE_CHECKING

from anchorwatt.drawings.sheets.sheet_set import sheet_set
from anchorwatt.drawings.svg import svg
from anchorwatt.languages import language
from anchorwatt.papers import screens
from anchorwatt.papers.document import Chapter, Document, FullSheet, Printed
from anchorwatt.papers.page import Content, Drawn, Page, Section, Title, table
from anchorwatt.units import System

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def chapter(assessment: Assessment, heading: str, *body: Printed) -> Chapter:
    """A chapter of pages, pictures and whatever else."""
    again = screens.cautions(assessment)
    return Chapter(heading, tuple(part for printed in body for part in _parts(printed, again)))


def _parts(printed: Printed, again: Content) -> tuple[Printed, ...]:
    if isinstance(printed, Page):
        return tuple(part for one in printed.parts for part in _parts(one, again))
    if isinstance(printed, Title) or printed == again:
        return ()
    if isinstance(printed, Section) and any(isinstance(one, Drawn) for one in printed.body):
        return ()  # its words tell how to read characters, which are for terminals
    return (printed,)


def cautions(assessment: Assessment) -> Chapter:
    """What every paper says of the danger."""
    said = screens.cautions(assessment)
    return Chapter(said.heading, said.body)


def drawings(assessment: Assessment, system: System) -> tuple[Printed, ...]:
    """A list of the yard drawings, and they themselves at their true size."""
    made = full_sheets(assessment, system)
    rows = [(f"{number}", one.title) for number, one in enumerate(made, 1)]
    return (table(("", "drawing"), (">", "<"), rows, shares=(1, 20)), *made)


def full_sheets(assessment: Assessment, system: System) -> tuple[FullSheet, ...]:
    """All yard drawings at their true size; titles without the boat's name, which every page of the paper says."""
    boat = assessment.design.name
    return tuple(
        FullSheet(svg(one), one.title.removesuffix(f": {boat}"), one.description, one.width, one.height)
        for one in sheet_set(assessment, "ANSI B" if system == "us" else "A3", system)
    )


def paper(
    assessment: Assessment,
    system: System,
    name: str,
    title: str,
    subject: str,
    body: tuple[Printed, ...],
    *,
    contents: int = 2,
    cover: bool = True,
    whole: float = 0.4,
) -> Document:
    """A paper of a design: of its boat, its date, and the paper that goes with the units."""
    return Document(
        name=name,
        title=title,
        subject=subject,
        boat=assessment.specification.name,
        date=date_of(assessment),
        paper="us-letter" if system == "us" else "a4",
        body=body,
        contents=contents,
        cover=cover,
        language=language(),
        whole=whole,
    )


def date_of(assessment: Assessment) -> str:
    """The day that the paper is of: the offer's, "" where the design has none."""
    return assessment.specification.offer.date


def day_of(assessment: Assessment) -> datetime.date | None:
    """The same as a day; never that of the clock, for a design gives the same paper on any day."""
    date = date_of(assessment)
    return datetime.date.fromisoformat(date) if date else None
