"""An hour of charging, the regulator holding its temperature, beside one in which the alternators may run hot."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.belt import belt_power_limit
from anchorwatt.simulation.arrays import AT_ANCHOR
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.sizing.regulator import BURNT, air_that_reaches_hold, spare_for_one

MOMENTS = (1.0, 10.0, 20.0, 40.0, 60.0)
"""Minutes after the start that are told."""
HOT_SPACE = 60.0
"""°C of the air in which the trade takes hot curves; read second-hand."""


@dataclass(frozen=True)
class Moment:
    """The alternators at one moment of the hour."""

    after: float  # s
    current: float  # A, all of them together
    winding: float  # °C, hottest
    frame: float  # °C, hottest


@dataclass(frozen=True)
class Hour:
    """One hour of charging."""

    held: bool  # whether the regulator holds its temperature
    moments: tuple[Moment, ...]
    energy: float  # J that the alternators gave
    hottest_winding: float  # °C
    hottest_frame: float  # °C
    over: float  # s for which a winding was above its insulation's limit


@dataclass(frozen=True)
class ChargingHour:
    """The same hour both ways."""

    at_anchor: bool  # at the charging speed at anchor, else as the night is put back
    given_air: float  # °C that was put round the alternators, nan = what the run makes of it
    held: Hour
    hot: Hour | None  # None where the windings would pass 400 °C, beyond which nothing is told: they burn
    highest_winding: float  # °C, lowest limit of the insulation aboard
    speeds: tuple[float, ...]  # rad/s of the engines that carry alternators
    air: float  # °C round the alternators at the end, warmest
    burnt: float  # °C of a winding beyond which nothing is told
    reached_in: float  # °C of that air above which the held temperature is reached in the end

    @property
    def alike(self) -> bool:
        """Whether the held temperature does nothing through the hour."""
        return self.hot is not None and self.held.energy >= self.hot.energy * (1.0 - 1e-9)


def _hour(run: Run, held: bool, limits: tuple[float, ...]) -> Hour:
    current = run.series.alternator_current[0].sum(axis=0)
    windings, frames = run.series.alternator_winding[0], run.series.alternator_frame[0]
    winding, frame = windings.max(axis=0), frames.max(axis=0)
    after = run.clock - run.start
    rows = [int(np.argmin(np.abs(after - 60.0 * minute))) for minute in MOMENTS]
    moments = tuple(
        Moment(float(after[row]), float(current[row]), float(winding[row]), float(frame[row])) for row in rows
    )
    over = (windings > np.array(limits)[:, None]).any(axis=0)
    return Hour(
        held=held,
        moments=moments,
        energy=float(run.summary.alternator_energy[0]),
        hottest_winding=float(winding.max()),
        hottest_frame=float(frame.max()),
        over=float(over.sum()) * run.step,
    )


def _reached_in(specification: Specification, speeds: tuple[float, ...], propelling: bool) -> float:
    airs = []
    for engine, speed in zip(specification.engines, speeds, strict=True):
        if speed <= 0.0:
            continue
        for machine in engine.alternators:
            rotor = speed * machine.pulley_ratio
            power = min(
                spare_for_one(engine, speed, propelling),
                belt_power_limit(machine.belt_power, machine.belt_speed, rotor),
            )
            voltage = specification.bank.absorb_voltage
            airs.append(air_that_reaches_hold(machine, voltage, rotor, power, machine.current_limit))
    return min(airs, default=math.nan)


def _air(specification: Specification, run: Run) -> float:
    """°C round the alternators at the end of a run, warmest."""
    airs = [
        float(run.series.air[0, engine.cabin, -1]) if math.isnan(engine.air_temperature) else engine.air_temperature
        for engine in specification.engines
        if engine.alternators
    ]
    return max(airs)


def charging_hours(specification: Specification, simulation: Simulation) -> tuple[ChargingHour, ...]:
    """The hour both ways, from dawn with the bank at its reserve: as the night is put back, at anchor, and in hot air.

    Two where the night is put back at anchor; none without an alternator.
    """
    limits = tuple(m.highest_winding for engine in specification.engines for m in engine.alternators)
    hours: list[ChargingHour] = []
    for at_anchor, given in ((False, math.nan), (True, math.nan), (True, HOT_SPACE)):
        if at_anchor and math.isnan(given) and hours and hours[0].at_anchor:
            continue
        held = simulation.charging_hour(True, at_anchor, given)
        if held is None:
            break
        try:
            hot = simulation.charging_hour(False, at_anchor, given)
        except OutOfRange:
            hot = None
        turning = tuple(float(speed) for speed in held.forcing.engine_speed[0, :, 0])
        hours.append(
            ChargingHour(
                at_anchor=bool(held.forcing.doing[0] == AT_ANCHOR),
                given_air=given,
                held=_hour(held, True, limits),
                hot=None if hot is None else _hour(hot, False, limits),
                highest_winding=min(limits),
                speeds=tuple(
                    speed for speed, engine in zip(turning, specification.engines, strict=True) if engine.alternators
                ),
                air=_air(specification, held) if math.isnan(given) else given,
                burnt=BURNT,
                reached_in=_reached_in(specification, turning, bool(held.forcing.propelling[0])),
            )
        )
    return tuple(hours)
