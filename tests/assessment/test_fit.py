"""What fits, in words."""

from __future__ import annotations

import math

import pytest

from anchorwatt.assessment.fit import FitStory, fit_story
from anchorwatt.design.specification import Specification
from tests.checks.found import Told, evidence
from tests.checks.holds_and_fails.fit import CASES, CHARGER, FITS, INVERTER, boat, part
from tests.simulation import boats


def story(it: Specification | Told) -> FitStory:
    found = evidence(it)
    return fit_story(found.fit, tuple(cabin.name for cabin in found.specification.cabins))


def test_all_is_well() -> None:
    found = story(FITS)
    assert "All 2 parts" in found.finding()
    assert [part.misses("si") for part in found.parts] == [(), ()]
    assert "an arrangement is found" in found.spaces[0].room("si")


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("goes-through-opening", "the opening is 20 mm too small"),
        ("fits-in-space", "no room beside its neighbours"),
        ("serviceable", "cannot be reached, not even by itself"),
        ("space-cool-enough", "too warm for its full rating: it gives 0"),
    ],
)
def test_what_is_short_is_told_with_by_how_much(name: str, words: str) -> None:
    found = story(CASES[name].fails)
    assert "do not fit" in found.finding()
    assert any(words in told for told in found.parts[0].misses("si"))
    assert found.parts[0].verdict == "no"


def test_a_space_that_is_too_small_says_how_much_larger_it_must_be() -> None:
    (space,) = story(CASES["fits-in-space"].fails).spaces
    assert "there is no arrangement" in space.room("si")
    assert "mm wider it would hold them" in space.room("si")
    assert "in wider it would hold them" in space.room("us")


def test_how_much_air_would_do() -> None:
    shut = boats.space(airflow=0.0)
    around = story(boat(shut, INVERTER)).spaces[0].fit.heat.around
    short = story(boat(shut, part("inverter", "T1", highest_air=around + 2.0))).parts[0]
    assert short.fit.spare < 0.0
    assert "of air would do" in " ".join(short.misses("si"))
    past = story(boat(shut, part("inverter", "T1", highest_air=around - 2.0))).parts[0]
    assert "no airflow helps" in " ".join(past.misses("si"))


def test_a_part_without_a_size_says_so() -> None:
    found = story(boat(boats.space(), part("charger", "T2", size=(math.nan,) * 3)))
    assert found.parts[0].verdict == "size unknown"
    assert "its size is not in the catalogue" in found.parts[0].misses("si")[0]


def test_a_file_without_spaces_says_what_to_write() -> None:
    made = boats.boat(1, items=(part("charger", "T2", space=-1),))
    found = story(made)
    assert "spaces:" in found.finding()
    assert found.loose == ()


def test_a_file_that_puts_nothing_anywhere_says_what_to_write() -> None:
    found = story(boat(boats.space(), part("charger", "T2", space=-1)))
    assert "space: NAME" in found.finding()
    ((item, places),) = found.loose
    assert item.tag == CHARGER.tag
    assert places[0].space.name == "locker"
    assert found.spaces[0].room("si") == "empty"
