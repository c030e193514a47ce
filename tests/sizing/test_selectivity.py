"""Which device opens first."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import pytest

from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.protection import Protection
from anchorwatt.sizing.selectivity import level, levels, needed_ratio
from anchorwatt.sizing.wiring import WiredCircuit, wiring
from tests.simulation import boats


@cache
def wired() -> tuple[WiredCircuit, ...]:
    boat = boats.boat(1)
    return wiring(boat, Simulation(boat)).circuits


def guarded(number: int, rating: float, kind: str = "fuse") -> WiredCircuit:
    one = [circuit for circuit in wired() if circuit.protection is not None][number]
    assert one.protection is not None
    return replace(one, protection=replace(one.protection, rating=rating, kind=kind, trips_by=5.0 * rating))


def device(number: int, rating: float, kind: str) -> Protection:
    found = guarded(number, rating, kind).protection
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("above", "below", "ratio"),
    [("fuse", "fuse", 1.6), ("breaker", "breaker", 2.0), ("fuse", "breaker", 2.0), ("breaker", "fuse", 2.0)],
)
def test_the_ratio_goes_by_the_kinds(above: str, below: str, ratio: float) -> None:
    assert needed_ratio(device(0, 200.0, above), device(1, 100.0, below)) == ratio


@pytest.mark.parametrize(("above", "holds"), [(160.0, True), (150.0, False), (100.0, False)])
def test_fuses_need_1_6_between_them(above: float, holds: bool) -> None:
    found = level([guarded(0, above)], guarded(1, 100.0), True)
    assert found is not None
    assert found.holds is holds
    assert found.limit == math.inf


def test_strings_that_feed_a_bus_together_count_together() -> None:
    found = level([guarded(0, 100.0), guarded(2, 100.0)], guarded(1, 100.0), True)
    assert found is not None
    assert found.ratio == pytest.approx(2.0)


def test_a_breaker_above_stays_shut_only_up_to_its_magnetic_trip() -> None:
    found = level([guarded(0, 100.0, "breaker")], guarded(1, 20.0, "breaker"), True)
    assert found is not None
    assert found.limit == pytest.approx(500.0)


def test_no_step_without_both_devices() -> None:
    assert level([replace(guarded(0, 100.0), protection=None)], guarded(1, 10.0), True) is None
    assert level([guarded(0, 100.0)], replace(guarded(1, 10.0), protection=None), True) is None


def test_a_boats_steps_lead_from_the_bank_outwards() -> None:
    found = levels(wired())
    by_tag = {one.tag: one for one in wired()}
    assert found
    for step in found:
        for tag in step.upstream.split(", "):
            assert by_tag[tag].circuit.end == by_tag[step.downstream].circuit.start
            assert by_tag[tag].circuit.source != "shore"


def test_what_charges_is_no_step_above_what_discharges() -> None:
    charging = {one.tag for one in wired() if one.protection is not None and one.protection.at == "end"}
    assert charging
    for step in levels(wired()):
        assert not charging & {*step.upstream.split(", "), step.downstream}
