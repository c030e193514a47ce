"""The frame round a sheet: zones, title block, notes and cautions, revisions; after ISO 5457 and ISO 7200."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from anchorwatt.cautions import CAUTIONS
from anchorwatt.design.design import Design
from anchorwatt.design.drawings import DrawingsSection
from anchorwatt.drawings.lettering import clipped, text_width, wrapped
from anchorwatt.drawings.sheet import INK, QUIET_INK, Item, Path, Point, Sheet, Text, line
from anchorwatt.drawings.sheets.body import FRAME, LARGE, LINE, NOTES, SMALL, TEXT, THICK, THIN, Body, Reference
from anchorwatt.drawings.sheets.paper import FOOT, LETTERS, MARGIN, Paper
from anchorwatt.languages import Said

BLOCK = 180.0
"""mm of width of the title block."""

REVISIONS = 74.0
"""mm of width of the table of revisions."""

SHOWN = 5  # revisions, the latest
_LABEL = 1.9  # size of the small words that name a field of the title block
_LEADING = 1.3
_PAD = 1.2
_SMALLEST = 1.8


@dataclass(frozen=True)
class Titles:
    """What the title block says on every sheet of a set."""

    boat: str
    yard: str
    job: str
    drawn: str
    checked: str
    revision: str
    date: str
    revisions: tuple[tuple[str, str, str, str], ...]  # letter, day, what changed, who


def titles(design: Design) -> Titles:
    """What the design file says of its drawings; a dash where it says nothing."""
    said = design.drawings or DrawingsSection()
    dated = "" if design.offer is None or design.offer.date is None else design.offer.date
    rows = tuple((letter, one.date or "–", one.about or "–", one.by or "–") for letter, one in said.revisions.items())
    latest = rows[-1] if rows else ("–", dated or "–", "", "")
    return Titles(
        boat=design.name,
        yard=said.yard or "–",
        job=said.job or "–",
        drawn=said.drawn or "–",
        checked=said.checked or "–",
        revision=latest[0],
        date=latest[1],
        revisions=rows,
    )


def framed(bodies: Sequence[Body], said: Titles, paper: Paper) -> tuple[Sheet, ...]:
    """Put the frame round each sheet, number them, and say in each reference where its anchor stands.

    Raises
    ------
    KeyError
        a reference to an anchor that no sheet has.
    """
    where = {name: f"{number}/{paper.zone(at)}" for number, body in enumerate(bodies, 1) for name, at in body.anchors}
    return tuple(_sheet(body, number, len(bodies), said, paper, where) for number, body in enumerate(bodies, 1))


def _sheet(body: Body, number: int, count: int, said: Titles, paper: Paper, where: Mapping[str, str]) -> Sheet:
    items = [_resolved(item, where) if isinstance(item, Reference) else item for item in body.items]
    about = f"Sheet {number} of {count}. {body.about}"
    return Sheet(
        paper.width,
        paper.height,
        f"{body.title}: {said.boat}",
        about,
        (
            *_frame(paper),
            *_block(body, number, count, said, paper),
            *_revisions(said, paper),
            *_words(body, paper),
            *items,
        ),
        unit="mm",
        name=body.name,
    )


def _resolved(item: Reference, where: Mapping[str, str]) -> Text:
    return Text(
        item.at, f"{item.before}{where[item.to]}", item.size, QUIET_INK, anchor=item.anchor, key=item.key, layer=NOTES
    )


def _rule(start: Point, end: Point, width: float = THIN) -> Path:
    return Path((start, end), INK, width, layer=FRAME)


def _frame(paper: Paper) -> Iterator[Item]:
    left, top, right, bottom = paper.frame
    corners = ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))
    yield Path(corners, INK, THICK, layer=FRAME)
    band = 0.5 * MARGIN
    for number in range(paper.columns):
        x, next_x = (left + (right - left) * one / paper.columns for one in (number, number + 1))
        middle = 0.5 * (x + next_x)
        for edge, away in ((top, top - band), (bottom, bottom + band)):
            if number:
                yield _rule((x, edge), (x, away))
            yield Text((middle, 0.5 * (edge + away) + 0.9), f"{number + 1}", SMALL, anchor="middle", layer=FRAME)
    for number in range(paper.rows):
        y, next_y = (top + (bottom - top) * one / paper.rows for one in (number, number + 1))
        middle = 0.5 * (y + next_y) + 0.9
        for edge, away in ((left, left - band), (right, right + band)):
            if number:
                yield _rule((edge, y), (away, y))
            yield Text((0.5 * (edge + away), middle), LETTERS[number], SMALL, anchor="middle", layer=FRAME)


def _block(body: Body, number: int, count: int, said: Titles, paper: Paper) -> Iterator[Item]:
    _, _, right, bottom = paper.frame
    left, top = right - BLOCK, bottom - FOOT
    yield Path(((right, top), (left, top), (left, bottom)), INK, LINE, layer=FRAME)
    rows: tuple[tuple[float, tuple[tuple[str, str, float, float], ...]], ...] = (
        (13.0, (("boat", said.boat, 90.0, LARGE), ("drawing", body.title, 90.0, LARGE))),
        (8.0, (("yard", said.yard, 90.0, TEXT), ("job", said.job, 45.0, TEXT), ("file", Said(body.name), 45.0, TEXT))),
        (
            7.5,
            (("drawn", said.drawn, 60.0, TEXT), ("checked", said.checked, 60.0, TEXT), ("date", said.date, 60.0, TEXT)),
        ),
        (
            7.5,
            (
                ("scale", body.scale, 45.0, TEXT),
                ("paper", paper.name, 45.0, TEXT),
                ("revision", said.revision, 45.0, TEXT),
                ("sheet", f"{number} of {count}", 45.0, TEXT),
            ),
        ),
    )
    y = top
    for height, cells in rows:
        x = left
        if y > top:
            yield _rule((left, y), (right, y))
        for label, words, width, size in cells:
            if x > left:
                yield _rule((x, y), (x, y + height))
            yield Text((x + _PAD, y + _PAD + 0.7 * _LABEL), label, _LABEL, QUIET_INK, layer=FRAME)
            bold, room = size == LARGE, width - 2 * _PAD
            fitting = max(min(size, size * room / max(text_width(words, size, bold), 1.0)), 0.6 * size)
            told = clipped(words, fitting, room, bold)
            yield Text((x + _PAD, y + height - 1.6), told, fitting, bold=bold, layer=FRAME, key=f"title:{label}")
            x += width
        y += height


def _revisions(said: Titles, paper: Paper) -> Iterator[Item]:
    _, _, right, bottom = paper.frame
    left, top, end = right - BLOCK - REVISIONS, bottom - FOOT, right - BLOCK
    yield Path(((end, top), (left, top), (left, bottom)), INK, LINE, layer=FRAME)
    widths = (9.0, 18.0, 33.0, 14.0)
    rows = [("rev.", "date", "what changed", "by"), *said.revisions[-SHOWN:]]
    height = FOOT / (SHOWN + 1)
    for number, row in enumerate(rows):
        y = top + number * height
        if number:
            yield _rule((left, y), (end, y))
        x = left
        for words, width in zip(row, widths, strict=True):
            told = clipped(words, SMALL, width - 2 * _PAD)
            yield Text((x + _PAD, y + height - 2.0), told, SMALL, INK if number else QUIET_INK, layer=FRAME)
            x += width


def _words(body: Body, paper: Paper) -> Iterator[Item]:
    """Notes and cautions, in letters as large as their room allows."""
    left, _, right, bottom = paper.frame
    top, width = bottom - FOOT, right - BLOCK - REVISIONS - left
    yield line((left, top), (left + width, top), INK, LINE)
    said = [*body.notes, *body.cautions, CAUTIONS[0]]
    size = SMALL
    while True:
        lines = [one for words in said for one in wrapped(words, size, width - 2 * _PAD)]
        if len(lines) * size * _LEADING + _PAD <= FOOT or size <= _SMALLEST:
            break
        size -= 0.1
    y = top + _PAD
    for words in lines:
        y += size * _LEADING
        yield Text((left + _PAD, y - 0.3 * size), words, size, layer=NOTES)
