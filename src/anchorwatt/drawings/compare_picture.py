"""The night of two to four designs on one time axis: charge of the bank, and the warmest cabin that is cooled."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from anchorwatt.assessment.cabin_plan import warmest_cooled_through
from anchorwatt.drawings.chart import (
    BLUE,
    GREEN,
    PURPLE,
    VERMILION,
    Panel,
    Scale,
    Series,
    hour_ticks,
    label_room,
    ticks,
)
from anchorwatt.drawings.lettering import clipped
from anchorwatt.drawings.sheet import QUIET_INK, Path, Sheet, Text, line
from anchorwatt.drawings.svg import svg
from anchorwatt.drawings.title_block import EDGE, SMALL, TITLE, foot_block, title_block
from anchorwatt.errors import OutOfRange
from anchorwatt.units import System, convert, show, show_clock, unit_for

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

    Named = tuple[str, Assessment]

WIDTH = 900.0
FEWEST, MOST = 2, 4
_LEFT = 56.0
_HEIGHTS = (170.0, 190.0)
_BETWEEN = 42.0
_LEAST_SPAN = 4.0  # K of the axis of temperatures
_LABEL_WIDTH, _TITLE_WIDTH = 190.0, 330.0
# Each has its colour and its dashes: hues are not all that tells them apart.
_STYLES = ((BLUE, ()), (VERMILION, (9.0, 3.0)), (GREEN, (3.0, 3.0)), (PURPLE, (12.0, 3.0, 3.0, 3.0)))


def compare_picture(named: Sequence[Named], system: System) -> str:
    """Draw the nights of several designs.

    Parameters
    ----------
    named : two to four assessments, each with what it is called in the picture
    system : "si" or "us", the units on the axes

    Returns
    -------
    The text of an SVG file.

    Raises
    ------
    OutOfRange
        fewer than two or more than four.
    """
    if not FEWEST <= len(named) <= MOST:
        raise OutOfRange(f"{FEWEST} to {MOST} designs are compared in one picture; found", len(named))
    return svg(_sheet(named, system))


def _sheet(named: Sequence[Named], system: System) -> Sheet:
    finding = _finding(named, system)
    about = "Charge of the bank, and the warmest of the cabins that are cooled, each night as its own plan has it"
    items, y = title_block(finding, about, WIDTH)
    charge, warmth = _charge(named), _warmth(named, system)
    start = min(float(one.night.clock[0]) for _, one in named)
    end = max(float(one.night.clock[-1]) for _, one in named)
    x = Scale(start, end, _LEFT, WIDTH - EDGE - label_room([one.label for one in (*charge, *warmth)]))
    known = [reading for one in warmth for reading in one.readings if not math.isnan(reading)]
    panels = [
        ("Charge of the bank, %", charge, [0.0, 20.0, 40.0, 60.0, 80.0, 100.0]),
        (f"Warmest cabin that is cooled, {unit_for('temperature', system)}", warmth, _warm_ticks(known, system))
        if known
        else ("No cabin is cooled by night", [], [0.0, 1.0]),
    ]
    times = hour_ticks(start, end)
    y += 40.0
    for (title, series, readings), height in zip(panels, _HEIGHTS, strict=True):
        panel = Panel(x, Scale(readings[0], readings[-1], y + height, y))
        items.append(panel.title(title))
        if series:
            items += panel.grid(times, readings, [f"{reading:g}" for reading in readings])
            items += [path for one in series for path in panel.curve(one)]
            items += [path for one in series for path in _onward(one, panel)]
            items += panel.labels(series)
        y += height + _BETWEEN
    items += panel.feet(times, [show_clock(time) for time in times])
    items.append(Text((x.end, y - _BETWEEN + 33.0), "local standard time", SMALL, QUIET_INK, anchor="end"))
    below, height = foot_block(named[0][1].cautions, y, WIDTH)
    return Sheet(WIDTH, height, finding, _description(named, system), (*items, *below))


def _warm_ticks(known: Sequence[float], system: System) -> list[float]:
    """Readings of the axis, over so many degrees at least that a tenth of one does not look like a difference."""
    least = convert(_LEAST_SPAN, unit_for("temperature difference", system), "temperature difference")
    middle, half = 0.5 * (min(known) + max(known)), 0.5 * max(least, max(known) - min(known))
    return ticks(middle - half, middle + half)


def _onward(one: Series, panel: Panel) -> list[Path]:
    """A faint line from the end of a night that is shorter to where its name is led from."""
    at = panel.x(one.times[-1])
    if math.isnan(one.readings[-1]) or at >= panel.x.end - 1.0:
        return []
    y = panel.y(one.readings[-1])
    return [line((at + 2.0, y), (panel.x.end, y), one.colour, 0.7, (1.0, 3.0))]


def _left(one: Assessment) -> float:
    return one.answer("charge_at_dawn_pct").value


def _finding(named: Sequence[Named], system: System) -> str:
    ranked = sorted((pair for pair in named if not math.isnan(_left(pair[1]))), key=lambda pair: -_left(pair[1]))
    if len(ranked) < FEWEST:
        return "It cannot be told which of these banks has more left at dawn"
    (best, most), (worst, least) = ranked[0], ranked[-1]
    high, low = (show(_left(one), "share", system) for one in (most, least))
    if high == low:
        return f"All have {high} left at dawn"
    names = [clipped(name, TITLE, _TITLE_WIDTH, bold=True) for name in (best, worst)]
    return f"{names[0]} has most left at dawn, {high}; {names[1]} has least, {low}"


def _charge(named: Sequence[Named]) -> list[Series]:
    return [
        _series(number, name, one, "charge_pct", convert(one.night.column("charge_pct").values, "%", "share").tolist())
        for number, (name, one) in enumerate(named)
    ]


def _warmth(named: Sequence[Named], system: System) -> list[Series]:
    unit = unit_for("temperature", system)
    return [
        _series(number, name, one, "warmest_C", convert(warmest_cooled_through(one.cabins, one.night), unit).tolist())
        for number, (name, one) in enumerate(named)
    ]


def _series(number: int, name: str, one: Assessment, key: str, readings: Sequence[float]) -> Series:
    colour, dashes = _STYLES[number]
    label = clipped(name, 12.0, _LABEL_WIDTH)
    return Series(f"{key}.{number}", label, one.night.clock.tolist(), readings, colour, 2.0, dashes)


def _description(named: Sequence[Named], system: System) -> str:
    told = "; ".join(
        f"{name}: {show(_left(one), 'share', system)} left at dawn, warmest cooled cabin "
        f"at most {_highest(one, system)}"
        for name, one in named
    )
    return f"Two charts above one time axis. {told}."


def _highest(one: Assessment, system: System) -> str:
    return show(float(warmest_cooled_through(one.cabins, one.night).max()), "temperature", system)
