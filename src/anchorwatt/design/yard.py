"""A yard's own catalogue files: their rows read, checked and laid over the generic catalogue.

A file is a mapping of kinds, each a mapping of rows by name. A row is whole, or `{like: NAME, …}` with what it
changes; `like` takes a row of these files or of the generic catalogue, and under its own name the generic one.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from anchorwatt.catalogue.overlay import NOTHING, Overlay, laid_over
from anchorwatt.catalogue.part import generic_rows, kinds, nearest, record_of
from anchorwatt.design.document import Document, Key, load
from anchorwatt.design.problems import as_problem, one_each, shown
from anchorwatt.errors import BadDesign, Problem

KEY = "catalogue"
MOST_FILES = 20
BEGINS = "a mapping of kinds, such as battery_module, with rows by name"

Origin = tuple[Document, Key]
"""Where a row stands."""


def overlay_of(document: Document) -> tuple[Overlay, list[Problem]]:
    """What the files named in a design lay over the catalogue, and what is wrong with them."""
    named = document.data.get(KEY)
    if named is None:
        return NOTHING, []
    if not isinstance(named, list) or len(named) > MOST_FILES:
        return NOTHING, []  # its shape is told where the design is read
    folder = document.path.parent if document.path is not None else Path()
    paths, problems = [], []
    for number, name in enumerate(named):
        if not isinstance(name, str):
            continue
        path = folder / name
        if path in paths:
            problems.append(document.problem((KEY, number), f"{shown(name)} a second time", "each file once"))
        elif not path.is_file():
            kind = "a folder" if path.is_dir() else "no such file"
            allowed = "a catalogue file, its path seen from the design file"
            problems.append(document.problem((KEY, number), f"{kind}: {name}", allowed))
        else:
            paths.append(path)
    overlay, more = read_yard(paths)
    return (NOTHING, problems + more) if problems or more else (overlay, [])


def read_yard(paths: Sequence[Path]) -> tuple[Overlay, list[Problem]]:
    """Rows of catalogue files, and what is wrong with them."""
    problems: list[Problem] = []
    typed: dict[str, dict[str, Mapping[str, Any]]] = {}
    origins: dict[tuple[str, str], Origin] = {}
    for path in paths:
        try:
            document = load(path, "a catalogue file", BEGINS)
        except BadDesign as error:
            problems += error.problems
            continue
        problems += _take(document, typed, origins)
    if not problems:
        whole, problems = _whole(typed, origins)
    if problems:  # what rows hold is looked at once all of them are there
        return NOTHING, problems
    overlay = Overlay(whole, tuple(str(path) for path in paths))
    return overlay, _faults(overlay, origins)


def _take(
    document: Document, typed: dict[str, dict[str, Mapping[str, Any]]], origins: dict[tuple[str, str], Origin]
) -> list[Problem]:
    problems = []
    for kind, rows in document.data.items():
        if kind not in kinds():
            found = f"an unknown kind “{kind}”{nearest(kind, kinds())}"
            problems.append(document.problem((kind,), found, "one of: " + ", ".join(kinds())))
            continue
        if not isinstance(rows, dict):
            problems.append(document.problem((kind,), shown(rows), "a mapping of rows by name"))
            continue
        for name, row in rows.items():
            key: Key = (kind, name)
            if not isinstance(row, dict):
                allowed = "a mapping of its fields, or of like: and what changes"
                problems.append(document.problem(key, shown(row), allowed))
            elif "name" in row:
                problems.append(document.problem((*key, "name"), "a name inside a row", "the row's key is its name"))
            elif (kind, name) in origins:
                other, there = origins[kind, name]
                found = f"a second row “{name}” of {kind}; the first is at {other.file}:{other.line(there)}"
                problems.append(document.problem(key, found, "each row in one file, once"))
            else:
                typed.setdefault(kind, {})[name] = row
                origins[kind, name] = (document, key)
    return problems


def _whole(
    typed: Mapping[str, Mapping[str, Mapping[str, Any]]], origins: Mapping[tuple[str, str], Origin]
) -> tuple[dict[str, dict[str, dict[str, Any]]], list[Problem]]:
    """Rows with what they leave to the row that they are like filled in."""
    problems: list[Problem] = []
    whole: dict[str, dict[str, dict[str, Any]]] = {}
    for kind, rows in typed.items():
        below = generic_rows(kind)
        done: dict[str, dict[str, Any]] = {}
        for name in rows:
            chain = [name]
            while chain:  # without recursion: a file may hold a long chain
                at = chain[-1]
                row, (document, key) = rows[at], origins[kind, at]
                like = row.get("like")
                base: Mapping[str, Any] | None = None
                if "like" in row:
                    if not isinstance(like, str):
                        problems.append(document.problem((*key, "like"), shown(like), f"the name of a {kind}"))
                        break
                    if like == at or like not in rows:
                        base = below.get(like)
                        if base is None:
                            among = tuple(dict.fromkeys((*rows, *below)))
                            found = f"no {kind.replace('_', ' ')} “{like}”{nearest(like, among)}"
                            problems.append(document.problem((*key, "like"), found, "one of: " + ", ".join(among)))
                            break
                    elif like in done:
                        base = done[like]
                    elif like in chain:
                        told = " → ".join((*chain[chain.index(like) :], like))
                        allowed = "a chain that ends at a whole row"
                        problems.append(document.problem((*key, "like"), f"a circle: {told}", allowed))
                        break
                    else:
                        chain.append(like)
                        continue
                done[at] = _merged(at, row, base, document)
                chain.pop()
        whole[kind] = done
    return whole, list(dict.fromkeys(problems))


def _merged(name: str, row: Mapping[str, Any], base: Mapping[str, Any] | None, document: Document) -> dict[str, Any]:
    changes = {field: value for field, value in row.items() if field != "like"}
    file = document.path.name if document.path is not None else document.file
    merged = {**(base or {}), **changes, "name": name}
    if "source" not in changes:
        told = f"{', '.join(changes)} from {file}" if changes else f"named in {file}"
        merged["source"] = file if base is None else f"{base['source']}; {told}"
    return merged


def _faults(overlay: Overlay, origins: Mapping[tuple[str, str], Origin]) -> list[Problem]:
    """What is wrong inside rows: each becomes its record once."""
    problems = []
    with laid_over(overlay):
        for kind, rows in overlay.rows.items():
            record = record_of(kind)
            for name, row in rows.items():
                try:
                    overlay.records[kind, name] = record.model_validate(dict(row))
                except ValidationError as error:
                    document, key = origins[kind, name]
                    problems += [
                        as_problem(one, document, record, key) for one in one_each(error.errors(include_url=False))
                    ]
    return problems
