"""Pictures as PNG."""

from __future__ import annotations

from anchorwatt.drawings.font import BOLD, FAMILY, REGULAR
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

    Letters are drawn in the shipped font, also where a machine has none; a sign that it lacks in one of the machine's
    own that has it, else as an empty box.
    """
    if not NARROWEST <= width <= WIDEST:
        raise OutOfRange(f"a picture is from {NARROWEST} to {WIDEST} pixels wide; found", width)
    # Loaded where it is used: the program draws no PNG in most of its runs.
    import resvg_py

    drawn = resvg_py.svg_to_bytes(
        svg_string=picture,
        width=width,
        dpi=96.0,
        font_family=FAMILY,
        sans_serif_family=FAMILY,
        font_files=[str(REGULAR), str(BOLD)],
    )
    return bytes(drawn)
