"""Symbols of the yard drawings: ours, drawn after what IEC 60617 shows, from memory.

Each stands in a square of `SIZE` round its origin. What it stands for is told by its name, so that two symbols that
look alike are never one block.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable

from anchorwatt.drawings.sheet import INK, Arc, Block, Path, Point, Text
from anchorwatt.drawings.sheets.body import LINE, SYMBOLS

SIZE = 8.0
"""mm of side of the square of a symbol."""

HALF = 0.5 * SIZE

Shape = Path | Arc | Text


def _line(*points: Point) -> Path:
    return Path(points, INK, LINE, layer=SYMBOLS)


def _box(left: float, top: float, right: float, bottom: float) -> Path:
    return _line((left, top), (right, top), (right, bottom), (left, bottom), (left, top))


def _words(at: Point, words: str, size: float = 3.4) -> Text:
    return Text((at[0], at[1] + 0.36 * size), words, size, anchor="middle", layer=SYMBOLS)


def _wave(middle: Point, half: float = 1.3) -> tuple[Shape, ...]:
    """The sign of alternating current, of two arcs."""
    x, y = middle
    radius = 0.5 * half
    return (
        Arc((x - radius, y), radius, 180.0, 360.0, INK, LINE, layer=SYMBOLS),
        Arc((x + radius, y), radius, 0.0, 180.0, INK, LINE, layer=SYMBOLS),
    )


def _steady(middle: Point, half: float = 1.3) -> tuple[Shape, ...]:
    """The sign of direct current, a line over dashes."""
    x, y = middle
    dash = half / 2.5
    return (
        _line((x - half, y - 0.45), (x + half, y - 0.45)),
        *(
            _line((x + at - dash / 2, y + 0.45), (x + at + dash / 2, y + 0.45))
            for at in (-half + dash / 2, 0.0, half - dash / 2)
        ),
    )


def _circle(radius: float = HALF, centre: Point = (0.0, 0.0)) -> Arc:
    return Arc(centre, radius, colour=INK, width=LINE, layer=SYMBOLS)


def _square() -> Path:
    return _box(-HALF, -HALF, HALF, HALF)


def _letter(letters: str) -> tuple[Shape, ...]:
    return _square(), _words((0.0, 0.0), letters)


def _battery() -> tuple[Shape, ...]:
    plates: list[Shape] = [_line((-HALF, 0.0), (-1.8, 0.0)), _line((1.8, 0.0), (HALF, 0.0))]
    for x, half in ((-1.8, 3.0), (-0.6, 1.5), (0.6, 3.0), (1.8, 1.5)):
        plates.append(_line((x, -half), (x, half)))
    return tuple(plates)


def _converter(
    first: Callable[[Point], tuple[Shape, ...]], second: Callable[[Point], tuple[Shape, ...]]
) -> tuple[Shape, ...]:
    return _square(), _line((-HALF, HALF), (HALF, -HALF)), *first((-1.9, -2.0)), *second((1.9, 2.0))


def _sun() -> tuple[Shape, ...]:
    return _square(), _line((-HALF, -HALF), (0.0, 0.0)), _line((0.0, 0.0), (-HALF, HALF)), *_steady((1.8, 0.0))


def _socket() -> tuple[Shape, ...]:
    return (
        Arc((HALF - 1.0, 0.0), 3.0, 90.0, 270.0, INK, LINE, layer=SYMBOLS),
        _line((HALF - 1.0, -3.0), (HALF - 1.0, 3.0)),
        _line((-HALF, 0.0), (0.0, 0.0)),
    )


def _valve() -> tuple[Shape, ...]:
    return (_line((-3.0, -2.2), (3.0, 2.2), (3.0, -2.2), (-3.0, 2.2), (-3.0, -2.2)), *_leads(3.0))


def _leads(half: float) -> tuple[Shape, ...]:
    return _line((-HALF, 0.0), (-half, 0.0)), _line((half, 0.0), (HALF, 0.0))


def _strainer() -> tuple[Shape, ...]:
    dashes = (_line((0.0, y), (0.0, y + 1.0)) for y in (-3.0, -1.2, 0.6, 2.2))
    return (_box(-3.0, -3.2, 3.0, 3.2), *dashes, *_leads(3.0))


def _pump() -> tuple[Shape, ...]:
    return _circle(), _line((0.0, -HALF), (HALF, 0.0), (0.0, HALF))


def _through_hull() -> tuple[Shape, ...]:
    return (
        _line((-1.0, -HALF), (-1.0, -1.4)),
        _line((-1.0, 1.4), (-1.0, HALF)),
        _line((-2.6, -1.4), (HALF, -1.4)),
        _line((-2.6, 1.4), (HALF, 1.4)),
    )


def _overboard() -> tuple[Shape, ...]:
    return (
        _line((1.0, -HALF), (1.0, -1.4)),
        _line((1.0, 1.4), (1.0, HALF)),
        _line((-HALF, -1.4), (2.6, -1.4)),
        _line((-HALF, 1.4), (2.6, 1.4)),
    )


def _trap() -> tuple[Shape, ...]:
    """A bend that holds water."""
    return (
        _line((-HALF, 0.0), (-1.6, 0.0), (-1.6, 1.4)),
        Arc((0.0, 1.4), 1.6, 0.0, 180.0, INK, LINE, layer=SYMBOLS),
        _line((1.6, 1.4), (1.6, 0.0), (HALF, 0.0)),
    )


def _exchanger() -> tuple[Shape, ...]:
    return _circle(), _line((-HALF, 0.0), (-1.8, 0.0), (-0.9, -1.9), (0.9, 1.9), (1.8, 0.0), (HALF, 0.0))


def _grille() -> tuple[Shape, ...]:
    return _square(), *(_line((-HALF, y), (HALF, y)) for y in (-2.0, 0.0, 2.0))


def _fan_coil() -> tuple[Shape, ...]:
    return _square(), _line((-2.6, HALF), (-2.6, -HALF)), _circle(2.2, (1.2, 0.0)), _words((1.2, 0.0), "M", 2.6)


def _drain() -> tuple[Shape, ...]:
    return _line((-HALF, -2.0), (0.0, 2.6), (HALF, -2.0), (-HALF, -2.0)), _line((0.0, 2.6), (0.0, HALF))


_SHAPES: dict[str, tuple[Shape, ...]] = {
    "BATTERY": _battery(),
    "ALTERNATOR": (_circle(), _words((0.0, -0.9), "G"), *_steady((0.0, 2.0))),
    "INVERTER": _converter(_steady, _wave),
    "CHARGER": _converter(_wave, _steady),
    "CONVERTER-DC": _converter(_steady, _steady),
    "TRANSFORMER": (_circle(2.6, (-1.4, 0.0)), _circle(2.6, (1.4, 0.0))),
    "SOLAR": _sun(),
    "MOTOR": (_circle(), _words((0.0, 0.0), "M")),
    "COMPRESSOR": (_circle(), _line((-3.0, -2.6), (3.2, -1.4)), _line((-3.0, 2.6), (3.2, 1.4))),
    "LOAD": (_square(), _line((-HALF, -HALF), (HALF, HALF)), _line((-HALF, HALF), (HALF, -HALF))),
    "SOCKET": _socket(),
    "SWITCH-TWO-WAY": (
        _square(),
        _line((-3.0, 0.0), (2.2, -2.0)),
        _line((2.2, -2.4), (3.2, -2.4)),
        _line((2.2, 2.4), (3.2, 2.4)),
    ),
    "SWITCH": (_square(), _line((-HALF, 0.0), (-2.0, 0.0), (2.0, -2.2)), _line((2.0, 0.0), (HALF, 0.0))),
    "REGULATOR": _letter("K"),
    "MANAGEMENT": _letter("K"),
    "INDICATOR": (_circle(), _words((0.0, 0.0), "P")),
    "SENSOR": (_square(), _words((0.0, 0.0), "B")),
    "TERMINALS": (_square(), *(_circle(0.7, (0.0, y)) for y in (-2.2, 0.0, 2.2))),
    "STRAINER": _strainer(),
    "PUMP": _pump(),
    "THROUGH-HULL": _through_hull(),
    "OVERBOARD": _overboard(),
    "HEAT-EXCHANGER": _exchanger(),
    "GRILLE": _grille(),
    "AIR-HANDLER": _fan_coil(),
    "DRAIN": _drain(),
}


def glyph(name: str) -> tuple[Shape, ...]:
    """Lines of a symbol round its middle, `SIZE` wide and high.

    Raises
    ------
    KeyError
        no symbol of that name.
    """
    return _SHAPES[name]


def moved(shape: Shape, by: Point) -> Shape:
    """A line or word of a symbol, moved."""
    x, y = by
    if isinstance(shape, Path):
        return dataclasses.replace(shape, points=tuple((one + x, other + y) for one, other in shape.points))
    if isinstance(shape, Arc):
        return dataclasses.replace(shape, centre=(shape.centre[0] + x, shape.centre[1] + y))
    return dataclasses.replace(shape, at=(shape.at[0] + x, shape.at[1] + y))


def _fuse() -> tuple[Shape, ...]:
    return _box(-HALF, -1.3, HALF, 1.3), _line((-HALF, 0.0), (HALF, 0.0))


def _breaker() -> tuple[Shape, ...]:
    """A make contact with a cross at its end."""
    return (
        _line((-HALF, 0.0), (-2.0, 0.0), (2.0, -2.0)),
        _line((1.6, 0.0), (HALF, 0.0)),
        _line((1.0, -0.6), (2.2, 0.6)),
        _line((1.0, 0.6), (2.2, -0.6)),
    )


def _contact() -> tuple[Shape, ...]:
    """A make contact that only switches: no cross."""
    return _line((-HALF, 0.0), (-2.0, 0.0), (2.0, -2.0)), _line((2.0, 0.0), (HALF, 0.0)), _line((2.0, -0.6), (2.0, 0.6))


_IN_LINE: dict[str, tuple[tuple[Shape, ...], float, float]] = {
    "FUSE": (_fuse(), -1.3, 1.3),
    "BREAKER": (_breaker(), -2.0, 0.8),
    "SWITCH": (_contact(), -2.0, 0.6),
    "VALVE": (_valve(), -2.2, 2.2),
    "TRAP": (_trap(), 0.0, 3.0),
}
"""Symbols that stand in a line which runs across, with their top and bottom."""


def in_line(name: str) -> Block:
    """A symbol in a line that runs across, with terminals "1" and "2" at its ends.

    Raises
    ------
    KeyError
        no symbol of that name.
    """
    shapes, top, bottom = _IN_LINE[name]
    return Block(name, shapes, (("1", (-HALF, 0.0)), ("2", (HALF, 0.0))), (-HALF, top, HALF, bottom))
