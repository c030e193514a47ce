"""Arrangement, cable routes, ducts and pipes: to a true scale, every mass once, nothing over anything."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from itertools import combinations, pairwise
from types import SimpleNamespace
from typing import cast

import pytest
from tests.drawings import measures
from tests.simulation import boats
from tests.sizing.test_terminals import wired

from anchorwatt.assessment import Assessment
from anchorwatt.assessment.places import places_story
from anchorwatt.assessment.weight import weight_story
from anchorwatt.design.specification import Item, Point, Specification, TakenOut
from anchorwatt.drawings.sheet import Item as Drawn
from anchorwatt.drawings.sheet import Path, Placed, Text
from anchorwatt.drawings.sheets.arrangement import arrangement_sheets
from anchorwatt.drawings.sheets.body import ROUTES, Body, Reference
from anchorwatt.drawings.sheets.cable_routes import cable_route_sheets
from anchorwatt.drawings.sheets.duct_routes import duct_route_sheets
from anchorwatt.drawings.sheets.paper import PAPERS, Paper
from anchorwatt.drawings.sheets.room import cross
from anchorwatt.drawings.sheets.route_plan import along_the_axes, along_then_across, stretches
from anchorwatt.drawings.sheets.scales import BOAT, largest
from anchorwatt.sizing.ducts import handler_air
from anchorwatt.sizing.seawater import seawater_flow
from anchorwatt.sizing.weight import CABLES, Carried, weight
from anchorwatt.sizing.wiring import WiredCircuit
from anchorwatt.units import System

A3 = PAPERS["A3"]
LONG = ("a <part> & “its” name\n " * 12)[:200]
OLD = TakenOut("replaced bank: an old one", 300.0, Point(3.0, 0.8, -0.2), True)
LAID = Carried(CABLES, "cables, 60 circuits", 40.0, Point(5.0, 0.1, 0.5), False, False)


def part(tag: str, kind: str, at: Point, size: tuple[float, float, float], count: int = 1, name: str = "") -> Item:
    keys = {
        "alternator": "charging.engines.main.alternators.port.alternator",
        "belt": "charging.engines.main.alternators.port.belt",
        "air_handler": f"cooling.plant.handlers.{tag}.unit",
    }
    item = boats.item(keys.get(kind, tag), kind, name or f"part {tag}", count, 20.0, math.nan, "")
    return replace(item, tag=tag, position=at, size=size, placed=True)


UNKNOWN = (math.nan, math.nan, math.nan)
PARTS = (
    part("E1", "condensing_unit", Point(3.0, 1.0, 0.0), (0.5, 0.36, 0.4)),
    part("E2", "air_handler", Point(6.0, -1.0, 0.6), (0.4, 0.3, 0.33)),
    part("E3", "air_handler", Point(9.0, 1.0, 0.6), (0.4, 0.3, 0.33)),
    part("T1", "inverter", Point(5.0, -1.2, 0.3), (0.33, 0.24, 0.43)),
    part("G1", "battery_module", Point(5.2, 0.2, -0.2), (0.6, 0.3, 0.3), 2),
    part("G2", "alternator", Point(4.5, 0.0, 0.1), (0.24, 0.18, 0.18)),
    part("V1", "belt", Point(4.5, 0.0, 0.1), UNKNOWN),
)


def made(boat: Specification, circuits: Sequence[WiredCircuit]) -> Assessment:
    figures = weight(boat, (LAID,))
    return cast(
        Assessment,
        SimpleNamespace(
            specification=boat,
            weight=weight_story(boat, figures, lambda _: "typed"),
            places=places_story(boat, figures, {}, lambda _: "typed"),
            wiring=SimpleNamespace(wiring=SimpleNamespace(circuits=tuple(circuits)), busbars=()),
            handlers_air=tuple(handler_air(one) for one in boat.plant.handlers),
            seawater=seawater_flow(boat),
        ),
    )


def plain() -> Specification:
    return replace(boats.boat(2), items=PARTS, removed=(OLD,), spaces=(boats.space(),))


def named_long() -> Specification:
    boat = plain()
    return replace(
        boat,
        name=LONG,
        items=tuple(replace(item, name=LONG) for item in boat.items),
        cabins=tuple(replace(cabin, name=f"{LONG} {number}") for number, cabin in enumerate(boat.cabins)),
        spaces=(replace(boat.spaces[0], name=LONG),),
        removed=(replace(OLD, name=LONG),),
    )


def sixty() -> Specification:
    """Sixty cabins, each with a part, some of them at one place."""
    boat = plain()
    cabins = tuple(
        replace(
            boat.cabins[0],
            name=f"cabin {number}",
            floor_area=1.0,
            length=1.0,
            centre=Point(1.0 + 0.18 * number, 0.3 * (number % 7 - 3), 0.5),
        )
        for number in range(60)
    )
    items = tuple(
        part(f"E{number + 1}", "air_handler", cabin.centre, (0.4, 0.3, 0.3)) for number, cabin in enumerate(cabins)
    )
    twice = tuple(replace(item, tag=f"T{number}") for number, item in enumerate(items[:40]))
    return replace(boat, cabins=cabins, items=(*items, *twice))


def circuits(count: int, name: str = "") -> tuple[WiredCircuit, ...]:
    one = wired()[0]
    return tuple(
        replace(
            one,
            circuit=replace(
                one.circuit,
                tag=f"W{number}",
                start=f"X{number % 5}",
                end=f"L{number}",
                function=f"{name or 'circuit'} {number}",
                places=(Point(3.0 + number % 5, 0.5, 0.2), Point(2.0 + 0.05 * number, 0.2 * (number % 9) - 0.8, 1.0)),
            ),
        )
        for number in range(1, count + 1)
    )


@cache
def assessments() -> dict[str, Assessment]:
    return {
        "plain": made(plain(), wired()),
        "long names": made(named_long(), circuits(20, LONG)),
        "60 cabins": made(sixty(), circuits(200)),
        "two hulls": made(replace(plain(), hulls=2, beam=7.2, hull_beam=1.4), wired()),
        "no part": made(replace(plain(), items=(), spaces=()), ()),
        "far off": made(replace(plain(), items=(replace(PARTS[0], position=Point(-3.0, 4.0, 9.0)),)), ()),
    }


BOATS = ("plain", "long names", "60 cabins", "two hulls", "no part", "far off")
every = pytest.mark.parametrize("boat", BOATS)
papers = pytest.mark.parametrize("paper", list(PAPERS.values()), ids=list(PAPERS))
systems = pytest.mark.parametrize("system", ["si", "us"])


@cache
def drawn(boat: str, paper: Paper = A3, system: System = "si") -> tuple[Body, ...]:
    layouts = (arrangement_sheets, cable_route_sheets, duct_route_sheets)
    return tuple(body for layout in layouts for body in layout(assessments()[boat], paper, system))


def arrangement(boat: str, paper: Paper = A3, system: System = "si") -> list[Body]:
    return [body for body in drawn(boat, paper, system) if body.name.startswith("arrangement")]


def balloons(bodies: Sequence[Body]) -> list[Placed]:
    return [item for body in bodies for item in body.items if isinstance(item, Placed)]


def leaders(body: Body) -> list[Path]:
    return [item for item in body.items if isinstance(item, Path) and "leader" in dict(item.data)]


@every
@papers
@systems
def test_nothing_lies_over_anything_or_leaves_the_paper(boat: str, paper: Paper, system: System) -> None:
    bodies = drawn(boat, paper, system)
    found = [fault for body in bodies for fault in (*measures.overlaps(body), *measures.outside(body, paper))]
    assert not found


@every
@papers
def test_no_pipe_or_duct_runs_through_words(boat: str, paper: Paper) -> None:
    assert not [fault for body in drawn(boat, paper) for fault in measures.struck(body)]


@every
def test_no_cable_runs_through_words(boat: str) -> None:
    assert not [fault for body in drawn(boat) for fault in measures.struck(body, (ROUTES,))]


@every
@papers
@systems
def test_every_mass_has_one_balloon(boat: str, paper: Paper, system: System) -> None:
    figures = assessments()[boat].weight.figures
    found = Counter(one.key for one in balloons(arrangement(boat, paper, system)))
    assert found == Counter(one.tag or one.name for one in figures.carried)


@every
def test_no_two_balloons_have_one_number(boat: str) -> None:
    found = Counter(one.attributes[0].words for one in balloons(arrangement(boat)))
    assert set(found.values()) <= {1}


@every
@papers
def test_no_leader_crosses_another(boat: str, paper: Paper) -> None:
    for body in arrangement(boat, paper):
        pieces = [(one.points[0], one.points[1]) for one in leaders(body)]
        assert not [(a, b) for a, b in combinations(pieces, 2) if cross(*a, *b)]


@every
@papers
def test_no_leader_runs_through_words_or_a_balloon(boat: str, paper: Paper) -> None:
    assert not [
        fault
        for body in arrangement(boat, paper)
        for fault in measures.struck(replace(body, items=_as_leaders(body)), ("LEADER",))
    ]


def _as_leaders(body: Body) -> tuple[Drawn | Reference, ...]:
    """The sheet with its leaders on a layer of their own; they stop a hair before their balloon."""
    found: list[Drawn | Reference] = []
    for item in body.items:
        if isinstance(item, Path) and "leader" in dict(item.data):
            (x, y), (to_x, to_y) = item.points
            found.append(replace(item, points=((x, y), (x + 0.99 * (to_x - x), y + 0.99 * (to_y - y))), layer="LEADER"))
        else:
            found.append(item)
    return tuple(found)


@every
@papers
@systems
def test_the_list_has_every_mass_once(boat: str, paper: Paper, system: System) -> None:
    numbers = {one.attributes[0].words for one in balloons(arrangement(boat, paper, system))}
    listed = Counter(
        item.words
        for body in arrangement(boat, paper, system)
        for item in body.items
        if isinstance(item, Text)
        and item.words in numbers
        and item.key
        and item.key != "station"
        and item.anchor == "start"
    )
    assert set(listed) == numbers


def ratio(body: Body) -> float:
    """mm of the boat for 1 mm of paper, as the title block says."""
    return float(body.scale.rpartition("1:")[2].rstrip(")"))


@papers
@systems
@pytest.mark.parametrize("item", [one for one in PARTS if one.tag != "V1"], ids=lambda one: one.tag)
def test_a_part_is_drawn_in_its_true_size(item: Item, paper: Paper, system: System) -> None:
    body = arrangement("plain", paper, system)[0]
    for view, second in (("plan", 1), ("profile", 2)):
        shapes = [
            path
            for path in body.items
            if isinstance(path, Path) and dict(path.data) == {"part": item.tag, "view": view}
        ]
        across = [x for path in shapes for x, _ in path.points]
        down = [y for path in shapes for _, y in path.points]
        units = item.count if view == "plan" else 1
        assert max(across) - min(across) == pytest.approx(1000.0 * item.size[0] / ratio(body))
        assert max(down) - min(down) == pytest.approx(1000.0 * units * item.size[second] / ratio(body))


@papers
@systems
def test_parts_stand_as_far_apart_as_they_are(paper: Paper, system: System) -> None:
    body = arrangement("plain", paper, system)[0]
    ends = {path.key: path.points[0] for path in leaders(body)}
    long, across = ends["E3"][0] - ends["E1"][0], ends["E3"][1] - ends["E2"][1]
    assert (long, across) == pytest.approx((6000.0 / ratio(body), 2000.0 / ratio(body)))


def test_a_part_of_unknown_size_is_a_cross() -> None:
    shapes = [one for one in arrangement("plain")[0].items if isinstance(one, Path) and ("part", "V1") in one.data]
    assert all(len(one.points) == 2 for one in shapes)
    assert len(shapes) == 4


@systems
def test_the_scale_is_the_largest_that_fits(system: System) -> None:
    room, boat = (300.0, 150.0), (14.0, 5.0)
    found = largest(BOAT[system], room, boat)
    larger = [one for one in BOAT[system] if one.ratio < found.ratio]
    assert boat[0] * found.per_metre <= room[0]
    assert all(boat[0] * one.per_metre > room[0] or boat[1] * one.per_metre > room[1] for one in larger)


def test_a_part_added_at_the_end_renumbers_no_other() -> None:
    def numbers(assessment: Assessment) -> dict[str, str]:
        bodies = arrangement_sheets(assessment, A3, "si")
        return {one.key: one.attributes[0].words for one in balloons(bodies)}

    more = part("T9", "charger", Point(7.0, 0.5, 0.1), (0.3, 0.2, 0.3))
    before = numbers(assessments()["plain"])
    after = numbers(made(replace(plain(), items=(*PARTS, more)), ()))
    assert before.items() <= after.items()


@every
@papers
def test_every_cable_is_listed_once(boat: str, paper: Paper) -> None:
    tags = [one.tag for one in assessments()[boat].wiring.wiring.circuits]
    bodies = [body for body in drawn(boat, paper) if body.name.startswith("cable-routes")]
    words = Counter(item.words for body in bodies for item in body.items if isinstance(item, Text))
    assert all(words[tag] == 1 for tag in tags)


@every
def test_every_cable_with_a_way_is_drawn(boat: str) -> None:
    circuits = assessments()[boat].wiring.wiring.circuits
    apart = {
        one.tag
        for one in circuits
        if one.circuit.places is not None
        and (one.circuit.places[0].forward, one.circuit.places[0].starboard)
        != (one.circuit.places[1].forward, one.circuit.places[1].starboard)
    }
    held = {
        tag
        for body in drawn(boat)
        for item in body.items
        if isinstance(item, Path) and item.layer == ROUTES
        for tag in dict(item.data)["circuits"].split()
    }
    assert held == apart


def test_a_route_is_as_long_as_the_axes_ask() -> None:
    """The lengths of the wire schedule count the same way: along the boat and across it."""
    body = next(one for one in drawn("plain") if one.name == "cable-routes")
    found: Counter[str] = Counter()
    for item in body.items:
        if isinstance(item, Path) and item.layer == ROUTES:
            for tag in dict(item.data)["circuits"].split():
                found[tag] += math.dist(*item.points) * ratio(body) / 1000.0  # type: ignore[assignment]
    for one in wired():
        if one.tag in found and one.circuit.places is not None:
            start, end = one.circuit.places
            assert found[one.tag] == pytest.approx(
                abs(start.forward - end.forward) + abs(start.starboard - end.starboard), abs=1e-4
            )


def test_routes_are_level_or_upright() -> None:
    assert not [fault for body in drawn("plain") for fault in measures.slanted(body, (ROUTES, *measures.CONDUCTORS))]


def test_shared_stretches_are_one_line() -> None:
    found = stretches({"a": ((0.0, 0.0), (4.0, 0.0)), "b": ((1.0, 0.0), (6.0, 0.0), (6.0, 2.0))})
    assert {(one.start, one.end): one.runs for one in found} == {
        ((0.0, 0.0), (1.0, 0.0)): ("a",),
        ((1.0, 0.0), (4.0, 0.0)): ("a", "b"),
        ((4.0, 0.0), (6.0, 0.0)): ("b",),
        ((6.0, 0.0), (6.0, 2.0)): ("b",),
    }


@pytest.mark.parametrize("trunk", [-3.0, 0.0, 0.7, 5.0])
def test_a_way_by_the_trunk_is_no_way_round(trunk: float) -> None:
    way = along_the_axes((1.0, -1.0), (5.0, 2.0), trunk)
    assert sum(math.dist(a, b) for a, b in pairwise(way)) == pytest.approx(7.0)


def test_a_way_to_where_it_begins_is_no_way() -> None:
    assert along_then_across((1.0, 1.0), (1.0, 1.0)) == ((1.0, 1.0),)


def test_more_cables_are_a_wider_line() -> None:
    body = next(one for one in drawn("plain") if one.name == "cable-routes")
    lines = [item for item in body.items if isinstance(item, Path) and item.layer == ROUTES]
    widths = {len(dict(item.data)["circuits"].split()): item.width for item in lines}
    assert [widths[count] for count in sorted(widths)] == sorted(widths.values())
    assert len(widths) > 2


def test_a_place_that_nobody_typed_is_told_as_estimated() -> None:
    body = next(one for one in drawn("plain") if one.name == "ducts-and-pipes")
    assert any("E2.1, E3.1" in note for note in body.notes)


def test_each_duct_is_listed_with_its_length() -> None:
    body = next(one for one in drawn("plain") if one.name == "ducts-and-pipes")
    ducts = [item for item in body.items if isinstance(item, Text) and item.key.startswith("duct ")]
    handlers = assessments()["plain"].specification.plant.handlers
    assert {item.key for item in ducts} == {f"duct {one.name}, {o.name}" for one in handlers for o in one.outlets}
    assert [item.words for item in ducts].count("2.00 m") == sum(len(one.outlets) for one in handlers)
