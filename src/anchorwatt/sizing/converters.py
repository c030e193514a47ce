"""Inverter, charger and DC-DC converter: efficiency over the load, and what heat leaves of their ratings."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from anchorwatt.design.fill_engine_battery import mean_output
from anchorwatt.design.specification import Converter, Specification
from anchorwatt.physics.inverter import converter_input, output_of_best_efficiency, overload_time, temperature_factor
from anchorwatt.physics.transformer import transformer_input
from anchorwatt.physics.weighted_efficiency import european_efficiency
from anchorwatt.simulation.forcing import DAY, holds
from anchorwatt.simulation.runs import Run, Simulation

LOADS = (0.05, 0.10, 0.20, 0.30, 0.50, 0.75, 1.00)
"""Share of the rating at which a curve is told."""

WAKES = 20.0
"""W of plant and loads, above which an inverter in sleep wakes. From memory: set to 10 to 50 W."""

MINUTE = 60.0
START_TIME = 0.5
"""s that a motor takes to start, for which a surge must be carried. From memory."""


@dataclass(frozen=True)
class EfficiencyPoint:
    share: float  # of the rating
    output: float  # W
    loss: float  # W

    @property
    def efficiency(self) -> float:
        """Output over what is taken."""
        return self.output / (self.output + self.loss)


@dataclass(frozen=True)
class Efficiency:
    """A converter's efficiency over its load."""

    points: tuple[EfficiencyPoint, ...]
    best: EfficiencyPoint
    european: float  # weighted


@dataclass(frozen=True)
class HighestStep:
    """The most that is asked of the inverter, held against its rating in its compartment."""

    name: str
    at: float  # s after the midnight before the night
    power: float  # W, a cycling machine counted at what it draws while it runs
    share: float  # of the rating there; inf where heat leaves none
    lasts: float  # s for which the inverter gives that


@dataclass(frozen=True)
class InverterFigures:
    name: str
    rated_power: float  # W
    efficiency: Efficiency
    hottest_air: float  # °C of its compartment in the runs, nan = it stands in none of those described
    rating: float  # W that it gives for long in that air
    steps: tuple[HighestStep, ...]  # of the night and of the day, loads at their mean
    at_once: HighestStep  # the plant and every load that the plan ever runs in a period, all running
    no_load_power: float  # W
    no_load_energy: float  # J of its no-load loss in the night
    night_loss: float  # J, all of its losses in the night
    idle_time: float  # s of 24 h in which next to nothing is asked of it
    sleep_saving: float  # J of 24 h from the bank that sleep would save in that time
    surge: float  # W that it gives for a motor's start, in that air
    minute: float  # W that it gives for a minute, in that air
    start: float  # W at the shared plant's start, the highest step of its loads running
    alternative_start: float  # W at the largest start of the self-contained units, nan = the design names none


@dataclass(frozen=True)
class ChargerFigures:
    name: str
    rated_power: float  # W
    efficiency: Efficiency
    hottest_air: float  # °C of its compartment in the runs, nan = none
    rating: float  # W that it gives for long in that air
    current: float  # A of that at the bank's absorb voltage


@dataclass(frozen=True)
class EngineBatteryFigures:
    """The engines' own battery on its converter."""

    name: str
    rated_power: float  # W
    rating: float  # W in its compartment's hottest air
    mean_output: float  # W over the day
    taken: float  # W from the bank for that
    day_energy: float  # J from the bank
    start_energy: float  # J of one start
    standing_load: float  # W
    refilled_after: float  # s after a start, the standing load fed; inf = never


def efficiency_of(converter: Converter) -> Efficiency:
    """A converter's curve, its best point and its weighted efficiency."""

    def point(output: float) -> EfficiencyPoint:
        return EfficiencyPoint(output / converter.rated_power, output, taken_by(converter, output) - output)

    best = output_of_best_efficiency(converter.rated_power, converter.no_load_power, converter.quadratic)
    return Efficiency(
        points=tuple(point(share * converter.rated_power) for share in LOADS),
        best=point(best) if best > 0.0 else point(LOADS[0] * converter.rated_power),
        european=european_efficiency(
            converter.rated_power, converter.no_load_power, converter.linear, converter.quadratic
        ),
    )


def taken_by(converter: Converter, output: float) -> float:
    """W that a converter takes for what it gives."""
    return converter_input(
        output, converter.rated_power, converter.no_load_power, converter.linear, converter.quadratic
    )


def hottest_air(simulation: Simulation, cabin: int) -> float:
    """°C of a compartment at its hottest in the night, the day and the recharge; nan where it is none."""
    if cabin < 0:
        return math.nan
    runs = [simulation.night, simulation.day, simulation.recharge]
    return max(float(np.max(run.series.air[0, cabin])) for run in runs if run is not None)


def rating_in(converter: Converter, air: float) -> float:
    """W that a converter gives for long in air of that temperature; its full rating where that is not known."""
    if math.isnan(air):
        return converter.rated_power
    return converter.rated_power * temperature_factor(air, converter.full_to, converter.derating, converter.highest_air)


def given_for(inverter: Converter, rating: float, time: float) -> float:
    """W that an inverter of that rating gives for `time` s."""
    listed = zip(inverter.overload_shares, inverter.overload_times, strict=True)
    return rating * max([1.0, *(share for share, lasts in listed if lasts >= time)])


def inverter_figures(specification: Specification, simulation: Simulation) -> InverterFigures:
    """The inverter, held against the night and the day."""
    inverter, night, day = specification.inverter, simulation.night, simulation.day
    air = hottest_air(simulation, inverter.cabin)
    rating = rating_in(inverter, air)
    steps = tuple(_highest(run, name, inverter, rating) for run, name in ((night, "night"), (day, "day")))
    awake = float(np.count_nonzero(night.series.inverter_output[0] > 0.0)) * night.step
    idle, saving = _sleep(specification, night, day)
    return InverterFigures(
        name=inverter.name,
        rated_power=inverter.rated_power,
        efficiency=efficiency_of(inverter),
        hottest_air=air,
        rating=rating,
        steps=steps,
        at_once=_at_once(specification, (night, day), rating),
        no_load_power=inverter.no_load_power,
        no_load_energy=inverter.no_load_power * awake,
        night_loss=float(night.summary.inverter_loss[0]),
        idle_time=idle,
        sleep_saving=saving,
        surge=given_for(inverter, rating, START_TIME),
        minute=given_for(inverter, rating, MINUTE),
        start=max(step.power for step in steps),
        alternative_start=_alternative_start(specification, simulation),
    )


def _highest(run: Run, name: str, inverter: Converter, rating: float) -> HighestStep:
    at = float(run.clock[int(np.argmax(run.series.inverter_output[0]))])
    return _held_against(inverter, rating, name, at, float(run.summary.peak_inverter_power[0]))


def _at_once(specification: Specification, runs: tuple[Run, ...], rating: float) -> HighestStep:
    """The worst minute, were every AC load that its period runs at all running in full beside the plant."""
    highest, at = 0.0, runs[0].start
    for run in runs:
        clock = (run.clock - 0.5 * run.step) % DAY
        for period in specification.plan:
            there = holds(period, clock) & (run.series.inverter_output[0] > 0.0)
            if not there.any():
                continue
            pairs = zip(specification.loads, period.running, strict=True)
            loads = math.fsum(load.power for load, share in pairs if load.alternating and share > 0.0)
            plant = np.where(there, run.series.plant_power[0], -1.0)
            if loads + plant.max() > highest:
                highest, at = loads + float(plant.max()), float(run.clock[int(np.argmax(plant))])
    transformer = specification.transformer
    if transformer is not None and highest > 0.0:
        losses = (transformer.rated_power, transformer.core_loss, transformer.copper_loss)
        highest = transformer_input(highest, *losses)
    return _held_against(specification.inverter, rating, "all loads at once", at, highest)


def _held_against(inverter: Converter, rating: float, name: str, at: float, power: float) -> HighestStep:
    share = power / rating if rating > 0.0 else (math.inf if power > 0.0 else 0.0)
    lasts = 0.0
    if not math.isinf(share):
        lasts = overload_time(share, inverter.overload_shares, inverter.overload_times)
    return HighestStep(name, at, power, share, lasts)


def _sleep(specification: Specification, *runs: Run) -> tuple[float, float]:
    """s in which plant and loads ask for next to nothing, and J that an inverter asleep would save in them."""
    time, energy = 0.0, 0.0
    for run in runs:
        series = run.series
        asked = run.forcing.ac_load[0] + series.plant_power[0] - specification.plant.standby_power
        idle = (series.inverter_output[0] > 0.0) & (asked < WAKES)
        time += float(np.count_nonzero(idle)) * run.step
        saved = np.maximum(0.0, series.inverter_input[0] - specification.inverter.sleep_power)
        energy += float(saved[idle].sum()) * run.step
    return time, energy


def _alternative_start(specification: Specification, simulation: Simulation) -> float:
    """The highest step of the self-contained units' night, with one of them starting instead of running."""
    run, alternative = simulation.alternative_night, specification.alternative
    if run is None or alternative is None:
        return math.nan
    extra = max((unit.starting_ratio - 1.0) * unit.circuit.rated_power for unit in alternative.units)
    return float(run.summary.peak_inverter_power[0]) + extra


def charger_figures(specification: Specification, simulation: Simulation) -> ChargerFigures | None:
    """The charger; None where the design has none."""
    charger = specification.charger
    if charger is None:
        return None
    air = hottest_air(simulation, charger.cabin)
    rating = rating_in(charger, air)
    return ChargerFigures(
        name=charger.name,
        rated_power=charger.rated_power,
        efficiency=efficiency_of(charger),
        hottest_air=air,
        rating=rating,
        current=rating / specification.bank.absorb_voltage,
    )


def engine_battery_figures(specification: Specification, simulation: Simulation) -> EngineBatteryFigures | None:
    """The engines' battery; None where the bank does not keep it."""
    battery = specification.engine_battery
    if battery is None:
        return None
    converter = battery.converter
    rating = rating_in(converter, hottest_air(simulation, converter.cabin))
    mean = mean_output(battery)
    taken = taken_by(converter, mean)
    left = rating - battery.standing_load
    return EngineBatteryFigures(
        name=converter.name,
        rated_power=converter.rated_power,
        rating=rating,
        mean_output=mean,
        taken=taken,
        day_energy=taken * DAY,
        start_energy=battery.start_energy,
        standing_load=battery.standing_load,
        refilled_after=battery.start_energy / left if left > 0.0 else math.inf,
    )
