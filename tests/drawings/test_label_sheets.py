"""Labels of a boat's wiring, as rows for a printer and at true size on a sheet."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import cache

import pytest
from tests.drawings import measures
from tests.drawings.test_wiring_sheets import LONG, assessment, boats
from tests.sizing.test_terminals import wired

from anchorwatt.drawings.sheet import Placed, Text
from anchorwatt.drawings.sheets.body import Body
from anchorwatt.drawings.sheets.labels import MARKERS, SIZES, Label, label_rows, label_sheets, labels
from anchorwatt.drawings.sheets.paper import PAPERS, Paper
from anchorwatt.papers.as_csv import csv_text
from anchorwatt.sizing.terminals import cores

A3 = PAPERS["A3"]

every = pytest.mark.parametrize("boat", ["rich", "split", "side by side", "none", "one", "200"])
papers = pytest.mark.parametrize("paper", list(PAPERS.values()), ids=list(PAPERS))


@cache
def drawn(boat: str, paper: Paper = A3) -> tuple[Body, ...]:
    return label_sheets(assessment(boats()[boat]), paper, "si")


def placed(boat: str, paper: Paper = A3) -> list[Placed]:
    return [item for body in drawn(boat, paper) for item in body.items if isinstance(item, Placed)]


def of(kind: str, boat: str = "rich") -> list[Label]:
    return [one for one in labels(assessment(boats()[boat]), "si") if one.kind == kind]


@every
@papers
def test_nothing_lies_over_anything_or_leaves_the_paper(boat: str, paper: Paper) -> None:
    assert not [fault for body in drawn(boat, paper) for fault in measures.faults(body, paper)]


@pytest.mark.parametrize("boat", ["rich", "200"])
def test_words_of_a_label_stay_on_it(boat: str) -> None:
    for item in placed(boat):
        left, top, right, bottom = item.block.box
        for one in item.attributes:
            if one.shown:
                box = measures.letters(one.words, one.at, one.size, one.anchor, one.bold)
                assert left <= box[0]
                assert top <= box[1]
                assert box[2] <= right
                assert box[3] <= bottom


@every
@papers
def test_every_label_is_drawn_as_often_as_it_is_needed(boat: str, paper: Paper) -> None:
    wanted = Counter(dict.fromkeys(SIZES, 0))
    for one in labels(assessment(boats()[boat]), "si"):
        wanted[one.kind] += one.count
    found = Counter(item.block.name for item in placed(boat, paper))
    assert found == Counter({f"LABEL-{kind.upper().replace(' ', '-')}": count for kind, count in wanted.items()})


def test_labels_are_drawn_at_their_true_size() -> None:
    assert {body.scale for body in drawn("rich")} == {"1:1"}
    sizes = {item.block.name: (item.box[2] - item.box[0], item.box[3] - item.box[1]) for item in placed("rich")}
    assert sizes["LABEL-CAUTION"] == pytest.approx((90.0, 35.0))
    assert sizes["LABEL-LEGEND"] == pytest.approx((40.0, 15.0))
    assert sizes["LABEL-WIRE-MARKER"] == pytest.approx((25.0, 12.0))


def test_every_conductor_has_its_markers_at_both_ends() -> None:
    count: Counter[tuple[str, str]] = Counter()
    for one in of("wire marker"):
        count[one.tag, one.place] += one.count
    wanted = {(core.marker, end.whole): MARKERS for core in cores(wired()) for end in (core.start, core.end)}
    assert dict(count) == wanted


def test_a_wire_marker_says_first_where_it_is_itself() -> None:
    assert all(one.lines[0].startswith(f"{one.place} to ") for one in of("wire marker"))


def test_every_terminal_has_a_label() -> None:
    wanted = {end.whole for core in cores(wired()) for end in (core.start, core.end)}
    assert {one.tag for one in of("terminal")} == wanted


def test_every_device_has_a_legend_with_its_rating_and_family() -> None:
    found = [dict(one.facts) for one in of("legend")]
    wanted = [one for one in wired() if one.protection is not None]
    for facts, one in zip(found, wanted, strict=True):
        assert one.protection is not None
        assert facts["function"] == one.circuit.function
        assert facts["rating"] == f"{one.protection.rating:g} A"
        assert facts["family"] == one.protection.family


def test_a_caution_is_never_cut() -> None:
    for item in placed("rich"):
        if item.block.name == "LABEL-CAUTION":
            shown = " ".join(one.words for one in item.attributes if one.shown and one.name != "AT")
            assert shown == item.told.replace("; ", " ")


@pytest.mark.parametrize(
    ("title", "place"),
    [
        ("TWO SOURCES FEED THIS PANEL", "X4 AC panel"),
        ("LITHIUM BATTERIES", ""),
        ("STOP THE ENGINES FIRST", "X2 DC bus"),
        ("SHOCK CAN KILL", "X4 AC panel"),
        ("SWITCH OFF BEFORE YOU UNPLUG", "X6 shore inlet"),
        ("TEST EVERY MONTH", "Q1 shore main breaker"),
    ],
)
def test_a_boat_with_everything_has_each_caution_at_its_place(title: str, place: str) -> None:
    assert any(one.tag == title and one.place.endswith(place) for one in of("caution"))


def test_every_caution_says_who_decides() -> None:
    assert all("certified people" in one.lines[-1] for one in of("caution"))


def test_a_boat_without_shore_power_has_no_caution_on_it() -> None:
    alone = [one for one in wired() if one.circuit.source != "shore"]
    titles = {one.tag for one in labels(assessment(alone), "si")}
    assert not titles & {"TWO SOURCES FEED THIS PANEL", "SWITCH OFF BEFORE YOU UNPLUG", "TEST EVERY MONTH"}


def test_a_panel_of_50_v_and_less_has_no_caution_of_a_shock() -> None:
    low = [
        replace(one, circuit=replace(one.circuit, voltage=24.0))
        for one in wired()
        if one.circuit.system in ("dc", "bonding")
    ]
    assert "SHOCK CAN KILL" not in {one.tag for one in labels(assessment(low), "si")}


def test_rows_have_one_set_of_columns() -> None:
    rows = label_rows(assessment(wired()), "si")
    assert {tuple(row) for row in rows} == {tuple(rows[0])}


def test_a_long_name_is_whole_in_the_rows() -> None:
    assert any(LONG in row["function"] for row in label_rows(assessment(boats()["200"]), "si"))


@pytest.mark.parametrize("name", ["=1+1", "+1", "-1", "@now", "\tx"])
def test_a_name_that_a_spreadsheet_would_compute_is_marked_as_text(name: str) -> None:
    first = wired()[0]
    named = replace(first, circuit=replace(first.circuit, function=name))
    legend = next(row for row in label_rows(assessment([named]), "si") if row["kind"] == "legend")
    assert f",'{name}," in csv_text([legend])


def test_no_circuits_are_said_in_words() -> None:
    assert [item.words for item in drawn("none")[0].items if isinstance(item, Text)] == ["This design needs no labels."]
