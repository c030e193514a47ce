"""The set of drawings of every starter: what lies where, and each circuit read back from the DXF that was written."""

from __future__ import annotations

import io
import re
from collections import Counter
from functools import cache
from typing import Any

import pytest
from ezdxf.filemanagement import read
from tests.drawings.measures import crossings, faults, loose
from tests.starters import assessed

from anchorwatt.assessment import assess
from anchorwatt.design import edit, parse, starter_text, starters
from anchorwatt.drawings.as_dxf import dxf
from anchorwatt.drawings.sheet import Box, Path, Placed, Sheet
from anchorwatt.drawings.sheets.body import REVISION
from anchorwatt.drawings.sheets.paper import PAPERS, PaperName
from anchorwatt.drawings.sheets.sheet_set import NAMES, SUBJECTS, sheet_set
from anchorwatt.drawings.svg import svg
from anchorwatt.units import System

CONNECTED = ("DC", "AC", "CONTROL", "BONDING")
ONE_LINES = ("dc-one-line", "ac-one-line", "control", "bonding")


@cache
def drawn(starter: str, paper: PaperName = "A3", system: System = "si") -> tuple[Sheet, ...]:
    return sheet_set(assessed(starter), paper, system)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("system", ["si", "us"])
@pytest.mark.parametrize("starter", starters())
def test_nothing_lies_over_anything_and_no_conductor_runs_through_a_symbol(
    starter: str, paper: PaperName, system: System
) -> None:
    for subject in SUBJECTS:
        for body in subject.layout(assessed(starter), PAPERS[paper], system):
            found = faults(body, PAPERS[paper])
            if body.scale != "none":  # a duct and a pipe that go the same way aboard do so on the plan
                found = [one for one in found if not one.startswith("on top")]
            assert found == [], body.name


@pytest.mark.parametrize("starter", starters())
def test_in_one_line_diagrams_no_conductor_crosses_another_and_none_ends_loose(starter: str) -> None:
    for subject in SUBJECTS:
        if subject.name in ONE_LINES:
            for body in subject.layout(assessed(starter), PAPERS["A3"], "si"):
                assert crossings(body) == 0
                assert loose(body) == []


@cache
def modelspaces(starter: str, subject: str) -> tuple[Any, ...]:
    """Each sheet of a subject as a CAD program reads the file."""
    files = [dxf(sheet) for sheet in drawn(starter) if sheet.name == subject or sheet.name.startswith(f"{subject}-")]
    return tuple(read(io.StringIO(file.decode("utf-8"))) for file in files)


def facts(entity: Any) -> dict[str, str]:
    """What an entity's extended data of ours say."""
    found: dict[str, str] = {}
    if entity.has_xdata("ANCHORWATT"):
        words: list[str] = []
        for tag in entity.get_xdata("ANCHORWATT"):
            if tag.code == 1002 and tag.value == "}" and words:
                found[words[0]] = "".join(words[1:])
                words = []
            elif tag.code == 1000:
                words.append(tag.value)
    return found


def spot(x: float, y: float) -> tuple[float, float]:
    return round(x, 4), round(y, 4)


def terminals(file: Any) -> dict[tuple[float, float], str]:
    """Where terminals lie in a file, and the tag of the symbol that each belongs to."""
    found = {}
    for insert in file.modelspace().query("INSERT"):
        tag = next((one.dxf.text for one in insert.attribs if one.dxf.tag == "TAG"), "")
        at = insert.dxf.insert
        for point in file.blocks[insert.dxf.name].query("POINT"):
            found[spot(at.x + point.dxf.location.x, at.y + point.dxf.location.y)] = tag
    return found


def connections(starter: str, subject: str) -> Counter[tuple[str, frozenset[str]]]:
    """Circuits of a subject with the tags that their outermost ends lie on, from the written files alone."""
    found = Counter[tuple[str, frozenset[str]]]()
    for file in modelspaces(starter, subject):
        tags = terminals(file)
        ends: dict[str, list[str]] = {}
        for line in file.modelspace().query("LWPOLYLINE"):
            if line.dxf.layer in CONNECTED:
                points = [spot(x, y) for x, y, *_ in line.get_points()]
                ends.setdefault(facts(line)["circuit"], []).extend(tags[point] for point in (points[0], points[-1]))
        for circuit, met in ends.items():
            outer = frozenset(tag for tag, times in Counter(met).items() if times == 1)  # what is in line is met twice
            found[circuit, outer] += 1
    return found


@pytest.mark.parametrize("starter", starters())
def test_each_circuit_of_the_schedule_is_on_one_one_line_diagram_once_between_its_two_ends(starter: str) -> None:
    found = Counter[tuple[str, frozenset[str]]]()
    for subject in ONE_LINES:
        found += connections(starter, subject)
    schedule = assessed(starter).wiring.wiring.circuits
    assert found == Counter((one.tag, frozenset((one.circuit.start, one.circuit.end))) for one in schedule)


@pytest.mark.parametrize("starter", starters())
def test_each_fuse_and_breaker_stands_in_its_circuit_with_its_rating(starter: str) -> None:
    found = Counter(
        (facts(insert)["circuit"], one.dxf.text)
        for subject in ONE_LINES
        for file in modelspaces(starter, subject)
        for insert in file.modelspace().query("INSERT")
        for one in insert.attribs
        if one.dxf.tag == "TAG" and one.dxf.text.startswith("F")
    )
    guarded = [one.tag for one in assessed(starter).wiring.wiring.circuits if one.protection is not None]
    assert found == Counter((tag, f"F{tag.removeprefix('W')}") for tag in guarded)


@pytest.mark.parametrize("starter", ["trawler-14m"])
def test_a_cad_program_finds_no_error(starter: str) -> None:
    for subject in NAMES:
        for file in modelspaces(starter, subject):
            assert [str(error) for error in file.audit().errors] == []


@pytest.mark.parametrize("starter", starters())
def test_every_sheet_as_svg_is_under_a_megabyte(starter: str) -> None:
    for sheet in drawn(starter):
        assert len(svg(sheet).encode()) < 1_000_000, sheet.name


@pytest.mark.parametrize(
    ("key", "said"),
    [
        ("dc.loads.deck wash", {"appliance": "water pump"}),
        ("ac.loads.kettle", {"appliance": "television and chargers", "cabin": "galley"}),
        (
            "charging.engines.main engine.alternators.third alternator",
            {"alternator": "large-frame 24 V 175 A", "belt": "twin eight-rib PK", "pulley_ratio": 2.8},
        ),
        ("dc.solar", {"panel": "rigid panel 400 W", "count": 2}),
    ],
)
def test_one_part_more_leaves_the_others_where_they_were(key: str, said: dict[str, Any]) -> None:
    before = places(drawn("trawler-14m"))
    more = edit(parse(starter_text("trawler-14m")), key, said)
    after = places(sheet_set(assess(more), "A3", "si", only=ONE_LINES))
    assert before - after == set()
    assert len(after) > len(before)


def places(sheets: tuple[Sheet, ...]) -> set[tuple[str, str, tuple[float, float]]]:
    """Where things stand on one-line diagrams, by sheet and name: tags are numbered anew when a part comes between."""
    return {
        (sheet.name, re.sub(r"\b[A-Z][0-9]+\b", "", one.words), item.at)
        for sheet in sheets
        if sheet.name in ONE_LINES
        for item in sheet.items
        if isinstance(item, Placed)
        for one in item.attributes
        if one.name == "NAME"
    }


def test_sheets_keep_their_numbers_when_only_some_are_asked_for() -> None:
    whole = {sheet.name: sheet for sheet in drawn("trawler-14m")}
    (only,) = sheet_set(assessed("trawler-14m"), "A3", "si", only=["bonding"])
    assert only == whole["bonding"]


def test_what_changed_since_an_earlier_file_gets_a_cloud_and_nothing_else_does() -> None:
    earlier = assessed("trawler-14m")
    now = assess(edit(earlier.design, "dc.loads.deck wash", {"appliance": "water pump"}))
    sheets = {sheet.name: sheet for sheet in sheet_set(now, "A3", "si", since=earlier)}
    clouds = [item for item in sheets["dc-one-line"].items if isinstance(item, Path) and item.layer == REVISION]
    new = next(
        item
        for item in sheets["dc-one-line"].items
        if isinstance(item, Placed) and any(one.words == "deck wash" for one in item.attributes)
    )
    assert any(round_(cloud, new.box) for cloud in clouds)
    old = next(
        item
        for item in sheets["dc-one-line"].items
        if isinstance(item, Placed) and any(one.words == "refrigerator" for one in item.attributes)
    )
    assert not any(round_(cloud, old.box) for cloud in clouds)


def test_without_a_change_there_is_no_cloud() -> None:
    same = assessed("trawler-14m")
    for sheet in sheet_set(same, "A3", "si", since=same):
        assert not [item for item in sheet.items if isinstance(item, Path) and item.layer == REVISION]


def round_(cloud: Path, box: Box) -> bool:
    """Whether a cloud goes round a box."""
    xs, ys = zip(*cloud.points, strict=True)
    return bool(min(xs) < box[0] and min(ys) < box[1] and max(xs) > box[2] and max(ys) > box[3])
