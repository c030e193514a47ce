"""The bank as it is told."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from anchorwatt.assessment.bank import BankStory, bank_story, nearest
from anchorwatt.checks import Evidence
from anchorwatt.design.specification import CutOff
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats

BOAT = boats.boat(1)
LIMITS = (
    CutOff("overvoltage", "voltage", 29.2, "voltage", "charge", "by itself"),
    CutOff("undervoltage", "voltage", 22.4, "voltage", "discharge", "by hand"),
    CutOff("empty", "state of charge", 0.05, "share", "discharge", "by hand"),
    CutOff("charging current", "current", 400.0, "current", "charge", "by itself"),
    CutOff("discharging current", "current", 600.0, "current", "both", "by hand"),
    CutOff("too cold to charge", "cells", 0.0, "temperature", "charge", "by itself"),
    CutOff("too hot to charge", "cells", 45.0, "temperature", "charge", "by itself"),
    CutOff("too cold", "cells", -20.0, "temperature", "both", "by itself"),
    CutOff("too hot", "cells", 60.0, "temperature", "both", "by itself"),
)


@cache
def story() -> BankStory:
    boat = replace(BOAT, bank=replace(BOAT.bank, management=LIMITS))
    simulation = Simulation(boat)
    return bank_story(boat, simulation, Evidence(boat, simulation))


def test_each_limit_says_what_is_lost() -> None:
    assert [limit.cut_off for limit in story().limits] == list(LIMITS)
    assert all(limit.lost for limit in story().limits)
    opened = {limit.cut_off.disconnects: limit.lost for limit in story().limits}
    assert len(set(opened.values())) == 3


@pytest.mark.parametrize("number", range(len(LIMITS)), ids=[one.name for one in LIMITS])
def test_a_sound_boat_stays_on_the_right_side_of_each_limit(number: int) -> None:
    limit = story().limits[number]
    upper = (
        limit.cut_off.name in ("overvoltage", "charging current", "discharging current") or "hot" in limit.cut_off.name
    )
    assert (limit.nearest <= limit.cut_off.limit) if upper else (limit.nearest >= limit.cut_off.limit)


def test_without_a_recharge_nothing_comes_near_its_current() -> None:
    state = replace(story().state, recharge=None)
    assert nearest(LIMITS[3], story().bank, state, 0.2) == 0.0


def test_the_tables_are_the_runs() -> None:
    assert story().night.column("cells_C").values.max() == story().state.night.hottest
    recharge, state = story().recharge, story().state.recharge
    assert recharge is not None
    assert state is not None
    assert recharge.column("cells_C").values.max() == state.hottest
