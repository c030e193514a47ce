"""Setting a document: words are words, whatever is in them, and the file is fit for long keeping."""

from __future__ import annotations

import io

import pypdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.papers.document import Chapter, Document, FullSheet, House, NewPage, Picture, Printed, Signatures
from anchorwatt.papers.page import Paragraph, Words, section, table
from anchorwatt.papers.typeset import pdf, printable

NOBODY = House()
SIZE = 'width="10mm" height="10mm" viewBox="0 0 10 10"'
SQUARE = f'<svg xmlns="http://www.w3.org/2000/svg" {SIZE}><rect width="9" height="9"/></svg>'
HOSTILE = (
    "#set text(red)",
    '#read("/etc/passwd")',
    "*bold* _slant_ $x^2$ `code` = heading",
    "<label> @reference // comment /* more */",
    "\\u{1F600} #{ } [ ] ~ -- ---",
    "A & B <script>alert(1)</script>",
)


def document(*body: Printed, cover: bool = False, **changes: str) -> Document:
    said = {"title": "Offer", "subject": "what it is", "boat": "Grey Plover", "date": "2026-11-23"} | changes
    return Document(name="t", paper="a4", body=body, contents=2 if cover else 0, cover=cover, **said)


def words(file: bytes) -> str:
    told = " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(file)).pages)
    return " ".join(told.replace("\u200b", "").split())


@pytest.mark.parametrize("hostile", HOSTILE)
def test_words_are_never_taken_as_markup(hostile: str) -> None:
    rows = [(hostile, Words(hostile, "strong"))]
    body = (
        Chapter(hostile, (section(hostile, Paragraph(hostile)), table(("a", hostile), ("<", "<"), rows))),
        Signatures((hostile,)),
        Picture(SQUARE, hostile),
    )
    house = House(name=hostile, address=hostile)
    told = words(pdf(document(*body, title=hostile, boat=hostile), house))
    assert told.replace(" ", "").count(hostile.replace(" ", "")) >= 8


@settings(max_examples=20)
@given(st.text(st.characters(codec="utf-8"), max_size=60))
def test_any_words_can_be_set(any_words: str) -> None:
    assert pdf(document(Paragraph(any_words), boat=any_words), NOBODY).startswith(b"%PDF")


def test_a_sign_that_the_font_lacks_is_a_square() -> None:
    assert "four □ masts" in words(pdf(document(Paragraph("four 🛥 masts")), NOBODY))
    assert printable("12 V, 40 °C × ½") == "12 V, 40 °C × ½"


def test_a_very_long_word_stays_on_the_page() -> None:
    page = pypdf.PdfReader(io.BytesIO(pdf(document(Paragraph("W" * 400)), NOBODY))).pages[0]
    lines = [line for line in page.extract_text().replace("\u200b", "").splitlines() if set(line) == {"W"}]
    assert sum(map(len, lines)) == 400
    assert max(map(len, lines)) < 80


def test_the_file_is_fit_for_long_keeping_with_its_fonts_in_it() -> None:
    file = pdf(document(Paragraph("12 V")), NOBODY)
    assert b"<pdfaid:part>2</pdfaid:part>" in file
    assert b"<pdfaid:conformance>A</pdfaid:conformance>" in file
    for page in pypdf.PdfReader(io.BytesIO(file)).pages:
        for font in page["/Resources"]["/Font"].values():  # type: ignore[index]
            (below,) = font.get_object()["/DescendantFonts"]
            assert "/FontFile2" in below.get_object()["/FontDescriptor"]


def test_the_same_document_gives_the_same_bytes() -> None:
    assert pdf(document(Paragraph("12 V"), cover=True), NOBODY) == pdf(document(Paragraph("12 V"), cover=True), NOBODY)


def test_pages_are_numbered_and_chapters_are_in_the_contents_and_the_bookmarks() -> None:
    file = pdf(document(Chapter("Wiring", (Paragraph("a"),)), NewPage(), Chapter("Weight", ()), cover=True), NOBODY)
    reader = pypdf.PdfReader(io.BytesIO(file))
    assert "Wiring" in reader.pages[1].extract_text()
    assert f"{len(reader.pages)} / {len(reader.pages)}" in reader.pages[-1].extract_text()
    assert [one.title for one in reader.outline] == ["Wiring", "Weight"]  # type: ignore[union-attr]


def test_a_drawing_has_a_page_of_its_true_size() -> None:
    sheet = SQUARE.replace("10mm", "420mm", 1).replace("10mm", "297mm", 1)
    file = pdf(document(Paragraph("a"), FullSheet(sheet, "One", "told", 420.0, 297.0), Paragraph("b")), NOBODY)
    sizes = [
        (float(page.mediabox.width), float(page.mediabox.height)) for page in pypdf.PdfReader(io.BytesIO(file)).pages
    ]
    assert sizes[1] == pytest.approx((420 / 25.4 * 72, 297 / 25.4 * 72), abs=0.01)
    assert sizes[0] == sizes[2]
