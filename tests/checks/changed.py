"""The usual boats of these tests, and what is often changed about them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from anchorwatt.design.specification import Occupants, Specification
from tests.simulation import boats

ONE_CABIN = boats.boat(1)
TWO_CABINS = boats.boat(2)


def cabins(boat: Specification, **changes: Any) -> Specification:
    """Every cabin with those changes."""
    return replace(boat, cabins=tuple(replace(cabin, **changes) for cabin in boat.cabins))


def nobody(boat: Specification) -> Specification:
    return replace(boat, plan=tuple(replace(period, occupants=()) for period in boat.plan))


def only_sleepers(boat: Specification, *groups: Occupants) -> Specification:
    """Nobody but these, by night."""
    *day, night = nobody(boat).plan
    return replace(boat, plan=(*day, replace(night, occupants=groups)))
