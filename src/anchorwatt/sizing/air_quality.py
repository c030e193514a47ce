"""Carbon dioxide in every cabin, and the outdoor air that would keep it in bounds.

Air moves as in the simulation: from outdoors by leaks, hatches left ajar and fans, and between cabins through doors.
What a handler carries from one cabin into another is not counted: in the fuller of the two the truth is a little
better. Carbon dioxide tells how stale air is; it says nothing of carbon monoxide, which needs its alarm.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.physics.carbon_dioxide import OUTDOOR, fresh_air_for
from anchorwatt.physics.moist_air import density
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.plants import CABIN_AIR_DENSITY
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.sizing.occupancy import people, periods

BREATHED_DENSITY = density(20.0, 0.0, 101_325.0)
"""kg/m³ of dry air where a person's carbon dioxide is counted."""

LIMITS = (1000e-6, 1150e-6, 1500e-6)
"""Shares by volume for which the outdoor air is told."""


@dataclass(frozen=True)
class CabinAir:
    """The air of a cabin that people are in through a night."""

    cabin: int
    people: float  # most at once
    highest: float  # share by volume of carbon dioxide
    at_end: float  # the same, at the end of the night
    outdoor_flow: float  # m3/s of outdoor air, mean while people are there
    least_flow: float  # m3/s of outdoor air for each of them, least through the night
    needed: tuple[float, ...]  # m3/s of outdoor air that keeps the cabin, its door shut, at each of `LIMITS`


def breathed_out(specification: Specification, run: Run) -> Floats:
    """m³/s of carbon dioxide that people breathe out in each cabin through each step (C, T), as warm as the cabin."""
    conditions, index = periods(specification, run)
    table = np.zeros((len(conditions), len(specification.cabins)))
    for p, period in enumerate(conditions):
        for group in period.occupants:
            table[p, group.cabin] += group.count * group.person.carbon_dioxide
    return np.ascontiguousarray(table[index].T) * BREATHED_DENSITY / CABIN_AIR_DENSITY


def through(specification: Specification, simulation: Simulation, run: Run, start: Floats) -> Floats:
    """Shares by volume at the ends of a run's steps (C, T), from those at its start (C,).

    The cabins' balance is linear, and constant within a step: it is solved exactly.
    """
    from scipy.linalg import expm

    fabric = simulation.boat.fabric
    mass, exchange = fabric.air_mass[0], fabric.exchange[0]
    row, breathed = run.forcing.film_row, breathed_out(specification, run)
    cabins, steps = breathed.shape
    result = np.empty((cabins, steps))
    now = start
    follow, add = np.empty((cabins, cabins)), np.empty(cabins)
    for k in range(steps):
        # A stretch of the plan begins a row of its own, so that people change with the row alone.
        if k == 0 or row[k] != row[k - 1]:
            flow = run.forcing.renewed_flow[0, row[k]]
            system = np.zeros((cabins + 1, cabins + 1))
            system[:cabins, :cabins] = (exchange - np.diag(exchange.sum(axis=1) + flow)) / mass[:, None]
            system[:cabins, cabins] = (flow * OUTDOOR + breathed[:, k] * CABIN_AIR_DENSITY) / mass
            solved = expm(system * run.step)
            follow, add = solved[:cabins, :cabins], solved[:cabins, cabins]
        now = follow @ now + add
        result[:, k] = now
    return result


def before(simulation: Simulation, run: Run) -> tuple[Run, ...]:
    """The runs that lead up to a run, so that the evening counts; a run of a day by itself leads up to itself."""
    if run.name == "before":
        return ()
    if run.start == simulation.night_start:
        return (simulation.before,)
    if run.start == simulation.dawn:
        return (simulation.before, simulation.night)
    return (run,)


def carbon_dioxide(specification: Specification, simulation: Simulation, run: Run) -> Floats:
    """Share by volume of carbon dioxide in each cabin at the ends of a run's steps, (C, T)."""
    start = np.full(len(specification.cabins), OUTDOOR)
    for earlier in before(simulation, run):
        start = through(specification, simulation, earlier, start)[:, -1]
    return through(specification, simulation, run, start)


def fresh_air_needed(specification: Specification, run: Run, limit: float) -> Floats:
    """m³/s of outdoor air that would keep each cabin (C,), its door shut, at a share by volume."""
    most = breathed_out(specification, run).max(axis=1)
    return np.array([fresh_air_for(float(generation), limit, OUTDOOR) for generation in most])


def outdoor_flow(run: Run) -> Floats:
    """m³/s of outdoor air into each cabin through each step, (C, T)."""
    flow: Floats = run.forcing.renewed_flow[0, run.forcing.film_row].T / CABIN_AIR_DENSITY
    return flow


def cabin_air(specification: Specification, simulation: Simulation) -> tuple[CabinAir, ...]:
    """Every cabin that people are in through the night."""
    run = simulation.night
    shares, flows, present = (
        carbon_dioxide(specification, simulation, run),
        outdoor_flow(run),
        people(specification, run),
    )
    needed = [fresh_air_needed(specification, run, limit) for limit in LIMITS]
    return tuple(
        CabinAir(
            cabin=c,
            people=float(present[c].max()),
            highest=float(shares[c].max()),
            at_end=float(shares[c, -1]),
            outdoor_flow=float(flows[c, there].mean()),
            least_flow=float((flows[c, there] / present[c, there]).min()),
            needed=tuple(float(flow[c]) for flow in needed),
        )
        for c, there in enumerate(present > 0.0)
        if there.any()
    )
