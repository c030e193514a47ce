"""Calling an entry otherwise: whatever names it follows, and nothing else changes."""

from __future__ import annotations

import difflib

import pytest

from anchorwatt.assessment import assess
from anchorwatt.design import Design, parse, starter_text, starters
from anchorwatt.design.renaming import renamed
from anchorwatt.errors import BadDesign

NAMED = (
    ("cabins",),
    ("spaces",),
    ("cooling", "plant", "handlers"),
    ("ac", "loads"),
    ("dc", "loads"),
    ("charging", "engines"),
)


@pytest.fixture(scope="module")
def trawler() -> Design:
    return parse(starter_text("trawler-14m"))


def entries(design: Design, *path: str) -> list[str]:
    data = design.document.data
    for part in path:
        data = data.get(part, {})
    return [".".join((*path, name)) for name in data]


@pytest.mark.parametrize("name", starters())
@pytest.mark.parametrize("path", NAMED, ids=".".join)
def test_every_entry_can_be_renamed_and_back_to_the_letter(name: str, path: tuple[str, ...]) -> None:
    design = parse(starter_text(name))
    for key in entries(design, *path):
        there = renamed(design, key, "quite another")
        assert there.document.text != design.document.text
        back = renamed(there, ".".join((*path, "quite another")), key.rpartition(".")[2])
        assert back.document.text == design.document.text


def test_every_alternator_can_be_renamed(trawler: Design) -> None:
    changed = renamed(trawler, "charging.engines.main engine.alternators.port alternator", "old one")
    assert "alternator old one" in changed.places
    assert list(changed.charging.engines["main engine"].alternators) == ["old one", "starboard alternator"]


def test_a_cabin_is_followed_wherever_it_is_named(trawler: Design) -> None:
    changed = renamed(trawler, "cabins.owner's cabin", "great cabin")
    text = changed.document.text
    assert "great cabin" in changed.cabins
    assert list(changed.cabins) == ["great cabin" if one == "owner's cabin" else one for one in trawler.cabins]
    assert "great cabin" in changed.plan[0].cool
    assert any(people.cabin == "great cabin" for people in changed.plan[0].people)
    assert any("great cabin" in pair.between for pair in changed.neighbours)
    assert changed.spaces["bank box"].cabin == "great cabin"
    assert changed.cooling.plant.handlers["owner's cabin"].cabin == "great cabin"  # a handler's name is its own
    assert "# under the sole of the owner's cabin, beside the keel" in text  # so is what the writer says


def test_only_lines_that_name_it_change(trawler: Design) -> None:
    changed = renamed(trawler, "cabins.guest cabin", "den")
    before, after = trawler.document.text.splitlines(), changed.document.text.splitlines()
    assert len(before) == len(after)
    for old, new in zip(before, after, strict=True):
        assert new == old or ("guest cabin" in old and "den" in new)


def test_a_package_follows(trawler: Design) -> None:
    text = trawler.document.text.replace(
        "changes: {dc.bank.parallel: 3}", "changes: {cabins.saloon.height: 7 ft, dc.bank.cabin: saloon}"
    )
    changed = renamed(parse(text), "cabins.saloon", "great room")
    assert changed.offer is not None
    assert changed.offer.packages["third module"].changes == {
        "cabins.great room.height": "7 ft",
        "dc.bank.cabin": "great room",
    }


def test_answers_stay_as_they_were() -> None:
    cutter = parse(starter_text("cutter-12m"))
    cabin = next(iter(cutter.cabins))
    changed = renamed(cutter, f"cabins.{cabin}", "elsewhere")
    assert [one.value for one in assess(changed).answers] == [one.value for one in assess(cutter).answers]


@pytest.mark.parametrize(
    "name", ["'quoted'", '"double"', "a: b", "# not a comment", "[x]", "{y}", "yes", "12", "船 été", "- dash", "<b>&"]
)
def test_a_name_of_odd_signs_is_written_so_that_it_reads_back(trawler: Design, name: str) -> None:
    changed = renamed(trawler, "cabins.saloon", name)
    assert name in changed.cabins
    assert name in changed.plan[1].cool
    assert renamed(changed, f"cabins.{name}", "saloon").document.data == trawler.document.data


@pytest.mark.parametrize(
    "name", ["", "  ", "a.b", "x" * 61, "two\nlines", "\u202egnp", "\x00", "<script>." + "x"], ids=ascii
)
def test_what_cannot_be_a_name_is_told(trawler: Design, name: str) -> None:
    with pytest.raises(BadDesign) as refused:
        renamed(trawler, "cabins.saloon", name)
    assert "without a full stop" in str(refused.value)


def test_a_name_that_is_taken_is_told(trawler: Design) -> None:
    with pytest.raises(BadDesign, match="a second “galley”"):
        renamed(trawler, "cabins.saloon", "galley")


def test_a_load_may_not_take_the_name_of_one_on_the_other_side(trawler: Design) -> None:
    with pytest.raises(BadDesign, match="a second “water heater”"):
        renamed(trawler, "dc.loads.lights", "water heater")


@pytest.mark.parametrize("key", ["boat.length", "cabins.nowhere", "dc.bank", "plan.0", "cabins.saloon.windows"])
def test_what_has_no_name_of_its_own_cannot_be_renamed(trawler: Design, key: str) -> None:
    with pytest.raises(BadDesign, match="that has a name"):
        renamed(trawler, key, "x")


def test_its_own_name_changes_nothing(trawler: Design) -> None:
    assert renamed(trawler, "cabins.saloon", " saloon ") is trawler


def test_a_layout_with_quotes_and_odd_spaces_stays(trawler: Design) -> None:
    text = trawler.document.text.replace("  saloon:\n    use: saloon", '  "saloon" :\n    use: saloon', 1)
    text = text.replace("{cabin: saloon, count: 4", "{cabin:   'saloon' , count: 4", 1)
    changed = renamed(parse(text), "cabins.saloon", "den")
    differ = [one for one in difflib.ndiff(text.splitlines(), changed.document.text.splitlines()) if one[0] in "+-"]
    assert "+   den :" in differ
    assert any("{cabin:   den , count: 4" in one for one in differ)
