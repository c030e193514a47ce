"""Every rule about refrigerant: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import RefrigerantSafety, Specification
from tests.checks.cases import Case, finding
from tests.simulation import boats

R32 = RefrigerantSafety("R-32", "A2L", 0.307, 0.061, 0.063, 0.15, 675.0, "tests")


def charged(charge: float, safety: RefrigerantSafety = boats.R410A) -> Specification:
    boat = boats.boat(2)
    return replace(boat, plant=replace(boat.plant, charge=charge, safety=safety))


CASES = {
    "refrigerant-concentration": Case(charged(1.5), charged(8.0)),
    "refrigerant-with-measures": Case(charged(1.0, R32), charged(3.0, R32)),
    "flammable-charge": Case(charged(0.7, R32), charged(1.5, R32)),
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
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.refrigerant"} == {*CASES}


@pytest.mark.parametrize("name", CASES)
def test_every_remedy_defers_to_the_standard_and_to_certified_people(name: str) -> None:
    found = finding(name, CASES[name].fails)
    assert found is not None
    assert "standard in force" in found.remedy
    assert "certified" in found.remedy


def test_near_the_practical_limit_is_said() -> None:
    found = finding("refrigerant-concentration", charged(5.7))
    assert found is not None
    assert found.verdict is Verdict.NEAR


def test_what_does_not_burn_has_no_floor_rule() -> None:
    assert finding("flammable-charge", charged(8.0)) is None


@pytest.mark.parametrize("name", CASES)
def test_without_an_occupied_cabin_there_is_nothing_to_say(name: str) -> None:
    boat = replace(charged(8.0, R32), cabins=tuple(boats.cabin(f"locker {c}", use="stowage") for c in range(2)))
    assert finding(name, boat) is None
