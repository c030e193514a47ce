"""The time of day, on a 24-hour clock."""

from __future__ import annotations

import re

from anchorwatt.units.quantity import Quantity
from anchorwatt.units.refusal import Refused, name_of_kind, quoted

CLOCK = "(?:[01]?[0-9]|2[0-3]):[0-5][0-9]|24:00"
ALLOWED = 'a time of day from "00:00" to "24:00", such as "21:30"'


def parse_clock(text: str) -> Quantity:
    """Read a time of day.

    Parameters
    ----------
    text : hours and minutes on a 24-hour clock; "24:00" is the end of the day

    Returns
    -------
    s after midnight, dimension "clock time"

    Raises
    ------
    BadQuantity
        The text is not a time of day.

    Example
    -------
    >>> parse_clock("21:30") / 3600
    21.5
    """
    if not isinstance(text, str):
        raise Refused(name_of_kind(text), ALLOWED)
    if not re.fullmatch(CLOCK, text.strip()):
        raise Refused(quoted(text), ALLOWED)
    hours, minutes = text.strip().split(":")
    return Quantity(3600.0 * int(hours) + 60.0 * int(minutes), text.strip(), "clock time", "h")


def show_clock(time: float) -> str:
    """Write seconds after midnight as a time of day, to the nearest minute, days let go.

    Example
    -------
    >>> show_clock(77400.0), show_clock(-3600.0)
    ('21:30', '23:00')
    """
    minutes = round(time / 60) % (24 * 60)
    return f"{minutes // 60:02d}:{minutes % 60:02d}"
