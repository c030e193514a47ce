"""Masses, where they lie, and how the boat floats with them."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.design.specification import Item, Point, Space, Specification, TakenOut
from anchorwatt.sizing.weight import LEVEL, Carried, floating, weight
from tests.simulation import boats


def part(
    tag: str, mass: float, starboard: float, forward: float = 6.0, up: float = 0.0, kind: str = "inverter"
) -> Item:
    item = boats.item(tag, kind, f"part {tag}", 1, mass, math.nan, "")
    return replace(item, position=Point(forward, starboard, up), placed=True)


def boat(*items: Item, **changes: object) -> Specification:
    return boats.boat(1, items=items, **changes)


def test_several_of_a_part_weigh_together() -> None:
    found = weight(boat(replace(part("G1", 66.0, 0.0), count=3)))
    assert found.added == 198.0
    assert found.carried[0].name == "3 × part G1"


def test_parts_beside_each_other_level_out() -> None:
    found = weight(boat(part("T1", 30.0, 1.0), part("T2", 60.0, -0.5)))
    assert found.floats.heel == pytest.approx(0.0, abs=1e-12)
    assert found.moves == ()


def test_what_is_taken_out_on_one_side_heels_to_the_other() -> None:
    old = TakenOut("old bank", 200.0, Point(6.0, 1.0, 0.0), True)
    found = weight(boat(removed=(old,)))
    assert found.floats.heel < 0.0
    assert found.floats.sinkage < 0.0
    assert (found.added, found.taken_out) == (0.0, 200.0)


def test_cables_are_counted_when_they_are_given() -> None:
    copper = Carried("W1", "cable", 20.0, Point(3.0, 0.0, 0.0), True, False)
    assert weight(boat(part("T1", 30.0, 0.0)), cables=[copper]).added == 50.0


@given(st.lists(st.tuples(st.floats(1.0, 90.0), st.floats(-1.2, 1.2), st.floats(1.0, 12.0)), min_size=1, max_size=6))
def test_each_move_does_what_it_says(rows: list[tuple[float, float, float]]) -> None:
    it = boat(*(part(f"T{n}", mass, side, along) for n, (mass, side, along) in enumerate(rows)))
    found = weight(it)
    for move in found.moves:
        moved = [replace(one, position=move.end) if one.tag == move.tag else one for one in found.carried]
        assert floating(it, moved).heel == pytest.approx(move.heel, abs=1e-12)
        assert abs(move.heel) <= LEVEL
        assert abs(move.end.starboard) <= 0.5 * it.hull_beam
    assert [move.distance for move in found.moves] == sorted(move.distance for move in found.moves)


def test_the_heaviest_part_needs_the_smallest_move() -> None:
    found = weight(boat(part("G1", 100.0, 0.4), part("T1", 50.0, 0.4)))
    assert [move.tag for move in found.moves] == ["G1", "T1"]
    assert found.moves[0].distance == pytest.approx(0.6)


def test_an_alternator_is_not_moved() -> None:
    found = weight(boat(part("G2", 100.0, 0.4, kind="alternator"), part("T1", 50.0, 0.2)))
    assert {move.tag for move in found.moves} == {"T1"}


def test_a_part_that_nobody_placed_is_not_moved() -> None:
    found = weight(boat(replace(part("G1", 100.0, 1.0), placed=False)))
    assert found.moves == ()
    assert found.placed == 0.0


def test_a_space_that_levels_the_boat_is_offered() -> None:
    locker = Space("locker", 0, Point(6.0, 0.0, 0.0), (1.0, 1.0, 1.0), (0.5, 0.5), "top", 5.0, 0.0)
    found = weight(boat(part("G1", 100.0, 1.0), spaces=(locker,)))
    assert "locker" in {move.space for move in found.moves}


def test_where_no_part_levels_it_alone_several_do() -> None:
    rows = [part(f"T{n}", 40.0, 1.2) for n in range(4)]
    found = weight(boat(*rows))
    assert found.moves == ()
    assert len(found.together) > 1
    assert abs(found.together[-1].heel) < abs(found.floats.heel)


def test_radius_and_centre() -> None:
    middle = 0.5 * boat().waterline
    found = weight(boat(part("T1", 10.0, 0.0, middle + 2.0, 0.5), part("T2", 10.0, 0.0, middle - 2.0, 1.5)))
    assert found.radius == pytest.approx(2.0)
    assert found.centre == Point(pytest.approx(middle), 0.0, pytest.approx(1.0))  # type: ignore[arg-type]


def test_a_boat_that_would_lie_over_is_told_as_unknown() -> None:
    assert math.isnan(weight(boat(part("G1", 3000.0, 2.0))).floats.heel)


def test_masses_without_any_part() -> None:
    found = weight(boat())
    assert (found.added, found.radius, found.placed) == (0.0, 0.0, 0.0)
    assert found.floats.metacentric_height == pytest.approx(boat().metacentric_height)
