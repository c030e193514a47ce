"""The typed design: what a design file holds, read, changed, written, and filled in to a specification."""

from __future__ import annotations

from anchorwatt.design.design import Design
from anchorwatt.design.editing import edit
from anchorwatt.design.origin import Origin, origin
from anchorwatt.design.reading import parse, read
from anchorwatt.design.schema import schema
from anchorwatt.design.specify import specify
from anchorwatt.design.writing import new, starter_text, starters, write

__all__ = [
    "Design",
    "Origin",
    "edit",
    "new",
    "origin",
    "parse",
    "read",
    "schema",
    "specify",
    "starter_text",
    "starters",
    "write",
]
