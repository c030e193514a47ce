"""What is at the ends of a cable: colours, lugs, studs, and the bars that they are bolted to."""

from __future__ import annotations

import math
from dataclasses import dataclass

from anchorwatt.design.specification import Regime
from anchorwatt.sizing.circuits import Circuit
from anchorwatt.sizing.conductors import SizedCircuit

STUDS = ((30.0, "M5", "#10"), (80.0, "M6", "1/4 in"), (250.0, "M8", "5/16 in"), (math.inf, "M10", "3/8 in"))
"""A up to which a stud will do, metric and in inches. From memory."""

BARS = (100.0, 150.0, 250.0, 400.0, 600.0, 800.0, 1000.0, 1500.0, 2000.0, 3000.0)
"""A; ratings of busbars as they are sold. From memory."""

BAR_DENSITY = 1.55e6
"""A/m² of a copper bar in free air: 1000 A a square inch. From memory."""

COLOURS_SOURCE = {
    Regime.CFR: "ABYC E-11, from memory: 33 CFR 183 sets none",
    Regime.ABYC: "ABYC E-11, from memory",
    Regime.ISO: "ISO 13297 and IEC 60445, from memory",
}


@dataclass(frozen=True)
class Busbar:
    """A bar that circuits meet on."""

    tag: str
    name: str
    current: float  # A through it: what feeds it or what it feeds, whichever is less
    rating: float  # A of the smallest bar as sold
    area: float  # m² of copper for its rating


def colour(circuit: Circuit, regime: Regime) -> str:
    """Colours of a circuit's conductors by their function.

    The boat has alternating current: where its conductors are black, negative is yellow.
    """
    metric = regime is Regime.ISO
    if circuit.system == "control":
        return "cores numbered"
    if circuit.system == "bonding":
        return "green-yellow" if metric else "green"
    if circuit.system == "dc":
        return "red, black" if metric else "red, yellow"
    if circuit.poles > 2:
        return "brown, black, blue, green-yellow" if metric else "black, red, white, green"
    return "brown, blue, green-yellow" if metric else "black, white, green"


def stud(current: float, metric: bool) -> str:
    """The stud for a current."""
    return next(size if metric else inches for most, size, inches in STUDS if current <= most)


def lug_stud(circuit: Circuit, conductor: SizedCircuit, metric: bool) -> str:
    """The stud that a circuit's lugs are bolted to; empty where its ends are ferrules."""
    if circuit.system in ("control", "ac"):
        return ""
    carries = conductor.ampacity if circuit.system == "bonding" else circuit.continuous
    return stud(carries / conductor.parallel, metric)


def lug(circuit: Circuit, conductor: SizedCircuit, metric: bool) -> str:
    """What is crimped on at both ends."""
    if circuit.system == "control":
        return "ferrules"
    name = conductor.conductor.name
    if circuit.system == "ac":
        return f"ferrules {name}"
    return f"{2 * circuit.poles * conductor.parallel} × {name}, {lug_stud(circuit, conductor, metric)}"


def busbar(tag: str, name: str, fed: float, feeding: float) -> Busbar:
    """The smallest bar for what feeds it and what it feeds, A; beyond the largest, several of them."""
    current = min(fed, feeding) if fed > 0.0 and feeding > 0.0 else max(fed, feeding)
    rating = next((one for one in BARS if current <= one), math.ceil(current / BARS[-1]) * BARS[-1])
    return Busbar(tag, name, current, rating, rating / BAR_DENSITY)
