"""The papers of a job, read back from the PDFs: nothing of the design is missing, and sums are the assessment's."""

from __future__ import annotations

import io
import zipfile
from functools import cache

import pypdf
import pytest
from tests.starters import assessed

from anchorwatt.assessment import assess
from anchorwatt.design.editing import edit_all
from anchorwatt.papers.document import House
from anchorwatt.papers.price import bill
from anchorwatt.papers.printed import NAMES, asked, files
from anchorwatt.papers.sets.build import HOLD_POINTS
from anchorwatt.papers.sets.formulas import formulas
from anchorwatt.units import System

YARD = House(name="Heronsgate Boatyard")


@cache
def written(starter: str, paper: str, system: System = "si") -> bytes:
    return files(assessed(starter), asked([paper]), system, YARD)[f"{paper}.pdf"]


@cache
def told(starter: str, paper: str, system: System = "si") -> str:
    return words(written(starter, paper, system))


def words(file: bytes) -> str:
    """All words of a PDF, without the breaks of its lines."""
    pages = pypdf.PdfReader(io.BytesIO(file)).pages
    return "".join("".join(page.extract_text() for page in pages).replace("\u200b", "").replace("\u00ad", "").split())


def close(text: str) -> str:
    return "".join(text.split())


def test_every_check_is_in_the_engineering_file() -> None:
    text = told("trawler-14m", "engineering").replace("-", "")
    assert [one.id for one in assessed("trawler-14m").checks if one.id.replace("-", "") not in text] == []


def test_every_answer_is_in_the_engineering_file_with_its_source() -> None:
    text = told("trawler-14m", "engineering").replace("-", "")
    for answer in assessed("trawler-14m").headline:
        assert close(answer.question).replace("-", "") in text
        assert close(answer.why.source).replace("-", "") in text


def test_every_formula_is_in_the_engineering_file() -> None:
    text = told("trawler-14m", "engineering")
    assert [one.name for one in formulas() if close(one.name) not in text] == []


@pytest.mark.parametrize("starter", ["trawler-14m"])
def test_every_circuit_and_every_conductor_is_in_the_build_file(starter: str) -> None:
    text = told(starter, "build")
    for one in assessed(starter).wiring.wiring.circuits:
        assert close(one.circuit.function) in text
        assert f"{one.tag}+" in text or f"{one.tag}L" in text or f"{one.tag}PE" in text or f"{one.tag}.1" in text


@pytest.mark.parametrize("starter", ["trawler-14m"])
def test_every_part_to_buy_and_every_task_is_in_the_build_file(starter: str) -> None:
    text, made = told(starter, "build"), assessed(starter).offer.priced
    assert [line.name for line in made.lines if close(line.name) not in text] == []
    assert [task.name for task in made.labour if close(task.name) not in text] == []
    assert [what for _, what in HOLD_POINTS if close(what).replace("-", "") not in text.replace("-", "")] == []


@pytest.mark.parametrize("paper", NAMES)
@pytest.mark.parametrize("system", ["us"])
def test_every_paper_has_the_cautions_and_page_numbers(paper: str, system: System) -> None:
    text = told("cutter-12m", paper, system)
    for caution in assessed("cutter-12m").cautions:
        assert close(caution) in text
    pages = pypdf.PdfReader(io.BytesIO(written("cutter-12m", paper, system))).pages
    assert f"2/{len(pages)}" in close(pages[1].extract_text())


def test_the_workbook_holds_every_part_and_no_formula() -> None:
    hostile = "=HYPERLINK(1)"
    cutter = assessed("cutter-12m").design
    named = assess(edit_all(cutter, {f"dc.loads.{hostile}": {"appliance": "water pump"}}))
    book = files(named, asked(["build"]), "si", YARD)["build.xlsx"]
    with zipfile.ZipFile(io.BytesIO(book)) as archive:
        texts = archive.read("xl/sharedStrings.xml").decode()
        sheets = [archive.read(name).decode() for name in archive.namelist() if name.startswith("xl/worksheets/")]
    assert hostile in texts
    assert not [sheet for sheet in sheets if "<f>" in sheet]
    assert [row["name"] for row in bill(named, cost=True) if row["name"].replace("&", "&amp;") not in texts] == []
