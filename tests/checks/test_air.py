"""Every rule about the air people breathe: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Occupants, Specification
from tests.checks.night import Case, as_it_is, cabins, finding, nobody, only_sleepers, sure
from tests.simulation import boats

AIRY = cabins(fresh_air_per_person=0.008)
STUFFY = cabins(fresh_air=0.0)

CASES = {
    "carbon-dioxide-asleep": Case(AIRY, as_it_is),
    "carbon-dioxide-next-day": Case(AIRY, STUFFY),
    "outdoor-air-per-sleeper": Case(AIRY, as_it_is),
}


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    assert sure(name, CASES[name].holds).verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    assert sure(name, CASES[name].fails).verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.air"} == {*CASES}


@pytest.mark.parametrize("name", CASES)
def test_where_nobody_sleeps_there_is_nothing_to_say(name: str) -> None:
    assert finding(name, nobody) is None


@pytest.mark.parametrize("name", CASES)
def test_every_remedy_keeps_the_carbon_monoxide_alarm(name: str) -> None:
    assert "carbon-monoxide" in sure(name, CASES[name].fails).remedy


def test_between_the_two_levels_of_the_study_one_rule_fails_and_one_is_near() -> None:
    assert 1150e-6 < sure("carbon-dioxide-asleep", as_it_is).value < 2600e-6
    assert sure("carbon-dioxide-next-day", as_it_is).verdict is Verdict.NEAR


def test_whoever_sleeps_in_the_saloon_counts() -> None:
    saloon = cabins(use="saloon")
    sleeper = only_sleepers(Occupants(0, 2.0, boats.ASLEEP))
    awake = only_sleepers(Occupants(0, 2.0, boats.SEATED))
    assert finding("carbon-dioxide-asleep", lambda boat: saloon(sleeper(boat))) is not None
    assert finding("carbon-dioxide-asleep", lambda boat: saloon(awake(boat))) is None


def test_an_open_door_to_an_empty_cabin_helps() -> None:
    sleeper = only_sleepers(Occupants(0, 2.0, boats.ASLEEP))

    def door(flow: float) -> float:
        def change(boat: Specification) -> Specification:
            made = sleeper(boat)
            return replace(made, partitions=tuple(replace(p, air_exchange=flow) for p in made.partitions))

        return sure("carbon-dioxide-asleep", change).value

    assert door(0.02) < door(0.0) - 100e-6
