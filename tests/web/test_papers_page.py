"""The page of the papers: what can be chosen, what is wrong with it, the pages seen and the files saved."""

from __future__ import annotations

import io
from collections.abc import Mapping
from importlib import import_module
from pathlib import Path
from urllib.parse import parse_qsl, unquote, urlsplit

import pypdf
import pytest
from nicegui.testing.user_simulation import user_simulation
from tests.starters import assessed
from tests.web.test_paper_html import HOSTILE, Read

from anchorwatt.assessment import Assessment, assess
from anchorwatt.design import parse, starter_text
from anchorwatt.errors import AnchorwattError
from anchorwatt.papers import printed
from anchorwatt.papers.document import Document, NewPage, Printed
from anchorwatt.papers.page import Paragraph
from anchorwatt.units import System
from anchorwatt.web.content import Asked, Html
from anchorwatt.web.desk import Desks
from anchorwatt.web.printed_papers import edition, ordered, written
from anchorwatt.web.questions.papers import PAPERS
from anchorwatt.web.serve import build
from anchorwatt.web.yaml_files import designs, houses

CUTTER = "cutter-12m"
YARD = 'name: Heronsgate Boatyard\ncolour: "#7a2f6b"\nterms:\n  - One third with the order.\n'
BROKEN = "name: Heronsgate\nterms: pay\n"


class Seen(Read):
    """With fields and pictures, which have no end."""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        super().handle_starttag(tag, attrs)
        if tag in ("input", "img"):
            self.handle_endtag(tag)


def slip(found: Assessment, _: System, wishes: printed.Wishes) -> Document:
    """A paper that is quickly made."""
    said: tuple[Printed, ...] = (Paragraph(f"sea {wishes.sea}, air {wishes.air}"), NewPage(), Paragraph("the end"))
    return Document("slip", "Slip", "", found.design.name, "", "a4", said, contents=0, cover=False)


NEW = (
    printed.Paper("slip", "Slip", "What nobody asked for", slip),
    printed.Paper("trials", "Trials", "A day of trials", slip, takes_temperatures=True),
)


@pytest.fixture(autouse=True)
def registered(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(printed, "PAPERS", (*printed.PAPERS, *NEW))


def blocks(folder: Path, system: System = "si", **query: str) -> dict[str, Read]:
    """The page's parts by their names."""
    made = PAPERS.prepare(assessed(CUTTER), Asked("my boat", system, query, folder))
    return {one.name: Seen(one.content) for one in made if isinstance(one, Html)}


def saved(found: Assessment, address: str, folder: Path) -> bytes:
    """What an address of the page gives."""
    parts = urlsplit(address)
    file = unquote(parts.path).removeprefix("/design/my boat/papers/")
    assert "/" not in file
    return written(found, file, dict(parse_qsl(parts.query)), "si", folder)


def link(shown: Mapping[str, Read], ending: str) -> str:
    (found,) = (
        str(one["href"]) for one in shown["save"].named("a") if urlsplit(str(one["href"])).path.endswith(ending)
    )
    return found


def words(file: bytes) -> str:
    told = " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(file)).pages)
    return " ".join(told.split())


def field(shown: Mapping[str, Read], name: str) -> dict[str, str | None]:
    (found,) = (marks for _, marks in shown["choose"].tags if marks.get("data-ask") == name)
    return found


def asks(shown: Mapping[str, Read]) -> list[str]:
    return [str(marks["data-ask"]) for _, marks in shown["choose"].tags if "data-ask" in marks]


def test_a_paper_that_is_registered_can_be_chosen(tmp_path: Path) -> None:
    shown = blocks(tmp_path, paper="slip")
    assert [one["value"] for one in shown["choose"].named("option")][:-2] == [*printed.NAMES, "slip", "trials"]
    assert "What nobody asked for" in shown["choose"].words


def test_each_page_of_the_file_is_seen_and_has_words_for_those_who_see_none(tmp_path: Path) -> None:
    shown = blocks(tmp_path, paper="trials")
    pictures = shown["pages"].named("img")
    file = saved(assessed(CUTTER), link(shown, ".pdf"), tmp_path)
    assert len(pypdf.PdfReader(io.BytesIO(file)).pages) == 2
    assert [one["alt"] for one in pictures] == ["Page 1 of Slip", "Page 2 of Slip"]
    assert {one["loading"] for one in pictures} == {"lazy"}
    made = [saved(assessed(CUTTER), str(one["src"]), tmp_path) for one in pictures]
    assert all(one.startswith(b"<svg") for one in made)
    assert len(set(made)) == len(made)


def test_only_the_papers_of_a_day_of_trials_ask_for_its_temperatures(tmp_path: Path) -> None:
    assert asks(blocks(tmp_path, paper="slip")) == ["paper", "language"]
    assert asks(blocks(tmp_path, paper="trials")) == ["paper", "language", "sea", "air"]


def test_a_temperature_that_is_typed_in_is_on_the_paper(tmp_path: Path) -> None:
    shown = blocks(tmp_path, paper="trials", sea="18 °C")
    assert "sea 18.0, air None" in words(saved(assessed(CUTTER), link(shown, ".pdf"), tmp_path))


@pytest.mark.parametrize(
    ("typed", "told"), [("warm", "Found"), ("18", "without a unit"), ("99 °C", "allowed: from 32 °F to 104 °F")]
)
def test_what_is_no_temperature_of_the_day_is_told_beside_its_field_and_kept(
    tmp_path: Path, typed: str, told: str
) -> None:
    shown = blocks(tmp_path, "us", paper="trials", sea=typed, air="20 °C")
    assert (field(shown, "sea")["value"], field(shown, "sea")["aria-invalid"]) == (typed, "true")
    assert field(shown, "air")["aria-invalid"] == "false"
    assert told in shown["choose"].words
    assert dict(parse_qsl(urlsplit(link(shown, ".pdf")).query)) == {"air": "20 °C"}
    assert shown["pages"].named("img")


def test_a_settings_file_of_the_folder_gives_the_paper_out(tmp_path: Path) -> None:
    (tmp_path / "yard.yaml").write_text(YARD.replace("Heronsgate", "Sedge Quay"), encoding="utf-8")
    shown = blocks(tmp_path, paper="slip", house="yard")
    assert "Sedge Quay Boatyard" in words(saved(assessed(CUTTER), link(shown, ".pdf"), tmp_path))


@pytest.mark.parametrize(("house", "told"), [("yard", "Line 2: terms: found"), ("../yard", "no settings file")])
def test_a_settings_file_that_cannot_be_used_is_told_and_the_paper_is_there(
    tmp_path: Path, house: str, told: str
) -> None:
    folder = tmp_path / "designs"
    folder.mkdir()
    (tmp_path / "yard.yaml").write_text(YARD, encoding="utf-8")
    (folder / "yard.yaml").write_text(BROKEN, encoding="utf-8")
    shown = blocks(folder, paper="slip", house=house)
    assert told in shown["choose"].words
    assert str(tmp_path) not in shown["choose"].words
    assert shown["pages"].named("img")
    assert urlsplit(link(shown, ".pdf")).query == ""
    with pytest.raises(AnchorwattError, match=told):
        written(assessed(CUTTER), "slip.pdf", {"house": house}, "si", folder)


def test_a_paper_that_cannot_be_made_is_told_and_another_can_be_chosen(tmp_path: Path) -> None:
    wrong = assess(parse(starter_text(CUTTER).replace("W4: {fuse", "W999: {fuse")))
    made = PAPERS.prepare(wrong, Asked("my boat", "si", {"paper": "build"}, tmp_path))
    shown = {one.name: Seen(one.content) for one in made if isinstance(one, Html)}
    assert asks(shown) == ["paper", "language"]
    assert "W999" in shown["refused"].words


def test_a_paper_speaks_the_language_that_is_chosen(tmp_path: Path) -> None:
    shown = blocks(tmp_path, paper="trials", language="fr")
    assert dict(parse_qsl(urlsplit(link(shown, ".pdf")).query)) == {"language": "fr"}
    assert edition(assessed(CUTTER), ordered({"language": "fr"}, "si", tmp_path), "si").document.language == "fr"


def test_a_language_that_nobody_speaks_here_leaves_english(tmp_path: Path) -> None:
    order = ordered({"language": "<b>"}, "si", tmp_path)
    assert (order.wishes.language, list(order.told)) == ("en", ["language"])


def test_settings_files_are_no_designs(tmp_path: Path) -> None:
    (tmp_path / "boat.yaml").write_text(starter_text(CUTTER), encoding="utf-8")
    (tmp_path / "half.yaml").write_text("name: Half a boat\nboat: 7\n", encoding="utf-8")
    (tmp_path / "torn.yaml").write_text("anchorwatt: 1\nterms: [\n", encoding="utf-8")
    (tmp_path / "yard.yaml").write_text(YARD, encoding="utf-8")
    (tmp_path / "broken.yaml").write_text("terms: [\nlogo: x\n", encoding="utf-8")
    (tmp_path / "plain.yaml").write_text("name: A yard\n", encoding="utf-8")
    assert designs(tmp_path) == Desks(tmp_path).names() == ("boat", "half", "torn")
    assert houses(tmp_path) == ("broken", "plain", "yard")


def test_a_settings_file_that_became_a_design_is_one(tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text(YARD, encoding="utf-8")
    assert designs(tmp_path) == ()
    path.write_text(starter_text(CUTTER), encoding="utf-8")
    assert designs(tmp_path) == ("boat",)


def test_what_was_seen_is_saved_without_setting_it_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shown = blocks(tmp_path, paper="trials", air="21 °C")

    def again(*_: object) -> None:
        raise AssertionError("set again")

    monkeypatch.setattr(printed, "edition", again)
    assert saved(assessed(CUTTER), link(shown, ".pdf"), tmp_path).startswith(b"%PDF")


def test_another_state_of_the_design_is_set_anew(tmp_path: Path) -> None:
    order = ordered({"paper": "slip"}, "si", tmp_path)
    changed = assess(parse(starter_text(CUTTER).replace("name: Ragged Kate", "name: Ragged Robin")))
    assert edition(assessed(CUTTER), order, "si") is edition(assessed(CUTTER), order, "si")
    assert edition(changed, order, "si").document.boat == "Ragged Robin"
    assert edition(assessed(CUTTER), order, "us") is not edition(assessed(CUTTER), order, "si")


@pytest.mark.parametrize(
    "file", ["none.pdf", "slip", "slip.exe", "slip.xlsx", "slip.csv", "slip-9.svg", "slip.svg", "../slip.pdf"]
)
def test_there_is_no_other_file(tmp_path: Path, file: str) -> None:
    with pytest.raises(KeyError):
        written(assessed(CUTTER), file, {}, "si", tmp_path)


@pytest.mark.parametrize("hostile", HOSTILE)
def test_hostile_words_stay_words(tmp_path: Path, hostile: str) -> None:
    (tmp_path / "yard.yaml").write_text(YARD, encoding="utf-8")
    shown = blocks(tmp_path, paper="trials", house=hostile, sea=hostile)
    known = blocks(tmp_path, paper="trials", house="none", sea="x")
    for name, block in shown.items():
        assert [(tag, set(marks)) for tag, marks in block.tags] == [
            (tag, set(marks)) for tag, marks in known[name].tags
        ]
    assert field(shown, "sea")["value"] == hostile


async def test_who_may_not_take_files_along_sees_the_pages(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "boat.yaml").write_text(starter_text(CUTTER), encoding="utf-8")
    monkeypatch.setattr(import_module("anchorwatt.assessment"), "assess", lambda _: assessed(CUTTER))
    async with user_simulation() as user:
        build(tmp_path, may_download=lambda _: False)
        page = await user.http_client.get("/design/boat/papers/slip-1.svg")
        assert (page.status_code, page.headers["content-disposition"]) == (200, "inline")
        assert "sandbox" in page.headers["content-security-policy"]
        for file in ("slip.pdf", "build.xlsx", "commissioning.csv"):
            assert (await user.http_client.get(f"/design/boat/papers/{file}")).status_code == 403
