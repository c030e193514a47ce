"""Who comes out better, point by point."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.assessment.generator import Better, Point, by_night, generator_story, points
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.generator import GeneratorComparison
from tests.sizing.test_generator import SET, boat, found, night

HOUR = 3600.0


def point(key: str, comparison: GeneratorComparison, hold: float = 12 * HOUR) -> Point:
    (one,) = [one for one in points(comparison, hold) if one.key == key]
    return one


def test_a_story_needs_a_set() -> None:
    assert generator_story(boat(None), Simulation(boat(None))) is None


def test_the_story_has_its_cautions_and_its_hold() -> None:
    story = generator_story(boat(), night())
    assert story is not None
    assert any("carbon monoxide" in words for words in story.cautions)
    on_end = next(one for one in story.points if one.key == "on-end")
    assert on_end.design == pytest.approx(float(night().hold.summary.reserve_at[0]))


@given(st.floats(0.0, 40e3), st.floats(0.0, 40e3))
def test_the_cheaper_is_the_better_and_a_few_percent_are_no_difference(design: float, other: float) -> None:
    made = point("price", replace(found(), bank_price=design, generator=replace(SET, price=other)))
    if abs(design - other) <= 0.02 * max(design, other):
        assert made.better is Better.NEITHER
    else:
        assert made.better is (Better.DESIGN if design < other else Better.SET)


@pytest.mark.parametrize("price", [(math.nan, 1e4), (1e4, math.nan), (math.nan, math.nan)])
def test_what_is_not_known_wins_nothing(price: tuple[float, float]) -> None:
    made = point("price", replace(found(), bank_price=price[0], generator=replace(SET, price=price[1])))
    assert made.better is Better.CANNOT_TELL


def test_cooling_on_end_is_always_the_sets() -> None:
    assert point("on-end", found(), 48 * HOUR).better is Better.SET


def test_the_set_is_told_by_its_better_way() -> None:
    comparison = found()
    sets = [comparison.fuel_per_year(way) for way in comparison.ways if way.generator]
    assert point("fuel-staying", comparison).set == min(sets)
    assert point("services", comparison).set == min(
        comparison.service_price_per_year(way) for way in comparison.ways if way.generator
    )


def test_a_boat_that_never_motors_is_not_asked_about_moving() -> None:
    assert "fuel-moving" not in {one.key for one in points(found(stays=True), HOUR)}
    assert {"fuel-moving", "fuel-staying"} <= {one.key for one in points(found(), HOUR)}


def test_only_a_set_that_runs_all_night_runs_while_people_sleep() -> None:
    assert [way.key for way in by_night(found())] == ["all-night"]
