"""Every rule about ducts: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Duct, Outlet, Specification
from tests.checks.cases import Case, finding
from tests.simulation import boats

WIDE = replace(boats.DUCT, diameter=0.20, grille_area=0.11)
"""What a handler of 120 L/s needs to be quiet."""
DRY = replace(boats.DAY, highest_dry_bulb=33.0, daily_range=7.0, dew_point=12.0)


def ducted(*ducts: Duct, use: str = "sleeping", **changes: float) -> Specification:
    """Two cabins of that use, each with a handler of 120 L/s that blows into these ducts alike."""
    boat = boats.boat(2)
    handlers = tuple(
        replace(
            boats.handler(f"handler {c + 1}", c, 2400.0),
            outlets=tuple(Outlet(f"outlet {n + 1}", c, 1.0 / len(ducts), duct) for n, duct in enumerate(ducts)),
            **{"return_area": 0.10, **changes},  # type: ignore[arg-type]
        )
        for c in range(2)
    )
    cabins = tuple(replace(cabin, use=use) for cabin in boat.cabins)
    return replace(boat, cabins=cabins, plant=replace(boat.plant, handlers=handlers))


def dry(boat: Specification) -> Specification:
    return replace(boat, place=boats.place(DRY))


SMALL_GRILLE = replace(WIDE, grille_area=0.06)

CASES = {
    "duct-velocity": Case(ducted(WIDE), ducted(replace(WIDE, diameter=0.15))),
    "grille-velocity-asleep": Case(ducted(WIDE), ducted(SMALL_GRILLE)),
    "grille-velocity-awake": Case(ducted(WIDE, use="saloon"), ducted(SMALL_GRILLE, use="saloon")),
    "return-grille-velocity": Case(ducted(WIDE), ducted(WIDE, return_area=0.05)),
    "duct-static-pressure": Case(ducted(WIDE), ducted(WIDE, static_pressure=5.0)),
    "airflow-delivered": Case(ducted(WIDE), ducted(replace(WIDE, diameter=0.10))),
    "branch-balance": Case(ducted(WIDE, WIDE), ducted(WIDE, replace(WIDE, length=12.0, bends=6.0))),
    "ducts-dry": Case(dry(ducted(WIDE)), ducted(replace(WIDE, insulation=0.0))),
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
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.ducts"} == {*CASES}


@pytest.mark.parametrize("name", CASES)
def test_without_ducts_there_is_nothing_to_say(name: str) -> None:
    boat = boats.boat(1)
    bare = tuple(replace(handler, outlets=()) for handler in boat.plant.handlers)
    assert finding(name, replace(boat, plant=replace(boat.plant, handlers=bare))) is None


def test_a_branch_has_a_lower_limit_than_a_trunk() -> None:
    trunk, branch = finding("duct-velocity", ducted(WIDE)), finding("duct-velocity", ducted(WIDE, WIDE))
    assert trunk is not None
    assert branch is not None
    assert branch.limit < trunk.limit


def test_one_outlet_is_not_out_of_balance() -> None:
    assert finding("branch-balance", ducted(WIDE)) is None


def test_grilles_of_other_spaces_are_left_alone() -> None:
    assert finding("grille-velocity-asleep", ducted(WIDE, use="head")) is None
    assert finding("grille-velocity-awake", ducted(WIDE, use="sleeping")) is None


def test_a_saloons_return_may_be_faster_than_a_sleeping_cabins() -> None:
    asleep = finding("return-grille-velocity", ducted(WIDE, return_area=0.06))
    awake = finding("return-grille-velocity", ducted(WIDE, use="saloon", return_area=0.06))
    assert asleep is not None
    assert awake is not None
    assert asleep.verdict is Verdict.FAILS
    assert awake.verdict is not Verdict.FAILS


def test_a_fan_without_pressure_fails() -> None:
    boat = ducted(WIDE, static_pressure=0.0)
    for name in ("duct-static-pressure", "airflow-delivered"):
        found = finding(name, boat)
        assert found is not None
        assert found.verdict is Verdict.FAILS


def test_the_dew_point_is_the_nights_highest() -> None:
    found = finding("ducts-dry", ducted(WIDE))
    assert found is not None
    assert found.limit == pytest.approx(boats.DAY.dew_point)
    assert not math.isnan(found.value)
