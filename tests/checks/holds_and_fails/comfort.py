"""Comfort in bed."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Specification
from tests.checks.changed import TWO_CABINS as BOAT
from tests.checks.holds_and_fails.case import Case


def held_at(point: float) -> Specification:
    *day, night = BOAT.plan
    return replace(BOAT, plan=(*day, replace(night, set_points=(point,) * len(BOAT.cabins))))


COOL, WARM = held_at(21.0), held_at(float("nan"))

CASES = {"comfort-asleep": Case(BOAT, COOL)}
