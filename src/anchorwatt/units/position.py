"""Latitudes and longitudes as read off a chart: degrees, minutes, perhaps seconds, and a hemisphere."""

from __future__ import annotations

import re
from fractions import Fraction

from anchorwatt.units.table import Unit, spellings

HEMISPHERES = {"latitude": "NS", "longitude": "EW"}
_SIXTIETHS = "[0-5]?[0-9](?:\\.[0-9]+)?"
_POSITION = re.compile(
    f"(?P<degrees>[0-9]{{1,3}})° ?(?P<minutes>{_SIXTIETHS})' ?(?:(?P<seconds>{_SIXTIETHS})\" ?)?(?P<hemisphere>[NSEW])"
)


def position(text: str, dimension: str) -> tuple[Fraction, Unit] | None:
    """Read a latitude or longitude off a chart; None where the text is not written so.

    Parameters
    ----------
    text : in plain signs
    dimension : "latitude" or "longitude", else there is nothing to read

    Returns
    -------
    rad, north and east positive, and the unit of the degrees

    Example
    -------
    >>> angle, unit = position("25° 48' N", "latitude")
    >>> float(angle / unit.factor), unit.symbol
    (25.8, '° N')
    """
    parts = _POSITION.fullmatch(text) if dimension in HEMISPHERES else None
    if parts is None or parts["hemisphere"] not in HEMISPHERES[dimension]:
        return None
    minutes, seconds = Fraction(parts["minutes"]), Fraction(parts["seconds"] or 0)
    if parts["seconds"] and minutes.denominator != 1:
        return None
    unit = spellings(dimension)[f"° {parts['hemisphere']}"]
    return (int(parts["degrees"]) + minutes / 60 + seconds / 3600) * unit.factor, unit
