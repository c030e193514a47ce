"""What parts give off in the runs of a design, and how warm that makes a space."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from anchorwatt.design.fill_engine_battery import mean_output
from anchorwatt.design.specification import Converter, Item, Space, Specification
from anchorwatt.physics.locker import airflow_to_hold, locker_air
from anchorwatt.physics.transformer import transformer_input
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.sizing.converters import rating_in, taken_by

HOUR = 3600.0

COUNTED = ("inverter", "charger", "transformer", "dc_dc", "battery_module")
"""Kinds whose heat the runs give."""

UNCOUNTED = "what compressor shells and fan motors give off: it has no figure in the catalogue"


@dataclass(frozen=True)
class SpaceHeat:
    """A space in the hour in which it is hottest."""

    run: str
    at: float  # s after the midnight before the night, the end of that hour; nan = unknown
    around: float  # °C, mean of its compartment's air in that hour; nan = it is in none of those described
    air: float  # °C
    losses: tuple[tuple[str, float], ...]  # tags and W, mean of that hour

    @property
    def heat(self) -> float:
        """W, all parts together."""
        return math.fsum(loss for _, loss in self.losses)

    def airflow_for(self, space: Space, highest: float) -> float:
        """m³/s that would hold it at a temperature; infinite where the compartment itself is too warm."""
        return airflow_to_hold(self.around, self.heat, space.wall_conductance, highest)


@dataclass(frozen=True)
class CompartmentHour:
    """The hottest hour of a compartment."""

    run: str
    at: float  # s after the midnight before the night, the end of that hour
    air: float  # °C, mean of that hour


class Heats:
    """The heat that each part gives off, minute by minute, worked out once for all spaces."""

    def __init__(self, specification: Specification, simulation: Simulation) -> None:
        self.specification, self.simulation = specification, simulation
        self._known: dict[str, tuple[Floats, ...]] = {}

    @cached_property
    def runs(self) -> tuple[Run, ...]:
        """Night, day and recharge."""
        every = (self.simulation.night, self.simulation.day, self.simulation.recharge)
        return tuple(run for run in every if run is not None)

    def of(self, item: Item) -> tuple[Floats, ...]:
        """W at each step of each run."""
        if item.tag not in self._known:
            self._known[item.tag] = tuple(self._of(item, run) for run in self.runs)
        return self._known[item.tag]

    def space(self, space: Space, items: Sequence[Item]) -> SpaceHeat:
        """The hour in which the space is hottest with those parts in it."""
        found = []
        for number, run in enumerate(self.runs):
            width = max(1, min(round(HOUR / run.step), run.clock.size))
            means = [_means(self.of(item)[number], width) for item in items]
            heat = np.sum(means, axis=0) if means else np.zeros(run.clock.size - width + 1)
            around = _means(run.series.air[0, space.cabin], width) if space.cabin >= 0 else np.zeros_like(heat)
            per_watt = 1.0
            if math.isfinite(locker_air(25.0, 1.0, space.wall_conductance, space.airflow)):
                per_watt = locker_air(25.0, 1.0, space.wall_conductance, space.airflow) - 25.0
            # Density hardly changes with the air: the hour is found with that of 25 °C, its air by the balance itself.
            worst = int(np.argmax(around + per_watt * heat))
            losses = [float(one[worst]) for one in means]
            found.append(_hour(space, items, run, float(run.clock[worst + width - 1]), float(around[worst]), losses))
        return max(found, key=lambda hour: hour.heat if math.isnan(hour.air) else hour.air)

    def compartment(self, cabin: int) -> CompartmentHour:
        """The hour in which a compartment's air is hottest, all machinery and parts in it counted by the runs."""
        found = []
        for run in self.runs:
            width = max(1, min(round(HOUR / run.step), run.clock.size))
            means = _means(run.series.air[0, cabin], width)
            worst = int(np.argmax(means))
            found.append(CompartmentHour(run.name, float(run.clock[worst + width - 1]), float(means[worst])))
        return max(found, key=lambda hour: hour.air)

    def rating(self, item: Item, air: float) -> tuple[float, float]:
        """Shares of its rating that a converter gives in that air, and that the runs ask of it; nan for all others."""
        converter, asked = self._asked(item)
        if converter is None or math.isnan(air):
            return math.nan, math.nan
        if math.isinf(air):
            return 0.0, asked / converter.rated_power
        return rating_in(converter, air) / converter.rated_power, asked / converter.rated_power

    def _asked(self, item: Item) -> tuple[Converter | None, float]:
        specification = self.specification
        if item.kind == "inverter":
            runs = (self.simulation.night, self.simulation.day)
            return specification.inverter, max(float(run.summary.peak_inverter_power[0]) for run in runs)
        if item.kind == "charger" and specification.charger is not None:
            return specification.charger, max(float(run.series.charger[0].max()) for run in self.runs)
        if item.kind == "dc_dc" and specification.engine_battery is not None:
            return specification.engine_battery.converter, mean_output(specification.engine_battery)
        return None, math.nan

    def rise_of_cells(self, heat: float) -> float:
        """K of the bank's cells over the air round them, for the heat that they give off."""
        return heat / self.specification.bank.heat_conductance

    def _of(self, item: Item, run: Run) -> Floats:
        specification, series = self.specification, run.series
        nothing = np.zeros(run.clock.size)
        if item.kind == "inverter":
            lost: Floats = np.maximum(series.inverter_input[0] - series.inverter_output[0], 0.0)
            return lost
        if item.kind == "charger" and specification.charger is not None:
            charger = specification.charger
            return np.array([taken_by(charger, out) - out if out > 0.0 else 0.0 for out in series.charger[0].tolist()])
        if item.kind == "transformer" and specification.transformer is not None:
            unit = specification.transformer
            live = (series.inverter_output[0] > 0.0) | (series.shore[0] > 0.0)
            drawn = np.where(live, series.plant_power[0] + run.forcing.ac_load[0], 0.0)
            figures = (unit.rated_power, unit.core_loss, unit.copper_loss)
            return np.array(
                [transformer_input(out, *figures) - out if on else 0.0 for out, on in zip(drawn, live, strict=True)]
            )
        if item.kind == "dc_dc" and specification.engine_battery is not None:
            battery = specification.engine_battery
            mean = mean_output(battery)
            return nothing + taken_by(battery.converter, mean) - mean
        if item.kind == "battery_module":
            bank = specification.bank
            around = run.series.air[0, bank.cabin] if bank.cabin >= 0 else nothing + bank.temperature
            given: Floats = np.maximum(bank.heat_conductance * (series.bank_temperature[0] - around), 0.0)
            return given
        return nothing


def _hour(
    space: Space, items: Sequence[Item], run: Run, end: float, around: float, losses: Sequence[float]
) -> SpaceHeat:
    known = space.cabin >= 0
    heat = math.fsum(losses)
    return SpaceHeat(
        run=run.name,
        at=end,
        around=around if known else math.nan,
        air=locker_air(around, heat, space.wall_conductance, space.airflow) if known else math.nan,
        losses=tuple((item.tag, loss) for item, loss in zip(items, losses, strict=True)),
    )


def _means(values: Floats, width: int) -> Floats:
    """Means over `width` steps, one a step that such a stretch may end with."""
    total = np.concatenate(([0.0], np.cumsum(values)))
    found: Floats = (total[width:] - total[:-width]) / width
    return found
