"""Panels from the front: every device once where it belongs, to scale, nothing over anything."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from types import SimpleNamespace
from typing import cast

import pytest
from tests.drawings import measures
from tests.sizing.test_terminals import wired

from anchorwatt.assessment import Assessment
from anchorwatt.drawings.sheet import Path, Placed, Text
from anchorwatt.drawings.sheets.body import Body
from anchorwatt.drawings.sheets.panels import NAMES, SCALE, home, panel_sheets
from anchorwatt.drawings.sheets.paper import PAPERS, Paper
from anchorwatt.sizing.terminations import Busbar
from anchorwatt.sizing.wiring import WiredCircuit

A3 = PAPERS["A3"]
LONG = ("a <pump> & “its” name\n " * 12)[:200]


def made(circuits: Sequence[WiredCircuit]) -> Assessment:
    bars = (Busbar("X1", "bank bus", 200.0, 250.0, 1.6e-4), Busbar("X2", "DC bus", 300.0, 400.0, 2.6e-4))
    story = SimpleNamespace(wiring=SimpleNamespace(circuits=tuple(circuits)), busbars=bars)
    return cast(Assessment, SimpleNamespace(wiring=story))


def load() -> WiredCircuit:
    """A load on the DC panel."""
    return next(one for one in wired() if one.circuit.start == "X3" and one.protection is not None)


def many(count: int, bus: str) -> tuple[WiredCircuit, ...]:
    one = next(one for one in wired() if one.circuit.start == bus and one.protection is not None)
    return tuple(
        replace(one, circuit=replace(one.circuit, tag=f"W{n}", end=f"L{n}", function=f"{LONG} {n}"))
        for n in range(1, count + 1)
    )


@cache
def boats() -> dict[str, tuple[WiredCircuit, ...]]:
    return {
        "rich": wired(),
        "none": (),
        "200 DC": many(200, "X3"),
        "200 AC": many(200, "X4"),
        "200 on the bus": many(200, "X2"),
    }


every = pytest.mark.parametrize("boat", ["rich", "none", "200 DC", "200 AC", "200 on the bus"])
papers = pytest.mark.parametrize("paper", list(PAPERS.values()), ids=list(PAPERS))


@cache
def drawn(boat: str, paper: Paper = A3) -> tuple[Body, ...]:
    return panel_sheets(made(boats()[boat]), paper, "si")


def devices(bodies: Sequence[Body]) -> list[Placed]:
    return [item for body in bodies for item in body.items if isinstance(item, Placed)]


def attribute(placed: Placed, name: str) -> str:
    return next(one.words for one in placed.attributes if one.name == name)


@every
@papers
def test_nothing_lies_over_anything_or_leaves_the_paper(boat: str, paper: Paper) -> None:
    bodies = drawn(boat, paper)
    assert not [fault for body in bodies for fault in measures.faults(body, paper)]


@every
@papers
def test_every_device_of_an_enclosure_stands_once(boat: str, paper: Paper) -> None:
    found = Counter(attribute(one, "TAG") for one in devices(drawn(boat, paper)) if attribute(one, "TAG") != "Q2")
    assert found == Counter(f"F{one.tag[1:]}" for one in boats()[boat] if home(one) in NAMES)


def test_devices_stand_on_the_sheet_of_their_enclosure() -> None:
    for body in drawn("rich"):
        here = {attribute(one, "TAG") for one in devices([body])}
        tags = {one.tag: home(one) for one in wired()}
        assert all(tags[f"W{tag[1:]}"].lower() in body.name for tag in here if tag != "Q2")


@every
def test_each_sheet_names_what_it_shows_in_a_legend(boat: str) -> None:
    for body in drawn(boat):
        words = Counter(item.words for item in body.items if isinstance(item, Text))
        tags = [attribute(one, "TAG") for one in devices([body])]
        assert all(words[tag] == 1 for tag in tags if tag != "Q2")


@every
def test_a_device_is_drawn_to_scale(boat: str) -> None:
    for one in devices(drawn(boat)):
        left, top, right, bottom = one.box
        said = dict(one.data)
        assert SCALE * (right - left) == pytest.approx(float(said["width"]))
        assert SCALE * (bottom - top) == pytest.approx(float(said["height"]))


def test_a_breaker_is_18_mm_a_pole() -> None:
    """DIN 43880, from memory."""
    poles = {f"F{one.tag[1:]}": one.circuit.poles for one in wired() if one.circuit.system == "ac"}
    for one in devices(drawn("rich")):
        if attribute(one, "TAG") in poles:
            assert SCALE * (one.box[2] - one.box[0]) == pytest.approx(18.0 * poles[attribute(one, "TAG")])


def places(circuits: Sequence[WiredCircuit]) -> dict[str, tuple[str, float, float]]:
    return {
        attribute(one, "TAG"): (body.name, *one.at)
        for body in panel_sheets(made(circuits), A3, "si")
        for one in devices([body])
    }


@pytest.mark.parametrize("name", ["one more", LONG])
@pytest.mark.parametrize("before", [1, 9, 12, 40])
def test_a_circuit_added_at_the_end_moves_nothing(name: str, before: int) -> None:
    circuits = tuple(
        replace(load(), circuit=replace(load().circuit, tag=f"W{n}", end=f"L{n}", function=f"load {n}"))
        for n in range(1, before + 1)
    )
    more = replace(load(), circuit=replace(load().circuit, tag="W900", function=name))
    assert places(circuits).items() <= places((*circuits, more)).items()


def test_a_fifth_of_the_ways_is_spare() -> None:
    circuits = many(10, "X3")
    spare = [item for body in panel_sheets(made(circuits), A3, "si") for item in body.items if isinstance(item, Path)]
    assert len([item for item in spare if item.told == "spare way"]) == 2


def test_what_feeds_an_enclosure_is_marked() -> None:
    feeder = next(one for one in wired() if one.circuit.end == "X3")
    words = [item.words for body in drawn("rich") for item in body.items if isinstance(item, Text)]
    assert any(one.startswith(f"{feeder.tag} from X2") for one in words)


def test_what_stands_elsewhere_is_told() -> None:
    fuse = next(one for one in wired() if home(one) == "G1" or (home(one) and home(one) not in NAMES))
    assert any(f"F{fuse.tag[1:]}" in note for note in drawn("rich")[0].notes)
