"""A week: how the bank fares, when and why it first fails, and the shortest engine time at anchor."""

from __future__ import annotations

import math
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np

from anchorwatt.climate import Weather
from anchorwatt.design.specification import PlannedDay, Specification
from anchorwatt.physics.engine import fuel_volume
from anchorwatt.simulation.arrays import AT_ANCHOR, MOTORING, Floats
from anchorwatt.simulation.forcing import DAY, week_timetable
from anchorwatt.simulation.runs import USUAL_CHARGING, Run, Simulation
from anchorwatt.simulation.watched import tell
from anchorwatt.units import show, show_clock

SLIDE = 0.01
"""State of charge by which the last evening may lie below the first ones while the week still keeps going. Weather
differs from day to day by more than the balance can be read to."""

SETTLED = slice(1, 4)
"""Evenings that the last is held against: the one that the week begins with is the brief's, not yet the week's."""

FINENESS = 300.0
"""s to which the shortest engine time is found."""

EVERY = 7200.0
"""s between the hours of starting that are tried."""

FIRST_DAYS = 2
"""Days of a week after which most tries that fail have failed."""

EMPTY = 0.005
"""State of charge over the bank's cut-off within which a loss of supply is put down to the cut-off."""


@dataclass(frozen=True)
class WeekDay:
    """One day of the week, from the start of its night to that of the next."""

    number: int  # 1 is the first
    passage: bool  # whether the boat moves
    start: float  # s after the midnight before the week
    charge_at_dawn: float
    charge_at_dusk: float  # when the next night begins
    lowest: float
    lowest_at: float  # s after the midnight before the week
    engine_time: float  # s with an engine on
    charging_time: float  # s of that at anchor
    fuel: float  # m3, all that the engines burn
    solar_energy: float  # J that the panels gave
    alternator_energy: float  # J
    shore_energy: float  # J
    used_energy: float  # J into inverter and DC loads
    highest_outdoor: float  # °C
    sun: float  # W/m2 on a level plane, mean of the 24 h


@dataclass(frozen=True)
class Failure:
    """When and why a week first fails."""

    at: float  # s after the midnight before the week
    day: int  # number of the day that it falls into, 1 is the first
    cause: str  # "reserve", "cut off", "inverter", "bank" or "not full"
    words: str


@dataclass(frozen=True)
class Week:
    """What a run of some days comes to."""

    days: tuple[WeekDay, ...]
    charge_at_start: float
    lowest: float
    lowest_at: float  # s after the midnight before the week
    failure: Failure | None
    run: Run

    @property
    def sustained(self) -> bool:
        """Whether it can go on like this."""
        return self.failure is None

    @property
    def evenings(self) -> tuple[float, ...]:
        """States of charge when each night begins, and when the week ends."""
        return (self.charge_at_start, *(day.charge_at_dusk for day in self.days))

    @property
    def evening_wanted(self) -> float:
        """State of charge that the last evening must find if it is to go on like this."""
        return settled(self.evenings) - SLIDE

    @property
    def engine_time(self) -> float:
        """s with an engine on, all days."""
        return math.fsum(day.engine_time for day in self.days)

    @property
    def fuel(self) -> float:
        """m3, all days."""
        return math.fsum(day.fuel for day in self.days)

    @property
    def fuel_a_day(self) -> float:
        """m3, mean of the days."""
        return self.fuel / len(self.days)

    @property
    def solar_energy(self) -> float:
        """J, all days."""
        return math.fsum(day.solar_energy for day in self.days)

    @property
    def brought_energy(self) -> float:
        """J that sun, alternators and shore brought, all days."""
        return math.fsum(day.solar_energy + day.alternator_energy + day.shore_energy for day in self.days)

    @property
    def solar_share(self) -> float:
        """The sun's share of all energy brought aboard; nan when there was none."""
        return self.solar_energy / self.brought_energy if self.brought_energy > 0.0 else math.nan


@dataclass(frozen=True)
class Shortest:
    """The shortest engine time a day at anchor that keeps the boat going, and the hour at which that is so."""

    time: float  # s a day; nan = none suffices
    start: float  # s after midnight at which the engines are then started
    usual_time: float  # s a day when they are started at the week's usual hour; nan = none suffices
    usual_start: float  # s after midnight
    tried: tuple[float, ...]  # s after midnight, every hour of starting that was tried
    longest: float  # s a day, the most that was tried at `start`
    week: Week  # with that time; with the longest where none suffices
    binds: str  # what happens with less; why none suffices; empty where no engine is needed


def alternator_power(run: Run) -> Floats:
    """W of all alternators through each step: what buses and bank took that nothing else gave."""
    series = run.series
    taken = series.inverter_input[0] + series.dc_load[0] - series.voltage[0] * series.current[0]
    power: Floats = np.maximum(0.0, taken - series.solar[0] - series.charger[0])
    return power


def week_of(specification: Specification, weather: Weather, run: Run) -> Week:
    """What a run of whole days from the start of a night comes to."""
    series, step = run.series, run.step
    steps = round(DAY / step)
    dawn = round(specification.brief.hold / step)
    charge, clock = series.charge[0], run.clock
    running = (run.forcing.engine_speed[0] > 0.0).any(axis=0)
    at_anchor = run.forcing.doing == AT_ANCHOR
    generated = alternator_power(run)
    level = np.interp(clock, weather.time, weather.global_horizontal)
    used = series.inverter_input[0] + series.dc_load[0]
    days = []
    for number in range(charge.size // steps):
        part = slice(number * steps, (number + 1) * steps)
        least = int(np.argmin(charge[part]))
        days.append(
            WeekDay(
                number=number + 1,
                passage=bool((run.forcing.doing[part] == MOTORING).any()),
                start=run.start + number * DAY,
                charge_at_dawn=float(charge[part][dawn - 1]),
                charge_at_dusk=float(charge[part][-1]),
                lowest=float(charge[part][least]),
                lowest_at=float(clock[part][least]),
                engine_time=step * float(np.count_nonzero(running[part])),
                charging_time=step * float(np.count_nonzero(running[part] & at_anchor[part])),
                fuel=fuel_volume(step * float(series.fuel_flow[0, part].sum())),
                solar_energy=step * float(series.solar[0, part].sum()),
                alternator_energy=step * float(generated[part].sum()),
                shore_energy=step * float(series.shore[0, part].sum()),
                used_energy=step * float(used[part].sum()),
                highest_outdoor=float(run.forcing.dry_bulb[0, part].max()),
                sun=float(level[part].mean()),
            )
        )
    least = int(np.argmin(charge))
    before = float(charge[0]) + float(series.current[0, 0]) * step / specification.bank.capacity
    return Week(
        days=tuple(days),
        charge_at_start=before,
        lowest=float(charge[least]),
        lowest_at=float(clock[least]),
        failure=failure(specification, run, (before, *(day.charge_at_dusk for day in days))),
        run=run,
    )


def failure(specification: Specification, run: Run, evenings: tuple[float, ...]) -> Failure | None:
    """When and why a run of days first fails; None when it keeps going."""
    reserve, lost = float(run.summary.reserve_at[0]), float(run.summary.lost_at[0])
    if not math.isnan(reserve) and not reserve > lost:
        held = show(specification.brief.reserve, "share", "si")
        return _failure(specification, run, reserve, "reserve", f"the bank is down to its reserve of {held}")
    if not math.isnan(lost):
        k = min(run.clock.size - 1, int(lost / run.step))
        cause, words = _why_lost(specification, run, k)
        return _failure(specification, run, lost, cause, words)
    return _slide(specification, run, evenings)


def _why_lost(specification: Specification, run: Run, k: int) -> tuple[str, str]:
    """Why loads went without in step k."""
    bank, series = specification.bank, run.series
    if float(series.charge[0, k]) <= bank.cut_off_charge + EMPTY:
        return "cut off", f"the bank is empty and cuts off at {show(bank.cut_off_charge, 'share', 'si')}"
    if float(series.inverter_output[0, k]) > 0.0:
        asked = show(float(series.inverter_output[0, k]), "power", "si")
        return "inverter", f"the inverter trips on its load of {asked} or more"
    return "bank", "the bank cannot give what is asked of it, and the inverter goes off"


def settled(evenings: tuple[float, ...]) -> float:
    """The state of charge that the last evening is held against; itself in a week of one day, which tells no trend."""
    return min(evenings[SETTLED][: len(evenings) - 2], default=evenings[-1])


def _slide(specification: Specification, run: Run, evenings: tuple[float, ...]) -> Failure | None:
    """The evening on which the bank is first short, where each leaves it emptier than the last."""
    if evenings[-1] >= settled(evenings) - SLIDE:
        return None
    short = next(number for number, charge in enumerate(evenings) if charge < evenings[0] - SLIDE)
    words = (
        f"the bank is not full by evening, {show(evenings[short], 'share', 'si')}, and each following evening finds "
        f"it no better: {show(evenings[-1], 'share', 'si')} on the last"
    )
    return _failure(specification, run, short * DAY, "not full", words, short - 1)


def _failure(
    specification: Specification, run: Run, since: float, cause: str, words: str, number: int | None = None
) -> Failure:
    """A failure `since` s after the run began, its words with the day and the hour."""
    day = int(since // DAY) if number is None else number
    dark = number is None and since - day * DAY <= specification.brief.hold
    at = run.start + since
    when = f"{'night' if dark else 'day'} {day + 1}, {show_clock(at % DAY)}"
    return Failure(at, day + 1, cause, f"{when}: {words}")


def planned_week(specification: Specification, simulation: Simulation) -> Week:
    """The week as the design file plans it."""
    return week_of(specification, simulation.week_weather, simulation.week())


def shortest_engine_time(specification: Specification, simulation: Simulation) -> Shortest:
    """The shortest engine time a day that keeps the boat going at anchor for a week, to five minutes.

    Engines may be started at the week's usual hour, or every two hours from dawn on; they run until the next night
    begins at most, never by night.
    """
    given = [day.charging_start for day in specification.week if day.charging_time > 0.0]
    usual = given[0] if given else USUAL_CHARGING
    idle = _anchored(specification, simulation, usual, 0)
    if idle.failure is None:
        return Shortest(0.0, usual, 0.0, usual, (), 0.0, idle, "")
    if not any(engine.alternators for engine in specification.engines):
        why = f"there is no alternator aboard; {idle.failure.words}"
        return Shortest(math.nan, usual, math.nan, usual, (), 0.0, idle, why)
    starts = _starts(specification, simulation, usual)
    _tell(usual, 0, len(starts) + 1)
    best = at_usual = _from(specification, simulation, usual, math.inf, idle.failure)
    for number, start in enumerate(starts, 1):
        _tell(start, number, len(starts) + 1)
        most = best.time - FINENESS if best.suffices else math.inf
        found = _from(specification, simulation, start, most, idle.failure)
        best = found if found.suffices else best
    return Shortest(
        time=best.time if best.suffices else math.nan,
        start=best.start,
        usual_time=at_usual.time if at_usual.suffices else math.nan,
        usual_start=usual,
        tried=(usual, *starts),
        longest=best.longest,
        week=best.week
        if best.suffices
        else _anchored(specification, simulation, usual, round(best.longest / FINENESS)),
        binds=best.binds,
    )


def _tell(start: float, tried: int, of: int) -> None:
    tell(f"the shortest engine time at anchor, engines started at {show_clock(start)}", tried, of)


def _starts(specification: Specification, simulation: Simulation, usual: float) -> tuple[float, ...]:
    """Hours of starting beside the usual one: the late afternoon first, which tends to need least."""
    hour, dawn = 3600.0, simulation.dawn % DAY
    length = (specification.brief.night_start - dawn) % DAY
    first = math.ceil(dawn / hour) * hour
    later = [first + n * EVERY for n in range(int((length - (first - dawn)) // EVERY) + 1)]
    likely = dawn + 0.65 * length
    starts = sorted((s for s in later if s - dawn < length), key=lambda start: abs(start - likely))
    return tuple(start % DAY for start in starts if start % DAY != usual)


@dataclass(frozen=True)
class _From:
    """What one hour of starting comes to."""

    suffices: bool
    start: float
    time: float
    longest: float
    week: Week
    binds: str


def _between(low: int, high: int) -> list[int]:
    """One or two whole numbers that part what lies between two others evenly, in order.

    Example
    -------
    >>> _between(0, 12), _between(0, 3), _between(0, 2)
    ([4, 8], [1, 2], [1])
    """
    return sorted({low + max(1, (high - low) // 3), high - max(1, (high - low) // 3)})


def _least(low: int, high: int, less: str, fails: Callable[[int], str]) -> tuple[int, str]:
    """The least number over `low` that does not fail, and how the one below it does; several are tried at once.

    Parameters
    ----------
    low, high : fails as `less` tells, does not fail
    fails : what happens with a number, "" = it does not fail
    """
    while high - low > 1:
        tries = _between(low, high)
        with ThreadPoolExecutor(len(tries)) as pool:
            found = list(pool.map(fails, tries))
        for number, words in zip(tries, found, strict=True):
            if not words:
                high = number
                break
            low, less = number, words
    return high, less


def _early(week: Week) -> str:
    """How the first days of a week fail; that it is not full by evening needs the whole week to be told."""
    return "" if week.failure is None or week.failure.cause == "not full" else week.failure.words


def _tried(specification: Specification, simulation: Simulation, start: float, parts: int) -> Week:
    """`_anchored`, or its first days alone where these fail already, which most tries do: the failure is the same."""
    first = _anchored(specification, simulation, start, parts, FIRST_DAYS)
    if _early(first):
        return first
    return _anchored(specification, simulation, start, parts)


def _anchored(specification: Specification, simulation: Simulation, start: float, parts: int, number: int = 7) -> Week:
    """Days at anchor with `parts` times `FINENESS` of engine a day from `start`."""
    days = (PlannedDay(False, start, parts * FINENESS),) * number
    begins = simulation.night_start
    run = simulation.run(
        "week",
        begins,
        begins + len(days) * DAY,
        simulation.before.end,
        held=week_timetable(specification, begins, days),
        outside=simulation.week_outside,
    )
    return week_of(specification, simulation.week_weather, run)


def _from(specification: Specification, simulation: Simulation, start: float, most: float, idle: Failure) -> _From:
    """The shortest time from one hour of starting, if there is any up to `most` s, by bisection.

    `idle` is how it fails without any engine, whatever the hour.
    """
    longest = min(most, (specification.brief.night_start - start) % DAY)
    high = int(longest // FINENESS)
    best = _tried(specification, simulation, start, high)
    if best.failure is not None:
        return _From(False, start, high * FINENESS, high * FINENESS, best, best.failure.words)
    tops, weeks = high * FINENESS, {high: best}

    def first(parts: int) -> str:
        return _early(_anchored(specification, simulation, start, parts, FIRST_DAYS))

    def whole(parts: int) -> str:
        weeks[parts] = week = _anchored(specification, simulation, start, parts)
        return "" if week.failure is None else week.failure.words

    # Most of what is too little fails in the first days: these are sought through alone, then the week from there on.
    high, less = _least(0, high, idle.words, first)
    if high not in weeks and (words := whole(high)):
        high, less = _least(high, max(weeks), words, whole)
    return _From(True, start, high * FINENESS, tops, weeks[high], f"with {show(FINENESS, 'time', 'si')} less, {less}")
