"""What goes to stderr: notes, progress and errors; and how a command ends."""

from __future__ import annotations

import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager

import typer

from anchorwatt.errors import AnchorwattError

PATIENCE = 2.0
"""s after which work that goes on is announced where no spinner can be drawn."""


def note(words: str) -> None:
    """Say something beside the data."""
    typer.echo(words, err=True)


@contextmanager
def working(on: str) -> Iterator[None]:
    """Show that work goes on: a spinner on a terminal, else one line once it takes long."""
    if sys.stderr.isatty():
        from rich.console import Console

        with Console(stderr=True).status(f"{on} …"):
            yield
        return
    timer = threading.Timer(PATIENCE, note, [f"{on} …"])
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        timer.cancel()


@contextmanager
def reported() -> Iterator[None]:
    """End a command with a message and a status instead of a traceback when the user can mend the cause."""
    try:
        yield
    except AnchorwattError as error:
        for line in str(error).splitlines():
            note(f"anchorwatt: {line}")
        raise typer.Exit(2) from None
    except KeyboardInterrupt:
        note("anchorwatt: stopped")
        raise typer.Exit(130) from None
