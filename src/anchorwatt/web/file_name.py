"""Names that people give to design files."""

from __future__ import annotations

import re
from collections.abc import Iterable

LONGEST = 80
_FORBIDDEN = '/\\:*?"<>|'
_DEVICES = re.compile(r"(con|prn|aux|nul|com[0-9]|lpt[0-9])(\..*)?", re.IGNORECASE)


def refusal(name: str, taken: Iterable[str]) -> str:
    """Why a name cannot be that of a new design, in words; "" where it can.

    Example
    -------
    >>> refusal("Grey Plover", ["two terns"]), refusal("Two Terns", ["two terns"])
    ('', 'There is a design “two terns” already: choose another name.')
    """
    if not name.strip():
        return "Type a name for the file."
    if name != name.strip():
        return "A name has no spaces at its ends."
    if len(name) > LONGEST:
        return f"The name has {len(name)} letters; at most {LONGEST} fit."
    if not name.isprintable() or any(sign in _FORBIDDEN for sign in name):
        return "A file name holds letters, digits, spaces and signs such as - and _, but none of " + " ".join(
            _FORBIDDEN
        )
    if name.startswith((".", "~")) or name.endswith("."):
        return "A file name does not begin with a full stop or ~, nor end with a full stop."
    if _DEVICES.fullmatch(name):
        return f"“{name}” is the name of a device on some machines: choose another name."
    same = next((other for other in taken if other.casefold() == name.casefold()), None)
    return "" if same is None else f"There is a design “{same}” already: choose another name."
