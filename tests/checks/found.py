"""What a rule finds on a boat of the tests; a boat is run once, however many rules are held against it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache

from anchorwatt.checks import Evidence, Finding, rules
from anchorwatt.design.installation import NOTHING_SAID, Installation
from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.wiring import WiredCircuit
from tests.checks.changed import ONE_CABIN

Spoil = Callable[[WiredCircuit], WiredCircuit]
BY_ID = {rule.id: rule for rule in rules()}


@dataclass(frozen=True)
class Told:
    """A boat, what somebody vouches for, and what is done to every circuit of its wiring."""

    boat: Specification = ONE_CABIN
    said: Installation = NOTHING_SAID
    spoil: Spoil | None = None


@cache
def evidence(aboard: Specification | Told) -> Evidence:
    """What rules look at; runs and wiring are those of the boat of which nothing is told."""
    if isinstance(aboard, Specification):
        return Evidence(aboard, Simulation(aboard))
    plain = evidence(aboard.boat)
    found = Evidence(replace(aboard.boat, installation=aboard.said), plain.simulation)
    wiring = plain.wiring
    if aboard.spoil is not None:
        wiring = replace(wiring, circuits=tuple(aboard.spoil(one) for one in wiring.circuits))
    vars(found)["wiring"] = wiring  # as its own property would have kept it
    return found


def finding(name: str, aboard: Specification | Told) -> Finding | None:
    """What the rule of that name finds."""
    return BY_ID[name].find(evidence(aboard))


def sure(name: str, aboard: Specification | Told) -> Finding:
    """What the rule of that name finds, where it must find something."""
    found = finding(name, aboard)
    assert found is not None
    return found
