"""The week as it is shown: the plan's, the planning answer, and the hours as a table."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from anchorwatt.assessment.records import Column, Table
from anchorwatt.physics.engine import DIESEL_DENSITY
from anchorwatt.simulation.arrays import Floats
from anchorwatt.sizing.week import Shortest, Week, alternator_power

HOUR = 3600.0


@dataclass(frozen=True)
class WeekAnswer:
    """The week of the design file, and the shortest engine time at anchor."""

    planned: Week
    shortest: Shortest
    hours: Table  # of the planned week, a row an hour, means of the hour; charge at its end


def hours(week: Week) -> Table:
    """A row an hour of a week, which is whole days of whole hours long."""
    run = week.run
    series, part = run.series, round(HOUR / run.step)
    running = (run.forcing.engine_speed[0] > 0.0).any(axis=0).astype(np.float64)

    def mean(values: Floats) -> Floats:
        averaged: Floats = values.reshape(-1, part).mean(axis=1)
        return averaged

    columns = (
        Column("charge_pct", "state of charge", "share", series.charge[0, part - 1 :: part]),
        Column("bank_current_A", "bank current, out positive", "current", mean(series.current[0])),
        Column("plant_power_W", "cooling plant", "power", mean(series.plant_power[0])),
        Column("inverter_power_W", "inverter output", "power", mean(series.inverter_output[0])),
        Column("dc_load_W", "DC loads", "power", mean(series.dc_load[0])),
        Column("solar_W", "solar", "power", mean(series.solar[0])),
        Column("alternators_W", "alternators", "power", mean(alternator_power(run))),
        Column("shore_W", "shore power", "power", mean(series.shore[0])),
        Column("engine_running_pct", "engine running", "share", mean(running)),
        Column("fuel_flow_L_per_h", "fuel burnt", "fuel flow", mean(series.fuel_flow[0]) / DIESEL_DENSITY),
        Column("outdoor_temperature_C", "outdoor air", "temperature", mean(run.forcing.dry_bulb[0, 1:])),
        Column("sea_temperature_C", "seawater", "temperature", mean(run.forcing.sea[0, 1:])),
    )
    return Table("week", run.clock[part - 1 :: part], columns)


@dataclass(frozen=True)
class StripColumn:
    """A stretch of the week in a strip of columns."""

    charge: float  # lowest in it
    engine: str  # "", "at anchor" or "under way"


def strip(week: Week, per_day: int) -> tuple[StripColumn, ...]:
    """The week in `per_day` columns a day."""
    run, found = week.run, []
    edges = np.linspace(0, run.clock.size, per_day * len(week.days) + 1).astype(int)
    running = (run.forcing.engine_speed[0] > 0.0).any(axis=0)
    for first, last in pairwise(edges):
        engine = ""
        if running[first:last].any():
            engine = "under way" if (run.forcing.propelling[first:last] & running[first:last]).any() else "at anchor"
        found.append(StripColumn(float(run.series.charge[0, first:last].min()), engine))
    return tuple(found)


def week_answer(planned: Week, shortest: Shortest) -> WeekAnswer:
    """Both together."""
    return WeekAnswer(planned, shortest, hours(planned))
