"""Makers' manuals behind a paper: bookmarked, or told by name with nothing made."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.generic import ArrayObject, DictionaryObject, NameObject, TextStringObject
from tests.starters import assessed

from anchorwatt.errors import AnchorwattError
from anchorwatt.papers.document import Document, House
from anchorwatt.papers.page import Paragraph
from anchorwatt.papers.sets.merged import BOOKMARK, NOT_ARCHIVAL, manuals, merged
from anchorwatt.papers.typeset import pdf


@pytest.fixture(scope="module")
def paper() -> bytes:
    return pdf(
        Document("a", "A", "", assessed("cutter-12m").specification.name, "", "a4", (Paragraph("words"),)), House()
    )


def manual(path: Path, pages: int = 2, *, password: str = "", script: bool = False) -> Path:
    writer = PdfWriter()
    act = DictionaryObject({NameObject("/S"): NameObject("/JavaScript"), NameObject("/JS"): TextStringObject("x")})
    for _ in range(pages):
        page = writer.add_blank_page(200, 200)
        if script:
            page[NameObject("/AA")] = DictionaryObject({NameObject("/O"): act})
            click = DictionaryObject({NameObject("/Subtype"): NameObject("/Link"), NameObject("/A"): act})
            page[NameObject("/Annots")] = ArrayObject([click])
    if script:
        writer.root_object[NameObject("/OpenAction")] = act
    if password:
        writer.encrypt(password)
    writer.write(path)
    return path


def outline(file: bytes) -> dict[str, int | None]:
    reader = PdfReader(io.BytesIO(file))
    flat: list[object] = []
    todo: list[object] = list(reader.outline)
    while todo:
        one = todo.pop(0)
        if isinstance(one, list):
            todo = [*one, *todo]
        else:
            flat.append(one)
    return {str(one.title): reader.get_destination_page_number(one) for one in flat}  # type: ignore[attr-defined,arg-type]


def test_each_manual_has_a_bookmark_to_its_first_page(paper: bytes, tmp_path: Path) -> None:
    both = (manual(tmp_path / "pump.pdf", 3), manual(tmp_path / "inverter #1.pdf"))
    own = len(PdfReader(io.BytesIO(paper)).pages)
    made = merged(paper, manuals(both))
    found = outline(made.file)
    assert (found[BOOKMARK], found["pump.pdf"], found["inverter #1.pdf"]) == (own, own, own + 3)
    assert len(PdfReader(io.BytesIO(made.file)).pages) == own + 5


def test_it_no_longer_claims_to_be_for_the_archive(paper: bytes, tmp_path: Path) -> None:
    made = merged(paper, manuals([manual(tmp_path / "pump.pdf")]))
    assert b"pdfaid" in paper
    assert PdfReader(io.BytesIO(made.file)).xmp_metadata is None
    assert made.told == NOT_ARCHIVAL


def test_without_manuals_the_paper_stays_as_it_is(paper: bytes) -> None:
    made = merged(paper, manuals([]))
    assert (made.file, made.told) == (paper, "")


def test_nothing_in_a_manual_acts_by_itself(paper: bytes, tmp_path: Path) -> None:
    made = merged(paper, manuals([manual(tmp_path / "pump.pdf", script=True)]))
    reader = PdfReader(io.BytesIO(made.file))
    assert b"/JavaScript" in (tmp_path / "pump.pdf").read_bytes()
    assert [page for page in reader.pages if "/AA" in page or page.annotations] == []
    assert "/OpenAction" not in reader.root_object


def damaged(path: Path) -> Path:
    whole = manual(path).read_bytes()
    path.write_bytes(whole[: len(whole) // 2])
    return path


def scrambled(path: Path) -> Path:
    path.write_bytes(manual(path).read_bytes().replace(b"/Pages", b"/Pagez").replace(b"/Kids", b"/Kidz"))
    return path


def spreadsheet(path: Path) -> Path:
    path.write_bytes(b"PK\x03\x04 not a manual")
    return path


def locked(path: Path) -> Path:
    return manual(path, password="secret")


def missing(path: Path) -> Path:
    return path


@pytest.mark.parametrize(
    ("spoil", "told"),
    [
        (damaged, "damaged PDF"),
        (scrambled, "PDF"),
        (spreadsheet, "no PDF"),
        (locked, "encrypted"),
        (missing, "cannot be read"),
    ],
)
def test_a_bad_manual_is_told_by_its_name(spoil: object, told: str, tmp_path: Path) -> None:
    good = manual(tmp_path / "good.pdf")
    bad = spoil(tmp_path / "bad pump.pdf")  # type: ignore[operator]
    with pytest.raises(AnchorwattError, match=rf"^manual bad pump\.pdf: .*{told}"):
        manuals([good, bad])


def test_all_bad_manuals_are_told_at_once(tmp_path: Path) -> None:
    with pytest.raises(AnchorwattError) as told:
        manuals([spreadsheet(tmp_path / "one.pdf"), missing(tmp_path / "two.pdf")])
    assert [line.split(":")[0] for line in str(told.value).splitlines()] == ["manual one.pdf", "manual two.pdf"]
