"""Pages of text for the terminal: headings, paragraphs and tables that read well at 80 columns in a pipe."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import typer
from rich.console import Console, ConsoleOptions, Group, RenderableType, RenderResult
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

if TYPE_CHECKING:
    from rich.console import JustifyMethod

WIDEST = 100
_UNBROKEN = "\u00a0"
Side = Literal["<", ">"]


def show(page: RenderableType) -> None:
    """Print a page to stdout, without colour when it does not go to a terminal."""
    console = Console(highlight=False, markup=False, emoji=False)
    console.width = min(console.width, WIDEST)
    with console.capture() as captured:
        console.print(page)
    lines = captured.get().replace(_UNBROKEN, " ").rstrip().split("\n")
    typer.echo("\n".join(line.rstrip() for line in lines))


@dataclass(frozen=True)
class Paragraph:
    """Running text whose figures stay with their units at the end of a line."""

    words: str

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        yield Text("\n".join(textwrap.wrap(self.words, options.max_width, break_on_hyphens=False)))


def unbroken(words: str) -> str:
    """Keep a figure and its unit on one line."""
    return words.replace(" ", _UNBROKEN)


def section(heading: str, *body: RenderableType) -> Group:
    """A heading with its body set in below it, and a blank line after."""
    return Group(Text(heading, style="bold"), *(Padding(part, (0, 0, 0, 2)) for part in body), Text(""))


def figures(heads: Sequence[str]) -> tuple[Side, ...]:
    """Sides of a table whose first column is names and whose others are figures."""
    sides: list[Side] = ["<"]
    sides += [">" for _ in heads[1:]]
    return tuple(sides)


def table(
    heads: Sequence[str], sides: Sequence[Side], rows: Sequence[Sequence[str | Text]], free: int | None = None
) -> Table:
    """A table without lines; figures go to the right.

    Parameters
    ----------
    heads : one a column; all empty = no heading row
    sides : "<" or ">" for each column
    free : the column that may wrap, None = any
    """
    grid = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), show_header=any(heads), header_style="bold")
    for number, (head, side) in enumerate(zip(heads, sides, strict=True)):
        justify: JustifyMethod = "right" if side == ">" else "left"
        grid.add_column(Text(head), justify=justify, no_wrap=free is not None and number != free, overflow="fold")
    for row in rows:
        grid.add_row(*(cell if isinstance(cell, Text) else Text(cell) for cell in row))
    return grid
