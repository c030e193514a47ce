"""The draw command: the sheets that a yard builds from, as files, and what was written."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from anchorwatt.drawings.sheets.labels import is_of_labels
from anchorwatt.drawings.sheets.paper import PAPERS, PaperName
from anchorwatt.drawings.sheets.sheet_set import NAMES, sheet_set
from anchorwatt.errors import AnchorwattError
from anchorwatt.papers import screens
from anchorwatt.papers.page import Content, Paragraph, Words, page, section, table
from anchorwatt.papers.select import named
from anchorwatt.units import System

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.drawings.sheet import Sheet

Plain = dict[str, Any]

TOGETHER = "drawings.pdf"
"""The one file that all sheets go to as PDF; the other formats have a file a sheet."""

TRUE_SCALE = (
    "Print at 100 %, never “fit to page”: a sheet with a scale is true only then. Check its scale bar with a rule."
)


def subjects(names: Iterable[str]) -> tuple[str, ...]:
    """Names of subjects as they were asked for.

    Raises
    ------
    AnchorwattError
        no such subject.
    """
    return named("--sheet", "sheet", names, NAMES)


def paper_named(name: str) -> PaperName:
    """A size of paper by the name that an option or an address has for it, such as "ansi-b".

    Raises
    ------
    AnchorwattError
        no such paper.
    """
    for paper in PAPERS:
        if name.lower() == paper.lower().replace(" ", "-"):
            return paper
    raise AnchorwattError(f"found no paper “{name}”; allowed: {' or '.join(PAPERS)}")


def sheets(
    assessment: Assessment, paper: str, system: System, only: Collection[str] = (), since: Assessment | None = None
) -> tuple[Sheet, ...]:
    """The sheets of a design, those of some subjects, with clouds round what changed since an earlier one."""
    return sheet_set(assessment, paper_named(paper), system, only=only, since=since)


def for_cad(made: Sequence[Sheet]) -> tuple[Sheet, ...]:
    """Sheets that a set of DXF files holds: all but those of labels, unless there are no others.

    Labels go to a printer, as PDF or CSV; hundreds of them make the largest files of a set.
    """
    return tuple(sheet for sheet in made if not is_of_labels(sheet)) or tuple(made)


def files(made: Sequence[Sheet], formats: Collection[str]) -> dict[str, bytes]:
    """What is written, by its file's name."""
    from anchorwatt.drawings.as_dxf import dxf
    from anchorwatt.drawings.as_pdf import pdf
    from anchorwatt.drawings.font import faces
    from anchorwatt.drawings.sheet import words_on
    from anchorwatt.drawings.svg import svg

    found: dict[str, bytes] = {}
    if "dxf" in formats:
        found |= {f"{sheet.name}.dxf": dxf(sheet) for sheet in for_cad(made)}
    if "svg" in formats:
        style = faces(words for sheet in made for words in words_on(sheet))
        found |= {f"{sheet.name}.svg": svg(sheet, style).encode() for sheet in made}
    if "pdf" in formats:
        found[TOGETHER] = pdf(made)
    return found


def plain(made: Sequence[Sheet], written: Mapping[str, bytes]) -> Plain:
    """What `draw` shows, as plain data."""
    return {
        "sheets": [
            {"name": sheet.name, "title": sheet.title, "width_mm": sheet.width, "height_mm": sheet.height}
            for sheet in made
        ],
        "files": [{"name": name, "bytes": len(content)} for name, content in written.items()],
        "cautions": [TRUE_SCALE],
    }


def screen(assessment: Assessment, made: Sequence[Sheet], written: Mapping[str, bytes], out: Path) -> Content:
    """Which sheets were drawn, and where they are."""
    endings = sorted({Path(name).suffix for name in written if name != TOGETHER})
    where = [f"{out}/NAME{ending}" for ending in endings]
    if TOGETHER in written:
        where.append(f"{out / TOGETHER}, all sheets")
    rows = [(Words(sheet.name), Words(_subject(sheet, assessment))) for sheet in made]
    return page(
        screens.about(assessment),
        section(f"{len(made)} sheets drawn", table(("name", "what it shows"), ("<", "<"), rows)),
        section("Written to", *(Words(one) for one in where)),
        section("Before you print", Paragraph(TRUE_SCALE)),
        screens.cautions(assessment),
    )


def _subject(sheet: Sheet, assessment: Assessment) -> str:
    return sheet.title.removesuffix(f": {assessment.design.name}")
