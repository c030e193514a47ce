"""The hand-over file, read back from its PDF: nothing of the design is missing, and no words of a user break it."""

from __future__ import annotations

import io
from dataclasses import replace
from functools import cache

import pypdf
import pytest
from tests.starters import STARTERS, assessed

from anchorwatt.assessment import assess
from anchorwatt.design.editing import edit
from anchorwatt.papers.document import Document, House
from anchorwatt.papers.sets.handover import Result, document
from anchorwatt.papers.sets.merged import NOT_ARCHIVAL, Manual
from anchorwatt.papers.typeset import pdf

HOSTILE = ('#panic("no") $x$ [*b*] \\ // `raw` @a <b>', "ab" * 150, "\u202eעברית\u202c مرحبا", "⛵🚨\u200d🔥", "=1+1")


@cache
def written(starter: str) -> bytes:
    return pdf(document(assessed(starter), "si"), House(name="Heronsgate Boatyard"))


def reader(file: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(file))


def letters(some: str) -> str:
    """Without what line breaks change."""
    return "".join(some.replace("\u00ad", "").replace("\u200b", "").replace("-", "").split())


@cache
def pages(file: bytes) -> tuple[str, ...]:
    return tuple(letters(page.extract_text()) for page in reader(file).pages)


def told(file: bytes) -> str:
    return "".join(pages(file))


def page_of(file: bytes, words: str) -> list[int]:
    """Pages that begin with a heading, under the running head."""
    return [n for n, page in enumerate(pages(file)) if letters(words) in page[:120]]


@pytest.mark.parametrize("starter", STARTERS)
def test_every_circuit_is_aboard(starter: str) -> None:
    text = told(written(starter))
    missing = [
        one.tag
        for one in assessed(starter).wiring.wiring.circuits
        if letters(f"{one.tag}{one.circuit.function}") not in text
    ]
    assert missing == []


@pytest.mark.parametrize("starter", STARTERS)
def test_every_part_is_registered(starter: str) -> None:
    text = told(written(starter))
    found = assessed(starter).register
    assert found
    for one in found:
        several = f"{one.item.count}×" if one.item.count > 1 else ""
        assert letters(f"{one.item.tag}{several}{one.item.name}{one.place}") in text


@pytest.mark.parametrize("starter", STARTERS)
def test_every_fault_is_told_with_what_protects_and_what_the_crew_does(starter: str) -> None:
    text = told(written(starter))
    for found in assessed(starter).faults:
        parts = {part: words for part, _, words in found.story("si")}
        for words in (found.fault.name, parts["protects"], parts["does"]):
            assert letters(words) in text


@pytest.mark.parametrize("starter", STARTERS)
def test_every_single_loss_is_told(starter: str) -> None:
    text = told(written(starter))
    assert [row.loss.part for row in assessed(starter).redundancy.losses if letters(row.loss.part) not in text] == []


@pytest.mark.parametrize("starter", STARTERS)
def test_every_caution_is_said(starter: str) -> None:
    text, found = told(written(starter)), assessed(starter)
    said = (*found.cautions, *found.wiring.cautions, *found.regulator.cautions, *found.fit.cautions)
    assert [words for words in said if letters(words) not in text] == []


@pytest.mark.parametrize("starter", STARTERS)
@pytest.mark.parametrize(
    ("page", "following"),
    [("How to live with the system", "When the alarm sounds"), ("When the alarm sounds", "Cautions")],
)
def test_each_page_of_the_crew_is_one_page(starter: str, page: str, following: str) -> None:
    (first,), (behind,) = (page_of(written(starter), f"{words}")[-1:] for words in (page, following))
    assert behind == first + 1


def test_what_battery_management_disconnects_is_in_the_settings() -> None:
    text = told(written("trawler-14m"))
    for one in assessed("trawler-14m").specification.bank.management:
        assert letters(one.name) in text


@pytest.mark.parametrize("starter", STARTERS)
def test_all_fonts_are_in_the_file(starter: str) -> None:
    fonts = [
        font.get_object()
        for page in reader(written(starter)).pages
        for font in page.get("/Resources", {}).get("/Font", {}).values()
    ]
    assert fonts
    for font in fonts:
        descendants = font.get("/DescendantFonts")
        bearer = font if descendants is None else descendants[0].get_object()
        described = bearer.get("/FontDescriptor", {})
        assert {"/FontFile", "/FontFile2", "/FontFile3"} & set(described) or font["/Subtype"] == "/Type3"


def without_drawings(made: Document) -> Document:
    """The chapters that are words and tables: sheets have hostile tests of their own."""
    return replace(made, body=made.body[:-1])


@cache
def hostile() -> str:
    cutter = assessed("cutter-12m").design
    tags = [item.tag for item in assessed("cutter-12m").specification.items]
    serials = dict(zip(tags, HOSTILE, strict=False))
    design = edit(edit(cutter, "name", HOSTILE[0]), "serials", serials)
    return told(pdf(without_drawings(document(assess(design), "si")), House()))


@pytest.mark.parametrize("words", [words for words in HOSTILE if words.isascii()])
def test_hostile_serial_numbers_are_but_words(words: str) -> None:
    assert letters(words) in hostile()


def test_hostile_words_take_nothing_else_away() -> None:
    text = hostile()
    found = assessed("cutter-12m")
    assert [words for words in found.cautions if letters(words) not in text] == []
    assert [one.item.name for one in found.register if letters(one.item.name) not in text] == []


def test_results_that_are_given_are_printed() -> None:
    made = document(assessed("cutter-12m"), "si", results=(Result("polarity", "all right", "passes"),))
    assert letters("polarityall rightpasses") in told(pdf(without_drawings(made), House()))


def test_the_cover_says_that_manuals_are_no_archive() -> None:
    made = document(assessed("cutter-12m"), "si", manuals=(Manual("pump.pdf", b"", 12),))
    cover = reader(pdf(without_drawings(made), House())).pages[0].extract_text()
    assert letters(NOT_ARCHIVAL) in letters(cover)
    assert letters(NOT_ARCHIVAL) not in told(written("cutter-12m"))
