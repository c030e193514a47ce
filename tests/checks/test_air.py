"""The air people breathe: who counts, and what helps."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict
from anchorwatt.design.specification import Occupants
from tests.checks.changed import TWO_CABINS, cabins, nobody, only_sleepers
from tests.checks.found import BY_ID, finding, sure
from tests.checks.holds_and_fails.air import CASES
from tests.simulation import boats

NOBODY = nobody(TWO_CABINS)
ASLEEP = only_sleepers(TWO_CABINS, Occupants(0, 2.0, boats.ASLEEP))
AWAKE = only_sleepers(TWO_CABINS, Occupants(0, 2.0, boats.SEATED))


@pytest.mark.parametrize("name", CASES)
def test_where_nobody_sleeps_there_is_nothing_to_say(name: str) -> None:
    assert finding(name, NOBODY) is None


@pytest.mark.parametrize("name", CASES)
def test_every_remedy_keeps_the_carbon_monoxide_alarm(name: str) -> None:
    assert "carbon-monoxide" in BY_ID[name].remedy


def test_between_the_two_levels_of_the_study_one_rule_fails_and_one_is_near() -> None:
    assert 1150e-6 < sure("carbon-dioxide-asleep", TWO_CABINS).value < 2600e-6
    assert sure("carbon-dioxide-next-day", TWO_CABINS).verdict is Verdict.NEAR


def test_whoever_sleeps_in_the_saloon_counts() -> None:
    assert finding("carbon-dioxide-asleep", cabins(ASLEEP, use="saloon")) is not None
    assert finding("carbon-dioxide-asleep", cabins(AWAKE, use="saloon")) is None


def test_an_open_door_to_an_empty_cabin_helps() -> None:
    def door(flow: float) -> float:
        partitions = tuple(replace(one, air_exchange=flow) for one in ASLEEP.partitions)
        return sure("carbon-dioxide-asleep", replace(ASLEEP, partitions=partitions)).value

    assert door(0.02) < door(0.0) - 100e-6
