"""Figures in columns: the unit stands in the heading, the figure alone below it."""

from __future__ import annotations

import math

from anchorwatt.units import System, convert, unit_for

# Where the unit of a heading is not the one that a single figure is shown in.
_UNITS = {
    "power": ("W", "W"),
    "heat flow": ("W", "Btu/h"),
    "force": ("N", "lbf"),
}
_DECIMALS = {"°C": 1, "°F": 1, "V": 1, "m/s": 1, "L/h": 1, "gal/h": 2, "L": 1, "gal": 2, "h": 2}


def heading_unit(dimension: str, system: System) -> str:
    """The unit that heads a column.

    Example
    -------
    >>> heading_unit("heat flow", "us"), heading_unit("share", "si")
    ('Btu/h', '%')
    """
    if dimension in _UNITS:
        return _UNITS[dimension][system == "us"]
    return unit_for(dimension, system)


def reading(value: float, dimension: str, system: System) -> str:
    """A figure in the unit that heads its column.

    Example
    -------
    >>> reading(25.0, "temperature", "us"), reading(1500.2, "heat flow", "si")
    ('77.0', '1500')
    """
    if math.isnan(value):
        return "—"
    unit = heading_unit(dimension, system)
    text = f"{convert(value, unit, dimension):.{_DECIMALS.get(unit, 0)}f}"
    return text.removeprefix("-") if float(text) == 0 else text.replace("-", "−")
