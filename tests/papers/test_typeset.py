"""Setting a document: words are words, whatever is in them, and the file is fit for long keeping."""

from __future__ import annotations

import io
import re
from dataclasses import replace

import pypdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.papers.document import Chapter, Document, FullSheet, House, NewPage, Picture, Printed, Signatures
from anchorwatt.papers.page import Paragraph, Words, section, table
from anchorwatt.papers.typeset import as_data, pages, pdf, printable

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
    contents = 2 if cover else 0
    plain = Document(
        "t", "Offer", "what it is", "Grey Plover", "2026-11-23", "a4", body, contents=contents, cover=cover
    )
    return replace(plain, **changes)  # type: ignore[arg-type]


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


@pytest.mark.parametrize(("chapters", "page"), [(3, 0), (40, 1)])
def test_a_short_list_of_contents_stands_on_the_cover(chapters: int, page: int) -> None:
    body = (Chapter(f"Chapter {n}", (Paragraph("a"),)) for n in range(chapters))
    reader = pypdf.PdfReader(io.BytesIO(pdf(document(*body, cover=True), NOBODY)))
    assert [n for n, one in enumerate(reader.pages) if "Contents" in one.extract_text()] == [page]


def test_the_first_page_says_once_whose_it_is() -> None:
    reader = pypdf.PdfReader(io.BytesIO(pdf(document(Paragraph("a"), NewPage(), Paragraph("b")), NOBODY)))
    assert [page.extract_text().count("Grey Plover") for page in reader.pages] == [1, 1]


def test_columns_that_are_read_across_stand_close_together() -> None:
    narrow = table(("", "one", "other"), ("<", ">", ">"), [("a name of some length", "1", "2")])
    wide = table(("", "one", "other"), ("<", ">", ">"), [("a name of some length " * 4, "1", "2")])
    asked = [as_data(document(one), NOBODY)["body"][0]["widths"] for one in (narrow, wide)]
    assert [any(one) for one in asked] == [False, True]


def test_a_long_list_of_names_stands_in_two_halves_on_one_page() -> None:
    long = table(("", ""), ("<", "<"), [(f"X{n:02}", "name") for n in range(90)])
    file = pdf(document(long), NOBODY)
    assert page_of(file, "X00") == page_of(file, "X89")


def test_a_drawing_has_a_page_of_its_true_size() -> None:
    sheet = SQUARE.replace("10mm", "420mm", 1).replace("10mm", "297mm", 1)
    file = pdf(document(Paragraph("a"), FullSheet(sheet, "One", "told", 420.0, 297.0), Paragraph("b")), NOBODY)
    sizes = [
        (float(page.mediabox.width), float(page.mediabox.height)) for page in pypdf.PdfReader(io.BytesIO(file)).pages
    ]
    assert sizes[1] == pytest.approx((420 / 25.4 * 72, 297 / 25.4 * 72), abs=0.01)
    assert sizes[0] == sizes[2]


def lines(count: int) -> Words:
    return Words("\n".join(["a line"] * count))


def page_of(file: bytes, said: str) -> int:
    (found,) = [n for n, page in enumerate(pypdf.PdfReader(io.BytesIO(file)).pages) if said in page.extract_text()]
    return found


@pytest.mark.parametrize("before", range(33, 46, 2))
def test_a_short_section_stays_on_one_page_with_its_headings(before: int) -> None:
    rows = [(f"row {n}", "") for n in range(5)]
    short = section("SECTION", Paragraph("LEADS"), table(("HEAD", ""), ("<", "<"), rows))
    file = pdf(document(lines(before), Chapter("CHAPTER", (short,))), NOBODY)
    assert len({page_of(file, said) for said in ("CHAPTER", "SECTION", "LEADS", "HEAD", "row 0", "row 4")}) == 1


@pytest.mark.parametrize("before", range(33, 46))
def test_what_leads_to_a_long_table_stays_with_its_first_row(before: int) -> None:
    rows = [(f"row {n:03}", "") for n in range(90)]
    long = section("SECTION", Words("Caution", "fails"), Paragraph("LEADS"), table(("", ""), ("<", "<"), rows))
    file = pdf(document(lines(before), Chapter("CHAPTER", (long,))), NOBODY)
    assert len({page_of(file, said) for said in ("CHAPTER", "SECTION", "Caution", "LEADS", "row 000")}) == 1


@pytest.mark.parametrize("before", range(36, 46))
def test_all_who_sign_sign_on_one_page_under_what_they_sign(before: int) -> None:
    signed = Chapter("SIGNED", (Paragraph("WHAT"), Signatures(("first", "second", "third"))))
    file = pdf(document(lines(before), signed), NOBODY)
    assert len({page_of(file, said) for said in ("SIGNED", "WHAT", "first", "third")}) == 1


def test_a_row_is_not_parted_and_its_heads_come_again_overleaf() -> None:
    rows = [(f"first {n:03}" + "\nmore" * 8 + f"\nlast {n:03}", "") for n in range(30)]
    file = pdf(document(table(("HEAD", ""), ("<", "<"), rows)), NOBODY)
    told = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(file)).pages]
    assert len(told) > 2
    assert all("HEAD" in page for page in told)
    assert all((f"first {n:03}" in page) == (f"last {n:03}" in page) for page in told for n in range(30))


def test_the_pages_seen_are_those_of_the_file() -> None:
    sheet = FullSheet(SQUARE, "Sheet", "a square", 420.0, 297.0)
    made = document(Paragraph("first"), NewPage(), Paragraph("second"), sheet)
    boxes = [page.mediabox for page in pypdf.PdfReader(io.BytesIO(pdf(made, NOBODY))).pages]
    seen = pages(made, NOBODY)
    assert [page.width for page in seen] == pytest.approx([float(box.width) for box in boxes], abs=0.1)
    assert [page.height for page in seen] == pytest.approx([float(box.height) for box in boxes], abs=0.1)


def test_a_page_seen_needs_no_other_file() -> None:
    (page,) = pages(document(Picture(SQUARE, "a square")), House(logo=SQUARE.encode(), logo_kind="svg"))
    links = re.findall(rb'(?:href|src)="([^"#]{1,20})', page.svg)
    assert links
    assert all(one.startswith(b"data:image/") for one in links)
