"""Who is in which cabin through a run."""

from __future__ import annotations

import numpy as np

from anchorwatt.design.specification import Occupants, Period, Specification
from anchorwatt.physics.comfort import LEAST_RATE
from anchorwatt.simulation.arrays import Floats, Integers
from anchorwatt.simulation.forcing import DAY, holds, period_at, recharge_stretch
from anchorwatt.simulation.runs import Run


def periods(specification: Specification, run: Run) -> tuple[tuple[Period, ...], Integers]:
    """The conditions that a run went through, and which of them held through each step."""
    steps = run.clock.size
    if run.name == "hold":
        return (period_at(specification, run.start),), np.zeros(steps, dtype=np.int64)
    stretch = recharge_stretch(specification, run.start) if run.name == "recharge" else None
    if stretch is not None:
        return (stretch.period,), np.zeros(steps, dtype=np.int64)
    middles = (run.clock - 0.5 * run.step) % DAY
    index = np.zeros(steps, dtype=np.int64)
    for p, period in enumerate(specification.plan):
        index[holds(period, middles)] = p
    return specification.plan, index


def people(specification: Specification, run: Run) -> Floats:
    """How many people are in each cabin through each step, (C, T)."""
    conditions, index = periods(specification, run)
    table = np.zeros((len(conditions), len(specification.cabins)))
    for p, period in enumerate(conditions):
        for group in period.occupants:
            table[p, group.cabin] += group.count
    return np.ascontiguousarray(table[index].T)


def most_of_them(period: Period, cabin: int) -> Occupants | None:
    """The largest group of people in a cabin; None when nobody is there."""
    groups = [group for group in period.occupants if group.cabin == cabin and group.count > 0.0]
    return max(groups, key=lambda group: group.count, default=None)


def slept_in(specification: Specification, run: Run) -> tuple[int, ...]:
    """Cabins that somebody sleeps in through a run: people at rest, or anybody in a sleeping cabin."""
    conditions, index = periods(specification, run)
    found = set()
    for p in np.unique(index):
        for group in conditions[p].occupants:
            asleep = group.person.metabolic_rate < LEAST_RATE
            if group.count > 0.0 and (asleep or specification.cabins[group.cabin].use == "sleeping"):
                found.add(group.cabin)
    return tuple(sorted(found))
