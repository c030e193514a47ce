"""The air of compartments where parts stand in no locker."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Item, Specification
from tests.checks.changed import ONE_CABIN
from tests.checks.holds_and_fails.case import Case
from tests.checks.holds_and_fails.fit import part


def boat(*items: Item) -> Specification:
    return replace(ONE_CABIN, items=items)


def transformer(bears: float, cabin: int = 0, space: int = -1) -> Item:
    """One that says up to what air it gives its rating."""
    return part("transformer", "T1", space=space, cabin=cabin, highest_air=bears)


CASES = {
    "compartment-cool-enough": Case(
        boat(transformer(60.0)), boat(transformer(20.0)), boat(transformer(60.0, cabin=-1))
    ),
}
