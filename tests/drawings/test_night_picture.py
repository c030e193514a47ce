from __future__ import annotations

import math
from dataclasses import replace
from itertools import combinations
from xml.etree import ElementTree

import pytest
from tests.cli import fake

from anchorwatt.assessment import Assessment
from anchorwatt.drawings import night_picture
from anchorwatt.drawings.lettering import text_width

NAMESPACE = {"svg": "http://www.w3.org/2000/svg"}
HOUR = 3600.0
Box = tuple[str, float, float, float, float]


def drawn(picture: str) -> ElementTree.Element:
    return ElementTree.fromstring(picture)


def words(picture: str) -> list[str]:
    return [text.text or "" for text in drawn(picture).findall("svg:text", NAMESPACE)]


def boxes(picture: str) -> list[Box]:
    """The words of the picture with left, top, right and bottom of what they cover."""
    found = []
    for text in drawn(picture).findall("svg:text", NAMESPACE):
        size, content = float(text.get("font-size", "0")), text.text or ""
        width = text_width(content, size, text.get("font-weight") == "bold")
        x, y = float(text.get("x", "0")), float(text.get("y", "0"))
        left = x - width * {"middle": 0.5, "end": 1.0}.get(text.get("text-anchor", ""), 0.0)
        found.append((content, left, y - 0.72 * size, left + width, y + 0.2 * size))
    return found


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
    picture = night_picture(assessment, "us" if system == "us" else "si")
    root = drawn(picture)
    width, height = float(root.get("width", "0")), float(root.get("height", "0"))
    for content, left, top, right, bottom in boxes(picture):
        assert left >= 0, content
        assert right <= width, content
        assert top >= 0, content
        assert bottom <= height, content
    for (one, a, b, c, d), (other, e, f, g, h) in combinations(boxes(picture), 2):
        assert c <= e or g <= a or d <= f or h <= b, f"{one!r} over {other!r}"


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
