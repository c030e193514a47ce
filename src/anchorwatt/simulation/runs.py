"""The runs of an assessment: before the night, the night, the day after, holding on, putting back, loads."""

from __future__ import annotations

import math
import os
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from typing import Any

import numpy as np

from anchorwatt.climate import Weather, weather
from anchorwatt.design.specification import Doing, PlannedDay, Specification
from anchorwatt.errors import OutOfRange
from anchorwatt.simulation.arrays import (
    IDEAL,
    SELF_CONTAINED,
    SHARED,
    UNCOOLED,
    Boat,
    Floats,
    Forcing,
    Series,
    Settings,
    State,
    Summary,
)
from anchorwatt.simulation.compiled import compiled
from anchorwatt.simulation.forcing import (
    DAY,
    Stretch,
    Timetable,
    design_set_points,
    design_warm_points,
    forcing,
    period_at,
    recharge_stretch,
    week_timetable,
)
from anchorwatt.simulation.kernel import run_cases
from anchorwatt.simulation.lead_in import KEEPS, Asked, Made, asked
from anchorwatt.simulation.network import boat_arrays
from anchorwatt.simulation.outside import OutsideSeries, outside_series
from anchorwatt.simulation.plants import chilled_water_plant
from anchorwatt.simulation.power import with_engine_air, without_alternators, without_fold_back
from anchorwatt.simulation.watched import go_on

STEP = 60.0
LEAD_IN = 2.0 * DAY
"""s run before the night so that the fabric has forgotten how it began."""
LONGEST_HOLD = 2.0 * DAY
LONGEST_RECHARGE = DAY
AMPLE = 1.1
"""Times as long as the night's draw lets the bank hold: a run so long mostly reaches the reserve."""
WEEK = 7.0 * DAY
USUAL_CHARGING = 8.0 * 3600.0
"""s after midnight at which engines are started to charge at anchor, where the week does not say."""
ENDLESS = 1e6
"""Factor on a bank's capacity that keeps its state of charge where it is."""
CAUSES = 6
"""Causes that hold an alternator back, see `simulation.electric`."""


@dataclass(frozen=True)
class Run:
    """A run and what it came to."""

    name: str
    start: float  # s after the midnight before the night
    step: float
    forcing: Forcing
    summary: Summary
    series: Series
    held: Floats  # (1, A, causes) s
    end: State

    @property
    def clock(self) -> Floats:
        """Ends of the steps, s after the midnight before the night."""
        return self.start + self.step * np.arange(1, self.forcing.ac_load.shape[1] + 1)


def settings(cases: int, capacity_factor: float = 1.0, resistance_factor: float = 1.0) -> Settings:
    """Settings of cases that are all as designed, or whose banks all differ from it alike."""
    zeros, ones = np.zeros(cases), np.ones(cases)
    index = np.zeros(cases, dtype=np.int64)
    return Settings(index, index.copy(), zeros, zeros.copy(), ones, capacity_factor * ones, resistance_factor * ones)


def empty_summary(cases: int, cabins: int) -> Summary:
    """Room for the summaries of cases."""
    wide = {"highest_air", "highest_relative_humidity", "sensible_energy", "latent_energy", "heating_energy"}
    return Summary(*(np.zeros((cases, cabins) if name in wide else cases) for name in Summary._fields))


def empty_series(cases: int, cabins: int, alternators: int, steps: int) -> Series:
    """Room for series; with 0 steps the kernel writes none."""
    by_cabin = {"air", "humidity", "sensible", "latent", "heating", "radiant", "coldest"}
    shapes: list[tuple[int, ...]] = []
    for name in Series._fields:
        if name in by_cabin:
            shapes.append((cases, cabins, steps))
        elif name.startswith("alternator"):
            shapes.append((cases, alternators, steps))
        else:
            shapes.append((cases, steps))
    return Series(*(np.zeros(shape) for shape in shapes))


def copy_state(state: State, cases: int = 1) -> State:
    """A state of its own, repeated for a number of cases."""
    parts: list[Any] = [np.repeat(part, cases, axis=0) for part in state]
    return State(*parts)


def run_batch(
    boat: Boat,
    driving: Forcing,
    cases: Settings,
    state: State,
    step: float,
    mode: int,
    live: bool,
    reserve: float,
    target: float,
    summary: Summary,
    series: Series,
    held: Floats,
    threads: int | None = None,
) -> None:
    """Run all cases, on several threads when there are many; see `kernel.run_cases`."""
    kernel = compiled(run_cases)
    count = state.charge.shape[0]
    workers = min(threads or os.cpu_count() or 1, count)

    def some(first: int, last: int) -> None:
        kernel(
            boat,
            driving,
            cases,
            state,
            step,
            mode,
            int(live),
            reserve,
            target,
            summary,
            series,
            held,
            first,
            last,
        )

    if workers == 1:
        some(0, count)
        return
    some(0, 1)  # compiles, if it must, before threads share it
    edges = np.linspace(1, count, 4 * workers + 1).astype(int)
    with ThreadPoolExecutor(workers) as pool:
        for future in [pool.submit(some, int(a), int(b)) for a, b in pairwise(edges)]:
            future.result()


class Simulation:
    """All runs of one specification, each made when first asked for.

    `step` is the kernel's step in s.
    """

    def __init__(self, specification: Specification, step: float = STEP) -> None:
        self.specification = specification
        self.step = step

    @cached_property
    def weather(self) -> Weather:
        """From three days before the night to four days after."""
        return weather(self.specification.place, 3, 4, self.step)

    @cached_property
    def outside(self) -> OutsideSeries:
        return outside_series(self.specification, self.weather)

    @cached_property
    def boat(self) -> Boat:
        return boat_arrays(self.specification)

    @property
    def night_start(self) -> float:
        return self.specification.brief.night_start

    @property
    def dawn(self) -> float:
        """End of the hours that the bank must carry."""
        return self.night_start + round(self.specification.brief.hold / self.step) * self.step

    @cached_property
    def full_charge(self) -> float:
        """State of charge at which the bank counts as charged.

        The brief's charge at the start of the night, or less where the charger's voltage leaves only the tail.
        """
        bank = self.specification.bank
        voltages = np.array(bank.open_circuit_voltages) * bank.cells
        for charge in np.linspace(1.0, 0.5, 501):
            voltage = float(np.interp(charge, bank.charge_points, voltages))
            room = bank.absorb_voltage - voltage
            if room >= bank.tail_current * bank.resistance:
                return min(float(charge), self.specification.brief.charge_at_start)
        return self.specification.brief.charge_at_start

    def first_state(self, mode_air: float) -> State:
        """Everything at one temperature, °C, with outdoor moisture; the lead-in makes it forgotten."""
        specification, boat = self.specification, self.boat
        cabins = len(specification.cabins)
        outdoor = float(self.weather.humidity_ratio[0])
        around = [mode_air if math.isnan(e.air_temperature) else e.air_temperature for e in specification.engines]
        temperatures = [[[around[g]] * 2 for g, e in enumerate(specification.engines) for _ in e.alternators]]
        return State(
            node=np.full((1, boat.fabric.node_capacity.shape[1]), mode_air),
            air=np.full((1, cabins), mode_air),
            furnishing=np.full((1, cabins), mode_air),
            humidity=np.full((1, cabins), outdoor),
            charge=np.array([specification.brief.charge_at_start]),
            connected=np.ones(1, dtype=np.int64),
            trip=np.zeros(1),
            overload=np.zeros(1),
            cells=np.full(1, specification.bank.temperature),
            alternator=np.array(temperatures, dtype=float).reshape(1, -1, 2),
            unit_on=np.zeros((1, boat.units.unit_cabin.size), dtype=np.int64),
            unit_lately=np.zeros((1, boat.units.unit_cabin.size)),
            unit_thaw=np.zeros((1, boat.units.unit_cabin.size)),
            block=np.full((1, len(specification.engines)), mode_air),
        )

    def run(
        self,
        name: str,
        start: float,
        end: float,
        state: State,
        *,
        mode: int = SHARED,
        live: bool = True,
        held: Stretch | Timetable | None = None,
        set_points: tuple[float, ...] | None = None,
        warm_points: tuple[float, ...] | None = None,
        boat: Boat | None = None,
        outside: OutsideSeries | None = None,
        capacity_factor: float = 1.0,
        resistance_factor: float = 1.0,
    ) -> Run:
        """One run from a state, which is left as it was; `boat` and `outside` replace the design's own.

        `held` keeps one condition or follows a timetable instead of the plan; the factors are on the bank.
        """
        go_on()
        specification, boat = self.specification, boat or self.boat
        driving = forcing(specification, outside or self.outside, start, end, held, set_points, warm_points)
        try:
            made = self._made(boat, driving, state, mode, live, capacity_factor, resistance_factor)
        except OutOfRange as error:
            raise OutOfRange(
                f"{specification.name}: the run left what its equations hold for ({error}). A cabin grows too hot or "
                "too damp: look for one with many people or much running for its size, its leakage and its surfaces"
            ) from error
        return Run(name, start, self.step, driving, made.summary, made.series, made.held, made.end)

    def _made(
        self,
        boat: Boat,
        driving: Forcing,
        state: State,
        mode: int,
        live: bool,
        capacity_factor: float,
        resistance_factor: float,
    ) -> Made:
        """What a run comes to; one off the bank may be known from before."""
        wanted: Asked | None = None if live else asked(boat, driving, copy_state(state), self.step, mode)
        if wanted is not None:
            known = KEEPS.known(wanted)
            if known is not None:
                return known
            boat, driving = wanted.boat, wanted.forcing
        brief, end = self.specification.brief, copy_state(state)
        cabins, alternators = boat.fabric.air_mass.shape[1], boat.power.alternator_engine.size
        summary = empty_summary(1, cabins)
        series = empty_series(1, cabins, alternators, driving.ac_load.shape[1])
        held = np.zeros((1, alternators, CAUSES))
        run_batch(
            boat,
            driving,
            settings(1, capacity_factor, resistance_factor),
            end,
            self.step,
            mode,
            live,
            brief.reserve,
            self.full_charge,
            summary,
            series,
            held,
        )
        made = Made(summary, series, held, end)
        if wanted is not None:
            KEEPS.keep(wanted, made)
        return made

    def _mean_air(self) -> float:
        return float(np.mean(self.weather.dry_bulb[: int(DAY / self.step)]))

    @contextmanager
    def main_runs(self) -> Iterator[None]:
        """Make the runs that every headline needs, on two threads; what needs no `hold` can be worked out meanwhile."""
        _ = self.night
        with ThreadPoolExecutor(1) as beside:
            recharge, hold = beside.submit(lambda: self.recharge), beside.submit(lambda: self.hold)
            _ = self.day
            recharge.result()
            yield
            hold.result()

    @cached_property
    def before(self) -> Run:
        """The two days before the night, by the plan; electricity costs no charge."""
        start = self.night_start - LEAD_IN
        return self.run("before", start, self.night_start, self.first_state(self._mean_air()), live=False)

    @cached_property
    def night(self) -> Run:
        """The hours that the bank must carry."""
        return self.run("night", self.night_start, self.dawn, self.before.end)

    @cached_property
    def day(self) -> Run:
        """From the end of the night to where the next begins, by the plan."""
        return self.run("day", self.dawn, self.night_start + DAY, self.night.end)

    @cached_property
    def hold(self) -> Run:
        """The night going on, as it began, until the reserve is reached, or a while longer (two days at most)."""
        return self._until_reserve(self.night, 1.0, 1.0)

    def _until_reserve(self, night: Run, capacity_factor: float, resistance_factor: float) -> Run:
        brief = self.specification.brief
        taken = brief.charge_at_start - float(night.end.charge[0])
        expected = (
            (brief.charge_at_start - brief.reserve) / taken * (self.dawn - self.night_start) if taken > 0 else 0.0
        )
        longest = round(LONGEST_HOLD / self.step)
        enough = math.ceil(AMPLE * expected / self.step)
        for steps in (enough, longest) if 0 < enough < longest else (longest,):
            run = self.run(
                "hold",
                self.night_start,
                self.night_start + steps * self.step,
                self.before.end,
                held=Stretch(period_at(self.specification, self.night_start)),
                capacity_factor=capacity_factor,
                resistance_factor=resistance_factor,
            )
            if not math.isnan(run.summary.reserve_at[0]):
                break
        return run

    @cached_property
    def recharge(self) -> Run | None:
        """Engines on from the end of the night until the bank is charged (a day at most); None without alternators."""
        stretch = recharge_stretch(self.specification, self.dawn)
        return None if stretch is None else self._until_full(stretch, self.boat)

    def recharge_at(
        self, engine_speeds: tuple[float, ...] | None, propelling: bool, lost: tuple[int, ...] = ()
    ) -> Run | None:
        """The night put back with the engines held at those speeds, rad/s (None = as in `recharge`).

        At anchor, or with the propellers turning; cabins and loads as in `recharge`. `lost` are the alternators
        that do not work, counted over all engines.
        """
        stretch = recharge_stretch(self.specification, self.dawn)
        if stretch is None:
            return None
        if engine_speeds is not None:
            doing = Doing.MOTORING if propelling else Doing.AT_ANCHOR
            stretch = Stretch(replace(stretch.period, doing=doing), engine_speeds=engine_speeds)
        boat = self.boat
        return self._until_full(stretch, boat._replace(power=without_alternators(boat.power, lost)) if lost else boat)

    def _until_full(self, stretch: Stretch, boat: Boat) -> Run:
        start, state = self.dawn, self.night.end
        shorter, longest = self.specification.brief.recharge + 2.0 * 3600.0, LONGEST_RECHARGE
        for length in (min(shorter, longest), longest):
            run = self.run("recharge", start, start + length, state, held=stretch, boat=boat)
            full_at = float(run.summary.full_at[0])
            if not math.isnan(full_at):
                steps = max(1, math.ceil(full_at / self.step))
                return self.run("recharge", start, start + steps * self.step, state, held=stretch, boat=boat)
        return run

    def charging_hour(self, hold: bool, at_anchor: bool = False, air: float = math.nan) -> Run | None:
        """An hour of charging from dawn, the bank at its reserve and so large that it stays there.

        With `hold` the regulators mind the temperature; without they let the alternators run as hot as they will.
        Engines as in `recharge`, or `at_anchor` at their charging speed; `air` in °C replaces that round the
        alternators. None without alternators.
        """
        stretch = recharge_stretch(self.specification, self.dawn)
        if stretch is None:
            return None
        if at_anchor:
            stretch = Stretch(replace(stretch.period, doing=Doing.AT_ANCHOR), charging=True)
        boat, state = self.boat, copy_state(self.night.end)
        state.charge[:] = self.specification.brief.reserve
        if not hold:
            boat = boat._replace(power=without_fold_back(boat.power))
        if not math.isnan(air):
            boat = boat._replace(power=with_engine_air(boat.power, air))
        return self.run(
            "charging hour", self.dawn, self.dawn + 3600.0, state, held=stretch, boat=boat, capacity_factor=ENDLESS
        )

    def aged(self, capacity_factor: float, resistance_factor: float) -> tuple[Run, Run]:
        """The night and the hold with a bank that has aged."""
        night = self.run(
            "night",
            self.night_start,
            self.dawn,
            self.before.end,
            capacity_factor=capacity_factor,
            resistance_factor=resistance_factor,
        )
        return night, self._until_reserve(night, capacity_factor, resistance_factor)

    @cached_property
    def week_weather(self) -> Weather:
        """From three days before the night to the end of the week that it begins."""
        return weather(self.specification.place, 3, max(7, len(self.specification.week)) + 2, self.step)

    @cached_property
    def week_outside(self) -> OutsideSeries:
        return outside_series(self.specification, self.week_weather)

    def week(self, charging_time: float | None = None, at_anchor: bool = False) -> Run:
        """The week that begins with the night, by the design's `week`.

        With `at_anchor` the boat lies at anchor all week and the engines charge for `charging_time` s each day.
        """
        days = self.specification.week
        if at_anchor:
            given = [day.charging_start for day in days if day.charging_time > 0.0]
            begins = given[0] if given else USUAL_CHARGING
            days = (PlannedDay(False, begins, charging_time or 0.0),) * 7
        start = self.night_start
        timetable = week_timetable(self.specification, start, days)
        return self.run(
            "week", start, start + len(days) * DAY, self.before.end, held=timetable, outside=self.week_outside
        )

    @cached_property
    def loads(self) -> Run:
        """A day with every cabin that is ever cooled held at its lowest set point by a plant without limit.

        Cabins that are ever heated are held at the highest such point from below too.
        """
        return self._held_all_day(self.boat)

    @cached_property
    def loads_of_cold_machinery(self) -> Run:
        """The day of `loads` on a boat whose engines and converters give off no heat."""
        power = self.boat.power
        if (power.heat_cabin < 0).all() and (power.engine_cabin < 0).all():
            return self.loads
        cold = power._replace(
            heat_cabin=np.full_like(power.heat_cabin, -1), engine_cabin=np.full_like(power.engine_cabin, -1)
        )
        return self._held_all_day(self.boat._replace(power=cold))

    def _held_all_day(self, boat: Boat) -> Run:
        points, warm = design_set_points(self.specification), design_warm_points(self.specification)
        lead = self.run(
            "loads",
            -LEAD_IN,
            0.0,
            self.first_state(self._mean_air()),
            mode=IDEAL,
            live=False,
            set_points=points,
            warm_points=warm,
            boat=boat,
        )
        return self.run(
            "loads", 0.0, DAY, lead.end, mode=IDEAL, live=False, set_points=points, warm_points=warm, boat=boat
        )

    @cached_property
    def alternative_night(self) -> Run | None:
        """The same night with self-contained units; None when the design names none."""
        if self.specification.alternative is None:
            return None
        before = self.run(
            "before",
            self.night_start - LEAD_IN,
            self.night_start,
            self.first_state(self._mean_air()),
            mode=SELF_CONTAINED,
            live=False,
        )
        return self.run("night", self.night_start, self.dawn, before.end, mode=SELF_CONTAINED)

    @cached_property
    def chilled_night(self) -> Run | None:
        """The same night on a chilled-water plant; None when the design names none."""
        chilled = self.specification.chilled
        if chilled is None:
            return None
        boat = self.boat._replace(plant=chilled_water_plant(chilled))
        start = self.night_start - LEAD_IN
        state = self.first_state(self._mean_air())
        before = self.run("before", start, self.night_start, state, live=False, boat=boat)
        return self.run("night", self.night_start, self.dawn, before.end, boat=boat)

    def uncooled(self, moment: float) -> Run:
        """The two days up to a moment, s after midnight, without any cooling."""
        return self.run(
            "uncooled", moment - LEAD_IN, moment, self.first_state(self._mean_air()), mode=UNCOOLED, live=False
        )
