"""The transformer: losses over its load, what it costs at no load, and what it does when it is switched on."""

from __future__ import annotations

import math
from dataclasses import dataclass

from anchorwatt.design.specification import Specification
from anchorwatt.physics.transformer import load_of_best_efficiency, transformer_input
from anchorwatt.physics.transformer_inrush import (
    inrush_survived,
    peak_current,
    secondary_voltage,
    transformed_share,
)
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.converters import EfficiencyPoint

LOADS = (0.05, 0.10, 0.20, 0.30, 0.50, 0.75, 1.00)
"""Share of the rating at which losses are told."""

DAY = 86_400.0

BREAKER_HOLDS, BREAKER_TRIPS = 5.0, 10.0
"""Times its rating up to which a breaker of type C holds, and from which it trips at once. IEC 60898-1, from memory."""


@dataclass(frozen=True)
class TransformerFigures:
    name: str
    rated_power: float  # VA
    isolating: bool
    transformed_share: float  # of its power that its windings transform; 1 where they are separate
    points: tuple[EfficiencyPoint, ...]
    best: EfficiencyPoint
    no_load_energy: float  # J of 24 h at no load
    night_loss: float  # J
    primary_voltage: float  # V
    secondary_voltage: float  # V at no load
    secondary_loaded: float  # V at its highest step of the runs
    highest_share: float  # of its rating, at that step
    rated_peak: float  # A on the primary side
    inrush: float  # A, first peak
    inrush_on_inverter: float  # that over the peak of the inverter's rated current
    inrush_survived: bool  # by the inverter, switched onto it
    breaker: float  # A, of the shore service; nan = none
    inrush_on_breaker: float  # first peak over that of the breaker's rated current, nan = none


def transformer_figures(specification: Specification, simulation: Simulation) -> TransformerFigures | None:
    """The transformer; None where the design has none."""
    transformer, inverter, shore = specification.transformer, specification.inverter, specification.shore
    if transformer is None:
        return None
    rated, core, copper = transformer.rated_power, transformer.core_loss, transformer.copper_loss

    def point(share: float) -> EfficiencyPoint:
        output = share * rated
        return EfficiencyPoint(share, output, transformer_input(output, rated, core, copper) - output)

    best = 1.0 if copper <= 0.0 else min(1.0, max(LOADS[0], load_of_best_efficiency(core, copper)))
    highest = max(float(run.summary.peak_ac_power[0]) for run in (simulation.night, simulation.day)) / rated
    primary, secondary = transformer.primary_voltage, transformer.secondary_voltage
    rated_peak = peak_current(rated, primary)
    first = transformer.inrush * rated_peak
    breaker = math.nan if shore is None else shore.current
    return TransformerFigures(
        name=transformer.name,
        rated_power=rated,
        isolating=transformer.isolating,
        transformed_share=1.0 if transformer.isolating else transformed_share(primary, secondary),
        points=tuple(point(share) for share in LOADS),
        best=point(best),
        no_load_energy=core * DAY,
        night_loss=float(simulation.night.summary.transformer_loss[0]),
        primary_voltage=primary,
        secondary_voltage=secondary_voltage(primary, primary, secondary, 0.0, copper / rated),
        secondary_loaded=secondary_voltage(primary, primary, secondary, highest, copper / rated),
        highest_share=highest,
        rated_peak=rated_peak,
        inrush=first,
        inrush_on_inverter=transformer.inrush * rated / inverter.rated_power,
        inrush_survived=inrush_survived(
            transformer.inrush, rated, inverter.rated_power, inverter.overload_shares, inverter.overload_times
        ),
        breaker=breaker,
        inrush_on_breaker=first / (math.sqrt(2.0) * breaker),
    )
