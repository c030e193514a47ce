"""What a page is made of, whoever writes it: words and tables, without a terminal or a browser."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

UNBROKEN = "\u00a0"
Side = Literal["<", ">"]
Meaning = Literal["", "strong", "aside", "subject", "fails", "near", "holds", "cannot_tell"]
"""What words are, not how they look; "subject" heads what follows, the last four are verdicts."""


@dataclass(frozen=True)
class Words:
    """Words that stay in the lines that they are given in.

    Parameters
    ----------
    text : may have several lines
    more : words that follow at once, with a meaning of their own
    key : dotted key of the design file that they are about, where there is one
    """

    text: str
    meaning: Meaning = ""
    more: tuple[Words, ...] = ()
    key: str = ""

    def then(self, text: str, meaning: Meaning = "") -> Words:
        """These words with others behind them."""
        return self.joined(Words(text, meaning))

    def joined(self, others: Words) -> Words:
        """These words with others behind them, each part as it is."""
        return replace(self, more=(*self.more, *others.parts()))

    def parts(self) -> tuple[Words, ...]:
        """All parts in order, none with more behind it."""
        return (replace(self, more=()), *self.more)


@dataclass(frozen=True)
class Paragraph:
    """Running text whose figures stay with their units at the end of a line."""

    words: str


@dataclass(frozen=True)
class Drawn:
    """A picture of characters in lines of equal width, and what it shows in words."""

    lines: str
    told: str


@dataclass(frozen=True)
class Title:
    """Whose page it is, and a line about it where there is one; left out where it stands already."""

    name: str
    told: str = ""


@dataclass(frozen=True)
class Gap:
    """Room between two parts that belong to one section."""


@dataclass(frozen=True)
class Table:
    """A table; figures go to the right.

    Parameters
    ----------
    heads : one a column; all empty = no heading row
    sides : "<" or ">" for each column
    rows : a cell for each column
    free : the column that may wrap, None = any
    caption : what it shows, above it
    shares : of the width on paper, one a column, where like tables shall stand alike; () = as wide as their words
    """

    heads: tuple[str, ...]
    sides: tuple[Side, ...]
    rows: tuple[tuple[Words, ...], ...]
    free: int | None = None
    caption: str = ""
    shares: tuple[int, ...] = ()


@dataclass(frozen=True)
class Section:
    """A heading with its body set in below it."""

    heading: str
    body: tuple[Content, ...]


@dataclass(frozen=True)
class Page:
    """Parts one below the other."""

    parts: tuple[Content, ...]


Content = Title | Words | Paragraph | Drawn | Gap | Table | Section | Page


def page(*parts: Content) -> Page:
    """Parts one below the other."""
    return Page(parts)


def section(heading: str, *body: Content) -> Section:
    """A heading with its body."""
    return Section(heading, body)


def table(
    heads: Sequence[str],
    sides: Sequence[Side],
    rows: Sequence[Sequence[str | Words]],
    free: int | None = None,
    caption: str = "",
    shares: tuple[int, ...] = (),
) -> Table:
    """A table of cells that may be plain text.

    Raises
    ------
    ValueError
        A row, the sides or the shares have not one for each heading.

    Example
    -------
    >>> table(("", "A"), figures(("", "A")), [("bank", "12")]).rows[0][1].text
    '12'
    """
    if any(len(one) != len(heads) for one in (sides, *rows, *((shares,) if shares else ()))):
        raise ValueError(f"a table of {len(heads)} columns needs so many sides, and cells in every row")
    cells = tuple(tuple(cell if isinstance(cell, Words) else Words(cell) for cell in row) for row in rows)
    return Table(tuple(heads), tuple(sides), cells, free, caption, shares)


def figures(heads: Sequence[str]) -> tuple[Side, ...]:
    """Sides of a table whose first column is names and whose others are figures."""
    sides: list[Side] = ["<"]
    sides += [">" for _ in heads[1:]]
    return tuple(sides)


def unbroken(words: str) -> str:
    """Keep a figure and its unit on one line."""
    return words.replace(" ", UNBROKEN)
