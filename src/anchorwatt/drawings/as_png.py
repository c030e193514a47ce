"""Pictures as PNG."""

from __future__ import annotations

from anchorwatt.drawings.lettering import FAMILY
from anchorwatt.errors import OutOfRange

NARROWEST, WIDEST = 16, 8000
"""Pixels across between which a picture is drawn: beyond, it would not be read or would not fit into memory."""


def as_png(picture: str, width: int) -> bytes:
    """A picture as PNG.

    Parameters
    ----------
    picture : text of an SVG file of ours
    width : pixels across; the height follows

    Returns
    -------
    The bytes of a PNG file.

    Raises
    ------
    OutOfRange
        the width is too small or too large.

    Letters are drawn in the first family of `lettering.FAMILY` that the machine has, else in its own sans. Where a
    machine has no font at all, no letters are drawn.
    """
    if not NARROWEST <= width <= WIDEST:
        raise OutOfRange(f"a picture is from {NARROWEST} to {WIDEST} pixels wide; found", width)
    # Loaded where it is used: the program draws no PNG in most of its runs.
    import resvg_py

    first = FAMILY.split(",")[0]
    return bytes(resvg_py.svg_to_bytes(svg_string=picture, width=width, font_family=first, sans_serif_family=first))
