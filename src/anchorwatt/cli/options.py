"""Arguments and options that several commands share."""

from __future__ import annotations

from enum import StrEnum
from pathlib import Path
from typing import Annotated

import typer


class Units(StrEnum):
    """How figures are shown."""

    si = "si"
    us = "us"


class SheetFormat(StrEnum):
    """What a drawing is written as."""

    dxf = "dxf"
    svg = "svg"
    pdf = "pdf"


class SheetPaper(StrEnum):
    """Paper that drawings are made for."""

    a3 = "a3"
    ansi_b = "ansi-b"


class PeopleAction(StrEnum):
    """What can be done with accounts."""

    list = "list"
    add = "add"
    password = "password"  # noqa: S105  # a word of the command, no secret
    role = "role"
    remove = "remove"


File = Annotated[Path, typer.Argument(help="Design file, *.yaml.", show_default=False)]
Json = Annotated[
    bool,
    typer.Option("--json", help="Print JSON instead; its keys end in their unit, whatever --units says."),
]
Csv = Annotated[
    Path | None,
    typer.Option("--csv", metavar="DIR", help="Also write the tables to this folder as CSV.", show_default=False),
]
Plot = Annotated[
    Path | None,
    typer.Option("--plot", metavar="FILE.svg", help="Also draw the night as a picture.", show_default=False),
]
Why = Annotated[
    str | None,
    typer.Option("--why", metavar="KEY", help="Explain one answer instead, e.g. hold_hours.", show_default=False),
]
Estimates = Annotated[
    bool, typer.Option("--estimates", help="Show instead how each figure was found that nobody typed.")
]
UnitsOption = Annotated[Units, typer.Option("--units", help="Units on the screen and in the picture.")]


def checked_plot(path: Path | None) -> None:
    """Refuse a picture in a format that is not written, before any work is done."""
    if path is not None and path.suffix.lower() != ".svg":
        raise typer.BadParameter(f"found {path}; allowed: a file name that ends in .svg", param_hint="--plot")


def checked_xlsx(path: Path | None) -> None:
    """Refuse a workbook in a format that is not written, before any work is done."""
    if path is not None and path.suffix.lower() != ".xlsx":
        raise typer.BadParameter(f"found {path}; allowed: a file name that ends in .xlsx", param_hint="--xlsx")
