"""Writes sheets as one PDF: a page a sheet at its true size, text that can be searched, in the shipped font.

A sign that the font lacks becomes a square, as one that no drawing may hold does (`signs`). Letters stand in the order
in which they are written, also those of a script that runs from right to left. The bytes of the same sheets are always
the same: they hold no clock and no chance.
"""

from __future__ import annotations

import io
from collections.abc import Callable, Sequence
from functools import cache
from typing import TYPE_CHECKING

from anchorwatt.drawings.font import BOLD, REGULAR
from anchorwatt.drawings.sheet import Anchor, Arc, Attribute, Path, Placed, Point, Sheet, Text
from anchorwatt.drawings.signs import STANDS_IN, one_line

if TYPE_CHECKING:
    from reportlab.lib.colors import Color
    from reportlab.pdfbase.ttfonts import TTFont
    from reportlab.pdfgen.canvas import Canvas

_POINTS = {"mm": 72.0 / 25.4, "px": 0.75}
"""Points of PDF in a sheet's unit; a pixel as CSS counts it."""


def pdf(sheets: Sequence[Sheet], title: str = "") -> bytes:
    """The sheets as the bytes of a PDF file.

    Parameters
    ----------
    sheets : one or more, of any size
    title : of the whole, that of the first sheet if left out

    Example
    -------
    >>> from anchorwatt.drawings.sheet import Sheet, Text
    >>> pdf([Sheet(420, 297, "A sheet", "", (Text((20, 20), "Main bus", 3.0),), unit="mm")]).startswith(b"%PDF")
    True
    """
    # Loaded where it is used: it takes a fifth of a second.
    from reportlab.pdfgen.canvas import Canvas

    file = io.BytesIO()
    canvas = Canvas(file, invariant=True, pageCompression=1, initialFontName=_fonts()[False].fontName)
    canvas.setTitle(one_line(title or sheets[0].title))
    canvas.setSubject(one_line(sheets[0].description))
    canvas.setAuthor("Anchorwatt")
    canvas.setCreator("Anchorwatt")
    canvas.setCatalogEntry("Lang", "en")
    for number, sheet in enumerate(sheets):
        canvas.setPageSize((sheet.width * _POINTS[sheet.unit], sheet.height * _POINTS[sheet.unit]))
        canvas.bookmarkPage(f"sheet-{number + 1}")
        canvas.addOutlineEntry(one_line(sheet.title), f"sheet-{number + 1}")
        _Page(canvas, sheet).draw()
        canvas.showPage()
    canvas.save()
    return file.getvalue()


@cache
def _fonts() -> tuple[TTFont, TTFont]:
    """The shipped font, regular and bold, which reportlab knows from here on."""
    from reportlab.pdfbase.pdfmetrics import registerFont
    from reportlab.pdfbase.ttfonts import TTFont

    fonts = TTFont(REGULAR.stem, str(REGULAR)), TTFont(BOLD.stem, str(BOLD))
    for font in fonts:
        registerFont(font)
    return fonts


@cache
def _ink(colour: str, opacity: float = 1.0) -> Color:
    from reportlab.lib.colors import HexColor

    return HexColor(colour).clone(alpha=opacity)


class _Page:
    """One sheet on its page of a canvas."""

    def __init__(self, canvas: Canvas, sheet: Sheet) -> None:
        self.canvas = canvas
        self.sheet = sheet
        self.scale = _POINTS[sheet.unit]
        self.lettered: dict[Anchor, Callable[[float, float, str], None]] = {
            "start": canvas.drawString,
            "middle": canvas.drawCentredString,
            "end": canvas.drawRightString,
        }

    def draw(self) -> None:
        self.canvas.setLineJoin(1)
        for item in self.sheet.items:
            if not isinstance(item, Placed):
                self._shape(item, (0.0, 0.0))
                continue
            for shape in item.block.items:
                self._shape(shape, item.at)
            for one in item.attributes:
                if one.shown:
                    self._text(one, item.at)

    def _shape(self, item: Path | Arc | Text, origin: Point) -> None:
        match item:
            case Path():
                self._path(item, origin)
            case Arc():
                self._arc(item, origin)
            case Text():
                self._text(item, origin)

    def _at(self, point: Point, origin: Point) -> Point:
        return (origin[0] + point[0]) * self.scale, (self.sheet.height - origin[1] - point[1]) * self.scale

    def _path(self, path: Path, origin: Point) -> None:
        if len(path.points) < 2:
            return
        way = self.canvas.beginPath()
        way.moveTo(*self._at(path.points[0], origin))
        for point in path.points[1:]:
            way.lineTo(*self._at(point, origin))
        if path.fill or path.points[0] == path.points[-1]:
            way.close()
        if path.fill:
            self.canvas.setFillColor(_ink(path.fill, path.fill_opacity))
        if path.colour:
            self._pen(path.colour, path.width, path.dashes)
        self.canvas.drawPath(way, stroke=bool(path.colour), fill=bool(path.fill))

    def _arc(self, arc: Arc, origin: Point) -> None:
        x, y = self._at(arc.centre, origin)
        radius = arc.radius * self.scale
        way = self.canvas.beginPath()
        if arc.whole:
            way.circle(x, y, radius)
        else:
            way.arc(x - radius, y - radius, x + radius, y + radius, -arc.start, arc.start - arc.end)
        filled = arc.whole and bool(arc.fill)
        if filled:
            self.canvas.setFillColor(_ink(arc.fill))
        if arc.colour:
            self._pen(arc.colour, arc.width, ())
        self.canvas.drawPath(way, stroke=bool(arc.colour), fill=filled)

    def _pen(self, colour: str, width: float, dashes: tuple[float, ...]) -> None:
        self.canvas.setStrokeColor(_ink(colour))
        self.canvas.setLineWidth(width * self.scale)
        self.canvas.setDash([one * self.scale for one in dashes])

    def _text(self, text: Text | Attribute, origin: Point) -> None:
        x, y = self._at(text.at, origin)
        font = _fonts()[text.bold]
        words = one_line(text.words)
        if not words.isascii():
            known = font.face.charToGlyph
            words = "".join(sign if ord(sign) in known else STANDS_IN for sign in words)
        self.canvas.setFont(font.fontName, text.size * self.scale)
        self.canvas.setFillColor(_ink(text.colour))
        self.lettered[text.anchor](x, y, words)
