"""Papers in French: nothing of ours is left in English, no figure is lost, names stay, the file says what it is."""

from __future__ import annotations

import io
import re
from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest
from pypdf import PdfReader
from tests.starters import assessed
from tools.heard import unknown

from anchorwatt.languages.translation import translation
from anchorwatt.papers.document import House
from anchorwatt.papers.own_names import own_names
from anchorwatt.papers.printed import Wishes, asked, edition, tables
from anchorwatt.papers.typeset import as_data

FRENCH = Wishes(language="fr")
SHOWN = ("title", "subject", "text", "heading", "heads", "caption", "contents title", "date of signing")


def texts(node: Any, key: str = "") -> Iterator[str]:
    """What a paper shows as text, without its pictures."""
    if isinstance(node, dict):
        for name, inner in node.items():
            yield from texts(inner, name)
    elif isinstance(node, list):
        for inner in node:
            yield from texts(inner, key)
    elif isinstance(node, str) and key in SHOWN:
        yield node


def figures(paper: str, language: str) -> Counter[str]:
    assessment = assessed("trawler-14m")
    made = edition(assessment, asked([paper])[0], "si", Wishes(language=language))
    words = " ".join(texts(as_data(made.document, House())))
    return Counter(re.findall(r"\d+", words))


def test_no_paper_or_drawing_has_a_text_without_a_translation() -> None:
    """One boat here, for its time; `tools/write_messages.py` listens to all starters in both systems of units."""
    assessment = assessed("catamaran-13m")
    reader = translation("fr", own_names(assessment.design))
    assert sorted(set(unknown(reader, assessment, "si"))) == []


def test_keys_of_the_design_file_stay_as_whoever_types_them_finds_them() -> None:
    made = edition(assessed("trawler-14m"), asked(["engineering"])[0], "si", FRENCH)
    shown = set(texts(as_data(made.document, House())))
    assert {"cabins.engine room", "dc.bank", "block_heat_capacity"} <= shown


@pytest.mark.parametrize("paper", ["offer", "broker", "commissioning"])
def test_a_french_paper_has_the_figures_of_the_english(paper: str) -> None:
    assert figures(paper, "fr") == figures(paper, "en")


def test_the_file_says_that_it_is_french_and_is_so() -> None:
    made = edition(assessed("trawler-14m"), asked(["offer"])[0], "si", FRENCH)
    file = PdfReader(io.BytesIO(made.pdf))
    assert str(file.root_object["/Lang"]).startswith("fr")
    words = file.pages[0].extract_text()
    assert "Offre" in words
    assert "24,4\u00a0°C" in words or "24,4 °C" in words


def test_names_of_the_design_stay_as_they_were_typed() -> None:
    made = edition(assessed("trawler-14m"), asked(["offer"])[0], "si", FRENCH)
    words = list(texts(as_data(made.document, House())))
    for cabin in ("owner's cabin", "guest cabin", "forward cabin"):
        assert cabin in words


def test_the_yards_own_words_are_printed_as_they_are() -> None:
    house = House(name="Bank and engine yard", address="night", terms=("Half now, half at hand-over.",))
    made = edition(assessed("trawler-14m"), asked(["offer"])[0], "si", Wishes(house=house, language="fr"))
    data = as_data(made.document, house)
    assert data["house"]["name"] == "Bank and engine yard"
    assert data["house"]["address"] == "night"
    assert "Half now, half at hand-over." in list(texts(data))


def test_english_is_what_it_was() -> None:
    """A paper in French leaves nothing behind that an English one would show."""
    assessment = assessed("trawler-14m")
    before = edition(assessment, asked(["broker"])[0], "si", Wishes()).pdf
    edition(assessment, asked(["broker"])[0], "si", FRENCH).pdf  # noqa: B018
    assert edition(assessment, asked(["broker"])[0], "si", Wishes()).pdf == before


def test_the_workbook_is_in_french_too() -> None:
    import zipfile

    assessment = assessed("trawler-14m")
    (paper,) = asked(["build"])
    with zipfile.ZipFile(io.BytesIO(tables(assessment, paper, "si", FRENCH))) as book:
        names = book.read("xl/workbook.xml").decode()
        cells = book.read("xl/sharedStrings.xml").decode()
    assert 'name="nomenclature"' in names
    assert ">fournisseur<" in cells
    assert ">supplier<" not in cells
