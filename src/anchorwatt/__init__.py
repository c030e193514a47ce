"""Anchorwatt: design of generator-free air conditioning and power in yachts.

>>> import anchorwatt
>>> design = anchorwatt.read("boat.yaml")          # doctest: +SKIP
>>> anchorwatt.assess(design).answer("hold_hours") # doctest: +SKIP
"""

from __future__ import annotations

from importlib import import_module
from importlib.metadata import version
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment, assess
    from anchorwatt.design import Design, read, write

__version__ = version("anchorwatt")

# Heavy rooms are opened only when something in them is asked for.
_ROOMS = {
    "Assessment": "assessment",
    "Design": "design",
    "assess": "assessment",
    "read": "design",
    "write": "design",
}

__all__ = ["Assessment", "Design", "__version__", "assess", "read", "write"]


def __getattr__(name: str) -> Any:
    if name in _ROOMS:
        return getattr(import_module(f"anchorwatt.{_ROOMS[name]}"), name)
    raise AttributeError(f"module 'anchorwatt' has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted(__all__)
