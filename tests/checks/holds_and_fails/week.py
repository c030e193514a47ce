"""The planned week."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import PlannedDay
from tests.checks.changed import TWO_CABINS as BOAT
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats

HOUR = 3600.0

LYING = replace(BOAT, week=(PlannedDay(False, 8 * HOUR, 0.0),) * 7)
CHARGING = replace(BOAT, week=(PlannedDay(False, 16 * HOUR, 5 * HOUR),) * 7)
"""The bank is charged each evening, while it lies at anchor."""
LARGE_BANK = replace(LYING, bank=boats.bank(capacity=6000.0))
WEAK_INVERTER = replace(BOAT, inverter=replace(BOAT.inverter, rated_power=250.0))

CASES = {
    "week-above-reserve": Case(CHARGING, LYING),
    "week-keeps-going": Case(CHARGING, LARGE_BANK),
    "week-supplied": Case(CHARGING, WEAK_INVERTER),
}
