"""Quantities with units at the edge: files, screens and papers. Inside, everything is a plain SI float."""

from __future__ import annotations

from anchorwatt.units.clock import parse_clock, show_clock
from anchorwatt.units.money import Money
from anchorwatt.units.quantity import Quantity
from anchorwatt.units.reading import allowed, parse
from anchorwatt.units.refusal import Refused
from anchorwatt.units.showing import System, convert, show, unit_for, write
from anchorwatt.units.table import DIMENSIONS
from anchorwatt.units.wire_gauge import WireGauge

__all__ = [
    "DIMENSIONS",
    "Money",
    "Quantity",
    "Refused",
    "System",
    "WireGauge",
    "allowed",
    "convert",
    "parse",
    "parse_clock",
    "show",
    "show_clock",
    "unit_for",
    "write",
]
