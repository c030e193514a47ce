"""The shipped font, Liberation Sans: where its files lie and how wide its signs are.

Drawings are lettered in it whatever fonts a machine has. Its licence, the SIL Open Font License 1.1, lies beside it.
"""

from __future__ import annotations

import base64
import io
from collections.abc import Iterable, Mapping
from functools import cache
from pathlib import Path

FAMILY = "Liberation Sans"
REGULAR, BOLD = (Path(__file__).parent / "fonts" / f"LiberationSans-{style}.ttf" for style in ("Regular", "Bold"))

CAPITAL = 1409 / 2048
"""Height of a capital over the size of the letters, from the font's table OS/2."""

_SHAPING = ("GPOS", "GSUB", "GDEF", "kern", "FFTM")  # tables that a drawing's letters do without


@cache
def widths(bold: bool = False) -> Mapping[int, float]:
    """How wide each sign that the font has is, in thousandths of the size, by its Unicode number."""
    # Loaded where it is used: it takes a tenth of a second and most texts need it not.
    from fontTools.ttLib import TTFont

    with TTFont(BOLD if bold else REGULAR, lazy=True) as font:
        advances = font["hmtx"].metrics
        per_size = 1000.0 / font["head"].unitsPerEm
        return {sign: advances[name][0] * per_size for sign, name in font.getBestCmap().items()}


def faces(words: Iterable[str]) -> str:
    """Style sheet that brings along what the font has of the signs of some words, for a file that goes to any machine.

    The licence lets a document hold the font, in part too.
    """
    # Loaded where it is used: it takes some tenths of a second.
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    text = "".join(sorted(set().union(*words)))
    rules = []
    for file, weight in ((REGULAR, "normal"), (BOLD, "bold")):
        options = Options()
        options.hinting, options.layout_features, options.drop_tables = False, [], [*options.drop_tables, *_SHAPING]
        subsetter = Subsetter(options)
        subsetter.populate(text=text)
        packed = io.BytesIO()
        with TTFont(file, lazy=True, recalcTimestamp=False) as font:
            subsetter.subset(font)
            font.flavor = "woff"
            font.save(packed)
        data = base64.b64encode(packed.getvalue()).decode("ascii")
        source = f"url(data:font/woff;base64,{data})"
        rules.append(f'@font-face{{font-family:"{FAMILY}";font-weight:{weight};src:{source} format("woff")}}')
    return "\n".join(rules)
