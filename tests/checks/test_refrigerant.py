"""Refrigerant in cabins: who decides, and where there is nothing to say."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict
from tests.checks.found import BY_ID, finding, sure
from tests.checks.holds_and_fails.refrigerant import CASES, R32, charged
from tests.simulation import boats


@pytest.mark.parametrize("name", CASES)
def test_every_remedy_defers_to_the_standard_and_to_certified_people(name: str) -> None:
    assert "standard in force" in BY_ID[name].remedy
    assert "certified" in BY_ID[name].remedy


def test_near_the_practical_limit_is_said() -> None:
    assert sure("refrigerant-concentration", charged(5.7)).verdict is Verdict.NEAR


def test_what_does_not_burn_has_no_floor_rule() -> None:
    assert finding("flammable-charge", charged(8.0)) is None


@pytest.mark.parametrize("name", CASES)
def test_without_an_occupied_cabin_there_is_nothing_to_say(name: str) -> None:
    boat = replace(charged(8.0, R32), cabins=tuple(boats.cabin(f"locker {c}", use="stowage") for c in range(2)))
    assert finding(name, boat) is None
