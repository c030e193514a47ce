"""The night put back at each engine speed, at anchor and under way, with all alternators and with one lost."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from anchorwatt.design.specification import Engine, Specification
from anchorwatt.physics.engine import fuel_volume, full_load_power
from anchorwatt.physics.propeller import propeller_demand
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.units import show

MOST_FILLED = 0.8
"""State of charge that is told beside full."""

LIGHT_LOAD = 0.25
"""Share of the full load at its speed below which a diesel should not run for hours; 25 to 30 %, from memory."""

NEARLY = 0.05
"""Fuel within this share of the least counts as the least, and then the quicker speed is the better one."""

STEPS = tuple(rpm * math.pi / 30.0 for rpm in (50.0, 100.0, 200.0, 250.0, 500.0, 1000.0))
"""rad/s from one speed to the next; the smallest that leaves few enough is taken."""

MOST_SPEEDS = 11


@dataclass(frozen=True)
class SpeedPoint:
    """The night put back at one engine speed."""

    engine_speeds: tuple[float, ...]  # rad/s of each engine, 0 = stopped
    boat_speed: float  # m/s, 0 at anchor
    mean_current: float  # A of all alternators until the bank is full
    peak_current: float  # A
    mostly_filled_at: float  # s to `MOST_FILLED`, nan = not within a day
    full_at: float  # s, nan = not within a day
    fuel_added: float  # m3 burnt for the alternators alone until full, nan = not full within a day
    fuel_burnt: float  # m3 burnt in all until full, nan = not full within a day
    hottest_winding: float  # °C
    held: tuple[float, ...]  # share of the time that each cause of `simulation.electric` held the alternators back
    load_share: float  # mean load over the full load at that speed, of the engine with the least

    @property
    def fills(self) -> bool:
        """Whether it fills the bank within a day."""
        return not math.isnan(self.full_at)

    @property
    def light(self) -> bool:
        """Whether an engine runs so lightly loaded that it suffers when it does so for hours."""
        return self.load_share < LIGHT_LOAD

    @property
    def mostly_held_by(self) -> int:
        """The cause that held the alternators back for most of the time."""
        return int(np.argmax(self.held))


@dataclass(frozen=True)
class Sweep:
    """The night put back over the engine speeds."""

    propelling: bool
    lost: str  # name of the alternator that does not work, "" = all work
    points: tuple[SpeedPoint, ...]  # by rising speed
    allowed: float  # s, the brief's

    @property
    def quickest(self) -> SpeedPoint | None:
        """The speed of the shortest time; None = none fills the bank within a day."""
        return min((point for point in self.points if point.fills), key=lambda point: point.full_at, default=None)

    @property
    def least_added(self) -> SpeedPoint | None:
        """The speed at which the alternators add the least fuel."""
        return min((point for point in self.points if point.fills), key=lambda point: point.fuel_added, default=None)

    @property
    def in_time(self) -> tuple[SpeedPoint, ...]:
        """Speeds that fill the bank in the time that the brief allows."""
        return tuple(point for point in self.points if point.fills and point.full_at <= self.allowed)

    @property
    def well_loaded(self) -> tuple[SpeedPoint, ...]:
        """Of those, the speeds at which no engine runs too lightly."""
        return tuple(point for point in self.in_time if not point.light)

    def cost(self, point: SpeedPoint) -> float:
        """m3 of fuel that count: at anchor all of it, under way what the alternators add."""
        return point.fuel_added if self.propelling else point.fuel_burnt

    @property
    def recommended(self) -> SpeedPoint | None:
        """In time, the engines not too lightly loaded if that can be, and of those near the least fuel the quickest."""
        among = self.well_loaded or self.in_time
        if not among:
            return self.quickest
        least = min(self.cost(point) for point in among)
        near = [point for point in among if self.cost(point) <= (1.0 + NEARLY) * least]
        return min(near, key=lambda point: point.full_at)

    @property
    def reason(self) -> str:
        """Why that one, in words."""
        fuel = "added fuel" if self.propelling else "fuel"
        if self.quickest is None:
            return "no speed fills the bank within a day"
        if not self.in_time:
            return "no speed fills the bank in the time allowed; this is the quickest"
        near = f"the quickest of those within {show(NEARLY, 'share', 'si', 1)} of the least {fuel}"
        if self.well_loaded:
            load = show(LIGHT_LOAD, "share", "si")
            return f"fills the bank in the time allowed with the engine loaded to {load} or more; {near}"
        return f"every speed that is quick enough loads the engine lightly; of those, {near}"


@dataclass(frozen=True)
class Sweeps:
    """At anchor and under way, with all alternators and with the one lost that matters most."""

    at_anchor: Sweep
    under_way: Sweep
    at_anchor_one_lost: Sweep | None  # None where the boat has one alternator only
    under_way_one_lost: Sweep | None


def shares(specification: Specification) -> tuple[float, ...]:
    """Shares of rated speed at which engines are looked at, from idle to rated by round figures of the largest."""
    engine = max(specification.engines, key=lambda one: one.rated_power)
    idle, rated = engine.idle_speed, engine.rated_speed
    for step in STEPS:
        first, last = math.floor(idle / step + 1e-9) + 1, math.ceil(rated / step - 1e-9)
        # What lies within a third of a step of either end would only tell that end again.
        between = [
            n * step for n in range(first, last) if n * step - idle > step / 3.0 and rated - n * step > step / 3.0
        ]
        if len(between) + 2 <= MOST_SPEEDS:
            break
    return tuple(speed / rated for speed in (idle, *between, rated))


def speeds_at(engines: Sequence[Engine], share: float, propelling: bool, lost: tuple[int, ...]) -> tuple[float, ...]:
    """rad/s of each engine at a share of rated speed; at anchor an engine that charges nothing stands still."""
    first, found = 0, []
    for engine in engines:
        works = any(first + a not in lost for a in range(len(engine.alternators)))
        first += len(engine.alternators)
        found.append(max(engine.idle_speed, share * engine.rated_speed) if works or propelling else 0.0)
    return tuple(found)


def _load_shares(engines: Sequence[Engine], speeds: tuple[float, ...], propelling: bool, run: Run) -> list[float]:
    """Mean load of each engine that turns, over its full load at that speed.

    The alternators' shaft power is shared among the engines by the ampere-hours that each gave.
    """
    shaft = float(run.summary.shaft_energy[0]) / (run.step * len(run.clock))
    given = run.series.alternator_current[0].sum(axis=1)
    whole, first, found = float(given.sum()), 0, []
    for engine, speed in zip(engines, speeds, strict=True):
        own = float(given[first : first + len(engine.alternators)].sum())
        first += len(engine.alternators)
        if speed <= 0.0:
            continue
        load = shaft * own / whole if whole > 0.0 else 0.0
        if propelling:
            load += propeller_demand(speed, engine.rated_speed, engine.propeller_power, engine.propeller_exponent)
        able = full_load_power(speed, engine.rated_speed, engine.rated_power, engine.curve_speeds, engine.curve_powers)
        found.append(load / able if able > 0.0 else math.nan)
    return found


def _point(
    specification: Specification, run: Run, speeds: tuple[float, ...], propelling: bool, lost: tuple[int, ...]
) -> SpeedPoint:
    engines = specification.engines
    current = run.series.alternator_current[0].sum(axis=0)
    full_at = float(run.summary.full_at[0])
    filled = np.flatnonzero(run.series.charge[0] >= MOST_FILLED)
    working = [a for a in range(run.held.shape[1]) if a not in lost]
    by_cause = run.held[0, working].sum(axis=0)
    whole = float(by_cause.sum())
    made = [
        engine.boat_speed * speed / engine.rated_speed for engine, speed in zip(engines, speeds, strict=True) if speed
    ]
    burnt, added = fuel_volume(float(run.summary.fuel[0])), fuel_volume(float(run.summary.fuel_added[0]))
    return SpeedPoint(
        engine_speeds=speeds,
        boat_speed=min(made, default=0.0) if propelling else 0.0,
        mean_current=float(current.mean()),
        peak_current=float(current.max()),
        mostly_filled_at=run.step * float(filled[0] + 1) if filled.size else math.nan,
        full_at=full_at,
        fuel_added=math.nan if math.isnan(full_at) else added,
        fuel_burnt=math.nan if math.isnan(full_at) else burnt,
        hottest_winding=float(run.summary.hottest_winding[0]),
        held=tuple(float(cause) / whole if whole > 0.0 else 0.0 for cause in by_cause),
        load_share=min(_load_shares(engines, speeds, propelling, run), default=math.nan),
    )


def different(engines: Sequence[Engine]) -> tuple[int, ...]:
    """Alternators whose loss differs: of those on one engine that are alike but for their name, the first."""
    found, first = [], 0
    for engine in engines:
        seen = []
        for a, machine in enumerate(engine.alternators):
            nameless = replace(machine, name="")
            if nameless not in seen:
                seen.append(nameless)
                found.append(first + a)
        first += len(engine.alternators)
    return tuple(found)


def recharge_sweeps(specification: Specification, simulation: Simulation) -> Sweeps | None:
    """The night put back at each engine speed; None without an alternator."""
    engines = specification.engines
    machines = [machine for engine in engines for machine in engine.alternators]
    if not machines:
        return None
    made: dict[tuple[tuple[float, ...], bool, tuple[int, ...]], SpeedPoint] = {}

    def point(share: float, propelling: bool, lost: tuple[int, ...]) -> SpeedPoint:
        speeds = speeds_at(engines, share, propelling, lost)
        key = (speeds, propelling, lost)
        if key not in made:
            run = simulation.recharge_at(speeds, propelling, lost)
            if run is None:  # there are alternators, so there is a run
                raise ValueError("nothing charges")
            made[key] = _point(specification, run, speeds, propelling, lost)
        return made[key]

    def sweep(propelling: bool, lost: tuple[int, ...]) -> Sweep:
        points = tuple(point(share, propelling, lost) for share in shares(specification))
        return Sweep(propelling, machines[lost[0]].name if lost else "", points, specification.brief.recharge)

    def worst(propelling: bool) -> Sweep | None:
        if len(machines) < 2:
            return None
        each = [sweep(propelling, (a,)) for a in different(engines)]
        return max(each, key=lambda one: one.quickest.full_at if one.quickest else math.inf)

    return Sweeps(sweep(False, ()), sweep(True, ()), worst(False), worst(True))
