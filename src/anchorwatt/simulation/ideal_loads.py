"""Hourly heating and cooling that keep an enclosure, or every cabin of a boat, within a band of temperature.

The plant is without limit and takes or gives sensible heat to the air alone; the rest is the same kernel that runs
a boat's night.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from anchorwatt.climate import Weather
from anchorwatt.climate.sea import sea_temperature
from anchorwatt.climate.year import YEAR_STEP, weather_year, year_at
from anchorwatt.design import Design, specify
from anchorwatt.design.specification import Specification
from anchorwatt.errors import BadWeather, OutOfRange
from anchorwatt.simulation.arrays import IDEAL, Boat, Floats, Forcing, Series, State, Summary
from anchorwatt.simulation.enclosure import Enclosure, Schedule, by_hour
from anchorwatt.simulation.enclosure_arrays import (
    Year,
    air_density,
    enclosure_boat,
    no_plant,
    no_units,
    walls_of,
)
from anchorwatt.simulation.forcing import design_set_points, design_warm_points, forcing
from anchorwatt.simulation.network import fabric_arrays
from anchorwatt.simulation.outside import HOUR, outside_series
from anchorwatt.simulation.power import power_arrays
from anchorwatt.simulation.runs import CAUSES, empty_series, empty_summary, run_batch, settings

MONTH_LENGTHS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)

FIRST_TEMPERATURE = 20.0
"""°C of everything where the lead-in begins."""


class Peak(NamedTuple):
    """The hour of the greatest load."""

    power: float  # W, mean of the hour
    hour: int  # of the run, 1 = the first; the hour that ends then
    month: int
    day: int
    clock: int  # 1 to 24, local standard time at which the hour ends


@dataclass(frozen=True, eq=False)
class IdealLoads:
    """What `ideal_loads` found, by enclosure or cabin (first axis) and by the hour (second axis).

    Attributes
    ----------
    names : of the enclosures or cabins, in the order of the first axis
    weather : the weather that it was run in; the hours begin at its time 0
    heating : W of sensible heat given, mean of the hour, 0 or more
    cooling : W of sensible heat taken, mean of the hour, 0 or more
    latent : W taken as moisture where a room that is cooled would grow damper than the ideal plant's 55 %
    temperature : °C of the air, mean of the hour
    """

    names: tuple[str, ...]
    weather: Weather
    heating: Floats
    cooling: Floats
    latent: Floats
    temperature: Floats

    @property
    def heating_energy(self) -> Floats:
        """J given to each enclosure in the run; over 3.6e6, kWh."""
        return np.asarray(self.heating.sum(axis=1) * HOUR)

    @property
    def cooling_energy(self) -> Floats:
        """J of sensible heat taken from each enclosure in the run."""
        return np.asarray(self.cooling.sum(axis=1) * HOUR)

    @property
    def latent_energy(self) -> Floats:
        """J taken from each enclosure as moisture."""
        return np.asarray(self.latent.sum(axis=1) * HOUR)

    @property
    def peak_heating(self) -> tuple[Peak, ...]:
        """The hour of the most heating of each enclosure."""
        return tuple(self._peak(load) for load in self.heating)

    @property
    def peak_cooling(self) -> tuple[Peak, ...]:
        """The hour of the most sensible cooling of each enclosure."""
        return tuple(self._peak(load) for load in self.cooling)

    @property
    def lowest_temperature(self) -> Floats:
        """°C of each enclosure's coldest hour."""
        return np.asarray(self.temperature.min(axis=1))

    @property
    def highest_temperature(self) -> Floats:
        """°C of each enclosure's warmest hour."""
        return np.asarray(self.temperature.max(axis=1))

    @property
    def mean_temperature(self) -> Floats:
        """°C of each enclosure over the run."""
        return np.asarray(self.temperature.mean(axis=1))

    def date(self, hour: int) -> tuple[int, int, int]:
        """Month, day and hour of the clock (1 to 24) at which hour `hour` of the run ends; 1 = the first."""
        days = len(self.heating[0]) // 24
        lengths = (31, 29, *MONTH_LENGTHS[2:]) if days == 366 else MONTH_LENGTHS
        day = sum(lengths[: self.weather.month - 1]) + self.weather.day - 1 + (hour - 1) // 24
        day %= sum(lengths)
        month = 0
        while day >= lengths[month]:
            day -= lengths[month]
            month += 1
        return month + 1, day + 1, (hour - 1) % 24 + 1

    def _peak(self, load: Floats) -> Peak:
        hour = int(np.argmax(load))
        return Peak(float(load[hour]), hour + 1, *self.date(hour + 1))


def ideal_loads(
    subject: Enclosure | Sequence[Enclosure] | Design | Specification,
    weather: Weather | str | Path | None = None,
    *,
    heating: Schedule | None = None,
    cooling: Schedule | None = None,
    step: float = YEAR_STEP,
) -> IdealLoads:
    """Sensible heating and cooling, hour by hour, that keep a described space within a band of temperature.

    Parameters
    ----------
    subject : an `Enclosure`; several that touch each other; or a boat, all of its cabins
    weather : a file (EPW, TMY3, TMY2, or ``pvlib:NAME``) whose calendar year is run, or a `Weather` (from
        `weather_year`, to read a file once for many runs), which is run from its time 0 to its end, what lies before
        serving as lead-in; left out, the weather file that a boat's place names
    heating : °C under which no space falls, one figure or 24 (from midnight, local standard time; nan = not in that
        hour), in place of each enclosure's own, or of the highest at which a cabin is ever heated by the boat's plan
    cooling : °C over which no space rises, the same way; of a boat, in place of the lowest at which a cabin is ever
        cooled by its plan. A boat takes one figure, for the cabins that its plan ever cools or heats
    step : s of the kernel's steps, a whole part of an hour; a `Weather` brings its own

    Returns
    -------
    `IdealLoads`. A space with neither set point floats freely.

    Raises
    ------
    OutOfRange
        A description that cannot be (a window larger than its face, no faces, a layer without thickness, set points
        that cross), or a space that grows hotter or colder than the equations hold for.
    BadWeather
        The weather is missing, damaged or not a whole year.
    """
    if isinstance(subject, Design):
        subject = specify(subject)
    if isinstance(subject, Specification):
        return of_boat(subject, weather, heating, cooling, step)
    enclosures = (subject,) if isinstance(subject, Enclosure) else tuple(subject)
    if not enclosures:
        raise OutOfRange("ideal loads are those of at least one enclosure; found", 0)
    if weather is None:
        raise BadWeather("weather: found none; allowed: a weather file, or a Weather")
    table = weather if isinstance(weather, Weather) else weather_year(weather, hourly(step))
    if heating is not None:
        enclosures = tuple(replace(enclosure, heating=heating) for enclosure in enclosures)
    if cooling is not None:
        enclosures = tuple(replace(enclosure, cooling=cooling) for enclosure in enclosures)
    names = tuple(enclosure.name for enclosure in enclosures)
    walls = walls_of(enclosures)
    dry_air = air_density(table)
    boat, kept = enclosure_boat(enclosures, walls, dry_air)
    driving = Year(enclosures, walls, table).forcing(dry_air, kept)
    return made_of(names, table, run_smoothly(boat, driving, table, names))


def of_boat(
    specification: Specification,
    weather: Weather | str | Path | None,
    heating: Schedule | None,
    cooling: Schedule | None,
    step: float,
) -> IdealLoads:
    """The ideal loads of all cabins of a boat."""
    place = specification.place
    if weather is not None and not isinstance(weather, Weather):
        # Where the boat lies is then where the file's station stands.
        nowhere = math.nan
        place = replace(
            place, weather_file=str(weather), latitude=nowhere, longitude=nowhere, hours_east=nowhere, design_day=None
        )
    table = weather if isinstance(weather, Weather) else year_at(place, hourly(step))
    cold, warm = design_set_points(specification), design_warm_points(specification)
    # A compartment that the plan neither cools nor heats, such as an engine room, is left to float.
    held = [not (math.isnan(a) and math.isnan(b)) for a, b in zip(cold, warm, strict=True)]
    if cooling is not None:
        point = one_figure("cooling", cooling)
        cold = tuple(point if each else math.nan for each in held)
    if heating is not None:
        point = one_figure("heating", heating)
        warm = tuple(point if each else math.nan for each in held)
    for cabin, low, high in zip(specification.cabins, warm, cold, strict=True):
        if low > high:
            raise OutOfRange(f'cabin "{cabin.name}": heated to {low:g} °C, and at once cooled to °C; found', high)
    if np.isnan(table.sea_temperature).any():
        table = replace(table, sea_temperature=sea_of(specification, table))
    outside = outside_series(specification, table)
    driving = forcing(specification, outside, float(table.time[0]), float(table.time[-1]), None, cold, warm)
    boat = Boat(fabric_arrays(specification), no_plant(), no_plant(), no_units(), power_arrays(specification))
    names = tuple(cabin.name for cabin in specification.cabins)
    return made_of(names, table, run_smoothly(boat, driving, table, names))


def sea_of(specification: Specification, table: Weather) -> Floats:
    """The sea at the boat's place in a year that was made without one."""
    date = datetime.date(table.year, table.month, table.day)
    return sea_temperature(specification.place.sea_temperatures, date, table.time)


def one_figure(what: str, schedule: Schedule) -> float:
    """A set point that holds at all hours."""
    figures = set(by_hour(what, schedule))
    if len(figures) != 1:
        raise OutOfRange(f"{what}: a boat's cabins take one set point for all hours; found", len(figures))
    return figures.pop()


def hourly(step: float) -> float:
    """The step, a whole part of an hour."""
    if not (0.0 < step <= HOUR and math.isclose(HOUR / step, round(HOUR / step), rel_tol=1e-9)):
        raise OutOfRange("a step is a whole part of an hour; found s", step)
    return step


LARGE_STEP = 0.05
"""K a step, from which reaching a set point is followed anew with the air held there through the step."""


@dataclass(frozen=True, eq=False)
class Held:
    """A run of spaces held between their set points."""

    driving: Forcing
    summary: Summary
    series: Series
    heating: Floats  # (C, T) W, mean of each step
    cooling: Floats  # (C, T) W


def first_state(boat: Boat, driving: Forcing) -> State:
    """Everything at one temperature, with outdoor moisture."""
    cabins, nodes = boat.fabric.air_mass.shape[1], boat.fabric.node_capacity.shape[1]
    engines, machines = boat.power.engine.shape[1], boat.power.alternator_engine.size
    return State(
        node=np.full((1, nodes), FIRST_TEMPERATURE),
        air=np.full((1, cabins), FIRST_TEMPERATURE),
        furnishing=np.full((1, cabins), FIRST_TEMPERATURE),
        humidity=np.full((1, cabins), float(driving.humidity_ratio[0, 0])),
        charge=np.full(1, 0.5),
        connected=np.ones(1, dtype=np.int64),
        trip=np.zeros(1),
        overload=np.zeros(1),
        cells=np.full(1, FIRST_TEMPERATURE),
        alternator=np.full((1, machines, 2), FIRST_TEMPERATURE),
        unit_on=np.zeros((1, 0), dtype=np.int64),
        unit_lately=np.zeros((1, 0)),
        unit_thaw=np.zeros((1, 0)),
        block=np.full((1, engines), FIRST_TEMPERATURE),
    )


def run_once(boat: Boat, driving: Forcing, step: float, names: Sequence[str]) -> tuple[Summary, Series]:
    """One run of the kernel with the plant without limit."""
    cabins, machines = boat.fabric.air_mass.shape[1], boat.power.alternator_engine.size
    summary = empty_summary(1, cabins)
    series = empty_series(1, cabins, machines, driving.ac_load.shape[1])
    held = np.zeros((1, machines, CAUSES))
    try:
        run_batch(
            boat, driving, settings(1), first_state(boat, driving), step, IDEAL, False, 0.0, 1.0, summary, series, held
        )
    except OutOfRange as error:
        raise OutOfRange(
            f"{', '.join(names)}: the run left what its equations hold for ({error}). A space grows too hot, too cold "
            "or too damp: look at its gains, its windows and its leakage"
        ) from error
    return summary, series


def run_smoothly(boat: Boat, driving: Forcing, table: Weather, names: Sequence[str]) -> Held:
    """Run spaces between their set points.

    The kernel's method looks ahead along the first part of a step. Where a set point is reached within a step from
    kelvins away (after a set-back) it would look past it; there the air is held at the set point from both sides
    through that one step, which makes the heat of the step right, and what the two sides give and take is netted.
    """
    cold, warm = driving.set_point[0], driving.warm_point[0]
    held_warm, held_cold = np.zeros(warm.shape, dtype=bool), np.zeros(warm.shape, dtype=bool)
    summary, series = run_once(boat, driving, table.step, names)
    for attempt in range(3):
        air = series.air[0]
        before = np.column_stack([np.full(len(air), FIRST_TEMPERATURE), air[:, :-1]])
        net = series.heating[0] - series.sensible[0]
        if attempt == 0:
            with np.errstate(invalid="ignore"):  # nan = no set point
                held_warm = reached(before, air, warm)
                held_cold = reached(-before, -air, -cold)
        else:
            # Held where it would not have stayed by itself: let go.
            wrong_warm, wrong_cold = held_warm & (net < 0.0), held_cold & (net > 0.0)
            if not (wrong_warm.any() or wrong_cold.any()):
                break
            held_warm &= ~wrong_warm
            held_cold &= ~wrong_cold
        if attempt == 0 and not (held_warm.any() or held_cold.any()):
            break
        again = driving._replace(
            set_point=np.where(held_warm, warm, cold)[None], warm_point=np.where(held_cold, cold, warm)[None]
        )
        summary, series = run_once(boat, again, table.step, names)
    series.latent[0][held_warm] = 0.0
    net = series.heating[0] - series.sensible[0]
    return Held(driving, summary, series, np.maximum(0.0, net), np.maximum(0.0, -net))


def reached(before: Floats, after: Floats, warm: Floats) -> NDArray[np.bool_]:
    """Steps in which the air comes to the heating set point from far away, from below or from above."""
    from_below = before < warm - LARGE_STEP
    from_above = (np.abs(after - warm) < 1e-6) & (before > warm + LARGE_STEP)
    return np.asarray(from_below | from_above)


def made_of(names: tuple[str, ...], table: Weather, run: Held) -> IdealLoads:
    """The hours of a run from the weather's time 0 on."""
    first, steps = round(-float(table.time[0]) / table.step), round(HOUR / table.step)

    def by_hour_mean(values: Floats) -> Floats:
        kept = values[:, first:]
        whole = kept.shape[1] // steps
        return np.asarray(kept[:, : whole * steps].reshape(len(values), whole, steps).mean(axis=2))

    air = run.series.air[0]
    before = np.column_stack([np.full(len(air), FIRST_TEMPERATURE), air[:, :-1]])
    return IdealLoads(
        names=names,
        weather=table,
        heating=by_hour_mean(run.heating),
        cooling=by_hour_mean(run.cooling),
        latent=by_hour_mean(run.series.latent[0]),
        temperature=by_hour_mean(0.5 * (before + air)),
    )
