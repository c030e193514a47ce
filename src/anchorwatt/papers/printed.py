"""The papers command: the papers of a job as files, and what was written."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from anchorwatt.catalogue.part import nearest
from anchorwatt.errors import AnchorwattError
from anchorwatt.papers import screens
from anchorwatt.papers.as_xlsx import workbook
from anchorwatt.papers.document import Document, House
from anchorwatt.papers.page import Content, Words, page, section, table
from anchorwatt.papers.sets import build, engineering
from anchorwatt.papers.typeset import pdf
from anchorwatt.units import System

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

Plain = dict[str, Any]


@dataclass(frozen=True)
class Paper:
    """One kind of paper."""

    name: str
    about: str
    document: Callable[[Assessment, System], Document]
    tables: Callable[[Assessment], dict[str, list[Plain]]] | None = None  # of the workbook that goes with it


PAPERS: tuple[Paper, ...] = (
    Paper("engineering", engineering.SUBJECT, engineering.document),
    Paper("build", build.SUBJECT, build.document, build.workbook_sheets),
)
NAMES = tuple(paper.name for paper in PAPERS)


def asked(names: Iterable[str]) -> tuple[Paper, ...]:
    """Papers by name, all of them where none is named.

    Raises
    ------
    AnchorwattError
        no such paper.
    """
    wanted = tuple(names) or NAMES
    for name in wanted:
        if name not in NAMES:
            hint = nearest(name, NAMES)
            raise AnchorwattError(f"--set: found no papers “{name}”{hint}; allowed: one of: {', '.join(NAMES)}")
    return tuple(paper for paper in PAPERS if paper.name in wanted)


def files(assessment: Assessment, papers: Collection[Paper], system: System, house: House) -> dict[str, bytes]:
    """What is written, by its file's name."""
    found: dict[str, bytes] = {}
    for paper in papers:
        found[f"{paper.name}.pdf"] = pdf(paper.document(assessment, system), house)
        if paper.tables is not None:
            found[f"{paper.name}.xlsx"] = workbook(assessment.specification.name, paper.tables(assessment))
    return found


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
