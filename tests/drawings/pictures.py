"""What tests of pictures ask of a drawing: its words, and where they lie."""

from __future__ import annotations

from itertools import combinations
from xml.etree import ElementTree

from anchorwatt.drawings.lettering import text_width

NAMESPACE = {"svg": "http://www.w3.org/2000/svg"}
Box = tuple[str, float, float, float, float]


def drawn(picture: str) -> ElementTree.Element:
    return ElementTree.fromstring(picture)


def words(picture: str) -> list[str]:
    return [text.text or "" for text in drawn(picture).findall("svg:text", NAMESPACE)]


def boxes(picture: str) -> list[Box]:
    """The words of the picture with left, top, right and bottom of what they cover."""
    found = []
    for text in drawn(picture).findall("svg:text", NAMESPACE):
        size, content = float(text.get("font-size", "0")), text.text or ""
        width = text_width(content, size, text.get("font-weight") == "bold")
        x, y = float(text.get("x", "0")), float(text.get("y", "0"))
        left = x - width * {"middle": 0.5, "end": 1.0}.get(text.get("text-anchor", ""), 0.0)
        found.append((content, left, y - 0.72 * size, left + width, y + 0.2 * size))
    return found


def assert_words_are_free(picture: str) -> None:
    """No words lie over others or outside the sheet."""
    root = drawn(picture)
    width, height = float(root.get("width", "0")), float(root.get("height", "0"))
    for content, left, top, right, bottom in boxes(picture):
        assert left >= 0, content
        assert right <= width, content
        assert top >= 0, content
        assert bottom <= height, content
    for (one, a, b, c, d), (other, e, f, g, h) in combinations(boxes(picture), 2):
        assert c <= e or g <= a or d <= f or h <= b, f"{one!r} over {other!r}"


def assert_lines_stay_on_the_sheet(picture: str) -> None:
    """No line or area leaves the sheet."""
    root = drawn(picture)
    width, height = float(root.get("width", "0")), float(root.get("height", "0"))
    for shape in (*root.findall("svg:polyline", NAMESPACE), *root.findall("svg:polygon", NAMESPACE)):
        for pair in (shape.get("points") or "").split():
            x, y = (float(part) for part in pair.split(","))
            assert 0.0 <= x <= width
            assert 0.0 <= y <= height
