"""Pages of `papers`, which the terminal shows, as HTML: the same words and tables, not written twice."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import assert_never

from anchorwatt.papers.page import Content, Drawn, Gap, Meaning, Page, Paragraph, Section, Side, Table, Title, Words
from anchorwatt.web.escaped import text

SIGNS: dict[Meaning, str] = {"fails": "✗", "cannot_tell": "?", "near": "≈", "holds": "✓"}
"""Signs of the verdicts, which are not told by colour alone."""
_TAGS: dict[Meaning, str] = {"strong": "strong", "subject": "strong", "aside": "em"}
_LOWEST = 6

Link = Callable[[str], str | None]


def paper_html(page: Content, level: int = 2, link: Link | None = None) -> str:
    """A page as HTML.

    Parameters
    ----------
    page : sections, paragraphs, words and tables
    level : of its headings, 2 to 6
    link : from a dotted key of the design file to the address where it is typed, or None where it cannot be

    Example
    -------
    >>> from anchorwatt.papers.page import Paragraph, section
    >>> paper_html(section("A < B", Paragraph("Five & six.")))
    '<section><h2>A &lt; B</h2><p>Five &amp; six.</p></section>'
    """
    return _html(page, _Place(level, link))


def page_html(page: Content, level: int = 2, link: Link | None = None) -> str:
    """A page as HTML without its title, which the workbench shows above all pages."""
    parts = page.parts if isinstance(page, Page) else (page,)
    return "".join(paper_html(one, level, link) for one in parts if not isinstance(one, Title))


@dataclass(frozen=True)
class _Place:
    """Where in a page something is written."""

    level: int  # of the next heading
    link: Link | None
    heading: str = ""  # of the section around it

    def below(self, heading: str) -> _Place:
        return replace(self, level=min(self.level + 1, _LOWEST), heading=heading)


def _html(content: Content, place: _Place) -> str:
    match content:
        case Page():
            return "".join(_html(one, place) for one in content.parts)
        case Title():
            told = f"<p>{_lines(content.told)}</p>" if content.told else ""
            return f"<p><strong>{_lines(content.name)}</strong></p>{told}"
        case Section():
            body = "".join(_html(one, place.below(content.heading)) for one in content.body)
            return f"<section>{_heading(content.heading, place)}{body}</section>"
        case Paragraph():
            return f"<p>{_lines(content.words)}</p>"
        case Words(meaning="subject"):
            return _heading(content.text, place)
        case Words():
            return f"<p>{_words(content, place)}</p>"
        case Table():
            return _wide(content.caption or place.heading or "Table", _table(content, place))
        case Drawn():
            return _wide(content.told, f"<pre>{text(content.lines)}</pre>")
        case Gap():
            return ""
        case _:
            assert_never(content)


def _heading(words: str, place: _Place) -> str:
    return f"<h{place.level}>{_lines(words)}</h{place.level}>"


def _wide(label: str, content: str) -> str:
    """What may be wider than the screen: it scrolls, by keyboard too."""
    return f'<div class="wide" tabindex="0" role="region" aria-label="{text(label)}">{content}</div>'


def _table(table: Table, place: _Place) -> str:
    caption = f"<caption>{_lines(table.caption)}</caption>" if table.caption else ""
    heads = "".join(_head(*one) for one in zip(table.heads, table.sides, strict=True))
    head = f"<thead><tr>{heads}</tr></thead>" if any(table.heads) else ""
    rows = "".join(_row(row, table.sides, place) for row in table.rows)
    return f"<table>{caption}{head}<tbody>{rows}</tbody></table>"


def _head(words: str, side: Side) -> str:
    if not words.strip():
        return "<td></td>"
    return f'<th scope="col"{_kind(side)}>{_lines(words.strip())}</th>'


def _row(row: Sequence[Words], sides: Sequence[Side], place: _Place) -> str:
    """A row; its first cell of words tells what it is about."""
    about = sides.index("<") if "<" in sides else None
    cells = [
        f'<th scope="row">{_words(cell, place)}</th>'
        if column == about
        else f"<td{_kind(side)}>{_words(cell, place)}</td>"
        for column, (cell, side) in enumerate(zip(row, sides, strict=True))
    ]
    return f"<tr>{''.join(cells)}</tr>"


def _kind(side: Side) -> str:
    return ' class="figure"' if side == ">" else ""


def _words(words: Words, place: _Place) -> str:
    told = "".join(_meant(one) for one in words.parts())
    address = place.link(words.key) if words.key and place.link is not None else None
    return f'<a href="{text(address)}">{told}</a>' if address else told


def _meant(words: Words) -> str:
    told = _lines(words.text)
    if words.meaning in SIGNS:
        sign = f'<span aria-hidden="true">{SIGNS[words.meaning]}</span>'
        return f'<strong class="word {words.meaning}">{sign} {told}</strong>'
    tag = _TAGS.get(words.meaning)
    if tag is None or not words.text:
        return told
    # A line that begins before the emphasis stays outside of it.
    start = "<br>" * (len(words.text) - len(words.text.lstrip("\n")))
    return f"{start}<{tag}>{told.removeprefix(start)}</{tag}>"


def _lines(words: str) -> str:
    return text(words).replace("\n", "<br>")
