"""Inverter, transformer, shore power and the small converters, held against the runs of a design."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.converters import (
    ChargerFigures,
    EngineBatteryFigures,
    InverterFigures,
    charger_figures,
    engine_battery_figures,
    inverter_figures,
)
from anchorwatt.sizing.shore import ShoreFigures, shore_figures
from anchorwatt.sizing.sun import SunDay, sun_day
from anchorwatt.sizing.transformer import TransformerFigures, transformer_figures


@dataclass(frozen=True)
class AcSide:
    """All of them; None for what the design does not have."""

    inverter: InverterFigures
    transformer: TransformerFigures | None
    shore: ShoreFigures | None
    charger: ChargerFigures | None
    sun: SunDay | None
    engine_battery: EngineBatteryFigures | None


def ac_side(specification: Specification, simulation: Simulation) -> AcSide:
    """Everything between bank, shore, sun and the loads of a design."""
    return AcSide(
        inverter=inverter_figures(specification, simulation),
        transformer=transformer_figures(specification, simulation),
        shore=shore_figures(specification, simulation),
        charger=charger_figures(specification, simulation),
        sun=sun_day(specification, simulation),
        engine_battery=engine_battery_figures(specification, simulation),
    )
