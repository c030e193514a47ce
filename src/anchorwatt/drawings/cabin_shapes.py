"""The floors of cabins as shapes in the plan, in metres, each of its own area, none over another.

A design file says how large a floor is, and may say how long it is and where its middle lies. A floor is drawn as a
piece of the hull of that area round that middle: as wide as it must be, but within the hull.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from anchorwatt.drawings.hull_outline import Metres, ends, half_breadth, middles

if TYPE_CHECKING:
    from anchorwatt.assessment.cabin_plan import CabinMoment
    from anchorwatt.design.specification import Specification

_SIDE = 0.08  # m between a floor and the outside of the hull
_STEPS = 24
_SHORTEST = 0.6  # of its length, to which a floor is shortened rather than drawn over its neighbour
_TOUCHING = 0.02  # m by which two floors may seem to overlap
_HALVINGS = 40


@dataclass(frozen=True)
class Floor:
    """A cabin's floor in the plan."""

    cabin: CabinMoment
    stations: tuple[float, ...]  # m forward, rising
    port: tuple[float, ...]  # m to starboard of its port edge at the stations
    starboard: tuple[float, ...]
    whole: bool  # whether it is drawn with all of its area; else the hull has no room for it there

    @property
    def outline(self) -> list[Metres]:
        """Its corners, forward and to starboard."""
        there = list(zip(self.stations, self.starboard, strict=True))
        return [*there, *reversed(list(zip(self.stations, self.port, strict=True)))]

    def over(self, other: Floor) -> bool:
        """Whether the two overlap."""
        aft, fore = max(self.stations[0], other.stations[0]), min(self.stations[-1], other.stations[-1])
        if fore - aft <= _TOUCHING:
            return False
        for number in range(_STEPS + 1):
            at = aft + (fore - aft) * number / _STEPS
            one, two = self.across(at), other.across(at)
            if min(one[1], two[1]) - max(one[0], two[0]) > _TOUCHING:
                return True
        return False

    def across(self, forward: float) -> Metres:
        """Its port and its starboard edge at a station."""
        first, last = self.stations[0], self.stations[-1]
        place = (forward - first) / (last - first) * (len(self.stations) - 1)
        low = min(max(math.floor(place), 0), len(self.stations) - 2)
        part = min(max(place - low, 0.0), 1.0)

        def between(edge: tuple[float, ...]) -> float:
            return edge[low] + (edge[low + 1] - edge[low]) * part

        return between(self.port), between(self.starboard)


def layers(boat: Specification, cabins: Sequence[CabinMoment]) -> list[list[Floor]]:
    """The floors of one deck, on as many plans as it takes so that none lies over another."""
    found: list[list[Floor]] = []
    for floor in _floors(boat, cabins):
        free = next((layer for layer in found if not any(floor.over(other) for other in layer)), None)
        if free is None:
            found.append([floor])
        else:
            free.append(floor)
    return found


def _floors(boat: Specification, cabins: Sequence[CabinMoment]) -> list[Floor]:
    halves = [0.5 * cabin.length for cabin in cabins]
    shortened = list(halves)
    for i, one in enumerate(cabins):
        for j, other in enumerate(cabins):
            apart = abs(one.centre.forward - other.centre.forward)
            both = halves[i] + halves[j]
            if i != j and apart < both and _beside(one, other) and apart / both >= _SHORTEST:
                shortened[i] = min(shortened[i], halves[i] * apart / both)
    return [_floor(boat, cabin, half) for cabin, half in zip(cabins, shortened, strict=True)]


def _beside(one: CabinMoment, other: CabinMoment) -> bool:
    """Whether both take some of the same width of the boat."""
    widths = 0.5 * (one.floor_area / one.length + other.floor_area / other.length)
    return abs(one.centre.starboard - other.centre.starboard) < widths - _TOUCHING


def _floor(boat: Specification, cabin: CabinMoment, half: float) -> Floor:
    stern, bow = ends(boat)
    # What is long for its place is shifted into the hull.
    half = min(half, 0.48 * (bow - stern))
    middle = min(max(cabin.centre.forward, stern + half + _SIDE), bow - half - _SIDE)
    stations = [middle - half + 2.0 * half * number / _STEPS for number in range(_STEPS + 1)]
    limits = [_limits(boat, cabin, station) for station in stations]
    low, high = 0.0, 2.0 * boat.beam
    for _ in range(_HALVINGS):
        width = 0.5 * (low + high)
        if _area(stations, _edges(cabin, limits, width)) < cabin.floor_area:
            low = width
        else:
            high = width
    edges = _edges(cabin, limits, high)
    whole = _area(stations, edges) >= 0.98 * cabin.floor_area
    return Floor(cabin, tuple(stations), tuple(port for port, _ in edges), tuple(star for _, star in edges), whole)


def _limits(boat: Specification, cabin: CabinMoment, forward: float) -> Metres:
    """The width of the boat that a cabin may take at a station."""
    half = max(half_breadth(boat, forward) - _SIDE, 0.5 * _SIDE)
    if boat.hulls == 1:
        return -half, half
    outer = 0.5 * (boat.beam - boat.hull_beam)
    if cabin.deck == "main":
        return -outer - half, outer + half
    hull = min(middles(boat), key=lambda middle: abs(middle - cabin.centre.starboard))
    # A cabin of a hull may reach inward over the bridge deck, as berths do.
    inward = 0.5 * boat.beam - boat.hull_beam - _SIDE
    if hull < 0.0:
        return hull - half, max(hull + half, hull + inward)
    return (min(hull - half, hull - inward), hull + half) if hull > 0.0 else (-half, half)


def _edges(cabin: CabinMoment, limits: Sequence[Metres], width: float) -> list[Metres]:
    port, star = cabin.centre.starboard - 0.5 * width, cabin.centre.starboard + 0.5 * width
    found = []
    for low, high in limits:
        left, right = min(max(port, low), high), max(min(star, high), low)
        found.append((left, max(left, right)))
    return found


def _area(stations: Sequence[float], edges: Sequence[Metres]) -> float:
    step = stations[1] - stations[0]
    widths = [star - port for port, star in edges]
    return step * (math.fsum(widths) - 0.5 * (widths[0] + widths[-1]))
