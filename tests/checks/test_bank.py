"""Every rule about the bank: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Specification
from tests.checks.cases import Case, finding
from tests.simulation import boats

BOAT = boats.boat(1)
CELLS = 8


def bank(**changes: float) -> Specification:
    return replace(BOAT, bank=replace(BOAT.bank, **changes))  # type: ignore[arg-type]


SMALL = replace(BOAT, bank=boats.bank(CELLS, 120.0, charge_current=60.0))

CASES = {
    "aged-bank-holds-night": Case(BOAT, SMALL),
    "warranted-bank-holds-night": Case(BOAT, SMALL),
    "bank-cycles-within-life": Case(BOAT, bank(cycle_life=60.0)),
    "bank-not-too-hot-to-charge": Case(BOAT, bank(temperature=50.0)),
    "bank-not-too-cold-to-charge": Case(BOAT, bank(temperature=-5.0)),
    "bank-not-too-hot-at-night": Case(BOAT, bank(temperature=65.0)),
    "bank-not-too-cold-at-night": Case(BOAT, bank(temperature=-25.0)),
    "bank-carries-peak": Case(BOAT, bank(discharge_current=20.0)),
    "voltage-at-reserve": Case(BOAT, bank(cut_off_voltage=CELLS * 3.16)),
    "reserve-above-cut-off": Case(BOAT, bank(cut_off_charge=0.3)),
    "charger-and-sun-within-bank": Case(BOAT, bank(charge_current=40.0)),
    "cells-have-room-to-differ": Case(BOAT, bank(absorb_voltage=CELLS * 3.62)),
    "float-rests-the-bank": Case(BOAT, bank(float_voltage=CELLS * 3.45)),
}


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    found = finding(name, CASES[name].holds)
    assert found is not None
    assert found.verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    found = finding(name, CASES[name].fails)
    assert found is not None
    assert found.verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.bank"} == {*CASES}


def test_a_bank_that_holds_when_new_and_as_it_ages_may_not_at_its_warranted_share() -> None:
    boat = replace(BOAT, bank=boats.bank(CELLS, 220.0, charge_current=110.0))
    assert _holds("bank-holds-night", boat)
    assert _holds("aged-bank-holds-night", boat)
    assert not _holds("warranted-bank-holds-night", boat)


def _holds(name: str, boat: Specification) -> bool:
    found = finding(name, boat)
    assert found is not None
    return found.verdict is not Verdict.FAILS


@pytest.mark.parametrize("name", ["bank-not-too-hot-to-charge", "bank-not-too-cold-to-charge"])
def test_without_an_alternator_nothing_is_said_of_charging(name: str) -> None:
    assert finding(name, replace(BOAT, engines=(boats.engine(),))) is None


def test_without_charger_and_sun_nothing_is_said_of_them() -> None:
    assert finding("charger-and-sun-within-bank", replace(BOAT, charger=None)) is None


def test_without_a_management_system_nothing_is_said_of_its_voltage() -> None:
    assert finding("cells-have-room-to-differ", bank(management=())) is None  # type: ignore[arg-type]
