"""Results of the trials: the table is read back, and what is wrong in it is told by line and column."""

from __future__ import annotations

import csv
import io
import math
from pathlib import Path

import pytest

from anchorwatt.assessment.commissioning import Reading, Trial
from anchorwatt.assessment.trial_results import (
    LONGEST,
    NEEDED,
    WANTED,
    Filled,
    TrialResults,
    read_results,
    trial_results,
)
from anchorwatt.design.csv_table import LARGEST
from anchorwatt.errors import BadResults

COLUMNS = (*WANTED, *NEEDED)
GOOD = {
    "system": "Seawater",
    "trial": "Flow and rise",
    "reading": "flow",
    "expected": "24",
    "accept_from": "21.6",
    "to": "26.4",
    "unit": "L/min",
    "found": "25",
    "verdict": "pass",
    "date": "2026-11-28",
    "by": "J. Marsh",
}
NAN = math.nan
FLOW = Reading("flow", 4e-4, 3.6e-4, 4.4e-4, "liquid flow")
LOOK = Reading("pan", NAN, NAN, NAN, "", "nothing stands in it")
NOTED = Reading("saloon", NAN, NAN, NAN, "", "write it down", judged=False)
SEEN = {"expected": "", "accept_from": "", "to": "", "unit": ""}


def trial(name: str, *readings: Reading) -> Trial:
    return Trial("Seawater", name, (), "do", readings, "how", "source", "proves", "leaves open")


TRIALS = (trial("Flow and rise", FLOW, LOOK, NOTED),)


def table(*rows: dict[str, str], delimiter: str = ",", columns: tuple[str, ...] = COLUMNS) -> str:
    text = io.StringIO()
    writer = csv.DictWriter(text, columns, delimiter=delimiter, extrasaction="ignore")
    writer.writeheader()
    writer.writerows(GOOD | row for row in rows)
    return text.getvalue()


def read(tmp_path: Path, content: str | bytes) -> tuple[Filled, ...]:
    path = tmp_path / "filled.csv"
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return read_results(path)


def refused(tmp_path: Path, content: str | bytes) -> str:
    with pytest.raises(BadResults) as told:
        read(tmp_path, content)
    return str(told.value)


def results(tmp_path: Path, *rows: dict[str, str]) -> TrialResults:
    return trial_results(TRIALS, read(tmp_path, table(*rows)))


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_spreadsheets_may_set_columns_apart_as_they_do(tmp_path: Path, delimiter: str) -> None:
    (one,) = read(tmp_path, table({}, delimiter=delimiter))
    assert (one.trial, one.found, one.by) == ("Flow and rise", "25", "J. Marsh")


def test_a_mark_of_utf_8_before_the_first_column_is_no_part_of_its_name(tmp_path: Path) -> None:
    (one,) = read(tmp_path, table({"by": "Zoë"}).encode("utf-8-sig"))
    assert one.by == "Zoë"


def test_four_columns_are_enough_and_stand_in_any_order(tmp_path: Path) -> None:
    (one,) = read(tmp_path, table({}, columns=tuple(reversed(NEEDED))))
    assert (one.reading, one.date, one.to) == ("flow", "", "")


def test_empty_cells_left_out_at_the_end_of_a_row_are_empty(tmp_path: Path) -> None:
    (one,) = read(tmp_path, "trial,reading,found,verdict,date,by\nFlow and rise,flow,25,pass\n")
    assert (one.verdict, one.by) == ("pass", "")


@pytest.mark.parametrize(
    ("row", "column", "found", "allowed"),
    [
        ({"verdict": "fine"}, "verdict", '"fine"', "pass, fail, or nothing"),
        ({"trial": ""}, "trial", "nothing", "as the table had it"),
        ({"reading": " "}, "reading", "nothing", "as the table had it"),
        ({"found": "9" * 201}, "found", "201 characters", f"at most {LONGEST['found']}"),
        ({"by": "y" * 61}, "by", "61 characters", f"at most {LONGEST['by']}"),
    ],
)
def test_a_bad_cell_is_told_by_line_column_what_was_found_and_what_is_allowed(
    tmp_path: Path, row: dict[str, str], column: str, found: str, allowed: str
) -> None:
    told = refused(tmp_path, table({"reading": "rise"}, row))
    assert f"filled.csv:3: {column}: found {found}; allowed: " in told
    assert allowed in told


def test_every_bad_row_is_told_at_once(tmp_path: Path) -> None:
    told = refused(tmp_path, table({"verdict": "ok"}, {"reading": "rise", "verdict": "bad"}))
    assert [line.split(" ")[0].rsplit(":", 2)[1] for line in told.splitlines()] == ["2", "3"]


def test_a_reading_that_stands_twice_is_told_with_the_line_of_the_first(tmp_path: Path) -> None:
    assert "a second row of" in refused(tmp_path, table({}, {"found": "24"}))
    assert "on line 2" in refused(tmp_path, table({}, {"found": "24"}))


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"", "no rows"),
        (b"trial,reading,found,verdict\n", "no rows"),
        (b"trial,reading,found\na,b,c\n", "no column verdict"),
        (b"trial,reading,found,verdict,colour\na,b,c,pass,red\n", "an unknown column"),
        (b"trial,reading,found,verdict,found\na,b,c,pass,d\n", "a second column"),
        (b"trial,reading,found,verdict\na,b,c,pass,d\n", "5 columns"),
        (b'trial,reading,found,verdict\na,b,"c,pass\n', "not CSV"),
        ("trial,reading,found,verdict\na,b,25 °C,pass\n".encode("latin-1"), "not UTF-8"),
        (b"PK\x03\x04 a workbook", "save its sheet as CSV"),
        (b"x" * (LARGEST + 1), "at most 2 MB"),
    ],
)
def test_what_is_no_such_table_is_told(tmp_path: Path, content: bytes, told: str) -> None:
    assert told in refused(tmp_path, content)


def test_no_file_and_a_folder_are_told(tmp_path: Path) -> None:
    with pytest.raises(BadResults, match="no such file"):
        read_results(tmp_path / "none.csv")
    with pytest.raises(BadResults, match="a folder"):
        read_results(tmp_path)


@pytest.mark.parametrize(
    ("row", "verdict"),
    [
        ({}, "pass"),
        ({"verdict": "FAIL"}, "fail"),
        ({"found": "", "verdict": "fail"}, "fail"),
        ({"verdict": ""}, "no verdict"),
        ({"found": "", "verdict": ""}, "not tested"),
    ],
)
def test_a_verdict_is_what_whoever_tested_says(tmp_path: Path, row: dict[str, str], verdict: str) -> None:
    assert results(tmp_path, row).outcomes[0].verdict == verdict


def test_what_has_no_row_was_not_tested(tmp_path: Path) -> None:
    assert [one.verdict for one in results(tmp_path, {}).outcomes] == ["pass", "not tested", "not tested"]


def test_what_is_for_the_record_needs_no_verdict(tmp_path: Path) -> None:
    found = results(tmp_path, {"reading": "saloon", "found": "41 dB(A)", "verdict": ""} | SEEN)
    assert found.outcomes[2].verdict == "written down"


@pytest.mark.parametrize(
    ("row", "doubt"),
    [
        ({}, ""),
        ({"found": "26.4"}, ""),
        ({"found": "26,4 L/min"}, ""),
        ({"found": "26.5"}, "outside"),
        ({"found": "21,5"}, "outside"),
        ({"found": "-25"}, "outside"),
        ({"found": "plenty"}, "no figure"),
        ({"found": ""}, "no figure"),
        ({"found": "40", "verdict": "fail"}, ""),
        ({"accept_from": "−20", "to": "−10", "found": "-15"}, ""),
        ({"accept_from": "", "to": "", "found": "plenty"}, ""),
    ],
)
def test_a_pass_against_the_figures_is_in_doubt(tmp_path: Path, row: dict[str, str], doubt: str) -> None:
    (first, *_) = results(tmp_path, row).outcomes
    assert first.doubt.startswith(doubt)
    assert bool(first.doubt) == bool(doubt)


def test_a_result_of_a_trial_that_the_design_has_not_is_kept(tmp_path: Path) -> None:
    found = results(tmp_path, {}, {"trial": "Old trial"}, {"trial": "Empty", "found": "", "verdict": ""})
    assert [one.trial for one in found.foreign] == ["Old trial"]


def test_a_table_of_another_boat_is_refused(tmp_path: Path) -> None:
    with pytest.raises(BadResults, match="no row of a trial that this design has"):
        results(tmp_path, {"trial": "Old trial"})


@pytest.mark.parametrize("mark", ["=", "+", "-", "@"])
def test_a_name_that_would_be_a_formula_is_known_again(tmp_path: Path, mark: str) -> None:
    named = Reading(f"{mark}HYPERLINK(1)", NAN, NAN, NAN, "", "seen")
    rows = read(tmp_path, table({"reading": f"'{mark}HYPERLINK(1)", "found": f"'{mark}1"} | SEEN))
    (one,) = trial_results((trial("Flow and rise", named),), rows).outcomes
    assert one.filled is not None
    assert one.filled.found == f"{mark}1"
