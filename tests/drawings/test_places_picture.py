"""The picture of where everything stands."""

from __future__ import annotations

import math
from dataclasses import replace
from types import SimpleNamespace
from typing import cast
from xml.etree import ElementTree

import pytest
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
from anchorwatt.assessment.places import place_keys, places_story
from anchorwatt.assessment.weight import weight_story
from anchorwatt.design.specification import Item, Point, TakenOut
from anchorwatt.drawings import places_picture
from anchorwatt.sizing.weight import weight
from anchorwatt.units import System

OLD = TakenOut("replaced bank: an old one", 300.0, Point(3.0, 0.8, -0.2), True)
HOSTILE = ("a part & <its> name " * 10)[:200].strip()


def part(tag: str, mass: float, starboard: float, forward: float = 6.0, up: float = 0.0, name: str = "") -> Item:
    item = boats.item(tag, "inverter", name or f"part with a name {tag}", 1, mass, math.nan, "")
    return replace(item, position=Point(forward, starboard, up), placed=tag != "T2")


def made(*items: Item, **changes: object) -> Assessment:
    boat = boats.boat(1, items=items, **changes)
    figures = weight(boat)
    return cast(
        Assessment,
        SimpleNamespace(
            specification=boat,
            weight=weight_story(boat, figures, lambda _: "typed"),
            places=places_story(boat, figures, {"G1": object()}, lambda _: "typed"),
            cautions=fake.CAUTIONS,
        ),
    )


PLAIN = made(
    part("G1", 130.0, 0.4), part("T1", 30.0, -1.0, 4.0, 1.0), part("T2", 8.0, 0.2, 11.0, 2.5), part("V1", 0.5, 0.0)
)
HEAP = made(*(part(f"T{n}", 10.0 + n, 0.3) for n in range(30)), removed=(OLD,), spaces=(boats.space(),))
NAMES = made(
    *(part(f"T{n}", 10.0 + n, 0.3 * n - 2.0, n, name=HOSTILE) for n in range(12)),
    name=HOSTILE,
    spaces=(replace(boats.space(), name=HOSTILE),),
)
TWO_HULLS = made(part("G1", 130.0, 2.8), part("T1", 30.0, -2.8), hulls=2, beam=7.2, hull_beam=1.4)
ALOFT = made(part("T1", 30.0, 2.19, 13.9, 8.0), part("T3", 400.0, -2.2, -1.0, -0.7))
NONE = made()
ALL = pytest.mark.parametrize(
    "assessment",
    [PLAIN, HEAP, NAMES, TWO_HULLS, ALOFT, NONE],
    ids=["plain", "a heap", "names", "two hulls", "aloft", "no part"],
)


@ALL
@pytest.mark.parametrize("system", ["si", "us"])
def test_no_words_lie_over_others_or_outside(assessment: Assessment, system: System) -> None:
    assert_words_are_free(places_picture(assessment, system))


@ALL
def test_nothing_leaves_the_sheet(assessment: Assessment) -> None:
    assert_lines_stay_on_the_sheet(places_picture(assessment, "si"))


def marks(picture: str, key: str) -> dict[str, ElementTree.Element]:
    """The marks of a part, by view."""
    return {
        shape.get("data-view", ""): shape
        for shape in drawn(picture).iter()
        if shape.get("data-key") == key and shape.get("data-view")
    }


def test_every_part_is_marked_in_both_views() -> None:
    assert set(marks(places_picture(PLAIN, "si"), "places.V1")) == {"plan", "profile"}


@pytest.mark.parametrize(("view", "second", "sign"), [("plan", "starboard", 1.0), ("profile", "up", -1.0)])
def test_a_page_can_turn_a_point_of_the_sheet_into_metres(view: str, second: str, sign: float) -> None:
    root = drawn(places_picture(PLAIN, "si"))
    mark = marks(places_picture(PLAIN, "si"), "places.T1")[view]

    def read(element: ElementTree.Element, name: str) -> float:
        return float(element.get(f"data-{name}", "nan"))

    scale = read(root, "scale")
    forward = (read(mark, "x") - read(root, f"{view}-origin-x")) / scale
    other = sign * (read(mark, "y") - read(root, f"{view}-origin-y")) / scale
    assert forward == pytest.approx(read(mark, "forward"), abs=1e-3)
    assert other == pytest.approx(read(mark, second), abs=1e-3)


def test_a_heavier_part_is_a_larger_disc() -> None:
    def width(key: str) -> float:
        points = (marks(places_picture(PLAIN, "si"), key)["plan"].get("points") or "").split()
        across = [float(point.split(",")[0]) for point in points]
        return max(across) - min(across)

    assert width("places.G1") > width("places.T1")


def test_the_lightest_are_dots_that_the_foot_names() -> None:
    found = words(places_picture(PLAIN, "si"))
    assert "V1" not in found
    assert "Dots without a tag, the lightest: V1." in " ".join(found)


def test_the_title_states_the_finding() -> None:
    assert words(places_picture(PLAIN, "si"))[0].startswith("With 168 kg more aboard the boat heels")


def test_what_is_taken_ashore_leads_to_its_place() -> None:
    assert set(marks(places_picture(HEAP, "si"), "places.replaced bank")) == {"plan", "profile"}


def test_the_centre_of_gravity_moves_toward_what_is_added() -> None:
    """Mean by mass of the boat where it was and one part: 170 kg in 17 170 kg, one metre off, move it 9.9 mm."""
    boat = made(part("G1", 170.0, 1.0, 5.9, 0.4))
    places = boat.places
    assert places.gravity_after.starboard == pytest.approx(170.0 / 17_170.0)
    assert places.gravity_after.forward == pytest.approx(places.gravity_before.forward)
    assert places.gravity_after.up == pytest.approx(places.gravity_before.up)


def on_engine(tag: str, kind: str) -> Item:
    key = f"charging.engines.main.alternators.port.{kind}"
    return replace(boats.item(key, kind, kind, 1, 5.0, math.nan, ""), tag=tag)


def test_the_key_of_a_place_is_that_of_the_file_else_the_tag() -> None:
    items = (part("T1", 5.0, 0.0), part("T2", 5.0, 0.0))
    assert place_keys(items, {"T1": object()}) == {"T1": "places.T1", "T2": "places.T2"}


def test_what_hangs_on_a_placed_engine_is_moved_with_it() -> None:
    items = (on_engine("G2", "alternator"), on_engine("V1", "belt"))
    assert place_keys(items, {"engine main": object()}) == {"G2": "places.engine main", "V1": "places.engine main"}


def test_a_belt_is_moved_with_its_alternator() -> None:
    items = (on_engine("G2", "alternator"), on_engine("V1", "belt"))
    assert place_keys(items, {"G2": object()})["V1"] == "places.G2"


def test_the_description_tells_what_cannot_be_seen() -> None:
    text = drawn(places_picture(HEAP, "si")).findtext("svg:desc", namespaces=NAMESPACE) or ""
    assert "replaced bank: an old one, 300 kg taken ashore" in text
