"""What happens when something fails: one string, and no shore service."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.checks import Verdict
from tests.checks.changed import TWO_CABINS
from tests.checks.found import finding, sure


def test_a_bank_of_one_string_fails_with_no_time_at_all() -> None:
    found = sure("night-holds-without-a-string", TWO_CABINS)
    assert (found.value, found.verdict) == (0.0, Verdict.FAILS)


def test_no_shore_service_has_nothing_to_take_over_from() -> None:
    assert finding("inverter-takes-over-from-shore", replace(TWO_CABINS, shore=None)) is None
