"""The picture of the cabins in plan."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from types import SimpleNamespace
from typing import cast

import numpy as np
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
from anchorwatt.assessment.cabin_plan import boat_at
from anchorwatt.assessment.records import Column, Table
from anchorwatt.design.specification import Cabin, Point
from anchorwatt.drawings import cabin_plan_picture
from anchorwatt.drawings.cabin_shapes import layers
from anchorwatt.errors import OutOfRange
from anchorwatt.units import System

MINUTES = 600


def cabin(
    name: str, forward: float, starboard: float = 0.0, floor: float = 6.0, deck: str = "below", use: str = "sleeping"
) -> Cabin:
    made = boats.cabin(name, use, floor)
    return replace(made, deck=deck, length=floor / 3.0, centre=Point(forward, starboard, 0.5))


def made(cabins: Sequence[Cabin], airs: Sequence[float] = (), cooled: bool = True, **changes: object) -> Assessment:
    """Each cabin half a kelvin warmer than the one before, where nothing else is said."""
    plan = boats.plan(len(cabins), 2, 24.0 if cooled else math.nan)
    boat = replace(boats.boat(1, plan=plan, **changes), cabins=tuple(cabins))
    flat = np.ones(MINUTES)
    columns = [
        Column("outdoor_temperature_C", "outdoor air", "temperature", 27.0 * flat),
        Column("sea_temperature_C", "seawater", "temperature", 29.0 * flat),
    ]
    for number, one in enumerate(cabins):
        air = airs[number] if airs else 23.0 + 0.5 * number
        columns.append(Column(f"air_temperature_C.{one.name}", one.name, "temperature", air * flat))
        columns.append(Column(f"relative_humidity_pct.{one.name}", one.name, "share", 0.55 * flat))
    clock = 21.0 * 3600.0 + 60.0 * np.arange(1, MINUTES + 1, dtype=np.float64)
    table = Table("night", clock, tuple(columns))
    day = replace(table, name="day", clock=clock + 10.0 * 3600.0)
    return cast(Assessment, SimpleNamespace(specification=boat, night=table, day=day, cautions=fake.CAUTIONS))


LONG = "a cabin & <its> name "
HOSTILE = (LONG * 10)[:200].strip()
ROW = [cabin("forward cabin", 10.5), cabin("saloon", 7.0, floor=11.0), cabin("aft cabin", 2.5)]
PLAIN = made(ROW, (24.2, 28.4, 24.6))
MANY = made([cabin(f"cabin {n} with a name", 0.8 + 1.0 * n, (-1.0) ** n) for n in range(12)])
TINY = made([cabin(f"locker {n}", 1.0 + n, 0.0, 0.3) for n in range(12)])
HEAP = made([cabin(f"cabin {n}", 6.0) for n in range(4)])
NAMES = made([cabin(f"{HOSTILE} {n}", 2.0 + 2.5 * n) for n in range(4)], name=HOSTILE)
NONE = made([])
TWO_HULLS = made(
    [cabin("port cabin", 8.0, -2.8), cabin("starboard cabin", 8.0, 2.8), cabin("saloon", 6.0, 0.0, 20.0, "main")],
    hulls=2,
    beam=7.2,
    hull_beam=1.4,
)
LARGE = made([cabin("hall", 6.0, floor=400.0)])
ALL = pytest.mark.parametrize(
    "assessment",
    [PLAIN, MANY, TINY, HEAP, NAMES, NONE, TWO_HULLS, LARGE],
    ids=["plain", "many", "tiny", "heap", "names", "no cabin", "two hulls", "larger than the boat"],
)


@ALL
@pytest.mark.parametrize("system", ["si", "us"])
def test_no_words_lie_over_others_or_outside(assessment: Assessment, system: System) -> None:
    assert_words_are_free(cabin_plan_picture(assessment, 299, system))


@ALL
def test_nothing_leaves_the_sheet(assessment: Assessment) -> None:
    assert_lines_stay_on_the_sheet(cabin_plan_picture(assessment, 299, "si"))


@ALL
def test_every_cabin_has_one_shape_that_leads_to_its_field(assessment: Assessment) -> None:
    keys = [
        shape.get("data-key")
        for shape in drawn(cabin_plan_picture(assessment, 0, "si")).iter()
        if "points" in shape.attrib
    ]
    wanted = sorted(f"cabins.{one.name}" for one in assessment.specification.cabins)
    assert sorted(key for key in keys if key and key.startswith("cabins.")) == wanted


def test_the_title_names_the_warmest_cabin() -> None:
    title = drawn(cabin_plan_picture(PLAIN, 299, "si")).findtext("svg:title", namespaces=NAMESPACE)
    assert title == "At 02:00 the warmest cabin is saloon, 28.4\u00a0°C, cooled to 24.0\u00a0°C"


def test_an_engine_room_is_no_cabin_to_be_warmest() -> None:
    boat = made([*ROW, cabin("engine room", 4.0, floor=3.0, use="machinery")], (24.0, 25.0, 26.0, 41.0))
    assert "the warmest cabin is aft cabin" in " ".join(words(cabin_plan_picture(boat, 0, "si")))


def test_a_design_without_cabins_is_told() -> None:
    assert "no cabins" in words(cabin_plan_picture(NONE, 0, "si"))[0]


def test_each_temperature_is_written_in_its_cabin() -> None:
    found = " ".join(words(cabin_plan_picture(PLAIN, 0, "si")))
    for reading in ("24.2 °C", "28.4 °C", "24.6 °C"):
        assert reading in found


def test_temperatures_follow_the_units_asked_for() -> None:
    assert "83 °F · 55 %" in words(cabin_plan_picture(PLAIN, 0, "us"))


def test_who_sleeps_where_is_told() -> None:
    assert "cooled to 24.0 °C · 2 people" in words(cabin_plan_picture(PLAIN, 299, "si"))


def test_the_day_is_drawn_from_its_own_table() -> None:
    """Its first minute ends ten hours after that of the night, at 07:01, when nothing is cooled."""
    found = words(cabin_plan_picture(PLAIN, 0, "si", "day"))
    assert found[0].startswith("At 07:01")
    assert any("none is cooled" in one for one in found)


def test_a_warmer_cabin_has_another_colour_and_the_same_warmth_the_same() -> None:
    boat = made(ROW, (24.0, 28.0, 24.0))
    fills = [
        shape.get("fill")
        for shape in drawn(cabin_plan_picture(boat, 0, "si")).findall("svg:polygon", NAMESPACE)
        if (shape.get("data-key") or "").startswith("cabins.")
    ]
    assert fills[0] == fills[2] != fills[1]


@pytest.mark.parametrize("row", [-1, MINUTES])
def test_a_row_that_there_is_not_is_refused(row: int) -> None:
    with pytest.raises(OutOfRange, match="from 0 to 599"):
        cabin_plan_picture(PLAIN, row, "si")


def test_the_description_tells_what_cannot_be_seen() -> None:
    text = drawn(cabin_plan_picture(PLAIN, 0, "si")).findtext("svg:desc", namespaces=NAMESPACE) or ""
    assert "saloon: 28.4 °C, 55 % humidity, cooled to 24.0 °C" in text


def area(outline: list[tuple[float, float]]) -> float:
    turned = zip(outline, [*outline[1:], outline[0]], strict=True)
    return abs(sum(a * d - b * c for (a, b), (c, d) in turned)) / 2


def test_floors_are_drawn_with_their_area() -> None:
    """Shoelace formula."""
    boat, cabins = PLAIN.specification, boat_at(PLAIN.specification, PLAIN.night, 0).cabins
    for floor in (floor for layer in layers(boat, cabins) for floor in layer):
        if floor.whole:
            assert area(floor.outline) == pytest.approx(floor.cabin.floor_area, rel=0.03)


def test_cabins_at_one_place_are_drawn_apart() -> None:
    boat, cabins = HEAP.specification, boat_at(HEAP.specification, HEAP.night, 0).cabins
    assert [len(layer) for layer in layers(boat, cabins)] == [1, 1, 1, 1]
