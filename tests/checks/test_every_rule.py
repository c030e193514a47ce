"""Every rule: a boat on which it holds, one on which it fails, and, where there is one, one of which it cannot tell."""

from __future__ import annotations

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.units.table import DIMENSIONS
from tests.checks.found import sure
from tests.checks.holds_and_fails import BY_SUBJECT, EVERY


def test_every_rule_is_in_the_table() -> None:
    told = {(subject, name) for subject, cases in BY_SUBJECT.items() for name in cases}
    assert {(rule.subject, rule.id) for rule in rules()} == told


@pytest.mark.parametrize("name", EVERY)
def test_holds(name: str) -> None:
    assert sure(name, EVERY[name].holds).verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", EVERY)
def test_fails(name: str) -> None:
    assert sure(name, EVERY[name].fails).verdict is Verdict.FAILS


@pytest.mark.parametrize("name", [name for name, case in EVERY.items() if case.cannot_tell is not None])
def test_cannot_tell(name: str) -> None:
    unsure = EVERY[name].cannot_tell
    assert unsure is not None
    assert sure(name, unsure).verdict is Verdict.CANNOT_TELL


def test_every_rule_has_a_question_a_source_and_a_remedy() -> None:
    assert all(rule.question and rule.source and rule.remedy for rule in rules())


def test_every_rule_is_told_in_a_dimension_that_can_be_shown() -> None:
    assert {rule.dimension for rule in rules()} <= {*DIMENSIONS, "count", "ratio", "money"}
