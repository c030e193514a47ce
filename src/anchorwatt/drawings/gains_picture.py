"""The boat's load through the day by cause, stacked hour by hour."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.drawings.chart import (
    BLUE,
    GREEN,
    ORANGE,
    PURPLE,
    SKY,
    VERMILION,
    Panel,
    Scale,
    label_room,
    spread,
    ticks,
)
from anchorwatt.drawings.lettering import wrapped
from anchorwatt.drawings.sheet import INK, QUIET_INK, Path, Sheet, Text, line, rectangle
from anchorwatt.drawings.svg import svg
from anchorwatt.units import System, convert, show, unit_for

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

WIDTH, PANEL = 900.0, 320.0
_LEFT, _EDGE = 56.0, 14.0
_TITLE, _SUBTITLE, _SMALL, _LABEL = 19.0, 12.5, 11.0, 12.0
_GAP = 15.5
_OVER, _UNSEEN = 30.0, 0.01
_GREY = "#8a8a8a"
COLOURS = (ORANGE, SKY, BLUE, PURPLE, GREEN, _GREY, VERMILION)
"""One for each group of causes, in their order."""


def gains_picture(assessment: Assessment, system: System) -> str:
    """Draw where the boat's load comes from.

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
    gains, unit = assessment.gains, unit_for("heat flow", system)
    groups = [(_spoken(name), [convert(float(v), unit, "heat flow") for v in values]) for name, values in gains.groups]
    finding = _finding(assessment, system)
    items: list[Path | Text] = []
    y = _EDGE
    for words in wrapped(finding, _TITLE, WIDTH - 2 * _EDGE, bold=True):
        y += _TITLE * 1.25
        items.append(Text((_EDGE, y), words, _TITLE, bold=True))
    name = assessment.specification.name
    about = f"{name}. Cabins that the plan ever cools, held at their set points all day, hatches shut."
    for words in wrapped(about, _SUBTITLE, WIDTH - 2 * _EDGE):
        y += _SUBTITLE * 1.45
        items.append(Text((_EDGE, y), words, _SUBTITLE, QUIET_INK))
    top, foot = y + 40.0, y + 40.0 + PANEL
    above = [sum(max(0.0, values[hour]) for _, values in groups) for hour in range(24)]
    below = [sum(min(0.0, values[hour]) for _, values in groups) for hour in range(24)]
    # Room above for the words over the highest bar; what would not be seen below zero gets none.
    highest = max(above) * (1.0 + _OVER / PANEL)
    lowest = min(below) if min(below) < -_UNSEEN * highest else 0.0
    readings = ticks(lowest, highest, 6)
    x = Scale(0.0, 24.0, _LEFT, WIDTH - _EDGE - label_room([name for name, _ in groups]))
    panel = Panel(x, Scale(readings[0], readings[-1], foot, top))
    items.append(panel.title(f"Heat to be taken from the boat, {unit}; below zero it goes out"))
    hours = [float(hour) for hour in range(0, 25, 2)]
    items += panel.grid(hours, readings, [f"{reading:g}".replace("-", "−") for reading in readings])
    items += _bars(panel, groups)
    items.append(line((x.start, panel.y(0.0)), (x.end, panel.y(0.0)), INK, 1.0))
    items += _marked(panel, above, assessment, system)
    items += _labels(panel, groups)
    items += panel.feet(hours, [f"{hour % 24:02.0f}:00" for hour in hours])
    items.append(Text((x.end, foot + 33), "local standard time", _SMALL, QUIET_INK, anchor="end"))
    y = foot + 40.0
    for words in wrapped(" ".join(assessment.cautions), _SMALL, WIDTH - 2 * _EDGE):
        y += _SMALL * 1.4
        items.append(Text((_EDGE, y), words, _SMALL, QUIET_INK))
    description = "; ".join(
        f"{_spoken(name)} {show(float(values[gains.peak_hour]), 'heat flow', system)}" for name, values in gains.groups
    )
    return Sheet(WIDTH, y + _EDGE, finding, f"In the highest hour: {description}.", tuple(items))


def _finding(assessment: Assessment, system: System) -> str:
    gains = assessment.gains
    if not gains.cabins:
        return "No cabin of this design is ever cooled"
    cause = max(gains.groups, key=lambda group: float(group[1][gains.peak_hour]))[0]
    return (
        f"The boat's load is highest from {gains.peak_hour:02d}:00, {show(gains.peak, 'heat flow', system)}; "
        f"its largest part: {_spoken(cause)}"
    )


def _spoken(cause: str) -> str:
    """A group's name as it stands in a sentence; tables shorten it."""
    return cause.replace(", ", " and ")


def _bars(panel: Panel, groups: list[tuple[str, list[float]]]) -> list[Path | Text]:
    items: list[Path | Text] = []
    for hour in range(24):
        up = down = 0.0
        left, right = panel.x(hour + 0.08), panel.x(hour + 0.92)
        for (_, values), colour in zip(groups, COLOURS, strict=True):
            value = values[hour]
            start = up if value >= 0.0 else down
            items.append(rectangle(left, panel.y(start + value), right, panel.y(start), colour))
            if value >= 0.0:
                up += value
            else:
                down += value
    return items


def _marked(panel: Panel, above: list[float], assessment: Assessment, system: System) -> list[Path | Text]:
    gains = assessment.gains
    if not gains.cabins:
        return []
    hour = gains.peak_hour
    at, y = panel.x(hour + 0.5), panel.y(above[hour])
    words = f"{show(gains.peak, 'heat flow', system)} in all"
    return [line((at, y - 3), (at, y - 9), INK), Text((at, y - 12), words, _LABEL, bold=True, anchor="middle")]


def _labels(panel: Panel, groups: list[tuple[str, list[float]]]) -> list[Path | Text]:
    """Names beside the last hour's bars, each led to its own."""
    middles, up, down = [], 0.0, 0.0
    for _, values in groups:
        value = values[23]
        start = up if value >= 0.0 else down
        middles.append(panel.y(start + 0.5 * value))
        if value >= 0.0:
            up += value
        else:
            down += value
    places = spread(middles, _GAP, panel.y.end + 4, panel.y.start - 2)
    items: list[Path | Text] = []
    for (name, _), colour, middle, place in zip(groups, COLOURS, middles, places, strict=True):
        right = panel.x(23.92)
        led = ((right + 1, middle), (panel.x.end + 8, place), (panel.x.end + 25, place))
        items.append(Path(led, colour, 2.0))
        items.append(Text((panel.x.end + 30, place + 4), name, _LABEL))
    return items
