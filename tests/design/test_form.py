"""The design file as a form: its fields, what may be written there, where values come from, and edits from it."""

from __future__ import annotations

import pytest

from anchorwatt import catalogue
from anchorwatt.design import Design, parse, starter_text, starters
from anchorwatt.design.editing import edit, edit_all
from anchorwatt.design.form import added, form, retyped, typed_at
from anchorwatt.errors import BadDesign

TOP = ("boat", "place", "cabins", "cooling", "ac", "dc", "charging", "plan", "brief", "wiring", "offer")


@pytest.fixture(scope="module")
def trawler() -> Design:
    return parse(starter_text("trawler-14m"))


def field(design: Design, part: str, key: str):  # type: ignore[no-untyped-def]
    return next(one for one in form(design, part) if one.key == key)


@pytest.mark.parametrize("name", starters())
@pytest.mark.parametrize("part", TOP)
def test_every_field_that_is_typed_can_be_typed_again_as_it_is(name: str, part: str) -> None:
    design = parse(starter_text(name))
    if part not in design.document.data:
        pytest.skip(f"{name} says nothing of {part}")
    typed = [one for one in form(design, part) if one.typed is not None]
    assert typed
    for one in typed[:: max(1, len(typed) // 5)]:
        assert retyped(design, one.key, one.typed) == design


@pytest.mark.parametrize(
    ("part", "key", "basis"),
    [
        ("boat", "boat.length", "typed"),
        ("boat", "boat.waterline", "estimated"),
        ("place", "place.latitude", "not given"),
        ("ac", "ac.inverter.count", "estimated"),
    ],
)
def test_a_field_says_where_its_value_comes_from(trawler: Design, part: str, key: str, basis: str) -> None:
    assert field(trawler, part, key).basis == basis


def test_a_quantity_says_its_range(trawler: Design) -> None:
    assert "from 4 m to 60 m" in field(trawler, "boat", "boat.length").allowed


def test_a_part_of_the_catalogue_is_a_choice_of_its_names(trawler: Design) -> None:
    module = field(trawler, "dc", "dc.bank.module")
    assert module.kind == "choice"
    assert module.typed in module.choices


def test_a_cabin_is_a_choice_of_the_boats_cabins(trawler: Design) -> None:
    assert field(trawler, "dc", "dc.bank.cabin").choices == tuple(trawler.cabins)


def test_an_estimate_says_its_rule(trawler: Design) -> None:
    assert "length" in field(trawler, "boat", "boat.draught").rule


def test_taking_a_figure_out_brings_its_estimate(trawler: Design) -> None:
    without = retyped(trawler, "cabins.saloon.height", "")
    assert typed_at(without, "cabins.saloon.height") is None
    assert field(without, "cabins.saloon", "cabins.saloon.height").basis == "estimated"


def test_a_figure_of_a_part_keeps_the_part(trawler: Design) -> None:
    changed = retyped(trawler, "dc.bank.module.capacity", "300 Ah")
    assert changed.dc.bank.module.capacity.text == "300 Ah"
    assert changed.document.data["dc"]["bank"]["module"]["like"] == "lithium 25.6 V 280 Ah"


def test_a_figure_of_a_part_is_the_catalogues_until_it_is_typed_over(trawler: Design) -> None:
    key = "dc.bank.module.capacity"
    before = field(trawler, "dc", key)
    row = catalogue.part.raw("battery_module", "lithium 25.6 V 280 Ah")
    assert (before.basis, before.typed, before.used, before.rule) == ("catalogue", None, row["capacity"], row["source"])
    over = field(retyped(trawler, key, "300 Ah"), "dc", key)
    assert (over.basis, over.typed, over.used) == ("typed", "300 Ah", row["capacity"])


def test_a_part_with_a_typed_figure_is_still_a_choice(trawler: Design) -> None:
    changed = retyped(trawler, "dc.bank.module.capacity", "300 Ah")
    module = field(changed, "dc", "dc.bank.module")
    assert (module.kind, module.typed) == ("choice", "lithium 25.6 V 280 Ah")
    assert typed_at(changed, "dc.bank.module") == "lithium 25.6 V 280 Ah"
    assert retyped(changed, "dc.bank.module", "lithium 25.6 V 280 Ah") == changed


def test_taking_a_typed_figure_away_brings_the_file_back_to_the_letter(trawler: Design) -> None:
    changed = retyped(trawler, "dc.bank.module.capacity", "300 Ah")
    assert retyped(changed, "dc.bank.module.capacity", "").document.text == trawler.document.text


def test_taking_one_of_two_typed_figures_away_leaves_the_other(trawler: Design) -> None:
    one = retyped(trawler, "dc.bank.module.capacity", "300 Ah")
    two = retyped(one, "dc.bank.module.mass", "70 kg")
    assert retyped(two, "dc.bank.module.capacity", "").document.data["dc"]["bank"]["module"] == {
        "like": "lithium 25.6 V 280 Ah",
        "mass": "70 kg",
    }


def test_another_part_comes_with_its_own_figures(trawler: Design) -> None:
    over = retyped(trawler, "dc.bank.module.capacity", "300 Ah")
    other = next(one for one in catalogue.names("battery_module") if "25.6 V" in one and "280" not in one)
    changed = retyped(over, "dc.bank.module", other)
    assert field(changed, "dc", "dc.bank.module.capacity").basis == "catalogue"


def test_a_figure_typed_over_of_a_part_that_nobody_named_names_it(trawler: Design) -> None:
    key = "neighbours.0.through"
    estimated = field(trawler, "neighbours", key)
    assert (estimated.typed, estimated.basis) == (None, "estimated")
    grille = "cooling.plant.handlers.saloon.outlets.starboard grille.duct.grille"
    was = field(trawler, "cooling", grille)
    figure = next(one for one in was.figures if one.kind == "number")
    changed = retyped(trawler, figure.key, figure.used)
    assert field(changed, "cooling", grille).typed == was.used
    assert field(changed, "cooling", figure.key).basis == "typed"


@pytest.mark.parametrize("name", starters())
def test_every_figure_of_the_catalogue_can_be_typed_as_it_is(name: str) -> None:
    design = parse(starter_text(name))
    for part in TOP:
        if part not in design.document.data:
            continue
        figures = [one for one in form(design, part) if one.basis == "catalogue"]
        for one in figures[:: max(1, len(figures) // 6)]:
            assert typed_at(retyped(design, one.key, one.used), one.key) == one.used


def test_entries_of_a_list_are_counted_from_one(trawler: Design) -> None:
    assert [one.title for one in form(trawler, "plan").groups][:2] == ["plan 1", "plan 2"]


def test_a_mapping_that_is_not_there_is_made(trawler: Design) -> None:
    changed = retyped(trawler, "cooling.plant.seawater.lift", "2 ft")
    assert changed.document.data["cooling"]["plant"]["seawater"] == {"lift": "2 ft"}


def test_a_mapping_written_in_short_is_written_out_when_more_is_said(trawler: Design) -> None:
    design = edit_all(trawler, {"places.transformer": None, "ac.transformer": "isolation transformer 5 kVA"})
    assert typed_at(design, "ac.transformer.unit") == "isolation transformer 5 kVA"
    changed = retyped(design, "ac.transformer.cabin", "engine room")
    assert changed.document.data["ac"]["transformer"] == {
        "unit": "isolation transformer 5 kVA",
        "cabin": "engine room",
    }
    again = retyped(design, "ac.transformer.unit", "isolation transformer 3.6 kVA")
    assert again.document.data["ac"]["transformer"] == "isolation transformer 3.6 kVA"


def test_a_flag_is_yes_or_no(trawler: Design) -> None:
    assert retyped(trawler, "installation.vented", "no").document.data["installation"]["vented"] is False


@pytest.mark.parametrize(
    ("key", "text"),
    [
        ("boat.length", "forty feet"),
        ("dc.bank.parallel", "2.5"),
        ("dc.bank.module", "a car battery"),
        ("boat.removed", "[generator"),
        ("boat.removed", "a\nb: c"),
        ("plan.0.start", "25:00"),
        ("brief.reserve", "<script>alert(1)</script>"),
    ],
)
def test_what_does_not_fit_is_refused_in_words(trawler: Design, key: str, text: str) -> None:
    with pytest.raises(BadDesign) as refused:
        retyped(trawler, key, text)
    assert refused.value.problems


def test_a_part_that_there_is_not_is_refused(trawler: Design) -> None:
    with pytest.raises(BadDesign):
        form(trawler, "cabins.ballroom.of.it")


def test_hostile_words_stay_words(trawler: Design) -> None:
    words = 'x: {y} # "z" <b>&amp;</b>'
    assert retyped(trawler, "about", words).about == words


@pytest.mark.parametrize(
    ("key", "name"), [("dc.loads", "second router"), ("cabins", "aft cabin"), ("ac.loads", "kettle"), ("spaces", "box")]
)
def test_an_entry_is_begun_as_a_copy_of_the_last(trawler: Design, key: str, name: str) -> None:
    more = added(trawler, key, name)
    at = more.document.data
    for part in key.split("."):
        at = at[part]
    assert list(at)[-1] == name
    assert list(at.values())[-1] == list(at.values())[-2]


def test_a_first_entry_says_what_must_be_said(trawler: Design) -> None:
    entry = added(trawler, "cabins.owner's cabin.surfaces", "deck").document.data["cabins"]["owner's cabin"]
    assert entry["surfaces"] == {"deck": {}}


def test_a_list_grows_at_its_end(trawler: Design) -> None:
    assert len(added(trawler, "plan.0.people", "").plan[0].people) == len(trawler.plan[0].people) + 1


def test_a_name_that_is_taken_is_refused(trawler: Design) -> None:
    with pytest.raises(BadDesign, match="not taken"):
        added(trawler, "cabins", "saloon")


def test_an_entry_is_taken_out_unless_something_else_needs_it(trawler: Design) -> None:
    assert "water pump" not in edit(trawler, "dc.loads.water pump", None).dc.loads
    with pytest.raises(BadDesign):
        edit(trawler, "cabins.saloon", None)
