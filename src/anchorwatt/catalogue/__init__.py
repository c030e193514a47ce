"""Generic parts and constructions as data, each with its source, and their typed records.

Parts are invented: no maker's product stands behind any of them.
"""

from __future__ import annotations

from anchorwatt.catalogue import (
    air_handler,
    alternator,
    appliance,
    battery_module,
    belt,
    cell,
    charger,
    condensing_unit,
    construction,
    cover,
    engine,
    finish,
    glazing,
    hull_form,
    inverter,
    material,
    person,
    sea,
    self_contained_unit,
    shore_service,
    solar_panel,
    transformer,
)
from anchorwatt.catalogue.part import NotInCatalogue, Part, find, kind, kinds, names, record_of, rows

__all__ = [
    "NotInCatalogue",
    "Part",
    "air_handler",
    "alternator",
    "appliance",
    "battery_module",
    "belt",
    "cell",
    "charger",
    "condensing_unit",
    "construction",
    "cover",
    "engine",
    "find",
    "finish",
    "glazing",
    "hull_form",
    "inverter",
    "kind",
    "kinds",
    "material",
    "names",
    "person",
    "record_of",
    "rows",
    "sea",
    "self_contained_unit",
    "shore_service",
    "solar_panel",
    "transformer",
]
