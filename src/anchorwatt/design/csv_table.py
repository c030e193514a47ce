"""A table in a CSV file, as somebody's spreadsheet wrote it: rows by their headings, or what is wrong and where."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from anchorwatt.catalogue.part import nearest
from anchorwatt.errors import Problem
from anchorwatt.units.refusal import quoted

LARGEST = 2_000_000
"""Bytes of a file."""

_WORKBOOK = b"PK\x03\x04"  # how a workbook begins


@dataclass(frozen=True)
class Row:
    """One row: cells by heading, without spaces at their ends; "" where the table has no such column."""

    line: int
    cells: dict[str, str]


def read_table(path: Path, what: str, needed: Sequence[str], wanted: Sequence[str]) -> tuple[list[Row], list[Problem]]:
    """Rows of a table whose columns stand in any order, set apart by commas, semicolons or tabs.

    Parameters
    ----------
    what : the file ought to be, for messages
    needed, wanted : headings in lower case; capitals in the file do not matter

    Returns
    -------
    Rows that are not empty, and everything that is wrong; where something is, the rows are of no use.
    """
    file = str(path)
    content, problems = _content(path, file, what)
    if problems:
        return [], problems
    text, problems = _text(content, file, what)
    if problems:
        return [], problems
    delimiter = max(",;\t", key=text.split("\n", 1)[0].count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    heads: list[str] = []
    rows: list[Row] = []
    try:
        for cells in reader:
            stripped = [cell.strip() for cell in cells]
            if not any(stripped):
                continue
            if not heads:
                heads = [cell.lower() for cell in stripped]
                problems = _heading(heads, file, reader.line_num, needed, wanted)
                if problems:
                    return [], problems
            elif len(cells) > len(heads):
                quoting = "a cell with the delimiter in it, as a decimal comma, stands in quotes"
                allowed = f"{len(heads)}, as the heading has; {quoting}"
                problems.append(Problem(file, reader.line_num, "", f"{len(cells)} columns", allowed))
            else:
                # Some spreadsheets leave out empty cells at the end of a row.
                given = dict(zip(heads, stripped, strict=False))
                rows.append(Row(reader.line_num, {head: given.get(head, "") for head in (*needed, *wanted)}))
    except csv.Error as error:
        problems.append(Problem(file, reader.line_num, "", f"what is not CSV ({error})", what))
    if not problems and not rows:
        problems.append(Problem(file, None, "", "no rows", f"{what}, with a heading and rows below it"))
    return rows, problems


def _content(path: Path, file: str, what: str) -> tuple[bytes, list[Problem]]:
    def refused(found: str, allowed: str) -> tuple[bytes, list[Problem]]:
        return b"", [Problem(file, None, "", found, allowed)]

    if path.is_dir():
        return refused("a folder", what)
    try:
        content = path.read_bytes()
    except FileNotFoundError:
        return refused("no such file", what)
    except OSError as error:
        return refused(f"a file that cannot be read ({error.strerror})", what)
    if len(content) > LARGEST:
        return refused(f"a file of {len(content) / 1e6:.1f} MB", f"at most {LARGEST / 1e6:g} MB")
    if content.startswith(_WORKBOOK):
        return refused("a workbook", f"{what}: save its sheet as CSV, in UTF-8")
    return content, []


def _text(content: bytes, file: str, what: str) -> tuple[str, list[Problem]]:
    try:
        return content.decode("utf-8-sig"), []
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        found = f"a byte 0x{content[error.start]:02x} that is not UTF-8"
        return "", [Problem(file, line, "", found, f"{what} in UTF-8: spreadsheets ask for it when they save")]


def _heading(heads: Sequence[str], file: str, line: int, needed: Sequence[str], wanted: Sequence[str]) -> list[Problem]:
    known = (*needed, *wanted)
    problems = [
        Problem(file, line, head, f"an unknown column {quoted(head)}{nearest(head, known)}", "of: " + ", ".join(known))
        for head in heads
        if head not in known
    ]
    problems += [
        Problem(file, line, head, "a second column of that name", "each column once")
        for number, head in enumerate(heads)
        if head in heads[:number]
    ]
    lacking = [head for head in needed if head not in heads]
    if lacking and not problems:
        problems.append(Problem(file, line, "", f"no column {', '.join(lacking)}", "columns " + ", ".join(needed)))
    return problems
