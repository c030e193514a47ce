"""The bank: new, aged and at its warranted share, and what is not said of it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict
from tests.checks.changed import ONE_CABIN
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.bank import CELLS, bank
from tests.simulation import boats


def test_a_bank_that_holds_when_new_and_as_it_ages_may_not_at_its_warranted_share() -> None:
    boat = replace(ONE_CABIN, bank=boats.bank(CELLS, 220.0, charge_current=110.0))
    assert sure("bank-holds-night", boat).verdict is not Verdict.FAILS
    assert sure("aged-bank-holds-night", boat).verdict is not Verdict.FAILS
    assert sure("warranted-bank-holds-night", boat).verdict is Verdict.FAILS


@pytest.mark.parametrize("name", ["bank-not-too-hot-to-charge", "bank-not-too-cold-to-charge"])
def test_without_an_alternator_nothing_is_said_of_charging(name: str) -> None:
    assert finding(name, replace(ONE_CABIN, engines=(boats.engine(),))) is None


def test_without_charger_and_sun_nothing_is_said_of_them() -> None:
    assert finding("charger-and-sun-within-bank", replace(ONE_CABIN, charger=None)) is None


def test_without_a_management_system_nothing_is_said_of_its_voltage() -> None:
    assert finding("cells-have-room-to-differ", bank(management=())) is None
