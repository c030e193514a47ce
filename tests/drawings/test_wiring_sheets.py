"""Wiring sheets: every circuit once, landed on the right terminals, nothing over anything."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from types import SimpleNamespace
from typing import cast

import pytest
from tests.drawings import measures
from tests.sizing.test_terminals import side_by_side, wired

from anchorwatt.assessment import Assessment
from anchorwatt.drawings.sheet import Path, Placed, Text
from anchorwatt.drawings.sheets.body import Body, Reference
from anchorwatt.drawings.sheets.paper import PAPERS, Paper
from anchorwatt.drawings.sheets.wiring import wiring_sheets
from anchorwatt.sizing.terminals import cores, protection_tag
from anchorwatt.sizing.wiring import WiredCircuit
from anchorwatt.units import System

LONG = ("a <pump> & “its” name " * 12)[:200]
A3 = PAPERS["A3"]


def assessment(circuits: Sequence[WiredCircuit]) -> Assessment:
    """What the sheets look at, of a boat with these circuits."""
    ends: dict[str, str] = {}
    for one in circuits:
        ends.setdefault(one.circuit.start, one.circuit.start_name)
        ends.setdefault(one.circuit.end, one.circuit.end_name)
    story = SimpleNamespace(
        wiring=SimpleNamespace(circuits=tuple(circuits)), ends=tuple(ends.items()), cautions=("Be careful.",)
    )
    return cast(Assessment, SimpleNamespace(wiring=story))


def split_service() -> tuple[WiredCircuit, ...]:
    """The shore side with two lines, one breaker over both."""
    return tuple(
        replace(one, circuit=replace(one.circuit, poles=3, cores=4), colour="black, red, white, green")
        if one.circuit.source == "shore"
        else one
        for one in wired()
    )


def many(count: int) -> tuple[WiredCircuit, ...]:
    """That many circuits, most of them on one panel, with names that are too long."""
    feeder = next(one for one in wired() if one.circuit.function == "cooling plant")
    return tuple(
        replace(
            feeder,
            circuit=replace(
                feeder.circuit,
                tag=f"W{number}",
                end=f"L{number}",
                start=f"X{4 + number % 7 // 6}",
                function=f"{LONG} {number}",
                end_name=LONG,
            ),
        )
        for number in range(1, count + 1)
    )


@cache
def boats() -> dict[str, tuple[WiredCircuit, ...]]:
    return {
        "rich": wired(),
        "split": split_service(),
        "side by side": side_by_side("W3", 8),
        "none": (),
        "one": wired()[:1],
        "200": many(200),
    }


every = pytest.mark.parametrize("boat", ["rich", "split", "side by side", "none", "one", "200"])
papers = pytest.mark.parametrize("paper", list(PAPERS.values()), ids=list(PAPERS))


@cache
def drawn(boat: str, paper: Paper = A3, system: System = "si") -> tuple[Body, ...]:
    return wiring_sheets(assessment(boats()[boat]), paper, system)


def runs(bodies: Sequence[Body]) -> list[Path]:
    return [path for body in bodies for path in measures.conductors(body)]


@every
@papers
@pytest.mark.parametrize("system", ["si", "us"])
def test_nothing_lies_over_anything_or_leaves_the_paper(boat: str, paper: Paper, system: System) -> None:
    assert not [fault for body in drawn(boat, paper, system) for fault in measures.faults(body, paper)]


@every
@papers
def test_no_conductor_crosses_another(boat: str, paper: Paper) -> None:
    assert sum(measures.crossings(body) for body in drawn(boat, paper)) == 0


@every
@papers
def test_every_conductor_ends_on_terminals(boat: str, paper: Paper) -> None:
    assert not [end for body in drawn(boat, paper) for end in measures.loose(body)]


def landed(body: Body) -> dict[str, tuple[set[tuple[str, str]], int]]:
    """What each conductor joins, by its marker: followed from terminal to terminal, through a fuse or breaker."""
    at: dict[tuple[float, float], tuple[str, str]] = {}
    joined: dict[tuple[str, str], str] = {}
    for number, item in enumerate(body.items):
        if isinstance(item, Placed):
            guard = item.key.startswith("circuit:")
            tag = next(one.words for one in item.attributes if one.name == "TAG")
            for name, _ in item.block.terminals:
                x, y = item.terminal(name)
                at[round(x, 3), round(y, 3)] = (f"{number}" if guard else tag, name)
                if guard:
                    joined[f"{number}", name] = f"{int(name) + 1 if int(name) % 2 else int(name) - 1}"
    ends: dict[str, list[tuple[str, str]]] = {}
    for path in measures.conductors(body):
        marker = dict(path.data)["marker"]
        ends.setdefault(marker, []).extend(at[round(x, 3), round(y, 3)] for x, y in (path.points[0], path.points[-1]))
    found: dict[str, tuple[set[tuple[str, str]], int]] = {}
    for marker, met in ends.items():
        through = [end for end in met if end in joined]
        assert all((tag, joined[tag, name]) in through for tag, name in through)
        found[marker] = ({end for end in met if end not in joined}, len(through) // 2)
    return found


@pytest.mark.parametrize("boat", ["rich", "split", "side by side", "200"])
@papers
def test_every_conductor_joins_its_two_terminals_and_stands_once(boat: str, paper: Paper) -> None:
    seen: Counter[str] = Counter()
    whole: dict[str, tuple[set[tuple[str, str]], int]] = {}
    for body in drawn(boat, paper):
        on_it = landed(body)
        seen.update(on_it.keys())
        whole |= on_it
    wanted = cores(boats()[boat])
    assert seen == Counter(core.marker for core in wanted)
    for core in wanted:
        assert whole[core.marker][0] == {(core.start.end, core.start.name), (core.end.end, core.end.name)}


@pytest.mark.parametrize("boat", ["rich", "split", "side by side"])
def test_a_device_stands_in_every_live_conductor_of_what_it_guards_and_in_no_other(boat: str) -> None:
    guarded = {one.tag for one in boats()[boat] if one.protection is not None}
    through = {marker: count for body in drawn(boat) for marker, (_, count) in landed(body).items()}
    for core in cores(boats()[boat]):
        assert through[core.marker] == (core.live and core.circuit in guarded), core.marker


def test_a_device_stands_nearer_to_the_end_that_it_belongs_to() -> None:
    circuits = {one.tag: one for one in wired() if one.protection is not None}
    count = 0
    for body in drawn("rich"):
        ends = {
            dict(path.data)["circuit"]: path for path in measures.conductors(body) if dict(path.data)["core"] in "−N"
        }
        for item in body.items:
            if isinstance(item, Placed) and item.data:
                one, path = circuits[dict(item.data)["circuit"]], ends[dict(item.data)["circuit"]]
                start, end = (abs(item.at[0] - point[0]) for point in path.points)
                assert one.protection is not None
                assert (start < end) is (one.protection.at == "start")
                count += 1
    assert count == len(circuits)


def test_fuses_and_breakers_say_tag_and_rating() -> None:
    shown = {
        tuple(one.words for one in item.attributes if one.shown)
        for body in drawn("rich")
        for item in body.items
        if isinstance(item, Placed) and item.data
    }
    assert shown == {
        (protection_tag(one.tag), f"{one.protection.rating:g} A") for one in wired() if one.protection is not None
    }


def test_a_circuit_without_a_device_that_fits_says_so() -> None:
    first = wired()[0]
    assert first.protection is not None
    bare = replace(first, protection=replace(first.protection, rating=float("nan")))
    body = wiring_sheets(assessment([bare]), A3, "si")[0]
    assert "none fits" in {
        one.words for item in body.items if isinstance(item, Placed) for one in item.attributes if one.name == "RATING"
    }


def hub_of(body: Body, path: Path) -> str:
    """The tag of the box at the left end of a conductor."""
    x, y = min(path.points)
    boxes = [item for item in body.items if isinstance(item, Placed) and item.block.name.startswith("HUB")]
    level = [item for item in boxes if item.box[2] <= x and item.box[1] < y < item.box[3]]
    return max(level, key=lambda item: item.box[2]).key


@pytest.mark.parametrize(
    ("function", "hub"),
    [
        ("bank string 1 of 2", "X1"),  # a bus before a device
        ("main feeder", "X1"),  # of two buses the one that feeds
        ("DC panel feeder", "X2"),
        ("bonding, DC negative", "X2"),
        ("cooling plant", "X4"),
        ("bonding, case of inverter", "X5"),
        ("temperature of the bank", "K1"),  # of two devices the one where more circuits meet
    ],
)
def test_each_circuit_stands_at_its_hub(function: str, hub: str) -> None:
    tag = next(one.tag for one in wired() if one.circuit.function == function)
    found = {
        hub_of(body, path)
        for body in drawn("rich")
        for path in measures.conductors(body)
        if dict(path.data)["circuit"] == tag
    }
    assert found == {hub}


@pytest.mark.parametrize("boat", ["rich", "200"])
def test_every_reference_has_its_anchor_on_one_of_the_sheets(boat: str) -> None:
    anchors = [name for body in drawn(boat) for name, _ in body.anchors]
    asked = {item.to for body in drawn(boat) for item in body.items if isinstance(item, Reference)}
    assert asked
    assert asked <= set(anchors)
    assert len(anchors) == len(set(anchors))


def test_a_part_that_stands_in_several_places_refers_to_another_of_them() -> None:
    places = Counter(
        item.key for body in drawn("rich") for item in body.items if isinstance(item, Placed) and not item.data
    )
    referring = {item.key for body in drawn("rich") for item in body.items if isinstance(item, Reference)}
    zones = {
        tag: {
            (number, A3.zone(at))
            for number, body in enumerate(drawn("rich"))
            for name, at in body.anchors
            if name.split(":")[1] == tag
        }
        for tag in places
    }
    assert referring == {tag for tag in places if len(zones[tag]) > 1}


def test_a_hub_too_long_for_a_column_goes_on_in_the_next_and_says_where() -> None:
    words = [item.before for body in drawn("200") for item in body.items if isinstance(item, Reference)]
    assert words.count("goes on at ") == words.count("from ") > 0


def test_sheets_have_names_of_their_own() -> None:
    names = [body.name for body in drawn("200")]
    assert names[:2] == ["wiring", "wiring-2"]
    assert len(names) == len(set(names))


def test_no_circuits_are_said_in_words() -> None:
    assert [item.words for item in drawn("none")[0].items if isinstance(item, Text)] == ["This design has no circuits."]


def test_a_name_cut_on_the_paper_is_whole_in_the_file() -> None:
    wholes = {
        one.words
        for body in drawn("200")
        for item in body.items
        if isinstance(item, Placed)
        for one in item.attributes
        if one.name == "NAME"
    }
    assert LONG in wholes


def test_blocks_of_one_name_are_the_same() -> None:
    found: dict[str, object] = {}
    for body in drawn("rich"):
        for item in body.items:
            if isinstance(item, Placed):
                assert found.setdefault(item.block.name, item.block) == item.block


def test_a_load_more_moves_nothing_of_the_hubs_before_it() -> None:
    last = [one for one in wired() if one.circuit.system == "bonding"][-1]
    more = replace(last, circuit=replace(last.circuit, tag="W999", function="bonding, mast", start="L99"))
    after = wiring_sheets(assessment((*wired(), more)), A3, "si")
    before = {
        (number, item.block.name, item.at)
        for number, body in enumerate(drawn("rich"))
        for item in body.items
        if isinstance(item, Placed)
    }
    now = {
        (number, item.block.name, item.at)
        for number, body in enumerate(after)
        for item in body.items
        if isinstance(item, Placed)
    }
    assert before <= now
