"""What faults do to the boat's arrays and state, and the runs that show it minute by minute."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from anchorwatt.design.specification import Doing
from anchorwatt.simulation.arrays import (
    BANK_CAPACITY,
    BANK_CHARGE_CURRENT,
    BANK_DISCHARGE_CURRENT,
    BANK_RESISTANCE,
    SHARED,
    UNCOOLED,
    Boat,
    State,
)
from anchorwatt.simulation.forcing import Stretch, period_at, recharge_stretch
from anchorwatt.simulation.power import without_alternators
from anchorwatt.simulation.runs import Run, Simulation, copy_state

SHOWN_BEFORE, SHOWN = 300.0, 7200.0
"""s before and after a fault that are shown minute by minute."""

INTO_THE_CHARGE = 600.0
"""s of charging after which a fault strikes that strikes while charging."""

LONGEST_RECHARGE = 86_400.0
LONGEST_HOLD = 2.0 * 86_400.0

Breaks = Callable[[Boat], Boat]


@dataclass(frozen=True)
class FaultRuns:
    """The boat up to the fault, from there with it, and from there without it."""

    before: Run
    broken: Run
    sound: Run

    @property
    def moment(self) -> float:
        """s after the midnight before the night."""
        return self.broken.start


def all_alternators(boat: Boat) -> tuple[int, ...]:
    """Every alternator, counted over all engines."""
    return tuple(range(boat.power.alternator_engine.size))


def without_bank(boat: Boat) -> Boat:
    """The bank's contactors open: nothing out of it and nothing in.

    Alternators and panels cannot hold a bus by themselves, so both stop; DC loads go without.
    """
    power = without_alternators(boat.power, all_alternators(boat))
    bank, solar = power.bank.copy(), power.solar.copy()
    bank[:, BANK_CHARGE_CURRENT], bank[:, BANK_DISCHARGE_CURRENT] = 0.0, 0.0
    solar[:, 0] = 0.0
    return boat._replace(power=power._replace(bank=bank, solar=solar))


def without_string(boat: Boat, strings: int) -> Boat:
    """A bank that has lost one of its strings, which its own management takes off.

    Links are taken to be shared out among the strings as the modules are. All is lost with the only string.
    """
    if strings <= 1:
        return without_bank(boat)
    left = (strings - 1.0) / strings
    bank = boat.power.bank.copy()
    for figure in (BANK_CAPACITY, BANK_CHARGE_CURRENT, BANK_DISCHARGE_CURRENT):
        bank[:, figure] *= left
    bank[:, BANK_RESISTANCE] /= left
    return boat._replace(power=boat.power._replace(bank=bank))


def lost_alternators(boat: Boat, lost: tuple[int, ...]) -> Boat:
    """A boat with some of its alternators out of work."""
    return boat._replace(power=without_alternators(boat.power, lost))


def tripped(state: State, time: float) -> State:
    """The same moment with an inverter that stays off for `time` s."""
    off = copy_state(state)
    off.trip[:] = time
    return off


def middle_of_the_night(simulation: Simulation) -> float:
    """s after the midnight before the night."""
    half = 0.5 * (simulation.dawn - simulation.night_start)
    return simulation.night_start + max(1.0, round(half / simulation.step)) * simulation.step


def by_night(
    simulation: Simulation,
    moment: float,
    breaks: Breaks | None = None,
    *,
    mode: int = SHARED,
    off: float = 0.0,
    until: float | None = None,
) -> FaultRuns:
    """A fault in the night: a boat that breaks, a plant that stops (`mode`), an inverter off for `off` s.

    Both boats are followed until dawn, or as long as minutes are shown.
    """
    before = simulation.run("before the fault", simulation.night_start, moment, simulation.before.end)
    end = max(simulation.dawn, moment + SHOWN) if until is None else until
    boat = None if breaks is None else breaks(simulation.boat)
    state = tripped(before.end, off) if off > 0.0 else before.end
    broken = simulation.run("with the fault", moment, end, state, mode=mode, boat=boat)
    return FaultRuns(before, broken, simulation.run("without it", moment, end, before.end))


def seawater_stops(simulation: Simulation, moment: float) -> FaultRuns:
    """The plant locks itself out in the night."""
    return by_night(simulation, moment, mode=UNCOOLED)


def hold_after(simulation: Simulation, runs: FaultRuns, breaks: Breaks | None) -> float:
    """s from the fault until the reserve is reached, the night going on as it is; nan = not within two days."""
    night = Stretch(period_at(simulation.specification, runs.moment))
    boat = None if breaks is None else breaks(simulation.boat)
    run = simulation.run("hold", runs.moment, runs.moment + LONGEST_HOLD, runs.before.end, held=night, boat=boat)
    return float(run.summary.reserve_at[0])


def charging(simulation: Simulation) -> Stretch | None:
    """How the bank is charged after the night; None without alternators."""
    return recharge_stretch(simulation.specification, simulation.dawn)


def into_the_charge(simulation: Simulation) -> float:
    """s after the midnight before the night: ten minutes into the recharge, or half-way where it is shorter."""
    recharge = simulation.recharge
    if recharge is None:
        return math.nan
    steps = min(INTO_THE_CHARGE / simulation.step, 0.5 * recharge.clock.size)
    return simulation.dawn + max(1.0, round(steps)) * simulation.step


def of_full_charge(simulation: Simulation) -> float:
    """s after the midnight before the night when the bank takes the highest current of its recharge."""
    recharge = simulation.recharge
    if recharge is None:
        return math.nan
    return float(recharge.clock[int(np.argmin(recharge.series.current[0]))])


def while_charging(
    simulation: Simulation, moment: float, breaks: Breaks | None = None, then: Stretch | None = None
) -> FaultRuns | None:
    """A fault while the engines put the night back: a boat that breaks, or one that is handled otherwise.

    Both boats are followed for a day, or as long as minutes are shown where the handling changes. None without
    alternators.
    """
    stretch = charging(simulation)
    if stretch is None:
        return None
    before = simulation.run("before the fault", simulation.dawn, moment, simulation.night.end, held=stretch)
    end = moment + (LONGEST_RECHARGE if then is None else SHOWN)
    boat = None if breaks is None else breaks(simulation.boat)
    broken = simulation.run("with the fault", moment, end, before.end, held=then or stretch, boat=boat)
    return FaultRuns(before, broken, simulation.run("without it", moment, end, before.end, held=stretch))


def rated_speeds(simulation: Simulation) -> tuple[float, ...]:
    """rad/s of every engine at full throttle."""
    return tuple(engine.rated_speed for engine in simulation.specification.engines)


def full_throttle(simulation: Simulation, propelling: bool = True) -> Stretch | None:
    """The charge going on at rated engine speed, the propellers turning or not; None without alternators."""
    stretch = charging(simulation)
    if stretch is None:
        return None
    doing = Doing.MOTORING if propelling else Doing.AT_ANCHOR
    return Stretch(replace(stretch.period, doing=doing), engine_speeds=rated_speeds(simulation))


def shore_sags(simulation: Simulation, moment: float) -> FaultRuns:
    """A night on shore power that fails: the charger gives way and the inverter takes the loads from the bank."""
    night = period_at(simulation.specification, simulation.night_start)
    ashore, afloat = (Stretch(replace(night, doing=doing)) for doing in (Doing.ON_SHORE_POWER, Doing.AT_ANCHOR))
    before = simulation.run("before the fault", simulation.night_start, moment, simulation.before.end, held=ashore)
    end = max(simulation.dawn, moment + SHOWN)
    broken = simulation.run("with the fault", moment, end, before.end, held=afloat)
    return FaultRuns(before, broken, simulation.run("without it", moment, end, before.end, held=ashore))
