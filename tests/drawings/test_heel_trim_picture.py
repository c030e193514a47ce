"""The picture of heel and trim."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace
from typing import Any, cast

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.drawings.pictures import (
    NAMESPACE,
    assert_lines_stay_on_the_sheet,
    assert_words_are_free,
    drawn,
    words,
)
from tests.papers import fake
from tests.simulation import boats

from anchorwatt.assessment import Assessment
from anchorwatt.assessment.weight import weight_story
from anchorwatt.design.specification import Item, Point, TakenOut
from anchorwatt.drawings import heel_trim_picture
from anchorwatt.drawings.heel_trim_picture import exaggeration
from anchorwatt.sizing.weight import weight
from anchorwatt.units import System

OLD = TakenOut("replaced bank: an old one", 300.0, Point(3.0, 0.8, -0.2), True)


def part(tag: str, mass: float, starboard: float, forward: float = 6.0, up: float = 0.0) -> Item:
    item = boats.item(tag, "inverter", f"part with a name {tag}", 1, mass, math.nan, "")
    return replace(item, position=Point(forward, starboard, up), placed=tag != "T2")


def made(*items: Item, removed: tuple[TakenOut, ...] = (), **changes: object) -> Assessment:
    boat = boats.boat(1, items=items, removed=removed, **changes)
    story = weight_story(boat, weight(boat), lambda _: "typed")
    return cast(Assessment, SimpleNamespace(specification=boat, weight=story, cautions=fake.CAUTIONS))


PLAIN = made(part("G1", 130.0, 0.4), part("T1", 30.0, -1.0, 4.0, 1.0), part("T2", 8.0, 0.2, 11.0, 2.5))
MANY = made(*(part(f"T{n}", 10.0 + n, 0.1 * n - 1.0, 1.0 + 0.5 * n) for n in range(20)), removed=(OLD,))
TWO_HULLS = made(part("G1", 130.0, 2.8), part("T1", 30.0, -2.8), hulls=2, beam=7.2, hull_beam=1.4)
OVER = made(part("G1", 3000.0, 2.0))
NONE = made()
ALL = pytest.mark.parametrize(
    "assessment", [PLAIN, MANY, TWO_HULLS, OVER, NONE], ids=["plain", "many", "two hulls", "lies over", "no part"]
)


@ALL
@pytest.mark.parametrize("system", ["si", "us"])
def test_no_words_lie_over_others_or_outside(assessment: Assessment, system: System) -> None:
    assert_words_are_free(heel_trim_picture(assessment, system))


@ALL
def test_nothing_leaves_the_sheet(assessment: Assessment) -> None:
    assert_lines_stay_on_the_sheet(heel_trim_picture(assessment, "si"))


def test_the_title_states_the_finding() -> None:
    assert words(heel_trim_picture(PLAIN, "si"))[0].startswith(
        "With 168 kg more aboard the boat heels 0.1° to starboard"
    )


def test_exaggeration_is_told() -> None:
    found = " ".join(words(heel_trim_picture(PLAIN, "si")))
    assert "drawn 50 times" in found


def test_a_boat_that_floats_as_before_is_drawn_as_it_is() -> None:
    assert "drawn" not in " ".join(words(heel_trim_picture(NONE, "si")))


def points(picture: str, key: str) -> list[list[tuple[float, float]]]:
    shapes = [
        shape
        for name in ("polygon", "polyline")
        for shape in drawn(picture).findall(f"svg:{name}", NAMESPACE)
        if shape.get("data-key") == key
    ]
    return [
        [cast(Any, tuple(float(part) for part in pair.split(","))) for pair in (one.get("points") or "").split()]
        for one in shapes
    ]


def test_the_hull_leans_to_the_heavy_side() -> None:
    """The first corner of the section is the starboard gunwale, the last the port one."""
    section = points(heel_trim_picture(PLAIN, "si"), "hull")[0]
    assert section[0][1] > section[-1][1]


def test_a_heavier_part_is_a_larger_disc() -> None:
    def width(tag: str) -> float:
        across = [x for x, _ in points(heel_trim_picture(PLAIN, "si"), tag)[0]]
        return max(across) - min(across)

    assert width("G1") > width("T1")


def test_a_part_to_starboard_is_drawn_to_the_right() -> None:
    left, right = (points(heel_trim_picture(PLAIN, "si"), tag)[0][0][0] for tag in ("T1", "G1"))
    assert left < right


def test_the_description_tells_what_cannot_be_seen() -> None:
    text = drawn(heel_trim_picture(MANY, "si")).findtext("svg:desc", namespaces=NAMESPACE) or ""
    assert "replaced bank: an old one, 300 kg taken out, 0.80 m to starboard" in text


@given(st.floats(1e-4, 0.5))
def test_an_angle_is_never_drawn_beyond_the_largest(angle: float) -> None:
    times = exaggeration(angle, 0.2)
    assert times >= 1.0
    assert times == 1.0 or angle * times <= 0.2
