"""Figures rounded as people say them, for those who buy and sell boats."""

from __future__ import annotations

import math

from anchorwatt.units import System, convert, show


def hours(time: float, *, down: bool = False) -> str:
    """A time: whole hours where it is long, half hours or five minutes where it is short.

    Parameters
    ----------
    time : s
    down : never more than it is, as for what someone relies on

    Example
    -------
    >>> hours(15.7 * 3600.0), hours(15.7 * 3600.0, down=True), hours(2.06 * 3600.0), hours(1500.0)
    ('16 hours', '15 hours', '2 hours', '25 minutes')
    >>> hours(3600.0), hours(1.5 * 3600.0), hours(math.nan)
    ('1 hour', '1½ hours', '—')
    """
    if math.isnan(time):
        return "—"
    found = convert(time, "h", "time")
    rounded = math.floor if down else round
    if found >= 3.0:
        return f"{rounded(found)} hours"
    if found >= 0.9 and (not down or found >= 1.0):
        halves = rounded(2.0 * found)
        whole = f"{halves // 2}{'½' if halves % 2 else ''}"
        return "1 hour" if whole == "1" else f"{whole} hours"
    return f"{5 * rounded(12.0 * found)} minutes"


def asked(time: float) -> str:
    """A time that somebody asked for: hours as they said them.

    Parameters
    ----------
    time : s

    Example
    -------
    >>> asked(10.0 * 3600.0), asked(9.5 * 3600.0), asked(8.2 * 3600.0), asked(3600.0)
    ('10 hours', '9½ hours', '8.2 hours', '1 hour')
    """
    if time < 3600.0:
        return hours(time)
    told = f"{convert(time, 'h', 'time'):.3g}"
    if told.endswith(".5"):
        told = f"{told[:-2]}½"
    return "1 hour" if told == "1" else f"{told} hours"


def about(value: float, dimension: str, system: System) -> str:
    """A quantity to two digits.

    Example
    -------
    >>> about(387.4, "mass", "si"), about(387.4, "mass", "us")
    ('390 kg', '850 lb')
    """
    return show(value, dimension, system, digits=2)
