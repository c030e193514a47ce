"""Water that the coils drain through a night and a day, and how to lead it away."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.physics.condensate import WATER_DENSITY, condensate, drain_flow
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.runs import Run, Simulation

COIL = 12.0
"""°C of a coil's surface; 10 K more or less changes the water by 1 %."""

DRAIN, SLOPE = 0.016, 0.02
"""m inside and fall over length of a usual drain hose. From memory of practice; codes ask for 1 % at least."""


@dataclass(frozen=True)
class Advice:
    """What to look after, and who says so."""

    text: str
    source: str


ADVICE = (
    Advice(
        "Let every drain fall all the way, by 1 % at the least and on a boat by 2 % or more as she lies at anchor, "
        "with no sag that holds water.",
        "1 %: city building code on condensate disposal, section 314.2.1; 2 %: common practice, no source",
    ),
    Advice(
        "Give the pan two outlets, fore and aft or to both sides, so that one drains whichever way the boat trims "
        "or heels; join their hoses only well below the pan.",
        "from memory of practice",
    ),
    Advice(
        "Lead the water to a sump with its own pump, or overboard above the waterline: not into the bilge, least of "
        "all one under a petrol engine or tank, and keep the outlet 0.9 m (3 ft) from any engine's or generator's "
        "exhaust.",
        "US small-craft standard on air conditioning, from memory: look at the edition in force",
    ),
    Advice(
        "Put a trap in a drain whose pan lies on the sucking side of the fan, else the fan holds the water back.",
        "common practice, no source",
    ),
    Advice(
        "Leave the pan and the hose within reach, and flush them each season: slime stops a drain long before its "
        "size does.",
        "common practice, no source",
    ),
)


@dataclass(frozen=True)
class CabinCondensate:
    """Water out of one cabin's air."""

    cabin: int
    night: float  # kg; a kilogram is a litre
    day: float  # kg from the start of the night to the start of the next
    share: float  # of the boat's night


@dataclass(frozen=True)
class Condensate:
    """Water out of the boat's air."""

    night: float  # kg; a kilogram is a litre
    day: float  # kg from the start of the night to the start of the next
    peak: float  # kg/s, mean of the wettest hour of that day
    cabins: tuple[CabinCondensate, ...]
    drain_flow: float  # kg/s that one usual drain carries

    @property
    def night_volume(self) -> float:
        """m³ in the night."""
        return self.night / WATER_DENSITY

    @property
    def day_volume(self) -> float:
        """m³ in 24 hours."""
        return self.day / WATER_DENSITY

    @property
    def drain_volume(self) -> float:
        """m³/s that one usual drain carries."""
        return self.drain_flow / WATER_DENSITY

    @property
    def peak_flow(self) -> float:
        """m³/s in the wettest hour."""
        return self.peak / WATER_DENSITY


def water(run: Run) -> Floats:
    """kg/s out of each cabin's air through each step of a run, (C, T)."""
    rate: Floats = np.maximum(run.series.latent[0], 0.0) * condensate(1.0, COIL)
    return rate


def wettest_hour(rate: Floats, step: float) -> float:
    """kg/s of the hour in which a rate by step has its highest mean."""
    hour = min(rate.size, max(1, round(3600.0 / step)))
    total = np.concatenate(([0.0], np.cumsum(rate)))
    return float(np.max(total[hour:] - total[:-hour])) / hour


def condensed(specification: Specification, simulation: Simulation) -> Condensate:
    """What the plant drains through the night and through the day that begins with it."""
    night = water(simulation.night)
    whole = np.concatenate((night, water(simulation.day)), axis=1)
    step = simulation.night.step
    by_night, by_day = night.sum(axis=1) * step, whole.sum(axis=1) * step
    total = float(by_night.sum())
    return Condensate(
        night=total,
        day=float(by_day.sum()),
        peak=wettest_hour(whole.sum(axis=0), step),
        cabins=tuple(
            CabinCondensate(c, float(by_night[c]), float(by_day[c]), float(by_night[c]) / total if total else 0.0)
            for c in range(len(specification.cabins))
        ),
        drain_flow=WATER_DENSITY * drain_flow(DRAIN, SLOPE),
    )
