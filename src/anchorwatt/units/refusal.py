"""How this room says no: what was found, and what is allowed instead."""

from __future__ import annotations

from anchorwatt.errors import BadQuantity

LONGEST_SHOWN = 40


class Refused(BadQuantity):
    """A `BadQuantity` in its two parts, so that a caller can set them beside a file, a line and a key."""

    def __init__(self, found: str, allowed: str) -> None:
        super().__init__(found, allowed)
        self.found = found
        self.allowed = allowed

    def __str__(self) -> str:
        return f"found {self.found}; allowed: {self.allowed}"


def quoted(text: str) -> str:
    """Quote what a writer wrote: cut short, control characters made visible.

    Example
    -------
    >>> print(quoted("12 furlong"))
    "12 furlong"
    """
    cut = text[:LONGEST_SHOWN]
    visible = "".join(sign if sign.isprintable() else ascii(sign)[1:-1] for sign in cut)
    return f'"{visible}…"' if len(text) > LONGEST_SHOWN else f'"{visible}"'


def name_of_kind(value: object) -> str:
    """Name, in a file writer's words, a value that is not a text.

    Example
    -------
    >>> name_of_kind(3.7)
    'the bare number 3.7'
    """
    if isinstance(value, bool):
        return "a yes/no value"
    if isinstance(value, (int, float)):
        text = repr(value) if isinstance(value, float) or -(10**20) < value < 10**20 else "a huge integer"
        return f"the bare number {text}"
    if value is None:
        return "nothing"
    if isinstance(value, dict):
        return "a mapping"
    if isinstance(value, (list, tuple)):
        return "a list"
    return f"a {type(value).__name__}"
