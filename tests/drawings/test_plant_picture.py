from __future__ import annotations

from dataclasses import replace

import pytest
from tests.drawings.pictures import NAMESPACE, assert_lines_stay_on_the_sheet, assert_words_are_free, drawn, words
from tests.papers import fake
from tests.simulation import boats

from anchorwatt.assessment import Assessment
from anchorwatt.assessment.plant import LOADS, SEAS, PlantMap, plant_points
from anchorwatt.drawings import plant_picture
from anchorwatt.simulation.plants import shared_plant, shared_plant_heating
from anchorwatt.units import System


def real() -> PlantMap:
    made = boats.plant(boats.circuit(), (boats.handler("one", 0, 9000.0),))
    return plant_points(made, shared_plant(made), shared_plant_heating(made))


PLAIN = fake.assessment()
WHOLE = fake.assessment(plant=real())
LONG = fake.assessment(plant=replace(real(), name="a condensing unit that its owner gave a very long name " * 3))


@pytest.mark.parametrize("assessment", [PLAIN, WHOLE, LONG], ids=["plain", "whole", "long name"])
@pytest.mark.parametrize("system", ["si", "us"])
def test_nothing_lies_over_others_or_outside(assessment: Assessment, system: System) -> None:
    picture = plant_picture(assessment, system)
    assert_words_are_free(picture)
    assert_lines_stay_on_the_sheet(picture)


def test_every_load_and_some_seas_have_a_line() -> None:
    picture = drawn(plant_picture(WHOLE, "si"))
    keys = {line.get("data-key") for line in picture.findall("svg:polyline", NAMESPACE)}
    assert {f"{name}.{share:g}" for name in ("cooling", "power") for share in LOADS} <= keys
    assert {f"cop.{SEAS[0]:g}", f"cop.{SEAS[-1]:g}"} <= keys


def test_lines_are_named_beside_them() -> None:
    found = words(plant_picture(WHOLE, "si"))
    for share in ("100 % load", "50 % load", "15 % load"):
        assert found.count(share) == 2
    assert "sea 10.0 °C" in found
    assert "sea 36.0 °C" in found


def test_axes_follow_the_units_asked_for() -> None:
    assert "seawater, °C" in words(plant_picture(PLAIN, "si"))
    assert "seawater, °F" in words(plant_picture(PLAIN, "us"))


def test_the_title_says_what_a_warm_sea_costs() -> None:
    """Invented: 7000 W less 30 W for each °C; COP at full load 6100 / 1750, at half 2600 / 1050."""
    title = " ".join(words(plant_picture(PLAIN, "si"))[:2]).replace("\u00a0", " ")
    assert "6.70 kW in a sea of 10.0 °C and 6.10 kW in one of 30.0 °C" in title
    assert "best at 100 % load" in title


def test_the_best_of_each_line_is_marked() -> None:
    """The invented plant does best at full load: at the right edge, as many marks as lines."""
    picture = drawn(plant_picture(PLAIN, "si"))
    lines = [line for line in picture.findall("svg:polyline", NAMESPACE) if "cop." in (line.get("data-key") or "")]
    marks = picture.findall("svg:polygon", NAMESPACE)
    assert len(marks) == len(lines) == 3


def test_the_description_tells_what_cannot_be_seen() -> None:
    text = drawn(plant_picture(PLAIN, "si")).findtext("svg:desc", namespaces=NAMESPACE)
    assert text is not None
    assert "sea 30.0 °C: 6.10 kW for 1.75 kW at full load, COP 3.5" in text


def test_cautions_stand_at_the_foot() -> None:
    assert " ".join(fake.CAUTIONS) in " ".join(words(plant_picture(PLAIN, "si"))[-2:])
