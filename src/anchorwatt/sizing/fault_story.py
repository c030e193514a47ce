"""What is told of a fault: its figures, its sentences, and the boat minute by minute."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.physics.condensate import margin_over_dew
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.faults import SHOWN, SHOWN_BEFORE, FaultRuns
from anchorwatt.simulation.runs import Run
from anchorwatt.units import System, show

WARM = 28.0
"""°C of a cabin's air at which most people no longer sleep. From memory."""

WARMER = 2.0
"""K over its set point at which a cabin counts as lost to the heat. From practice, no source."""


@dataclass(frozen=True)
class Figure:
    """One figure of a fault's story."""

    key: str
    name: str
    value: float  # SI; nan = not in the time looked at
    dimension: str


@dataclass(frozen=True)
class Trace:
    """One quantity through the minutes round a fault."""

    key: str  # ends in its unit
    label: str
    dimension: str
    values: Floats


@dataclass(frozen=True)
class Minutes:
    """The boat minute by minute, from shortly before the fault."""

    clock: Floats  # ends of the steps, s after the midnight before the night
    traces: tuple[Trace, ...]


@dataclass(frozen=True)
class Fault:
    """A fault, what comes of it, and what people do about it.

    Sentences name figures by their key in braces; `told` puts them in.
    """

    key: str
    name: str
    at: float  # s after the midnight before the night
    happens: str
    lost: str
    protects: str
    sees: str
    does: str
    figures: tuple[Figure, ...]
    minutes: Minutes
    runs: FaultRuns

    def figure(self, key: str) -> Figure:
        """The figure of that key.

        Raises
        ------
        KeyError
            no such figure.
        """
        return {one.key: one for one in self.figures}[key]

    def told(self, words: str, system: System, written: Callable[[str], str] = str) -> str:
        """One of the sentences with its figures, in a system of units; `written` sets each figure with its unit."""

        def put(found: re.Match[str]) -> str:
            one = self.figure(found[1])
            return written(show(one.value, one.dimension, system))

        return re.sub(r"\{([a-z_]+)\}", put, words)


def minutes(specification: Specification, runs: FaultRuns) -> Minutes:
    """Bank, alternators, plant, loads and the warmest cooled cabin, from shortly before the fault."""
    step = runs.broken.step
    first = max(0, runs.before.clock.size - round(SHOWN_BEFORE / step))
    last = round(SHOWN / step)

    def both(name: str) -> Floats:
        before, after = getattr(runs.before.series, name)[0], getattr(runs.broken.series, name)[0]
        joined: Floats = np.concatenate((before[..., first:], after[..., :last]), axis=-1)
        return joined

    traces = [
        Trace("charge_pct", "charge", "share", both("charge")),
        Trace("bank_current_A", "from bank", "current", both("current")),
        Trace("bank_voltage_V", "bank", "voltage", both("voltage")),
        Trace("plant_power_W", "plant", "power", both("plant_power")),
        Trace("inverter_power_W", "inverter", "power", both("inverter_output")),
        Trace("dc_load_W", "DC loads", "power", both("dc_load")),
        Trace("warmest_air_temperature_C", "warmest", "temperature", both("air")[lived_in(specification, runs)].max(0)),
    ]
    if specification.shore is not None:
        traces.insert(3, Trace("shore_W", "shore", "power", both("shore")))
    if runs.before.series.alternator_current.shape[1] > 0:
        current = both("alternator_current").sum(axis=0)
        traces.insert(3, Trace("alternator_current_A", "alternators", "current", current))
    clock = np.concatenate((runs.before.clock[first:], runs.broken.clock[:last]))
    return Minutes(clock, tuple(traces))


def lived_in(specification: Specification, runs: FaultRuns) -> list[int]:
    """Cabins that are cooled when the fault strikes; where none is, all that are not machinery spaces."""
    points = runs.before.forcing.set_point[0, :, -1]
    cooled = [c for c in range(points.size) if not math.isnan(points[c])]
    return cooled or [c for c, cabin in enumerate(specification.cabins) if cabin.use != "machinery"] or [0]


def until_warm(specification: Specification, runs: FaultRuns) -> tuple[float, float, str]:
    """How fast cabins that are cooled warm up after a fault.

    Returns
    -------
    s until the first of them is at `WARM`, s until the first is `WARMER` over its set point (nan = not while it is
    looked at), and the name of the one that is furthest over it two hours on
    """
    run = runs.broken
    points = runs.before.forcing.set_point[0, :, -1]
    cooled = [c for c in range(points.size) if not math.isnan(points[c])]
    if not cooled:
        return math.nan, math.nan, ""
    air = run.series.air[0, cooled]
    over = air - points[cooled][:, None]
    furthest = cooled[int(np.argmax(over[:, min(run.clock.size, round(SHOWN / run.step)) - 1]))]
    names = specification.cabins[furthest].name
    return first(run, air.max(axis=0) >= WARM), first(run, over.max(axis=0) >= WARMER), names


def first(run: Run, holds: Floats) -> float:
    """s from the start of a run until something first holds at the end of a step; nan = never."""
    found = np.flatnonzero(holds)
    return (float(found[0]) + 1.0) * run.step if found.size else math.nan


def least_dew_margin(runs: FaultRuns, cabins: list[int]) -> float:
    """K by which the coldest inside surface of cabins stays over dew in the two hours after a fault."""
    run = runs.broken
    often = max(1, round(300.0 / run.step))
    pressure = float(run.forcing.pressure[0])
    return min(
        margin_over_dew(float(run.series.coldest[0, c, k]), float(run.series.humidity[0, c, k]), pressure)
        for c in cabins
        for k in range(0, min(run.clock.size, round(SHOWN / run.step)), often)
    )


def warmth_of(specification: Specification, runs: FaultRuns) -> tuple[list[Figure], str]:
    """How the cabins fare, as figures and a sentence; empty where none is cooled."""
    warm, over, worst = until_warm(specification, runs)
    if not worst:
        return [], "No cabin was being cooled."
    figures = [
        Figure("warm_after", f"until the first cabin is at {WARM:g} °C", warm, "time"),
        Figure("warm", "warm", WARM, "temperature"),
        Figure("over_after", "until the first cabin is over its set point by that much", over, "time"),
        Figure("over", "over its set point", WARMER, "temperature difference"),
    ]
    parts = []
    if not math.isnan(over):
        parts.append("the first cabin is {over} over its set point after {over_after}")
    if not math.isnan(warm):
        parts.append("at {warm} after {warm_after}")
    words = f"Cabins warm: {', '.join(parts)}; {worst} fares worst." if parts else "No cabin grows warm in that time."
    return figures, words


def at_dawn(specification: Specification, runs: FaultRuns) -> list[Figure]:
    """Charge at dawn with and without a fault of the night."""
    k = round((specification.brief.hold + specification.brief.night_start - runs.moment) / runs.broken.step) - 1
    at = min(max(k, 0), runs.broken.clock.size - 1)
    return [
        Figure("dawn_charge", "charge at dawn", float(runs.broken.series.charge[0, at]), "share"),
        Figure("dawn_charge_without", "charge at dawn without it", float(runs.sound.series.charge[0, at]), "share"),
    ]
