"""Rules about the shared plant's ducts and grilles, at full fan."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.sizing.ducts import duct_runs, duct_skins

PRACTICE = "common practice, no source"
FEET_A_MINUTE = 0.3048 / 60.0
TRUNK, BRANCH = 900.0 * FEET_A_MINUTE, 700.0 * FEET_A_MINUTE
"""m/s in a duct that takes all of a handler's air, and in one of several."""
ASLEEP, AWAKE = 350.0 * FEET_A_MINUTE, 425.0 * FEET_A_MINUTE
"""m/s through a supply grille's free area for noise criterion NC 20-25, and NC 25-30."""
RETURN_ASLEEP, RETURN_AWAKE = 300.0 * FEET_A_MINUTE, 500.0 * FEET_A_MINUTE
"""m/s at the face of a return grille."""
STAYED_IN = ("saloon", "galley", "pilothouse")
LEAST_AIRFLOW = 0.9
"""Of the rated airflow; capacity and drying fall with it. Common practice, no source."""
OFF_BALANCE = 0.15
"""Of an outlet's share. Common practice, no source."""


def _worst(pairs: Iterable[tuple[float, float]]) -> Measured | None:
    """The pair of value and upper limit that is nearest to its limit, or furthest over it."""
    found = list(pairs)
    if not found:
        return None
    return at_most(*max(found, key=lambda pair: pair[0] / pair[1] if pair[1] > 0.0 else float("inf")))


@rule(
    "duct-velocity",
    "How fast is the air in the fastest duct at full fan?",
    "velocity",
    "trade practice of dwellings: 700 to 900 ft/min in trunks, 500 to 700 ft/min in branches",
    "A larger duct, a second one beside it, or less air to that outlet.",
)
def duct_velocity(evidence: Evidence) -> Measured | None:
    runs = duct_runs(evidence.specification)
    return _worst((run.velocity, TRUNK if run.alone else BRANCH) for run in runs)


def _grilles(evidence: Evidence, uses: tuple[str, ...], limit: float) -> Measured | None:
    cabins = evidence.specification.cabins
    runs = duct_runs(evidence.specification)
    return _worst((run.grille_velocity, limit) for run in runs if cabins[run.cabin].use in uses)


@rule(
    "grille-velocity-asleep",
    "How fast does the air leave the fastest grille of a sleeping cabin at full fan?",
    "velocity",
    "acoustics handbook table, air through the free area of supply grilles: 300 to 350 ft/min for NC 20-25",
    "A larger grille or one with more free area, two outlets instead of one, or a lower fan speed for the night.",
)
def grille_velocity_asleep(evidence: Evidence) -> Measured | None:
    return _grilles(evidence, ("sleeping",), ASLEEP)


@rule(
    "grille-velocity-awake",
    "How fast does the air leave the fastest grille of a saloon, galley or pilothouse at full fan?",
    "velocity",
    "acoustics handbook table, air through the free area of supply grilles: 350 to 425 ft/min for NC 25-30",
    "A larger grille or one with more free area, or two outlets instead of one.",
)
def grille_velocity_awake(evidence: Evidence) -> Measured | None:
    return _grilles(evidence, STAYED_IN, AWAKE)


@rule(
    "return-grille-velocity",
    "How fast is the air at the face of the fastest return grille at full fan?",
    "velocity",
    "trade practice of dwellings: at most 500 ft/min; 300 ft/min where people sleep is from memory",
    "A larger return grille, or a second one. Draw air from the cabin only, never from a bilge or an engine space.",
)
def return_grille_velocity(evidence: Evidence) -> Measured | None:
    cabins = evidence.specification.cabins
    return _worst(
        (air.return_velocity, RETURN_ASLEEP if cabins[air.cabin].use == "sleeping" else RETURN_AWAKE)
        for air in evidence.handlers_air
        if air.runs
    )


@rule(
    "duct-static-pressure",
    "Does every fan have the pressure that its ducts and grilles take at its rated airflow?",
    "pressure",
    "the part's own rating",
    "Larger or shorter ducts, fewer bends, flexible duct pulled straight, larger grilles, or a stronger fan.",
)
def duct_static_pressure(evidence: Evidence) -> Measured | None:
    return _worst((air.pressure_needed, air.spare_pressure) for air in evidence.handlers_air if air.runs)


@rule(
    "airflow-delivered",
    "How much of its rated airflow does the worst handler deliver through its ducts?",
    "share",
    PRACTICE,
    "Larger or shorter ducts, fewer bends, flexible duct pulled straight, larger grilles, or a stronger fan.",
)
def airflow_delivered(evidence: Evidence) -> Measured | None:
    shares = [air.airflow / air.rated_airflow for air in evidence.handlers_air if air.runs]
    return at_least(min(shares), LEAST_AIRFLOW, near=0.05) if shares else None


@rule(
    "branch-balance",
    "How far is the worst outlet of a handler with several from its share of the air?",
    "share",
    PRACTICE,
    "A damper in the duct that gets too much, or a larger or shorter duct where too little comes.",
)
def branch_balance(evidence: Evidence) -> Measured | None:
    off = [abs(run.off_share) for run in duct_runs(evidence.specification) if not run.alone]
    return at_most(max(off), OFF_BALANCE) if off else None


@rule(
    "ducts-dry",
    "Does the coldest duct stay over the night's highest outdoor dew point, as in a locker that breathes outdoor air?",
    "temperature",
    "definition of the dew point; that a locker is as warm as the night's mean and as damp as its dampest hour is ours",
    "Thicker closed-cell insulation with sealed joints, ducts led through cooled cabins, or a warmer coil.",
)
def ducts_dry(evidence: Evidence) -> Measured | None:
    """The skin of the duct that is nearest to sweating."""
    specification, weather = evidence.specification, evidence.simulation.weather
    start = specification.brief.night_start
    night = (weather.time >= start) & (weather.time <= start + specification.brief.hold)
    dew_point = float(np.max(weather.dew_point[night]))
    surroundings = max(float(np.mean(weather.dry_bulb[night])), dew_point)
    skins = duct_skins(specification, surroundings, dew_point)
    if not skins:
        return None
    return at_least(min(skin.skin_temperature for skin in skins), dew_point, near=0.04)
