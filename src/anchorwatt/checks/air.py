"""Rules about the air that people breathe through the night."""

from __future__ import annotations

from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.sizing.air_quality import CabinAir
from anchorwatt.sizing.occupancy import slept_in

SHARE_BY_VOLUME = "share by volume"
WORSE_SLEEP, WORSE_NEXT_DAY = 1150e-6, 2600e-6
"""Shares by volume of carbon dioxide."""
HOUR = 3600.0
PER_PERSON = 25.0 / HOUR
"""m³/s of outdoor air."""
BEDROOMS = "Technical University of Denmark, statement of 2023 on a study of bedrooms"
VENTILATE = (
    "More outdoor air: a small fan to each sleeping cabin, a hatch ajar, or a door left open to an emptier cabin. "
    "Take it in away from every exhaust and keep the carbon-monoxide alarms working."
)


def _slept_in(evidence: Evidence) -> tuple[CabinAir, ...]:
    run = evidence.simulation.night
    there = slept_in(evidence.specification, run)
    return tuple(air for air in evidence.cabin_air if air.cabin in there)


@rule(
    "carbon-dioxide-asleep",
    "Does carbon dioxide stay, in every cabin slept in, below where sleep grows worse?",
    SHARE_BY_VOLUME,
    f"{BEDROOMS}: from 750 ppm sleep may be worse, over 1150 ppm it is",
    VENTILATE,
)
def carbon_dioxide_asleep(evidence: Evidence) -> Measured | None:
    cabins = _slept_in(evidence)
    return at_most(max(air.highest for air in cabins), WORSE_SLEEP) if cabins else None


@rule(
    "carbon-dioxide-next-day",
    "Does carbon dioxide stay, in every cabin slept in, below where people do worse the next day?",
    SHARE_BY_VOLUME,
    f"{BEDROOMS}: over 2600 ppm both sleep and the next day's performance are worse",
    VENTILATE,
)
def carbon_dioxide_next_day(evidence: Evidence) -> Measured | None:
    cabins = _slept_in(evidence)
    return at_most(max(air.highest for air in cabins), WORSE_NEXT_DAY, near=0.25) if cabins else None


@rule(
    "outdoor-air-per-sleeper",
    "How much outdoor air comes in for each person, in the cabin slept in that has least, in the calmest hour?",
    "volume flow",
    "code of practice for large commercial yachts, 21.7.3: 25 m³/h a person with air conditioning (text from a public "
    "collection of rules, the code's name from memory); ISO 7547 asks 8 L/s of ships, from memory. Neither binds a "
    "small craft",
    VENTILATE,
)
def outdoor_air_per_sleeper(evidence: Evidence) -> Measured | None:
    cabins = _slept_in(evidence)
    return at_least(min(air.least_flow for air in cabins), PER_PERSON, near=0.05) if cabins else None
