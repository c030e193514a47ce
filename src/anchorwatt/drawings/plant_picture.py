"""The cooling plant: what it gives and draws over seawater temperature, and how well it does over its load."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from anchorwatt.drawings.chart import (
    BLUE,
    ORANGE,
    SKY,
    VERMILION,
    Panel,
    Scale,
    Series,
    label_height,
    label_room,
    ticks,
)
from anchorwatt.drawings.lettering import wrapped
from anchorwatt.drawings.sheet import QUIET_INK, Path, Sheet, Text, rectangle
from anchorwatt.drawings.svg import svg
from anchorwatt.units import System, convert, show, unit_for

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.plant import PlantPoint

WIDTH = 900.0
_LEFT, _EDGE = 56.0, 14.0
_TITLE, _SUBTITLE, _SMALL = 19.0, 12.5, 11.0
_HEIGHT, _COP_HEIGHT, _BETWEEN, _NAMED = 150.0, 190.0, 42.0, 64.0
_DOT = 3.0
_UNBROKEN = "\u00a0"

# Loads have an order and seas have another: grey from full load down, and colour from cold to warm.
_GREYS = ("#1f1f1f", "#3f3f3f", "#5a5a5a", "#707070", "#808080", "#8f8f8f")
_SEAS = (BLUE, SKY, ORANGE, VERMILION)

Readings = Callable[["PlantPoint"], float]


def plant_picture(assessment: Assessment, system: System) -> str:
    """Draw the plant.

    Parameters
    ----------
    assessment : of the design
    system : "si" or "us", the units on the axes

    Returns
    -------
    The text of an SVG file.
    """
    return svg(_sheet(assessment, system))


def _sheet(assessment: Assessment, system: System) -> Sheet:
    made = assessment.plant
    warmth, heat, power = (unit_for(name, system) for name in ("temperature", "heat flow", "power"))
    by_load = [made.at(share) for share in dict.fromkeys(point.share for point in made.cooling)]

    def gives(point: PlantPoint) -> float:
        return convert(point.load, heat, "heat flow")

    def draws(point: PlantPoint) -> float:
        return convert(point.plant_power, power, "power")

    over_sea = (
        (f"Cooling given, {heat}, at shares of full load", _over_sea("cooling", by_load, gives, system)),
        (f"Power of the whole plant, {power}", _over_sea("power", by_load, draws, system)),
    )
    over_load = _over_load(by_load, system)
    room = label_room([one.label for one in (*over_sea[0][1], *over_load)])
    finding = _finding(by_load, system)
    items: list[Path | Text] = []
    y = _EDGE
    for words in wrapped(finding, _TITLE, WIDTH - 2 * _EDGE, bold=True):
        y += _TITLE * 1.25
        items.append(Text((_EDGE, y), words, _TITLE, bold=True))
    for words in wrapped(_about(assessment, system), _SUBTITLE, WIDTH - 2 * _EDGE):
        y += _SUBTITLE * 1.45
        items.append(Text((_EDGE, y), words, _SUBTITLE, QUIET_INK))
    y += 40.0
    for title, series in over_sea:
        last = title is over_sea[-1][0]
        foot = y + max(_HEIGHT, label_height(len(series)))
        items += _panel(title, series, room, y, foot, f"seawater, {warmth}" if last else "")
        y = foot + (_NAMED if last else _BETWEEN)
    foot = y + max(_COP_HEIGHT, label_height(len(over_load)))
    title = "COP of the whole plant, over load, in cold and in warm seawater"
    items += _panel(title, over_load, room, y, foot, "load, % of what the compressor gives at full speed in that sea")
    y = foot + 46.0
    for words in wrapped(" ".join(assessment.cautions), _SMALL, WIDTH - 2 * _EDGE):
        y += _SMALL * 1.4
        items.append(Text((_EDGE, y), words, _SMALL, QUIET_INK))
    return Sheet(WIDTH, y + _EDGE, finding, _description(by_load, system), tuple(items))


def _over_sea(
    name: str, by_load: Sequence[tuple[PlantPoint, ...]], reading: Readings, system: System
) -> tuple[Series, ...]:
    warmth = unit_for("temperature", system)
    return tuple(
        Series(
            f"{name}.{points[0].share:g}",
            f"{show(points[0].share, 'share', system)} load",
            [convert(point.sea, warmth, "temperature") for point in points],
            [reading(point) for point in points],
            _GREYS[min(number, len(_GREYS) - 1)],
        )
        for number, points in enumerate(by_load)
    )


def _over_load(by_load: Sequence[tuple[PlantPoint, ...]], system: System) -> tuple[Series, ...]:
    """Lines of a few seas, the coldest and the warmest among them."""
    count, wanted = len(by_load[0]), len(_SEAS)
    places = dict.fromkeys(round(number * (count - 1) / (wanted - 1)) for number in range(wanted))
    rising = sorted(by_load, key=lambda points: points[0].share)
    return tuple(
        Series(
            f"cop.{by_load[0][place].sea:g}",
            f"sea {show(by_load[0][place].sea, 'temperature', system)}",
            [convert(points[place].share, "%", "share") for points in rising],
            [points[place].plant_cop for points in rising],
            colour,
        )
        for place, colour in zip(places, _SEAS, strict=False)
    )


def _panel(
    title: str, series: Sequence[Series], room: float, top: float, foot: float, across: str
) -> list[Path | Text]:
    """A panel from `top` to `foot`; its foot is named when `across` says what it is."""
    first, last = min(series[0].times), max(series[0].times)
    x = Scale(first, last, _LEFT, WIDTH - _EDGE - room)
    at = [tick for tick in ticks(first, last, 9) if first <= tick <= last]
    readings = ticks(0.0, max(max(one.readings) for one in series), 5)
    panel = Panel(x, Scale(readings[0], readings[-1], foot, top))
    items: list[Path | Text] = [panel.title(title)]
    items += panel.grid(at, readings, [f"{reading:g}" for reading in readings])
    items += [path for one in reversed(series) for path in panel.curve(one)]
    items += panel.labels(series)
    if across:
        items += panel.feet(at, [f"{reading:g}" for reading in at])
        items.append(Text((x.end, foot + 33), across, _SMALL, QUIET_INK, anchor="end"))
    if series[0].key.startswith("cop"):
        items += [_best(one, panel) for one in series]
    return items


def _best(one: Series, panel: Panel) -> Path:
    """A mark where a line is highest."""
    reading = max(one.readings)
    x, y = panel.x(one.times[list(one.readings).index(reading)]), panel.y(reading)
    return rectangle(x - _DOT, y - _DOT, x + _DOT, y + _DOT, one.colour)


def _about(assessment: Assessment, system: System) -> str:
    made = assessment.plant
    return (
        f"{assessment.specification.name}: {made.name}, {made.refrigerant}, refrigerant at "
        f"{show(made.cooling[0].coil, 'temperature', system)} in the coils. Fans, seawater pump and controls are in "
        "the power; a square marks each line's best."
    )


def _best_point(by_load: Sequence[tuple[PlantPoint, ...]], sea: float) -> PlantPoint:
    return max((point for points in by_load for point in points if point.sea == sea), key=lambda p: p.plant_cop)


def _finding(by_load: Sequence[tuple[PlantPoint, ...]], system: System) -> str:
    cool, warm = by_load[0][0], by_load[0][-1]
    gives = [_whole(point.load, "heat flow", system) for point in (cool, warm)]
    seas = [_whole(point.sea, "temperature", system) for point in (cool, warm)]
    part = _whole(_best_point(by_load, warm.sea).share, "share", system)
    return (
        f"The plant gives {gives[0]} in a sea of {seas[0]} and {gives[1]} in one of {seas[1]}; "
        f"there it does best at {part} load"
    )


def _whole(value: float, dimension: str, system: System) -> str:
    """A figure that stays with its unit where a title breaks."""
    return show(value, dimension, system).replace(" ", _UNBROKEN)


def _description(by_load: Sequence[tuple[PlantPoint, ...]], system: System) -> str:
    told = "; ".join(
        f"sea {show(point.sea, 'temperature', system)}: {show(point.load, 'heat flow', system)} for "
        f"{show(point.plant_power, 'power', system)} at full load, COP {point.plant_cop:.1f}, at best "
        f"{_best_point(by_load, point.sea).plant_cop:.1f}"
        for point in (by_load[0][0], by_load[0][-1])
    )
    return f"Cooling and power over seawater temperature, and COP over load. {told}."
