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
    from anchorwatt.climate import weather_year
    from anchorwatt.design import Design, read, write
    from anchorwatt.design.specification import Layer
    from anchorwatt.simulation.enclosure import Enclosure, Face, Film, Gain, Shade, Window
    from anchorwatt.simulation.ideal_loads import IdealLoads, ideal_loads

__version__ = version("anchorwatt")

# Heavy rooms are opened only when something in them is asked for.
_ROOMS = {
    "Assessment": "assessment",
    "Design": "design",
    "Enclosure": "simulation.enclosure",
    "Face": "simulation.enclosure",
    "Film": "simulation.enclosure",
    "Gain": "simulation.enclosure",
    "IdealLoads": "simulation.ideal_loads",
    "Layer": "design.specification",
    "Shade": "simulation.enclosure",
    "Window": "simulation.enclosure",
    "assess": "assessment",
    "ideal_loads": "simulation.ideal_loads",
    "read": "design",
    "weather_year": "climate",
    "write": "design",
}

__all__ = [
    "Assessment",
    "Design",
    "Enclosure",
    "Face",
    "Film",
    "Gain",
    "IdealLoads",
    "Layer",
    "Shade",
    "Window",
    "__version__",
    "assess",
    "ideal_loads",
    "read",
    "weather_year",
    "write",
]


def __getattr__(name: str) -> Any:
    if name in _ROOMS:
        return getattr(import_module(f"anchorwatt.{_ROOMS[name]}"), name)
    raise AttributeError(f"module 'anchorwatt' has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted(__all__)
