"""The picture of engine power over engine speed."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace
from typing import cast

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
from anchorwatt.assessment.engine_load import engine_loads
from anchorwatt.design.specification import Engine
from anchorwatt.drawings import engine_picture
from anchorwatt.sizing.regulator import regulator_sheets
from anchorwatt.units import System

HOSTILE = ("an engine & <its> name " * 10)[:200].strip()


def made(*engines: Engine, **changes: object) -> Assessment:
    boat = boats.boat(1, engines=engines, **changes)
    sheets = regulator_sheets(boat, tuple(50.0 for _ in engines))
    return cast(
        Assessment,
        SimpleNamespace(
            specification=boat, engine_loads=engine_loads(boat, sheets, lambda _: "typed"), cautions=fake.CAUTIONS
        ),
    )


ONE = made(boats.engine((boats.alternator(),)))
SMALL = made(boats.engine((boats.alternator(rated=250.0), boats.alternator("other", 250.0)), power=16e3))
BARE = made(boats.engine())
FOUR = made(*(boats.engine((boats.alternator(),), name=f"{HOSTILE} {n}") for n in range(4)), name=HOSTILE)
NONE = made()
ALL = pytest.mark.parametrize(
    "assessment", [ONE, SMALL, BARE, FOUR, NONE], ids=["one", "small", "no alternator", "four with names", "no engine"]
)


@ALL
@pytest.mark.parametrize("system", ["si", "us"])
def test_no_words_lie_over_others_or_outside(assessment: Assessment, system: System) -> None:
    assert_words_are_free(engine_picture(assessment, system))


@ALL
def test_nothing_leaves_the_sheet(assessment: Assessment) -> None:
    assert_lines_stay_on_the_sheet(engine_picture(assessment, "si"))


def test_the_belts_never_take_more_than_is_left() -> None:
    for assessment in (ONE, SMALL, FOUR):
        for load in assessment.engine_loads:
            assert all(point.belts <= point.left * (1.0 + 1e-9) for point in load.points)


def test_what_is_left_is_what_margin_and_propeller_leave() -> None:
    for point in ONE.engine_loads[0].points:
        assert point.left == pytest.approx(max(0.0, point.allowed - point.propeller))


def test_a_large_engine_never_holds_its_alternator_back_at_low_speed() -> None:
    load = ONE.engine_loads[0]
    assert all(first > load.charging_speed for first, _ in load.held)


def test_a_small_engine_holds_its_alternators_back() -> None:
    assert SMALL.engine_loads[0].held
    assert "the engine holds the alternators back" in " ".join(words(engine_picture(SMALL, "si")))


def test_an_engine_without_margin_gives_all_of_its_power() -> None:
    load = made(replace(boats.engine((boats.alternator(),)), margin=0.0)).engine_loads[0]
    assert all(point.allowed == point.gives for point in load.points)


def test_the_axis_follows_the_units_asked_for() -> None:
    assert "main engine: power at the crankshaft, hp" in words(engine_picture(ONE, "us"))
    assert "main engine: power at the crankshaft, kW" in words(engine_picture(ONE, "si"))


def test_the_charging_speed_is_marked() -> None:
    assert "charges at anchor at 1200 rpm" in words(engine_picture(ONE, "si"))


def test_a_boat_without_engines_is_told() -> None:
    assert words(engine_picture(NONE, "si"))[0].startswith("This boat has no engine")


def test_the_description_tells_what_cannot_be_seen() -> None:
    text = drawn(engine_picture(ONE, "si")).findtext("svg:desc", namespaces=NAMESPACE) or ""
    assert "at 2600 rpm it gives 110 kW" in text
