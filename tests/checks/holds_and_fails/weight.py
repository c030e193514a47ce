"""Where the parts stand."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.design.specification import Point, Specification
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats


def boat(*places: tuple[float, float, float, float], placed: bool = True) -> Specification:
    """Parts of so many kg at forward, starboard and up."""
    items = tuple(
        replace(
            boats.item(f"T{n}", "inverter", "part", 1, mass, math.nan, ""),
            position=Point(forward, starboard, up),
            placed=placed,
        )
        for n, (mass, forward, starboard, up) in enumerate(places)
    )
    return boats.boat(1, items=items)


FLOTATION = boats.boat(1).flotation
LEVEL = boat((100.0, FLOTATION, 0.0, -0.3))
UNPLACED = boat((100.0, 6.0, 0.0, 0.0), placed=False)
HALF = replace(LEVEL, items=(*LEVEL.items, replace(LEVEL.items[0], tag="T9", placed=False)))

CASES = {
    "parts-have-a-place": Case(LEVEL, HALF, UNPLACED),
    "heel-from-weight": Case(LEVEL, boat((300.0, FLOTATION, 1.5, 0.0)), UNPLACED),
    "trim-from-weight": Case(LEVEL, boat((400.0, FLOTATION + 6.0, 0.0, 0.0)), UNPLACED),
    "stability-height-kept": Case(LEVEL, boat((400.0, FLOTATION, 0.0, 3.0)), UNPLACED),
}
