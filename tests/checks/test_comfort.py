"""Comfort in bed: too warm, too cool, and what mends it."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.checks import Verdict
from tests.checks.changed import TWO_CABINS, nobody
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.comfort import COOL, WARM
from tests.simulation import boats


def test_where_nobody_sleeps_there_is_nothing_to_say() -> None:
    assert finding("comfort-asleep", nobody(TWO_CABINS)) is None


def test_too_warm_and_too_cool_are_told_apart() -> None:
    cool, warm = sure("comfort-asleep", COOL), sure("comfort-asleep", WARM)
    assert cool.value < cool.limit < 0.0
    assert warm.value > warm.limit > 0.0
    assert warm.verdict is Verdict.FAILS


def test_a_thicker_cover_mends_a_cool_night() -> None:
    thick = replace(boats.ASLEEP, clothing=2.2)
    *day, night = COOL.plan
    sleepers = tuple(replace(group, person=thick) for group in night.occupants)
    covered = replace(COOL, plan=(*day, replace(night, occupants=sleepers)))
    assert sure("comfort-asleep", covered).value > sure("comfort-asleep", COOL).value + 0.7
