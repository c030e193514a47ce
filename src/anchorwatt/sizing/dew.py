"""Dew and mould on the insides of the hull, bulkheads and furniture, through the night and the day after it.

Windows are not looked at: by night in a warm climate a cooled cabin's glass is warmer than its air.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.physics.condensate import margin_over_dew
from anchorwatt.physics.moist_air import relative_humidity
from anchorwatt.simulation.runs import Simulation

MOULD = 0.8
"""Relative humidity at a surface over which mould grows if it lasts (ISO 13788, mean of a month)."""


EVERY = 300.0
"""s between the moments looked at; a wall is slower than that."""


@dataclass(frozen=True)
class SurfaceDew:
    """The coldest inside surface of a cabin against its air."""

    cabin: int
    margin: float  # K over the dew point when it is least; below zero dew forms
    at: float  # s after the midnight before the night, when it is least
    surface: float  # °C then
    dew_point: float  # °C then
    wet: float  # s with dew on it
    humidity: float  # relative, at that surface, mean of the night and the day
    highest_humidity: float


def dew(specification: Specification, simulation: Simulation) -> tuple[SurfaceDew, ...]:
    """Every cabin, from the start of the night to the start of the next, looked at every `EVERY` s."""
    runs = (simulation.night, simulation.day)
    often = max(1, round(EVERY / simulation.night.step))
    at = slice(often - 1, None, often)
    clock = np.concatenate([run.clock[at] for run in runs])
    coldest = np.concatenate([run.series.coldest[0, :, at] for run in runs], axis=1)
    wetness = np.concatenate([run.series.humidity[0, :, at] for run in runs], axis=1)
    pressures = np.concatenate([np.full(run.clock[at].size, float(run.forcing.pressure[0])) for run in runs])
    step = often * simulation.night.step
    found = []
    for c in range(len(specification.cabins)):
        states = list(zip(coldest[c].tolist(), wetness[c].tolist(), pressures.tolist(), strict=True))
        margins = np.array([margin_over_dew(*state) for state in states])
        humidities = [relative_humidity(*state) for state in states]
        least = int(np.argmin(margins))
        found.append(
            SurfaceDew(
                cabin=c,
                margin=float(margins[least]),
                at=float(clock[least]),
                surface=float(coldest[c, least]),
                dew_point=float(coldest[c, least] - margins[least]),
                wet=float(np.count_nonzero(margins < 0.0)) * step,
                humidity=math.fsum(humidities) / len(humidities),
                highest_humidity=max(humidities),
            )
        )
    return tuple(found)
