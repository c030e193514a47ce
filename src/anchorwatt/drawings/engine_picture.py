"""What each engine gives over its speed, what its propeller takes, and the belts' load between."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from anchorwatt.drawings.chart import BLUE, ORANGE, VERMILION, Panel, Scale, Series, label_height, label_room, ticks
from anchorwatt.drawings.lettering import clipped, text_width
from anchorwatt.drawings.sheet import INK, QUIET_INK, Path, Sheet, Text, line
from anchorwatt.drawings.svg import svg
from anchorwatt.drawings.title_block import EDGE, SMALL, SUBTITLE, TITLE, foot_block, title_block
from anchorwatt.units import System, convert, show, unit_for

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.engine_load import EngineLoad, LoadPoint

WIDTH = 900.0
_LEFT = 56.0
_HEIGHTS = (250.0, 190.0)  # points of a panel that stands alone, and of one among others
_BETWEEN = 76.0
_LONG_NAME = 300.0
_DASHED, _DOTTED = (6.0, 3.0), (2.0, 3.0)
_AT = 5.0  # points between the line of the charging speed and its words


def engine_picture(assessment: Assessment, system: System) -> str:
    """Draw the engines' power over their speed.

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
    loads = assessment.engine_loads
    finding = _finding(loads, system)
    name = clipped(assessment.specification.name, SUBTITLE, _LONG_NAME)
    about = (
        f"{name} · full load, propeller turning; belts: what the alternators take at the currents that their "
        "regulators are set to, windings hot"
    )
    items, y = title_block(finding, about, WIDTH)
    drawn = [(load, _series(load, system)) for load in loads]
    room = label_room([one.label for _, series in drawn for one in series]) if drawn else 0.0
    for load, series in drawn:
        y += 44.0
        foot = y + max(_HEIGHTS[0] if len(drawn) == 1 else _HEIGHTS[1], label_height(len(series)))
        items += _panel(load, series, room, y, foot, system)
        y = foot + _BETWEEN - 44.0
    below, height = foot_block(assessment.cautions, y + 6.0, WIDTH)
    return Sheet(WIDTH, height, finding, _description(loads, system), (*items, *below))


def _power(value: float, system: System) -> str:
    return show(value, "shaft power", system).replace(" ", "\u00a0")


def _rpm(value: float, system: System) -> str:
    return show(value, "rotational speed", system).replace(" ", "\u00a0")


def _finding(loads: Sequence[EngineLoad], system: System) -> str:
    if not loads:
        return "This boat has no engine: nothing turns an alternator"
    charging = [load for load in loads if load.alternators]
    if not charging:
        return "No engine carries an alternator: all that the propeller leaves is unused"
    load = max(charging, key=lambda one: one.heaviest.belts)
    point = load.heaviest
    who = f"{clipped(load.name, TITLE, _LONG_NAME, bold=True)}: " if len(loads) > 1 else ""
    words = (
        f"{who}at {_rpm(point.speed, system)} propeller and margin leave {_power(point.left, system)}, and the belts "
        f"take {_power(point.belts, system)}"
    )
    if not load.held:
        words += "; the engine never holds the alternators back"
    else:
        words += f"; the engine holds the alternators back {_held(load, system)}"
    return words[0].upper() + words[1:] if not who else words


def _held(load: EngineLoad, system: System) -> str:
    """The speeds at which the engine holds an alternator back, in words."""
    idle, rated = load.points[0].speed, load.points[-1].speed
    told = []
    for first, last in load.held:
        if first <= idle and last >= rated:
            return "at every speed"
        if last >= rated:
            told.append(f"from {_rpm(first, system)} on")
        elif first <= idle:
            told.append(f"up to {_rpm(last, system)}")
        elif first == last:
            told.append(f"at {_rpm(first, system)}")
        else:
            told.append(f"from {_rpm(first, system)} to {_rpm(last, system)}")
    return " and ".join(told)


def _series(load: EngineLoad, system: System) -> list[Series]:
    unit = unit_for("shaft power", system)
    speeds = [convert(point.speed, "rpm", "rotational speed") for point in load.points]

    def series(key: str, label: str, values: Sequence[float], colour: str, dashes: tuple[float, ...] = ()) -> Series:
        readings = [convert(value, unit, "shaft power") for value in values]
        return Series(f"{load.key}.{key}", label, speeds, readings, colour, 2.0, dashes)

    found = [
        series("full_load", "the engine gives", [point.gives for point in load.points], INK),
        series(
            "allowed",
            f"all but a margin of {show(load.margin, 'share', system)}",
            [point.allowed for point in load.points],
            QUIET_INK,
            _DASHED,
        ),
    ]
    if load.alternators:
        both = [point.propeller + point.belts for point in load.points]
        found.append(series("belts", "propeller and belts", both, VERMILION))
    found.append(series("propeller", "the propeller takes", [point.propeller for point in load.points], BLUE))
    return found


def _panel(
    load: EngineLoad, series: Sequence[Series], room: float, top: float, foot: float, system: System
) -> list[Path | Text]:
    speeds = series[0].times
    x = Scale(speeds[0], speeds[-1], _LEFT, WIDTH - EDGE - room)
    at = [tick for tick in ticks(speeds[0], speeds[-1], 9) if speeds[0] <= tick <= speeds[-1]]
    readings = ticks(0.0, max(max(one.readings) for one in series), 5)
    panel = Panel(x, Scale(readings[0], readings[-1], foot, top))
    title = f"{clipped(load.name, SUBTITLE, _LONG_NAME)}: power at the crankshaft, {unit_for('shaft power', system)}"
    items: list[Path | Text] = [panel.title(title)]
    items += panel.grid(at, readings, [f"{reading:g}" for reading in readings])
    if load.alternators:
        belts, propeller = series[-2], series[-1]
        upper = [(panel.x(t), panel.y(v)) for t, v in zip(belts.times, belts.readings, strict=True)]
        lower = [(panel.x(t), panel.y(v)) for t, v in zip(propeller.times, propeller.readings, strict=True)]
        items.append(Path((*upper, *reversed(lower)), fill=ORANGE, fill_opacity=0.35, key=f"{load.key}.alternators"))
        items += _charging(load, panel, system)
    items += [path for one in reversed(series) for path in panel.curve(one)]
    items += panel.labels(series)
    items += panel.feet(at, [f"{reading:g}" for reading in at])
    items.append(Text((x.end, foot + 33), "engine speed, rpm", SMALL, QUIET_INK, anchor="end"))
    return items


def _charging(load: EngineLoad, panel: Panel, system: System) -> list[Path | Text]:
    """The speed at which it charges at anchor, named at the foot of the panel."""
    reading = convert(load.charging_speed, "rpm", "rotational speed")
    if not panel.x.low <= reading <= panel.x.high:
        return []
    x = panel.x(reading)
    words = f"charges at anchor at {show(load.charging_speed, 'rotational speed', system)}"
    over = panel.y.end + SMALL + 2.0
    after = x + _AT + text_width(words, SMALL) <= panel.x.end
    at = x + _AT if after else x - _AT
    return [
        line((x, panel.y.start), (x, panel.y.end), INK, 1.0, _DOTTED),
        Text((at, over), words, SMALL, QUIET_INK, anchor="start" if after else "end"),
    ]


def _description(loads: Sequence[EngineLoad], system: System) -> str:
    def told(point: LoadPoint) -> str:
        return (
            f"at {show(point.speed, 'rotational speed', system)} it gives {show(point.gives, 'shaft power', system)}, "
            f"the propeller takes {show(point.propeller, 'shaft power', system)}, "
            f"{show(point.left, 'shaft power', system)} are left and the belts take "
            f"{show(point.belts, 'shaft power', system)}"
        )

    parts = ". ".join(
        f"{load.name}: " + "; ".join(told(point) for point in (load.points[0], load.heaviest, load.points[-1]))
        for load in loads
    )
    about = "Engine power over engine speed with the propeller's share and the belts' load on top of it."
    return f"{about} {parts}." if parts else about
