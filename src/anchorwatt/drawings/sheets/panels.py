"""Panels and enclosures from the front: buses with their fuses, panels, shore breaker, transfer switch, with labels.

Ways follow the order of the circuits from left to right and row by row, so that a circuit added at the end takes the
first spare way and moves nothing.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from anchorwatt.drawings.lettering import clipped, text_width, wrapped
from anchorwatt.drawings.sheet import INK, QUIET_INK, Attribute, Block, Item, Path, Placed, Point, Text
from anchorwatt.drawings.sheets.body import (
    AC,
    DC,
    LABELS,
    LAYERS,
    LINE,
    PARTS,
    SMALL,
    SYMBOLS,
    TEXT,
    THICK,
    THIN,
    Body,
    of_several,
)
from anchorwatt.drawings.sheets.devices import SPARE, SWITCH, WAY, Face, face
from anchorwatt.drawings.sheets.listing import Column, Row, table, wide
from anchorwatt.sizing.terminals import protection_tag
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.drawings.sheets.paper import Paper
    from anchorwatt.sizing.terminations import Busbar
    from anchorwatt.sizing.wiring import WiredCircuit

SCALE = 2.0
"""mm of the panel for 1 mm of paper: labels of a way of 36 mm can still be read."""

BUSES, PANEL_DC, PANEL_AC, SHORE = ("X1", "X2"), ("X3",), ("X4",), ("Q1", "Q2")
GROUPS = (BUSES, PANEL_DC, PANEL_AC, SHORE)
"""Enclosures that share a sheet."""

NOTES = (
    (
        "Breakers on rails are 18 mm a pole, DIN 43880, from memory. Other sizes are generic, from memory: the sheet "
        "of the maker of what is bought decides, and the wire bending room that it asks for."
    ),
    (
        f"Broken outlines are spare ways, {100.0 * SPARE:g} % of those in use, from memory. Triangles: over the ways, "
        "what feeds the enclosure; under a way, its cable."
    ),
)

FEW = ("X1", "Q1", "Q2")
"""Enclosures for a few devices, without spare ways."""

NAMES = {
    "X1": "BANK BUS",
    "X2": "DC BUS",
    "X3": "DC PANEL",
    "X4": "AC PANEL",
    "Q1": "SHORE MAIN BREAKER",
    "Q2": "TRANSFER SWITCH",
}
"""What is engraved on each. Ours."""

WARNINGS = {
    "dc": "Disconnect the bank before opening.",
    "ac": "Danger to life. Disconnect shore power and inverter before opening.",
}

# Lengths in mm of paper.
_ROW_WIDE = 218.0  # of the row of ways
_NARROW = 108.0  # of the row of an enclosure for a few devices
_MARGIN = 5.0  # inside an enclosure
_PLATE = 17.0  # of height of the label of the panel with what comes in
_LINES = 4  # of a way's label
_LABEL = _LINES * 1.2 * SMALL + 2.0
_BAR = 5.0  # from a row's top to its labels, with the bar that feeds it
_UNDER = 6.0  # under a device, with its outgoing mark
_APART = 5.0  # between two enclosures
_ARROW = 1.2

COLUMNS = (
    Column("tag", 10.0),
    Column("circuit", 52.0),
    Column("rating", 14.0, "end"),
    Column("device", 32.0),
    Column("cable", 29.0),
    Column("to", 12.0),
)


@dataclass(frozen=True)
class Way:
    """A place in an enclosure, and what sits there."""

    tag: str  # "" = spare
    label: str
    rating: str
    device: str
    cable: str
    to: str
    face: Face
    key: str = ""

    @property
    def width(self) -> float:
        """mm of paper."""
        return 1000.0 * max(self.face.width, WAY) / SCALE

    @property
    def height(self) -> float:
        """mm of paper."""
        return 1000.0 * self.face.height / SCALE


@dataclass(frozen=True)
class Enclosure:
    """A box with devices."""

    tag: str
    system: str  # "dc" or "ac"
    plate: str  # what is engraved on it
    bar: str  # what feeds its ways, in words, "" = no bar is drawn
    incoming: tuple[str, ...]
    ways: tuple[Way, ...]  # spare ones last

    @property
    def width(self) -> float:
        """mm of paper of a row."""
        return _NARROW if self.tag in FEW and sum(way.width for way in self.ways) <= _NARROW else _ROW_WIDE

    @property
    def layer(self) -> str:
        return DC if self.system == "dc" else AC


def panel_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """Each enclosure of the boat from the front, with its labels and its legend; none where nothing is protected.

    Parameters
    ----------
    system : units of the figures
    """
    bodies: list[Body] = []
    boxes = {one.tag: one for one in enclosures(assessment, system)}
    for tags in GROUPS:
        held = [boxes[tag] for tag in tags if tag in boxes]
        if held:
            bodies += _sheets(assessment, held, paper)
    return tuple(bodies)


def enclosures(assessment: Assessment, system: System) -> tuple[Enclosure, ...]:
    """What sits in each enclosure; those that nothing is connected to are left out."""
    wired = [one for one in assessment.wiring.wiring.circuits if one.circuit.system in ("dc", "ac")]
    bars = {bar.tag: bar for bar in assessment.wiring.busbars}
    found = []
    for tag in NAMES:
        reach = [one for one in wired if tag in (one.circuit.start, one.circuit.end)]
        if reach:
            found.append(_made(tag, reach, [one for one in wired if home(one) == tag], bars.get(tag), system))
    return tuple(found)


def _made(
    tag: str, reach: Sequence[WiredCircuit], inside: Sequence[WiredCircuit], bar: Busbar | None, system: System
) -> Enclosure:
    """An enclosure that circuits reach, with the devices of some of them inside."""
    ways = [way for one in inside for way in _way(one, tag, system)]
    if tag == "Q2":
        ways.insert(0, Way("Q2", "changeover, shore or inverter", "", "changeover switch", "", "", SWITCH, "Q2"))
    spare = Way("", "", "", "", "", "", ways[-1].face if ways else face("fuse", "", 2))
    count = 0 if tag in FEW else math.ceil(SPARE * len(ways) - 1e-9)
    incoming = [one for one in reach if one.circuit.end == tag and (one not in inside or tag == "Q1")]
    first = reach[0].circuit
    direct = first.system == "dc"
    current = "direct current" if direct else f"alternating current, {first.frequency:g} Hz"
    rated = "busbar"
    if bar is not None:
        rated = f"busbar {show(bar.rating, 'current', system)}, {show(bar.area, 'cross-section', system)}"
    return Enclosure(
        tag,
        first.system,
        f"{tag} {NAMES[tag]}, {_whole(show(first.voltage, 'voltage', system))} {current}",
        rated if direct else "",
        tuple(f"{one.tag} from {one.circuit.start}, {one.conductor.size}" for one in incoming),
        (*ways, *([spare] * count)),
    )


def _whole(words: str) -> str:
    """A reading as it is engraved: 15 A and not 15.0 A."""
    number, gap, unit = words.partition("\u00a0" if "\u00a0" in words else " ")
    return f"{number.removesuffix('.0')}{gap}{unit}"


def home(one: WiredCircuit) -> str:
    """The tag of what a circuit's fuse or breaker sits in; that of the shore inlet is the main breaker itself."""
    circuit, guard = one.circuit, one.protection
    if guard is None:
        return ""
    if circuit.end == "Q1":
        return "Q1"
    return circuit.end if guard.at == "end" else circuit.start


def _way(one: WiredCircuit, tag: str, system: System) -> Iterator[Way]:
    """The way of a circuit that is protected."""
    circuit, guard = one.circuit, one.protection
    if guard is None:
        return
    yield Way(
        tag=protection_tag(circuit.tag),
        label=circuit.function,
        rating=_whole(show(guard.rating, "current", system)),
        device=guard.family or guard.kind,
        cable=f"{circuit.tag} {one.conductor.size}",
        to=circuit.end if circuit.start == tag else circuit.start,
        face=face(guard.kind, guard.family, circuit.poles),
        key=f"circuit:{circuit.function}",
    )


@dataclass(frozen=True)
class _Line:
    """A row of ways."""

    ways: tuple[Way, ...]

    @property
    def height(self) -> float:
        return _BAR + _LABEL + max(way.height for way in self.ways) + _UNDER


def _lines(ways: Sequence[Way], width: float) -> list[_Line]:
    """Ways in rows no wider than a row."""
    rows: list[list[Way]] = []
    across = width
    for way in ways:
        if across + way.width > width + 1e-9:
            rows.append([])
            across = 0.0
        rows[-1].append(way)
        across += way.width
    return [_Line(tuple(row)) for row in rows]


def _sheets(assessment: Assessment, held: Sequence[Enclosure], paper: Paper) -> Iterator[Body]:
    """As many sheets as the rows of some enclosures take, each with the legend of what it shows."""
    left, top, right, bottom = paper.body
    pages: list[list[Item]] = []
    legends: list[list[Row]] = []
    y = math.inf
    for box in held:
        waiting = _lines(box.ways, box.width)
        part = 0
        while waiting or not part:
            first = waiting[0].height if waiting else 0.0
            if y + _PLATE + first + _MARGIN > bottom + 1e-9:
                pages.append([])
                legends.append([])
                y = top
            now: list[_Line] = []
            high = _PLATE + _MARGIN
            while waiting and (not now or y + high + waiting[0].height <= bottom + 1e-9):
                high += waiting[0].height
                now.append(waiting.pop(0))
            pages[-1] += _enclosure(box, now, (left, y), high, part)
            legends[-1] += [_legend(way) for line in now for way in line.ways if way.tag]
            y += high + _APART
            part += 1
    tags = " and ".join(box.tag for box in held)
    name = "-".join(["panels", *(box.tag.lower() for box in held)])
    for number, (items, rows) in enumerate(zip(pages, legends, strict=True), 1):
        legend = table(COLUMNS, rows, (right - wide(COLUMNS), top)) if rows else ()
        yield Body(
            *of_several(name, f"Panels: {tags}", number),
            f"Front view of {tags} with fuses, breakers and spare ways in the order of the circuits, and their legend.",
            (*items, *legend),
            notes=_notes(assessment),
            cautions=(WARNINGS[held[0].system],),
            scale=f"1:{SCALE:g}",
        )


def _notes(assessment: Assessment) -> tuple[str, ...]:
    elsewhere: dict[str, list[str]] = {}
    for one in assessment.wiring.wiring.circuits:
        place = home(one)
        if place and place not in NAMES:
            elsewhere.setdefault(place, []).append(protection_tag(one.tag))
    told = "; ".join(f"{', '.join(tags[:12])} at {place}" for place, tags in list(elsewhere.items())[:8])
    return (*NOTES, *((f"Not in these enclosures: {told}.",) if told else ()))


def _legend(way: Way) -> Row:
    return Row((way.tag, way.label, way.rating, way.device, way.cable, way.to), way.key)


def _rectangle(left: float, top: float, right: float, bottom: float) -> tuple[Point, ...]:
    return (left, top), (right, top), (right, bottom), (left, bottom), (left, top)


def _enclosure(box: Enclosure, lines: Sequence[_Line], at: Point, high: float, part: int) -> Iterator[Item]:
    """The front of an enclosure, or of the part of it that a sheet has room for."""
    left, top = at
    width = box.width + 2 * _MARGIN
    yield Path(_rectangle(left, top, left + width, top + high), INK, THICK, key=box.tag, told=box.plate, layer=PARTS)
    plate = box.plate if not part else f"{box.plate} (continued)"
    told = clipped(plate, TEXT, width - 2 * _MARGIN - 4.0, bold=True)
    long = text_width(told, TEXT, True) + 4.0
    x, y = left + _MARGIN, top + 2.5
    yield Path(_rectangle(x, y, x + long, y + 6.0), INK, LINE, key=box.tag, layer=LABELS)
    yield Text((x + 2.0, y + 4.1), told, TEXT, bold=True, key=box.tag, layer=LABELS)
    y = top + 13.0
    if not part:
        yield from _incoming(box, x, y, width - 2 * _MARGIN)
    y = top + _PLATE
    for line in lines:
        yield from _row(box, line, (x, y))
        y += line.height


def _incoming(box: Enclosure, left: float, y: float, width: float) -> Iterator[Item]:
    """What feeds the enclosure, each behind a triangle that points in."""
    x = left
    for number, words in enumerate(box.incoming):
        rest = left + width - x - 4.0
        later = len(box.incoming) - number - 1
        told = clipped(words, SMALL, rest if not later else rest - 12.0)
        if not told or rest < 20.0:
            yield Text((x, y), f"and {later + 1} more", SMALL, QUIET_INK, layer=LABELS)
            return
        yield _triangle((x + _ARROW, y - 0.9), box.layer, way=(1.0, 0.0))
        yield Text((x + 3.4, y), told, SMALL, layer=LABELS)
        x += 3.4 + text_width(told, SMALL) + 4.0


def _triangle(middle: Point, layer: str, way: Point) -> Path:
    x, y = middle
    a, b = way
    corners = (
        (x + _ARROW * a, y + _ARROW * b),
        (x - _ARROW * a - 0.8 * b, y - _ARROW * b - 0.8 * a),
        (x - _ARROW * a + 0.8 * b, y - _ARROW * b + 0.8 * a),
    )
    return Path(corners, fill=LAYERS[layer], layer=SYMBOLS)


def _row(box: Enclosure, line: _Line, at: Point) -> Iterator[Item]:
    """Labels, devices, outgoing marks; the bar, or the rail that carries them, over the labels."""
    left, top = at
    end = left + sum(way.width for way in line.ways)
    if box.bar:
        yield Path(
            _rectangle(left, top, end, top + 4.0), LAYERS[box.layer], LINE, key=box.tag, told=box.bar, layer=PARTS
        )
        told = clipped(box.bar, SMALL, end - left - 2.0)
        if told:
            yield Text((left + 1.0, top + 2.9), told, SMALL, key=box.tag, layer=LABELS)
    x = left
    for way in line.ways:
        yield from _device(box, way, (x, top + _BAR))
        x += way.width


def _device(box: Enclosure, way: Way, at: Point) -> Iterator[Item]:
    left, top = at
    middle = left + 0.5 * way.width
    head = top + _LABEL
    wide_, high = 1000.0 * way.face.width / SCALE, way.height
    if not way.tag:
        corners = _rectangle(middle - 0.5 * wide_, head, middle + 0.5 * wide_, head + high)
        yield Path(corners, QUIET_INK, THIN, (1.2, 1.0), told="spare way", layer=PARTS)
        yield Text(
            (middle, head + 0.5 * high),
            "spare" if wide_ > 8.5 else "sp.",
            SMALL,
            QUIET_INK,
            anchor="middle",
            layer=LABELS,
        )
        return
    lines = wrapped(way.label, SMALL, way.width - 1.4)
    if len(lines) > _LINES:
        lines = [*lines[: _LINES - 1], clipped(" ".join(lines[_LINES - 1 :]), SMALL, way.width - 1.4)]
    yield Path(
        _rectangle(left + 0.3, top, left + way.width - 0.3, head - 0.6), QUIET_INK, THIN, key=way.key, layer=LABELS
    )
    for number, words in enumerate(lines):
        yield Text((middle, top + (number + 1) * 1.2 * SMALL), words, SMALL, anchor="middle", key=way.key, layer=LABELS)
    block = _block(way.face)
    attributes = (
        Attribute("TAG", way.tag, (0.0, 4.2), SMALL, "middle", bold=True),
        Attribute("PART", way.label, (0.0, 8.0), SMALL, "middle", shown=False),
        Attribute("RATING", clipped(way.rating, SMALL, wide_ - 0.4), (0.0, 7.8), SMALL, "middle"),
    )
    data = (("width", f"{1000.0 * way.face.width:g}"), ("height", f"{1000.0 * way.face.height:g}"))
    yield Placed(block, (middle, head), attributes, way.key, f"{way.tag} {way.label}", data, PARTS)
    if way.to:
        y = head + high + 1.6
        yield _triangle((middle, y), box.layer, way=(0.0, 1.0))
    cable = way.cable.partition(" ")[0]
    if cable:
        yield Text((middle + 2.0, head + high + 3.0), cable, SMALL, QUIET_INK, key=way.key, layer=LABELS)


def _block(front: Face) -> Block:
    """A device from the front, its origin at the middle of its upper edge."""
    half, high = 500.0 * front.width / SCALE, 1000.0 * front.height / SCALE
    items: list[Path] = [Path(_rectangle(-half, 0.0, half, high), INK, LINE, layer=SYMBOLS)]
    if front.name.startswith("breaker"):
        poles = round(front.width / 0.018)
        for number in range(1, poles):
            x = -half + number * 2 * half / poles
            items.append(Path(((x, 0.28 * high), (x, high)), INK, THIN, layer=SYMBOLS))
        # The toggle through the window of the cover.
        items.append(
            Path(
                _rectangle(-0.6 * half, 0.45 * high, 0.6 * half, 0.58 * high), INK, THIN, fill="#ffffff", layer=SYMBOLS
            )
        )
    elif front is SWITCH:
        items.append(Path(_rectangle(-0.3 * half, 0.4 * high, 0.3 * half, 0.7 * high), INK, THIN, layer=SYMBOLS))
    else:
        inner = min(0.5 * half, 6.0)
        items.append(Path(_rectangle(-inner, 0.46 * high, inner, 0.9 * high), INK, THIN, layer=SYMBOLS))
    return Block(f"front-{front.name}", tuple(items), (), (-half, 0.0, half, high))
