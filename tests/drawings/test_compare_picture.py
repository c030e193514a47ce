"""The picture of several nights."""

from __future__ import annotations

import math

import numpy as np
import pytest
from tests.drawings.pictures import NAMESPACE, assert_lines_stay_on_the_sheet, assert_words_are_free, drawn, words
from tests.papers import fake

from anchorwatt.assessment import Assessment
from anchorwatt.assessment.cabin_plan import warmest_cooled_through
from anchorwatt.drawings import compare_picture
from anchorwatt.errors import OutOfRange
from anchorwatt.units import System

ROOMS = ("owner's cabin", "saloon")
HOSTILE = ("a boat & <its> name " * 10)[:200].strip()


def one(dawn: float, hours: float = 10.0) -> Assessment:
    return fake.assessment(headline=fake.answers(dawn=dawn), night=fake.night(ROOMS, hours, last=dawn))


TWO = [("as built", one(0.36)), ("larger bank", one(0.55, 8.0))]
FOUR = [(f"{HOSTILE} {n}", one(0.2 + 0.01 * n)) for n in range(4)]
UNCOOLED = [("a", fake.assessment(cabins=(fake.cabin("saloon", math.nan),))), ("b", fake.assessment(cabins=()))]
ALL = pytest.mark.parametrize("named", [TWO, FOUR, UNCOOLED], ids=["two", "four with names", "not cooled"])


@ALL
@pytest.mark.parametrize("system", ["si", "us"])
def test_no_words_lie_over_others_or_outside(named: list[tuple[str, Assessment]], system: System) -> None:
    assert_words_are_free(compare_picture(named, system))


@ALL
def test_nothing_leaves_the_sheet(named: list[tuple[str, Assessment]]) -> None:
    assert_lines_stay_on_the_sheet(compare_picture(named, "si"))


def test_the_title_tells_which_has_most_left() -> None:
    title = drawn(compare_picture(TWO, "si")).findtext("svg:title", namespaces=NAMESPACE)
    assert title == "larger bank has most left at dawn, 55 %; as built has least, 36 %"


def test_lines_are_not_told_apart_by_colour_alone() -> None:
    keys = [f"charge_pct.{n}" for n in range(4)]
    lines = drawn(compare_picture(FOUR, "si")).findall("svg:polyline", NAMESPACE)
    dashes = {line.get("data-key"): line.get("stroke-dasharray") for line in lines if line.get("data-key") in keys}
    assert len(set(dashes.values())) == 4


@pytest.mark.parametrize("count", [0, 1, 5])
def test_too_few_or_too_many_are_refused(count: int) -> None:
    with pytest.raises(OutOfRange, match="2 to 4"):
        compare_picture([TWO[0]] * count, "si")


def test_a_boat_without_cooling_is_told() -> None:
    assert "No cabin is cooled by night" in words(compare_picture(UNCOOLED, "si"))


def test_the_warmest_is_taken_row_by_row_of_the_cooled_ones() -> None:
    """The second cabin of the invented night is 0.05 K warmer all through."""
    night = fake.night(ROOMS)
    both = warmest_cooled_through((fake.cabin(ROOMS[0]), fake.cabin(ROOMS[1])), night)
    first = warmest_cooled_through((fake.cabin(ROOMS[0]), fake.cabin(ROOMS[1], math.nan)), night)
    assert np.allclose(both - first, 0.05)
