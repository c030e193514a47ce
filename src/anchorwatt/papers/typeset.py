"""Sets a document as PDF with Typst: the content goes in as data, so that no words of a user can be taken as markup."""

from __future__ import annotations

import json
import re
import tempfile
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from importlib import resources
from pathlib import Path
from typing import Any, Final, assert_never

from anchorwatt.drawings import font
from anchorwatt.drawings.signs import STANDS_IN, one_line
from anchorwatt.languages import Interpreter, interpreted, said, speaking
from anchorwatt.papers.document import (
    Behind,
    Chapter,
    Document,
    FullSheet,
    House,
    NewPage,
    Picture,
    Printed,
    Signatures,
)
from anchorwatt.papers.page import Drawn, Gap, Page, Paragraph, Section, Table, Title, Words

STANDARD: Final = "a-2a"
"""PDF/A-2a, ISO 19005-2: for long keeping, with all letters in the file, and tagged so that it can be read aloud."""

TEMPLATE, LOGO = "document.typ", "logo"

UNDATED = (2000, 1, 1)
"""What the file says where the document has no date: PDF/A wants one, and the clock would make each file another."""

Node = dict[str, Any]


_VIEW_BOX: Final = re.compile(rb'<svg viewBox="0 0 ([0-9.]+) ([0-9.]+)"')


@dataclass(frozen=True)
class Leaf:
    """A page of a paper as a picture.

    Parameters
    ----------
    svg : bytes of an SVG file that needs nothing but itself
    width, height : points
    """

    svg: bytes
    width: float
    height: float


def pdf(document: Document, house: House) -> bytes:
    """The document as the bytes of a PDF/A file; the same document always gives the same bytes.

    A sign that the shipped font lacks becomes a square.
    """
    (made,) = _compiled(document, house, format="pdf", pdf_standards=[STANDARD], timestamp=0)
    return made


def pages(document: Document, house: House) -> tuple[Leaf, ...]:
    """The pages of `pdf` as pictures.

    Typst keeps what it has set, so that a document's file and its pages take little more time than one of them.
    """
    return tuple(_leaf(made) for made in _compiled(document, house, format="svg"))


def _leaf(svg: bytes) -> Leaf:
    ((width, height),) = _VIEW_BOX.findall(svg[:200])
    return Leaf(svg, float(width), float(height))


def _compiled(document: Document, house: House, **how: Any) -> list[bytes]:
    """What Typst makes of a document: a file, or one for each page."""
    # Loaded where it is used.
    import typst

    with tempfile.TemporaryDirectory(prefix="anchorwatt-paper-") as folder:
        root = Path(folder)
        template = resources.files("anchorwatt.papers").joinpath(TEMPLATE).read_bytes()
        (root / TEMPLATE).write_bytes(template)
        if house.logo is not None:
            (root / LOGO).write_bytes(house.logo)
        made = typst.compile(
            str(root / TEMPLATE),
            root=folder,
            font_paths=[str(font.REGULAR.parent)],
            ignore_system_fonts=True,
            sys_inputs={"data": json.dumps(as_data(document, house))},
            **how,
        )
    return [bytes(one) for one in made] if isinstance(made, list) else [bytes(made)]


def as_data(document: Document, house: House, by: Interpreter | None = None) -> Node:
    """What the template is given; `by` stands in for who says it in the document's language."""
    with interpreted(document.language, by) if by else speaking(document.language, document.own):
        return {
            "title": _told(document.title),
            "subject": _told(document.subject),
            "boat": printable(document.boat),
            "date": printable(document.date),
            "day": [int(part) for part in document.date.split("-")] if document.date else list(UNDATED),
            "paper": document.paper,
            "contents": document.contents,
            "cover": document.cover,
            "whole": document.whole,
            "language": document.language,
            "house": {
                "name": printable(house.name),
                "address": printable(house.address),
                "colour": house.colour,
                "logo": house.logo_kind if house.logo is not None else "",
            },
            "contents title": _told("Contents"),
            "date of signing": _told("date"),
            "body": [node for printed in document.body for node in _nodes(printed)],
        }


def printable(words: str) -> str:
    """Words that the shipped font can print, a square for each sign that it lacks; lines stay lines.

    Example
    -------
    >>> printable("12 V"), printable("✗ #set text(red)")
    ('12 V', '□ #set text(red)')
    """
    known = font.widths()
    told = "\n".join(one_line(line) for line in words.split("\n"))
    lacking = {ord(sign): STANDS_IN for sign in set(told) if sign != "\n" and ord(sign) not in known}
    return told.translate(lacking)


def _told(words: str) -> str:
    """Words of ours in the paper's language, as they can be printed."""
    return printable(said(words))


def _nodes(printed: Printed) -> list[Node]:
    match printed:
        case Page():
            return [node for part in printed.parts for node in _nodes(part)]
        case Title() | Gap():
            return [] if isinstance(printed, Title) else [{"kind": "gap"}]
        case Chapter():
            body = [node for part in printed.body for node in _nodes(part)]
            return [{"kind": "chapter", "heading": _told(printed.heading), "body": body}]
        case Section():
            body = [node for part in printed.body for node in _nodes(part)]
            return [{"kind": "section", "heading": _told(printed.heading), "body": body}]
        case Paragraph():
            return [{"kind": "paragraph", "words": [_run("", printed.words)]}]
        case Words():
            return [{"kind": "words", "words": _runs(printed)}]
        case Table():
            return [_table(printed)]
        case Drawn():
            return []  # characters in lines of equal width are for terminals; papers have pictures
        case Picture():
            return [
                {
                    "kind": "picture",
                    "svg": printable(printed.svg),
                    "told": _told(printed.told),
                    "width": printed.width,
                }
            ]
        case FullSheet():
            facts = {"width": printed.width, "height": printed.height}
            told = {"title": _told(printed.title), "told": _told(printed.told)}
            return [{"kind": "sheet", "svg": printable(printed.svg), **told, **facts}]
        case NewPage():
            return [{"kind": "new page"}]
        case Behind():
            files = [{"name": printable(name), "pages": pages} for name, pages in printed.files]
            return [{"kind": "behind", "heads": [_told(head) for head in printed.heads], "files": files}]
        case Signatures():
            return [{"kind": "signatures", "who": [_told(who) for who in printed.who]}]
        case _:
            assert_never(printed)


def _table(table: Table) -> Node:
    heads, rows = [_told(head) for head in table.heads], [[_runs(cell) for cell in row] for row in table.rows]
    return {
        "kind": "table",
        "caption": _told(table.caption),
        "heads": heads if any(heads) else [],
        "sides": ["left" if side == "<" else "right" for side in table.sides],
        "widths": list(table.shares) or _widths(heads, rows),
        "rows": rows,
    }


def _widths(heads: Sequence[str], rows: Sequence[Sequence[list[Node]]]) -> list[float]:
    """What each column asks for: the length of its longest line, the free one's more evenly, 0 where it is short.

    Short columns are as wide as their words; long ones share what is left by what they ask for.
    """
    columns = [list(column) for column in zip(*rows, strict=True)] if rows else [[] for _ in heads]
    of_heads = [_longest(head.split("\n")) for head in heads]
    of_cells = [_longest(line for cell in column for line in _lines(cell)) for column in columns]
    longest = [max(both) for both in zip(of_heads, of_cells, strict=True)]
    asked = [
        float(max(head, cell)) if cell > _SHORT or head > _SHORT_HEAD else 0.0
        for head, cell in zip(of_heads, of_cells, strict=True)
    ]
    # What is read across stands close together, unless only the last column is long: then it has the rest of the line.
    if any(asked[:-1]) and sum(longest) + _BETWEEN * len(longest) <= _NARROW:
        return [0.0] * len(asked)
    return asked


_SHORT, _SHORT_HEAD = 18, 27  # signs in a line up to which a column is not narrowed
_NARROW = 90  # signs of all columns up to which a table is as wide as its words
_BETWEEN = 2  # signs that the room between columns takes


def _lines(cell: Sequence[Node]) -> list[str]:
    return "".join(run["text"] for run in cell).split("\n")


def _longest(lines: Iterable[str]) -> int:
    return max(map(len, lines), default=0)


def _runs(words: Words) -> list[Node]:
    return [_run(part.meaning, part.text) for part in words.parts() if part.text]


def _run(meaning: str, words: str) -> Node:
    return {"meaning": meaning, "text": _told(words)}
