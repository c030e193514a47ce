"""What tests of a yard drawing measure: what lies over what, what a conductor runs through, what leaves the paper.

All of it takes a layout's `Body` or a framed `Sheet` and answers in words a reader can find on the sheet, so that a
test asserts an empty list. Lengths in mm, x to the right, y downward.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations

from anchorwatt.drawings.lettering import text_width
from anchorwatt.drawings.sheet import Anchor, Arc, Box, Path, Placed, Point, Sheet, Text
from anchorwatt.drawings.sheets.body import AC, AIR, BONDING, CONTROL, DC, REFRIGERANT, WATER, Body, Reference
from anchorwatt.drawings.sheets.paper import Paper

CONDUCTORS = (DC, AC, CONTROL, BONDING, WATER, REFRIGERANT, AIR)
"""Layers whose unfilled paths carry something from one part to another."""

ABOVE, BELOW = 0.72, 0.2
"""Of a text's size: what its letters cover above and below the baseline."""

PLACE = "88/M88"  # the widest that a reference is resolved to

TOUCH = 1e-6  # mm; less than this over one another is side by side

Segment = tuple[Point, Point]


@dataclass(frozen=True)
class Thing:
    """What covers a box: a text, an attribute, or a placed block."""

    name: str
    box: Box
    owner: int = -1  # index of the item that it belongs to; a block and its attributes have one owner
    block: bool = False


def letters(words: str, at: Point, size: float, anchor: Anchor = "start", bold: bool = False) -> Box:
    """What one line of text covers."""
    width = text_width(words, size, bold)
    left = at[0] - width * {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor]
    return left, at[1] - ABOVE * size, left + width, at[1] + BELOW * size


def texts(content: Body | Sheet) -> list[Thing]:
    """Every text of the sheet: free ones, references, shown attributes, and those drawn in a symbol."""
    return list(_texts(content))


def _texts(content: Body | Sheet) -> Iterator[Thing]:
    for number, item in enumerate(content.items):
        if isinstance(item, Text):
            if item.words.strip():
                yield Thing(item.words, letters(item.words, item.at, item.size, item.anchor, item.bold), number)
        elif isinstance(item, Reference):
            words = item.before + PLACE
            yield Thing(words, letters(words, item.at, item.size, item.anchor), number)
        elif isinstance(item, Placed):
            for one in item.attributes:
                if one.shown and one.words.strip():
                    box = letters(one.words, one.at, one.size, one.anchor, one.bold)
                    yield Thing(f"{named(item)} {one.name} {one.words}", _moved(box, item.at), number)
            for drawn in item.block.items:
                if isinstance(drawn, Text) and drawn.words.strip():
                    box = letters(drawn.words, drawn.at, drawn.size, drawn.anchor, drawn.bold)
                    yield Thing(f"{named(item)} {drawn.words}", _moved(box, item.at), number)


def blocks(content: Body | Sheet) -> list[Thing]:
    """Every placed block with the box round its symbol."""
    return [
        Thing(named(item), item.box, number, block=True)
        for number, item in enumerate(content.items)
        if isinstance(item, Placed)
    ]


def named(placed: Placed) -> str:
    """A placed block by its tag, its key or its block's name, whichever it has first."""
    tag = next((one.words for one in placed.attributes if one.name == "TAG" and one.words), "")
    return tag or placed.key or placed.block.name


def overlaps(content: Body | Sheet) -> list[str]:
    """Pairs of texts and blocks that lie over one another; a block and its own attributes do not count."""
    things = sorted([*texts(content), *blocks(content)], key=lambda one: one.box[0])
    found = []
    for place, one in enumerate(things):
        for other in things[place + 1 :]:
            if other.box[0] >= one.box[2] - TOUCH:
                break
            own = one.owner == other.owner and one.block is not other.block
            if not own and _over(one.box, other.box):
                found.append(f"{one.name!r} over {other.name!r} at {_at(other.box)}")
    return found


def conductors(content: Body | Sheet) -> list[Path]:
    """What carries something from part to part: unfilled paths on the layers of `CONDUCTORS`."""
    return [item for item in content.items if isinstance(item, Path) and not item.fill and item.layer in CONDUCTORS]


def segments(path: Path) -> list[Segment]:
    """The straight pieces of a path, those of no length left out."""
    return [(a, b) for a, b in zip(path.points, path.points[1:], strict=False) if a != b]


def struck(content: Body | Sheet, layers: Iterable[str] = CONDUCTORS) -> list[str]:
    """Conductors through a text or through a block.

    A conductor may run up to a terminal: to the edge of the terminal's block, or into it where the terminal lies
    inside, never past the block's middle.

    Parameters
    ----------
    layers : of the paths that are looked at; with FRAME and SYMBOLS among them, rules and outlines too
    """
    wanted = set(layers)
    paths = [one for one in content.items if isinstance(one, Path) and not one.fill and one.layer in wanted]
    words, placed = texts(content), [item for item in content.items if isinstance(item, Placed)]
    found = []
    for path in paths:
        pieces = segments(path)
        for number, piece in enumerate(pieces):
            found += [
                f"{told(path)} through the text {text.name!r} at {_at(text.box)}"
                for text in words
                if _inside(piece, text.box) > TOUCH
            ]
            for block in placed:
                deep = _inside(piece, block.box)
                if deep > TOUCH and not _arrives(pieces, number, deep, block):
                    found.append(f"{told(path)} through the block {named(block)!r} at {_at(block.box)}")
    return found


def _arrives(pieces: list[Segment], number: int, deep: float, block: Placed) -> bool:
    """Whether a piece of a conductor lies in a block only because it ends on a terminal in there."""
    left, top, right, bottom = block.box
    ends = [block.terminal(name) for name, _ in block.block.terminals]
    (ax, ay), (bx, by) = pieces[number]
    across = abs(bx - ax) >= abs(by - ay)
    room = 0.5 * (right - left if across else bottom - top) + TOUCH
    first, last = number == 0, number == len(pieces) - 1
    lands = (first and _among((ax, ay), ends)) or (last and _among((bx, by), ends))
    return lands and deep <= room


def slanted(content: Body | Sheet, layers: Iterable[str] = CONDUCTORS) -> list[str]:
    """Conductors with a piece that is neither level nor upright."""
    wanted = set(layers)
    return [
        f"{told(path)} from {a} to {b}"
        for path in content.items
        if isinstance(path, Path) and not path.fill and path.layer in wanted
        for a, b in segments(path)
        if abs(a[0] - b[0]) > TOUCH and abs(a[1] - b[1]) > TOUCH
    ]


def outside(body: Body, paper: Paper) -> list[str]:
    """What of a layout leaves `paper.body`."""
    left, top, right, bottom = paper.body
    return [
        f"{name} at {_at(box)}"
        for name, box in _extents(body)
        if box[0] < left - TOUCH or box[1] < top - TOUCH or box[2] > right + TOUCH or box[3] > bottom + TOUCH
    ]


def _extents(content: Body | Sheet) -> Iterator[tuple[str, Box]]:
    for thing in (*texts(content), *blocks(content)):
        yield thing.name, thing.box
    for item in content.items:
        if isinstance(item, Path) and item.points:
            xs, ys = zip(*item.points, strict=True)
            yield told(item), (min(xs), min(ys), max(xs), max(ys))
        elif isinstance(item, Arc):
            (x, y), r = item.centre, item.radius
            yield "an arc", (x - r, y - r, x + r, y + r)


def loose(content: Body | Sheet) -> list[str]:
    """Ends of conductors that lie on no terminal of a placed block."""
    ends = [
        item.terminal(name) for item in content.items if isinstance(item, Placed) for name, _ in item.block.terminals
    ]
    return [
        f"{told(path)} ends at {point}"
        for path in conductors(content)
        for point in (path.points[0], path.points[-1])
        if not _among(point, ends)
    ]


def crossings(content: Body | Sheet) -> int:
    """How often one conductor crosses another, neither of them ending there."""
    return sum(_cross(a, b) for a, b in _pairs(content))


def along(content: Body | Sheet) -> list[str]:
    """Conductors that run on top of one another, so that nobody can tell them apart."""
    return [
        f"{told(one)} on top of {told(other)} at {a}"
        for one, other in combinations(conductors(content), 2)
        for a in segments(one)
        for b in segments(other)
        if _on_top(a, b) > TOUCH
    ]


def told(path: Path) -> str:
    """A path in words."""
    facts = dict(path.data)
    ways = f"{facts.get('circuit', '')} {facts.get('from', '')} {facts.get('to', '')}".strip()
    return ways or path.key or f"a line on {path.layer or 'no layer'}"


def faults(body: Body, paper: Paper) -> list[str]:
    """Everything above that must not be, of one layout; crossings and loose ends are for the caller to judge."""
    return [
        *(f"overlap: {one}" for one in overlaps(body)),
        *(f"struck: {one}" for one in struck(body)),
        *(f"slanted: {one}" for one in slanted(body)),
        *(f"outside: {one}" for one in outside(body, paper)),
        *(f"on top: {one}" for one in along(body)),
    ]


def _pairs(content: Body | Sheet) -> Iterator[tuple[Segment, Segment]]:
    for one, other in combinations(conductors(content), 2):
        for a in segments(one):
            for b in segments(other):
                yield a, b


def _cross(one: Segment, other: Segment) -> bool:
    """Whether two pieces cross within both."""

    def side(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    (a, b), (c, d) = one, other
    return side(a, b, c) * side(a, b, d) < -TOUCH and side(c, d, a) * side(c, d, b) < -TOUCH


def _on_top(one: Segment, other: Segment) -> float:
    """mm that two level or two upright pieces share."""
    for along_axis, across_axis in ((0, 1), (1, 0)):
        if all(abs(point[across_axis] - one[0][across_axis]) <= TOUCH for point in (*one, *other)):
            a, b = sorted(point[along_axis] for point in one)
            c, d = sorted(point[along_axis] for point in other)
            return min(b, d) - max(a, c)
    return 0.0


def _inside(piece: Segment, box: Box) -> float:
    """mm of a piece that lie within a box, its edges not counted."""
    (ax, ay), (bx, by) = piece
    left, top, right, bottom = box
    if max(ax, bx) <= left or min(ax, bx) >= right or max(ay, by) <= top or min(ay, by) >= bottom:
        return 0.0  # nearly all of them
    begin, end = 0.0, 1.0
    for start, change, low, high in ((ax, bx - ax, left, right), (ay, by - ay, top, bottom)):
        if abs(change) <= TOUCH:
            if not low + TOUCH < start < high - TOUCH:
                return 0.0
            continue
        near, far = sorted(((low - start) / change, (high - start) / change))
        begin, end = max(begin, near), min(end, far)
    return max(0.0, end - begin) * float(((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5)


def _among(point: Point, others: Iterable[Point]) -> bool:
    return any(abs(point[0] - x) <= TOUCH and abs(point[1] - y) <= TOUCH for x, y in others)


def _over(one: Box, other: Box) -> bool:
    return (
        one[0] < other[2] - TOUCH
        and other[0] < one[2] - TOUCH
        and one[1] < other[3] - TOUCH
        and other[1] < one[3] - TOUCH
    )


def _moved(box: Box, by: Point) -> Box:
    return box[0] + by[0], box[1] + by[1], box[2] + by[0], box[3] + by[1]


def _at(box: Box) -> str:
    return f"({box[0]:.1f}, {box[1]:.1f})"
