"""Where in the workbench a key of the design file is changed."""

from __future__ import annotations

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
    "places": "places",
    "spaces": "places",
    "offer": "price",
}
"""From the first part of a key to the page that has its fields."""


def where(design: str, key: str) -> str:
    """The address of a key's field, or of the mapping that it is."""
    page = PAGES[key.split(".")[0]]
    return f"/design/{part(design)}/{page}#{field_id(key)}"
