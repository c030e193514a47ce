"""Every connection of a design as a circuit, from what the design says already; nobody types one twice."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.design.specification import Point, Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.setting import Input

FEEDER_DROP, ORDINARY_DROP = 0.03, 0.10
"""Share of the nominal voltage that a circuit may lose: feeders, charging, blowers, electronics and lights that the
collision rules ask for; all others. ABYC E-11 and ISO 13297, from memory."""


SELF_LIMITING = ("solar", "none")
"""Sources that cannot give more than their conductors carry: solar panels, a regulator's field output."""


@dataclass(frozen=True)
class Circuit:
    """A connection between two ends, and what it must carry."""

    tag: str  # "W1" on
    start: str  # tag of the end that feeds it
    end: str
    function: str
    system: str  # "dc", "ac", "control" or "bonding"
    voltage: float  # V nominal
    frequency: float  # Hz, 0 = direct current
    poles: int  # conductors that carry current
    continuous: float  # A
    peak: float  # A
    length: float  # m one way
    length_typed: bool
    ambient: float  # °C
    bundled: int  # current-carrying conductors in its bundle
    insulation: float  # °C
    highest_drop: float  # share of the nominal voltage
    source: str  # what feeds a fault: "bank", "bus", "alternator", "charger", "shore", "inverter", "transformer", ...
    start_name: str
    end_name: str
    cores: int  # conductors laid, protective earth counted
    mean_square: float  # A² over 24 h of night and day
    current_formula: str  # how its design current was found, in words
    inputs: tuple[Input, ...]  # what length, current and surroundings rest on
    places: tuple[Point, Point] | None = None  # of its ends, as its length is counted; None = nobody has said

    @property
    def needs_protection(self) -> bool:
        """Whether a fault could burn it: not bonding or signals, nor what panels or a regulator feed, which limit
        their current themselves."""
        return self.system in ("dc", "ac") and self.source not in SELF_LIMITING


def circuits(specification: Specification, simulation: Simulation) -> tuple[Circuit, ...]:
    """All circuits of a boat, tagged in the order in which a wireman meets them: DC, AC, control, bonding."""
    from anchorwatt.sizing.circuit_list import CircuitList
    from anchorwatt.sizing.circuits_ac import alternating
    from anchorwatt.sizing.circuits_control import bonding, control
    from anchorwatt.sizing.circuits_dc import direct

    made = CircuitList(specification, simulation)
    direct(made)
    alternating(made)
    control(made)
    bonding(made)
    return tuple(made.circuits)
