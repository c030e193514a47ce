"""Labels of a boat's wiring: what each says, for a label printer, and sheets of them at true size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from anchorwatt.drawings.lettering import clipped, wrapped
from anchorwatt.drawings.sheet import INK, QUIET_INK, Attribute, Block, Item, Path, Placed, Point, Sheet, Text
from anchorwatt.drawings.sheets.body import LABELS, LINE, SYMBOLS, TEXT, THICK, Body, of_several
from anchorwatt.drawings.sheets.caution_labels import WHO, cautions
from anchorwatt.drawings.sheets.paper import Paper
from anchorwatt.sizing.terminals import Terminal, cores, protection_tag
from anchorwatt.units import System

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.wiring import WiredCircuit

Kind = Literal["wire marker", "terminal", "legend", "caution"]

SIZES: dict[Kind, tuple[float, float]] = {
    "caution": (90.0, 35.0),
    "legend": (40.0, 15.0),
    "wire marker": (25.0, 12.0),
    "terminal": (18.0, 8.0),
}
"""mm of width and height: our own choice. Wire markers wrap round their conductor."""

HEADINGS: dict[Kind, str] = {
    "caution": "Caution labels",
    "legend": "Legends of fuses and breakers",
    "wire marker": "Wire markers, to wrap round",
    "terminal": "Terminal labels",
}

NAME = "labels"
"""Of the first sheet's file; those of further ones begin with it."""

MARKERS = 2
"""Wire markers at each end of a conductor: one at the terminal, one where the cable leaves the enclosure."""

NOTES = (
    "Print at 100 %, then measure one label: a printer that fits to the page makes them smaller.",
    "A marker that is cut short here is whole in the file of labels.",
)

# Sizes of a label's large words and of its small ones, which are read from near.
_LETTERS: dict[Kind, tuple[float, float]] = {
    "caution": (4.8, 4.0),
    "legend": (4.2, 2.5),
    "wire marker": (3.4, 2.2),
    "terminal": (3.0, 2.2),
}
_PLACED = ("caution", "legend")  # labels that say themselves where they go
_PLACE, _FOOT = 2.2, 2.8  # size of those words, and mm of height that they take
_PAD = 1.2
_APART = 2.0  # mm between two labels
_HEAD = 6.0  # mm of a heading
_LEADING = 1.25


@dataclass(frozen=True)
class Label:
    """One label, and how many of it."""

    kind: Kind
    key: str  # "circuit:" and the function, or the tag of the part that it sticks on
    place: str  # where it goes
    tag: str  # its large words
    lines: tuple[str, ...]  # its small ones
    facts: tuple[tuple[str, str], ...]  # what it is made of, by name
    count: int = 1


def labels(assessment: Assessment, system: System) -> tuple[Label, ...]:
    """All labels: cautions, legends, wire markers, terminals."""
    return (
        *_cautions(assessment, system),
        *_legends(assessment),
        *_markers(assessment),
        *_terminals(assessment),
    )


def label_rows(assessment: Assessment, system: System) -> list[dict[str, str]]:
    """A mapping a label, the same keys in each, for a label printer's table."""
    names = ("marker", "from", "to", "size", "colour", "function", "rating", "family")
    rows = []
    for one in labels(assessment, system):
        facts = dict(one.facts)
        rows.append(
            {
                "kind": one.kind,
                "count": f"{one.count}",
                "place": one.place,
                "title": one.tag,
                "text": "; ".join(one.lines),
                **{name: facts.get(name, "") for name in names},
                "width_mm": f"{SIZES[one.kind][0]:g}",
                "height_mm": f"{SIZES[one.kind][1]:g}",
            }
        )
    return rows


def is_of_labels(sheet: Sheet) -> bool:
    """Whether a sheet of a set is one of labels."""
    return sheet.name == NAME or sheet.name.startswith(f"{NAME}-")


def label_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """The labels at true size, kind by kind, each as often as it is needed."""
    left, top, _, _ = paper.body
    sheets: dict[int, list[Item]] = {0: []}
    for sheet, item in _laid(labels(assessment, system), paper):
        sheets.setdefault(sheet, []).append(item)
    if not sheets[0]:
        sheets[0].append(Text((left, top + TEXT), "This design needs no labels.", TEXT, layer=LABELS))
    return tuple(
        Body(
            name=name,
            title=title,
            about="Labels at true size: cautions, legends of fuses and breakers, wire markers, terminals.",
            items=tuple(items),
            notes=NOTES,
            scale="1:1",
        )
        for sheet, items in sheets.items()
        for name, title in (of_several(NAME, "Labels", sheet + 1),)
    )


def _laid(every: Sequence[Label], paper: Paper) -> Iterator[tuple[int, Item]]:
    """Labels in rows from the left, one kind under another, with the number of the sheet that each stands on."""
    left, top, right, bottom = paper.body
    sheet, y = 0, top
    for kind, (wide, high) in SIZES.items():
        wanted = [one for one in every if one.kind == kind for _ in range(one.count)]
        across = int((right - left + _APART) / (wide + _APART))
        rows = [wanted[first : first + across] for first in range(0, len(wanted), across)]
        headed = False
        for row in rows:
            if y + (0.0 if headed else _HEAD) + high > bottom:
                sheet, y, headed = sheet + 1, top, False
            if not headed:
                words = f"{HEADINGS[kind]}, {wide:g} × {high:g} mm"
                yield sheet, Text((left, y + _HEAD - 2.0), words, TEXT, bold=True, layer=LABELS)
                y, headed = y + _HEAD, True
            for number, one in enumerate(row):
                yield sheet, _placed(one, (left + number * (wide + _APART), y))
            y += high + _APART
        y += _APART if rows else 0.0


def _placed(label: Label, at: Point) -> Placed:
    """A label: its tag large, its lines small under it, each cut to the label's width."""
    wide, high = SIZES[label.kind]
    room = wide - 2 * _PAD
    size, small = _LETTERS[label.kind]
    folded = label.kind == "caution"
    lines = [part for words in label.lines for part in (wrapped(words, small, room) if folded else [words])]
    base = _PAD + 0.75 * size
    foot = _FOOT if label.kind in _PLACED else 0.0
    shown = [Attribute("TAG", clipped(label.tag, size, room, bold=True), (_PAD, base), size, bold=True)]
    for number, words in enumerate(lines, 1):
        line = base + number * _LEADING * small + 0.2
        if line + 0.25 * small > high - foot:
            break
        shown.append(Attribute(f"LINE{number}", clipped(words, small, room), (_PAD, line), small))
    if foot:
        words = clipped(f"on {label.place}", _PLACE, room)
        shown.append(Attribute("AT", words, (wide - _PAD, high - _PAD), _PLACE, anchor="end", colour=QUIET_INK))
    hidden = [
        Attribute(name.upper(), words, (_PAD, base), small, shown=False)
        for name, words in (*label.facts, ("place", label.place), ("whole", "; ".join((label.tag, *label.lines))))
    ]
    return Placed(
        _block(label.kind),
        at,
        (*shown, *hidden),
        key=label.key,
        told="; ".join((label.tag, *label.lines)),
        layer=SYMBOLS,
    )


def _block(kind: Kind) -> Block:
    wide, high = SIZES[kind]
    corners = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high), (0.0, 0.0))
    outline = Path(corners, INK, THICK if kind == "caution" else LINE, layer=SYMBOLS)
    return Block(f"LABEL-{kind.upper().replace(' ', '-')}", (outline,), (), (0.0, 0.0, wide, high))


def _key(wired: WiredCircuit) -> str:
    return f"circuit:{wired.circuit.function}"


def _markers(assessment: Assessment) -> Iterator[Label]:
    """At both ends of every conductor; each says first where it is itself."""
    circuits = {one.tag: one for one in assessment.wiring.wiring.circuits}
    for core in cores(circuits.values()):
        wired = circuits[core.circuit]
        size = wired.conductor.conductor.name
        for here, there in ((core.start, core.end), (core.end, core.start)):
            yield Label(
                kind="wire marker",
                key=_key(wired),
                place=here.whole,
                tag=core.marker,
                lines=(f"{here.whole} to {there.whole}", f"{size}, {core.colour}"),
                facts=(
                    ("marker", core.marker),
                    ("from", here.whole),
                    ("to", there.whole),
                    ("size", size),
                    ("colour", core.colour),
                    ("function", wired.circuit.function),
                ),
                count=MARKERS,
            )


def _terminals(assessment: Assessment) -> Iterator[Label]:
    """One a terminal, end by end in the order in which the schedule meets them."""
    landed: dict[str, list[tuple[Terminal, str]]] = {}
    for core in cores(assessment.wiring.wiring.circuits):
        for terminal in (core.start, core.end):
            landed.setdefault(terminal.end, []).append((terminal, core.marker))
    for end, terminals in landed.items():
        for terminal, marker in terminals:
            yield Label(
                kind="terminal",
                key=end,
                place=end,
                tag=terminal.whole,
                lines=(marker,),
                facts=(("marker", marker), ("from", terminal.whole)),
            )


def _legends(assessment: Assessment) -> Iterator[Label]:
    for wired in assessment.wiring.wiring.circuits:
        guard = wired.protection
        if guard is None:
            continue
        rating = guard.rated
        family = guard.family or "no family fits"
        told = family if guard.kind in family else f"{guard.kind}, {family}"
        yield Label(
            kind="legend",
            key=_key(wired),
            place=wired.circuit.start if guard.at == "start" else wired.circuit.end,
            tag=f"{protection_tag(wired.tag)}  {rating}",
            lines=(wired.circuit.function, told),
            facts=(
                ("marker", protection_tag(wired.tag)),
                ("function", wired.circuit.function),
                ("rating", rating),
                ("family", family),
            ),
        )


def _cautions(assessment: Assessment, system: System) -> Iterator[Label]:
    names = dict(assessment.wiring.ends)
    for one in cautions([wired.circuit for wired in assessment.wiring.wiring.circuits], names, system):
        yield Label(
            kind="caution",
            key=one.tag,
            place=f"{one.tag} {names[one.tag]}",
            tag=one.title,
            lines=(one.words, WHO),
            facts=(("name", names[one.tag]),),
        )
