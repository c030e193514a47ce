"""The regular expression of a dimension's texts, for the JSON Schema.

The reader decides; the pattern marks a mistake while one types. Whatever the reader takes matches it; it
also lets through a few texts that the reader refuses. It keeps to what regular expressions of JavaScript
and Python have in common.
"""

from __future__ import annotations

import functools
import re

from anchorwatt.units.position import HEMISPHERES
from anchorwatt.units.reading import COMPOUNDS, VULGAR
from anchorwatt.units.table import spellings

_SPACE = "[ \u00a0\u2007\u2009\u202f]*"
_FRACTION_SIGNS = "".join(VULGAR)
_NUMBER = (
    f"(?:[-+−]{_SPACE})?(?:\\.?[0-9]|[{_FRACTION_SIGNS}])"
    f"(?:[0-9./⁄{_FRACTION_SIGNS} \u00a0\u2007\u2009\u202f-]|[eE][-+−]?[0-9])*"
)
_TYPED = {
    "µ": "[\u00b5\u03bc]",
    "Ω": "[\u03a9\u2126]",
    "°": "[°º˚]",
    "'": "['′’]",
    '"': '["″”]',
    " ": "[ \u00a0\u2007\u2009\u202f·⋅*]+",
    "/": f"{_SPACE}[/⁄]{_SPACE}",
    "%": f"%{_SPACE}",
    "(": f"{_SPACE}\\({_SPACE}",
    ")": f"{_SPACE}\\){_SPACE}",
}


@functools.cache
def pattern_of(dimension: str) -> str:
    """Build the pattern of all texts that a dimension may be written as.

    Example
    -------
    >>> bool(re.search(pattern_of("length"), "6 ft 4 in")), bool(re.search(pattern_of("length"), "12"))
    (True, False)
    """
    names = spellings(dimension)
    body = f"{_NUMBER}(?:{_one_of(list(names))})"
    if dimension in COMPOUNDS:
        upper = {names[symbol] for symbol in COMPOUNDS[dimension][:-1]}
        units = _one_of([name for name in names if names[name] in upper])
        body = f"(?:{_NUMBER}(?:{units}){_SPACE})*{body}"  # a space has one place to go: no backtracking
    if dimension in HEMISPHERES:
        parts = f"(?:[0-9.]+(?:{_TYPED[chr(39)]}|{_TYPED[chr(34)]}){_SPACE})+"
        body = f"(?:[0-9]+{_TYPED['°']}{_SPACE}{parts}[{HEMISPHERES[dimension]}]|{body})"
    return f"^\\s*{body}\\s*$"


def _one_of(names: list[str]) -> str:
    return "|".join(_any_typing(name) for name in sorted(names, key=lambda name: (-len(name), name)))


def _any_typing(name: str) -> str:
    typed = "".join(_TYPED.get(sign, sign) for sign in name)
    typed = typed.replace(f"{_TYPED['°']}C", "(?:[°º˚]C|℃)").replace(f"{_TYPED['°']}F", "(?:[°º˚]F|℉)")
    typed = re.sub("(?<=[a-zA-Z])2", "(?:\\\\^?2|[²₂])", typed)
    return re.sub("(?<=[a-zA-Z])3", "(?:\\\\^?3|³)", typed)
