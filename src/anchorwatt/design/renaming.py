"""Calling an entry of the design otherwise: its key, and whatever in the file names it, in one change.

As with any edit, the text is changed where names stand and nowhere else, and what comes of it is read again.
"""

from __future__ import annotations

import re
import typing
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from anchorwatt.design.design import Design
from anchorwatt.design.document import Document, Key, scan
from anchorwatt.design.editing import key_of
from anchorwatt.design.fill_places import ON_AN_ENGINE
from anchorwatt.design.form import CABIN_NAMES, type_at
from anchorwatt.design.plain_value import written
from anchorwatt.design.reading import designed
from anchorwatt.errors import BadDesign

LONGEST = 60
ALLOWED = f"a name of 1 to {LONGEST} signs that can be seen, without a full stop"
LOADS: tuple[Key, ...] = (("ac", "loads"), ("dc", "loads"))  # the plan calls both by their names
PACKAGES: Key = ("offer", "packages", "*", "changes")
_QUOTED = re.compile(r"\"(?:[^\"\\]|\\.)*\"|'(?:[^']|'')*'", re.DOTALL)


def renamed(design: Design, key: str, name: str) -> Design:
    """A design with an entry called otherwise, and everything that names it.

    Parameters
    ----------
    key : of the entry, in a mapping whose entries the writer names: “cabins.saloon”
    name : what it is called now

    Raises
    ------
    BadDesign
        There is no such entry, the name cannot be one, or another entry has it; the design is unchanged.

    Example
    -------
    >>> from anchorwatt import design
    >>> trawler = design.parse(design.starter_text("trawler-14m"))
    >>> changed = renamed(trawler, "spaces.bank box", "battery box")
    >>> changed.places["bank"].space
    'battery box'
    """
    document, name = design.document, name.strip()
    path = key_of(key, document)
    bears_names = typing.get_origin(type_at(path[:-1])) is dict
    if path not in document.spans or not bears_names or not isinstance(path[-1], str):
        raise BadDesign((document.problem(path, f"no entry “{key}” that has a name", "an entry of the design"),))
    if not name or len(name) > LONGEST or "." in name or not name.isprintable():
        raise BadDesign((document.problem(path, f"the name “{name[:200]}”", ALLOWED),))
    if name == path[-1]:
        return design
    beside = LOADS if path[:-1] in LOADS else (path[:-1],)
    if any(_at(document.data, (*above, name)) is not None for above in beside):
        raise BadDesign((document.problem(path, f"a second “{name}”", "a name that is not taken"),))
    return designed(_Rename(document, path, name).document())


@dataclass(frozen=True)
class _Called:
    """A key that follows: in which mapping, what it is, and what it becomes."""

    above: Key  # “*” stands for any one part
    old: str
    new: str


class _Rename:
    """A document on its way to one in which an entry is called otherwise."""

    def __init__(self, before: Document, path: Key, new: str) -> None:
        self.before = before
        self.old = str(path[-1])
        self.new = new
        self.keys, self.names_it = _followers(path, self.old, new, before.data)
        self.edits: list[tuple[int, int, str]] = []

    def document(self) -> Document:
        """The document as it is then.

        Raises
        ------
        BadDesign
            It is laid out so that a name cannot be changed safely.
        """
        expected = self._walked(self.before.data, (), ())
        text = self.before.text
        for start, end, words in sorted(self.edits, reverse=True):
            text = text[:start] + words + text[end:]
        after = scan(text, self.before.file, self.before.path)
        if after.data != expected:
            found = "a layout in which this cannot be renamed safely"
            raise BadDesign((self.before.problem((), found, "names in one line, each before its colon"),))
        return after

    def _walked(self, value: Any, place: Key, means: Key) -> Any:
        """What the file then says at a place; `means` is the key of the design that stands there."""
        if isinstance(value, dict):
            return {
                self._key(key, place, means): self._walked(one, (*place, key), self._meant(key, place, means))
                for key, one in value.items()
            }
        if isinstance(value, list):
            return [self._walked(one, (*place, n), (*means, n)) for n, one in enumerate(value)]
        if value == self.old and self.names_it(means):
            span = self.before.spans[place]
            self.edits.append((span.start, span.end, written(self.new)))
            return self.new
        return value

    def _meant(self, key: str, place: Key, means: Key) -> Key:
        return tuple(key.split(".")) if _matches(place, PACKAGES) else (*means, key)

    def _key(self, key: str, place: Key, means: Key) -> str:
        parts = self._meant(key, place, means)
        first = 0 if _matches(place, PACKAGES) else len(parts) - 1
        now = [self._part(parts[: depth + 1]) if depth >= first else parts[depth] for depth in range(len(parts))]
        new = ".".join(str(part) for part in now[first:])
        if new != key:
            start = self.before.spans[(*place, key)].key_start
            quoted = _QUOTED.match(self.before.text, start)
            self.edits.append((start, quoted.end() if quoted else start + len(key), written(new)))
        return new

    def _part(self, path: Key) -> str:
        for one in self.keys:
            if path[-1] == one.old and _matches(path[:-1], one.above):
                return one.new
        return str(path[-1])


def _followers(path: Key, old: str, new: str, data: Any) -> tuple[list[_Called], Callable[[Key], bool]]:
    """Keys that follow an entry's name, and whether a value at a key is that name."""
    keys = [_Called(path[:-1], old, new)]
    match path:
        case ("cabins", _):
            keys += [_Called(("plan", "*", kind), old, new) for kind in ("cool", "heat", "ajar")]
            return keys, lambda at: at[-1] in CABIN_NAMES or _matches(at, ("neighbours", "*", "between", "*"))
        case ("cabins", _, "surfaces", _):
            return keys, lambda at: _matches(at, (*path[:2], "windows", "*", "surface"))
        case ("spaces", _):
            return keys, lambda at: _matches(at, ("places", "*", "space"))
        case ("ac" | "dc", "loads", _):
            keys.append(_Called(("plan", "*", "running"), old, new))
        case ("cooling", "plant", "handlers", _):
            keys.append(_Called(("places",), f"handler {old}", f"handler {new}"))
        case ("charging", "engines", _):
            keys.append(_Called(("places",), f"engine {old}", f"engine {new}"))
            for kind, title in _hung_on(data, old):
                called = f"{kind} {title} of "
                keys.append(_Called(("places",), called + old, called + new))
        case ("charging", "engines", engine, "alternators", _):
            for kind in ON_AN_ENGINE:
                keys.append(_Called(("places",), f"{kind} {old}", f"{kind} {new}"))
                keys.append(_Called(("places",), f"{kind} {old} of {engine}", f"{kind} {new} of {engine}"))
    return keys, lambda _: False


def _hung_on(data: Any, engine: str) -> Iterator[tuple[str, str]]:
    for title in _at(data, ("charging", "engines", engine, "alternators")) or ():
        for kind in ON_AN_ENGINE:
            yield kind, title


def _at(data: Any, path: Key) -> Any:
    for part in path:
        data = data.get(part) if isinstance(data, dict) else None
    return data


def _matches(path: Key, pattern: Key) -> bool:
    """Whether a key is of a pattern.

    Example
    -------
    >>> _matches(("plan", 0, "cool"), ("plan", "*", "cool")), _matches(("plan", 0), ("plan", "*", "cool"))
    (True, False)
    """
    return len(path) == len(pattern) and all(one in ("*", part) for part, one in zip(path, pattern, strict=True))
