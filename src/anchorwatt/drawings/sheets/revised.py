"""What changed since an earlier revision: a cloud round it, and a note of what is gone."""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Sequence
from itertools import pairwise

from anchorwatt.drawings.lettering import text_width
from anchorwatt.drawings.sheet import Box, Item, Path, Placed, Point, Text
from anchorwatt.drawings.sheets.body import LAYERS, LINE, REVISION, Body, Reference

_BUMP = 4.0  # mm of cloud from dent to dent
_ROUND = 1.4  # mm that a cloud keeps off what it goes round
_STEPS = 6  # straight pieces of a bump
_NAMED = 6  # things gone that a note names

Signature = tuple[tuple[str, ...], ...]


def revised(bodies: Sequence[Body], earlier: Sequence[Body], since: str) -> tuple[Body, ...]:
    """Sheets with clouds round all that differs from earlier sheets of the same subject.

    Parameters
    ----------
    since : what the earlier sheets are, in words, e.g. "revision A of 2026-11-20"

    Things are the same by their keys, wherever they stand; on a sheet to scale a thing that moved has changed too.
    What is gone is named in a note on the first of the sheets.
    """
    before = _signatures(earlier)
    now = _signatures(bodies)
    changed = {key for key, said in now.items() if before.get(key) != said}
    gone = [_called(key) for key in before if key not in now]
    notes = [f"Clouds: changed since {since}." if changed else f"Nothing changed since {since}."]
    if gone:
        more = f" and {len(gone) - _NAMED} more" if len(gone) > _NAMED else ""
        notes.append(f"Taken out since: {', '.join(gone[:_NAMED])}{more}.")
    made = []
    for number, body in enumerate(bodies):
        clouds = [cloud(box) for box in _boxes(body, changed)]
        said = tuple(notes) if number == 0 else (notes[0],) if clouds else ()
        made.append(dataclasses.replace(body, items=(*body.items, *clouds), notes=(*said, *body.notes)))
    return tuple(made)


def _called(key: str) -> str:
    return key.removeprefix("circuit:")


def _signatures(bodies: Sequence[Body]) -> dict[str, Signature]:
    """What is said of each thing, by its key."""
    found: dict[str, list[tuple[str, ...]]] = {}
    for body in bodies:
        to_scale = body.scale != "none"
        for item in body.items:
            key = _key(item)
            if key:
                found.setdefault(key, []).append(_said(item, to_scale))
    return {key: tuple(sorted(said)) for key, said in found.items()}


def _key(item: Item | Reference) -> str:
    """What an item is, whatever its tag: tags are numbered anew when something comes between."""
    if isinstance(item, Placed):
        return next((one.words for one in item.attributes if one.name == "NAME"), item.key)
    return item.key if isinstance(item, Path | Text) else ""


def _said(item: Item | Reference, to_scale: bool) -> tuple[str, ...]:
    if isinstance(item, Placed):
        at = tuple(f"{one:.1f}" for one in item.at) if to_scale else ()
        return tuple(f"{one.name}={one.words}" for one in item.attributes) + at
    if isinstance(item, Text):
        return (item.words,)
    if isinstance(item, Path):
        at = tuple(f"{x:.1f},{y:.1f}" for x, y in item.points) if to_scale else ()
        return tuple(f"{name}={fact}" for name, fact in item.data) + at
    return ()


def _boxes(body: Body, changed: set[str]) -> list[Box]:
    """Boxes round what changed: one round all texts and symbols of a thing that stand together."""
    boxes: dict[str, list[Box]] = {}
    for item in body.items:
        key = _key(item)
        if key in changed and isinstance(item, Text | Placed):
            boxes.setdefault(key, []).append(_box(item))
    return [joined for group in boxes.values() for joined in _together(group)]


def _box(item: Text | Placed) -> Box:
    if isinstance(item, Text):
        return _letters(item.words, item.at, item.size, item.anchor, item.bold)
    box = item.box
    for one in item.attributes:
        if one.shown and one.words:
            at = item.at[0] + one.at[0], item.at[1] + one.at[1]
            box = _union(box, _letters(one.words, at, one.size, one.anchor, one.bold))
    return box


def _letters(words: str, at: Point, size: float, anchor: str, bold: bool) -> Box:
    width = text_width(words, size, bold)
    left = at[0] - {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * width
    return left, at[1] - 0.72 * size, left + width, at[1] + 0.2 * size


def _union(a: Box, b: Box) -> Box:
    return min(a[0], b[0]), min(a[1], b[1]), max(a[2], b[2]), max(a[3], b[3])


def _together(boxes: Sequence[Box], within: float = 6.0) -> list[Box]:
    """Boxes that stand within some mm of each other, as one."""
    joined: list[Box] = []
    for box in sorted(boxes):
        near = [one for one in joined if all(_near(one, box, axis, within) for axis in (0, 1))]
        for one in near:
            joined.remove(one)
            box = _union(one, box)
        joined.append(box)
    return joined


def _near(a: Box, b: Box, axis: int, within: float) -> bool:
    return a[axis] - within <= b[axis + 2] and b[axis] - within <= a[axis + 2]


def cloud(box: Box) -> Path:
    """A revision cloud round a box."""
    left, top, right, bottom = box[0] - _ROUND, box[1] - _ROUND, box[2] + _ROUND, box[3] + _ROUND
    corners = ((left, top), (right, top), (right, bottom), (left, bottom), (left, top))
    points: list[Point] = []
    for start, end in pairwise(corners):
        points += _bumps(start, end)
    return Path((*points, points[0]), LAYERS[REVISION], LINE, layer=REVISION, key="revision")


def _bumps(start: Point, end: Point) -> list[Point]:
    """Half circles, a little flattened, along a side that is walked clockwise."""
    long = math.hypot(end[0] - start[0], end[1] - start[1])
    count = max(round(long / _BUMP), 1)
    along = (end[0] - start[0]) / long, (end[1] - start[1]) / long
    out = along[1], -along[0]
    radius = 0.5 * long / count
    points = []
    for bump in range(count):
        for step in range(_STEPS):
            turn = math.pi * step / _STEPS
            forward = (2 * bump + 1) * radius - radius * math.cos(turn)
            away = 0.6 * radius * math.sin(turn)
            points.append(
                (start[0] + along[0] * forward + out[0] * away, start[1] + along[1] * forward + out[1] * away)
            )
    return points
