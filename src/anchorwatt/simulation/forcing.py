"""The plan of the day laid over the weather: what drives the boat through a run."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from anchorwatt.design.specification import Doing, Engine, Period, PlannedDay, Specification
from anchorwatt.physics.engine import combustion_air
from anchorwatt.physics.moist_air import latent_heat
from anchorwatt.physics.propeller import engine_speed_for
from anchorwatt.physics.ventilation import leakage_in_wind, opening_flow
from anchorwatt.simulation.arrays import AT_ANCHOR, MOTORING, ON_SHORE, Floats, Forcing
from anchorwatt.simulation.outside import OutsideSeries
from anchorwatt.simulation.plants import CABIN_AIR_DENSITY

DAY = 86_400.0
UNCOOLED_DIFFERENCE = 2.0
"""K between a cabin that is neither cooled nor heated and the outdoors, for the draught through its openings. From
practice, no source."""

OPENING_HEIGHT = 0.3
"""m between where air comes in and goes out through a hatch left ajar. From practice, no source."""

CODES = {Doing.AT_ANCHOR: AT_ANCHOR, Doing.MOTORING: MOTORING, Doing.ON_SHORE_POWER: ON_SHORE}


@dataclass(frozen=True)
class Stretch:
    """One condition of the boat, held or followed through a run."""

    period: Period
    charging: bool = False  # engines run at their charging speed though the boat lies at anchor
    engine_speeds: tuple[float, ...] | None = None  # rad/s of each engine, whatever the plan says; 0 = stopped


Timetable = tuple[tuple[float, Stretch], ...]
"""Stretches with the s after the midnight before the night from which each holds, until the next."""


def holds(period: Period, clock: Floats) -> NDArray[np.bool_]:
    """Whether a period of the plan holds at times of day, s after midnight."""
    if period.start < period.end:
        return (clock >= period.start) & (clock < period.end)
    return (clock >= period.start) | (clock < period.end)


def period_at(specification: Specification, clock: float) -> Period:
    """The period of the plan that holds at a time of day, s after midnight."""
    at = np.array([clock % DAY])
    for period in specification.plan:
        if holds(period, at)[0]:
            return period
    raise ValueError(f"the plan has a hole at {clock} s")  # reading a design has made sure of it


def engine_speeds(specification: Specification, stretch: Stretch) -> list[float]:
    """rad/s of each engine through a stretch; 0 = stopped."""
    if stretch.engine_speeds is not None:
        return list(stretch.engine_speeds)
    return [engine_speed(engine, stretch) for engine in specification.engines]


def engine_speed(engine: Engine, stretch: Stretch) -> float:
    """rad/s of an engine through a stretch by the plan; 0 = stopped."""
    if stretch.period.doing is Doing.MOTORING:
        speed = engine_speed_for(stretch.period.boat_speed, engine.boat_speed, engine.rated_speed)
        return max(engine.idle_speed, speed)
    return engine.charging_speed if stretch.charging else 0.0


def outdoor_air(
    specification: Specification, stretch: Stretch, wind: float, outdoor: float, speeds: list[float], shut: bool
) -> list[tuple[float, float]]:
    """Outdoor dry air into each cabin through a stretch, in a wind m/s at an outdoor temperature °C.

    Two flows, kg/s: what heat and moisture count, where an exchanger has taken its share back, and all of it.
    `speeds` are those of the engines, rad/s; `shut` keeps hatches shut that the plan leaves open.
    """
    period = stretch.period
    people = [0.0] * len(specification.cabins)
    for group in period.occupants:
        people[group.cabin] += group.count
    flows = []
    for c, cabin in enumerate(specification.cabins):
        inside = [t for t in (period.set_points[c], period.warm_points[c]) if not math.isnan(t)]
        difference = abs(outdoor - inside[0]) if inside else UNCOOLED_DIFFERENCE
        flow = leakage_in_wind(cabin.leakage, wind, difference) * cabin.volume
        if period.openings[c] > 0.0 and not shut:
            flow += opening_flow(period.openings[c], wind, difference, OPENING_HEIGHT)
        for engine, speed in zip(specification.engines, speeds, strict=True):
            if engine.cabin == c and speed > 0.0:
                flow += engine.blower + combustion_air(speed, engine.displacement, engine.volumetric_efficiency)
        fresh = cabin.fresh_air + cabin.fresh_air_per_person * people[c]
        felt = flow + (1.0 - cabin.fresh_air_recovery) * fresh
        flows.append((felt * CABIN_AIR_DENSITY, (flow + fresh) * CABIN_AIR_DENSITY))
    return flows


def forcing(
    specification: Specification,
    outside: OutsideSeries,
    start: float,
    end: float,
    held: Stretch | Timetable | None = None,
    set_points: tuple[float, ...] | None = None,
    warm_points: tuple[float, ...] | None = None,
) -> Forcing:
    """What drives the boat from `start` to `end`, s after the midnight before the night.

    `held` keeps one condition through the run, or follows a timetable, instead of following the plan; `set_points`
    and `warm_points` (°C a cabin) replace the plan's, and then hatches stay shut.
    """
    weather = outside.weather
    step = weather.step
    first = round((start - weather.time[0]) / step)
    last = round((end - weather.time[0]) / step)
    if first < 0 or last >= weather.time.size:
        raise ValueError("the run leaves the weather window")
    steps = last - first
    at, through = slice(first, last + 1), slice(first, last)
    cabins, loads = specification.cabins, specification.loads
    if isinstance(held, Stretch):
        stretches, index = [held], np.zeros(steps, dtype=np.int64)
    elif held is not None:
        stretches = [stretch for _, stretch in held]
        middles = weather.time[through] + 0.5 * step
        index = np.searchsorted([begins for begins, _ in held], middles, side="right").astype(np.int64) - 1
        if index[0] < 0:
            raise ValueError("the timetable begins after the run")
    else:
        stretches = [Stretch(period) for period in specification.plan]
        middles = (weather.time[through] + 0.5 * step) % DAY
        index = np.full(steps, -1, dtype=np.int64)
        for p, period in enumerate(specification.plan):
            index[holds(period, middles)] = p

    def by_period(values: list[list[float]]) -> Floats:
        """(periods, rows) spread over the steps as (1, rows, T)."""
        table = np.array(values, dtype=float).reshape(len(stretches), -1)
        return np.ascontiguousarray(table[index].T)[None]

    air, radiant, moisture = [], [], []
    sensible, latent, shift, points, warm, ac, dc, speeds = [], [], [], [], [], [], [], []
    for stretch in stretches:
        period = stretch.period
        a, r, w = [0.0] * len(cabins), [0.0] * len(cabins), [0.0] * len(cabins)
        s, l_, f = [0.0] * len(cabins), [0.0] * len(cabins), [0.0] * len(cabins)
        alternating = direct = 0.0
        for load, share in zip(loads, period.running, strict=True):
            power = load.power * share
            if load.alternating:
                alternating += power
            else:
                direct += power
            if load.cabin >= 0:
                heat = power * load.sensible_share
                a[load.cabin] += heat * (1.0 - load.radiant_share)
                r[load.cabin] += heat * load.radiant_share
                w[load.cabin] += power * load.latent_share / latent_heat(25.0)
        for group in period.occupants:
            s[group.cabin] += group.count * group.person.sensible
            l_[group.cabin] += group.count * group.person.latent
            f[group.cabin] += group.count * group.person.shift
        air.append(a)
        radiant.append(r)
        moisture.append(w)
        sensible.append(s)
        latent.append(l_)
        shift.append(f)
        points.append(list(set_points or period.set_points))
        warm.append(list(warm_points or period.warm_points))
        ac.append([alternating])
        dc.append([direct])
        speeds.append(engine_speeds(specification, stretch))
    doing = np.array([CODES[s.period.doing] for s in stretches], dtype=np.int64)[index]
    hour = outside.hour[through]
    # One row of films and flows for each hour of each stretch.
    changes = np.r_[True, (hour[1:] != hour[:-1]) | (index[1:] != index[:-1])]
    row = np.cumsum(changes) - 1
    hours, indices = hour[changes], index[changes]
    shut = set_points is not None
    flows = [
        outdoor_air(specification, stretches[i], float(outside.wind[h]), float(outside.dry_bulb[h]), speeds[i], shut)
        for h, i in zip(hours, indices, strict=True)
    ]
    return Forcing(
        dry_bulb=weather.dry_bulb[None, at].copy(),
        humidity_ratio=weather.humidity_ratio[None, at].copy(),
        sea=weather.sea_temperature[None, at].copy(),
        pressure=np.array([float(np.mean(weather.pressure[at]))]),
        far_temperature=outside.far_temperature[None, :, at].copy(),
        film_row=row.astype(np.int64),
        far_film=outside.far_film[None, hours].copy(),
        outdoor_flow=np.array([[[felt for felt, _ in cabins] for cabins in flows]]),
        renewed_flow=np.array([[[whole for _, whole in cabins] for cabins in flows]]),
        solar_gain=outside.solar_gain[None, :, at].copy(),
        panel_irradiance=outside.panel_irradiance[None, at].copy(),
        air_gain=by_period(air),
        radiant_gain=by_period(radiant),
        moisture_gain=by_period(moisture),
        people_sensible=by_period(sensible),
        people_latent=by_period(latent),
        people_shift=by_period(shift),
        set_point=by_period(points),
        warm_point=by_period(warm),
        ac_load=by_period(ac)[:, 0],
        dc_load=by_period(dc)[:, 0],
        doing=doing,
        engine_speed=by_period(speeds),
        propelling=(doing == MOTORING).astype(np.int64),
    )


def recharge_stretch(specification: Specification, dawn: float) -> Stretch | None:
    """How the night is put back: the plan's next motoring after dawn, else the engines at anchor.

    None when there is no alternator aboard.
    """
    if not any(engine.alternators for engine in specification.engines):
        return None
    clock = dawn % DAY
    motoring = [p for p in specification.plan if p.doing is Doing.MOTORING]
    if motoring:
        return Stretch(min(motoring, key=lambda p: (p.start - clock) % DAY))
    return Stretch(replace(period_at(specification, clock), doing=Doing.AT_ANCHOR), charging=True)


def design_set_points(specification: Specification) -> tuple[float, ...]:
    """The set point at which each cabin is cooled at any time of the plan (the lowest), nan = never."""
    result = []
    for c in range(len(specification.cabins)):
        points = [p.set_points[c] for p in specification.plan if not math.isnan(p.set_points[c])]
        result.append(min(points) if points else math.nan)
    return tuple(result)


def design_warm_points(specification: Specification) -> tuple[float, ...]:
    """The set point at which each cabin is heated at any time of the plan (the highest), nan = never."""
    result = []
    for c in range(len(specification.cabins)):
        points = [p.warm_points[c] for p in specification.plan if not math.isnan(p.warm_points[c])]
        result.append(max(points) if points else math.nan)
    return tuple(result)


def week_timetable(specification: Specification, night: float, days: tuple[PlannedDay, ...]) -> Timetable:
    """The plan of the day repeated over planned days, the first of which begins with the night at `night` s."""
    rows: list[tuple[float, Stretch]] = []
    for d, day in enumerate(days):
        begins = night + d * DAY
        marks = [period.start for period in specification.plan]
        if day.charging_time > 0.0:
            marks += [day.charging_start, day.charging_start + day.charging_time]
        moments = sorted({begins, *(begins + (mark - night) % DAY for mark in marks)})
        for moment in moments:
            period = period_at(specification, moment)
            if period.doing is Doing.MOTORING and not day.passage:
                period = replace(period, doing=Doing.AT_ANCHOR)
            since = (moment - day.charging_start) % DAY
            rows.append((moment, Stretch(period, charging=since < day.charging_time)))
    return tuple(rows)
