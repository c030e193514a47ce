"""Charging at the engine: what cannot be told, and of which machine it is told."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.checks import Verdict
from tests.checks.changed import ONE_CABIN
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.charging import CASES, direct_load, machines, side_load_limit
from tests.simulation import boats


def test_a_side_load_that_the_maker_was_not_asked_for_is_told_without_a_limit() -> None:
    found = sure("crank-side-load", machines())
    assert found.value > 0.0
    assert math.isnan(found.limit)


def test_an_engine_over_its_limit_fails_though_another_was_not_asked_for() -> None:
    boat = side_load_limit(200.0)
    other = replace(boats.engine((boats.alternator(),)), name="other")
    found = sure("crank-side-load", replace(boat, engines=(other, *boat.engines)))
    assert (found.verdict, found.note) == (Verdict.FAILS, "main engine")


def test_a_load_dump_is_asked_about_unless_loads_hold_it_down() -> None:
    found = sure("load-dump", machines())
    assert found.value > found.limit > 0.0
    assert sure("load-dump", direct_load(600.0)).verdict is Verdict.HOLDS


def test_one_machine_alone_cannot_be_lost() -> None:
    assert finding("one-alternator-lost", machines(1)) is None


def test_the_worst_machine_is_named() -> None:
    weak = replace(boats.alternator("weak"), belt_power=3e3)
    boat = replace(ONE_CABIN, engines=(boats.engine((boats.alternator("strong"), weak)),))
    assert sure("belt-at-charging-speed", boat).note == "weak on main engine"


def test_no_alternator_nothing_to_say() -> None:
    bare = replace(ONE_CABIN, engines=(boats.engine(()),))
    assert all(finding(name, bare) is None for name in CASES)
