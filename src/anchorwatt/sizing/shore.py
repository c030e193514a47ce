"""The shore service: its legs, what it leaves for the charger, and how long it takes to refill the bank."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from anchorwatt.design.specification import Converter, Doing, PlannedDay, Shore, Specification
from anchorwatt.physics.split_phase import apparent_power, current_under_sag, leg_current, neutral_current
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.forcing import DAY, holds, period_at, week_timetable
from anchorwatt.simulation.runs import Run, Simulation, copy_state
from anchorwatt.sizing.converters import taken_by

SAG = 0.10
"""Share of the voltage that a crowded marina's service loses. Common practice, no source."""

ACROSS = 1.5
"""Times a leg's voltage above which a transformer's primary side lies across both legs."""

NEARLY = 0.99
"""Share of a limit at which the charger counts as held by it."""


@dataclass(frozen=True)
class ShorePeriod:
    """One period of the plan, were the boat on shore power in it."""

    start: float  # s after midnight
    end: float  # s after midnight
    loads: float  # W, mean of plant and loads with the transformer's losses
    highest: float  # W, the highest minute of those
    left: float  # W, mean, that the limit leaves for the charger


@dataclass(frozen=True)
class LegCurrents:
    """The highest step of a day on shore, by leg."""

    at: float  # s after the midnight before the night
    power: float  # W, charger and all
    legs: tuple[float, ...]  # A
    neutral: float  # A
    sagged: tuple[float, ...]  # A when the voltage sags and the loads hold their power
    placed: tuple[tuple[str, float, int], ...]  # what was laid on which leg: name, W, leg from 0, -1 = across both


@dataclass(frozen=True)
class ShoreFigures:
    name: str
    voltage: float  # V, a leg
    legs: int
    frequency: float  # Hz
    rated_current: float  # A, of each leg
    current_limit: float  # A, of each leg, as set
    continuous_current: float  # A, of each leg, for hours
    apparent_power: float  # VA of the rating
    continuous_power: float  # W for hours within the limit
    highest: LegCurrents
    periods: tuple[ShorePeriod, ...]
    refill_time: float  # s on shore by the plan from the reserve, nan = not within a day, or no charger
    held_by: str  # what holds the refill back most of its time: "the charger", "the shore limit" or "the bank"
    sag: float  # share of the voltage
    sagged_voltage: float  # V
    gives_way_below: float  # V, the charger
    gives_way: bool  # in that sag
    refill_time_in_sag: float  # s, nan = not within a day, or the charger gives way


def shore_figures(specification: Specification, simulation: Simulation) -> ShoreFigures | None:
    """The shore service with a day on it; None where the design has none."""
    shore = specification.shore
    if shore is None:
        return None
    run = day_ashore(specification, simulation)
    charger = _charger_takes(specification.charger, run)
    loads = run.series.shore[0] - charger
    sagged = shore.voltage * (1.0 - SAG)
    gives_way = sagged < shore.lowest_voltage
    refill_in_sag = math.nan
    if specification.charger is not None and not gives_way:
        refill_in_sag = float(day_ashore(specification, simulation, SAG).summary.full_at[0])
    return ShoreFigures(
        name=shore.name,
        voltage=shore.voltage,
        legs=shore.legs,
        frequency=shore.frequency,
        rated_current=shore.current,
        current_limit=shore.current_limit,
        continuous_current=shore.continuous_power / (shore.voltage * shore.legs),
        apparent_power=apparent_power(shore.voltage, shore.legs, shore.current),
        continuous_power=shore.continuous_power,
        highest=_highest(specification, shore, run, charger),
        periods=_periods(specification, shore, run, loads),
        refill_time=float(run.summary.full_at[0]),
        held_by=_held_by(specification, shore, run),
        sag=SAG,
        sagged_voltage=sagged,
        gives_way_below=shore.lowest_voltage,
        gives_way=gives_way,
        refill_time_in_sag=refill_in_sag,
    )


def day_ashore(specification: Specification, simulation: Simulation, sag: float = 0.0) -> Run:
    """Twenty-four hours on shore power by the plan, from where the night begins, the bank at its reserve."""
    start, state = simulation.night_start, copy_state(simulation.before.end)
    state.charge[:] = specification.brief.reserve
    plan = week_timetable(specification, start, (PlannedDay(False, 0.0, 0.0),))
    ashore = tuple(
        (begins, replace(stretch, period=replace(stretch.period, doing=Doing.ON_SHORE_POWER)))
        for begins, stretch in plan
    )
    boat = simulation.boat
    if sag > 0.0:
        boat = boat._replace(power=boat.power._replace(shore_power=boat.power.shore_power * (1.0 - sag)))
    return simulation.run("ashore", start, start + DAY, state, held=ashore, boat=boat)


def _charger_takes(charger: Converter | None, run: Run) -> Floats:
    """W that the charger takes from shore, step by step."""
    given = run.series.charger[0]
    if charger is None:
        return np.zeros_like(given)
    return np.array([taken_by(charger, float(power)) if power > 0.0 else 0.0 for power in given])


def _periods(specification: Specification, shore: Shore, run: Run, loads: Floats) -> tuple[ShorePeriod, ...]:
    clock = (run.clock - 0.5 * run.step) % DAY
    rows = []
    for period in specification.plan:
        there = holds(period, clock)
        if there.any():
            some = loads[there]
            left = np.maximum(0.0, shore.continuous_power - some)
            rows.append(
                ShorePeriod(period.start, period.end, float(some.mean()), float(some.max()), float(left.mean()))
            )
    return tuple(rows)


def _highest(specification: Specification, shore: Shore, run: Run, charger: Floats) -> LegCurrents:
    step = int(np.argmax(run.series.shore[0]))
    at = float(run.clock[step])
    items = _items(specification, shore, run, step, float(charger[step]))
    placed = placed_on_legs(items, shore.legs)
    to_neutral = [sum(power for _, power, leg in placed if leg == number) for number in range(shore.legs)]
    across = sum(power for _, power, leg in placed if leg < 0)
    legs = tuple(leg_current(power, across, shore.voltage) for power in to_neutral)
    neutral = legs[0] if shore.legs == 1 else neutral_current(to_neutral[0], to_neutral[1], shore.voltage)
    return LegCurrents(
        at=at,
        power=float(run.series.shore[0, step]),
        legs=legs,
        neutral=neutral,
        sagged=tuple(current_under_sag(current * shore.voltage, shore.voltage, SAG) for current in legs),
        placed=placed,
    )


def _items(
    specification: Specification, shore: Shore, run: Run, step: int, charger: float
) -> list[tuple[str, float, bool]]:
    """What hangs on the service at a step: name, W, and whether it lies across both legs."""
    rest = float(run.series.shore[0, step]) - charger
    transformer = specification.transformer
    if transformer is not None:
        across = shore.legs == 2 and transformer.primary_voltage > ACROSS * shore.voltage
        items = [(transformer.name, rest, across)]
    else:
        period = period_at(specification, float(run.clock[step]) - 0.5 * run.step)
        items = [
            (load.name, load.power * share, False)
            for load, share in zip(specification.loads, period.running, strict=True)
            if load.alternating
        ]
        items.append((specification.plant.name, max(0.0, rest - sum(power for _, power, _ in items)), False))
    if charger > 0.0 and specification.charger is not None:
        items.append((specification.charger.name, charger, False))
    return [(name, power, across) for name, power, across in items if power > 0.0]


def placed_on_legs(items: list[tuple[str, float, bool]], legs: int) -> tuple[tuple[str, float, int], ...]:
    """Loads laid on legs as an electrician would balance them: the largest first, each on the lighter leg."""
    sums = [0.0] * legs
    placed = []
    for name, power, across in sorted(items, key=lambda item: -item[1]):
        if across and legs == 2:
            placed.append((name, power, -1))
            continue
        leg = int(np.argmin(sums))
        sums[leg] += power
        placed.append((name, power, leg))
    return tuple(placed)


def _held_by(specification: Specification, shore: Shore, run: Run) -> str:
    charger = specification.charger
    if charger is None:
        return ""
    full = float(run.summary.full_at[0])
    steps = run.series.charger.shape[1] if math.isnan(full) else max(1, math.ceil(full / run.step))
    at_rating = run.series.charger[0, :steps] >= NEARLY * charger.rated_power
    at_limit = (run.series.shore[0, :steps] >= NEARLY * shore.continuous_power) & ~at_rating
    counts = {
        "the charger": int(np.count_nonzero(at_rating)),
        "the shore limit": int(np.count_nonzero(at_limit)),
        "the bank": steps - int(np.count_nonzero(at_rating | at_limit)),
    }
    return max(counts, key=lambda cause: counts[cause])
