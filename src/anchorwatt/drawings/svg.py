"""Writes a sheet as SVG: real text that can be searched and read aloud, no scripts, nothing fetched."""

from __future__ import annotations

from xml.sax.saxutils import escape, quoteattr

from anchorwatt.drawings.lettering import FAMILY
from anchorwatt.drawings.sheet import Path, Sheet, Text


def svg(sheet: Sheet) -> str:
    """The sheet as the text of an SVG file.

    Example
    -------
    >>> from anchorwatt.drawings.sheet import Sheet, Text
    >>> picture = svg(Sheet(100, 20, "A < B", "", (Text((4, 14), "5 & 6", 12),)))
    >>> "<title>A &lt; B</title>" in picture, ">5 &amp; 6</text>" in picture
    (True, True)
    """
    size = f'width="{_number(sheet.width)}" height="{_number(sheet.height)}"'
    box = f'viewBox="0 0 {_number(sheet.width)} {_number(sheet.height)}"'
    family = f"font-family={quoteattr(FAMILY)}"
    head = [
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} {box} role="img" {family}{_data(sheet.data)}>',
        f"<title>{escape(sheet.title)}</title>",
        f"<desc>{escape(sheet.description)}</desc>",
        f'<rect width="{_number(sheet.width)}" height="{_number(sheet.height)}" fill="#ffffff"/>',
    ]
    body = [_text(item) if isinstance(item, Text) else _path(item) for item in sheet.items]
    return "\n".join([*head, *body, "</svg>"]) + "\n"


def _path(path: Path) -> str:
    shape = "polygon" if path.fill else "polyline"
    points = " ".join(f"{_number(x)},{_number(y)}" for x, y in path.points)
    marks = [f'points="{points}"', f'fill="{path.fill or "none"}"']
    if path.fill and path.fill_opacity < 1.0:
        marks.append(f'fill-opacity="{_number(path.fill_opacity)}"')
    if path.colour:
        marks.append(f'stroke="{path.colour}" stroke-width="{_number(path.width)}" stroke-linejoin="round"')
    if path.dashes:
        marks.append(f'stroke-dasharray="{" ".join(_number(dash) for dash in path.dashes)}"')
    start = f"<{shape}{_key(path.key)}{_data(path.data)} {' '.join(marks)}"
    return f"{start}><title>{escape(path.told)}</title></{shape}>" if path.told else f"{start}/>"


def _text(text: Text) -> str:
    marks = [f'x="{_number(text.at[0])}" y="{_number(text.at[1])}"', f'font-size="{_number(text.size)}"']
    marks.append(f'fill="{text.colour}"')
    if text.bold:
        marks.append('font-weight="bold"')
    if text.anchor != "start":
        marks.append(f'text-anchor="{text.anchor}"')
    return f"<text{_key(text.key)} {' '.join(marks)}>{escape(text.words)}</text>"


def _key(key: str) -> str:
    return f" data-key={quoteattr(key)}" if key else ""


def _data(facts: tuple[tuple[str, str], ...]) -> str:
    return "".join(f" data-{name}={quoteattr(fact)}" for name, fact in facts)


def _number(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0") if abs(value) >= 1 else f"{value:.2f}".rstrip("0").rstrip(".")
