"""Where parts stand, how the boat floats, and what a refit takes out."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from tests.design.strategies import as_text, designs
from tests.design.test_specify import SIDES, minimal

from anchorwatt import catalogue, design
from anchorwatt.design.specification import Item, Point, Specification
from anchorwatt.errors import BadDesign, Problem

BOAT = {"length": "46 ft", "beam": "14 ft", "hull": "foam-cored, white"}
SAID = {"forward": "5 m", "starboard": "-0.5 m", "up": "-0.2 m"}


def made(**changes: Any) -> Specification:
    return design.specify(design.parse(as_text(minimal(**changes))))


def refused(**changes: Any) -> tuple[Problem, ...]:
    with pytest.raises(BadDesign) as caught:
        design.parse(as_text(minimal(**changes)))
    return caught.value.problems


def item(it: Specification, kind: str) -> Item:
    (found,) = [one for one in it.items if one.kind == kind]
    return found


@pytest.mark.parametrize("name", ["bank", "G1"])
def test_a_part_is_placed_by_what_it_is_or_by_its_tag(name: str) -> None:
    bank = item(made(places={name: SAID}), "battery_module")
    assert bank.position == Point(5.0, -0.5, -0.2)
    assert bank.placed


def test_a_part_without_a_place_stands_in_its_compartment() -> None:
    it = made()
    handler = item(it, "air_handler")
    assert handler.position == it.cabins[1].centre
    assert not handler.placed
    assert f"places.{handler.tag}" in {one.key for one in it.estimates}


def test_a_part_without_a_compartment_stands_amidships() -> None:
    it = made()
    assert item(it, "battery_module").position == Point(0.5 * it.waterline, 0.0, 0.0)
    (told,) = [one for one in it.estimates if one.key == "places.G1"]
    assert "amidships" in told.rule


def test_what_a_place_leaves_out_is_an_estimate() -> None:
    it = made(places={"bank": {"forward": "5 m"}})
    bank = item(it, "battery_module")
    assert (bank.position.forward, bank.placed) == (5.0, False)
    assert {"places.bank.starboard", "places.bank.up"} <= {one.key for one in it.estimates}


def test_an_alternator_stands_with_its_engine_and_its_belt_with_it() -> None:
    by_engine = made(places={"engine engine": SAID})
    assert item(by_engine, "alternator").position == item(by_engine, "belt").position == Point(5.0, -0.5, -0.2)
    own = made(places={"engine engine": SAID, "alternator alternator": {**SAID, "starboard": "0.4 m"}})
    assert item(own, "alternator").position.starboard == item(own, "belt").position.starboard == 0.4


def test_a_part_that_does_not_exist_is_refused_with_the_nearest() -> None:
    (problem,) = refused(places={"invertor": SAID})
    assert "no part “invertor”" in problem.found
    assert "inverter" in problem.found
    assert "condensing unit" in problem.allowed
    assert problem.line


def test_two_places_for_a_part_are_refused() -> None:
    (problem,) = refused(places={"bank": SAID, "G1": {**SAID, "forward": "6 m"}})
    assert "a second place for G1" in problem.found


def test_two_parts_in_one_place_are_refused() -> None:
    (problem,) = refused(places={"bank": SAID, "inverter": SAID})
    assert problem.key == "places.inverter"
    assert "places.bank" in problem.found


@pytest.mark.parametrize(
    ("name", "value"), [("forward", "15 m"), ("forward", "-3 m"), ("starboard", "2.2 m"), ("up", "-1.5 m")]
)
def test_a_place_outside_the_boat_is_refused(name: str, value: str) -> None:
    (problem,) = refused(places={"bank": {**SAID, name: value}})
    assert problem.key == f"places.bank.{name}"
    assert value in problem.found


def test_a_space_that_does_not_exist_is_refused() -> None:
    assert any("no space “lazarette”" in one.found for one in refused(places={"bank": {"space": "lazarette"}}))


def test_a_cabin_is_where_the_file_says() -> None:
    cabins = minimal()["cabins"]
    cabins["cabin"]["at"] = {"forward": "9 m", "starboard": "0.2 m", "up": "0.1 m"}
    it = made(cabins=cabins)
    assert it.cabins[1].centre == Point(9.0, 0.2, 0.1)
    assert "cabins.cabin.at" not in {one.key for one in it.estimates}


def test_cabins_lie_in_order_from_the_bow() -> None:
    room = {"use": "sleeping", "deck": "below", "floor_area": "60 ft2", "sides": SIDES}
    cabins = {
        "aft": {**room, "sides": ["port", "starboard", "astern"]},
        "middle": {**room, "sides": ["port", "starboard"]},
        "cabin": {**room, "sides": ["port", "starboard", "ahead"]},
    }
    near = [{"between": ["cabin", "middle"]}, {"between": ["middle", "aft"]}]
    by_name = {cabin.name: cabin.centre.forward for cabin in made(cabins=cabins, neighbours=near).cabins}
    assert by_name["cabin"] > by_name["middle"] > by_name["aft"]


def test_cabins_of_one_side_lie_on_that_side() -> None:
    room = {"use": "sleeping", "deck": "below", "floor_area": "60 ft2"}
    it = made(cabins={"cabin": {**room, "sides": ["port"]}, "other": {**room, "sides": ["starboard"]}})
    assert it.cabins[0].centre.starboard < 0.0 < it.cabins[1].centre.starboard


def test_hydrostatics_that_are_typed_are_taken() -> None:
    typed = {
        "metacentric_height": "1.3 m",
        "longitudinal_metacentric_height": "17 m",
        "waterplane": "40 m2",
        "flotation": "5.8 m",
        "gravity_height": "0.5 m",
    }
    it = made(boat={**BOAT, **typed})
    found = (
        it.metacentric_height,
        it.longitudinal_metacentric_height,
        it.waterplane,
        it.flotation,
        it.gravity_up,
    )
    assert found == (1.3, 17.0, 40.0, 5.8, 0.5)
    assert not {f"boat.{name}" for name in typed} & {one.key for one in it.estimates}


@pytest.mark.parametrize("form", catalogue.names("hull_form"))
def test_estimated_hydrostatics_are_those_of_a_boat(form: str) -> None:
    """A metacentric height far below half a metre would be a tender boat; two hulls are many times as stiff as one."""
    it = made(boat={**BOAT, "form": form, "beam": "22 ft" if form == "catamaran" else "14 ft"})
    assert 0.6 * it.waterline < it.longitudinal_metacentric_height < 3.0 * it.waterline
    assert 0.0 < it.flotation < it.waterline
    assert 0.5 < it.waterplane / (it.hulls * it.waterline * it.hull_beam) < 1.0
    low, high = (5.0, 40.0) if it.hulls > 1 else (0.6, 2.0)
    assert low < it.metacentric_height < high


def test_a_centre_of_flotation_beyond_the_bow_is_refused() -> None:
    (problem,) = refused(boat={**BOAT, "flotation": "14 m"})
    assert problem.key == "boat.flotation"


OLD = {"battery": "AGM 12 V 100 Ah", "series": 2, "parallel": 2}


def refit(**changes: Any) -> dict[str, Any]:
    dc = {**minimal()["dc"], "replaced_bank": {"battery": catalogue.names("lead_acid_battery")[0]}}
    battery = dc["replaced_bank"]["battery"]
    volts = float(catalogue.find("lead_acid_battery", battery).nominal_voltage)  # type: ignore[attr-defined]
    dc["replaced_bank"] |= {"series": round(24.0 / volts), "parallel": 2}
    return {"dc": dc, "generator": catalogue.names("generator")[0], **changes}


def test_what_is_removed_stood_where_the_file_says() -> None:
    text = as_text(
        minimal(
            **refit(
                boat={**BOAT, "removed": ["replaced bank", "generator"]},
                places={"generator": SAID, "bank": {**SAID, "forward": "7 m"}},
            )
        )
    )
    it = design.parse(text)
    bank, generator = design.specify(it).removed
    assert generator.position == Point(5.0, -0.5, -0.2)
    assert generator.placed
    assert bank.position == Point(7.0, -0.5, -0.2)
    assert not bank.placed
    assert min(bank.mass, generator.mass) > 0.0


def test_nothing_is_removed_unless_the_file_says_so() -> None:
    it = design.parse(as_text(minimal(**refit())))
    assert design.specify(it).removed == ()


def test_what_is_removed_must_be_described() -> None:
    found = refused(boat={**BOAT, "removed": ["generator", "replaced bank"]})
    assert {one.key for one in found} == {"boat.removed.0", "boat.removed.1"}


def test_a_place_of_what_stays_ashore_is_refused() -> None:
    (problem,) = refused(**refit(places={"generator": SAID}))
    assert "does not take out" in problem.found


def test_what_is_removed_twice_is_refused() -> None:
    found = refused(**refit(boat={**BOAT, "removed": ["generator", "generator"]}))
    assert [one.key for one in found] == ["boat.removed.1"]


@settings(max_examples=20)
@given(designs(most_cabins=4))
def test_every_part_of_any_boat_has_a_place_inside_it(drawn: dict[str, Any]) -> None:
    it = design.specify(design.parse(as_text(drawn)))
    for one in it.items:
        assert abs(one.position.starboard) <= 0.5 * it.beam
        assert -0.5 * it.length < one.position.forward < 1.5 * it.length
    for cabin in it.cabins:
        assert 0.0 < cabin.centre.forward < it.waterline
        assert abs(cabin.centre.starboard) <= 0.5 * it.beam
