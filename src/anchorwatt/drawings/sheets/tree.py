"""Draws what hangs together like a tree: a thing in the middle, what is connected to it left and right in columns.

Each connection has a row to itself and runs straight across; a thing is as tall as the rows of what hangs on it. So
nothing crosses, by construction. Rows have one pitch and follow the order of the design: what is added at the end of
a list moves nothing that stands before it. A tree that is too tall or too wide goes on further sheets, where the thing
that it was cut at stands again.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Literal

from anchorwatt.drawings.lettering import clipped, text_width, wrapped
from anchorwatt.drawings.sheet import INK, Anchor, Attribute, Block, Item, Path, Placed, Point, Text
from anchorwatt.drawings.sheets.body import (
    LABELS,
    LAYERS,
    LINE,
    SMALL,
    SYMBOLS,
    TEXT,
    THIN,
    Body,
    Reference,
    of_several,
)
from anchorwatt.drawings.sheets.paper import Paper
from anchorwatt.drawings.sheets.symbols import HALF, SIZE, glyph, in_line, moved

PITCH = 11.0
"""mm from row to row."""

HEAD = 11.0
"""mm over the first row, for the name of a bar and where it comes from."""

BAR = 1.6
INNER, OUTER = 30.0, 38.0
"""mm of width of a thing that others hang on, and of one at the end."""

SHORTEST, LONGEST = 27.0, 60.0
"""mm of a connection."""

_HEIGHT = 9.8  # of a thing of one row
_LEAST = 0.8  # of their size, down to which words over a connection are set smaller before they are cut short
_LEAD = 2.0  # of conductor before a fuse
_OUT = 6.0  # that a connection between neighbours runs out before it turns
_TEXT_AT = SIZE + 2.0  # where the words of a thing begin, from the side of its symbol
_TAG_AT, _NAME_AT, _LINE_DOWN = -2.0, 1.2, 2.8  # baselines of its words from its first row, and from line to line
_BAR_OVER = 3.2  # that a bar stands out over its first and last row
_BAR_WORDS = -5.6  # baseline of the words over it
_REFERRED, _APART = 14.0, 0.8  # mm that a reference beside a thing takes, and that it keeps off
_BEFORE, _BAR_NAME = 13.0, SHORTEST - 3.0  # mm that the tag over a bar and the name behind it take at most

Side = Literal["left", "right"]


@dataclass(frozen=True)
class InLine:
    """A symbol in a connection: a fuse, a breaker, a valve."""

    symbol: str
    tag: str
    words: str
    at: str  # tag of the thing that it stands next to


@dataclass(frozen=True)
class Link:
    """A connection between two things."""

    key: str
    tag: str
    layer: str
    above: str
    below: str
    start: str  # tag of a thing
    end: str
    in_line: tuple[InLine, ...] = ()
    told: str = ""


@dataclass(frozen=True)
class Thing:
    """What connections end on."""

    tag: str
    name: str
    rating: str
    symbol: str  # that `symbols.glyph` knows; "" = a bar
    told: str = ""


@dataclass(frozen=True)
class Branch:
    """A thing with what it hangs on its parent by, and what hangs on it."""

    thing: Thing
    links: tuple[Link, ...]
    branches: tuple[Branch, ...] = ()
    before: Link | None = None  # to the neighbour above it
    after: Link | None = None  # to the neighbour below it
    elsewhere: bool = False  # what hangs on it stands on another sheet

    @property
    def bar(self) -> bool:
        """Whether it is drawn as a bar: at the end of what is drawn a bus is a box with its words in it."""
        return self.thing.symbol == "" and bool(self.branches)

    def rows(self, top: bool) -> int:
        """Rows that it and what hangs on it take; `top` tells whether nothing stands above it."""
        return self.head(top) + max(
            len(self.links), self.first + _rows(self.branches, top and not self.first) + self.last, 1
        )

    def head(self, top: bool) -> int:
        """Rows left free above it: one for the words over a bar, which else would stand in what is above."""
        return 1 if self.bar and not top else 0

    @property
    def first(self) -> int:
        """Rows that a connection to the neighbour above takes."""
        return 0 if self.before is None else 1

    @property
    def last(self) -> int:
        """Rows that a connection to the neighbour below takes."""
        return 0 if self.after is None else 1

    def span(self, top: bool) -> int:
        """Rows from its first to its last terminal in use: how tall it is drawn."""
        inside = self.first + _span(self.branches, top and not self.first)
        if self.after is not None:
            inside = self.first + _rows(self.branches, top and not self.first) + 1
        return max(len(self.links), inside, 1)

    @property
    def depth(self) -> int:
        """Columns that it and what hangs on it take."""
        return 1 + max((branch.depth for branch in self.branches), default=0)


@dataclass(frozen=True)
class Tree:
    """A thing in the middle and what hangs on it."""

    root: Thing
    left: tuple[Branch, ...] = ()
    right: tuple[Branch, ...] = ()
    continued: bool = False  # from another sheet


def _tops(branches: Sequence[Branch], top: bool) -> list[tuple[Branch, bool]]:
    """Branches with whether nothing stands above them."""
    return [(branch, top and number == 0) for number, branch in enumerate(branches)]


def _rows(branches: Sequence[Branch], top: bool = True) -> int:
    return sum(branch.rows(first) for branch, first in _tops(branches, top))


def _span(branches: Sequence[Branch], top: bool = True) -> int:
    """Rows down to the last connection of branches to what they hang on."""
    if not branches:
        return 0
    *others, (last, first) = _tops(branches, top)
    return sum(branch.rows(one) for branch, one in others) + last.head(first) + len(last.links)


def _depth(branches: Sequence[Branch]) -> int:
    return max((branch.depth for branch in branches), default=0)


def most_rows(paper: Paper) -> int:
    """Rows that fit on a sheet."""
    _, top, _, bottom = paper.body
    return int((bottom - top - HEAD) / PITCH)


def tree_bodies(
    trees: Sequence[Tree],
    paper: Paper,
    *,
    name: str,
    title: str,
    about: str,
    notes: Sequence[str] = (),
    cautions: Sequence[str] = (),
    stacked: bool = False,
) -> tuple[Body, ...]:
    """Draw trees, each on as many sheets as it needs.

    Parameters
    ----------
    name : of the first file; further ones get "-2" and so on
    title : of the first sheet; further ones get their number in brackets
    stacked : trees stand below one another, as many on a sheet as fit; else each begins a sheet

    Returns
    -------
    At least one sheet: where there is no tree, it says so.
    """
    pages = [page for tree in trees for page in _pages(tree, paper)]
    further = {page.root.tag for page in pages if page.continued}
    anchored: set[str] = set()
    bodies = []
    for number, stack in enumerate(_stacks(pages, paper) if stacked else [[(page, 0.0)] for page in pages], 1):
        drawn = [_Drawing(page, paper, name, further, down) for page, down in stack]
        items = tuple(item for one in drawn for item in one.items)
        found = [anchor for one in drawn for anchor in one.anchors]
        anchors = tuple((anchor, at) for anchor, at in found if anchor not in anchored)
        anchored |= {anchor for anchor, _ in anchors}
        file, heading = of_several(name, title, number)
        bodies.append(Body(file, heading, about, items, anchors, tuple(notes), tuple(cautions)))
    if bodies:
        return tuple(bodies)
    left, top, _, _ = paper.body
    words = Text((left, top + TEXT), "The design has nothing that this sheet would show.", TEXT, layer=LABELS)
    return (Body(name, title, about, (words,), (), tuple(notes), tuple(cautions)),)


def _stacks(pages: Sequence[Tree], paper: Paper) -> list[list[tuple[Tree, float]]]:
    """Trees of each sheet, and how many mm down each of them begins."""
    _, top, _, bottom = paper.body
    stacks: list[list[tuple[Tree, float]]] = []
    down = 0.0
    for page in pages:
        height = HEAD + max(_rows(page.left), _rows(page.right), 1) * PITCH
        if not stacks or down + height > bottom - top:
            stacks.append([])
            down = 0.0
        stacks[-1].append((page, down))
        down += height
    return stacks


def _pages(tree: Tree, paper: Paper) -> list[Tree]:
    """The tree cut so that every part of it fits on a sheet."""
    rows = most_rows(paper)
    sides = [tree.left, tree.right]
    taken: list[Branch] = []
    while True:
        deeper = 0 if _depth(sides[0]) > _depth(sides[1]) else 1
        if _narrowest(tree.root, *sides) > _across(paper):
            number, found = deeper, _largest(sides[deeper], _depth(sides[deeper]) - 1)
        else:
            number = 0 if _rows(sides[0]) > rows else 1
            found = _largest(sides[number], 0) if _rows(sides[number]) > rows else None
        if found is None:
            break
        taken.append(found)
        sides[number] = tuple(_without(branch, found) for branch in sides[number])
    pages = _chunks(Tree(tree.root, sides[0], sides[1], tree.continued), rows)
    for branch in taken:
        pages += _pages(Tree(branch.thing, (), branch.branches, continued=True), paper)
    return pages


def _across(paper: Paper) -> float:
    left, _, right, _ = paper.body
    return right - left


def _narrowest(root: Thing, left: Sequence[Branch], right: Sequence[Branch]) -> float:
    """mm across that a tree needs at least."""
    columns = [*_widths(left), *_widths(right)]
    before, after = _margins(Tree(root, tuple(left), tuple(right)))
    return _root_width(root) + sum(columns) + len(columns) * SHORTEST + before + after


def _root_width(root: Thing) -> float:
    return BAR if root.symbol == "" else INNER


def _margins(tree: Tree) -> tuple[float, float]:
    """mm kept free left and right for the words over a bar that stands at an edge."""
    if tree.root.symbol:
        return 0.0, 0.0
    return 0.0 if tree.left else _BEFORE, 0.0 if tree.right else _BAR_NAME


def _widths(branches: Sequence[Branch]) -> list[float]:
    """mm of each column, from the middle outward."""
    widths = []
    level = list(branches)
    while level:
        widths.append(max(_width(one) + (_REFERRED if one.elsewhere else 0.0) for one in level))
        level = [inner for one in level for inner in one.branches]
    return widths


def _largest(branches: Sequence[Branch], at: int, depth: int = 1) -> Branch | None:
    """The branch with the most rows of those that something hangs on; of that depth only, or of any where it is 0."""
    best: Branch | None = None
    for branch in branches:
        own = branch if branch.branches and at in (0, depth) else None
        for one in (own, _largest(branch.branches, at, depth + 1)):
            if one is not None and (best is None or one.rows(True) > best.rows(True)):
                best = one
    return best


def _without(branch: Branch, cut: Branch) -> Branch:
    if branch is cut:
        return dataclasses.replace(branch, branches=(), elsewhere=True)
    return dataclasses.replace(branch, branches=tuple(_without(one, cut) for one in branch.branches))


def _chunks(tree: Tree, rows: int) -> list[Tree]:
    """The tree over several sheets where too many things hang on its root, neighbours that are linked kept together."""
    left, right = _chunked(tree.left, rows), _chunked(tree.right, rows)
    count = max(len(left), len(right), 1)
    left, right = left + [()] * (count - len(left)), right + [()] * (count - len(right))
    return [
        Tree(tree.root, one, other, tree.continued or number > 0)
        for number, (one, other) in enumerate(zip(left, right, strict=True))
    ]


def _chunked(branches: Sequence[Branch], rows: int) -> list[tuple[Branch, ...]]:
    chunks: list[list[Branch]] = []
    group: list[Branch] = []
    for branch in branches:
        group.append(branch)
        if branch.after is not None:
            continue
        if chunks and _rows([*chunks[-1], *group]) <= rows:
            chunks[-1] += group
        else:
            chunks.append(group)
        group = []
    return [tuple(chunk) for chunk in chunks]


@dataclass
class _Drawing:
    """One tree on one sheet."""

    tree: Tree
    paper: Paper
    name: str
    further: set[str]  # tags of things that have sheets of their own
    down: float  # mm from the top of the sheet's room
    items: list[Item | Reference] = field(default_factory=list)
    anchors: list[tuple[str, Point]] = field(default_factory=list)

    def __post_init__(self) -> None:
        left, top, right, _ = self.paper.body
        self.widths = {"left": _widths(self.tree.left), "right": _widths(self.tree.right)}
        middle = _root_width(self.tree.root)
        columns = [*self.widths["left"], *self.widths["right"]]
        before, after = _margins(self.tree)
        room = right - left - sum(columns) - middle - before - after
        self.edge = min(LONGEST, room / len(columns)) if columns else LONGEST
        x = left + sum(self.widths["left"]) + len(self.widths["left"]) * self.edge + before
        y = top + self.down + HEAD
        span = max(_span(self.tree.left), _span(self.tree.right), 1)
        root = _placed(self.tree.root, span, (x, y), middle, "right", bar=self.tree.root.symbol == "")
        self._put(root, self.tree.root)
        self._back(root)
        self._branches("left", self.tree.left, root, x, 0, y, top=True)
        self._branches("right", self.tree.right, root, x + middle, 0, y, top=True)

    def _branches(
        self, side: Side, branches: Sequence[Branch], parent: Placed, x: float, column: int, y: float, *, top: bool
    ) -> None:
        """What hangs on a thing on one side of it; `x` is the outer edge of the thing's column."""
        way = 1.0 if side == "right" else -1.0
        near = x + way * self.edge
        above: Placed | None = None
        for branch, first in _tops(branches, top):
            width = _width(branch)
            left = near if side == "right" else near - width
            at = y + branch.head(first) * PITCH
            block = _placed(
                branch.thing, branch.span(first), (left, at), width, side, bar=branch.bar, rated=not branch.elsewhere
            )
            self._put(block, branch.thing)
            for number, link in enumerate(branch.links):
                row = at + number * PITCH
                self._link(
                    link, _terminal(parent, row, side, away=True), _terminal(block, row, side, away=False), parent
                )
            if branch.elsewhere:
                self._forth(branch.thing.tag, block, side)
            if above is not None and branch.before is not None:
                self._neighbours(branch.before, above, block, side)
            beyond = near + way * self.widths[side][column]
            inside = at + branch.first * PITCH
            self._branches(side, branch.branches, block, beyond, column + 1, inside, top=first and not branch.first)
            above = block
            y += branch.rows(first) * PITCH

    def _put(self, block: Placed, thing: Thing) -> None:
        self.items.append(block)
        if not (self.tree.continued and thing is self.tree.root):
            self.anchors.append((f"{self.name}:{thing.tag}", block.at))

    def _back(self, root: Placed) -> None:
        """Where the thing in the middle stands too."""
        tag = self.tree.root.tag
        over = root.at[0], root.at[1] - HEAD + 0.8 * SMALL
        if self.tree.continued:
            self.anchors.append((f"{self.name}:{tag}:further", root.at))
            self.items.append(Reference(over, f"{self.name}:{tag}", "from "))
        elif tag in self.further:
            self.items.append(Reference(over, f"{self.name}:{tag}:further", "more on "))

    def _forth(self, tag: str, block: Placed, side: Side) -> None:
        """Where what hangs on a thing stands, beside the thing."""
        left, _, right, _ = block.box
        at = right + _APART if side == "right" else left - _APART, block.at[1] + 0.3 * SMALL
        anchor: Anchor = "start" if side == "right" else "end"
        self.items.append(Reference(at, f"{self.name}:{tag}:further", "on ", anchor=anchor))

    def _link(self, link: Link, start: Point, end: Point, parent: Placed) -> None:
        """A connection from a thing to what hangs on it, straight across."""
        way = 1.0 if end[0] > start[0] else -1.0
        y = start[1]
        near = [one for one in link.in_line if one.at == parent.key]
        far = [one for one in link.in_line if one.at != parent.key]
        step = SIZE + _LEAD
        middles = [(one, start[0] + way * (_LEAD + HALF + number * step)) for number, one in enumerate(near)]
        middles += [(one, end[0] - way * (_LEAD + HALF + number * step)) for number, one in enumerate(far)]
        stops = [start[0], end[0]]
        for one, x in middles:
            self._in_line(one, link, (x, y))
            stops += [x - HALF, x + HALF]
        stops.sort(reverse=way < 0.0)
        for a, b in zip(stops[::2], stops[1::2], strict=True):
            self._conductor(link, ((a, y), (b, y)))
        free = (
            start[0] + way * (len(near) * step + (_LEAD if near else 0.0)),
            end[0] - way * (len(far) * step + (_LEAD if far else 0.0)),
        )
        self._words(link, min(free) + 0.8, max(free) - 0.8, y)

    def _in_line(self, one: InLine, link: Link, at: Point) -> None:
        block = in_line(one.symbol)
        _, top, _, bottom = block.box
        room = SIZE + 1.5 * _LEAD
        attributes = (
            Attribute("TAG", clipped(one.tag, SMALL, room), (0.0, top - 0.7), SMALL, "middle"),
            Attribute("RATING", clipped(one.words, SMALL, room), (0.0, bottom + 2.6), SMALL, "middle"),
        )
        data = (("circuit", link.tag),)
        self.items.append(Placed(block, at, attributes, link.key, link.told, data, SYMBOLS))

    def _conductor(self, link: Link, points: tuple[Point, ...]) -> None:
        data = (("circuit", link.tag), ("from", link.start), ("to", link.end))
        colour = LAYERS[link.layer]
        self.items.append(Path(points, colour, LINE, key=link.key, told=link.told, data=data, layer=link.layer))

    def _words(self, link: Link, left: float, right: float, y: float) -> None:
        for words, baseline in ((link.above, y - 0.9), (link.below, y + 3.1)):
            room = right - left
            fitting = max(min(SMALL, SMALL * room / max(text_width(words, SMALL), 1.0)), _LEAST * SMALL)
            told = clipped(words, fitting, room)
            if told:
                self.items.append(Text((left, baseline), told, fitting, key=link.key, layer=LABELS))

    def _neighbours(self, link: Link, above: Placed, below: Placed, side: Side) -> None:
        """A connection between a thing and the one below it, round their outer side."""
        last = above.at[1] + (_block_rows(above.block) - 1) * PITCH
        start = _terminal(above, last, side, away=True)
        end = _terminal(below, below.at[1], side, away=True)
        way = 1.0 if side == "right" else -1.0
        turn = way * (max(way * start[0], way * end[0]) + _OUT)
        points = (start, (turn, start[1]), (turn, end[1]), end)
        self._conductor(link, points if link.start == above.key else points[::-1])
        middle = 0.5 * (start[1] + end[1])
        room = SHORTEST - _OUT - 1.2
        for words, baseline in ((link.above, middle - 0.9), (link.below, middle + 2.7)):
            told = clipped(words, SMALL, room)
            if told:
                at = turn + way * 1.2, baseline
                anchor: Anchor = "start" if side == "right" else "end"
                self.items.append(Text(at, told, SMALL, anchor=anchor, key=link.key, layer=LABELS))


def _width(branch: Branch) -> float:
    if branch.bar:
        return BAR
    if branch.elsewhere:
        return OUTER - _REFERRED
    return OUTER if not branch.branches else INNER


def _terminal(block: Placed, y: float, side: Side, *, away: bool) -> Point:
    """The terminal of a thing in the row at `y`, on the side away from its parent or towards it."""
    row = round((y - block.at[1]) / PITCH) + 1
    return block.terminal(f"{'B' if (side == 'right') == away else 'A'}{row}")


def _block_rows(block: Block) -> int:
    return len(block.terminals) // 2


def _placed(thing: Thing, rows: int, at: Point, width: float, side: Side, *, bar: bool, rated: bool = True) -> Placed:
    """A thing, its left terminal of the first row at a point."""
    data = (("tag", thing.tag),)
    if bar:
        return Placed(bar_block(rows), at, bar_attributes(thing), thing.tag, thing.told, data, SYMBOLS)
    block = thing_block(thing.symbol or "TERMINALS", rows, width, side)
    attributes = thing_attributes(thing, rows, width, side, rated=rated)
    return Placed(block, at, attributes, thing.tag, thing.told, data, SYMBOLS)


def _terminals(rows: int, width: float) -> tuple[tuple[str, Point], ...]:
    """A terminal on either side in every row: A1 and on at the left, B1 and on at the right."""
    return tuple(
        (f"{letter}{row + 1}", (x, row * PITCH)) for letter, x in (("A", 0.0), ("B", width)) for row in range(rows)
    )


def bar_block(rows: int) -> Block:
    """A bar with a terminal on either side in every row; its origin is the left one of the first row."""
    foot = (rows - 1) * PITCH + _BAR_OVER
    corners = ((0.0, -_BAR_OVER), (BAR, -_BAR_OVER), (BAR, foot), (0.0, foot))
    items = (Path(corners, fill=INK, layer=SYMBOLS),)
    return Block(f"BAR-{rows}", items, _terminals(rows, BAR), (0.0, -_BAR_OVER, BAR, foot))


def bar_attributes(thing: Thing) -> tuple[Attribute, ...]:
    """The words over a bar: its tag before it, its name and rating after it."""
    words = f"{thing.name} {thing.rating}".rstrip()
    return (
        Attribute(
            "TAG", clipped(thing.tag, TEXT, _BEFORE - 1.0, bold=True), (-0.6, _BAR_WORDS), TEXT, "end", bold=True
        ),
        Attribute("PART", clipped(words, SMALL, _BAR_NAME), (0.0, _BAR_WORDS), SMALL),
        Attribute("RATING", thing.rating, (0.0, _BAR_WORDS), SMALL, shown=False),
        Attribute("NAME", thing.name, (0.0, _BAR_WORDS), SMALL, shown=False),
    )


def thing_block(symbol: str, rows: int, width: float, side: Side) -> Block:
    """A thing, its symbol where its parent is; its origin is its left terminal of the first row."""
    half = 0.5 * _HEIGHT
    foot = (rows - 1) * PITCH + half
    outline = ((0.0, -half), (width, -half), (width, foot), (0.0, foot), (0.0, -half))
    middle = HALF + 0.6 if side == "right" else width - HALF - 0.6
    items = (Path(outline, INK, THIN, layer=SYMBOLS), *(moved(shape, (middle, 0.0)) for shape in glyph(symbol)))
    name = f"{symbol}-{width:g}X{rows}-{side.upper()}"
    return Block(name, items, _terminals(rows, width), (0.0, -half, width, foot))


def thing_attributes(thing: Thing, rows: int, width: float, side: Side, *, rated: bool = True) -> tuple[Attribute, ...]:
    """The words in a thing: tag and rating in its first line, below them its name, on as many lines as there are."""
    left = _TEXT_AT if side == "right" else 1.0
    right = width - 0.8 if side == "right" else width - _TEXT_AT
    tag = clipped(thing.tag, TEXT, 0.5 * (right - left), bold=True)
    room = right - left - text_width(tag, TEXT, bold=True) - 1.0
    fits = rated and text_width(thing.rating, SMALL) <= room
    lines = wrapped(thing.name, SMALL, right - left)
    most = 2 + int((rows - 1) * PITCH / _LINE_DOWN)
    if len(lines) > most:
        lines = [*lines[: most - 1], clipped(" ".join(lines[most - 1 :]), SMALL, right - left)]
    if rated and not fits and thing.rating:
        lines += wrapped(thing.rating, SMALL, right - left)[: most - len(lines)]
    made = [
        Attribute("TAG", tag, (left, _TAG_AT), TEXT, bold=True),
        Attribute("RATING", thing.rating, (right, _TAG_AT), SMALL, "end", shown=fits and thing.rating != ""),
        Attribute("NAME", thing.name, (left, _NAME_AT), SMALL, shown=False),
    ]
    for number, words in enumerate(lines):
        name = "PART" if number == 0 else f"PART{number + 1}"
        made.append(Attribute(name, words, (left, _NAME_AT + number * _LINE_DOWN), SMALL))
    return tuple(made)
