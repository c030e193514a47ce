"""How wide a text is in the language that is spoken, so that labels are placed by measure.

The widths are those of Liberation Sans, the font that is shipped, in thousandths of the size. Those of common signs
stand here; the font's own file is asked for any other. Arial and Helvetica have the same widths by design; drawings
name these three before the reader's own sans.
"""

from __future__ import annotations

from bisect import bisect_right

from anchorwatt.drawings import font
from anchorwatt.languages import Said, said

FAMILY = f"{font.FAMILY}, Arial, Helvetica, sans-serif"

_FIRST = 32
_WIDEST = 1338  # of all signs that the font has, bold or not
# fmt: off
_REGULAR = (
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778,
    722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278,
    278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
)
_BOLD = (
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778,
    722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333,
    278, 333, 584, 556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611,
    611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
)
_SIGNS = {
    "°": 400, "·": 333, "²": 333, "³": 333, "µ": 576, "×": 584, "–": 556, "—": 1000, "−": 584, "…": 1000,
    "é": 556, "ä": 556, "ß": 611, "\u00a0": 278, "½": 834, "±": 549, "≥": 549, "≤": 549,
}
_REGULAR_SIGNS = {"ö": 556, "ü": 556, "‘": 222, "’": 222, "“": 333, "”": 333}
_BOLD_SIGNS = {"ö": 611, "ü": 611, "‘": 278, "’": 278, "“": 500, "”": 500}
# fmt: on


class _Widths(dict[str, float]):
    """Widths by sign, filled from the font as signs are asked for."""

    def __init__(self, bold: bool) -> None:
        table = _BOLD if bold else _REGULAR
        super().__init__({chr(_FIRST + place): float(width) for place, width in enumerate(table)})
        self.update(_SIGNS | (_BOLD_SIGNS if bold else _REGULAR_SIGNS))
        self.bold = bold

    def __missing__(self, sign: str) -> float:
        self[sign] = font.widths(self.bold).get(ord(sign), _WIDEST)
        return self[sign]


_OF = {bold: _Widths(bold) for bold in (False, True)}


def text_width(words: str, size: float, bold: bool = False) -> float:
    """Width of a text in points; a sign that the font has not counts as its widest.

    Example
    -------
    >>> text_width("0.5 kW", 10.0)
    31.12
    """
    return _width(said(words), size, bold)


def _width(words: str, size: float, bold: bool) -> float:
    return sum(map(_OF[bold].__getitem__, words)) * size / 1000


def wrapped(words: str, size: float, width: float, bold: bool = False) -> list[str]:
    """Break a text into lines that are no wider than `width`, between words; a word that is wider is broken itself.

    Example
    -------
    >>> wrapped("one two three four", 10.0, 50.0)
    ['one two', 'three four']
    """
    lines: list[str] = []
    for word in said(words).split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and _width(longer, size, bold) <= width:
            lines[-1] = longer
        else:
            lines += _pieces(word, size, width, bold)
    return [Said(line) for line in lines]


def _pieces(word: str, size: float, width: float, bold: bool) -> list[str]:
    pieces, used = [""], 0.0
    for sign in word:
        wide = _width(sign, size, bold)
        if pieces[-1] and used + wide > width:
            pieces.append("")
            used = 0.0
        pieces[-1] += sign
        used += wide
    return pieces


def clipped(words: str, size: float, width: float, bold: bool = False) -> str:
    """Cut a text so that it is no wider than `width`, an ellipsis where it was cut; nothing where not even that fits.

    Example
    -------
    >>> clipped("forward cabin", 10.0, 100.0), clipped("forward cabin", 10.0, 45.0), clipped("forward cabin", 10.0, 5.0)
    ('forward cabin', 'forward…', '')
    """
    words = said(words)
    if _width(words, size, bold) <= width:
        return words
    # The width grows with what is kept, so the most that fits is found by halves.
    kept = bisect_right(range(1, len(words)), width, key=lambda most: _width(words[:most].rstrip() + "…", size, bold))
    return Said(f"{words[:kept].rstrip()}…" if kept else "")
