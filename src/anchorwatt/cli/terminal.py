"""Pages in the terminal: they read well at 80 columns in a pipe."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING, assert_never

import typer
from rich.console import Console, ConsoleOptions, Group, RenderableType, RenderResult
from rich.padding import Padding
from rich.table import Table as Grid
from rich.text import Text

from anchorwatt.papers.page import UNBROKEN, Content, Drawn, Gap, Meaning, Page, Paragraph, Section, Table, Title, Words

if TYPE_CHECKING:
    from rich.console import JustifyMethod

WIDEST = 100
_STYLES: dict[Meaning, str] = {
    "": "",
    "strong": "bold",
    "aside": "italic",
    "subject": "underline",
    "fails": "bold red",
    "near": "yellow",
    "holds": "green",
    "cannot_tell": "magenta",
}


def show(content: Content) -> None:
    """Print a page to stdout, without colour when it does not go to a terminal."""
    typer.echo(written(content))


def written(content: Content) -> str:
    """A page as the terminal shows it."""
    console = Console(highlight=False, markup=False, emoji=False)
    console.width = min(console.width, WIDEST)
    with console.capture() as captured:
        console.print(_renderable(content))
    lines = captured.get().replace(UNBROKEN, " ").rstrip().split("\n")
    return "\n".join(line.rstrip() for line in lines)


class _Running:
    """Running text, wrapped to the width that there is."""

    def __init__(self, words: str) -> None:
        self._words = words

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        yield Text("\n".join(textwrap.wrap(self._words, options.max_width, break_on_hyphens=False)))


def _renderable(content: Content) -> RenderableType:
    match content:
        case Title():
            lines = [Text(content.name, style="bold"), *([Text(content.told)] if content.told else []), Text("")]
            return Group(*lines)
        case Words():
            return _text(content, alone=True)
        case Paragraph():
            return _Running(content.words)
        case Drawn():
            return Text(content.lines)
        case Gap():
            return Text("")
        case Table():
            return _table(content)
        case Section():
            body = (Padding(_renderable(part), (0, 0, 0, 2)) for part in content.body)
            return Group(Text(content.heading, style="bold"), *body, Text(""))
        case Page():
            return Group(*map(_renderable, content.parts))
        case _:
            assert_never(content)


def _text(words: Words, alone: bool = False) -> Text:
    """Words; a verdict that stands alone is bold, in a column it needs no more than its colour."""
    first, *others = words.parts()
    style = _STYLES[first.meaning]
    if alone and first.meaning in ("near", "holds", "cannot_tell"):
        style = f"bold {style}"
    text = Text(first.text, style=style)
    for one in others:
        # What follows is of its own style, though the first part's is that of the whole.
        own = _STYLES[one.meaning]
        text.append(one.text, style=f"not bold {own}".strip() if "bold" in style else own)
    return text


def _table(table: Table) -> RenderableType:
    """A table without lines."""
    grid = Grid(box=None, pad_edge=False, padding=(0, 2, 0, 0), show_header=any(table.heads), header_style="bold")
    for number, (head, side) in enumerate(zip(table.heads, table.sides, strict=True)):
        justify: JustifyMethod = "right" if side == ">" else "left"
        rigid = table.free is not None and number != table.free
        grid.add_column(Text(head), justify=justify, no_wrap=rigid, overflow="fold")
    for row in table.rows:
        grid.add_row(*map(_text, row))
    return Group(Text(table.caption), grid) if table.caption else grid
