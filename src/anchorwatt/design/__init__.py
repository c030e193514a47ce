"""The typed design: what a design file holds, read, changed, written, and filled in to a specification."""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from anchorwatt.design.design import Design
    from anchorwatt.design.editing import edit
    from anchorwatt.design.file_schema import schema
    from anchorwatt.design.filling import specify
    from anchorwatt.design.origins import Origin, origin
    from anchorwatt.design.reading import parse, read
    from anchorwatt.design.writing import new, starter_text, starters, write

# The typed design is large; what needs only a part, such as the first page of the workbench, does not wait for it.
# No module may have the name of what is in it.
_MODULES = {
    "Design": "design",
    "Origin": "origins",
    "edit": "editing",
    "new": "writing",
    "origin": "origins",
    "parse": "reading",
    "read": "reading",
    "schema": "file_schema",
    "specify": "filling",
    "starter_text": "writing",
    "starters": "writing",
    "write": "writing",
}

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


def __getattr__(name: str) -> Any:
    if name not in _MODULES:
        raise AttributeError(f"module 'anchorwatt.design' has no attribute {name!r}")
    return getattr(import_module(f"anchorwatt.design.{_MODULES[name]}"), name)
