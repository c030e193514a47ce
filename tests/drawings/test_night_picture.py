from __future__ import annotations

import math
from dataclasses import replace

import pytest
from tests.drawings.pictures import NAMESPACE, assert_words_are_free, drawn, words
from tests.papers import fake

from anchorwatt.assessment import Assessment
from anchorwatt.drawings import night_picture

HOUR = 3600.0

MANY = fake.assessment(cabins=tuple(fake.cabin(f"cabin {n} with a name") for n in range(8)))
CROWD = fake.assessment(cabins=tuple(fake.cabin(f"cabin {n}") for n in range(30)))
SHORT = fake.assessment(
    headline=fake.answers(hold=7.1 * HOUR), night=fake.night(("owner's cabin", "saloon"), last=0.104)
)
PLAIN = fake.assessment()


@pytest.mark.parametrize(
    "assessment", [PLAIN, MANY, CROWD, SHORT], ids=["plain", "many cabins", "a crowd", "too short"]
)
@pytest.mark.parametrize("system", ["si", "us"])
def test_no_words_lie_over_others_or_outside(assessment: Assessment, system: str) -> None:
    assert_words_are_free(night_picture(assessment, "us" if system == "us" else "si"))


def test_the_title_states_that_the_bank_holds() -> None:
    assert words(night_picture(PLAIN, "si"))[0] == (
        "The bank holds the night: 12.5 h where 10 h are asked for, 36 % left at dawn"
    )


def test_the_title_states_that_the_bank_does_not_hold() -> None:
    assert words(night_picture(SHORT, "si"))[0] == ("The bank does not hold the night: 7.1 h where 10 h are asked for")


def test_the_title_says_when_the_bank_outlasts_the_run() -> None:
    first, *others = fake.answers(hold=48 * HOUR)
    long = fake.assessment(headline=(replace(first, note="or longer"), *others))
    assert words(night_picture(long, "si"))[0].startswith("The bank holds the night: 48 h or longer where 10 h")


def test_the_title_does_not_guess() -> None:
    unknown = fake.assessment(headline=fake.answers(hold=math.nan))
    assert words(night_picture(unknown, "si"))[0] == "It cannot be told whether the bank holds the night"


def test_the_moment_of_the_reserve_is_marked() -> None:
    """From 90 % to 10.4 % in a straight line over 10 h, 20 % is reached in the 528th minute."""
    assert "reserve of 20 %, reached at 05:48" in words(night_picture(SHORT, "si"))
    assert "reserve of 20 %" in words(night_picture(PLAIN, "si"))


def test_axes_follow_the_units_asked_for() -> None:
    assert "Air in the cabins and outdoors, °F" in words(night_picture(PLAIN, "us"))
    assert "Air in the cabins and outdoors, °C" in words(night_picture(PLAIN, "si"))


def test_lines_are_named_beside_them() -> None:
    found = words(night_picture(PLAIN, "si"))
    for label in ("owner's cabin", "saloon, not cooled", "outdoors", "cooling plant", "inverter output"):
        assert label in found


def test_every_line_names_the_column_behind_it() -> None:
    keys = {line.get("data-key") for line in drawn(night_picture(PLAIN, "si")).findall("svg:polyline", NAMESPACE)}
    assert {"charge_pct", "plant_power_W", "air_temperature_C.saloon"} <= keys


def test_cautions_stand_at_the_foot() -> None:
    found = words(night_picture(PLAIN, "si"))
    assert " ".join(fake.CAUTIONS) in " ".join(found[-2:])


def test_the_description_tells_what_cannot_be_seen() -> None:
    text = drawn(night_picture(PLAIN, "si")).findtext("svg:desc", namespaces=NAMESPACE)
    assert text is not None
    assert "owner's cabin at most 24.7 °C" in text
    assert "1.48 kW" in text
