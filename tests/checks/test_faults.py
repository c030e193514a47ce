"""Every rule about faults: a boat that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Load, Specification
from tests.checks.night import Case, as_it_is, finding, sure
from tests.simulation import boats


def strings(number: int, capacity: float = 800.0) -> Specification:
    boat = boats.boat(2)
    return replace(boat, bank=replace(boats.bank(capacity=capacity), parallel=number))


def four_strings(_: Specification) -> Specification:
    return strings(4)


def small_strings(_: Specification) -> Specification:
    return strings(2, 260.0)


def empty_by_then(_: Specification) -> Specification:
    """A bank so small that it is cut off in the first hour of the night."""
    return strings(1, 10.0)


def no_shore(boat: Specification) -> Specification:
    return replace(boat, shore=None)


def heavy_ashore(boat: Specification) -> Specification:
    """A load that shore carries and the inverter does not."""
    heater = Load("heater", True, 12_000.0, -1, 1.0, 0.0, 0.0)
    plan = tuple(replace(period, running=(*period.running, 1.0)) for period in boat.plan)
    return replace(boat, loads=(*boat.loads, heater), plan=plan)


CASES = {
    "night-holds-without-a-string": Case(four_strings, small_strings),
    "direct-current-without-the-inverter": Case(as_it_is, empty_by_then),
    "inverter-takes-over-from-shore": Case(as_it_is, heavy_ashore),
}


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    assert sure(name, CASES[name].holds).verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    assert sure(name, CASES[name].fails).verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.faults"} == {*CASES}


def test_a_bank_of_one_string_fails_with_no_time_at_all() -> None:
    found = sure("night-holds-without-a-string", as_it_is)
    assert (found.value, found.verdict) == (0.0, Verdict.FAILS)


def test_no_shore_service_has_nothing_to_take_over_from() -> None:
    assert finding("inverter-takes-over-from-shore", no_shore) is None
