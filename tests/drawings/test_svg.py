from __future__ import annotations

from xml.etree import ElementTree

from hypothesis import given
from hypothesis import strategies as st
from tests.drawings.yard_sheet import CONDUCTOR, EXAMPLE, FIRST, sheet

from anchorwatt.drawings.sheet import Arc, Path, Sheet, Text, rectangle
from anchorwatt.drawings.signs import one_line
from anchorwatt.drawings.svg import svg

NAMESPACE = {"svg": "http://www.w3.org/2000/svg"}
printable = st.text(st.characters(categories=("L", "N", "P", "S", "Zs")), min_size=1, max_size=40)


def parsed(sheet: Sheet) -> ElementTree.Element:
    return ElementTree.fromstring(svg(sheet))


@given(printable, printable)
def test_any_words_survive(words: str, key: str) -> None:
    root = parsed(Sheet(10, 10, words, words, (Text((1, 9), words, 8, key=key),)))
    text = root.find("svg:text", NAMESPACE)
    assert text is not None
    assert text.text == words
    assert text.get("data-key") == key
    assert root.findtext("svg:title", namespaces=NAMESPACE) == words


def test_a_filled_path_is_closed_and_a_line_is_not() -> None:
    root = parsed(Sheet(10, 10, "", "", (rectangle(0, 0, 5, 5, "#eeeeee"), Path(((0, 0), (9, 9)), "#000000"))))
    assert len(root.findall("svg:polygon", NAMESPACE)) == 1
    line = root.find("svg:polyline", NAMESPACE)
    assert line is not None
    assert line.get("fill") == "none"


def test_nothing_is_fetched_and_nothing_runs() -> None:
    text = svg(Sheet(10, 10, "a", "b", (Text((1, 9), "c", 8),)))
    assert "href" not in text
    assert "script" not in text
    assert "url(" not in text


def test_the_drawing_says_that_it_is_an_image() -> None:
    assert parsed(Sheet(10, 10, "a", "b", ())).get("role") == "img"


def element(root: ElementTree.Element, path: str) -> ElementTree.Element:
    found = root.find(path, NAMESPACE)
    assert found is not None
    return found


def test_a_sheet_of_paper_has_its_true_size() -> None:
    root = parsed(EXAMPLE)
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("420mm", "297mm", "0 0 420 297")


def test_a_picture_has_no_unit() -> None:
    assert parsed(Sheet(10, 20, "", "", ())).get("width") == "10"


def test_lengths_of_paper_are_told_to_a_hundredth() -> None:
    assert element(parsed(sheet(Text((10.126, 20.0), "a", 2.5))), "svg:text").get("x") == "10.13"


def test_a_placed_block_is_a_group_at_its_place() -> None:
    group = element(parsed(EXAMPLE), f"svg:g[@data-key='{FIRST.key}']")
    assert group.get("transform") == "translate(50 40)"
    assert group.get("data-kind") == "fuse"
    assert group.findtext("svg:title", namespaces=NAMESPACE) == FIRST.told


def test_a_placed_blocks_shown_attributes_are_text() -> None:
    texts = element(parsed(EXAMPLE), f"svg:g[@data-key='{FIRST.key}']").findall("svg:text[@data-attribute]", NAMESPACE)
    assert [(one.get("data-attribute"), one.text) for one in texts] == [("TAG", "F1")]


def test_a_conductor_tells_its_facts() -> None:
    drawn = element(parsed(EXAMPLE), f"svg:polyline[@data-key='{CONDUCTOR.key}']")
    assert {name: drawn.get(f"data-{name}") for name in ("circuit", "from", "to", "layer")} == {
        **dict(CONDUCTOR.data),
        "layer": CONDUCTOR.layer,
    }


def test_an_arc_of_more_than_half_a_circle_goes_the_long_way_round() -> None:
    drawn = element(parsed(sheet(Arc((100, 100), 10, 0, 270))), "svg:path")
    assert drawn.get("d") == "M110 100A10 10 0 1 1 100 90"


def test_a_whole_arc_is_a_circle() -> None:
    drawn = element(parsed(sheet(Arc((100, 100), 10, fill="#b00000"))), "svg:circle")
    assert (drawn.get("r"), drawn.get("fill")) == ("10", "#b00000")


@given(st.text(st.characters(), min_size=1, max_size=40))
def test_no_words_break_the_file(words: str) -> None:
    root = parsed(Sheet(10, 10, words, words, (Text((1, 9), words, 8, key=words),), (("fact", words),)))
    text = element(root, "svg:text")
    assert (text.text, text.get("data-key")) == (one_line(words), one_line(words))
