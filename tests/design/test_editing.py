"""Edits: one value changes, all else stays to the last byte, and the old design is as it was."""

from __future__ import annotations

import difflib
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.design.sample import SAMPLE
from tests.design.strategies import as_text, designs

from anchorwatt import design
from anchorwatt.design.document import scan
from anchorwatt.errors import BadDesign
from anchorwatt.units import parse


def edited_lines(text: str, key: str, value: Any) -> tuple[list[str], list[str]]:
    """Lines that went and lines that came."""
    after = design.edit(design.parse(text), key, value).document.text
    lines = list(difflib.ndiff(text.splitlines(), after.splitlines()))
    return [one[2:] for one in lines if one[0] == "-"], [one[2:] for one in lines if one[0] == "+"]


@pytest.mark.parametrize(
    ("key", "value", "went", "came"),
    [
        pytest.param("dc.bank.parallel", 3, ["    parallel: 2"], ["    parallel: 3"], id="number"),
        pytest.param("boat.length", "46 ft", ["  length: 12 m"], ["  length: 46 ft"], id="quantity"),
        pytest.param(
            "cabins.cabin.floor_area",
            "75 ft2",
            ["    floor_area: 7 m2 # with the berth"],
            ["    floor_area: 75 ft2 # with the berth"],
            id="comment on the line stays",
        ),
        pytest.param("plan.2.end", "21:00", [], [], id="same value"),
        pytest.param("neighbours.0.between.1", "cabin", [], [], id="inside a list in brackets, same value"),
        pytest.param(
            "plan.0.people.0.count",
            1,
            ["      - {cabin: cabin, count: 2, doing: asleep}"],
            ["      - {cabin: cabin, count: 1, doing: asleep}"],
            id="inside braces",
        ),
        pytest.param("boat.draught", "0.9 m", [], ["  draught: 0.9 m"], id="new key"),
        pytest.param("cabins.saloon.height", "1.95 m", [], ["    height: 1.95 m"], id="new key after a mapping"),
        pytest.param("about", "a: b # c", [], ['about: "a: b # c"'], id="text that needs quotation marks"),
        pytest.param("about", "7", [], ['about: "7"'], id="text that looks like a number"),
        pytest.param("plan.0.cool.cabin", "24 °C", ["      cabin: 76 °F"], ["      cabin: 24 °C"], id="writer's sign"),
        pytest.param(
            "dc.bank.module",
            {"like": "lithium 12.8 V 200 Ah", "charge_current": "90 A"},
            ["    module:", "      like: lithium 12.8 V 200 Ah", "      charge_current: 100 A"],
            ["    module: {like: lithium 12.8 V 200 Ah, charge_current: 90 A}"],
            id="mapping for a mapping",
        ),
        pytest.param(
            "plan.0.people.1",
            {"cabin": "saloon", "count": 1, "doing": "at rest"},
            [],
            ["      - {cabin: saloon, count: 1, doing: at rest}"],
            id="one more in a list",
        ),
        pytest.param("dc.bank.module.charge_current", None, ["      charge_current: 100 A"], [], id="key out"),
        pytest.param("neighbours.0.door", None, ["    door: closed"], [], id="last key of an entry in a list out"),
        pytest.param(
            "plan.0.people.0",
            None,
            ["    people:", "      - {cabin: cabin, count: 2, doing: asleep}"],
            ["    people: []"],
            id="only entry of a list out",
        ),
        pytest.param(
            "dc.loads.refrigerator.cabin",
            None,
            ["    refrigerator: {appliance: refrigerator, cabin: saloon}"],
            ["    refrigerator: {appliance: refrigerator}"],
            id="key out of braces",
        ),
        pytest.param("cabins.cabin.windows", None, ["    windows: {}"], [], id="empty mapping out"),
    ],
)
def test_an_edit_changes_its_lines_only(key: str, value: Any, went: list[str], came: list[str]) -> None:
    assert edited_lines(SAMPLE, key, value) == (went, came)


def test_the_design_that_was_edited_stays_as_it_was() -> None:
    before = design.parse(SAMPLE)
    after = design.edit(before, "dc.bank.parallel", 4)
    assert (before.dc.bank.parallel, after.dc.bank.parallel) == (2, 4)
    assert before.document.text == SAMPLE


def test_a_quantity_is_written_as_its_author_wrote_it() -> None:
    after = design.edit(design.parse(SAMPLE), "boat.beam", parse("13 ft 1 1/2 in", "length"))
    assert "beam: 13 ft 1 1/2 in\n" in after.document.text


def test_an_edit_that_does_not_pass_is_refused_with_its_line() -> None:
    before = design.parse(SAMPLE, "boat.yaml")
    with pytest.raises(BadDesign, match=r"boat\.yaml:4: boat\.length: found the bare number 12"):
        design.edit(before, "boat.length", 12)
    with pytest.raises(BadDesign, match=r"make 38\.4 V"):
        design.edit(before, "dc.bank.series", 3)


@pytest.mark.parametrize("key", ["boat.nothing.at.all", "cabins.attic.height", "plan.9.end", "plan.x", "boat.draught"])
def test_a_place_that_is_not_there_is_refused(key: str) -> None:
    with pytest.raises(BadDesign):
        design.edit(design.parse(SAMPLE), key, None if key == "boat.draught" else "1 m")


def test_a_file_without_a_last_line_end_can_be_added_to() -> None:
    after = design.edit(design.parse(SAMPLE.rstrip("\n")), "brief.mass_limit", "300 kg")
    assert after.document.text.endswith("  recharge: 4 h\n  mass_limit: 300 kg")


def test_line_ends_of_the_writer_are_used_for_new_lines() -> None:
    after = design.edit(design.parse(SAMPLE.replace("\n", "\r\n")), "boat.draught", "1 m")
    assert "  draught: 1 m\r\nplace:" in after.document.text
    assert after.document.text.count("\r\n") == after.document.text.count("\n")


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(designs(), st.data())
def test_any_value_set_to_itself_changes_no_meaning(drawn: dict[str, Any], data: st.DataObject) -> None:
    before = design.parse(as_text(drawn))
    spans = [key for key in before.document.spans if key]
    key = data.draw(st.sampled_from(spans))
    value: Any = before.document.data
    for part in key:
        value = value[part]
    after = design.edit(before, ".".join(map(str, key)), value)
    assert after.document.data == before.document.data


@settings(max_examples=60, deadline=None)
@given(st.text(max_size=60).filter(lambda text: text.isprintable()))
def test_any_text_can_be_written_and_read_again(text: str) -> None:
    after = design.edit(design.parse(SAMPLE), "about", text)
    assert scan(after.document.text).data["about"] == text
