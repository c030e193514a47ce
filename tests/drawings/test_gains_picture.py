from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.drawings.pictures import NAMESPACE, assert_lines_stay_on_the_sheet, assert_words_are_free, drawn, words
from tests.papers import fake

from anchorwatt.assessment import Assessment
from anchorwatt.assessment.gains import GROUPS, BoatGains
from anchorwatt.drawings import gains_picture
from anchorwatt.units import System


def scaled(times: float) -> Assessment:
    """The invented gains so many times as large, with a trace below zero."""
    found = fake.gains(1).cabins[0]
    sun, *others = [(name, times * values) for name, values in found.causes]
    causes = ((sun[0], sun[1] - 0.5), *others)
    cabin = replace(found, causes=causes, sensible=times * found.sensible - 0.5, latent=times * found.latent)
    return fake.assessment(gains=BoatGains((cabin,)))


PLAIN = fake.assessment()
MANY = fake.assessment(gains=fake.gains(9))
NEVER = fake.assessment(cabins=(fake.cabin("saloon", math.nan),), gains=fake.gains(0), load_story=None)


@pytest.mark.parametrize("assessment", [PLAIN, MANY, NEVER], ids=["plain", "many cabins", "never cooled"])
@pytest.mark.parametrize("system", ["si", "us"])
def test_nothing_lies_over_others_or_outside(assessment: Assessment, system: System) -> None:
    picture = gains_picture(assessment, system)
    assert_words_are_free(picture)
    assert_lines_stay_on_the_sheet(picture)


@pytest.mark.parametrize("times", [0.1, 0.5, 0.74, 0.75, 0.76, 1.0, 1.5, 2.0, 3.7])
def test_the_words_over_the_highest_bar_have_room(times: float) -> None:
    assert_words_are_free(gains_picture(scaled(times), "si"))


def test_a_trace_below_zero_gets_no_room() -> None:
    assert not any(word.startswith("−") for word in words(gains_picture(scaled(1.0), "si")))


def test_the_title_says_when_and_how_much() -> None:
    gains = fake.gains()
    title = " ".join(words(gains_picture(PLAIN, "si"))[:2])
    assert f"from {gains.peak_hour:02d}:00, {gains.peak / 1000.0:.2f} kW" in title


def test_a_boat_that_is_never_cooled_says_so() -> None:
    assert words(gains_picture(NEVER, "si"))[0] == "No cabin of this design is ever cooled"


def test_every_cause_has_its_name_and_its_bars() -> None:
    picture = gains_picture(PLAIN, "si")
    found = words(picture)
    for name, _ in GROUPS:
        assert name.replace(", ", " and ") in found
    assert len(drawn(picture).findall("svg:polygon", NAMESPACE)) == 24 * len(GROUPS)


def test_the_highest_hour_is_marked() -> None:
    assert f"{fake.gains().peak / 1000.0:.2f} kW in all" in words(gains_picture(PLAIN, "si"))


def test_axes_follow_the_units_asked_for() -> None:
    assert any(line.endswith("kBtu/h; below zero it goes out") for line in words(gains_picture(PLAIN, "us")))


def test_the_description_tells_what_cannot_be_seen() -> None:
    text = drawn(gains_picture(PLAIN, "si")).findtext("svg:desc", namespaces=NAMESPACE)
    assert text is not None
    assert "sun through glass 800 W" in text


def test_cautions_stand_at_the_foot() -> None:
    assert " ".join(fake.CAUTIONS) in " ".join(words(gains_picture(PLAIN, "si"))[-2:])
