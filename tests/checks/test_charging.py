"""Every rule about charging at the engine: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Specification
from tests.checks.cases import Case, finding
from tests.simulation import boats


def machines(count: int = 1, engine: dict[str, Any] | None = None, **changes: Any) -> Specification:
    machine = replace(boats.alternator(), **changes)
    one = replace(boats.engine((machine,) * count), **(engine or {}))
    return replace(boats.boat(1), engines=(one,))


def direct_load(power: float) -> Specification:
    """A small machine with a direct-current load that always draws."""
    boat = machines(rated_current=20.0, current_limit=20.0)
    fridge = replace(boat.loads[0], power=power, cabin=-1)
    plan = tuple(replace(period, running=(1.0, *period.running[1:])) for period in boat.plan)
    return replace(boat, loads=(fridge, *boat.loads[1:]), plan=plan)


CASES = {
    "belt-at-charging-speed": Case(machines(belt_power=20e3), machines(belt_power=3e3)),
    "crank-side-load": Case(machines(engine={"side_load_limit": 5e3}), machines(engine={"side_load_limit": 200.0})),
    "hold-keeps-winding": Case(machines(), machines(highest_winding=100.0)),
    "mid-range-power-spare": Case(machines(), machines(engine={"propeller_power": 19e3, "rated_power": 20e3})),
    "alternators-turn-fast-enough": Case(machines(), machines(pulley_ratio=1.0)),
    "alternators-within-bank": Case(machines(2), machines(3)),
    "load-dump": Case(machines(clamp_voltage=50.0), machines(clamp_voltage=80.0)),
    "one-alternator-lost": Case(machines(2), machines(2, rated_current=10.0, current_limit=10.0)),
}


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    found = finding(name, CASES[name].holds)
    assert found is not None
    assert found.verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    found = finding(name, CASES[name].fails)
    assert found is not None
    assert found.verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    mine = {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.charging"}
    assert mine == set(CASES)


def test_a_side_load_that_the_maker_was_not_asked_for_cannot_be_told() -> None:
    found = finding("crank-side-load", machines())
    assert found is not None
    assert found.verdict is Verdict.CANNOT_TELL
    assert found.value > 0.0
    assert math.isnan(found.limit)


def test_an_engine_over_its_limit_fails_though_another_was_not_asked_for() -> None:
    boat = machines(engine={"side_load_limit": 200.0})
    other = replace(boats.engine((boats.alternator(),)), name="other")
    found = finding("crank-side-load", replace(boat, engines=(other, *boat.engines)))
    assert found is not None
    assert (found.verdict, found.note) == (Verdict.FAILS, "main engine")


def test_a_load_dump_is_asked_about_unless_loads_hold_it_down() -> None:
    found = finding("load-dump", machines())
    assert found is not None
    assert found.verdict is Verdict.CANNOT_TELL
    assert found.value > found.limit > 0.0
    held = finding("load-dump", direct_load(600.0))
    assert held is not None
    assert held.verdict is Verdict.HOLDS


def test_one_machine_alone_cannot_be_lost() -> None:
    assert finding("one-alternator-lost", machines(1)) is None


def test_the_worst_machine_is_named() -> None:
    weak = replace(boats.alternator("weak"), belt_power=3e3)
    boat = replace(boats.boat(1), engines=(boats.engine((boats.alternator("strong"), weak)),))
    found = finding("belt-at-charging-speed", boat)
    assert found is not None
    assert found.note == "weak on main engine"


def test_no_alternator_nothing_to_say() -> None:
    bare = replace(boats.boat(1), engines=(boats.engine(()),))
    assert all(finding(name, bare) is None for name in CASES)
