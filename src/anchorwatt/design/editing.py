"""Changing a design: one value in the text, and everything else as the writer left it.

A change is made in the text itself, not by writing the file anew, so that comments, order, spacing and
units stay to the last byte. The changed text is read again as any file is; what does not pass is refused.
"""

from __future__ import annotations

import copy
from collections.abc import Mapping
from typing import Any

from anchorwatt.design.design import Design
from anchorwatt.design.document import Document, Key, child, scan
from anchorwatt.design.plain_value import written
from anchorwatt.design.reading import designed
from anchorwatt.errors import BadDesign
from anchorwatt.units import Quantity


def edit(design: Design, key: str, value: Any) -> Design:
    """Change one key of a design.

    Parameters
    ----------
    design : stays as it is
    key : dotted, numbers for places in a list: “dc.bank.parallel”, “plan.0.start”
    value : what the file shall say: a text with its unit, a number, a list, a mapping; None takes the key
        out, so that it is estimated again

    Returns
    -------
    The changed design.

    Raises
    ------
    BadDesign
        There is no such place, or the changed design does not pass; the given one is unchanged.

    Example
    -------
    >>> from anchorwatt import design
    >>> trawler = design.parse(design.starter_text("trawler-14m"))
    >>> design.edit(trawler, "dc.bank.parallel", 4).dc.bank.parallel, trawler.dc.bank.parallel
    (4, 2)
    """
    return edit_all(design, {key: value})


def edit_all(design: Design, changes: Mapping[str, Any]) -> Design:
    """Change several keys of a design in their order; only what comes of all of them must pass."""
    document = design.document
    for key, value in changes.items():
        document = _changed(document, key_of(key, document), _plain_data(value))
    return designed(document)


def _changed(document: Document, path: Key, value: Any) -> Document:
    text = _removed(document, path) if value is None else _set(document, path, value)
    changed = scan(text, document.file, document.path)
    if changed.data != _expected(document.data, path, value):
        raise BadDesign((document.problem(path, "a layout in which this cannot be changed safely", "one key a line"),))
    return changed


def key_of(key: str, document: Document) -> Key:
    """Parts of a dotted key; a number is a place where the file has a list there."""
    parts: list[str | int] = []
    at: Any = document.data
    for part in key.split("."):
        if isinstance(at, list):
            if not part.isdigit():
                raise BadDesign((document.problem((*parts, part), f"“{part}” in a list", "a number from 0"),))
            parts.append(int(part))
        else:
            parts.append(part)
        at = child(at, parts[-1])
    return tuple(parts)


def _plain_data(value: Any) -> Any:
    if isinstance(value, Quantity):
        return value.text
    if isinstance(value, dict):
        return {str(key): _plain_data(one) for key, one in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain_data(one) for one in value]
    return value


def _expected(data: dict[str, Any], path: Key, value: Any) -> dict[str, Any]:
    data = copy.deepcopy(data)
    at: Any = data
    for part in path[:-1]:
        at = at[part]
    if value is None:
        del at[path[-1]]
    elif isinstance(at, list) and path[-1] == len(at):
        at.append(value)
    else:
        at[path[-1]] = value
    return data


def _set(document: Document, path: Key, value: Any) -> str:
    text, span = document.text, document.spans.get(path)
    if span is None:
        return _added(document, path, value)
    words = written(value)
    if span.start == span.end:
        return f"{text[: span.start].rstrip(' ')} {words}{text[span.end :]}"
    if text[span.start] in "|>":
        words += "\n"
    if span.block:
        # The new value stands on the line of its key.
        start = text.index(":", span.key_start) + 1 if isinstance(path[-1], str) else span.start
        gap = " " if isinstance(path[-1], str) else ""
        return text[:start] + gap + words + text[span.end :]
    return text[: span.start] + words + text[span.end :]


def _added(document: Document, path: Key, value: Any) -> str:
    text, above = document.text, path[:-1]
    at: Any = document.data
    for part in above:
        at = child(at, part)
    fits = isinstance(at, dict) or (isinstance(at, list) and path[-1] == len(at))
    if not fits:
        raise BadDesign((document.problem(path, "no such place in the design", "a key of a mapping that is there"),))
    entry = written(value) if isinstance(at, list) else f"{written(path[-1])}: {written(value)}"
    last = (*above, len(at) - 1 if isinstance(at, list) else list(at)[-1]) if at else None
    if above and not document.spans[above].block:
        brace = document.spans[above].end - 1
        return text[:brace] + (", " if last else "") + entry + text[brace:]
    last_span = document.spans[last] if last else None
    if last_span is None:
        raise BadDesign((document.problem(path, "an empty mapping", "a mapping with a key"),))
    first = document.spans[(*above, 0 if isinstance(at, list) else next(iter(at)))]
    start = text.rindex("-", 0, first.key_start) if isinstance(at, list) else first.key_start
    indent = start - (text.rfind("\n", 0, start) + 1)
    end = last_span.end
    if text[end - 1 : end] == "\n":
        end -= 1
    end = text.find("\n", end)
    end = len(text) if end < 0 else end
    dash = "- " if isinstance(at, list) else ""
    ending = "\r" if text[end - 1 : end] == "\r" else ""  # the writer ends lines as on other machines
    return f"{text[:end]}\n{' ' * indent}{dash}{entry}{ending}{text[end:]}"


def _removed(document: Document, path: Key) -> str:
    text, span = document.text, document.spans.get(path)
    if span is None:
        raise BadDesign((document.problem(path, "no such key in the file", "a key that the file has"),))
    above = path[:-1]
    at: Any = document.data
    for part in above:
        at = at[part]
    siblings = list(range(len(at))) if isinstance(at, list) else list(at)
    place = siblings.index(path[-1])
    if len(siblings) == 1 and above:
        return _set(document, above, [] if isinstance(at, list) else {})
    after = document.spans[(*above, siblings[place + 1])] if place + 1 < len(siblings) else None
    before = document.spans[(*above, siblings[place - 1])] if place else None
    if above and not document.spans[above].block:
        if after is not None:
            return text[: span.key_start] + text[after.key_start :]
        return text[: before.end if before else span.key_start] + text[span.end :]
    begin = text.rfind("\n", 0, span.key_start) + 1
    lead = text[begin : span.key_start]
    whole = lead.strip() == ("-" if isinstance(at, list) else "")
    if not whole and after is not None:
        return text[: span.key_start] + text[after.key_start :]
    end = span.end - 1 if text[span.end - 1 : span.end] == "\n" else span.end
    line_end = text.find("\n", end)
    return text[:begin] + ("" if line_end < 0 else text[line_end + 1 :])
