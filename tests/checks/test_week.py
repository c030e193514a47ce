"""Every rule about the week: a boat that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import PlannedDay, Specification
from tests.checks.night import Case, as_it_is, sure
from tests.simulation import boats

HOUR = 3600.0


def lying(boat: Specification) -> Specification:
    return replace(boat, week=(PlannedDay(False, 8 * HOUR, 0.0),) * 7)


def charging(boat: Specification) -> Specification:
    """The bank is charged each evening, while it lies at anchor."""
    return replace(boat, week=(PlannedDay(False, 16 * HOUR, 5 * HOUR),) * 7)


def weak_inverter(boat: Specification) -> Specification:
    return replace(boat, inverter=replace(boat.inverter, rated_power=250.0))


def large_bank(boat: Specification) -> Specification:
    return replace(lying(boat), bank=boats.bank(capacity=6000.0))


CASES = {
    "week-above-reserve": Case(charging, lying),
    "week-keeps-going": Case(charging, large_bank),
    "week-supplied": Case(charging, weak_inverter),
}


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    assert sure(name, CASES[name].holds).verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    assert sure(name, CASES[name].fails).verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.week"} == {*CASES}


def test_a_week_that_sinks_slowly_stays_above_its_reserve() -> None:
    assert sure("week-above-reserve", large_bank).verdict is Verdict.HOLDS


def test_the_usual_boat_moves_each_day() -> None:
    assert all(day.passage for day in as_it_is(boats.boat(2)).week)
