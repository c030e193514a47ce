"""Where in the workbench a key of the design file is changed."""

from __future__ import annotations

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.web.escaped import part
from anchorwatt.web.form_html import field_id

PAGES = {
    "brief": "boat",
    "boat": "boat",
    "place": "boat",
    "cabins": "cabins",
    "plan": "cabins",
    "neighbours": "cabins",
    "cooling": "plant",
    "dc": "bank",
    "ac": "bank",
    "charging": "charge",
    "week": "days",
    "wiring": "circuits",
    "installation": "circuits",
    "drawings": "drawings",
    "places": "places",
    "spaces": "places",
    "offer": "price",
}
"""From the first part of a key to the page that has its fields."""


def where(design: str, key: str) -> str:
    """The address of a key's field, or of the mapping that it is."""
    page = PAGES[key.split(".")[0]]
    return f"/design/{part(design)}/{page}#{field_id(key)}"


def field_there(design: Design, key: str) -> str | None:
    """The key itself where a page has a field for it, else the nearest mapping above it that has fields.

    The first part of a key alone is a whole page and no answer: None then.
    """
    root, *_ = key.split(".")
    if root not in PAGES:
        return None
    fields = {field.key for field in form(design, root)}
    while key != root:
        if key in fields or any(one.startswith(f"{key}.") for one in fields):
            return key
        key = key.rpartition(".")[0]
    return None
