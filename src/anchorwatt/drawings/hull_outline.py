"""The boat's outline, in metres, sketched from its length, beam, hulls and waterplane.

A design file knows no lines of the hull. What is drawn here is a sketch of the right size and fullness, by which one
finds one's way about the boat; nothing is computed from it. Forward is counted from the aft end of the waterline, as
in the file, starboard from the centreline, and up from the waterline.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from anchorwatt.design.specification import Specification

Metres = tuple[float, float]

FREEBOARD = 0.1  # of the length
_WIDEST = 0.42  # of the length from the stern
_TRANSOM = 0.75  # of the beam
_FULLER = 0.03  # what a deck is fuller than the waterplane below it
_BLUNTNESS = (1.8, 4.0)
_STATIONS = 32
_BRIDGE = (0.08, 0.72)  # of the length, from where to where a deck lies between several hulls


def ends(boat: Specification) -> Metres:
    """m forward at which the hull begins and ends."""
    overhang = max(boat.length - boat.waterline, 0.0)
    return -0.3 * overhang, boat.length - 0.3 * overhang


def middles(boat: Specification) -> tuple[float, ...]:
    """m to starboard of the middle of each hull."""
    apart = 0.5 * (boat.beam - boat.hull_beam)
    return {1: (0.0,), 2: (-apart, apart)}.get(boat.hulls, (-apart, 0.0, apart))


def half_breadth(boat: Specification, forward: float) -> float:
    """m from the middle of a hull to the edge of its deck, 0 beyond its ends."""
    stern, bow = ends(boat)
    along = (forward - stern) / (bow - stern)
    if along < 0.0 or along > 1.0:
        return 0.0
    if along <= _WIDEST:
        share = 1.0 - (1.0 - _TRANSOM) * ((_WIDEST - along) / _WIDEST) ** 2
    else:
        share = 1.0 - ((along - _WIDEST) / (1.0 - _WIDEST)) ** _bluntness(boat)
    return 0.5 * boat.hull_beam * share


def _bluntness(boat: Specification) -> float:
    """Exponent of the bow that makes the deck as full as the waterplane, and a little more."""
    fullness = boat.waterplane / (boat.hulls * boat.waterline * boat.hull_beam) + _FULLER
    # The stern's parabola fills its part but for a third of what the transom is narrower.
    bow = (fullness - _WIDEST * (1.0 - (1.0 - _TRANSOM) / 3.0)) / (1.0 - _WIDEST)
    least, most = _BLUNTNESS
    return most if bow >= most / (1.0 + most) else max(bow / (1.0 - bow), least)


def decks(boat: Specification) -> list[list[Metres]]:
    """Outlines seen from above, forward and to starboard: each hull, and the deck between them where there are more."""
    stern, bow = ends(boat)
    stations = [stern + (bow - stern) * number / _STATIONS for number in range(_STATIONS + 1)]
    outlines = []
    for middle in middles(boat):
        starboard = [(x, middle + half_breadth(boat, x)) for x in stations]
        port = [(x, middle - half_breadth(boat, x)) for x in reversed(stations)]
        outlines.append([*starboard, *port])
    if boat.hulls > 1:
        aft, fore = (stern + share * (bow - stern) for share in _BRIDGE)
        half = 0.5 * boat.beam - 0.5 * boat.hull_beam
        outlines.insert(0, [(aft, -half), (fore, -half), (fore, half), (aft, half)])
    return outlines


def profile(boat: Specification) -> list[Metres]:
    """The outline seen from starboard, forward and up."""
    long, free, under = boat.waterline, FREEBOARD * boat.length, -boat.draught
    stern, bow = ends(boat)
    return [
        (stern, 0.85 * free),
        (0.0, 0.0),
        (0.12 * long, 0.7 * under),
        (0.35 * long, under),
        (0.6 * long, under),
        (0.88 * long, 0.6 * under),
        (long, 0.0),
        (bow, 1.3 * free),
        (0.5 * long, free),
    ]
