"""Voltage and frequency: which device a rule names, through what it is fed, and what cannot be told."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.supply import AMERICAN, CASES, EUROPEAN, SILENT, UNTOLD, boat, device


@pytest.mark.parametrize("name", CASES)
def test_a_failure_names_the_device(name: str) -> None:
    assert "an invented hob" in sure(name, CASES[name].fails).note


@pytest.mark.parametrize("name", CASES)
def test_a_device_that_says_nothing_is_named(name: str) -> None:
    assert "an invented hob" in sure(name, SILENT).note


@pytest.mark.parametrize("name", [name for name in CASES if name.startswith("inverter")])
def test_an_inverter_that_says_nothing_cannot_be_told(name: str) -> None:
    assert sure(name, boat(device(AMERICAN), inverter=UNTOLD)).verdict is Verdict.CANNOT_TELL


@pytest.mark.parametrize("name", CASES)
def test_nothing_is_told_where_nothing_is_fed(name: str) -> None:
    assert finding(name, boat()) is None


def test_a_frequency_that_nobody_typed_cannot_be_told() -> None:
    made = boat(device(AMERICAN))
    assert made.shore is not None
    untold = replace(made, shore=replace(made.shore, frequency_said=False))
    assert sure("shore-frequency-accepted", untold).verdict is Verdict.CANNOT_TELL


def test_a_transformer_brings_the_voltage_that_the_loads_take() -> None:
    assert sure("shore-voltage-accepted", boat(device(EUROPEAN), secondary=240.0)).verdict is Verdict.HOLDS


def test_a_transformer_changes_no_frequency() -> None:
    made = boat(device(EUROPEAN, (47.0, 53.0)), secondary=240.0)
    assert sure("shore-frequency-accepted", made).verdict is Verdict.FAILS


def test_a_transformer_before_the_loads_feeds_no_charger() -> None:
    charger = replace(device(EUROPEAN, at="shore"), name="charger")
    told = sure("shore-voltage-accepted", boat(device(EUROPEAN), charger, secondary=240.0))
    assert told.verdict is Verdict.FAILS
    assert told.note.startswith("charger: gets 120,")


def test_a_charger_does_not_hang_on_the_inverter() -> None:
    assert finding("inverter-voltage-accepted", boat(device(EUROPEAN, at="shore"))) is None


def test_a_primary_side_that_nobody_typed_tells_no_ratio() -> None:
    made = boat(device(EUROPEAN), secondary=240.0)
    assert made.transformer is not None
    untold = replace(made, transformer=replace(made.transformer, primary_said=False))
    assert sure("shore-voltage-accepted", untold).verdict is Verdict.CANNOT_TELL


def test_two_legs_give_both_voltages() -> None:
    charger = device(EUROPEAN, at="shore")
    assert sure("shore-voltage-accepted", boat(charger, device(AMERICAN), legs=2)).verdict is Verdict.HOLDS


def test_a_voltage_at_the_edge_is_near() -> None:
    assert sure("shore-voltage-accepted", boat(device((119.0, 132.0)))).verdict is Verdict.NEAR
