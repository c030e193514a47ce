"""Weight, heel and trim in words, and the reasons behind the figures."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.assessment.weight import WeightStory, depth_in_words, heel_in_words, trim_in_words, weight_story
from anchorwatt.design.specification import Point, TakenOut
from anchorwatt.sizing.weight import weight
from tests.simulation import boats

BANK = replace(
    boats.item("dc.bank.module", "battery_module", "module", 2, 60.0, math.nan, "", tag="G1"),
    position=Point(6.0, 0.6, -0.2),
    placed=True,
)


def story(*items: object, removed: tuple[TakenOut, ...] = ()) -> WeightStory:
    boat = boats.boat(1, items=items, removed=removed)
    return weight_story(boat, weight(boat), lambda _: "typed")


def test_every_answer_says_why() -> None:
    found = story(BANK)
    for answer in found.answers:
        assert answer.why.formula
        assert answer.why.source
        assert answer.why.inputs or answer.key == "taken_ashore_kg"
    assert {answer.key for answer in found.answers} >= {"heel_deg", "trim_cm", "sinkage_cm", "metacentric_height_m"}


def test_the_heel_says_when_places_are_guessed() -> None:
    notes = {answer.key: answer.note for answer in story(replace(BANK, placed=False)).answers}
    assert notes["heel_deg"].endswith("0.0 % of the mass has a place in the file")


def test_a_heel_beyond_the_formula_is_told() -> None:
    notes = {answer.key: answer.note for answer in story(replace(BANK, mass=3000.0)).answers}
    assert notes["heel_deg"] == "beyond 10°, where the formula ends"


def test_the_advice_names_the_part_its_way_and_its_side() -> None:
    assert "move G1 (2 × module) 0.60 m to port" in story(BANK).advice("si")[0]


def test_the_advice_says_how_high_and_how_far_from_amidships_the_sum_lies() -> None:
    words = story(BANK).advice("si")[1]
    assert "0.20 m under the waterline" in words
    assert "0.75 m from amidships" in words


def test_a_level_boat_is_left_alone() -> None:
    level = story(replace(BANK, position=Point(6.0, 0.0, 0.0)))
    assert level.advice("si")[0] == "The boat stays upright: no part needs to move."
    assert level.heel("si") == "no heel"


def test_what_has_no_place_cannot_be_moved() -> None:
    assert "name some under places:" in story(replace(BANK, placed=False)).advice("si")[0]


def test_nothing_to_move_with_the_old_bank_gone() -> None:
    """A part of 2 kg does not level 300 kg taken out a metre off."""
    light = replace(BANK, count=1, mass=2.0)
    found = story(light, removed=(TakenOut("old bank", 300.0, Point(6.0, 1.0, 0.0), True),))
    assert "Together: G1" in found.advice("si")[0]
    assert found.finding("si").startswith("With 298 kg less aboard the boat heels")


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        (heel_in_words(math.radians(0.5), "si"), "0.5° to starboard"),
        (heel_in_words(-math.radians(2.0), "us"), "2.0° to port"),
        (heel_in_words(0.0, "si"), "none"),
        (heel_in_words(math.nan, "si"), "beyond 10°"),
        (trim_in_words(0.031, "si"), "31 mm by the bow"),
        (trim_in_words(-0.0254, "us"), "1.00 in by the stern"),
        (trim_in_words(1e-4, "si"), "none"),
        (depth_in_words(-0.02, "si"), "20 mm higher"),
        (depth_in_words(0.02, "si"), "20 mm deeper"),
        (depth_in_words(0.0, "si"), "as before"),
    ],
)
def test_sides_and_ends_are_named(words: str, expected: str) -> None:
    assert words == expected


def test_stiffness_is_told_for_an_inch_where_feet_are_used() -> None:
    assert "1 in;" in story(BANK).stiffness("us")
    assert "lb·ft" in story(BANK).stiffness("us")
    assert "1 cm;" in story(BANK).stiffness("si")
