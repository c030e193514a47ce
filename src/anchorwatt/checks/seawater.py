"""Rules about the shared plant's seawater."""

from __future__ import annotations

from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.simulation.plant import SEA_COUNT, SEA_START, SEA_STEP

PRACTICE = "common practice, no source"
WARMEST_MAPPED = SEA_START + SEA_STEP * (SEA_COUNT - 1)
"""°C of the sea at which every plant's map ends."""
LARGEST_RISE = 8.0
"""K; trade flows of 3 to 3.33 gal/min a ton give 5.1 to 5.7 K."""
FASTEST = 2.0
"""m/s."""
BEST_PUMP = 0.5
"""Efficiency, motor included, that no pump of this size reaches. From memory: small ones reach 0.1 to 0.3."""


@rule(
    "seawater-rise",
    "How far does the seawater warm through the condenser at the rated load?",
    "temperature difference",
    "trade practice: 3 to 3.33 gal/min a ton, which is 5 to 6 K; the limit of 8 K is common practice, no source",
    "A larger seawater pump, or hoses, strainer and through-hull that let more through.",
)
def seawater_rise(evidence: Evidence) -> Measured:
    return at_most(evidence.seawater.rise, LARGEST_RISE, near=0.25)


@rule(
    "hose-velocity",
    "How fast is the water in the seawater hose?",
    "velocity",
    "from memory: 1.5 to 2 m/s in hose",
    "A larger hose.",
)
def hose_velocity(evidence: Evidence) -> Measured:
    return at_most(evidence.seawater.hose_velocity, FASTEST)


@rule(
    "through-hull-velocity",
    "How fast is the water in the through-hull?",
    "velocity",
    PRACTICE,
    "A larger through-hull and sea cock, with a scoop strainer of at least their area.",
)
def through_hull_velocity(evidence: Evidence) -> Measured:
    return at_most(evidence.seawater.through_hull_velocity, FASTEST)


@rule(
    "pump-head",
    "Does the seawater pump give the pressure that lift, hose, strainer and condenser take?",
    "pressure",
    "the part's own rating",
    "A larger hose, fewer bends, an outlet nearer the waterline, or a pump with more head.",
)
def pump_head(evidence: Evidence) -> Measured:
    found = evidence.seawater
    return at_least(found.pump_pressure, found.pressure_needed)


@rule(
    "pump-power-possible",
    "What efficiency would the seawater pump need to drive that flow with the power it is said to take?",
    "share",
    "from memory: small seawater pumps reach 10 to 30 %, motor included",
    "Look at the pump's power, flow and head again: the three do not belong together, and the night costs more.",
)
def pump_power_possible(evidence: Evidence) -> Measured:
    return at_most(evidence.seawater.pump_efficiency, BEST_PUMP)


@rule(
    "sea-within-map",
    "Is the warmest sea of the year within the plant's map?",
    "temperature",
    "the range that the plant's map was computed for",
    "Look at the place's sea temperatures; beyond the map the plant is taken to be as good as at its end.",
)
def sea_within_map(evidence: Evidence) -> Measured:
    return at_most(evidence.seawater.warmest_sea, WARMEST_MAPPED)


@rule(
    "condensing-in-warmest-sea",
    "At its rated load, does the plant condense below the temperature where it protects itself, in the warmest sea?",
    "temperature",
    "the part's own rating",
    "More seawater, a larger condenser, or a plant that is not asked for all it has in that month.",
)
def condensing_in_warmest_sea(evidence: Evidence) -> Measured:
    limit = evidence.specification.plant.circuit.highest_condensing
    return at_most(evidence.seawater.condensing, limit, near=0.05)
