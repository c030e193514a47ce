"""What runs through the boat's conductors in the runs of night, day and recharge."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from anchorwatt.design.specification import Period, Specification
from anchorwatt.simulation.forcing import DAY, holds
from anchorwatt.simulation.runs import Run, Simulation

HOUR = 3600.0
DAYTIME = 10 * 60  # s between the moments of a day at which the plan is asked

Floats = NDArray[np.float64]
Reads = Callable[[Run], Floats]


@dataclass(frozen=True)
class Flow:
    """A current over the runs."""

    highest_hour: float  # A, highest mean of an hour
    highest: float  # A, highest minute
    mean_square: float  # A², of 24 h, night and day


class DesignCurrents:
    """Currents of the runs, and what the plan says of each load."""

    def __init__(self, specification: Specification, simulation: Simulation) -> None:
        self.specification = specification
        self.runs = [run for run in (simulation.night, simulation.day, simulation.recharge) if run is not None]

    @cached_property
    def hottest(self) -> tuple[float, ...]:
        """°C, the highest of each compartment's air in the runs."""
        highest = np.max([run.summary.highest_air[0] for run in self.runs], axis=0)
        return tuple(float(one) for one in highest)

    @cached_property
    def lowest_voltage(self) -> float:
        """V of the bank at its lowest in the runs, no lower than where it disconnects."""
        found = min(float(run.series.voltage[0].min()) for run in self.runs)
        return max(found, self.specification.bank.cut_off_voltage)

    def flow(self, reads: Reads) -> Flow:
        """A current as it runs in night, day and recharge."""
        hour = highest = 0.0
        for run in self.runs:
            values = np.abs(reads(run))
            width = min(len(values), round(HOUR / run.step))
            sums = np.concatenate(([0.0], np.cumsum(values)))
            hour = max(hour, float((sums[width:] - sums[:-width]).max()) / width)
            highest = max(highest, float(values.max()))
        squares = [np.square(reads(run)) for run in self.runs[:2]]
        return Flow(hour, highest, float(np.concatenate(squares).mean()))

    @cached_property
    def bank(self) -> Flow:
        """Through the bank's terminals, either way."""
        return self.flow(lambda run: run.series.current[0])

    @cached_property
    def inverter(self) -> Flow:
        """Into the inverter."""
        return self.flow(lambda run: run.series.inverter_input[0] / run.series.voltage[0])

    @cached_property
    def inverter_power(self) -> Flow:
        """Out of the inverter; W where a `Flow` has A."""
        return self.flow(lambda run: run.series.inverter_output[0])

    @cached_property
    def charger(self) -> Flow:
        """Out of the charger."""
        return self.flow(lambda run: run.series.charger[0] / run.series.voltage[0])

    @cached_property
    def shore_power(self) -> Flow:
        """From shore; W where a `Flow` has A."""
        return self.flow(lambda run: run.series.shore[0])

    @cached_property
    def plant_power(self) -> Flow:
        """The cooling plant, fans and pump in it; W where a `Flow` has A."""
        return self.flow(lambda run: run.series.plant_power[0])

    @cached_property
    def dc_power(self) -> Flow:
        """All DC loads; W where a `Flow` has A."""
        return self.flow(lambda run: run.series.dc_load[0])

    @cached_property
    def solar(self) -> Flow:
        """Out of the solar controller; W where a `Flow` has A."""
        return self.flow(lambda run: run.series.solar[0])

    def alternator(self, number: int) -> Flow:
        """Out of an alternator, counted over all engines."""
        return self.flow(lambda run: run.series.alternator_current[0, number])

    @cached_property
    def cooling_share(self) -> float:
        """Share of 24 h in which the plant draws more than its controls."""
        standby = self.specification.plant.standby_power
        on = [run.series.plant_power[0] > 1.01 * standby + 1.0 for run in self.runs[:2]]
        return float(np.concatenate(on).mean())

    def running(self, load: int) -> float:
        """Share of 24 h in which a load runs, by the plan."""
        return sum(share * period.running[load] for share, period in self._shares)

    @cached_property
    def _shares(self) -> tuple[tuple[float, Period], ...]:
        clocks = np.arange(0.0, DAY, DAYTIME)
        return tuple((float(holds(period, clocks).mean()), period) for period in self.specification.plan)
