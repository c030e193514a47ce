"""What all papers of a job have in common, read back from the PDFs."""

from __future__ import annotations

import datetime
import io
import zipfile
from collections.abc import Sequence

import pypdf
import pytest
from tests.starters import assessed

from anchorwatt.assessment import assess
from anchorwatt.design.editing import edit_all
from anchorwatt.papers.document import House
from anchorwatt.papers.price import bill
from anchorwatt.papers.printed import NAMES, PAPERS, Wishes, asked, files

YARD = Wishes(House(name="Heronsgate Boatyard"))


def written(starter: str, paper: str) -> bytes:
    return files(assessed(starter), asked([paper]), "us", YARD)[f"{paper}.pdf"]


def words(pages: Sequence[pypdf.PageObject]) -> str:
    """All words of some pages, without the breaks of their lines."""
    return "".join("".join(page.extract_text() for page in pages).replace("\u200b", "").replace("\u00ad", "").split())


def close(text: str) -> str:
    return "".join(text.split())


@pytest.mark.parametrize("paper", NAMES)
def test_every_paper_has_the_cautions_and_page_numbers(paper: str) -> None:
    pages = pypdf.PdfReader(io.BytesIO(written("cutter-12m", paper))).pages
    text = words(pages[:5])
    for caution in assessed("cutter-12m").cautions:
        assert close(caution) in text
    last = min(4, len(pages))
    assert f"{last}/{len(pages)}" in words(pages[last - 1 : last])


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


def test_a_design_without_a_date_gives_the_same_papers_on_any_day(monkeypatch: pytest.MonkeyPatch) -> None:
    undated = assess(edit_all(assessed("cutter-12m").design, {"offer.date": None}))
    assert not undated.specification.offer.date

    class NoClock(datetime.date):
        @classmethod
        def today(cls) -> NoClock:
            raise AssertionError("a paper asked the clock")

    monkeypatch.setattr(datetime, "date", NoClock)
    for paper in PAPERS:
        for cost in (False, True):
            assert paper.document(undated, "si", Wishes(cost=cost)).date == ""
