"""A sheet of the yard's drawings as a part of a page: what can be pressed in it has a name and takes the focus."""

from __future__ import annotations

from typing import TYPE_CHECKING
from xml.etree import ElementTree

from anchorwatt.drawings.svg import svg

if TYPE_CHECKING:
    from anchorwatt.drawings.sheet import Sheet

SVG = "http://www.w3.org/2000/svg"
TITLE_FIELDS = {"yard": "yard", "job": "job", "drawn": "drawn", "checked": "checked"}
"""Words of the title block that are typed, and their keys in the file's section “drawings”."""

REACH = "3"
"""mm across a conductor within which a pointer meets it."""


def sheet_html(sheet: Sheet) -> str:
    """A sheet as SVG in HTML.

    Things that the drawing tells something of are buttons, one a key; further items of the key can be pressed too. A
    conductor has an unseen wider line below it, since its own is thinner than a finger.
    """
    # The text is our own writer's, so nothing in it can harm the parser.
    root = ElementTree.fromstring(svg(sheet))  # noqa: S314
    root.attrib.pop("width", None)
    root.attrib.pop("height", None)
    root.set("preserveAspectRatio", "xMidYMin meet")
    root.set("role", "group")
    root.set("data-sheet", sheet.name)
    told = {key: words for item in root if (key := item.get("data-key")) and (words := _told(item))}
    named: set[str] = set()
    for item in list(root):
        key = item.get("data-key")
        if key is None:
            continue
        field = TITLE_FIELDS.get(key.removeprefix("title:")) if key.startswith("title:") else None
        if field is not None:
            item.set("data-field", f"drawings.{field}")
            _button(item, f"{field}: {item.text or ''}, go to its field")
        elif key not in told:
            del item.attrib["data-key"]
            continue
        elif key not in named and _told(item):
            named.add(key)
            _button(item, told[key])
        if item.tag == f"{{{SVG}}}polyline":
            root.insert(list(root).index(item), _reach(item, key))
    ElementTree.register_namespace("", SVG)
    return ElementTree.tostring(root, encoding="unicode")


def _told(item: ElementTree.Element) -> str:
    return item.findtext(f"{{{SVG}}}title", "")


def _button(item: ElementTree.Element, name: str) -> None:
    item.set("role", "button")
    item.set("tabindex", "0")
    item.set("aria-label", name)


def _reach(line: ElementTree.Element, key: str) -> ElementTree.Element:
    wide = {"points": line.get("points", ""), "fill": "none", "stroke-width": REACH, "data-key": key}
    made = ElementTree.Element(f"{{{SVG}}}polyline", {**wide, "class": "reach", "stroke": "transparent"})
    title = ElementTree.SubElement(made, f"{{{SVG}}}title")
    title.text = _told(line)
    return made
