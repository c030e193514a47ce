"""The hand-over file, read back from its PDF: nothing of the design is missing, and no words of a user break it."""

from __future__ import annotations

import csv
import io
import re
import struct
import zlib
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from random import Random
from types import MappingProxyType
from typing import Any

import pypdf
import pytest
from pypdf.generic import DictionaryObject
from tests.starters import STARTERS, assessed

from anchorwatt.assessment import assess
from anchorwatt.assessment.commissioning import commissioning
from anchorwatt.assessment.trial_results import Filled, read_results, trial_results
from anchorwatt.design.editing import edit_all
from anchorwatt.papers.as_csv import csv_text
from anchorwatt.papers.document import Document, House
from anchorwatt.papers.printed import Wishes, asked, files
from anchorwatt.papers.sets.commissioning import sheet_rows
from anchorwatt.papers.sets.handover import document
from anchorwatt.papers.sets.merged import NOT_ARCHIVAL, Manual, merged
from anchorwatt.papers.typeset import pdf
from anchorwatt.units import System

CUTTER = "cutter-12m"
HOSTILE = ('#panic("no") $x$ [*b*] \\ // `raw` @a <b>', "ab" * 150, "\u202eעברית\u202c مرحبا", "⛵🚨\u200d🔥", "=1+1")


def system(starter: str) -> System:
    """The trawler's file is read in the units of her owner."""
    return "us" if starter == "trawler-14m" else "si"


@cache
def written(starter: str) -> bytes:
    return pdf(document(assessed(starter), system(starter)), House(name="Heronsgate Boatyard"))


def reader(file: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(file))


def letters(some: str) -> str:
    """Without what line breaks change."""
    return "".join(some.replace("\u00ad", "").replace("\u200b", "").replace("-", "").split())


@cache
def pages(file: bytes) -> tuple[str, ...]:
    """Words of each page, none of a drawing's."""
    return tuple(
        letters(page.extract_text()) if page.mediabox.height > page.mediabox.width else ""
        for page in reader(file).pages
    )


def told(file: bytes) -> str:
    return "".join(pages(file))


def page_of(file: bytes, words: str) -> int:
    """The last page that begins with a heading, under the running head."""
    return [n for n, page in enumerate(pages(file)) if letters(words) in page[:120]][-1]


def bookmarks(file: pypdf.PdfReader, some: Any = None) -> Iterator[tuple[str, int]]:
    """Titles with the pages that they lead to, counted from 0."""
    for one in file.outline if some is None else some:
        if isinstance(one, list):
            yield from bookmarks(file, one)
        else:
            number = file.get_destination_page_number(one)
            assert number is not None
            yield str(one.title), number


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
        parts = {part: words for part, _, words in found.story(system(starter))}
        for words in (found.fault.name, parts["protects"], parts["does"]):
            assert letters(words) in text


@pytest.mark.parametrize("starter", STARTERS)
def test_every_single_loss_is_told_with_the_cooling_and_the_hours_that_are_left(starter: str) -> None:
    text = told(written(starter))
    for row in assessed(starter).redundancy.losses:
        behind = text[text.index(letters(f"{row.loss.part}stops:")) :][:400]
        assert f"{100.0 * row.loss.cooling:.0f}{row.loss.hold / 3600.0:.2f}" in behind


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
    assert page_of(written(starter), following) == page_of(written(starter), page) + 1


@pytest.mark.parametrize("starter", STARTERS)
def test_the_crew_reads_the_answers_of_the_assessment(starter: str) -> None:
    page = pages(written(starter))[page_of(written(starter), "How to live with the system")]
    answers = {one.key: one.value for one in assessed(starter).answers}
    dawn, hold = re.search(r"About(\d+)%,ifthenight", page), re.search(r"(?:about|atleast)(\d+)hours", page)
    assert dawn is not None
    assert hold is not None
    assert float(dawn[1]) == pytest.approx(100.0 * answers["charge_at_dawn_pct"], abs=2.6)  # to five in a hundred
    assert 0.0 <= answers["hold_hours"] / 3600.0 - float(hold[1]) < 1.0


@pytest.mark.parametrize("starter", STARTERS)
def test_what_is_set_stands_in_the_settings(starter: str) -> None:
    found, text = assessed(starter), told(written(starter))
    entered = [one for machine in found.regulator.machines for one in machine.settings if one.entered]
    names = [one.name for one in found.specification.bank.management]
    names += [one.name for one in (*entered, *found.regulator.bank)]
    assert [name for name in names if letters(name) not in text] == []


@pytest.mark.parametrize("starter", STARTERS)
def test_every_trial_has_a_line_where_nobody_gave_results(starter: str) -> None:
    text = told(written(starter))
    trials = commissioning(assessed(starter), system(starter)).tests
    assert [one.name for one in trials if letters(f"{one.name}{one.system}") not in text] == []


@pytest.mark.parametrize("starter", STARTERS)
def test_the_table_of_contents_names_the_page_of_each_chapter_and_drawing(starter: str) -> None:
    file = reader(written(starter))
    contents = pages(written(starter))[1]
    marks = list(bookmarks(file))
    assert len(marks) > 30
    for title, number in marks:
        assert re.search(re.escape(letters(title)) + rf"\.*{number + 1}(?!\d)", contents)


def embedded(font: DictionaryObject) -> bool:
    descendants = font.get("/DescendantFonts")
    bearer = font if descendants is None else descendants[0].get_object()
    return bool({"/FontFile", "/FontFile2", "/FontFile3"} & set(bearer.get("/FontDescriptor", {})))


def test_all_fonts_are_in_the_file() -> None:
    fonts = [
        font.get_object()
        for page in reader(written(CUTTER)).pages
        for font in page.get("/Resources", {}).get("/Font", {}).values()
    ]
    assert fonts
    assert [font for font in fonts if not embedded(font) and font["/Subtype"] != "/Type3"] == []


def test_the_file_shows_the_marks_of_an_archive_file() -> None:
    file = reader(written(CUTTER))
    root: Any = file.root_object
    xmp = file.xmp_metadata
    assert xmp is not None
    assert b"<pdfaid:part>2</pdfaid:part>" in root["/Metadata"].get_data()
    assert [one.get_object()["/S"] for one in root["/OutputIntents"]] == ["/GTS_PDFA1"]
    assert root["/MarkInfo"]["/Marked"]
    assert not file.is_encrypted
    assert {"/OpenAction", "/AA"} & set(root) == set()


# What users write


def without_drawings(made: Document) -> Document:
    """The chapters that are words and tables: sheets have hostile tests of their own."""
    return replace(made, body=made.body[:-1])


def noise(side: int) -> bytes:
    """A PNG file that no packing makes smaller, of `side`² pixels."""
    random = Random(5)
    rows = b"".join(b"\0" + random.randbytes(3 * side) for _ in range(side))

    def chunk(kind: bytes, content: bytes) -> bytes:
        check = zlib.crc32(kind + content)
        return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", check)

    head = struct.pack(">IIBBBBB", side, side, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows)) + chunk(b"IEND", b"")


@cache
def hostile() -> str:
    """A boat, a part, a load, results, manuals and a yard with such names, and a logo of five megabytes."""
    cutter = assessed(CUTTER)
    tags = [item.tag for item in cutter.specification.items]
    serials = dict(zip(tags, HOSTILE, strict=False))
    load = {f"dc.loads.{HOSTILE[0][:30]}": {"appliance": "water pump"}}
    design = edit_all(cutter.design, {"name": HOSTILE[0], "serials": serials, **load})
    found = assess(design)
    vars(found)["week"] = cutter.week  # names change nothing in it, and it takes longest
    rows = [
        Filled(one.name, reading.what, HOSTILE[2], "", "", "", words, "pass", HOSTILE[3], HOSTILE[0])
        for one in commissioning(found, "si").tests[:2]
        for reading, words in zip(one.readings, HOSTILE, strict=False)
    ]
    foreign = Filled(HOSTILE[0], HOSTILE[1], "", "", "", "", HOSTILE[4], "fail", "", "")
    manuals = tuple(Manual(words, b"", 3) for words in HOSTILE)
    made = document(found, "si", manuals, (*rows, foreign))
    logo = noise(1280)
    assert len(logo) > 4_900_000
    return told(pdf(without_drawings(made), House(HOSTILE[0], HOSTILE[1], logo, "png")))


@pytest.mark.parametrize("words", [words for words in HOSTILE if words.isascii()])
def test_hostile_words_are_but_words(words: str) -> None:
    assert hostile().count(letters(words)) >= 2


def test_hostile_words_take_nothing_else_away() -> None:
    text, found = hostile(), assessed(CUTTER)
    assert [words for words in found.cautions if letters(words) not in text] == []
    assert [one.item.name for one in found.register if letters(one.item.name) not in text] == []


# Results of the trials


def given(
    tmp_path: Path, starter: str = CUTTER, units: System = "si", found: Mapping[str, str] = MappingProxyType({})
) -> tuple[Filled, ...]:
    """The commissioning file's table with every reading found as expected, or as told by the reading's name."""
    rows = sheet_rows(assessed(starter), units, 12.0, 18.0)
    for row in rows:
        row["found"] = row["expected"] or row["to"] or row["accept_from"]
        row["verdict"] = "pass"
        if row["reading"] in found:
            row["found"], _, row["verdict"] = found[row["reading"]].partition("|")
    path = tmp_path / "filled.csv"
    path.write_bytes(csv_text(rows).encode("utf-8-sig"))
    return read_results(path)


@pytest.mark.parametrize("starter", STARTERS)
def test_a_table_filled_in_with_other_units_and_in_other_weather_is_known_again(starter: str, tmp_path: Path) -> None:
    filled = given(tmp_path, starter, "us")
    found = trial_results(commissioning(assessed(starter), "si").tests, filled)
    assert (found.foreign, found.of("not tested"), found.doubtful) == ((), (), ())


def test_cells_of_the_table_are_words() -> None:
    rows = sheet_rows(assessed(CUTTER), "si", None, None)
    assert {type(cell) for row in rows for cell in row.values()} == {str}
    assert [
        cell for row in csv.reader(io.StringIO(csv_text(rows))) for cell in row if cell[:1] in "=+-@'" and cell
    ] == []


def test_the_commissioning_file_comes_with_its_table() -> None:
    made = files(assessed(CUTTER), asked(["commissioning"]), "si", Wishes())
    assert set(made) == {"commissioning.pdf", "commissioning.xlsx", "commissioning.csv"}
    table = list(csv.DictReader(io.StringIO(made["commissioning.csv"].decode("utf-8-sig"))))
    readings = [one for test in commissioning(assessed(CUTTER), "si").tests for one in test.readings]
    assert [row["reading"] for row in table] == [one.what for one in readings]


@pytest.fixture(scope="module")
def printed_results(tmp_path_factory: pytest.TempPathFactory) -> str:
    said = {"saloon": "|", "flow": "3|fail", "bonding, highest": "9000|pass"}
    made = document(assessed(CUTTER), "si", filled=given(tmp_path_factory.mktemp("results"), found=said))
    text = told(pdf(without_drawings(made), House()))
    return text[text.rindex(letters("As whoever tested wrote it down")) :]


def test_what_failed_comes_before_what_passed(printed_results: str) -> None:
    failed, doubtful, rest = (
        printed_results.index(letters(words))
        for words in ("Mend and test these again", "Passed, but to be looked at again", "All readings, by system")
    )
    assert failed < printed_results.index("Flowandrise") < doubtful < rest


def test_a_pass_that_its_figure_speaks_against_is_told(printed_results: str) -> None:
    start = printed_results.index(letters("Passed, but to be looked at again"))
    assert letters("bonding, highest") in printed_results[start : start + 120]


def test_what_was_left_empty_was_not_tested(printed_results: str) -> None:
    assert letters("saloon write it down not tested") in printed_results


def test_every_reading_is_printed(printed_results: str) -> None:
    readings = [one for test in commissioning(assessed(CUTTER), "si").tests for one in test.readings]
    assert [one.what for one in readings if letters(one.what) not in printed_results] == []
    assert letters(f"passes{len(readings) - 2}") in printed_results


# Manuals


def manual(name: str, count: int) -> Manual:
    writer, content = pypdf.PdfWriter(), io.BytesIO()
    for _ in range(count):
        writer.add_blank_page(200, 100)
    writer.write(content)
    return Manual(name, content.getvalue(), count)


def test_each_manual_is_listed_with_the_page_on_which_it_begins() -> None:
    behind = (manual("pump.pdf", 3), manual("inverter.pdf", 2))
    made = document(assessed(CUTTER), "si", manuals=behind)
    file = merged(pdf(without_drawings(made), House()), behind).file
    (parent, begin), (name, first), (other, second) = list(bookmarks(reader(file)))[-3:]
    assert (parent, name, other) == ("Makers' manuals", "pump.pdf", "inverter.pdf")
    assert (begin, second) == (first, first + 3)
    text = told(file)
    assert f"pump.pdf3{first + 1}" in text
    assert f"inverter.pdf2{second + 1}" in text


def test_the_cover_says_that_manuals_are_no_archive() -> None:
    made = document(assessed(CUTTER), "si", manuals=(manual("pump.pdf", 12),))
    cover = reader(pdf(without_drawings(made), House())).pages[0].extract_text()
    assert letters(NOT_ARCHIVAL) in letters(cover)
    assert letters(NOT_ARCHIVAL) not in told(written(CUTTER))
