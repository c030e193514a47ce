"""Where each cabin's load comes from, hour by hour of the day that loads are told for."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.physics.moist_air import CP_AIR, latent_heat
from anchorwatt.physics.people import latent_from_person, sensible_from_person
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.runs import Run, Simulation

HOUR = 3600.0
DRY_CAUSES = (
    "sun through glass",
    "conduction through glass",
    "outdoor air",
    "people",
    "appliances",
    "machinery",
    "walls, decks and neighbours",
)
MOIST_CAUSES = ("moist outdoor air", "people's moisture", "appliances' moisture", "moisture from stores and neighbours")
CAUSES = DRY_CAUSES + MOIST_CAUSES

GROUPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("sun through glass", ("sun through glass",)),
    ("glass", ("conduction through glass",)),
    ("outdoor air", ("outdoor air", "moist outdoor air")),
    ("people", ("people", "people's moisture")),
    ("appliances", ("appliances", "appliances' moisture")),
    ("machinery", ("machinery",)),
    ("walls, decks", ("walls, decks and neighbours", "moisture from stores and neighbours")),
)
"""Causes taken together, dry and moist, as a table or a picture shows them."""


def grouped(causes: tuple[tuple[str, Floats], ...]) -> tuple[tuple[str, Floats], ...]:
    """Causes taken together by `GROUPS`."""
    found = dict(causes)
    return tuple((name, sum((found[cause] for cause in some), np.zeros(24))) for name, some in GROUPS)


@dataclass(frozen=True)
class CabinGains:
    """A cabin's load by cause through 24 hours from midnight; W, means of the hours."""

    cabin: int
    causes: tuple[tuple[str, Floats], ...]  # in the order of `CAUSES`; together they are the load
    sensible: Floats  # (24,)
    latent: Floats  # (24,)
    air: Floats  # (24,) °C
    humidity: Floats  # (24,) kg/kg

    @cached_property
    def groups(self) -> tuple[tuple[str, Floats], ...]:
        """The load by `GROUPS` of causes, W (24,)."""
        return grouped(self.causes)

    @cached_property
    def total(self) -> Floats:
        """W of sensible and latent load, (24,)."""
        whole: Floats = self.sensible + self.latent
        return whole

    @property
    def peak(self) -> float:
        """W in the hour of the highest load."""
        return float(self.total.max())

    @property
    def peak_hour(self) -> int:
        """The hour, counted from midnight, whose load is highest."""
        return int(np.argmax(self.total))


@dataclass(frozen=True)
class BoatGains:
    """All cabins that are ever cooled."""

    cabins: tuple[CabinGains, ...]

    @cached_property
    def causes(self) -> tuple[tuple[str, Floats], ...]:
        """The whole boat's load by cause, W (24,)."""
        zero = np.zeros(24)
        return tuple(
            (cause, sum((cabin.causes[i][1] for cabin in self.cabins), zero)) for i, cause in enumerate(CAUSES)
        )

    @cached_property
    def groups(self) -> tuple[tuple[str, Floats], ...]:
        """The whole boat's load by `GROUPS` of causes, W (24,)."""
        return grouped(self.causes)

    @cached_property
    def total(self) -> Floats:
        """W, (24,)."""
        whole: Floats = sum((cabin.total for cabin in self.cabins), np.zeros(24))
        return whole

    @property
    def peak(self) -> float:
        """W in the boat's highest hour; 0 when nothing is ever cooled."""
        return float(self.total.max())

    @property
    def peak_hour(self) -> int:
        """The hour, counted from midnight, in which the boat's load is highest."""
        return int(np.argmax(self.total))

    @property
    def sum_of_peaks(self) -> float:
        """W if every cabin had its highest hour at once."""
        return sum(cabin.peak for cabin in self.cabins)

    @property
    def diversity(self) -> float:
        """The boat's peak over the sum of its cabins' peaks; nan without a load."""
        return self.peak / self.sum_of_peaks if self.sum_of_peaks > 0.0 else math.nan


def hourly(values: Floats, step: float) -> Floats:
    """Means of the 24 hours."""
    means: Floats = values.reshape(24, round(HOUR / step)).mean(axis=1)
    return means


def _people(run: Run, c: int) -> tuple[Floats, Floats]:
    driving, air = run.forcing, run.series.air[0, c]
    rows = list(
        zip(
            driving.people_sensible[0, c].tolist(),
            driving.people_latent[0, c].tolist(),
            driving.people_shift[0, c].tolist(),
            air.tolist(),
            strict=True,
        )
    )
    return (
        np.array([sensible_from_person(*row) for row in rows]),
        np.array([latent_from_person(*row) for row in rows]),
    )


def dry_load(run: Run, c: int) -> Floats:
    """A cabin's sensible load through 24 hours, W."""
    return hourly(run.series.sensible[0, c] - run.series.heating[0, c], run.step)


def cabin_gains(simulation: Simulation, run: Run, c: int) -> CabinGains:
    """One cabin's load by cause in a run of a day with an ideal plant; what cannot be told apart is the rest.

    What engines and converters add comes mostly through bulkheads and late: it is the load less what the same day
    takes where they give off no heat.
    """
    driving, series, step = run.forcing, run.series, run.step
    air = series.air[0, c]
    outdoor, damp = driving.dry_bulb[0, 1:], driving.humidity_ratio[0, 1:]
    flow = driving.outdoor_flow[0, driving.film_row, c]
    vapour = latent_heat(float(air.mean()))
    sensible_people, latent_people = _people(run, c)
    sensible = dry_load(run, c)
    latent = hourly(series.latent[0, c], step)
    dry = [
        hourly(driving.solar_gain[0, c, 1:], step),
        hourly(simulation.boat.fabric.window_conductance[0, c] * (outdoor - air), step),
        hourly(flow * CP_AIR * (outdoor - air), step),
        hourly(sensible_people, step),
        hourly(driving.air_gain[0, c] + driving.radiant_gain[0, c], step),
        sensible - dry_load(simulation.loads_of_cold_machinery, c),
    ]
    moist = [
        hourly(flow * vapour * (damp - series.humidity[0, c]), step),
        hourly(latent_people, step),
        hourly(driving.moisture_gain[0, c] * vapour, step),
    ]
    zero = np.zeros(24)
    dry.append(sensible - sum(dry, zero))
    moist.append(latent - sum(moist, zero))
    causes = tuple(zip(CAUSES, dry + moist, strict=True))
    return CabinGains(c, causes, sensible, latent, hourly(air, step), hourly(series.humidity[0, c], step))


def boat_gains(specification: Specification, simulation: Simulation) -> BoatGains:
    """Every cabin that the plan ever cools."""
    run = simulation.loads
    cooled = [c for c in range(len(specification.cabins)) if not math.isnan(float(run.forcing.set_point[0, c, 0]))]
    return BoatGains(tuple(cabin_gains(simulation, run, c) for c in cooled))
