"""The papers command: the papers of a job as files, and what was written."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from anchorwatt.assessment.commissioning import COLDEST_AIR, COLDEST_SEA, WARMEST_AIR, WARMEST_SEA
from anchorwatt.assessment.trial_results import Filled, read_results
from anchorwatt.errors import AnchorwattError, BadQuantity, OutOfRange
from anchorwatt.languages import ENGLISH, LANGUAGES, speaking
from anchorwatt.papers import screens
from anchorwatt.papers.as_csv import csv_text
from anchorwatt.papers.as_xlsx import workbook
from anchorwatt.papers.document import Document, House
from anchorwatt.papers.house import read_house
from anchorwatt.papers.own_names import own_names
from anchorwatt.papers.page import Content, Words, page, section, table
from anchorwatt.papers.select import named
from anchorwatt.papers.sets import build, commissioning, engineering, handover, offer
from anchorwatt.papers.sets.merged import Manual, manuals, merged
from anchorwatt.papers.typeset import Leaf, pages, pdf
from anchorwatt.units import System, parse, show

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
    results : of the trials, as they were written into the commissioning file's table
    cost : whether the build file shows what parts and hours cost the yard
    language : of the papers, one of `languages.LANGUAGES`
    """

    house: House | None = None
    sea: float | None = None
    air: float | None = None
    manuals: tuple[Manual, ...] = ()
    results: tuple[Filled, ...] = ()
    cost: bool = False
    language: str = ENGLISH


@dataclass(frozen=True)
class Paper:
    """One kind of paper."""

    name: str
    title: str
    about: str
    document: Callable[[Assessment, System, Wishes], Document]
    tables: Callable[[Assessment, System, Wishes], dict[str, list[Plain]]] | None = None  # of the workbook with it
    comes_back: bool = False  # whether its one table is filled in and given back: it is written as CSV too
    takes_manuals: bool = False
    takes_temperatures: bool = False  # of the day of the trials


@dataclass(frozen=True)
class Edition:
    """A paper as somebody gives it out; its file and its pages are made when asked for, and once."""

    paper: Paper
    document: Document
    house: House
    manuals: tuple[Manual, ...] = ()

    @cached_property
    def pdf(self) -> bytes:
        made = pdf(self.document, self.house)
        return merged(made, self.manuals).file if self.paper.takes_manuals else made

    @cached_property
    def pages(self) -> tuple[Leaf, ...]:
        """As pictures; manuals have none."""
        return pages(self.document, self.house)


PAPERS: tuple[Paper, ...] = (
    Paper("offer", "Offer", offer.SUBJECT, lambda found, system, wishes: offer.document(found, system, wishes.house)),
    Paper("broker", "Page for the broker", offer.BROKER_SUBJECT, lambda found, system, _: offer.broker(found, system)),
    Paper(
        "engineering",
        "Engineering file",
        engineering.SUBJECT,
        lambda found, system, _: engineering.document(found, system),
    ),
    Paper(
        "build",
        "Build file",
        build.SUBJECT,
        lambda found, system, wishes: build.document(found, system, wishes.cost),
        lambda found, _, wishes: build.workbook_sheets(found, wishes.cost),
    ),
    Paper(
        "commissioning",
        "Commissioning file",
        commissioning.SUBJECT,
        lambda found, system, wishes: commissioning.document(found, system, wishes.sea, wishes.air),
        lambda found, system, wishes: {"trials": commissioning.sheet_rows(found, system, wishes.sea, wishes.air)},
        comes_back=True,
        takes_temperatures=True,
    ),
    Paper(
        "handover",
        "Hand-over file",
        handover.SUBJECT,
        lambda found, system, wishes: handover.document(found, system, wishes.manuals, wishes.results),
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


def wishes(
    house: Path | None,
    sea: str | None,
    air: str | None,
    behind: Sequence[Path] = (),
    cost: bool = False,
    results: Path | None = None,
    language: str = ENGLISH,
) -> Wishes:
    """What was asked for, read and looked at.

    Raises
    ------
    AnchorwattError
        there are no papers in that language; the settings file, a manual or the table of results cannot be used; or a
        text is no temperature.
    """
    named("--language", "language", (language,), tuple(LANGUAGES))
    return Wishes(
        house=None if house is None else read_house(house),
        sea=_temperature("--sea", sea),
        air=_temperature("--air", air),
        manuals=manuals(behind),
        results=() if results is None else read_results(results),
        cost=cost,
        language=language,
    )


@dataclass(frozen=True)
class Outside:
    """A temperature of the day of the trials, as it may be typed in."""

    name: str  # of it among the `Wishes`
    label: str
    coldest: float  # °C
    warmest: float

    def read(self, words: str, system: System) -> float:
        """°C from words.

        Raises
        ------
        AnchorwattError
            they are no temperature, or one that no day of trials has.
        """
        found = float(parse(words, "temperature"))
        if not self.coldest <= found <= self.warmest:
            low, high = (show(bound, "temperature", system) for bound in (self.coldest, self.warmest))
            raise OutOfRange(f"found {show(found, 'temperature', system)}; allowed: from {low} to {high}")
        return found


OUTSIDE: tuple[Outside, ...] = (
    Outside("sea", "Sea on the day of the trials", COLDEST_SEA, WARMEST_SEA),
    Outside("air", "Air outdoors on that day", COLDEST_AIR, WARMEST_AIR),
)


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
    for paper in papers:
        found[f"{paper.name}.pdf"] = edition(assessment, paper, system, said).pdf
        if paper.tables is not None:
            found[f"{paper.name}.xlsx"] = tables(assessment, paper, system, said)
        if paper.comes_back:
            found[f"{paper.name}.csv"] = to_fill_in(assessment, paper, system, said)
    return found


def edition(assessment: Assessment, paper: Paper, system: System, said: Wishes) -> Edition:
    """A paper of a design."""
    house, own = said.house or _yard(assessment), _own(assessment, said)
    with speaking(said.language, own):
        document = replace(paper.document(assessment, system, said), own=own)
    return Edition(paper, document, house, said.manuals)


def _own(assessment: Assessment, said: Wishes) -> frozenset[str]:
    """What the design names, and words that came with what was asked for: they are somebody's own, too."""
    terms = said.house.terms if said.house is not None else ()
    results = (words for one in said.results for words in (one.found, one.date, one.by))
    return own_names(assessment.design).union(terms, (one.name for one in said.manuals), results)


def tables(assessment: Assessment, paper: Paper, system: System, said: Wishes) -> bytes:
    """The workbook that goes with a paper.

    Raises
    ------
    KeyError
        it has none.
    """
    if paper.tables is None:
        raise KeyError(paper.name)
    with speaking(said.language, _own(assessment, said)):
        return workbook(assessment.specification.name, paper.tables(assessment, system, said))


def to_fill_in(assessment: Assessment, paper: Paper, system: System, said: Wishes) -> bytes:
    """The table of a paper that comes back, as CSV.

    Raises
    ------
    KeyError
        it has none.
    """
    if paper.tables is None or not paper.comes_back:
        raise KeyError(paper.name)
    (rows,) = paper.tables(assessment, system, said).values()
    # Some spreadsheets take a file for UTF-8 by its first bytes only.
    return csv_text(rows).encode("utf-8-sig")


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
    endings = ("pdf", *(("xlsx",) if paper.tables else ()), *(("csv",) if paper.comes_back else ()))
    return "\n".join(f"{paper.name}.{ending}" for ending in endings)
