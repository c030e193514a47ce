"""Writes a sheet as SVG: real text that can be searched and read aloud, no scripts, nothing fetched.

A sheet in millimetres says its true size; a placed block is a group of its own, moved to its place, with the symbol
written out in it, since pages that clean their HTML drop references.
"""

from __future__ import annotations

from collections.abc import Callable
from xml.sax.saxutils import escape, quoteattr

from anchorwatt.drawings.lettering import FAMILY
from anchorwatt.drawings.sheet import Arc, Item, Path, Placed, Sheet, Text
from anchorwatt.drawings.signs import one_line


def svg(sheet: Sheet, style: str = "") -> str:
    """The sheet as the text of an SVG file.

    Parameters
    ----------
    style : style sheet that the file brings along, such as `font.faces`

    Example
    -------
    >>> from anchorwatt.drawings.sheet import Sheet, Text
    >>> picture = svg(Sheet(100, 20, "A < B", "", (Text((4, 14), "5 & 6", 12),)))
    >>> "<title>A &lt; B</title>" in picture, ">5 &amp; 6</text>" in picture
    (True, True)
    """
    number = _hundredth if sheet.unit == "mm" else _tenth
    unit = sheet.unit if sheet.unit == "mm" else ""
    width, height = number(sheet.width), number(sheet.height)
    size = f'width="{width}{unit}" height="{height}{unit}" viewBox="0 0 {width} {height}"'
    family = f"font-family={quoteattr(FAMILY)}"
    head = [
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} role="img" {family}{_data(sheet.data)}>',
        f"<title>{_words(sheet.title)}</title>",
        f"<desc>{_words(sheet.description)}</desc>",
        *([f"<style>{style}</style>"] if style else []),
        f'<rect width="{width}" height="{height}" fill="#ffffff"/>',
    ]
    return "\n".join([*head, *(_item(item, number) for item in sheet.items), "</svg>"]) + "\n"


Number = Callable[[float], str]


def _item(item: Item, number: Number) -> str:
    match item:
        case Text():
            return _text(item, number)
        case Path():
            return _path(item, number)
        case Arc():
            return _arc(item, number)
        case Placed():
            return _placed(item, number)


def _path(path: Path, number: Number) -> str:
    shape = "polygon" if path.fill else "polyline"
    points = " ".join(f"{number(x)},{number(y)}" for x, y in path.points)
    marks = [f'points="{points}"', f'fill="{path.fill or "none"}"']
    if path.fill and path.fill_opacity < 1.0:
        marks.append(f'fill-opacity="{number(path.fill_opacity)}"')
    if path.colour:
        marks.append(f'stroke="{path.colour}" stroke-width="{number(path.width)}" stroke-linejoin="round"')
    if path.dashes:
        marks.append(f'stroke-dasharray="{" ".join(number(dash) for dash in path.dashes)}"')
    start = f"<{shape}{_key(path.key, path.layer)}{_data(path.data)} {' '.join(marks)}"
    return f"{start}><title>{_words(path.told)}</title></{shape}>" if path.told else f"{start}/>"


def _arc(arc: Arc, number: Number) -> str:
    radius = number(arc.radius)
    if arc.whole:
        x, y = arc.centre
        shape = f'circle{_key("", arc.layer)} cx="{number(x)}" cy="{number(y)}" r="{radius}"'
    else:
        (x, y), (to_x, to_y) = arc.at(arc.start), arc.at(arc.end)
        far = int(arc.end - arc.start > 180.0)
        way = f"M{number(x)} {number(y)}A{radius} {radius} 0 {far} 1 {number(to_x)} {number(to_y)}"
        shape = f'path{_key("", arc.layer)} d="{way}"'
    fill = arc.fill if arc.whole and arc.fill else "none"
    stroke = f' stroke="{arc.colour}" stroke-width="{number(arc.width)}"' if arc.colour else ""
    return f'<{shape} fill="{fill}"{stroke}/>'


def _text(text: Text, number: Number, attribute: str = "") -> str:
    marks = [f'x="{number(text.at[0])}" y="{number(text.at[1])}"', f'font-size="{number(text.size)}"']
    marks.append(f'fill="{text.colour}"')
    if text.bold:
        marks.append('font-weight="bold"')
    if text.anchor != "start":
        marks.append(f'text-anchor="{text.anchor}"')
    return f"<text{_key(text.key, text.layer)}{attribute} {' '.join(marks)}>{_words(text.words)}</text>"


def _placed(placed: Placed, number: Number) -> str:
    x, y = placed.at
    start = f'<g{_key(placed.key, placed.layer)}{_data(placed.data)} transform="translate({number(x)} {number(y)})">'
    told = [f"<title>{_words(placed.told)}</title>"] if placed.told else []
    symbol = [_item(item, number) for item in placed.block.items]
    attributes = [
        _text(
            Text(one.at, one.words, one.size, one.colour, one.bold, one.anchor),
            number,
            f" data-attribute={quoteattr(one.name)}",
        )
        for one in placed.attributes
        if one.shown
    ]
    return "\n".join([start, *told, *symbol, *attributes, "</g>"])


def _key(key: str, layer: str) -> str:
    keyed = f" data-key={quoteattr(one_line(key))}" if key else ""
    return f"{keyed} data-layer={quoteattr(layer)}" if layer else keyed


def _data(facts: tuple[tuple[str, str], ...]) -> str:
    return "".join(f" data-{name}={quoteattr(one_line(fact))}" for name, fact in facts)


def _words(words: str) -> str:
    return escape(one_line(words))


def _tenth(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0") if abs(value) >= 1 else f"{value:.2f}".rstrip("0").rstrip(".")


def _hundredth(value: float) -> str:
    told = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if told == "-0" else told
