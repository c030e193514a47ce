"""Runs that cost the bank nothing, such as the two days before the night, kept from design to design.

Such a run asks only a part of the boat: an edit of the bank, of the alternators or of the sun leaves it as it was. What
it does not ask is taken out of what the kernel is given, and a run that was given the same, bit for bit, is not
repeated: what stands in the design decides alone, never what was edited before.
"""

from __future__ import annotations

import threading
from collections import deque
from dataclasses import dataclass
from typing import Any

import numpy as np

from anchorwatt.simulation.arrays import (
    BANK_CAPACITY,
    BANK_HEAT_CAPACITY,
    BANK_SURROUNDINGS,
    HEAT_OF_BANK,
    Boat,
    Floats,
    Forcing,
    Power,
    Series,
    State,
    Summary,
)

KEPT = 8
"""Runs, of about 3 MB each: those of the plants and loads of two designs."""


@dataclass(frozen=True)
class Asked:
    """All that a run asks for."""

    boat: Boat
    forcing: Forcing
    state: State
    step: float
    mode: int


@dataclass(frozen=True)
class Made:
    """What a run comes to; nobody writes into it."""

    summary: Summary
    series: Series
    held: Floats
    end: State


def asked(boat: Boat, driving: Forcing, state: State, step: float, mode: int) -> Asked:
    """What a run off the bank asks for, empty where it does not ask."""
    loads = driving._replace(
        panel_irradiance=np.zeros_like(driving.panel_irradiance),
        renewed_flow=np.zeros_like(driving.renewed_flow),
        dc_load=np.zeros_like(driving.dc_load),
        propelling=np.zeros_like(driving.propelling),
    )
    return Asked(boat._replace(power=_unasked(boat.power, state)), loads, state, step, mode)


def _unasked(power: Power, state: State) -> Power:
    """Converters, and what warms the cabins; the cells only where they stand in a cabin or begin at another warmth."""
    machines = power.alternator_engine.size
    engines = power.engine_cabin.size
    pair = np.array([[0.0, 1.0]])
    bank = power.bank
    if power.heat_cabin[HEAT_OF_BANK] < 0 and (state.cells == bank[0, BANK_SURROUNDINGS]).all():
        bank = np.zeros_like(bank)
        bank[0, BANK_SURROUNDINGS] = state.cells[0]
        bank[0, BANK_CAPACITY] = bank[0, BANK_HEAT_CAPACITY] = 1.0
    return power._replace(
        overload_share=pair,
        overload_time=pair,
        charger=np.zeros_like(power.charger),
        shore_power=np.zeros_like(power.shore_power),
        bank=bank,
        bank_charge=pair,
        bank_voltage=pair,
        bank_factor=pair,
        solar=np.zeros_like(power.solar),
        engine=np.zeros_like(power.engine),
        engine_speeds=np.zeros((1, engines, 2)),
        engine_powers=np.zeros((1, engines, 2)),
        alternator=np.zeros_like(power.alternator),
        alternator_speeds=np.zeros((1, machines, 2)),
        alternator_currents=np.zeros((1, machines, 2)),
    )


class Kept:
    """The last runs. Used from any thread."""

    def __init__(self) -> None:
        self._runs: deque[tuple[Asked, Made]] = deque(maxlen=KEPT)
        self._lock = threading.Lock()

    def known(self, wanted: Asked) -> Made | None:
        """What the same run came to; None where it is not kept."""
        with self._lock:
            runs = tuple(self._runs)
        for run in runs:
            if _same(run[0], wanted):
                self._to_front(run)
                return run[1]
        return None

    def keep(self, wanted: Asked, made: Made) -> None:
        self._to_front((wanted, made))

    def forget(self) -> None:
        with self._lock:
            self._runs.clear()

    def _to_front(self, run: tuple[Asked, Made]) -> None:
        with self._lock:
            others = [one for one in self._runs if one[0] is not run[0]]
            self._runs = deque((run, *others), maxlen=KEPT)


KEEPS = Kept()


def _same(a: Asked, b: Asked) -> bool:
    if (a.step, a.mode) != (b.step, b.mode):
        return False
    return all(
        _same_arrays(one, other) for one, other in ((a.boat, b.boat), (a.state, b.state), (a.forcing, b.forcing))
    )


def _same_arrays(a: Any, b: Any) -> bool:
    """Whether arrays, or groups of them, hold the same bits; not a number is then the same as itself."""
    if a is b:
        return True
    if isinstance(a, tuple):
        return all(map(_same_arrays, a, b))
    return a.shape == b.shape and np.array_equal(a.view(np.int64), b.view(np.int64))
