"""The layout of schematics: whatever hangs together, nothing lies over anything and everything is connected once."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.drawings.measures import crossings, faults, loose

from anchorwatt.drawings.sheet import Path, Placed, Point
from anchorwatt.drawings.sheets.body import DC, Body, Reference
from anchorwatt.drawings.sheets.circuit_trees import trees
from anchorwatt.drawings.sheets.frame import Titles, framed
from anchorwatt.drawings.sheets.paper import PAPERS, Paper
from anchorwatt.drawings.sheets.tree import InLine, Link, Thing, most_rows, tree_bodies

SAID = Titles("boat", "yard", "1", "me", "you", "A", "2026-11-20", ())
A3 = PAPERS["A3"]


def thing(tag: str, name: str = "part", symbol: str = "LOAD") -> Thing:
    return Thing(tag, name, "5 kW", symbol)


def link(number: int, start: str, end: str, guard: str = "") -> Link:
    guards = (InLine("FUSE", f"F{number}", "200 A", guard),) if guard else ()
    return Link(f"circuit:{number}", f"W{number}", DC, f"W{number}  12.5 m", "2 × 95 mm²", start, end, guards)


def bodies(
    links: list[Link], known: dict[str, Thing], root: str, paper: Paper = A3, left: str = ""
) -> tuple[Body, ...]:
    grown = trees(links, known, root, lambda tag: tag in left.split())
    return tree_bodies(grown, paper, name="test", title="Test", about="")


def star(count: int, name: str = "part") -> tuple[Body, ...]:
    known = {"X1": thing("X1", symbol="")} | {f"L{one}": thing(f"L{one}", name) for one in range(count)}
    return bodies([link(one, "X1", f"L{one}", "X1") for one in range(count)], known, "X1")


@st.composite
def boats(draw: st.DrawFn) -> tuple[list[Link], dict[str, Thing], str]:
    """Circuits as boats have them: a tree, some side by side, some that close a ring between neighbours."""
    count = draw(st.integers(1, 60))
    symbols = st.sampled_from(["", "LOAD", "INVERTER", "TRANSFORMER"])
    names = st.text(st.characters(codec="utf-8", exclude_categories=["Cs", "Cc"]), max_size=200)
    known = {
        f"T{n}": Thing(f"T{n}", draw(names), draw(st.sampled_from(["", "175 A"])), draw(symbols)) for n in range(count)
    }
    links: list[Link] = []
    for number in range(1, count):
        parent = draw(st.integers(max(0, number - 12), number - 1))
        for _ in range(draw(st.sampled_from([1, 1, 1, 2, 3]))):
            guard = draw(st.sampled_from(["", f"T{parent}", f"T{number}"]))
            ends = (parent, number) if draw(st.booleans()) else (number, parent)
            links.append(link(len(links) + 1, f"T{ends[0]}", f"T{ends[1]}", guard))
    left = " ".join(f"T{n}" for n in range(count) if draw(st.booleans()))
    return links, known, left


@pytest.mark.parametrize("paper", PAPERS.values(), ids=list(PAPERS))
@settings(max_examples=25)
@given(boat=boats())
def test_nothing_lies_over_anything(boat: tuple[list[Link], dict[str, Thing], str], paper: Paper) -> None:
    links, known, left = boat
    for body in bodies(links, known, "T0", paper, left):
        assert faults(body, paper) == []
        assert loose(body) == []
        assert crossings(body) == 0


@settings(max_examples=25)
@given(boat=boats())
def test_every_connection_is_drawn_once_and_ends_on_its_two_things(
    boat: tuple[list[Link], dict[str, Thing], str],
) -> None:
    links, known, left = boat
    found = Counter[tuple[str, frozenset[str]]]()
    for body in bodies(links, known, "T0", A3, left):
        found += Counter(ends_of_circuits(body))
    assert found == Counter((one.tag, frozenset((one.start, one.end))) for one in links)


def ends_of_circuits(body: Body) -> list[tuple[str, frozenset[str]]]:
    """Each circuit of a sheet with the tags of the things that its outermost points lie on."""
    tags: dict[Point, str] = {}
    for item in body.items:
        if isinstance(item, Placed) and not item.key.startswith("circuit:"):
            for name, _ in item.block.terminals:
                tags[rounded(item.terminal(name))] = item.key
    ends: dict[str, list[str]] = {}
    for item in body.items:
        if isinstance(item, Path) and item.layer == DC:
            circuit = dict(item.data)["circuit"]
            ends.setdefault(circuit, []).extend(
                tags[point] for point in map(rounded, (item.points[0], item.points[-1])) if point in tags
            )
    return [(circuit, frozenset(found)) for circuit, found in ends.items() if len(found) == 2]


def rounded(point: Point) -> Point:
    return round(point[0], 6), round(point[1], 6)


def test_a_connection_that_closes_a_ring_runs_between_neighbours() -> None:
    known = {tag: thing(tag, symbol="" if tag == "X2" else "LOAD") for tag in ("X2", "G1", "T1", "K1")}
    links = [link(1, "G1", "X2"), link(2, "X2", "T1"), link(3, "X2", "K1"), link(4, "K1", "G1")]
    (body,) = bodies(links, known, "X2")
    heights = {item.key: item.at[1] for item in body.items if isinstance(item, Placed)}
    assert heights["K1"] - heights["G1"] == pytest.approx(11.0)
    assert faults(body, A3) == []


def test_one_thing_more_at_the_end_moves_nothing() -> None:
    before, after = star(9)[0], star(10)[0]
    places = {item.key: item.at for item in after.items if isinstance(item, Placed)}
    for item in before.items:
        if isinstance(item, Placed):
            assert places[item.key] == item.at


def test_two_hundred_circuits_go_on_as_many_sheets_as_they_need_and_lead_to_each_other() -> None:
    sheets = star(200)
    assert len(sheets) == -(-200 // most_rows(A3))
    referring = [item for body in sheets for item in body.items if isinstance(item, Reference)]
    assert len(referring) == len(sheets)
    assert [sheet.name for sheet in framed(sheets, SAID, A3)][:2] == ["test", "test-2"]


def test_no_circuit_gives_one_sheet_that_says_so() -> None:
    (body,) = bodies([], {}, "X1")
    assert [item.words for item in body.items if not isinstance(item, Path | Placed | Reference)] == [  # type: ignore[union-attr]
        "The design has nothing that this sheet would show."
    ]


def test_a_name_of_two_hundred_letters_stays_in_its_box_and_is_kept_whole_for_a_cad_user() -> None:
    (body,) = star(3, "W" * 200)
    placed = [item for item in body.items if isinstance(item, Placed) and item.key == "L1"]
    assert {one.words for one in placed[0].attributes if one.name == "NAME"} == {"W" * 200}
    assert faults(body, A3) == []
