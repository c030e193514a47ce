from __future__ import annotations

import struct

import pytest
import resvg_py

from anchorwatt.drawings.as_png import as_png
from anchorwatt.drawings.sheet import Sheet, Text
from anchorwatt.drawings.svg import svg
from anchorwatt.errors import OutOfRange

PICTURE = svg(Sheet(200, 100, "A picture", "", (Text((10, 50), "words", 30),)))
EMPTY = svg(Sheet(200, 100, "A picture", "", ()))


def size(png: bytes) -> tuple[int, int]:
    """Width and height as the header says, W3C PNG specification, 11.2.2."""
    assert png[:8] == b"\x89PNG\r\n\x1a\n"
    width, height = struct.unpack(">II", png[16:24])
    return width, height


def test_it_is_as_wide_as_asked_for_and_keeps_its_proportions() -> None:
    assert size(as_png(PICTURE, 500)) == (500, 250)


def test_letters_are_drawn() -> None:
    assert as_png(PICTURE, 500) != as_png(EMPTY, 500)


def test_letters_are_drawn_on_a_machine_without_fonts(monkeypatch: pytest.MonkeyPatch) -> None:
    drawn = resvg_py.svg_to_bytes
    monkeypatch.setattr(resvg_py, "svg_to_bytes", lambda **how: drawn(**how, skip_system_fonts=True))
    assert as_png(PICTURE, 500) != as_png(EMPTY, 500)


def test_a_sheet_of_paper_keeps_its_proportions() -> None:
    across, down = size(as_png(svg(Sheet(420, 297, "A3", "", (), unit="mm")), 840))
    assert across == 840
    assert down == pytest.approx(594, abs=1)


@pytest.mark.parametrize("width", [0, -5, 15, 8001])
def test_a_width_that_makes_no_picture_is_refused(width: int) -> None:
    with pytest.raises(OutOfRange, match="pixels wide"):
        as_png(PICTURE, width)
