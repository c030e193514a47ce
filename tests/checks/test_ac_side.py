"""Inverter, transformer, shore power and the small converters: what is near, and what else fails."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.checks import Verdict
from tests.checks.changed import ONE_CABIN
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.ac_side import CASES, shore, transformer


def test_rules_without_an_object_are_left_out() -> None:
    bare = replace(ONE_CABIN, transformer=None, shore=None, charger=None)
    left_out = {name for name in CASES if finding(name, bare) is None}
    assert left_out == {*CASES} - {"inverter-all-at-once", "inverter-surge"}


def test_a_secondary_above_its_band_fails_without_load() -> None:
    found = sure("transformer-secondary", transformer(secondary_voltage=270.0))
    assert found.verdict is Verdict.FAILS
    assert found.value > found.limit


def test_a_transformer_for_another_supply_gives_the_wrong_voltage() -> None:
    """230 to 230 V on a service of 120 V."""
    found = sure("transformer-secondary", transformer(primary_voltage=230.0, secondary_voltage=230.0))
    assert found.verdict is Verdict.FAILS


def test_a_breaker_that_may_trip_is_near() -> None:
    assert sure("inrush-on-shore-breaker", transformer(inrush=6.0)).verdict is Verdict.NEAR


def test_a_bank_that_shore_never_fills_fails() -> None:
    assert sure("charger-refills-overnight", shore(continuous_power=60.0)).verdict is Verdict.FAILS
