"""The papers command: the papers of a job as files, and what was written."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from anchorwatt.errors import AnchorwattError, BadQuantity
from anchorwatt.papers import screens
from anchorwatt.papers.as_xlsx import workbook
from anchorwatt.papers.document import Document, House
from anchorwatt.papers.house import read_house
from anchorwatt.papers.page import Content, Words, page, section, table
from anchorwatt.papers.select import named
from anchorwatt.papers.sets import build, commissioning, engineering, handover, offer
from anchorwatt.papers.sets.merged import Manual, manuals, merged
from anchorwatt.papers.typeset import pdf
from anchorwatt.units import System, parse

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

Plain = dict[str, Any]


@dataclass(frozen=True)
class Wishes:
    """What is asked for beside the design.

    Parameters
    ----------
    house : who gives the papers out; None = the yard of the design's drawings
    sea, air : °C on the day of the trials; None = those of the design
    manuals : of the makers, behind the papers that take them
    """

    house: House | None = None
    sea: float | None = None
    air: float | None = None
    manuals: tuple[Manual, ...] = ()


@dataclass(frozen=True)
class Paper:
    """One kind of paper."""

    name: str
    about: str
    document: Callable[[Assessment, System, Wishes], Document]
    tables: Callable[[Assessment], dict[str, list[Plain]]] | None = None  # of the workbook that goes with it
    takes_manuals: bool = False


PAPERS: tuple[Paper, ...] = (
    Paper("offer", offer.SUBJECT, lambda found, system, wishes: offer.document(found, system, wishes.house)),
    Paper("broker", offer.BROKER_SUBJECT, lambda found, system, _: offer.broker(found, system)),
    Paper("engineering", engineering.SUBJECT, lambda found, system, _: engineering.document(found, system)),
    Paper("build", build.SUBJECT, lambda found, system, _: build.document(found, system), build.workbook_sheets),
    Paper(
        "commissioning",
        commissioning.SUBJECT,
        lambda found, system, wishes: commissioning.document(found, system, wishes.sea, wishes.air),
    ),
    Paper(
        "handover",
        handover.SUBJECT,
        lambda found, system, wishes: handover.document(found, system, wishes.manuals),
        takes_manuals=True,
    ),
)
NAMES = tuple(paper.name for paper in PAPERS)


def asked(names: Iterable[str]) -> tuple[Paper, ...]:
    """Papers by name, all of them where none is named.

    Raises
    ------
    AnchorwattError
        no such paper.
    """
    wanted = named("--set", "papers", names, NAMES) or NAMES
    return tuple(paper for paper in PAPERS if paper.name in wanted)


def wishes(house: Path | None, sea: str | None, air: str | None, behind: Sequence[Path] = ()) -> Wishes:
    """What was asked for, read and looked at.

    Raises
    ------
    AnchorwattError
        the settings file or a manual cannot be used, or a text is no temperature.
    """
    giver = None if house is None else read_house(house)
    return Wishes(giver, _temperature("--sea", sea), _temperature("--air", air), manuals(behind))


def _temperature(option: str, text: str | None) -> float | None:
    if text is None:
        return None
    try:
        return float(parse(text, "temperature"))
    except BadQuantity as refused:
        raise AnchorwattError(f"{option}: {refused}") from None


def files(assessment: Assessment, papers: Collection[Paper], system: System, said: Wishes) -> dict[str, bytes]:
    """What is written, by its file's name."""
    found: dict[str, bytes] = {}
    house = said.house or _yard(assessment)
    for paper in papers:
        made = pdf(paper.document(assessment, system, said), house)
        found[f"{paper.name}.pdf"] = merged(made, said.manuals).file if paper.takes_manuals else made
        if paper.tables is not None:
            found[f"{paper.name}.xlsx"] = workbook(assessment.specification.name, paper.tables(assessment))
    return found


def _yard(assessment: Assessment) -> House:
    """The yard as the design's drawings name it."""
    said = assessment.design.drawings
    return House(name="" if said is None else said.yard)


def plain(written: Mapping[str, bytes]) -> Plain:
    """What `papers` shows, as plain data."""
    return {"files": [{"name": name, "bytes": len(content)} for name, content in written.items()]}


def screen(assessment: Assessment, papers: Collection[Paper], out: Path) -> Content:
    """Which papers were written, and where they are."""
    rows = [(Words(_named(paper)), Words(paper.about)) for paper in papers]
    return page(
        screens.about(assessment),
        section("Papers", table(("file", "what it holds"), ("<", "<"), rows, free=1)),
        section("Written to", Words(str(out))),
        screens.cautions(assessment),
    )


def _named(paper: Paper) -> str:
    return f"{paper.name}.pdf" if paper.tables is None else f"{paper.name}.pdf\n{paper.name}.xlsx"
