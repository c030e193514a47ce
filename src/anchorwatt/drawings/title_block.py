"""What stands over and under a picture: its finding, what it is of, and the cautions."""

from __future__ import annotations

from collections.abc import Sequence

from anchorwatt.drawings.lettering import wrapped
from anchorwatt.drawings.sheet import QUIET_INK, Path, Text

EDGE = 14.0
TITLE, SUBTITLE, SMALL = 19.0, 12.5, 11.0


def title_block(finding: str, about: str, width: float) -> tuple[list[Path | Text], float]:
    """The finding in large letters and what the picture is of in small ones, with where they end."""
    items: list[Path | Text] = []
    y = EDGE
    for words in wrapped(finding, TITLE, width - 2 * EDGE, bold=True):
        y += TITLE * 1.25
        items.append(Text((EDGE, y), words, TITLE, bold=True))
    for words in wrapped(about, SUBTITLE, width - 2 * EDGE):
        y += SUBTITLE * 1.45
        items.append(Text((EDGE, y), words, SUBTITLE, QUIET_INK))
    return items, y


def foot_block(cautions: Sequence[str], y: float, width: float) -> tuple[list[Path | Text], float]:
    """The cautions from `y` down, with the height of the sheet that they end."""
    items: list[Path | Text] = []
    for words in wrapped(" ".join(cautions), SMALL, width - 2 * EDGE):
        y += SMALL * 1.4
        items.append(Text((EDGE, y), words, SMALL, QUIET_INK))
    return items, y + EDGE
