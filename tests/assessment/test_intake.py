"""Sizes that an intake finds by assessing candidates."""

from __future__ import annotations

import functools
from typing import Any

import pytest

from anchorwatt.assessment import Assessment, assess, intake
from anchorwatt.assessment.intake import FirstDesign, Stopped, first_design
from anchorwatt.checks import Verdict
from anchorwatt.design import parse
from anchorwatt.design.intake import read_intake

INTAKES: dict[str, dict[str, Any]] = {
    "trawler": {
        "name": "Sea Holly",
        "form": "displacement trawler",
        "length": "46 ft",
        "sleeping": 3,
        "heads": 2,
        "pilothouse": True,
        "engine": "slow diesel 90 kW",
        "shore": "120/240 V 50 A",
        "climate": "Miami, hottest night of a typical year",
    },
    "catamaran": {
        "name": "Two Gannets",
        "form": "catamaran",
        "length": "13 m",
        "sleeping": 4,
        "heads": 2,
        "galley": False,
        "engine": "diesel 30 kW",
        "engines": 2,
        "shore": "230 V 32 A",
        "climate": "Caribbean",
    },
    "cutter": {
        "name": "Small Hours",
        "form": "sailing monohull",
        "length": "11 m",
        "engine": "diesel 30 kW",
        "shore": "230 V 16 A",
        "hold": "8 h",
        "temperature": "26 °C",
    },
}
BOATS = pytest.mark.parametrize("boat", INTAKES)


@functools.cache
def made(boat: str) -> tuple[FirstDesign, Assessment]:
    first = first_design(read_intake(INTAKES[boat]))
    return first, assess(parse(first.text))


@BOATS
def test_the_bank_holds_what_was_asked_for(boat: str) -> None:
    _, assessment = made(boat)
    assert assessment.answer("hold_hours").value >= assessment.specification.brief.hold


@BOATS
def test_the_alternators_recharge_in_time(boat: str) -> None:
    _, assessment = made(boat)
    assert assessment.answer("engine_hours_to_recharge").value <= assessment.specification.brief.recharge


@BOATS
def test_the_cooled_cabins_are_cool(boat: str) -> None:
    _, assessment = made(boat)
    (cool,) = [one for one in assessment.checks if one.id == "cabins-cool-at-night"]
    assert cool.verdict in (Verdict.HOLDS, Verdict.NEAR)


@BOATS
def test_what_fails_and_nothing_else_stands_at_the_head(boat: str) -> None:
    first, assessment = made(boat)
    failing = [one.question for one in assessment.checks if one.verdict is Verdict.FAILS]
    told = [line for line in first.text.splitlines() if line.startswith("# - A check fails: ")]
    assert len(told) == len(failing)
    for question in failing:
        assert any(question in line for line in told)


def test_it_can_be_stopped_at_any_step() -> None:
    with pytest.raises(Stopped):
        first_design(read_intake(INTAKES["cutter"]), lambda words: "bank" not in words)


def test_a_night_that_no_bank_holds_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(intake, "TRIES", 2)  # the smallest and the largest that there is say it
    wish = {**INTAKES["cutter"], "voltage": "12 V", "hold": "23 h", "temperature": "18 °C", "climate": "Arabian Gulf"}
    first = first_design(read_intake(wish))
    assert any("hold" in one for one in first.fails)
