"""Selectivity: whether the device next to a fault opens alone, and those before it stay shut."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from anchorwatt.sizing.protection import Protection
from anchorwatt.sizing.wiring import WiredCircuit

FUSES = 1.6
"""Rating of a fuse over that of the next one down, of one class: IEC 60269, from memory."""

BREAKERS = 2.0
"""Rating of a breaker over that of the next one down. Common practice, no source; in full only up to its magnetic
trip."""

MIXED = 2.0
"""The same between a fuse and a breaker, either way round. Common practice, no source."""


@dataclass(frozen=True)
class Level:
    """Two devices, one behind the other."""

    upstream: str  # tags of the circuits that feed the lower one together, by commas
    downstream: str
    ratio: float  # rating above over rating below
    needed: float
    limit: float  # A of a fault up to which only the lower one opens, inf = any; from memory
    branches: bool  # whether the upper one feeds others too, which would go dark with it

    @property
    def holds(self) -> bool:
        """Whether the ratio is there."""
        return self.ratio >= self.needed * (1.0 - 1e-9)


def needed_ratio(upstream: Protection, downstream: Protection) -> float:
    """Rating above over rating below, at least."""
    if upstream.kind == downstream.kind:
        return FUSES if upstream.kind == "fuse" else BREAKERS
    return MIXED


def level(upstream: Sequence[WiredCircuit], downstream: WiredCircuit, branches: bool) -> Level | None:
    """One step; several circuits that feed the same bus together count with their ratings together."""
    above = [one.protection for one in upstream if one.protection is not None]
    below = downstream.protection
    if not above or below is None or len(above) != len(upstream):
        return None
    rating = math.fsum(one.rating for one in above)
    # A breaker opens at once above its magnetic trip, whatever lies behind it.
    limit = math.fsum(one.trips_by for one in above) if above[0].kind == "breaker" else math.inf
    return Level(
        ", ".join(one.tag for one in upstream),
        downstream.tag,
        rating / below.rating,
        max(needed_ratio(one, below) for one in above),
        limit,
        branches,
    )


def levels(wired: Sequence[WiredCircuit]) -> tuple[Level, ...]:
    """Every step between a device and those right before it, of the same voltage.

    What only gives current to a bus (alternators, a charger) is not before what hangs on it: a fault there is fed by
    the bank. Behind a transformer a new chain begins, and the pier's breaker is not the boat's to choose.
    """
    found: list[Level] = []
    for lower in wired:
        if not _guards(lower):
            continue
        feeding = [
            one
            for one in wired
            if one.circuit.end == lower.circuit.start
            and one.circuit.system == lower.circuit.system
            and one.circuit.source != "shore"
            and _guards(one)
            and math.isclose(one.circuit.voltage, lower.circuit.voltage)
        ]
        # A transfer switch takes one of its sources at a time.
        groups = [feeding] if lower.circuit.system == "dc" else [[one] for one in feeding]
        fed = [one for one in wired if one.circuit.start == lower.circuit.start and _guards(one)]
        for group in groups:
            one = level(group, lower, len(fed) > 1) if group else None
            if one is not None:
                found.append(one)
    return tuple(found)


def _guards(one: WiredCircuit) -> bool:
    """Whether it has a device where it begins."""
    return one.protection is not None and one.protection.at == "start"
