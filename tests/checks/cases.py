"""Cases for rules that need no run: a design that makes a rule hold, and one that makes it fail."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.checks import Evidence, Finding, rules
from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.units.table import DIMENSIONS


@dataclass(frozen=True)
class Case:
    holds: Specification
    fails: Specification


def finding(name: str, boat: Specification) -> Finding | None:
    """What the rule of that name finds; what every finding must have is looked at too."""
    (found,) = [rule.find(Evidence(boat, Simulation(boat))) for rule in rules() if rule.id == name]
    if found is not None:
        assert found.source
        assert found.remedy
        assert found.dimension in (*DIMENSIONS, "count", "ratio")
    return found
