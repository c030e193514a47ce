"""Evidence with something changed that no small boat of the tests gets wrong: its wiring, or what is vouched for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache

from anchorwatt.checks import Evidence, Finding, rules
from anchorwatt.design.installation import NOTHING_SAID, Installation
from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.wiring import WiredCircuit, wiring
from anchorwatt.units.table import DIMENSIONS
from tests.simulation import boats

BOAT = boats.boat(1)

Spoil = Callable[[WiredCircuit], WiredCircuit]


@dataclass(frozen=True)
class Told:
    """A boat, what somebody vouches for, and what is done to every circuit of its wiring."""

    boat: Specification = BOAT
    said: Installation = NOTHING_SAID
    spoil: Spoil | None = None


@cache
def _wired(boat: Specification) -> tuple[Simulation, object]:
    simulation = Simulation(boat)
    return simulation, wiring(boat, simulation)


def evidence(told: Told) -> Evidence:
    """What rules look at; the wiring of a boat is worked out once."""
    simulation, made = _wired(told.boat)
    found = Evidence(told.boat, simulation, installation=told.said)
    if told.spoil is not None:
        made = replace(made, circuits=tuple(told.spoil(one) for one in made.circuits))  # type: ignore[attr-defined,type-var]
    found.__dict__["wiring"] = made  # as its own property would have kept it
    return found


def found_by(name: str, told: Told) -> Finding | None:
    """What the rule of that name finds; what every finding must have is looked at too."""
    (found,) = [rule.find(evidence(told)) for rule in rules() if rule.id == name]
    if found is not None:
        assert found.source
        assert found.remedy
        assert found.dimension in (*DIMENSIONS, "count", "ratio")
    return found
