"""The night as one picture: charge of the bank, cabin temperatures and plant power on one time axis."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from anchorwatt.drawings.chart import (
    BLUE,
    COLOURS,
    VERMILION,
    Panel,
    Scale,
    Series,
    hour_ticks,
    label_height,
    label_room,
    ticks,
)
from anchorwatt.drawings.lettering import wrapped
from anchorwatt.drawings.sheet import INK, QUIET_INK, Path, Sheet, Text, line
from anchorwatt.drawings.svg import svg
from anchorwatt.units import System, convert, show, show_clock, unit_for

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.records import Table

WIDTH = 900.0
_LEFT = 56.0
_EDGE = 14.0
_TITLE, _SUBTITLE, _SMALL = 19.0, 12.5, 11.0
_PANEL_HEIGHTS = (150.0, 185.0, 125.0)
_BETWEEN = 42.0
_QUIET = "#8a8a8a"
_DASHED = (6.0, 3.0)
_LONG_DASHED = (12.0, 3.0)
_DOTTED = (2.0, 3.0)


def night_picture(assessment: Assessment, system: System) -> str:
    """Draw the night.

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
    night, start = assessment.night, assessment.specification.brief.night_start
    charge = _charge(assessment, system)
    cabins = _temperatures(assessment, system)
    powers = _powers(night, system)

    finding = _finding(assessment, system)
    items: list[Path | Text] = []
    y = _EDGE
    for words in wrapped(finding, _TITLE, WIDTH - 2 * _EDGE, bold=True):
        y += _TITLE * 1.25
        items.append(Text((_EDGE, y), words, _TITLE, bold=True))
    for words in wrapped(_about(assessment), _SUBTITLE, WIDTH - 2 * _EDGE):
        y += _SUBTITLE * 1.45
        items.append(Text((_EDGE, y), words, _SUBTITLE, QUIET_INK))

    all_labels = [one.label for one in (*charge, *cabins, *powers)]
    x = Scale(start, night.clock[-1], _LEFT, WIDTH - _EDGE - label_room(all_labels))
    y += 40.0
    panels = []
    for least, series in zip(_PANEL_HEIGHTS, (charge, cabins, powers), strict=True):
        height = max(least, label_height(len(series)))
        panels.append((y, y + height))
        y += height + _BETWEEN
    bottom = panels[-1][1]

    times = hour_ticks(start, night.clock[-1])
    names = [show_clock(time) for time in times]
    share_ticks = [0.0, 20.0, 40.0, 60.0, 80.0, 100.0]
    drawn = (
        ("Charge of the bank, %", charge, share_ticks),
        (
            f"Air in the cabins and outdoors, {unit_for('temperature', system)}",
            cabins,
            _reading_ticks(cabins),
        ),
        (f"Electrical power, {unit_for('power', system)}", powers, _reading_ticks(powers, floor=0.0)),
    )
    for (top, foot), (title, series, readings) in zip(panels, drawn, strict=True):
        panel = Panel(x, Scale(readings[0], readings[-1], foot, top))
        items.append(panel.title(title))
        items += panel.grid(times, readings, [f"{reading:g}" for reading in readings])
        if series is charge:
            items += panel.area(charge[0], 0.12)
            items += _reserve(assessment, panel, system)
        if series is powers:
            items += panel.area(powers[0], 0.15)
        items += [path for one in reversed(series) for path in panel.curve(one)]
        items += panel.labels(series)
        if foot == bottom:
            items += panel.feet(times, names)
    items.append(Text((x.end, bottom + 33), "local standard time", _SMALL, QUIET_INK, anchor="end"))

    y = bottom + 40.0
    for words in wrapped(" ".join(assessment.cautions), _SMALL, WIDTH - 2 * _EDGE):
        y += _SMALL * 1.4
        items.append(Text((_EDGE, y), words, _SMALL, QUIET_INK))
    return Sheet(WIDTH, y + _EDGE, finding, _description(assessment, system), tuple(items))


def _finding(assessment: Assessment, system: System) -> str:
    found, asked = assessment.answer("hold_hours"), assessment.answer("required_hours").value
    hold, longer = found.value, " or longer" if found.note == "or longer" else ""
    if math.isnan(hold):
        return "It cannot be told whether the bank holds the night"
    left = show(assessment.answer("charge_at_dawn_pct").value, "share", system)
    both = f"{_hours(hold, system)}{longer} where {_hours(asked, system)} are asked for"
    if hold < asked:
        return f"The bank does not hold the night: {both}"
    return f"The bank holds the night: {both}, {left} left at dawn"


def _hours(value: float, system: System) -> str:
    return show(value, "time", system).replace(".0 h", " h")


def _about(assessment: Assessment) -> str:
    specification, night = assessment.specification, assessment.night
    clock = f"{show_clock(specification.brief.night_start)} to {show_clock(night.clock[-1])}"
    return f"{specification.name} · the night from {clock} · {assessment.weather_source}"


def _reserve(assessment: Assessment, panel: Panel, system: System) -> list[Path | Text]:
    """The line of the reserve, and the moment when the charge comes down to it."""
    reserve = assessment.specification.brief.reserve
    level = panel.y(convert(reserve, "%", "share"))
    words = f"reserve of {show(reserve, 'share', system)}"
    items: list[Path | Text] = [line((panel.x.start, level), (panel.x.end, level), INK, 1.2, _DASHED)]
    reached = _first_at(assessment.night, reserve)
    if reached is not None:
        x = panel.x(reached)
        words += f", reached at {show_clock(reached)}"
        items.append(line((x, level - 7), (x, level + 7), INK, 2.5))
    items.append(Text((panel.x.start + 6, level - 6), words, _SMALL, INK))
    return items


def _first_at(night: Table, reserve: float) -> float | None:
    charges = night.column("charge_pct").values
    return next((time for time, charge in zip(night.clock, charges, strict=True) if charge <= reserve), None)


def _description(assessment: Assessment, system: System) -> str:
    cabins = "; ".join(
        f"{cabin.name} at most {show(cabin.night_highest_temperature, 'temperature', system)}"
        for cabin in assessment.cabins
    )
    peak = show(assessment.answer("peak_plant_power_W").value, "power", system)
    return (
        "Three charts above one time axis: charge of the bank with its reserve, air temperatures "
        f"({cabins}), and electrical power (the plant draws at most {peak})."
    )


def _charge(assessment: Assessment, system: System) -> list[Series]:
    left = show(assessment.answer("charge_at_dawn_pct").value, "share", system)
    return [_series(assessment.night, "charge_pct", f"{left} at dawn", "%", BLUE)]


def _temperatures(assessment: Assessment, system: System) -> list[Series]:
    night, unit = assessment.night, unit_for("temperature", system)
    colours = iter(COLOURS * (len(assessment.cabins) // len(COLOURS) + 1))
    cooled: list[Series] = []
    others: list[Series] = []
    for cabin in assessment.cabins:
        key = f"air_temperature_C.{cabin.name}"
        if math.isnan(cabin.set_point):
            one = _series(night, key, f"{cabin.name}, not cooled", unit, _QUIET)
            others.append(replace(one, width=1.5, dashes=_DASHED))
        else:
            again = _LONG_DASHED if len(cooled) >= len(COLOURS) else ()
            cooled.append(replace(_series(night, key, cabin.name, unit, next(colours)), dashes=again))
    outdoors = _series(night, "outdoor_temperature_C", "outdoors", unit, INK)
    return [*cooled, *others, replace(outdoors, width=1.5, dashes=_DOTTED)]


def _powers(night: Table, system: System) -> list[Series]:
    unit = unit_for("power", system)
    plant = _series(night, "plant_power_W", "cooling plant", unit, VERMILION)
    inverter = _series(night, "inverter_power_W", "inverter output", unit, INK)
    return [replace(plant, width=1.5), replace(inverter, width=1.5)]


def _series(night: Table, key: str, label: str, unit: str, colour: str) -> Series:
    column = night.column(key)
    readings = convert(column.values, unit, column.dimension).tolist()
    return Series(key, label, night.clock.tolist(), readings, colour)


def _reading_ticks(series: Sequence[Series], floor: float | None = None) -> list[float]:
    known = [reading for one in series for reading in one.readings if not math.isnan(reading)]
    return ticks(min(known) if floor is None else floor, max(known))
