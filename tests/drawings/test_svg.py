from __future__ import annotations

from xml.etree import ElementTree

from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.drawings.sheet import Path, Sheet, Text, rectangle
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
