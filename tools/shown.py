"""What the README, the tour and a how-to show of the program is what it prints: the blocks are run and written again.

A block begins with ``<!-- run: anchorwatt … -->``, perhaps with ``| first N`` for its first N lines, and ends
with ``<!-- end -->``. The blocks of one page run in one folder, empty at first, from top to bottom. Between
them ``<!-- edit: FILE | OLD => NEW -->`` does what the reader is told to do: it replaces the one place in the
file that reads OLD.
"""

from __future__ import annotations

import contextlib
import functools
import os
import re
import shlex
import tempfile
from collections.abc import Iterator
from pathlib import Path
from unittest import mock

PAGES = ("README.md", "docs/tour.md", "docs/how-to/read-the-checks.md")
_STEP = re.compile(
    r"<!-- edit: (?P<file>\S+) \| (?P<old>.+?) => (?P<new>.+?) -->"
    r"|(?P<head><!-- run: (?P<command>.+?)(?: \| first (?P<first>\d+))? -->\n).*?(?=<!-- end -->)",
    re.DOTALL,
)


def page(text: str) -> str:
    """A page with its blocks run again; those that show one design share its assessment."""
    import anchorwatt

    once = functools.lru_cache(maxsize=2)(anchorwatt.assess)
    with _empty_folder(), mock.patch.object(anchorwatt, "assess", once):
        return _STEP.sub(_again, text)


def _again(step: re.Match[str]) -> str:
    if step["file"]:
        _edit(Path(step["file"]), step["old"], step["new"])
        return step[0]
    lines = run(step["command"]).rstrip("\n").split("\n")
    if step["first"] and len(lines) > int(step["first"]):
        lines = ["\n".join(lines[: int(step["first"])]).rstrip(), "…"]
    return step["head"] + "```console\n" + "\n".join([f"$ {step['command']}", *lines]) + "\n```\n"


def _edit(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    if text.count(old) != 1:
        raise ValueError(f"{path}: {old!r} stands there {text.count(old)} times")
    path.write_text(text.replace(old, new), "utf-8")


def run(command: str) -> str:
    """What a command prints to a pipe 80 columns wide, without what only a slow or first run adds."""
    from typer.testing import CliRunner

    from anchorwatt.cli import app, console

    program, *arguments = shlex.split(command)
    if program != "anchorwatt":
        raise ValueError(f"only anchorwatt is run for the docs, not {command}")
    console.PATIENCE = 3600.0
    found = CliRunner().invoke(app, arguments, env={"COLUMNS": "80", "NO_COLOR": "1"}, prog_name="anchorwatt")
    if found.exception is not None and not isinstance(found.exception, SystemExit):
        raise found.exception
    return "\n".join(line for line in found.output.split("\n") if not line.startswith("compiling the time kernel"))


@contextlib.contextmanager
def _empty_folder() -> Iterator[None]:
    before = Path.cwd()
    with tempfile.TemporaryDirectory() as folder:
        os.chdir(folder)
        try:
            yield
        finally:
            os.chdir(before)
