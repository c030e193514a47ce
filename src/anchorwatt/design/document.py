"""The text of a design file, read strictly, with the place of every key.

The reader takes the part of YAML that a person types: mappings, lists and plain values. Anchors, aliases
and tags are refused, so that a small file can never unfold into a huge one; so are duplicate keys, deep
nesting and large files. It works through the parser's events without recursion.

Two parsers give those events. libyaml's, in C, reads what people usually type; it is asked for nothing else,
since it follows an older YAML. Whatever is unusual in a text, or wrong with it, is left to ruamel.yaml's: every
message is its own.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from anchorwatt.errors import BadDesign, Problem

LARGEST_FILE = 2_000_000  # bytes
DEEPEST = 40

Key = tuple[str | int, ...]

_INTEGER = re.compile(r"[-+]?[0-9]{1,18}")
_DECIMAL = re.compile(r"[-+]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]{1,3})?")
_UNUSUAL = re.compile(
    "[^\n\r -~\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"  # tabs, marks, controls
    "|\r(?!\n)"
    "|^(?:%|---|\\.\\.\\.)"  # directives and documents
    "|(?:^|[\\s\\[{,])[&*!|>]"  # anchors, aliases, tags and blocks of text
    "|[\"']:[^\\s]"  # a value that leans on its key's quotes
    "|[^\n]\\Z",
    re.MULTILINE,
)
"""Where the two parsers may give different events; without any of it they give the same."""


@dataclass(frozen=True)
class Span:
    """Where a key and its value stand in the text."""

    line: int  # of the key; counted from 1
    key_start: int  # of the key, characters from the beginning; of the value in a list
    start: int  # of the value
    end: int
    block: bool  # a mapping or list that is told by indentation


@dataclass(frozen=True)
class Document:
    """A text and what it says."""

    text: str
    file: str  # as shown in messages
    path: Path | None = None
    data: dict[str, Any] = field(default_factory=dict)
    spans: dict[Key, Span] = field(default_factory=dict)

    def line(self, key: Key) -> int:
        """Line of a key, or of the nearest thing above it that stands in the text; at last the first line."""
        while key and key not in self.spans:
            key = key[:-1]
        return self.spans[key].line if key else 1

    def place(self, key: Key) -> str:
        """File and line of a key, as messages show them."""
        return f"{self.file}:{self.line(key)}"

    def problem(self, key: Key, found: str, allowed: str) -> Problem:
        """Something wrong at a key."""
        return Problem(self.file, self.line(key), dotted(key), found, allowed)


def child(holds: Any, part: str | int) -> Any:
    """What a mapping or a list holds at a part of a key; None where there is nothing.

    Example
    -------
    >>> child({"a": [1, 2]}, "a"), child([1, 2], 1), child([1, 2], 2), child("a", 0)
    ([1, 2], 2, None, None)
    """
    if isinstance(holds, dict):
        return holds.get(str(part))
    if isinstance(holds, list) and isinstance(part, int) and 0 <= part < len(holds):
        return holds[part]
    return None


def dotted(key: Key) -> str:
    """A key as it is written: parts joined by full stops.

    Example
    -------
    >>> dotted(("plan", 0, "start"))
    'plan.0.start'
    """
    return ".".join(str(part) for part in key)


DESIGN_FILE = "a design file"
BEGINS = "a mapping that begins with anchorwatt: 1"


def load(path: Path, kind: str = DESIGN_FILE, begins: str = BEGINS) -> Document:
    """Read a file from disk; `kind` and `begins` say in messages what it shall be."""
    name = str(path)

    def refuse(found: str, allowed: str, line: int | None = None) -> BadDesign:
        return BadDesign((Problem(name, line, "", found, allowed),))

    if path.is_dir():
        raise refuse("a folder", kind)
    try:
        size = path.stat().st_size
        if size > LARGEST_FILE:
            raise refuse(f"a file of {size / 1e6:.1f} MB", f"{kind} of at most {LARGEST_FILE / 1e6:g} MB")
        content = path.read_bytes()
    except FileNotFoundError:
        allowed = f"{kind}; “anchorwatt new” makes one" if kind == DESIGN_FILE else kind
        raise refuse("no such file", allowed) from None
    except OSError as error:
        raise refuse(f"a file that cannot be read ({error.strerror})", f"{kind} that can be read") from None
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        raise refuse(f"a byte 0x{content[error.start]:02x} that is not UTF-8", "text in UTF-8", line) from None
    return scan(text, name, path, begins)


def scan(text: str, file: str = "text", path: Path | None = None, begins: str = BEGINS) -> Document:
    """Read a text into plain mappings, lists and values, and note where each stands."""
    builder = _read_quickly(text, file) or _read_with_care(text, file)
    if builder.problems:
        raise BadDesign(tuple(builder.problems))
    if not isinstance(builder.root, dict):
        builder.refuse(1, "nothing" if builder.root is None else "no mapping", begins)
        raise BadDesign(tuple(builder.problems))
    return Document(text, file, path, builder.root, builder.spans)


def _read_quickly(text: str, file: str) -> _Builder | None:
    """The text by libyaml's events; None where there is anything unusual in it, or anything wrong with it."""
    import yaml

    if not yaml.__with_libyaml__ or _UNUSUAL.search(text):
        return None
    builder = _Builder(text, file)
    try:
        for event in yaml.parse(text, Loader=yaml.CSafeLoader):
            builder.take(event)
    except (yaml.YAMLError, BadDesign):
        return None
    return builder if isinstance(builder.root, dict) and not builder.problems else None


def _read_with_care(text: str, file: str) -> _Builder:
    """The text by ruamel.yaml's events."""
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    builder = _Builder(text, file)
    try:
        for event in YAML(typ="safe", pure=True).parse(text):
            builder.take(event)
    except MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        line = mark.line + 1 if mark is not None else None
        builder.refuse(line, f"what is not YAML ({error.problem})", "correct YAML: key: value, indented by spaces")
    except YAMLError as error:
        place = getattr(error, "position", 0)
        line = text.count("\n", 0, place) + 1
        builder.refuse(line, f"what is not YAML (character {text[place : place + 1]!r})", "printable text")
    return builder


class _Open:
    """A mapping or list that is being read."""

    def __init__(self, holds: dict[str, Any] | list[Any], key: Key, start: int) -> None:
        self.holds = holds
        self.key = key
        self.start = start
        self.awaited: str | None = None  # the key whose value comes next
        self.awaited_line = 0
        self.awaited_start = 0
        self.awaited_end = 0


class _Builder:
    def __init__(self, text: str, file: str) -> None:
        self.text = text
        self.file = file
        self.root: Any = None
        self.spans: dict[Key, Span] = {}
        self.problems: list[Problem] = []
        self.open: list[_Open] = []
        self.documents = 0
        self.last = 0  # where the value that was read last ends

    def refuse(self, line: int | None, found: str, allowed: str, key: Key = ()) -> None:
        self.problems.append(Problem(self.file, line, dotted(key), found, allowed))

    def stop(self, line: int, found: str, allowed: str) -> None:
        self.refuse(line, found, allowed, self._here())
        raise BadDesign(tuple(self.problems))

    def take(self, event: Any) -> None:
        kind = type(event).__name__
        line = event.start_mark.line + 1
        if kind == "DocumentStartEvent":
            self.documents += 1
            if self.documents > 1:
                self.stop(line, "a second document after ---", "one document a file")
        elif kind == "AliasEvent":
            self.stop(line, f"an alias *{event.anchor}", "no aliases: write it out")
        elif kind in ("MappingStartEvent", "SequenceStartEvent", "ScalarEvent"):
            if event.anchor:
                self.stop(line, f"an anchor &{event.anchor}", "no anchors: write it out")
            if kind == "ScalarEvent":
                self.scalar(event, line)
            else:
                self.begin(event, line, {} if kind == "MappingStartEvent" else [])
        elif kind in ("MappingEndEvent", "SequenceEndEvent"):
            done = self.open.pop()
            self.close(done, event)

    def begin(self, event: Any, line: int, holds: dict[str, Any] | list[Any]) -> None:
        if event.tag is not None and not event.implicit:
            self.stop(line, f"a tag {event.tag}", "no tags")
        if self.open and isinstance(self.open[-1].holds, dict) and self.open[-1].awaited is None:
            self.stop(line, "a mapping or list as a key", "a word as a key")
        if len(self.open) >= DEEPEST:
            self.stop(line, f"nesting deeper than {DEEPEST}", f"at most {DEEPEST} levels")
        key = self._place(holds, line, event.start_mark.index)
        self.open.append(_Open(holds, key, event.start_mark.index))

    def close(self, done: _Open, event: Any) -> None:
        if done.key:
            span = self.spans[done.key]
            block = self.text[done.start : done.start + 1] not in ("{", "[")
            end = max(self.last, done.start) if block else event.end_mark.index
            self.spans[done.key] = Span(span.line, span.key_start, done.start, end, block)
            self.last = end
        if not self.open:
            self.root = done.holds

    def scalar(self, event: Any, line: int) -> None:
        if event.tag is not None and not event.implicit[0] and not event.implicit[1]:
            self.stop(line, f"a tag {event.tag}", "no tags")
        inside = self.open[-1] if self.open else None
        if inside is not None and isinstance(inside.holds, dict) and inside.awaited is None:
            if event.value in inside.holds:
                first = self.spans[(*inside.key, event.value)].line
                self.refuse(
                    line,
                    f"a second “{event.value}”; the first is on line {first}",
                    "each key once",
                    (*inside.key, event.value),
                )
            inside.awaited, inside.awaited_line = event.value, line
            inside.awaited_start, inside.awaited_end = event.start_mark.index, event.end_mark.index
            return
        value = event.value if event.style else _value(event.value)
        start, end = event.start_mark.index, event.end_mark.index
        if start == end and inside is not None and isinstance(inside.holds, dict):
            # Each parser puts an empty value somewhere else before what follows it; here it stands at its colon.
            start = end = self.text.find(":", inside.awaited_end, start) + 1 or start
        key = self._place(value, line, start)
        if inside is None:
            self.root = value
        else:
            span = self.spans[key]
            self.spans[key] = Span(span.line, span.key_start, start, end, False)
            self.last = end

    def _place(self, value: Any, line: int, start: int) -> Key:
        if not self.open:
            return ()
        inside = self.open[-1]
        if isinstance(inside.holds, dict):
            name, inside.awaited = str(inside.awaited), None
            if name not in inside.holds:
                inside.holds[name] = value
                self.spans[(*inside.key, name)] = Span(inside.awaited_line, inside.awaited_start, start, start, False)
            return (*inside.key, name)
        key = (*inside.key, len(inside.holds))
        inside.holds.append(value)
        self.spans[key] = Span(line, start, start, start, False)
        return key

    def _here(self) -> Key:
        if not self.open:
            return ()
        inside = self.open[-1]
        if isinstance(inside.holds, dict):
            return inside.key if inside.awaited is None else (*inside.key, inside.awaited)
        return (*inside.key, len(inside.holds))


def _value(text: str) -> Any:
    """A plain scalar by the core schema of YAML 1.2: null, true, false, a number or a text."""
    if text in ("", "~", "null"):
        return None
    if text in ("true", "false"):
        return text == "true"
    if _INTEGER.fullmatch(text):
        return int(text)
    if len(text) < 40 and _DECIMAL.fullmatch(text):
        return float(text)
    return text
