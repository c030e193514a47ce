"""Every rule about parts in spaces: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Item, Space, Specification
from tests.checks.cases import Case, finding
from tests.simulation import boats


def part(kind: str, tag: str, **changes: object) -> Item:
    made = boats.item(f"key.{tag}", kind, f"an invented {kind}", 1, 10.0, math.nan, "", cabin=0, tag=tag)
    sized = replace(
        made,
        space=0,
        size=(0.30, 0.20, 0.40),
        clearance=0.05,
        service="front",
        upright=True,
        highest_air=60.0,
    )
    return replace(sized, **changes)  # type: ignore[arg-type]


def boat(space: Space, *items: Item, full_to: float = 60.0) -> Specification:
    made = boats.boat(1)
    inverter = replace(made.inverter, full_to=full_to, highest_air=full_to + 5.0, derating=0.2)
    return replace(made, spaces=(space,), items=items, inverter=inverter)


INVERTER, CHARGER = part("inverter", "T1"), part("charger", "T2")
FITS = boat(boats.space(), INVERTER, CHARGER)
NARROW = boats.space(size=(0.35, 0.9, 0.5), opening=(0.34, 0.40))

CASES = {
    "goes-through-opening": Case(FITS, boat(boats.space(opening=(0.35, 0.38)), INVERTER)),
    "fits-in-space": Case(FITS, boat(boats.space(size=(0.60, 0.30, 0.60), opening=(0.5, 0.5)), INVERTER, CHARGER)),
    "serviceable": Case(FITS, boat(NARROW, part("inverter", "T1", size=(0.8, 0.25, 0.4), clearance=0.0))),
    "space-cool-enough": Case(FITS, boat(boats.space(airflow=0.0), replace(INVERTER, highest_air=20.0), full_to=20.0)),
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
    assert "T1" in found.note


@pytest.mark.parametrize("name", CASES)
def test_nothing_is_told_without_parts_in_spaces(name: str) -> None:
    assert finding(name, boat(boats.space(), replace(INVERTER, space=-1))) is None


@pytest.mark.parametrize("name", ["goes-through-opening", "fits-in-space", "serviceable"])
def test_a_part_without_a_size_cannot_be_told(name: str) -> None:
    found = finding(name, boat(boats.space(), INVERTER, part("charger", "T2", size=(math.nan,) * 3)))
    assert found is not None
    assert found.verdict is Verdict.CANNOT_TELL
    assert "T2" in found.note


def test_a_tight_opening_is_near() -> None:
    found = finding("goes-through-opening", boat(boats.space(opening=(0.7, 0.405)), INVERTER))
    assert found is not None
    assert found.verdict is Verdict.NEAR
    assert found.value == pytest.approx(0.005)


def test_a_part_that_derates_and_still_gives_what_is_asked_is_near() -> None:
    made = boat(boats.space(), replace(INVERTER, highest_air=33.0))
    gentle = replace(made.inverter, full_to=33.0, highest_air=65.0, derating=0.015)
    found = finding("space-cool-enough", replace(made, inverter=gentle))
    assert found is not None
    assert found.verdict is Verdict.NEAR
    assert "which is enough" in found.note


def test_a_space_in_no_compartment_cannot_be_told() -> None:
    found = finding("space-cool-enough", boat(boats.space(cabin=-1), INVERTER))
    assert found is not None
    assert found.verdict is Verdict.CANNOT_TELL


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.fit"} == set(CASES)
