"""What the loss of any single part leaves: which part a rule names, and what is near."""

from __future__ import annotations

from anchorwatt.checks import Verdict
from tests.checks.found import sure
from tests.checks.holds_and_fails.redundancy import charged, strings, with_engine_battery

DIRECT, CHARGING = "direct-current-after-any-loss", "charging-after-any-loss"


def test_the_only_string_is_named() -> None:
    assert "only string" in sure(DIRECT, strings(1)).note


def test_an_engine_battery_beside_the_only_string_is_near() -> None:
    assert sure(DIRECT, with_engine_battery(strings(1))).verdict is Verdict.NEAR


def test_charging_at_the_dock_alone_is_near() -> None:
    found = sure(CHARGING, charged(1, dock=True))
    assert found.verdict is Verdict.NEAR
    assert "engine 1" in found.note


def test_the_sun_beside_one_engine_holds() -> None:
    found = sure(CHARGING, charged(1, sun=True))
    assert found.verdict is Verdict.HOLDS
    assert found.value > 0.0


def test_the_one_battery_that_starts_both_engines_stops_all_charging() -> None:
    found = sure(CHARGING, with_engine_battery(charged(2)))
    assert found.verdict is Verdict.FAILS
    assert found.note == "none at all: the engines' battery"
