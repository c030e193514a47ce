"""How a lithium bank is installed: what nobody has said, small banks, and the two regimes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict
from anchorwatt.design.specification import Regime, Specification
from tests.checks.changed import ONE_CABIN
from tests.checks.found import Told, finding, sure
from tests.checks.holds_and_fails.lithium import CASES, moved

SMALL = replace(ONE_CABIN, bank=replace(ONE_CABIN.bank, capacity=20.0 * 3600.0))
ISO = replace(ONE_CABIN, wiring=replace(ONE_CABIN.wiring, regime=Regime.ISO))


@pytest.mark.parametrize("name", [name for name, case in CASES.items() if case.cannot_tell])
def test_what_nobody_has_said_is_asked_for(name: str) -> None:
    assert "in the design file" in sure(name, Told()).note


@pytest.mark.parametrize("name", CASES)
def test_a_bank_below_the_standards_threshold_is_not_asked(name: str) -> None:
    assert finding(name, SMALL) is None


@pytest.mark.parametrize(("boat", "expected"), [(ONE_CABIN, Verdict.HOLDS), (ISO, Verdict.FAILS)], ids=["us", "iso"])
def test_iso_allows_a_battery_less_movement_than_the_us(boat: Specification, expected: Verdict) -> None:
    assert sure("bank-restrained", Told(boat, moved("15 mm"))).verdict is expected
