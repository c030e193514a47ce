"""Checks that need more than one key: names that must exist, parts that must fit each other."""

from __future__ import annotations

import functools
from collections.abc import Iterator, Mapping
from typing import Annotated, Any

from pydantic import TypeAdapter, ValidationError

from anchorwatt.catalogue.part import nearest
from anchorwatt.design.design import Design
from anchorwatt.design.document import Document, Key
from anchorwatt.errors import Problem

Check = tuple[Key, Any, Mapping[str, Any], str]


def problems_of_names(document: Document) -> list[Problem]:
    """Names that nothing bears, and names that two things bear. Works on what was typed, right or wrong."""
    data = document.data
    cabins = _mapping(data, "cabins")
    ac_loads, dc_loads = _mapping(data, "ac", "loads"), _mapping(data, "dc", "loads")
    problems = [
        document.problem(
            ("dc", "loads", name),
            f"a second load “{name}”; the first is under ac.loads",
            "a name of its own for each load",
        )
        for name in dc_loads
        if name in ac_loads
    ]
    handlers = _mapping(data, "cooling", "plant", "handlers")
    cooled = {entry.get("cabin"): "" for entry in handlers.values() if isinstance(entry, dict)}
    for key, name, among, what in _named(data, cabins, {**ac_loads, **dc_loads}):
        # A file without a single cabin is told so once, not again wherever a cabin is named.
        if not isinstance(name, str) or name in among or (what == "cabin" and not cabins):
            continue
        problems.append(
            document.problem(
                key,
                f"no {what} “{name}”{nearest(name, among)}",
                f"one of: {', '.join(among)}" if among else f"a {what}",
            )
        )
    # Without handlers, or with one in a cabin that does not exist, that fault is told where it stands.
    sure = bool(handlers) and all(name in cabins for name in cooled)
    problems.extend(
        document.problem(
            ("plan", number, "cool", cabin),
            f"cooling in {cabin}, which has no air handler",
            "cabins with an air handler: " + ", ".join(str(one) for one in cooled),
        )
        for number, period in enumerate(_list(data, "plan"))
        for cabin in _mapping(period, "cool")
        if sure and cabin in cabins and cabin not in cooled
    )
    problems.extend(
        document.problem(
            ("plan", number, "doing"),
            "“on shore power” without a shore service",
            "at anchor or motoring; or a shore service by name under ac.shore",
        )
        for number, period in enumerate(_list(data, "plan"))
        if isinstance(period, dict) and period.get("doing") == "on shore power"
        if _mapping(data, "ac") and _mapping(data, "ac").get("shore") is None
    )
    for number, neighbour in enumerate(_list(data, "neighbours")):
        pair = neighbour.get("between") if isinstance(neighbour, dict) else None
        if isinstance(pair, list) and len(pair) == 2 and pair[0] == pair[1]:
            problems.append(
                document.problem(("neighbours", number, "between"), f"“{pair[0]}” twice", "two different cabins")
            )
    return problems


def sections_of(document: Document) -> dict[str, Any]:
    """Those sections of a faulty file that are right in themselves."""
    sections = {}
    for name, adapter in _adapters().items():
        try:
            sections[name] = adapter.validate_python(document.data[name])
        except (ValidationError, KeyError):
            continue
    return sections


@functools.cache
def _adapters() -> dict[str, TypeAdapter[Any]]:
    return {
        # What mypy cannot know: a field's annotation put together again is a type.
        name: TypeAdapter(Annotated[field.annotation, field])  # type: ignore[arg-type]
        for name, field in Design.model_fields.items()
        if name not in ("anchorwatt", "name", "about")
    }


def _named(data: Mapping[str, Any], cabins: Mapping[str, Any], loads: Mapping[str, Any]) -> Iterator[Check]:
    for number, neighbour in enumerate(_list(data, "neighbours")):
        pair = neighbour.get("between") if isinstance(neighbour, dict) else None
        for place, name in enumerate(pair if isinstance(pair, list) else ()):
            yield ("neighbours", number, "between", place), name, cabins, "cabin"
    for path in (
        ("cooling", "plant", "handlers"),
        ("cooling", "alternative", "units"),
        ("ac", "loads"),
        ("dc", "loads"),
    ):
        for title, entry in _mapping(data, *path).items():
            if isinstance(entry, dict) and entry.get("cabin") is not None:
                yield (*path, title, "cabin"), entry["cabin"], cabins, "cabin"
    for number, period in enumerate(_list(data, "plan")):
        for cabin in _mapping(period, "cool"):
            yield ("plan", number, "cool", cabin), cabin, cabins, "cabin"
        for place, people in enumerate(_list(period, "people")):
            if isinstance(people, dict):
                yield ("plan", number, "people", place, "cabin"), people.get("cabin"), cabins, "cabin"
        for load in _mapping(period, "running"):
            yield ("plan", number, "running", load), load, loads, "load"


def _mapping(data: Any, *path: str) -> Mapping[str, Any]:
    for key in path:
        data = data.get(key) if isinstance(data, dict) else None
    return data if isinstance(data, dict) else {}


def _list(data: Any, key: str) -> list[Any]:
    found = data.get(key) if isinstance(data, dict) else None
    return found if isinstance(found, list) else []
