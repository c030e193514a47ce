"""Rules that look at a night: a boat that a rule is held against, its runs made once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache

from anchorwatt.checks import Evidence, Finding, rules
from anchorwatt.design.specification import Occupants, Specification
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats

Change = Callable[[Specification], Specification]


@dataclass(frozen=True)
class Case:
    """What is done to the usual boat so that a rule holds, and so that it fails."""

    holds: Change
    fails: Change


def as_it_is(boat: Specification) -> Specification:
    return boat


def cabins(**changes: object) -> Change:
    """Every cabin with those changes."""
    return lambda boat: replace(boat, cabins=tuple(replace(c, **changes) for c in boat.cabins))  # type: ignore[arg-type]


def nobody(boat: Specification) -> Specification:
    return replace(boat, plan=tuple(replace(period, occupants=()) for period in boat.plan))


def only_sleepers(*groups: Occupants) -> Change:
    """Nobody but these, by night."""

    def change(boat: Specification) -> Specification:
        bare = nobody(boat)
        return replace(bare, plan=(*bare.plan[:-1], replace(bare.plan[-1], occupants=groups)))

    return change


@cache
def evidence(change: Change) -> Evidence:
    made = change(boats.boat(2))
    return Evidence(made, Simulation(made))


def finding(name: str, change: Change) -> Finding | None:
    """What the rule of that name finds; what every finding must have is looked at too."""
    (found,) = [one.find(evidence(change)) for one in rules() if one.id == name]
    if found is not None:
        assert found.source
        assert found.remedy
    return found


def sure(name: str, change: Change) -> Finding:
    """What the rule of that name finds, where it must find something."""
    found = finding(name, change)
    assert found is not None
    return found
