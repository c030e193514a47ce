"""What a layout hands over: all that stands on one sheet but its frame and title block."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.drawings.sheet import INK, QUIET_INK, Anchor, Item, Point

# Sizes of letters, mm. Their capitals are 0.69 of that high: 1.8 mm, the least of ISO 3098 (from memory), to 3.6 mm.
SMALL, TEXT, LARGE = 2.6, 3.0, 5.2

THIN, LINE, THICK = 0.18, 0.35, 0.7
"""Widths of lines, mm: two of the steps of ISO 128 and the half of the first, from memory."""

# Layers of a CAD file: what stands on them can be hidden or coloured together.
DC, AC, CONTROL, BONDING = "DC", "AC", "CONTROL", "BONDING"
SYMBOLS, LABELS, FRAME, NOTES, REVISION = "SYMBOLS", "LABELS", "FRAME", "NOTES", "REVISION"
HULL, PARTS, ROUTES, WATER, REFRIGERANT, AIR = "HULL", "PARTS", "ROUTES", "WATER", "REFRIGERANT", "AIR"

LAYERS = {
    DC: "#b00000",
    AC: "#0b4f8a",
    CONTROL: "#4a4a4a",
    BONDING: "#1b6b3a",
    SYMBOLS: INK,
    LABELS: INK,
    FRAME: INK,
    NOTES: QUIET_INK,
    REVISION: "#a0007a",
    HULL: "#6b6b6b",
    PARTS: INK,
    ROUTES: "#8a5a00",
    WATER: "#0b4f8a",
    REFRIGERANT: "#8a3a00",
    AIR: "#00696b",
}
"""Layers with the colour of what stands on them; each has 4.5 : 1 on white or more."""


@dataclass(frozen=True)
class Reference:
    """Words that say where on the sheets something else stands; its sheet and zone are put in when all are known."""

    at: Point
    to: str  # name of an anchor of another sheet
    before: str = ""  # words before the place
    size: float = SMALL
    anchor: Anchor = "start"
    key: str = ""


def file_of(name: str, number: int) -> str:
    """Name of the file of the sheet of that number, from 1, of a subject that takes several."""
    return name if number == 1 else f"{name}-{number}"


def of_several(name: str, title: str, number: int) -> tuple[str, str]:
    """Name of the file and title of the sheet of that number, from 1, of a subject that takes several.

    Example
    -------
    >>> of_several("panels", "Panels", 1), of_several("panels", "Panels", 2)
    (('panels', 'Panels'), ('panels-2', 'Panels (2)'))
    """
    return file_of(name, number), title if number == 1 else f"{title} ({number})"


@dataclass(frozen=True)
class Body:
    """A sheet's content, in mm of its paper, within `Paper.body`.

    Every item that is one thing of the design has that thing's name as its `key`: the tag of a part, "circuit:" and the
    function of a circuit. A later revision is compared by these.
    """

    name: str  # of the file, e.g. "dc-one-line" or "dc-one-line-2"
    title: str
    about: str  # what it shows, for those who cannot see it
    items: tuple[Item | Reference, ...]
    anchors: tuple[tuple[str, Point], ...] = ()  # what other sheets may refer to, by name
    notes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    scale: str = "none"
