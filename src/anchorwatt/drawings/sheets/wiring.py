"""Wiring sheets: every conductor from terminal to terminal, hub by hub.

A circuit is drawn at one of its ends, its hub, and nowhere else: a bus or panel, or where more circuits meet. The
hub's box stands at the left of a column, what it is wired to at the right, and each conductor is one level line
between them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import TYPE_CHECKING

from anchorwatt.drawings.lettering import clipped, text_width
from anchorwatt.drawings.sheet import INK, QUIET_INK, Arc, Attribute, Block, Item, Path, Placed, Point, Text
from anchorwatt.drawings.sheets import symbols
from anchorwatt.drawings.sheets.body import (
    AC,
    BONDING,
    CONTROL,
    DC,
    LABELS,
    LAYERS,
    LINE,
    SMALL,
    SYMBOLS,
    TEXT,
    Body,
    Reference,
    file_of,
)
from anchorwatt.drawings.sheets.paper import Paper
from anchorwatt.sizing.terminals import Core, begins_at_hub, cores, meeting, protection_tag
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.protection import Protection
    from anchorwatt.sizing.wiring import WiredCircuit

HUB, SPAN, DEVICE, GUTTER = 40.0, 92.0, 52.0, 14.0
"""mm of width of a hub's box, of the conductors, of a device's box, and between two columns."""

COLUMN = HUB + SPAN + DEVICE

ROW, APART, BETWEEN = 5.0, 2.5, 10.0
"""mm of height of a conductor with its words, between two circuits, and between two hubs."""

LAYER = {"dc": DC, "ac": AC, "control": CONTROL, "bonding": BONDING}

NOTES = (
    "Each circuit stands once: at its bus or panel, else where more circuits meet.",
    "F5 is the fuse or breaker of circuit W5.",
    "Over a box: sheet and zone where that part stands too.",
    "Names of terminals on devices are ours: match them with the maker's own before a conductor is landed.",
    "Whether a breaker opens the neutral too is for the local code.",
)

_PAD = 1.5
_BASE = 3.4  # mm from the top of a circuit to the baseline of its words
_LEVEL = 1.8  # mm from a conductor to the foot of its row
_WORDS, _COLOUR = 22.0, 41.0  # mm from the hub to the words on a conductor, and to its colour
_GUARD = 9.0  # mm from a box to the middle of a fuse or breaker
_SLOT = text_width("88/M88", SMALL) + 1.0  # of one place, sheet and zone
_HUB_PLACES, _DEVICE_PLACES = 3, 4  # shown over a box
_DOT = 0.7


@dataclass(frozen=True)
class _Branch:
    """A circuit as its hub sees it."""

    wired: WiredCircuit
    cores: tuple[Core, ...]
    begins: bool  # at the hub

    @property
    def hub(self) -> str:
        return self.wired.circuit.start if self.begins else self.wired.circuit.end

    @property
    def device(self) -> str:
        return self.wired.circuit.end if self.begins else self.wired.circuit.start

    @property
    def height(self) -> float:
        return ROW * (1 + len(self.cores))

    @property
    def key(self) -> str:
        return f"circuit:{self.wired.circuit.function}"

    def terminal(self, core: Core, at_hub: bool) -> str:
        return core.start.name if at_hub is self.begins else core.end.name


@dataclass(frozen=True)
class _Piece:
    """What of a hub stands in one column."""

    branches: tuple[_Branch, ...]
    column: int  # of all columns of all sheets
    down: float  # mm from the top of the column
    part: int  # of its hub's pieces
    goes_on: bool  # in the next column

    @property
    def hub(self) -> str:
        return self.branches[0].hub

    @property
    def height(self) -> float:
        return _height(self.branches) + (ROW if self.goes_on else 0.0)


@dataclass(frozen=True)
class _Place:
    """One box of a part."""

    name: str  # of its anchor
    sheet: int
    at: Point
    zone: str
    hub: bool


def wiring_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """All circuits of the wire schedule, conductor by conductor, on as many sheets as they need."""
    made = assessment.wiring
    if not made.wiring.circuits:
        left, top, _, _ = paper.body
        words = Text((left, top + TEXT), "This design has no circuits.", TEXT, layer=LABELS)
        return (Body("wiring", "Terminal wiring", "No circuits.", (words,)),)
    pieces = _packed(_hubs(made.wiring.circuits), paper)
    names = dict(made.ends)
    layout = _Layout(paper, system, names, pieces)
    return tuple(layout.body(sheet, made.cautions[:2]) for sheet in range(layout.sheets))


def _hubs(circuits: Sequence[WiredCircuit]) -> list[tuple[_Branch, ...]]:
    """Circuits by their hub, hubs in the order in which the schedule meets them."""
    met = meeting(circuits)
    laid: dict[str, list[Core]] = {}
    for core in cores(circuits):
        laid.setdefault(core.circuit, []).append(core)
    hubs: dict[str, list[_Branch]] = {}
    for wired in circuits:
        circuit = wired.circuit
        branch = _Branch(wired, tuple(laid[wired.tag]), begins_at_hub(circuit, met))
        hubs.setdefault(branch.hub, []).append(branch)
    return [tuple(branches) for branches in hubs.values()]


def _height(branches: Sequence[_Branch]) -> float:
    return sum(one.height for one in branches) + APART * (len(branches) - 1)


def _packed(hubs: Sequence[tuple[_Branch, ...]], paper: Paper) -> list[_Piece]:
    """Hubs down the columns; one is cut only where a whole column does not hold it."""
    _, top, _, bottom = paper.body
    room = bottom - top
    pieces: list[_Piece] = []
    column, down = 0, 0.0
    for branches in hubs:
        if down > 0.0 and down + _height(branches) > room:
            column, down = column + 1, 0.0
        rest, part = list(branches), 0
        while _height(rest) > room - down:
            count = next(
                count for count in range(len(rest), 0, -1) if count == 1 or _height(rest[:count]) + ROW <= room
            )
            pieces.append(_Piece(tuple(rest[:count]), column, down, part, goes_on=True))
            rest, part, column, down = rest[count:], part + 1, column + 1, 0.0
        pieces.append(_Piece(tuple(rest), column, down, part, goes_on=False))
        down += pieces[-1].height + BETWEEN
    return pieces


class _Layout:
    """Where everything stands, so that boxes can refer to one another."""

    def __init__(self, paper: Paper, system: System, names: Mapping[str, str], pieces: Sequence[_Piece]) -> None:
        self.paper, self.system, self.names, self.pieces = paper, system, names, pieces
        left, _, right, _ = paper.body
        self.columns = 1 + int((right - left - COLUMN) / (COLUMN + GUTTER))
        self.sheets = 1 + pieces[-1].column // self.columns
        self.places: dict[str, list[_Place]] = {}
        for piece in pieces:
            self._note(piece.hub, piece, self._origin(piece), hub=True)
            for group, at in self._devices(piece):
                self._note(group[0].device, piece, at, hub=False)

    def body(self, sheet: int, cautions: tuple[str, ...]) -> Body:
        """One sheet."""
        pieces = [piece for piece in self.pieces if piece.column // self.columns == sheet]
        hubs = list(dict.fromkeys(piece.hub for piece in pieces))
        told = ", ".join(f"{tag} {self.names[tag]}" for tag in hubs)
        return Body(
            name=file_of("wiring", sheet + 1),
            title=f"Terminal wiring: {', '.join(hubs)}",
            about=f"Every conductor between terminals at {told}.",
            items=tuple(item for piece in pieces for item in self._piece(piece)),
            anchors=tuple(
                (place.name, place.at) for every in self.places.values() for place in every if place.sheet == sheet
            ),
            notes=NOTES,
            cautions=cautions,
        )

    def _origin(self, piece: _Piece) -> Point:
        left, top, _, _ = self.paper.body
        return left + (COLUMN + GUTTER) * (piece.column % self.columns), top + piece.down

    def _tops(self, piece: _Piece) -> list[float]:
        """mm from the top of a piece to each of its circuits."""
        found, down = [], 0.0
        for branch in piece.branches:
            found.append(down)
            down += branch.height + APART
        return found

    def _devices(self, piece: _Piece) -> Iterator[tuple[list[_Branch], Point]]:
        """Circuits of one device that follow one another, and where its box begins."""
        x, y = self._origin(piece)
        tops = iter(self._tops(piece))
        for _, group in groupby(piece.branches, key=lambda branch: branch.device):
            found = list(group)
            downs = [next(tops) for _ in found]
            yield found, (x + HUB + SPAN, y + downs[0])

    def _note(self, tag: str, piece: _Piece, at: Point, hub: bool) -> None:
        every = self.places.setdefault(tag, [])
        inside = at[0] + _PAD, at[1] + _PAD
        sheet = piece.column // self.columns
        every.append(_Place(f"wiring:{tag}:{len(every)}", sheet, inside, self.paper.zone(inside), hub))

    def _elsewhere(self, tag: str, at: Point, piece: _Piece) -> list[_Place]:
        """Other places of a part, hubs first, then those that follow; each sheet and zone once."""
        every = self.places[tag]
        inside, sheet = (at[0] + _PAD, at[1] + _PAD), piece.column // self.columns
        own = next(n for n, place in enumerate(every) if place.sheet == sheet and place.at == inside)
        seen = {(every[own].sheet, every[own].zone)}
        found = []
        for place in sorted((*every[own + 1 :], *every[:own]), key=lambda one: not one.hub):
            if (place.sheet, place.zone) not in seen:
                seen.add((place.sheet, place.zone))
                found.append(place)
        return found

    def _piece(self, piece: _Piece) -> Iterator[Item | Reference]:
        x, y = self._origin(piece)
        tops = self._tops(piece)
        landed = [
            (branch.terminal(core, at_hub=True), down + _level(row))
            for branch, down in zip(piece.branches, tops, strict=True)
            for row, core in enumerate(branch.cores)
        ]
        first = piece.branches[0].wired.tag
        hub = _box(f"HUB-{first}", HUB, _height(piece.branches), landed, right=True)
        yield self._placed(hub, piece.hub, (x, y), landed, right=True)
        yield from self._hub_places(piece, (x, y))
        for group, (left, top) in self._devices(piece):
            yield from self._device(group, (left, top), piece)
        for branch, down in zip(piece.branches, tops, strict=True):
            yield from self._circuit(branch, (x + HUB, y + down))

    def _hub_places(self, piece: _Piece, at: Point) -> Iterator[Reference]:
        x, y = at
        places = self._elsewhere(piece.hub, at, piece)
        pieces = [place for place in self.places[piece.hub] if place.hub]
        if piece.part:
            before = pieces[piece.part - 1]
            places = [before, *(place for place in places if place.name != before.name)]
        yield from _places(places[:_HUB_PLACES], at, piece.hub, "from " if piece.part else "see ")
        if piece.goes_on:
            foot = (x + _PAD, y + piece.height - ROW + _BASE)
            yield Reference(foot, pieces[piece.part + 1].name, "goes on at ", key=piece.hub)

    def _device(self, group: Sequence[_Branch], at: Point, piece: _Piece) -> Iterator[Item | Reference]:
        downs, down = [], 0.0
        for branch in group:
            downs.append(down)
            down += branch.height + APART
        landed = [
            (branch.terminal(core, at_hub=False), top + _level(row))
            for branch, top in zip(group, downs, strict=True)
            for row, core in enumerate(branch.cores)
        ]
        tag = group[0].device
        box = _box(f"DEVICE-{group[0].wired.tag}", DEVICE, _height(group), landed, right=False)
        yield self._placed(box, tag, at, landed, right=False)
        yield from _places(self._elsewhere(tag, at, piece)[:_DEVICE_PLACES], at, tag)

    def _placed(self, box: Block, tag: str, at: Point, landed: Sequence[tuple[str, float]], right: bool) -> Placed:
        """A box with its tag and, clipped to the room beside its terminals' names, its name."""
        name, width = self.names[tag], HUB if right else DEVICE
        beside = 2 * _DOT + 1.0 + max(text_width(words, SMALL) for words, _ in landed) + _PAD
        room, left = width - beside - _PAD, _PAD if right else beside
        told = clipped(tag, TEXT, 0.5 * room, bold=True)
        after = text_width(told, TEXT, bold=True) + _PAD
        base = landed[0][1] + 0.36 * SMALL
        return Placed(
            box,
            at,
            (
                Attribute("TAG", told, (left, base), TEXT, bold=True),
                Attribute("PART", clipped(name, SMALL, room - after), (left + after, base), SMALL),
                Attribute("NAME", name, (left, base), SMALL, shown=False),
                Attribute("RATING", "", (left, base), SMALL, shown=False),
            ),
            key=tag,
            told=f"{tag}, {name}",
            layer=SYMBOLS,
        )

    def _circuit(self, branch: _Branch, at: Point) -> Iterator[Item]:
        """Conductors of a circuit with their words; `at` is where its first row leaves the hub's box."""
        x, y = at
        wired, circuit = branch.wired, branch.wired.circuit
        guard = wired.protection
        at_hub = guard is not None and (guard.at == "start") is branch.begins
        length = show(circuit.length, "length", self.system)
        told = f"{circuit.tag} · {wired.conductor.size} · {length} · {circuit.function}"
        room = SPAN - _WORDS - _PAD
        placed: Placed | None = None
        if guard is not None:
            placed = self._guard(branch, guard, (x + _GUARD if at_hub else x + SPAN - _GUARD, y), at_hub)
            if not at_hub:
                room -= sum(text_width(one.words, SMALL) + _PAD for one in placed.attributes if one.shown)
            yield placed
        yield Text((x + _WORDS, y + _BASE), clipped(told, SMALL, room), SMALL, key=branch.key, layer=LABELS)
        ways = iter(range(len(branch.cores)))
        for row, core in enumerate(branch.cores):
            level = y + _level(row)
            ends = [(x, level), (x + SPAN, level)]
            if placed is not None and core.live:
                way = next(ways)
                ends[1:1] = [placed.terminal(f"{2 * way + 1}"), placed.terminal(f"{2 * way + 2}")]
            for one, other in zip(ends[::2], ends[1::2], strict=True):
                yield self._conductor(branch, core, one, other)
            above = level - 0.9
            yield Text((x + _WORDS, above), core.marker, SMALL, key=branch.key, layer=LABELS)
            yield Text((x + _COLOUR, above), core.colour, SMALL, QUIET_INK, key=branch.key, layer=LABELS)

    def _conductor(self, branch: _Branch, core: Core, left: Point, right: Point) -> Path:
        circuit, layer = branch.wired.circuit, LAYER[branch.wired.circuit.system]
        size = branch.wired.conductor.conductor.name
        return Path(
            (left, right) if branch.begins else (right, left),
            LAYERS[layer],
            LINE,
            key=branch.key,
            told=f"{core.marker}, {size}, {core.colour}: {core.start.whole} to {core.end.whole}; {circuit.function}",
            data=(
                ("circuit", circuit.tag),
                ("marker", core.marker),
                ("core", core.name),
                ("from", circuit.start),
                ("from-terminal", core.start.name),
                ("to", circuit.end),
                ("to-terminal", core.end.name),
            ),
            layer=layer,
        )

    def _guard(self, branch: _Branch, guard: Protection, at: Point, at_hub: bool) -> Placed:
        """The fuse or breaker in a circuit's live conductors, its tag and rating over it."""
        x, y = at
        live = [core for core in branch.cores if core.live]
        parallel = live[0].parallel
        tag = protection_tag(branch.wired.tag)
        rating = guard.rated
        first = _level(0)
        wide = text_width(tag, SMALL) + _PAD + text_width(rating, SMALL)
        start = _PAD - _GUARD if at_hub else _GUARD - _PAD - wide
        base = _BASE - first
        return Placed(
            _in_line(guard.kind.upper(), len(live) // parallel, parallel),
            (x, y + first),
            (
                Attribute("TAG", tag, (start, base), SMALL),
                Attribute("RATING", rating, (start + text_width(tag, SMALL) + _PAD, base), SMALL),
                Attribute("PART", f"{guard.kind} {guard.family}", (start, base), SMALL, shown=False),
            ),
            key=branch.key,
            told=f"{tag}, {guard.kind}, {guard.family}, {rating}: {branch.wired.circuit.function}",
            data=(("circuit", branch.wired.tag),),
            layer=SYMBOLS,
        )


def _level(row: int) -> float:
    """mm from the top of a circuit to its conductor of that row."""
    return ROW * (row + 2) - _LEVEL


def _places(places: Sequence[_Place], at: Point, key: str, before: str = "see ") -> Iterator[Reference]:
    """Places over a box whose top row begins at a point, in slots from its left."""
    x, y = at[0] + _PAD, at[1] + _BASE
    for number, place in enumerate(places):
        yield Reference((x, y), place.name, "" if number else before, key=key)
        x += _SLOT + (0.0 if number else text_width(before, SMALL))


def _box(name: str, width: float, height: float, landed: Sequence[tuple[str, float]], right: bool) -> Block:
    """A box with terminals down one side, under a row that is free for where it stands too."""
    corners = ((0.0, ROW), (width, ROW), (width, height), (0.0, height), (0.0, ROW))
    edge, inward = (width, -1.0) if right else (0.0, 1.0)
    items: list[Path | Arc | Text] = [Path(corners, INK, LINE, layer=SYMBOLS)]
    for words, y in landed:
        at = (edge + inward * (2 * _DOT + 1.0), y + 0.36 * SMALL)
        items += [
            Arc((edge + inward * _DOT, y), _DOT, colour=INK, width=LINE, layer=SYMBOLS),
            Text(at, words, SMALL, anchor="end" if right else "start", layer=LABELS),
        ]
    return Block(name, tuple(items), tuple((words, (edge, y)) for words, y in landed), (0.0, ROW, width, height))


def _in_line(kind: str, poles: int, parallel: int) -> Block:
    """A fuse or breaker in its conductors, which come in rows: those of a pole side by side, pole under pole.

    Its terminals are "1" and "2" in the first row, "3" and "4" in the next, and so on. What lies side by side is bolted
    to one device; the poles of a breaker open together.
    """
    single = symbols.in_line(kind)
    if poles == 1 and parallel == 1:
        return single
    half, pole = symbols.HALF, ROW * parallel
    items: list[Path | Arc | Text] = []
    for number in range(poles):
        top = number * pole
        items += [symbols.moved(shape, (0.0, top)) for shape in single.items]
        if parallel > 1:
            foot = top + pole - ROW
            items += [Path(((x, top), (x, foot)), INK, LINE, layer=SYMBOLS) for x in (-half, half)]
    if poles > 1:
        linked = ((0.0, -1.0), (0.0, (poles - 1) * pole - 1.0))
        items.append(Path(linked, INK, LINE, dashes=(1.0, 0.6), layer=SYMBOLS))
    rows = range(poles * parallel)
    terminals = tuple((f"{2 * row + 1 + side}", (x, ROW * row)) for row in rows for side, x in enumerate((-half, half)))
    left, top, right, bottom = single.box
    return Block(f"{kind}-{poles}-{parallel}", tuple(items), terminals, (left, top, right, ROW * rows[-1] + bottom))
