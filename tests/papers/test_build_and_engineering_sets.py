"""The engineering file and the build file of a starter, read back from their PDFs."""

from __future__ import annotations

import io
import re
from functools import cache

import pypdf
import pytest
from tests.starters import assessed

from anchorwatt.drawings.sheets.sheet_set import sheet_set
from anchorwatt.papers import price, screens
from anchorwatt.papers.document import Chapter, House
from anchorwatt.papers.page import Words
from anchorwatt.papers.sets import build, engineering
from anchorwatt.papers.sets.formulas import formulas
from anchorwatt.papers.typeset import pdf, printable
from anchorwatt.sizing.terminals import cores

STARTER = "trawler-14m"
FILES = {"engineering": engineering.document, "build": build.document}


@cache
def told(name: str) -> str:
    """All words of a file without the room between them: lines and columns may break them anywhere."""
    document = FILES[name](assessed(STARTER), "si")
    # Pages that lie are drawings: they are read by the tests of drawings, and dense ones take seconds.
    upright = (
        page
        for page in pypdf.PdfReader(io.BytesIO(pdf(document, House()))).pages
        if page.mediabox.width < page.mediabox.height
    )
    pages = [bare(page.extract_text()) for page in upright]
    # What stands at the top and the foot of each page would part a cell that goes on overleaf.
    foot = re.escape(bare(document.date)) + r"\d+/\d+"
    return "".join(re.sub(foot, "", page.replace(bare(document.title + document.boat), "", 1)) for page in pages)


def bare(words: str) -> str:
    """Words without room, and without the hyphens that a line's end may add."""
    return re.sub(r"[\s\u00a0\u00ad\u200b\u2010-]+", "", printable(words))


@cache
def sheets() -> dict[str, list[dict[str, object]]]:
    return build.workbook_sheets(assessed(STARTER), cost=True)


def missing(name: str, *words: str) -> list[str]:
    return [one for one in words if bare(one) not in told(name)]


def test_every_check_stands_in_the_engineering_file_with_its_source() -> None:
    checks = assessed(STARTER).checks
    assert checks
    assert not missing("engineering", *(f"{one.question} ({one.source})" for one in checks))


def test_every_estimate_stands_in_the_engineering_file_with_its_rule() -> None:
    estimates = assessed(STARTER).estimates
    assert estimates
    assert not missing("engineering", *(f"{one.rule} ({one.source})" for one in estimates))


def test_no_paper_tells_what_to_type_at_a_terminal() -> None:
    assert bare("--show KEY") not in told("engineering")


def test_a_week_drawn_in_characters_leaves_no_heading_without_its_picture() -> None:
    assert not missing("engineering", "Day by day, each from the start of its night")
    assert missing("engineering", "State of charge through the week")


def test_every_formula_has_words_and_a_source() -> None:
    assert not [one for one in formulas() if not one.about or not one.source]


def test_every_formula_stands_in_the_engineering_file() -> None:
    found = formulas()
    assert not missing("engineering", *(one.about for one in found), *(one.source for one in found))


@pytest.mark.parametrize("name", FILES)
def test_every_circuit_stands_in_both_files(name: str) -> None:
    circuits = [one.circuit for one in assessed(STARTER).wiring.wiring.circuits]
    assert not missing(name, *(f"{one.tag}{one.function}{one.start} → {one.end}" for one in circuits))


@pytest.mark.parametrize("name", FILES)
def test_the_cautions_of_every_page_are_said_in_one_chapter(name: str) -> None:
    cautions = set(assessed(STARTER).cautions)
    chapters = [one for one in FILES[name](assessed(STARTER), "si").body if isinstance(one, Chapter)]
    found = [part.text for one in chapters for part in one.body if isinstance(part, Words) and part.text in cautions]
    assert sorted(found) == sorted(cautions)
    assert not [one for one in chapters if screens.cautions(assessed(STARTER)) in one.body]


def test_every_part_stands_in_the_build_file_with_its_tag() -> None:
    parts = assessed(STARTER).specification.items
    assert not missing("build", *(one.tag for one in parts), *(one.name or one.key for one in parts))


def test_every_conductor_stands_in_the_build_file_between_its_two_terminals() -> None:
    found = cores(assessed(STARTER).wiring.wiring.circuits)
    assert not missing("build", *(one.marker for one in found), *(f"{one.start.whole}{one.end.whole}" for one in found))


def test_the_cut_list_has_as_much_conductor_as_the_schedule() -> None:
    laid = assessed(STARTER).wiring.wiring.length
    cut = [float(str(row["length_m"])) for row in sheets()["cut list"]]
    assert sum(cut) == pytest.approx(laid, abs=0.005 * len(cut))


def test_the_cost_of_the_workbook_is_that_of_the_offer() -> None:
    priced = assessed(STARTER).offer.priced
    key = f"cost_{priced.offer.currency}"
    total = sum(float(str(row[key])) for row in sheets()["bill of materials"] if row[key] is not None)
    assert total == pytest.approx(float(priced.parts_cost), abs=0.005)


def test_the_purchase_list_orders_what_the_bill_counts_and_its_spares() -> None:
    lines = assessed(STARTER).offer.priced.lines
    ordered = {(row["part"], row["tags"]): row["to_order"] for row in sheets()["purchase list"]}
    assert ordered == {(one.name, " ".join(one.tags)): float(one.quantity) for one in lines}


def test_the_hours_of_the_workbook_are_those_of_the_offer() -> None:
    hours = sum(float(str(row["labour_hours"])) for row in sheets()["labour"])
    assert hours == pytest.approx(float(assessed(STARTER).offer.priced.labour_hours))


def test_without_asking_no_word_of_the_build_file_is_of_money() -> None:
    priced = assessed(STARTER).offer.priced
    amounts = {price.amount(one) for line in priced.lines for one in (line.cost,) if one is not None and one > 100}
    amounts |= {price.amount(one) for one in (priced.total, priced.cost, priced.parts_margin)}
    assert not [one for one in (priced.offer.currency, "margin on", *amounts) if bare(one) in told("build")]


def test_asked_for_the_build_file_shows_what_the_job_costs_the_yard() -> None:
    priced = assessed(STARTER).offer.priced
    file = pdf(build.document(assessed(STARTER), "si", cost=True), House())
    words = bare("".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(file)).pages[:5]))
    assert bare(price.amount(priced.parts_margin)) in words


def test_without_asking_no_column_of_the_workbook_is_of_money() -> None:
    heads = {key for rows in build.workbook_sheets(assessed(STARTER)).values() for row in rows for key in row}
    assert not [head for head in heads if any(word in head for word in ("cost", "price", "rate_", "EUR", "currency"))]


def test_every_lug_on_a_stud_has_a_torque() -> None:
    studs = {size for row in build.TORQUES for size in row[:2]}
    lugs = [one.lug for one in assessed(STARTER).wiring.wiring.circuits if "ferrules" not in one.lug]
    assert lugs
    assert {lug.rsplit(", ", 1)[1] for lug in lugs} <= studs


@pytest.mark.parametrize("row", build.TORQUES)
def test_the_two_units_of_a_torque_agree(row: tuple[str, str, str, str]) -> None:
    newton_metres, pound_inches = (float(torque.split()[0]) for torque in row[2:])
    assert pound_inches == pytest.approx(newton_metres / 0.112985, rel=0.02)


def test_every_drawing_is_a_sheet_of_the_build_file_at_its_true_size() -> None:
    reader = pypdf.PdfReader(io.BytesIO(pdf(build.document(assessed(STARTER), "si"), House())))
    sizes = [tuple(round(float(side) * 25.4 / 72.0) for side in page.mediabox[2:]) for page in reader.pages]
    assert sizes.count((420, 297)) == len(sheet_set(assessed(STARTER), "A3", "si"))
