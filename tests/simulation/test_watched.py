"""Work that is watched: how far it is, and that it can be given up without harm."""

from __future__ import annotations

import threading

import pytest

from anchorwatt.assessment import Assessment, assess
from anchorwatt.design import parse, starter_text
from anchorwatt.simulation.watched import GivenUp, Progress, watched


@pytest.fixture
def cutter() -> Assessment:
    return assess(parse(starter_text("cutter-12m")))


def test_what_is_given_up_is_worked_out_when_it_is_asked_for_again(cutter: Assessment) -> None:
    with pytest.raises(GivenUp), watched(lambda _: False):
        _ = cutter.simulation.night
    with watched(lambda _: True):
        given_up = cutter.simulation.night
    alone = assess(parse(starter_text("cutter-12m"))).simulation.night
    assert given_up.summary.lowest_charge == alone.summary.lowest_charge


def test_it_is_given_up_at_the_next_run(cutter: Assessment) -> None:
    asked: list[Progress | None] = []

    def twice(progress: Progress | None) -> bool:
        asked.append(progress)
        return len(asked) <= 2

    with pytest.raises(GivenUp), watched(twice):
        _ = cutter.evidence.shortest_engine_time
    assert len(asked) == 3


def test_another_thread_is_not_given_up(cutter: Assessment) -> None:
    made: list[object] = []
    with watched(lambda _: False):
        beside = threading.Thread(target=lambda: made.append(cutter.simulation.before))
        beside.start()
        beside.join()
    assert made


def test_the_shortest_engine_time_tells_each_hour_of_starting(cutter: Assessment) -> None:
    told: list[Progress] = []

    def listen(progress: Progress | None) -> bool:
        told.extend([] if progress is None else [progress])
        return True

    with watched(listen):
        found = cutter.evidence.shortest_engine_time
    assert [one.done for one in told] == list(range(len(found.tried)))
    assert {one.of for one in told} == {len(found.tried)}
