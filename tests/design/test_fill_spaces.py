"""Spaces where parts go: what is filled in, and what is refused."""

from __future__ import annotations

from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import design
from anchorwatt.design.fill_spaces import TRANSMITTANCE
from anchorwatt.design.specification import Space, Specification
from anchorwatt.errors import BadDesign, Problem

LOCKER: dict[str, Any] = {"length": "800 mm", "width": "400 mm", "height": "500 mm"}
CABIN = next(iter(minimal()["cabins"]))


def made(**changes: Any) -> Specification:
    return design.specify(design.parse(as_text(minimal(**changes))))


def locker(**changes: Any) -> Space:
    (found,) = made(spaces={"locker": {**LOCKER, **changes}}).spaces
    return found


def refused(**changes: Any) -> Problem:
    with pytest.raises(BadDesign) as caught:
        design.parse(as_text(minimal(**changes)))
    (problem,) = caught.value.problems
    return problem


def test_a_space_without_more_is_shut_opens_whole_and_has_walls_of_plywood() -> None:
    found = locker()
    assert found.opening == pytest.approx((0.8, 0.5))
    assert found.opens == "front"
    assert found.airflow == 0.0
    assert found.cabin == -1
    assert found.wall_conductance == pytest.approx(TRANSMITTANCE * 2.0 * (0.8 * 0.4 + 0.8 * 0.5 + 0.4 * 0.5))


def test_what_is_filled_in_is_on_the_list() -> None:
    keys = {one.key for one in made(spaces={"locker": LOCKER}).estimates}
    assert {f"spaces.locker.{key}" for key in ("at", "opening", "walls", "ventilation")} <= keys


def test_a_space_in_a_cabin_lies_at_its_centre_until_somebody_says_where() -> None:
    it = made(spaces={"locker": {**LOCKER, "cabin": CABIN}})
    assert it.spaces[0].centre == it.cabins[0].centre


def test_a_part_in_a_space_stands_there() -> None:
    at = {"forward": "5 m", "starboard": "-1 m", "up": "0.5 m"}
    it = made(spaces={"locker": {**LOCKER, "at": at}}, places={"inverter": {"space": "locker"}})
    (inverter,) = [item for item in it.items if item.kind == "inverter"]
    assert inverter.space == 0
    assert inverter.position == it.spaces[0].centre


@pytest.mark.parametrize("opens", ["front", "end"])
def test_an_opening_larger_than_its_side_is_refused(opens: str) -> None:
    wide = {"front": "810 mm", "end": "410 mm"}[opens]
    problem = refused(spaces={"locker": {**LOCKER, "opens": opens, "opening": {"width": wide, "height": "300 mm"}}})
    assert problem.key == "spaces.locker.opening"
    assert "larger" in problem.found


def test_a_hatch_may_lie_either_way() -> None:
    assert locker(opens="top", opening={"width": "400 mm", "height": "800 mm"}).opening == pytest.approx((0.4, 0.8))
    assert (
        "larger"
        in refused(
            spaces={"locker": {**LOCKER, "opens": "top", "opening": {"width": "410 mm", "height": "450 mm"}}}
        ).found
    )


@pytest.mark.parametrize("side", ["length", "width", "height"])
@pytest.mark.parametrize("size", ["0 mm", "-200 mm"])
def test_a_size_that_is_not_positive_is_refused(side: str, size: str) -> None:
    assert refused(spaces={"locker": {**LOCKER, side: size}}).key == f"spaces.locker.{side}"


def test_a_space_that_does_not_exist_is_refused_with_the_nearest() -> None:
    problem = refused(spaces={"locker": LOCKER}, places={"inverter": {"space": "loker"}})
    assert problem.key == "places.inverter.space"
    assert "perhaps “locker”" in problem.found


def test_a_cabin_that_does_not_exist_is_refused() -> None:
    assert refused(spaces={"locker": {**LOCKER, "cabin": "nowhere"}}).key == "spaces.locker.cabin"


def test_two_spaces_of_one_name_are_refused() -> None:
    text = as_text(minimal()) + "\nspaces:\n  locker: {length: 1 m, width: 1 m, height: 1 m}\n"
    with pytest.raises(BadDesign, match="locker"):
        design.parse(text + "  locker: {length: 1 m, width: 1 m, height: 1 m}\n")


def test_spaces_larger_than_their_compartment_are_refused() -> None:
    huge = {"length": "9 m", "width": "5 m", "height": "3 m", "cabin": CABIN}
    assert "up to this one" in refused(spaces={"hold": huge}).found


def test_a_part_and_its_space_are_in_one_compartment() -> None:
    first, second, *_ = minimal()["cabins"]
    changed = minimal()
    changed["ac"] = {**changed["ac"], "inverter": {**_mapping(changed["ac"]["inverter"]), "cabin": second}}
    problem = refused(
        ac=changed["ac"],
        spaces={"locker": {**LOCKER, "cabin": first}},
        places={"inverter": {"space": "locker"}},
    )
    assert "one and the same compartment" in problem.allowed


def _mapping(entry: Any) -> dict[str, Any]:
    return entry if isinstance(entry, dict) else {"unit": entry}
