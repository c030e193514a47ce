"""Boxes in spaces: against a plain search over all places of a grid, and the laws that must hold."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.sizing.packing import HAND, REACH, Box, Placed, Room, alone, arrange, growth, reachable, through

Whole = tuple[int, int, int]
SIDES = st.integers(1, 4)
SIZES = st.tuples(SIDES, SIDES, SIDES)


def box(
    size: Sequence[float], name: str = "A", clearance: float = 0.0, upright: bool = False, service: str = ""
) -> Box:
    return Box(name, (size[0], size[1], size[2]), clearance, upright, service)


def room(size: Sequence[float], opens: str = "front", opening: tuple[float, float] = (9.0, 9.0)) -> Room:
    return Room((size[0], size[1], size[2]), opening, opens)


def boxes(sizes: Sequence[Sequence[float]], **more: object) -> list[Box]:
    return [box(size, f"box {number}", **more) for number, size in enumerate(sizes)]  # type: ignore[arg-type]


def brute(sizes: Sequence[Whole], space: Whole, upright: bool) -> bool:
    """Every way to stand, every whole place, cell by cell: nothing is shared with the search but the question."""

    def ways(size: Whole) -> set[Whole]:
        turned = {(size[0], size[1], size[2]), (size[1], size[0], size[2])}
        return turned if upright else set(itertools.permutations(size))  # type: ignore[arg-type]

    def fill(left: Sequence[Whole], taken: frozenset[Whole]) -> bool:
        if not left:
            return True
        for way in ways(left[0]):
            for at in itertools.product(*(range(space[a] - way[a] + 1) for a in range(3))):
                cells = frozenset(itertools.product(*(range(at[a], at[a] + way[a]) for a in range(3))))
                if not cells & taken and fill(left[1:], taken | cells):  # type: ignore[operator]
                    return True
        return False

    return fill(sizes, frozenset())


@settings(max_examples=150, deadline=None)
@given(st.lists(SIZES, min_size=1, max_size=3), SIZES, st.booleans())
def test_against_a_search_over_every_cell(sizes: list[Whole], space: Whole, upright: bool) -> None:
    found = arrange(boxes(sizes, upright=upright), room(space), serviced=False)
    assert (found is not None) == brute(sizes, space, upright)


@settings(max_examples=100, deadline=None)
@given(st.lists(SIZES, min_size=1, max_size=4), SIZES, st.floats(0.0, 0.3))
def test_an_arrangement_is_one(sizes: list[Whole], space: Whole, clearance: float) -> None:
    found = arrange(boxes(sizes, clearance=clearance), room(space), serviced=False, tries=5000)
    if found is None:
        return
    assert sorted(one.box.name for one in found) == sorted(f"box {n}" for n in range(len(sizes)))
    assert math.fsum(one.box.volume for one in found) <= math.prod(space) + 1e-9
    for one in found:
        assert sorted(one.stand.size) == sorted(one.box.size)
        for axis in range(3):
            wall = 0.0 if axis == 2 else clearance
            assert one.low[axis] >= wall - 1e-6
            assert one.high[axis] <= space[axis] - clearance + 1e-6
    for one, other in itertools.combinations(found, 2):
        gaps = [max(other.low[a] - one.high[a], one.low[a] - other.high[a]) for a in range(3)]
        assert max(gaps) >= clearance - 1e-6


@settings(max_examples=60, deadline=None)
@given(st.lists(SIZES, min_size=1, max_size=3), SIZES, st.tuples(*(st.floats(0.0, 2.0),) * 3))
def test_what_fits_still_fits_in_a_larger_space(
    sizes: list[Whole], space: Whole, more: tuple[float, float, float]
) -> None:
    every = boxes(sizes, clearance=0.05)
    if arrange(every, room(space), serviced=False) is not None:
        larger = [a + b for a, b in zip(space, more, strict=True)]
        assert arrange(every, room(larger), serviced=False) is not None
    for one in every:
        assert alone(one, room([a + b for a, b in zip(space, more, strict=True)])) >= alone(one, room(space))


@settings(max_examples=60, deadline=None)
@given(st.lists(SIZES, min_size=2, max_size=4), SIZES, st.integers(0, 3))
def test_taking_a_neighbour_out_never_spoils_a_fit(sizes: list[Whole], space: Whole, which: int) -> None:
    every = boxes(sizes)
    if arrange(every, room(space), serviced=False) is not None:
        del every[which % len(every)]
        assert arrange(every, room(space), serviced=False) is not None


def test_through_an_opening_by_hand() -> None:
    door = room((2.0, 1.0, 2.0), opening=(0.5, 0.3))
    assert through(box((0.9, 0.4, 0.2)), door) == pytest.approx(0.1)
    assert through(box((0.2, 0.4, 0.9)), door) == pytest.approx(0.1)  # lying down
    assert through(box((0.2, 0.4, 0.9), upright=True), door) == pytest.approx(0.3 - 0.9)
    hatch = room((2.0, 1.0, 2.0), "top", (0.3, 0.5))
    assert through(box((0.4, 0.2, 0.9), upright=True), hatch) == pytest.approx(0.1)


@given(SIZES, st.sampled_from(["front", "end", "top"]))
def test_standing_as_it_must_is_never_easier(size: Whole, opens: str) -> None:
    space = room((4.0, 4.0, 4.0), opens, (2.0, 3.0))
    assert through(box(size), space) >= through(box(size, upright=True), space)
    assert alone(box(size), space) >= alone(box(size, upright=True), space)


def test_alone_by_hand() -> None:
    space = room((0.5, 0.4, 0.6))
    assert alone(box((0.3, 0.2, 0.4), clearance=0.05, upright=True), space) == pytest.approx(0.1)
    assert alone(box((0.6, 0.2, 0.4), upright=True), space) == pytest.approx(-0.1)


def test_the_larger_clearance_is_kept_between_two() -> None:
    pair = [box((0.3, 0.3, 0.3), "A", 0.05), box((0.3, 0.3, 0.3), "B", 0.10)]
    assert arrange(pair, room((0.85, 0.5, 0.4)), serviced=False) is not None
    assert arrange(pair, room((0.84, 0.5, 0.4)), serviced=False) is None


def test_a_space_that_is_too_full_is_told_without_a_search() -> None:
    assert arrange(boxes([(1, 1, 1)] * 9), room((2, 2, 2)), serviced=False, tries=1) is None


def test_how_much_larger_it_would_have_to_be() -> None:
    found = growth(boxes([(0.4, 0.3, 0.3), (0.4, 0.3, 0.3)], upright=True), room((0.7, 0.3, 0.3)))
    assert found is not None
    axis, more = found
    assert axis == 0
    assert more == pytest.approx(0.1, abs=0.011)


def test_a_service_side_turns_to_the_opening() -> None:
    deep = box((0.3, 0.5, 0.4), service="front", upright=True)
    (placed,) = arrange([deep], room((0.6, 0.6, 0.5), opening=(0.3, 0.3)), serviced=True) or ()
    assert placed.stand.faces == 1


def test_a_service_side_that_cannot_be_reached() -> None:
    """The part only goes in with its end to the opening; before its front is no room for a hand."""
    space = room((0.35, 0.9, 0.5), opening=(0.34, 0.34))
    assert arrange([box((0.8, 0.3, 0.4), service="front", upright=True)], space, serviced=True) is None
    assert arrange([box((0.8, 0.3, 0.4), service="front", upright=True)], space, serviced=False) is not None


def test_room_for_a_hand_beside_it_will_do() -> None:
    space = room((0.31 + HAND, 0.9, 0.5), opening=(0.34, 0.34))
    assert arrange([box((0.8, 0.3, 0.4), service="front", upright=True)], space, serviced=True) is not None


def test_a_neighbour_in_the_way() -> None:
    space = room((0.4, 0.8, 0.4), opening=(0.4, 0.4))
    pair = arrange(boxes([(0.4, 0.4, 0.4), (0.4, 0.4, 0.4)], service="front"), space, serviced=False)
    assert pair is not None
    reached = [reachable(one, pair, space) for one in sorted(pair, key=lambda one: one.low[1])]
    assert reached == [True, False]


def test_an_arm_reaches_so_far_and_a_person_further() -> None:
    far = box((0.3, 0.3, 0.3), service="front", upright=True)
    (at_door,) = arrange([far], room((0.5, 0.5, 0.5)), serviced=False) or ()
    back = Placed(at_door.box, at_door.stand, (0.0, REACH + 0.1, 0.0))
    assert not reachable(back, [back], room((1.0, 2.0, 1.0), opening=(0.44, 0.9)))
    assert reachable(back, [back], room((1.0, 2.0, 1.0), opening=(0.46, 0.9)))
