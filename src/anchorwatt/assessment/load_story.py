"""The computed peak beside the trade's rules, and why the two differ."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from anchorwatt.assessment.gains import BoatGains, boat_gains
from anchorwatt.design.specification import Layer, Outside, Specification
from anchorwatt.simulation.arrays import SHARED, Boat, Floats
from anchorwatt.simulation.forcing import design_set_points
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.sizing.rules_of_thumb import RulesOfThumb, rules_of_thumb

NEAR = (0.8, 1.25)
"""Shares of the average rule between which the computed peak counts as near it."""

SINGLE_SKIN = (Layer("laminate", 0.010, 0.40, 1900.0, 1100.0),)
"""What a hull without core and lining is built of. Conductivity: ISO 10077-2, the rest from memory."""

PULL_DOWN = 2.0 * 3600.0
"""s in which a boat that was left uncooled is to be cool. Common practice, no source."""
LONGEST_PULL_DOWN = 12.0 * 3600.0
REACHED = 1.0
"""K over its set point at which a cabin counts as cool."""
LARGEST_PLANT = 64.0
"""Times the design's plant beyond which no larger one is tried."""


@dataclass(frozen=True)
class LoadStory:
    """Figures that say how far the computed peak lies from the rules, and what lies between."""

    peak: float  # W, the boat's highest hour
    rules: RulesOfThumb
    uncovered: float  # W, the same without any cover, blind and awning
    pull_down: float  # W that bring the boat, left uncooled until its highest hour, to its set points; nan = none does
    pull_down_time: float  # s in which they do
    largest: tuple[tuple[str, float], ...]  # the causes that make most of the peak, share of it
    single_skin: float  # W of the peak if hull and decks were a single skin
    bare: float  # W of the peak with a single skin and without any cover
    own_pull_down: float  # s that the design's plant takes for it; nan = more than `LONGEST_PULL_DOWN`

    @property
    def share(self) -> float:
        """The computed peak over the average rule."""
        return self.peak / self.rules.boat

    @property
    def near(self) -> bool:
        """Whether the computed peak lands near the average rule."""
        return NEAR[0] <= self.share <= NEAR[1]

    @property
    def below(self) -> bool:
        """Whether it lies below what counts as near."""
        return self.share < NEAR[0]


def uncovered(specification: Specification) -> Specification:
    """The same boat with every cover, blind and awning taken off."""
    cabins = []
    for cabin in specification.cabins:
        surfaces = tuple(replace(surface, sun_left=1.0, sky_left=1.0) for surface in cabin.surfaces)
        windows = tuple(replace(window, cover_factor=1.0) for window in cabin.windows)
        cabins.append(replace(cabin, surfaces=surfaces, windows=windows))
    return replace(specification, cabins=tuple(cabins))


def single_skinned(specification: Specification) -> Specification:
    """The same boat with hull and decks of `SINGLE_SKIN`."""
    cabins = []
    for cabin in specification.cabins:
        surfaces = tuple(
            surface if surface.outside is Outside.NOTHING else replace(surface, layers=SINGLE_SKIN)
            for surface in cabin.surfaces
        )
        cabins.append(replace(cabin, surfaces=surfaces))
    return replace(specification, cabins=tuple(cabins))


def enlarged(boat: Boat, times: float) -> Boat:
    """The boat with a plant, and handlers, so many times as large."""
    plant = boat.plant
    larger = plant._replace(
        handler_air=times * plant.handler_air,
        handler_demand=times * plant.handler_demand,
        handler_fan=times * plant.handler_fan,
        plant_capacity=times * plant.plant_capacity,
        plant_power=times * plant.plant_power,
    )
    return boat._replace(plant=larger)


@dataclass(frozen=True)
class HotBoat:
    """A boat that was left uncooled until a moment, and is cooled from then on."""

    simulation: Simulation
    moment: float  # s after midnight

    def cooled(self, times: float, lasting: float, left: Run) -> tuple[Run, Floats]:
        """The run on a plant so many times as large, and how far the warmest cabin is over its set point, K."""
        points = design_set_points(self.simulation.specification)
        run = self.simulation.run(
            "pull-down",
            self.moment,
            self.moment + lasting,
            left.end,
            mode=SHARED,
            live=False,
            set_points=points,
            boat=enlarged(self.simulation.boat, times),
        )
        over: Floats = np.nanmax(run.series.air[0] - np.array(points)[:, None], axis=0)
        return run, over

    def own_time(self) -> float:
        """s until the design's plant has every cooled cabin within `REACHED` of its set point; nan = too long."""
        run, over = self.cooled(1.0, LONGEST_PULL_DOWN, self.simulation.uncooled(self.moment))
        there = np.flatnonzero(over <= REACHED)
        return float(run.step * (there[0] + 1)) if there.size else math.nan

    def power(self) -> float:
        """W, mean, that the smallest plant gives that gets there in `PULL_DOWN`; nan = none does."""
        left = self.simulation.uncooled(self.moment)

        def misses(times: float) -> bool:
            return float(self.cooled(times, PULL_DOWN, left)[1][-1]) > REACHED

        high = 1.0
        while misses(high):
            high *= 2.0
            if high > LARGEST_PLANT:
                return math.nan
        low = 0.0 if high == 1.0 else 0.5 * high
        while high - low > 0.005 * high:
            middle = 0.5 * (low + high)
            low, high = (middle, high) if misses(middle) else (low, middle)
        return float(self.cooled(high, PULL_DOWN, left)[0].series.plant_load[0].mean())


def load_story(specification: Specification, simulation: Simulation, gains: BoatGains) -> LoadStory | None:
    """The story of the boat's peak; None when no cabin is ever cooled."""
    if not gains.cabins or gains.peak <= 0.0:
        return None

    def peak(changed: Specification) -> float:
        return boat_gains(changed, Simulation(changed, simulation.step)).peak

    hour = gains.peak_hour
    hot = HotBoat(simulation, 3600.0 * hour)
    causes = sorted(((cause, float(values[hour]) / gains.peak) for cause, values in gains.causes), key=lambda x: -x[1])
    return LoadStory(
        peak=gains.peak,
        rules=rules_of_thumb(specification, tuple(cabin.cabin for cabin in gains.cabins)),
        uncovered=peak(uncovered(specification)),
        pull_down=hot.power(),
        pull_down_time=PULL_DOWN,
        largest=tuple(causes[:3]),
        single_skin=peak(single_skinned(specification)),
        bare=peak(single_skinned(uncovered(specification))),
        own_pull_down=hot.own_time(),
    )
