"""Pages of text for the terminal: headings, paragraphs and tables that read well at 80 columns in a pipe."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Literal

import typer
from rich.console import Console, Group, RenderableType
from rich.padding import Padding
from rich.table import Table
from rich.text import Text

if TYPE_CHECKING:
    from rich.console import JustifyMethod

WIDEST = 100
Side = Literal["<", ">"]


def show(page: RenderableType) -> None:
    """Print a page to stdout, without colour when it does not go to a terminal."""
    console = Console(highlight=False, markup=False, emoji=False)
    console.width = min(console.width, WIDEST)
    with console.capture() as captured:
        console.print(page)
    typer.echo("\n".join(line.rstrip() for line in captured.get().rstrip().split("\n")))


def section(heading: str, *body: RenderableType) -> Group:
    """A heading with its body set in below it, and a blank line after."""
    return Group(Text(heading, style="bold"), *(Padding(part, (0, 0, 0, 2)) for part in body), Text(""))


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
    grid = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), show_header=any(heads), header_style="underline")
    for number, (head, side) in enumerate(zip(heads, sides, strict=True)):
        justify: JustifyMethod = "right" if side == ">" else "left"
        grid.add_column(Text(head), justify=justify, no_wrap=free is not None and number != free, overflow="fold")
    for row in rows:
        grid.add_row(*(cell if isinstance(cell, Text) else Text(cell) for cell in row))
    return grid
