"""The page of the drawings: what can be pressed and where it leads, the earlier design, the files."""

from __future__ import annotations

import io
import re
import zipfile
from functools import cache
from pathlib import Path
from xml.etree import ElementTree

import pytest
from tests.starters import assessed
from tests.web.test_paper_html import HOSTILE, Read

from anchorwatt.assessment import Assessment, assess
from anchorwatt.design import parse, starter_text, starters
from anchorwatt.drawings.sheet import Path as Line
from anchorwatt.drawings.sheet import Sheet, Text
from anchorwatt.errors import AnchorwattError
from anchorwatt.papers.drawn_part import keys_of
from anchorwatt.web.addresses import field_there, where
from anchorwatt.web.content import Asked, Html
from anchorwatt.web.form_html import form_html
from anchorwatt.web.questions import question
from anchorwatt.web.questions.drawings import DRAWINGS
from anchorwatt.web.sheet_html import sheet_html
from anchorwatt.web.sheets import FORMATS, Drawn, drawn, earlier, written

CUTTER = "cutter-12m"


def blocks(assessment: Assessment, folder: Path, **query: str) -> dict[str, str]:
    """The page's parts by their names."""
    made = DRAWINGS.prepare(assessment, Asked("boat", "si", query, folder))
    return {one.name: one.content for one in made if isinstance(one, Html)}


@cache
def cutter() -> Drawn:
    return drawn(assessed(CUTTER), "si", {}, Path())


def buttons(html: str) -> list[dict[str, str | None]]:
    return [marks for _, marks in Read(html).tags if marks.get("role") == "button"]


def test_what_can_be_pressed_has_a_name_and_one_stop_for_the_focus() -> None:
    for sheet in cutter().sheets:
        found = buttons(cutter().html(sheet.name))
        keys = [one["data-key"] for one in found]
        assert len(keys) == len(set(keys)), sheet.name
        assert all(one["aria-label"] for one in found), sheet.name


def test_nothing_is_told_of_what_nobody_pressed() -> None:
    assert "" not in cutter().told


def test_every_circuit_of_a_sheet_can_be_pressed() -> None:
    html = cutter().html("dc-one-line")
    drawn_there = set(re.findall(r'data-circuit="(\w+)"', html))
    assert drawn_there == {one["data-circuit"] for one in buttons(html) if one.get("data-circuit")}
    assert len(drawn_there) > 10


def test_a_sheet_has_a_title_and_a_description() -> None:
    root = ElementTree.fromstring(cutter().html("dc-one-line"))
    assert (root.findtext("{*}title") or "").startswith("Direct current")
    assert root.findtext("{*}desc")


def test_nothing_that_can_be_pressed_is_dead(tmp_path: Path) -> None:
    found = assessed(CUTTER)
    made = drawn(found, "si", {}, tmp_path)
    pressed = {
        str(one["data-key"])
        for sheet in made.sheets
        for one in buttons(made.html(sheet.name))
        if not one.get("data-field")
    }
    assert len(pressed) > 100
    for key in pressed:
        thing = Read(blocks(found, tmp_path, about=key)["thing"])
        assert thing.named("div")[0]["data-of"] == key
        assert thing.words.strip()


def test_a_conductor_shows_its_whole_calculation(tmp_path: Path) -> None:
    wired = assessed(CUTTER).wiring.wiring.circuits[0]
    thing = Read(blocks(assessed(CUTTER), tmp_path, about=f"circuit:{wired.circuit.function}")["thing"])
    for step in assessed(CUTTER).wiring.why(wired.tag).steps:
        assert step.name in thing.words


@pytest.mark.parametrize("starter", starters())
def test_every_part_s_link_leads_to_what_its_page_shows(starter: str) -> None:
    found = assessed(starter)
    shown: dict[str, str] = {}
    tags = {item.tag for item in found.specification.items} | {tag for tag, _ in found.wiring.ends}
    led = 0
    for tag in sorted(tags):
        for key in keys_of(found, tag).values():
            there = field_there(found.design, key)
            assert there is not None, (tag, key)
            page, _, wanted = where("boat", there).removeprefix("/design/boat/").partition("#")
            if page not in shown:
                asked = question(page)
                assert asked is not None
                assert asked.forms is not None
                forms = asked.forms(found.design, Asked("boat", "si", {}))
                shown[page] = "".join(form_html(one, locked=True) for one in forms)
            assert f'id="{wanted}"' in shown[page] or f'id="g-{wanted}"' in shown[page], (tag, there)
            led += 1
    assert led > 30


def test_the_circuits_page_has_fields_of_a_circuit_that_the_file_says_nothing_of() -> None:
    circuits = question("circuits")
    assert circuits is not None
    assert circuits.forms is not None
    shown = circuits.forms(assessed(CUTTER).design, Asked("boat", "si", {"circuit": "W1"}))
    assert "wiring.circuits.W1.length" in {field.key for field in shown[0].group}
    hostile = circuits.forms(assessed(CUTTER).design, Asked("boat", "si", {"circuit": "W1.length"}))
    assert [one.group.key for one in hostile] == ["wiring", "installation"]


@pytest.mark.parametrize("words", HOSTILE)
def test_hostile_words_stay_words(words: str) -> None:
    text = Text((10, 10), words, 3.0, key="title:yard")
    line = Line(((0, 0), (9, 9)), "#000000", key=f"circuit:{words}", told=words, data=(("circuit", words),))
    there = Read(sheet_html(Sheet(100, 50, words, words, (text, line), unit="mm", name="x")))
    assert {tag for tag, _ in there.tags} == {"svg", "title", "desc", "rect", "text", "polyline"}
    assert {name for _, marks in there.tags for name in marks if name.startswith("on")} == set()


def test_a_cloud_is_no_button() -> None:
    cloud = Line(((0, 0), (9, 9)), "#000000", key="revision")
    assert "data-key" not in sheet_html(Sheet(100, 50, "A", "B", (cloud,), unit="mm", name="x"))


def test_what_changed_since_another_design_has_a_cloud(tmp_path: Path) -> None:
    text = starter_text(CUTTER)
    before = text.replace("W4: {fuse: 400 A}", "W4: {fuse: 350 A}")
    assert before != text
    (tmp_path / "before.yaml").write_text(before, encoding="utf-8")
    found = drawn(assessed(CUTTER), "si", {"since": "before"}, tmp_path)
    clouds = [one for one in found.named("dc-one-line").items if getattr(one, "key", "") == "revision"]
    assert clouds
    assert all(isinstance(one, Line) for one in clouds)


@pytest.mark.parametrize("name", ["none", "../outside", "broken"])
def test_an_earlier_design_that_cannot_be_used_is_told_and_the_sheets_are_there(tmp_path: Path, name: str) -> None:
    folder = tmp_path / "designs"
    folder.mkdir()
    (tmp_path / "outside.yaml").write_text(starter_text(CUTTER), encoding="utf-8")
    (folder / "broken.yaml").write_text("anchorwatt: 1\nboat: 7\n", encoding="utf-8")
    with pytest.raises(AnchorwattError):
        earlier(folder, name)
    shown = blocks(assessed(CUTTER), folder, since=name)
    assert "Not compared: " in shown["choose"]
    assert "<svg" in shown["sheet"]


def test_a_design_that_cannot_be_worked_out_is_told_even_with_an_earlier_one(tmp_path: Path) -> None:
    text = starter_text(CUTTER)
    (tmp_path / "before.yaml").write_text(text, encoding="utf-8")
    wrong = assess(parse(text.replace("W4: {fuse", "W999: {fuse")))
    with pytest.raises(AnchorwattError, match="W999"):
        blocks(wrong, tmp_path, since="before")


def test_an_earlier_design_is_read_again_once_its_file_has_changed(tmp_path: Path) -> None:
    path = tmp_path / "before.yaml"
    path.write_text(starter_text(CUTTER), encoding="utf-8")
    first = earlier(tmp_path, "before")
    assert earlier(tmp_path, "before") is first
    path.write_text(starter_text("trawler-14m"), encoding="utf-8")
    assert earlier(tmp_path, "before").design.name != first.design.name


def test_a_set_is_drawn_once_for_each_paper_and_system(tmp_path: Path) -> None:
    found = assessed(CUTTER)
    one = drawn(found, "si", {"paper": "A3"}, tmp_path)
    assert drawn(found, "si", {}, tmp_path) is one
    assert drawn(found, "us", {}, tmp_path) is not one
    assert drawn(found, "si", {"paper": "ANSI B"}, tmp_path).sheets[0].width == 431.8


@pytest.mark.parametrize(("kind", "begins"), [("svg", b"<svg"), ("pdf", b"%PDF"), ("png", b"\x89PNG")])
def test_a_sheet_is_saved(kind: str, begins: bytes) -> None:
    assert kind in FORMATS
    assert written(cutter(), f"dc-one-line.{kind}").startswith(begins)


def test_the_zip_file_holds_each_sheet_but_the_labels_and_its_bytes_repeat() -> None:
    packed = written(cutter(), "drawings.zip")
    assert packed == written(cutter(), "drawings.zip")
    with zipfile.ZipFile(io.BytesIO(packed)) as archive:
        wanted = [one.name for one in cutter().sheets if not one.name.startswith("labels")]
        assert archive.namelist() == [f"{name}.dxf" for name in wanted]


@pytest.mark.parametrize("file", ["none.dxf", "dc-one-line.exe", "dc-one-line", "../drawings.pdf"])
def test_there_is_no_other_file(file: str) -> None:
    with pytest.raises(KeyError):
        written(cutter(), file)
