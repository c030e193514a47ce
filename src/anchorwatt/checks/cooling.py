"""Rules about cabins and the cooling plant."""

from __future__ import annotations

import math

import numpy as np

from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.physics.moist_air import relative_humidity
from anchorwatt.simulation.cooling import MIRROR
from anchorwatt.simulation.forcing import period_at
from anchorwatt.simulation.plant import full_capacity
from anchorwatt.sizing.selection import evaporating_at_rating

FROM_MEMORY = "from memory of trade practice"
PRACTICE = "common practice, no source"
TOLERATED = 1.5
"""K over the set point at which a sleeping cabin is still called cool. From practice, no source."""
DAMP = 0.65
"""Relative humidity over which bedding feels damp. From memory."""


def night_cabins(evidence: Evidence) -> tuple[int, ...]:
    """Cabins that the plan cools when the night begins."""
    points = period_at(evidence.specification, evidence.specification.brief.night_start).set_points
    return tuple(c for c, point in enumerate(points) if not math.isnan(point))


@rule(
    "cabins-cool-at-night",
    "How far over its set point does the warmest cooled cabin get after the first hour of the night?",
    "temperature difference",
    PRACTICE,
    "A larger air handler in that cabin, a larger compressor, or covers on its windows and hatches.",
)
def cabins_cool_at_night(evidence: Evidence) -> Measured:
    cooled = night_cabins(evidence)
    if not cooled:
        return at_most(math.nan, TOLERATED)
    run = evidence.simulation.night
    settled = round(3600.0 / run.step)
    over = run.series.air[0] - run.forcing.set_point[0]
    part = over[:, settled:] if over.shape[1] > settled else over
    return at_most(float(np.nanmax(part[list(cooled)])), TOLERATED)


@rule(
    "cabins-dry-at-night",
    "How damp does the dampest cooled cabin get after the first hour of the night?",
    "share",
    FROM_MEMORY,
    "A lower limit on the evaporating temperature, slower fans, or less fresh and leaking air.",
)
def cabins_dry_at_night(evidence: Evidence) -> Measured:
    cooled = night_cabins(evidence)
    if not cooled:
        return at_most(math.nan, DAMP)
    run = evidence.simulation.night
    settled = round(3600.0 / run.step)
    pressure = float(run.forcing.pressure[0])
    worst = 0.0
    for c in cooled:
        for air, wet in zip(run.series.air[0, c, settled:], run.series.humidity[0, c, settled:], strict=True):
            worst = max(worst, relative_humidity(float(air), float(wet), pressure))
    return at_most(worst, DAMP, near=0.05)


@rule(
    "compressor-carries-boat",
    "Does the compressor carry the boat's peak hour, all cooled cabins together?",
    "heat flow",
    PRACTICE,
    "A larger condensing unit, or fewer cabins cooled at once in the plan.",
)
def compressor_carries_boat(evidence: Evidence) -> Measured:
    run = evidence.simulation.loads
    hours = round(3600.0 / run.step)
    both = (run.series.sensible[0] + run.series.latent[0]).sum(axis=0)
    peak = float(both.reshape(-1, hours).mean(axis=1).max())
    evaporating = evaporating_at_rating(evidence.specification.plant.circuit)
    sea = float(np.max(evidence.simulation.weather.sea_temperature))
    able = full_capacity(evidence.simulation.boat.plant.plant_capacity[0], evaporating, sea)
    return at_least(able, peak)


@rule(
    "connected-ratio",
    "Is the air handlers' nominal capacity at most 1.6 times the compressor's?",
    "ratio",
    "from memory: 1.3 to 1.6 is common with diversity",
    "Smaller or fewer air handlers, or a larger condensing unit: beyond this each gets far less than its name says.",
)
def connected_ratio(evidence: Evidence) -> Measured:
    plant = evidence.specification.plant
    return at_most(sum(h.rated_capacity for h in plant.handlers) / plant.circuit.rated_capacity, 1.6)


@rule(
    "coils-above-frost",
    "How low may the shared plant's evaporating temperature fall (coils frost below freezing)?",
    "temperature",
    "from memory of trade practice: suction not below 0 to 1 °C for long",
    "Set the plant's lowest evaporating temperature to 0 °C or above.",
)
def coils_above_frost(evidence: Evidence) -> Measured:
    return at_least(evidence.specification.plant.circuit.lowest_evaporating, 0.0)


@rule(
    "plant-heats-boat",
    "Does the plant, turned round, carry the boat's coldest hour, all heated cabins together?",
    "heat flow",
    PRACTICE,
    "A larger condensing unit, fewer cabins heated at once, or another heater for cold water.",
)
def plant_heats_boat(evidence: Evidence) -> Measured | None:
    plant = evidence.specification.plant
    if all(math.isnan(t) for period in evidence.specification.plan for t in period.warm_points):
        return None
    run = evidence.simulation.loads
    hours = round(3600.0 / run.step)
    peak = float(run.series.heating[0].sum(axis=0).reshape(-1, hours).mean(axis=1).max())
    sea = float(np.min(evidence.simulation.weather.sea_temperature))
    warmest = MIRROR - plant.highest_heating_condensing
    return at_least(full_capacity(evidence.simulation.boat.heating.plant_capacity[0], warmest, sea), peak)


@rule(
    "cabins-warm-at-night",
    "How far under its set point does the coldest heated cabin get after the first hour of the night?",
    "temperature difference",
    PRACTICE,
    "A larger air handler in that cabin, a larger compressor, or less leaking and fresh air.",
)
def cabins_warm_at_night(evidence: Evidence) -> Measured | None:
    points = period_at(evidence.specification, evidence.specification.brief.night_start).warm_points
    heated = [c for c, point in enumerate(points) if not math.isnan(point)]
    if not heated:
        return None
    run = evidence.simulation.night
    settled = round(3600.0 / run.step)
    under = (run.forcing.warm_point[0] - run.series.air[0])[heated, settled:]
    return at_most(float(np.nanmax(under)), TOLERATED)
