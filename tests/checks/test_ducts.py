"""Ducts, grilles and fans: which limit is whose."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict
from tests.checks.changed import ONE_CABIN
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.ducts import CASES, WIDE, ducted
from tests.simulation import boats


@pytest.mark.parametrize("name", CASES)
def test_without_ducts_there_is_nothing_to_say(name: str) -> None:
    bare = tuple(replace(handler, outlets=()) for handler in ONE_CABIN.plant.handlers)
    assert finding(name, replace(ONE_CABIN, plant=replace(ONE_CABIN.plant, handlers=bare))) is None


def test_a_branch_has_a_lower_limit_than_a_trunk() -> None:
    assert sure("duct-velocity", ducted(WIDE, WIDE)).limit < sure("duct-velocity", ducted(WIDE)).limit


def test_one_outlet_is_not_out_of_balance() -> None:
    assert finding("branch-balance", ducted(WIDE)) is None


def test_grilles_of_other_spaces_are_left_alone() -> None:
    assert finding("grille-velocity-asleep", ducted(WIDE, use="head")) is None
    assert finding("grille-velocity-awake", ducted(WIDE, use="sleeping")) is None


def test_a_saloons_return_may_be_faster_than_a_sleeping_cabins() -> None:
    asleep = ducted(WIDE, return_area=0.06)
    awake = ducted(WIDE, use="saloon", return_area=0.06)
    assert sure("return-grille-velocity", asleep).verdict is Verdict.FAILS
    assert sure("return-grille-velocity", awake).verdict is not Verdict.FAILS


@pytest.mark.parametrize("name", ["duct-static-pressure", "airflow-delivered"])
def test_a_fan_without_pressure_fails(name: str) -> None:
    assert sure(name, ducted(WIDE, static_pressure=0.0)).verdict is Verdict.FAILS


def test_the_dew_point_is_the_nights_highest() -> None:
    found = sure("ducts-dry", ducted(WIDE))
    assert found.limit == pytest.approx(boats.DAY.dew_point)
    assert not math.isnan(found.value)
