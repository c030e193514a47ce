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
    served = _served(_mapping(data, "cooling", "plant", "handlers"))
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
    sure = bool(served) and all(name in cabins for name in served)
    problems.extend(
        document.problem(
            ("plan", number, kind, cabin),
            f"{kind}ing in {cabin}, which has no air handler and no outlet of one",
            "cabins with an air handler: " + ", ".join(f"{one} ({words})" for one, words in served.items()),
        )
        for number, period in enumerate(_list(data, "plan"))
        for kind in ("cool", "heat")
        for cabin in _mapping(period, kind)
        if sure and cabin in cabins and cabin not in served
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


def _served(handlers: Mapping[str, Any]) -> dict[Any, str]:
    """Cabins that air handlers serve, and by which; what is not a name is left to the reader."""
    served: dict[Any, list[str]] = {}
    for name, entry in handlers.items():
        if not isinstance(entry, dict):
            continue
        served.setdefault(_word(entry.get("thermostat") or entry.get("cabin")), []).append(name)
        outlets = _mapping(entry, "outlets") or {"": {"cabin": entry.get("cabin")}}
        for title, outlet in outlets.items():
            if isinstance(outlet, dict) and name not in served.get(_word(outlet.get("cabin")), ()):
                served.setdefault(_word(outlet.get("cabin")), []).append(f"outlet {title} of {name}".replace("  ", " "))
    return {cabin: ", ".join(by) for cabin, by in served.items()}


def _word(value: Any) -> str:
    return value if isinstance(value, str) else ""


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
    for where, entry in _standing(data):
        for key in ("cabin", "thermostat"):
            if isinstance(entry, dict) and entry.get(key) is not None:
                yield (*where, key), entry[key], cabins, "cabin"
    for title, entry in _mapping(data, "places").items():
        if isinstance(entry, dict) and entry.get("space") is not None:
            yield ("places", title, "space"), entry["space"], _mapping(data, "spaces"), "space"
    for number, period in enumerate(_list(data, "plan")):
        for kind in ("cool", "heat", "ajar"):
            for cabin in _mapping(period, kind):
                yield ("plan", number, kind, cabin), cabin, cabins, "cabin"
        for place, people in enumerate(_list(period, "people")):
            if isinstance(people, dict):
                yield ("plan", number, "people", place, "cabin"), people.get("cabin"), cabins, "cabin"
        for load in _mapping(period, "running"):
            yield ("plan", number, "running", load), load, loads, "load"


def _standing(data: Mapping[str, Any]) -> Iterator[tuple[Key, Any]]:
    """What stands in a cabin, or blows into one, with its key."""
    for single in (
        ("ac", "inverter"),
        ("ac", "charger"),
        ("ac", "transformer"),
        ("dc", "bank"),
        ("dc", "engine_battery"),
    ):
        yield single, _mapping(data, *single)
    many: tuple[tuple[str, ...], ...] = (
        ("cooling", "plant", "handlers"),
        ("cooling", "chilled_water", "fan_coils"),
        ("cooling", "alternative", "units"),
        ("ac", "loads"),
        ("dc", "loads"),
        ("charging", "engines"),
        ("spaces",),
    )
    for path in many:
        for title, entry in _mapping(data, *path).items():
            yield (*path, title), entry
            for name, outlet in _mapping(entry, "outlets").items():
                yield (*path, title, "outlets", name), outlet


def _mapping(data: Any, *path: str) -> Mapping[str, Any]:
    for key in path:
        data = data.get(key) if isinstance(data, dict) else None
    return data if isinstance(data, dict) else {}


def _list(data: Any, key: str) -> list[Any]:
    found = data.get(key) if isinstance(data, dict) else None
    return found if isinstance(found, list) else []
