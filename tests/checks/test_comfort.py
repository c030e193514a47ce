"""Every rule about comfort: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Specification
from tests.checks.night import Case, Change, as_it_is, finding, nobody, sure
from tests.simulation import boats


def held_at(point: float) -> Change:
    def change(boat: Specification) -> Specification:
        *day, night = boat.plan
        return replace(boat, plan=(*day, replace(night, set_points=(point,) * len(boat.cabins))))

    return change


COOL, WARM = held_at(21.0), held_at(float("nan"))

CASES = {"comfort-asleep": Case(as_it_is, COOL)}


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    assert sure(name, CASES[name].holds).verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    assert sure(name, CASES[name].fails).verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.comfort"} == {*CASES}


def test_where_nobody_sleeps_there_is_nothing_to_say() -> None:
    assert finding("comfort-asleep", nobody) is None


def test_too_warm_and_too_cool_are_told_apart() -> None:
    cool, warm = sure("comfort-asleep", COOL), sure("comfort-asleep", WARM)
    assert cool.value < cool.limit < 0.0
    assert warm.value > warm.limit > 0.0
    assert warm.verdict is Verdict.FAILS


def test_a_thicker_cover_mends_a_cool_night() -> None:
    thick = replace(boats.ASLEEP, clothing=2.2)

    def covered(boat: Specification) -> Specification:
        *day, night = COOL(boat).plan
        sleepers = tuple(replace(group, person=thick) for group in night.occupants)
        return replace(boat, plan=(*day, replace(night, occupants=sleepers)))

    assert sure("comfort-asleep", covered).value > sure("comfort-asleep", COOL).value + 0.7
