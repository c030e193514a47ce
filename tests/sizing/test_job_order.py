"""The order of the job: hold points stand where they stop something, and none is ever lost."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.design.hold_points import ALTERNATORS, HOLD_POINTS, TRIALS, WIRING, HoldPoint, HoldPointName
from anchorwatt.sizing.job_order import job_order
from anchorwatt.sizing.offer import Labour
from tests.starters import STARTERS, assessed

NAMES: tuple[HoldPointName, ...] = tuple(point.name for point in HOLD_POINTS)


def task(name: str, *points: HoldPointName) -> Labour:
    return Labour(name, Decimal(1), None, points)


def told(*tasks: Labour) -> list[str]:
    """Names in order, those of hold points in capitals."""
    return [one.name.upper() if isinstance(one, HoldPoint) else one.name for one in job_order(tasks).steps]


def test_a_point_stands_behind_the_last_task_whose_work_it_looks_at() -> None:
    found = told(task(ALTERNATORS), task("paint"), task(WIRING), task("varnish"))
    assert found.index("ALTERNATORS") == found.index(WIRING) + 2  # joinery first
    assert found.index("varnish") == found.index("ALTERNATORS") + 1


def test_a_point_stands_before_each_task_that_names_it_and_nowhere_else() -> None:
    found = told(task(ALTERNATORS), task(WIRING), task("port belt", "alternators"), task("other", "alternators"))
    places = [place for place, name in enumerate(found) if name == "ALTERNATORS"]
    assert [found[place + 1] for place in places] == ["port belt", "other"]


def test_a_point_that_no_task_asks_for_stands_by_itself() -> None:
    order = job_order([task(WIRING)])
    assert [point.name for point in order.also] == [
        "taking out",
        "seacock",
        "refrigerant",
        "bank",
        "alternators",
        "shore power",
        "leaving",
    ]


TASKS = st.lists(
    st.builds(
        lambda name, points: task(name, *points),
        st.sampled_from([*{name for point in HOLD_POINTS for name in point.looks_at}, "paint"]),
        st.lists(st.sampled_from(NAMES), max_size=3),
    ),
    max_size=8,
    unique_by=lambda one: one.name,
)


@given(TASKS)
def test_no_task_and_no_point_is_ever_lost(tasks: list[Labour]) -> None:
    order = job_order(tasks)
    assert [one for one in order.steps if isinstance(one, Labour)] == tasks
    stops = {one.name for one in order.steps if isinstance(one, HoldPoint)}
    alone = {point.name for point in order.also}
    assert stops | alone == set(NAMES)
    assert not stops & alone


@pytest.mark.parametrize("starter", STARTERS)
def test_a_starter_shows_every_point_and_what_comes_alive_waits_for_the_wiring(starter: str) -> None:
    order = job_order(assessed(starter).offer.priced.labour)
    names = [one.name for one in order.steps]
    assert not order.also
    assert set(NAMES) <= set(names)
    for alive in ("bank", "alternators", "shore power"):
        assert names.index(WIRING) < names.index(alive) < names.index(TRIALS)
    assert names[-1] == "leaving"
