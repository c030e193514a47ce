"""The air of compartments: which part a rule names, what is near, and what other rules tell."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict
from tests.checks.changed import ONE_CABIN
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.compartments import boat, transformer
from tests.checks.holds_and_fails.fit import part
from tests.simulation import boats

NAME = "compartment-cool-enough"


def test_the_part_is_named() -> None:
    assert "T1" in sure(NAME, boat(transformer(20.0))).note


def test_the_air_is_that_of_the_hottest_hour() -> None:
    assert sure(NAME, boat(transformer(60.0))).value == sure(NAME, boat(transformer(70.0))).value


def test_little_to_spare_is_near() -> None:
    air = sure(NAME, boat(transformer(60.0))).value
    assert sure(NAME, boat(transformer(air + 1.0))).verdict is Verdict.NEAR


def test_a_part_in_a_space_is_told_by_another_rule() -> None:
    made = replace(boat(transformer(20.0, space=0)), spaces=(boats.space(),))
    assert finding(NAME, made) is None


@pytest.mark.parametrize("kind", ["inverter", "dc_dc", "battery_module"])
def test_what_other_rules_judge_by_its_work_is_left_to_them(kind: str) -> None:
    assert finding(NAME, boat(part(kind, "T2", space=-1, highest_air=20.0))) is None


def test_a_part_that_says_nothing_of_its_air_is_not_looked_at() -> None:
    assert finding(NAME, boat(transformer(math.nan))) is None


def test_a_charger_that_is_not_asked_for_anything_may_derate() -> None:
    """No period of the plan is on shore power."""
    made = boat(part("charger", "T2", space=-1, highest_air=20.0))
    assert made.charger == ONE_CABIN.charger
    assert sure(NAME, made).verdict is Verdict.NEAR


def test_a_part_in_no_compartment_is_named() -> None:
    found = sure(NAME, boat(transformer(60.0), replace(transformer(60.0, cabin=-1), tag="T9")))
    assert found.verdict is Verdict.CANNOT_TELL
    assert "T9" in found.note
