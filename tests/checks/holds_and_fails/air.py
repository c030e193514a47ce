"""The air people breathe."""

from __future__ import annotations

from tests.checks.changed import TWO_CABINS as BOAT
from tests.checks.changed import cabins
from tests.checks.holds_and_fails.case import Case

AIRY = cabins(BOAT, fresh_air_per_person=0.008)
STUFFY = cabins(BOAT, fresh_air=0.0)

CASES = {
    "carbon-dioxide-asleep": Case(AIRY, BOAT),
    "carbon-dioxide-next-day": Case(AIRY, STUFFY),
    "outdoor-air-per-sleeper": Case(AIRY, BOAT),
}
