"""What happens when something fails."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Load, Specification
from tests.checks.changed import TWO_CABINS as BOAT
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats


def strings(number: int, capacity: float = 800.0) -> Specification:
    return replace(BOAT, bank=replace(boats.bank(capacity=capacity), parallel=number))


def heavy_ashore() -> Specification:
    """A load that shore carries and the inverter does not."""
    heater = Load("heater", True, 12_000.0, -1, 1.0, 0.0, 0.0)
    plan = tuple(replace(period, running=(*period.running, 1.0)) for period in BOAT.plan)
    return replace(BOAT, loads=(*BOAT.loads, heater), plan=plan)


EMPTY_BY_THEN = strings(1, 10.0)
"""A bank so small that it is cut off in the first hour of the night."""

CASES = {
    "night-holds-without-a-string": Case(strings(4), strings(2, 260.0)),
    "direct-current-without-the-inverter": Case(BOAT, EMPTY_BY_THEN),
    "inverter-takes-over-from-shore": Case(BOAT, heavy_ashore()),
}
