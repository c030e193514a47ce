"""The power command: inverter, transformer, shore service, charger, sun and the engines' own battery."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from anchorwatt.papers import screens
from anchorwatt.papers.page import Content, Gap, Paragraph, Words, figures, page, section, table
from anchorwatt.units import System, show, show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Answer, Assessment
    from anchorwatt.sizing.converters import (
        ChargerFigures,
        Efficiency,
        EfficiencyPoint,
        EngineBatteryFigures,
        InverterFigures,
    )
    from anchorwatt.sizing.shore import ShoreFigures
    from anchorwatt.sizing.sun import SunDay
    from anchorwatt.sizing.transformer import TransformerFigures


def screen(assessment: Assessment, system: System) -> Content:
    """The answers, and each part with its figures."""
    story, found = assessment.ac_side, assessment.ac_side.figures
    parts = [
        screens.about(assessment),
        section("Answers", _answers(story.answers, system)),
        section(f"Inverter: {found.inverter.name}", *_inverter(found.inverter, system)),
    ]
    if found.transformer is not None:
        parts.append(section(f"Transformer: {found.transformer.name}", *_transformer(found.transformer, system)))
    if found.shore is not None:
        parts.append(section(f"Shore service: {found.shore.name}", *_shore(found.shore, system)))
    if found.charger is not None:
        parts.append(section(f"Charger: {found.charger.name}", *_charger(found.charger, system)))
    if found.sun is not None:
        parts.append(section("Sun on the panels, 24 h", *_sun(found.sun, system)))
    if found.engine_battery is not None:
        heading = f"Engines' battery: {found.engine_battery.name}"
        parts.append(section(heading, *_engine_battery(found.engine_battery, system)))
    parts.append(section("Shore power and inverters", *(Paragraph(words) for words in story.cautions)))
    return page(*parts, screens.cautions(assessment))


def _answers(answers: Sequence[Answer], system: System) -> Content:
    rows = []
    for answer in answers:
        question = Words(answer.question)
        if answer.note:
            question = question.then(f"\n{answer.note}", "aside")
        rows.append((Words(show(answer.value, answer.dimension, system), "strong"), question))
    return table(("", ""), (">", "<"), rows, free=1)


def _curve(points: Sequence[EfficiencyPoint], best: EfficiencyPoint, system: System) -> Content:
    heads = ("load", "output W", "lost W", "efficiency %")
    rows = [_point(point, system) for point in points]
    rows.append((f"best, {show(best.share, 'share', system)}", *_point(best, system)[1:]))
    return table(heads, figures(heads), rows)


def _point(point: EfficiencyPoint, system: System) -> tuple[str, ...]:
    share = show(point.share, "share", system, 2)
    return share, f"{point.output:.0f}", f"{point.loss:.0f}", f"{100 * point.efficiency:.1f}"


def _european(efficiency: Efficiency) -> str:
    return (
        f"European weighted efficiency: {100 * efficiency.european:.1f} % (weights from memory; made for solar "
        "inverters, a boat's hours weigh otherwise)."
    )


def _inverter(found: InverterFigures, system: System) -> list[Content]:
    heads = ("highest step", "at", "power", "of its rating there", "given for")
    rows = [
        (
            step.name,
            show_clock(step.at),
            show(step.power, "power", system),
            "—" if math.isinf(step.share) else show(step.share, "share", system),
            "as long as need be" if math.isinf(step.lasts) else show(step.lasts, "time", system),
        )
        for step in (*found.steps, found.at_once)
    ]
    words = _european(found.efficiency)
    if not math.isnan(found.hottest_air):
        words += f" Its compartment reaches {show(found.hottest_air, 'temperature', system)}."
    return [
        _curve(found.efficiency.points, found.efficiency.best, system),
        Paragraph(words),
        Gap(),
        table(heads, figures(heads), rows),
        Paragraph(
            "Night and day: loads that run a part of the time are counted at their mean. All at once: every load that "
            "a period of the plan runs at all, in full, beside the plant at its most."
        ),
    ]


def _transformer(found: TransformerFigures, system: System) -> list[Content]:
    rows = [
        (show(found.secondary_voltage, "voltage", system), "without load, at its nominal supply"),
        (
            show(found.secondary_loaded, "voltage", system),
            f"at its highest step, {show(found.highest_share, 'share', system)} of its rating",
        ),
        (show(found.rated_peak, "current", system), "peak of its rated current"),
        (show(found.inrush, "current", system), "first peak when switched on"),
        (
            f"{found.inrush_on_inverter:.1f} ×",
            "the peak of the inverter's rated current: "
            + ("the inverter bears it" if found.inrush_survived else "the inverter trips, unless it ramps up"),
        ),
    ]
    if not math.isnan(found.inrush_on_breaker):
        rows.append((f"{found.inrush_on_breaker:.1f} ×", "that of the shore breaker; a type C may trip from 5 ×"))
    if found.isolating:
        kind = "Its windings are separate: it isolates from shore."
    else:
        kind = (
            f"An autotransformer: it isolates nothing, and transforms {show(found.transformed_share, 'share', system)} "
            "of the power that it passes."
        )
    return [_curve(found.points, found.best, system), Gap(), table(("", ""), (">", "<"), rows), Paragraph(kind)]


def _shore(found: ShoreFigures, system: System) -> list[Content]:
    volts, hertz = show(found.voltage, "voltage", system), show(found.frequency, "frequency", system)
    split = f"{found.legs} legs of " if found.legs > 1 else ""
    rows = [
        (
            show(found.apparent_power, "apparent power", system),
            split + ", ".join((volts, show(found.rated_current, "current", system), hertz)),
        ),
        (show(found.current_limit, "current", system), "limit that the boat is set to, each leg"),
        (show(found.continuous_current, "current", system), "for hours, each leg"),
        (show(found.continuous_power, "power", system), "for hours, in all"),
    ]
    heads = ("leg", "at most", "in a sag", "what lies on it")
    legs = []
    for number, (current, sagged) in enumerate(zip(found.highest.legs, found.highest.sagged, strict=True)):
        on_it = [
            f"{name} {show(power, 'power', system)}{' across both' if leg < 0 else ''}"
            for name, power, leg in found.highest.placed
            if leg in (number, -1)
        ]
        legs.append(
            (str(number + 1), show(current, "current", system), show(sagged, "current", system), ", ".join(on_it))
        )
    if found.legs > 1:
        legs.append(("neutral", show(found.highest.neutral, "current", system), "", ""))
    left = "left for charger W" if found.legs == 1 else "left, both legs W"
    plan_heads = ("by the plan, ashore", "loads W", "at most W", left)
    plan = [
        (
            f"{show_clock(period.start)} to {show_clock(period.end)}",
            f"{period.loads:.0f}",
            f"{period.highest:.0f}",
            f"{period.left:.0f}",
        )
        for period in found.periods
    ]
    return [
        table(("", ""), (">", "<"), rows),
        Gap(),
        table(heads, ("<", ">", ">", "<"), legs, free=3),
        Gap(),
        table(plan_heads, figures(plan_heads), plan),
        Paragraph(_sagging(found, system)),
    ]


def _sagging(found: ShoreFigures, system: System) -> str:
    sag, left = show(found.sag, "share", system), show(found.sagged_voltage, "voltage", system)
    limit = show(found.gives_way_below, "voltage", system)
    words = f"A sag of {sag} leaves {left}. A charger should give way below {limit}: "
    if found.gives_way:
        return words + "here it does, and the bank is not refilled."
    return words + "here it goes on, with less power for the same current."


def _charger(found: ChargerFigures, system: System) -> list[Content]:
    heat = "where it stands" if not math.isnan(found.hottest_air) else "in no compartment that the file describes"
    return [
        _curve(found.efficiency.points, found.efficiency.best, system),
        Paragraph(
            f"{_european(found.efficiency)} {show(found.current, 'current', system)} at the bank's absorb voltage, "
            f"{show(found.rating, 'power', system)}, {heat}."
        ),
    ]


def _sun(found: SunDay, system: System) -> list[Content]:
    rows = [
        (show(found.full_sun, "time", system), "of full sun, 1000 W/m², would be the same, unshaded"),
        (show(found.without_losses, "energy", system), "from cells at 25 °C, unshaded"),
        (show(found.lost_to_heat, "energy", system), "less, as the cells grow warmer"),
        (show(found.delivered_share, "share", system), "left after shading, dirt, wiring and controller"),
        (show(found.offered, "energy", system), "given to bank and loads, were all of it wanted"),
        (show(found.taken, "energy", system), "taken"),
        (show(found.hottest_cells, "temperature", system), "in the cells at their hottest"),
    ]
    return [table(("", ""), (">", "<"), rows)]


def _engine_battery(found: EngineBatteryFigures, system: System) -> list[Content]:
    after = "never" if math.isinf(found.refilled_after) else show(found.refilled_after, "time", system)
    rows = [
        (show(found.rating, "power", system), "that the converter gives where it stands"),
        (show(found.standing_load, "power", system), "stands on the battery"),
        (show(found.start_energy, "energy", system), "for one start of all engines"),
        (after, "until a start is put back"),
        (show(found.mean_output, "power", system), "to the battery, mean of the day"),
        (show(found.taken, "power", system), "from the bank for that"),
    ]
    return [table(("", ""), (">", "<"), rows)]
