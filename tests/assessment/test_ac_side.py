"""The answers of the AC side: each can say why."""

from __future__ import annotations

import math

import pytest

from anchorwatt.assessment.ac_side import AcSideStory
from anchorwatt.papers.keys import unit_of
from anchorwatt.units import DIMENSIONS
from tests.starters import STARTERS, assessed


@pytest.fixture(params=STARTERS)
def story(request: pytest.FixtureRequest) -> AcSideStory:
    return assessed(str(request.param)).ac_side


def test_every_answer_says_why(story: AcSideStory) -> None:
    for answer in story.answers:
        assert answer.why.formula
        assert answer.why.source
        assert answer.why.changes_it
        assert answer.why.inputs
        assert {one.basis for one in answer.why.inputs} <= {"typed", "catalogue", "estimated", "computed"}
        assert unit_of(answer.key) == answer.unit
        assert answer.dimension in DIMENSIONS


def test_no_key_is_there_twice(story: AcSideStory) -> None:
    assert len({answer.key for answer in story.answers}) == len(story.answers)


def test_the_trawler_answers_for_its_transformer_and_typed_inrush() -> None:
    answers = {answer.key: answer for answer in assessed("trawler-14m").ac_side.answers}
    inputs = {one.name: one for one in answers["transformer_inrush_A"].why.inputs}
    assert inputs["inrush over the rated peak"].basis == "typed"
    assert "borne" in answers["transformer_inrush_A"].note


def test_the_catamaran_answers_for_its_sun() -> None:
    answers = {answer.key: answer for answer in assessed("catamaran-13m").ac_side.answers}
    assert answers["solar_day_kWh"].value > 5.0 * 3.6e6
    assert "transformer_inrush_A" not in answers


def test_shore_refills_every_starter_overnight(story: AcSideStory) -> None:
    (refill,) = [answer for answer in story.answers if answer.key == "shore_refill_hours"]
    assert not math.isnan(refill.value)
    assert refill.value < 10.0 * 3600.0
