"""The signs that a drawing may hold: one line of text that is harmless in every file format.

A line break or a tab becomes a space. Control characters, halves of surrogate pairs, the two noncharacters that XML
forbids and the marks that turn the direction of writing become `STANDS_IN`, so that one sees that something was there.
"""

from __future__ import annotations

import re

STANDS_IN = "□"
"""A white square, U+25A1, which the shipped font has: written in place of a sign that cannot be."""

_BREAKS = re.compile("\r\n|[\t\n\v\f\r\x85\u2028\u2029]")
_BARRED = re.compile("[\x00-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]")


def one_line(words: str) -> str:
    """The words as one line of signs that can be written.

    Example
    -------
    >>> one_line("two" + chr(10) + "lines"), one_line("a" + chr(7) + "b") == "a" + STANDS_IN + "b"
    ('two lines', True)
    """
    if words.isascii() and words.isprintable():
        return words
    return _BARRED.sub(STANDS_IN, _BREAKS.sub(" ", words))
