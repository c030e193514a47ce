"""Small pieces of Markdown."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

GENERATED = "<!-- Written by `make docs`; changes made here are lost. -->\n\n"


def cell(words: object) -> str:
    """A text that may stand in a table."""
    return str(words).replace("|", "\\|").replace("\n", " ").strip()


def table(heads: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """A table with its closing blank line."""
    lines = [f"| {' | '.join(heads)} |", f"|{' --- |' * len(heads)}"]
    lines += [f"| {' | '.join(cell(one) for one in row)} |" for row in rows]
    return "\n".join(lines) + "\n\n"
