"""The voltage command: the same boat at 12, 24 and 48 V side by side."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from anchorwatt.papers import screens
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Gap, Paragraph, Side, figures, page, section, table
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, convert, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.voltages import VoltageRow, VoltageStory
    from anchorwatt.sizing.conductors import SizedCircuit

Plain = dict[str, Any]


def screen(assessment: Assessment, system: System) -> Content:
    """Side by side, then the cables, then what was assumed."""
    made = assessment.voltages
    parts = [
        screens.about(assessment),
        section("The same boat at three voltages", *_beside(made, system)),
        section("Main runs at full current", *_runs(made, system), *_overloaded(made)),
        section("What was assumed", *(Paragraph(words) for words in made.assumptions)),
        section("Before you choose", *(Paragraph(words) for words in made.cautions)),
        screens.cautions(assessment),
    ]
    return page(*parts)


def plain(assessment: Assessment) -> Plain:
    """What `voltage` shows, as plain data."""
    made = assessment.voltages
    return {
        "own_V": in_unit(made.own, "V", "voltage"),
        "voltages": [
            {
                "nominal_V": in_unit(one.voltage, "V", "voltage"),
                "as_designed": one.own,
                "bank": {
                    "cells_in_series": one.specification.bank.cells,
                    "nominal_V": in_unit(one.specification.bank.nominal_voltage, "V", "voltage"),
                    "capacity_Ah": in_unit(one.specification.bank.capacity, "Ah", "charge"),
                },
                "inverter": one.specification.inverter.name,
                "charger": None if one.specification.charger is None else one.specification.charger.name,
                **{row.key: in_unit(row.values[number], row.unit, row.dimension) for row in made.rows},
                "currency": one.price.currency or None,
                "runs": [_run(sized) for sized in one.circuits],
                "overloaded_with_own_copper": list(one.overloaded),
            }
            for number, one in enumerate(made.options)
        ],
        "how": {row.key: row.how for row in made.rows},
        "assumptions": list(made.assumptions),
        "cautions": [*made.cautions, *assessment.cautions],
    }


def _run(sized: SizedCircuit) -> Plain:
    return {
        "name": sized.circuit.name,
        "current_A": in_unit(sized.circuit.current, "A", "current"),
        "one_way_m": in_unit(sized.circuit.length, "m", "length"),
        "conductor": sized.conductor.name,
        "side_by_side": sized.parallel,
        "section_mm2": in_unit(sized.area, "mm²", "cross-section"),
        "ampacity_A": in_unit(sized.ampacity, "A", "current"),
        "temperature_C": in_unit(sized.temperature, "°C", "temperature"),
        "drop_V": in_unit(sized.drop, "V", "voltage"),
        "drop_pct": in_unit(sized.drop_share, "%", "share"),
        "loss_W": in_unit(sized.loss, "W", "power"),
        "copper_kg": in_unit(sized.copper, "kg", "mass"),
        "mass_kg": in_unit(sized.mass, "kg", "mass"),
        "governed_by": sized.governed_by,
    }


def _beside(made: VoltageStory, system: System) -> list[Content]:
    heads = ("", *(f"{show(one.voltage, 'voltage', system)}\n{_whose(one.own)}" for one in made.options))
    rows = [
        ("bank", *(show(one.specification.bank.nominal_voltage, "voltage", system) for one in made.options)),
        ("", *(show(one.specification.bank.capacity, "charge", system) for one in made.options)),
        *((_label(row, made), *_values(row, system)) for row in made.rows),
    ]
    converters = [
        Paragraph(
            f"{show(one.voltage, 'voltage', system)}: "
            + " and ".join(
                part.name for part in (one.specification.inverter, one.specification.charger) if part is not None
            )
            + "."
        )
        for one in made.options
    ]
    return [table(heads, figures(heads), rows, free=0), *converters]


def _whose(own: bool) -> str:
    return "as designed" if own else ""


def _label(row: VoltageRow, made: VoltageStory) -> str:
    return f"{row.label}, {made.currency}" if row.dimension == "money" and made.currency else row.label


def _values(row: VoltageRow, system: System) -> list[str]:
    if row.dimension == "money":
        return ["unknown" if math.isnan(v) else screens.figure(v, "money", system) for v in row.values]
    if row.dimension == "time":
        return [f"{reading(v, 'time', system)} {heading_unit('time', system)}" for v in row.values]
    digits = 3 if row.dimension in ("share", "liquid volume") else None
    return ["—" if math.isnan(v) else show(v, row.dimension, system, digits) for v in row.values]


def _runs(made: VoltageStory, system: System) -> list[Content]:
    """A table a run; runs that are alike share one."""
    heads = ("V", "A", "cables each way", "mm²", "°C" if system == "si" else "°F", "drop %", "lost W", "governed by")
    sides: tuple[Side, ...] = (">", ">", "<", ">", ">", ">", ">", "<")
    alike: dict[tuple[tuple[str, ...], ...], list[str]] = {}
    for number, first in enumerate(made.options[0].circuits):
        lines = tuple(_line(one.voltage, one.circuits[number], system) for one in made.options)
        length = show(first.circuit.length, "length", system)
        alike.setdefault(lines, []).append(f"{first.circuit.name}, {length} one way")
    parts: list[Content] = []
    for lines, names in alike.items():
        parts += [Paragraph("; ".join(names)), table(heads, sides, lines), Gap()]
    return parts


def _line(voltage: float, sized: SizedCircuit, system: System) -> tuple[str, ...]:
    return (
        f"{voltage:.0f}",
        reading(sized.circuit.current, "current", system),
        sized.size,
        show(sized.area, "cross-section", system).split()[0],
        f"{convert(sized.temperature, heading_unit('temperature', system)):.0f}",
        show(sized.drop_share, "share", system).split()[0],
        reading(sized.loss, "power", system),
        sized.governed_by,
    )


def _overloaded(made: VoltageStory) -> list[Content]:
    words = [
        f"The copper of this boat's own voltage would not carry at {one.voltage:.0f} V: {', '.join(one.overloaded)}."
        for one in made.options
        if one.overloaded
    ]
    return [Paragraph(each) for each in words]
