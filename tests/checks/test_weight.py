"""Every rule about weight: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Point, Specification
from tests.checks.cases import Case, finding
from tests.simulation import boats


def boat(*places: tuple[float, float, float, float], placed: bool = True) -> Specification:
    """Parts of so many kg at forward, starboard and up."""
    items = tuple(
        replace(
            boats.item(f"T{n}", "inverter", "part", 1, mass, math.nan, ""),
            position=Point(forward, starboard, up),
            placed=placed,
        )
        for n, (mass, forward, starboard, up) in enumerate(places)
    )
    return boats.boat(1, items=items)


FLOTATION = boats.boat(1).flotation
LEVEL = boat((100.0, FLOTATION, 0.0, -0.3))
HALF = replace(LEVEL, items=(*LEVEL.items, replace(LEVEL.items[0], tag="T9", placed=False)))

CASES = {
    "parts-have-a-place": Case(LEVEL, HALF),
    "heel-from-weight": Case(LEVEL, boat((300.0, FLOTATION, 1.5, 0.0))),
    "trim-from-weight": Case(LEVEL, boat((400.0, FLOTATION + 6.0, 0.0, 0.0))),
    "stability-height-kept": Case(LEVEL, boat((400.0, FLOTATION, 0.0, 3.0))),
}


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    found = finding(name, CASES[name].holds)
    assert found is not None
    assert found.verdict is Verdict.HOLDS


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    found = finding(name, CASES[name].fails)
    assert found is not None
    assert found.verdict is Verdict.FAILS


@pytest.mark.parametrize("name", CASES)
def test_places_that_nobody_gave_are_no_evidence(name: str) -> None:
    found = finding(name, boat((100.0, 6.0, 0.0, 0.0), placed=False))
    assert found is not None
    assert found.verdict is Verdict.CANNOT_TELL
    assert "places:" in found.note


@pytest.mark.parametrize("name", CASES)
def test_nothing_is_told_without_parts(name: str) -> None:
    assert finding(name, boats.boat(1)) is None


def test_a_boat_that_lies_over_fails() -> None:
    found = finding("heel-from-weight", boat((3000.0, FLOTATION, 2.0, 0.0)))
    assert found is not None
    assert found.verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.weight"} == set(CASES)
