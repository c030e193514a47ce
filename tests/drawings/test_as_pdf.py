"""What a reader finds in the PDF file, read back with pypdf."""

from __future__ import annotations

import io
from typing import cast

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pypdf import PdfReader
from pypdf.generic import DictionaryObject
from tests.drawings.yard_sheet import EXAMPLE, sheet

from anchorwatt.drawings.as_pdf import pdf
from anchorwatt.drawings.font import widths
from anchorwatt.drawings.sheet import Arc, Path, Sheet, Text

A3 = (420.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0)
latin = st.text(st.characters(categories=("L", "N"), max_codepoint=0x24F), min_size=1, max_size=30)


def read(*sheets: Sheet) -> PdfReader:
    return PdfReader(io.BytesIO(pdf(sheets)))


def words_of(*sheets: Sheet) -> str:
    return read(*sheets).pages[0].extract_text()


def test_each_sheet_is_a_page() -> None:
    assert len(read(EXAMPLE, EXAMPLE, EXAMPLE).pages) == 3


def test_a_page_has_the_papers_true_size() -> None:
    box = read(EXAMPLE).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx(A3, abs=1e-3)


def test_each_page_has_its_own_size() -> None:
    other = Sheet(100, 50, "B", "", (), unit="mm")
    box = read(EXAMPLE, other).pages[1].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx((100 / 25.4 * 72, 50 / 25.4 * 72), abs=1e-3)


def test_a_line_is_as_long_as_on_the_sheet() -> None:
    content = read(sheet(Path(((0, 297), (100, 297)), "#000000"))).pages[0].get_contents()
    assert content is not None
    assert b" 0 m" in content.get_data()
    assert b"283.4646 0 l" in content.get_data()  # 100 mm of 25.4 mm to the inch, 72 points to the inch


@pytest.mark.parametrize("words", ["Main bus", "F1", "F2"])
def test_text_is_found(words: str) -> None:
    assert words in words_of(EXAMPLE)


def test_what_is_not_shown_is_not_drawn() -> None:
    assert "house bank" not in words_of(EXAMPLE)


def test_the_outline_names_the_sheets() -> None:
    reader = read(EXAMPLE, sheet(title="AC one-line: Heron"))
    assert [entry.title for entry in reader.outline if not isinstance(entry, list)] == [
        "DC one-line: Heron",
        "AC one-line: Heron",
    ]


def test_the_file_is_titled() -> None:
    metadata = PdfReader(io.BytesIO(pdf([EXAMPLE], "Drawings of Heron"))).metadata
    assert metadata is not None
    assert metadata.title == "Drawings of Heron"


def test_the_bytes_are_the_same_each_time() -> None:
    assert pdf([EXAMPLE, EXAMPLE]) == pdf([EXAMPLE, EXAMPLE])


def test_every_font_is_the_shipped_one_and_embedded() -> None:
    resources = cast(DictionaryObject, read(EXAMPLE).pages[0]["/Resources"])
    fonts = [font.get_object() for font in cast(DictionaryObject, resources["/Font"]).values()]
    assert {font["/BaseFont"].split("+")[1] for font in fonts} == {"LiberationSans", "LiberationSans-Bold"}
    assert all("/FontFile2" in font["/FontDescriptor"] for font in fonts)


def test_a_sign_that_the_font_lacks_is_a_square() -> None:
    assert ord("漢") not in widths()
    assert "Bank □ 1" in words_of(sheet(Text((20, 20), "Bank 漢 1", 3.0)))


@given(latin)
def test_words_read_back_as_they_were(words: str) -> None:
    shown = "".join(sign if ord(sign) in widths() else "□" for sign in words)
    assert words_of(sheet(Text((20, 20), words, 3.0))).strip() == shown


@given(st.text(st.characters(), max_size=60))
def test_any_words_make_a_file_that_opens(words: str) -> None:
    assert len(read(sheet(Text((20, 20), words, 3.0), title=words)).pages) == 1


def test_all_kinds_of_items_are_drawn() -> None:
    empty, drawn = (len(pdf([sheet(*items)])) for items in ((), (Arc((50, 50), 9.0, 0.0, 90.0), Arc((9, 9), 2.0))))
    assert drawn > empty
