"""What the wiring command shows and writes."""

from __future__ import annotations

import io
import zipfile
from functools import cache
from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal
from tests.papers import fake
from tests.sizing.test_circuits import rich, simulation

from anchorwatt import design
from anchorwatt.assessment import Assessment
from anchorwatt.assessment.wiring import WiringStory, wiring_story
from anchorwatt.cli.terminal import show
from anchorwatt.errors import AnchorwattError
from anchorwatt.papers import wiring
from anchorwatt.papers.as_xlsx import workbook
from anchorwatt.sizing.wiring import wiring as wired


@cache
def story() -> WiringStory:
    specification = rich()
    return wiring_story(design.parse(as_text(minimal())), specification, wired(specification, simulation()))


def assessment() -> Assessment:
    return fake.assessment(wiring=story())


def text(page: Any, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> str:
    monkeypatch.setenv("COLUMNS", "80")
    show(page)
    return capsys.readouterr().out


@pytest.mark.parametrize("system", ["si", "us"])
def test_it_fits_80_columns(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, system: Any) -> None:
    page = text(wiring.screen(assessment(), system), capsys, monkeypatch)
    assert max(len(line) for line in page.splitlines()) <= 80
    assert "main feeder" in page
    assert "It advises" in page


@pytest.mark.parametrize("system", ["si", "us"])
def test_every_circuits_calculation_fits_80_columns(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, system: Any
) -> None:
    for one in story().wiring.circuits:
        page = text(wiring.why_screen(wiring.why(assessment(), one.tag), "EUR", system), capsys, monkeypatch)
        assert max(len(line) for line in page.splitlines()) <= 80


def test_every_step_has_a_formula_and_a_source() -> None:
    for one in story().wiring.circuits:
        for step in story().why(one.tag).steps:
            assert step.formula
            assert step.source


def test_an_unknown_tag_is_told_with_those_that_there_are() -> None:
    with pytest.raises(AnchorwattError, match="found no circuit “w3”, perhaps “W3”; allowed: one of W1 to W"):
        wiring.why(assessment(), "w3")


def test_rows_are_a_list_of_circuits_in_their_units() -> None:
    rows = wiring.rows(assessment())
    main = next(row for row in rows if row["function"] == "main feeder")
    found = next(one for one in story().wiring.circuits if one.circuit.function == "main feeder")
    assert len(rows) == len(story().wiring.circuits)
    assert main["section_mm2"] == pytest.approx(1e6 * found.conductor.area, rel=1e-5)
    assert main["drop_pct"] == pytest.approx(100.0 * found.conductor.drop_share, rel=1e-5)
    assert main["protection_A"] == pytest.approx(found.protection.rating if found.protection else -1.0)


def test_the_plain_calculation_has_all_steps() -> None:
    found = wiring.why(assessment(), "W3")
    assert len(wiring.why_plain(found, "EUR")["steps"]) == len(found.steps)


def test_a_workbook_has_a_sheet_a_table_and_is_the_same_twice() -> None:
    sheets = wiring.sheets(assessment())
    one, two = workbook("boat", sheets), workbook("boat", sheets)
    assert one == two
    with zipfile.ZipFile(io.BytesIO(one)) as parts:
        listed = parts.read("xl/workbook.xml").decode()
        strings = parts.read("xl/sharedStrings.xml").decode()
    assert all(f'name="{name}"' in listed for name in ("circuits", "bars", "ends", "totals", "cautions"))
    assert "main feeder" in strings


def test_a_text_that_looks_like_a_formula_stays_a_text() -> None:
    with zipfile.ZipFile(io.BytesIO(workbook("boat", {"one": [{"name": "=1+1"}]}))) as parts:
        assert "=1+1" in parts.read("xl/sharedStrings.xml").decode()
