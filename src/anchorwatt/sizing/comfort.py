"""Comfort by hour of the night for the people in each cabin.

People asleep are taken at their metabolic rate and under what they lie in and under. At their 0.7 met the predicted
mean vote is used outside the standard's range, which begins at 0.8: it is a guide, and a sleeper can add a cover.
"""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.physics.comfort import LEAST_RATE, dissatisfied_share, operative_temperature, predicted_mean_vote
from anchorwatt.physics.moist_air import relative_humidity
from anchorwatt.simulation.forcing import DAY
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.occupancy import most_of_them, periods

AIR_SPEED = 0.1
"""m/s of the air at the berth, away from the grille's stream. From memory: draught is felt asleep from 0.15 m/s."""

HOUR = 3600.0

WIDEST = 0.7
"""Predicted mean vote, either way, that still counts as comfortable: ISO 7730, annex A, category C, from memory."""


@dataclass(frozen=True)
class ComfortHour:
    """What most people in a cabin feel through an hour of the night, or what is left of the night."""

    cabin: int
    start: float  # s after midnight
    activity: str
    people: float  # at it
    air: float  # °C, mean of the hour, as all that follow
    humidity: float  # relative
    radiant: float  # °C
    operative: float  # °C
    vote: float  # predicted mean vote
    dissatisfied: float  # share
    within_standard: bool  # the activity lies in the range that the standard holds the vote to apply to


def comfort(specification: Specification, simulation: Simulation) -> tuple[ComfortHour, ...]:
    """Every cabin that people are in, hour by hour through the night."""
    run = simulation.night
    conditions, index = periods(specification, run)
    pressure = float(run.forcing.pressure[0])
    hour = max(1, round(HOUR / run.step))
    found = []
    for c in range(len(specification.cabins)):
        for first in range(0, run.clock.size, hour):
            part = slice(first, min(first + hour, run.clock.size))
            # The plan's periods begin on any minute: what holds longest through the hour counts.
            held = int(np.argmax(np.bincount(index[part])))
            group = most_of_them(conditions[held], c)
            if group is None:
                continue
            air, radiant = float(run.series.air[0, c, part].mean()), float(run.series.radiant[0, c, part].mean())
            wet = float(run.series.humidity[0, c, part].mean())
            humidity = min(1.0, relative_humidity(air, wet, pressure))
            rate, clothing = group.person.metabolic_rate, group.person.clothing
            vote = predicted_mean_vote(air, radiant, AIR_SPEED, humidity, rate, clothing)
            found.append(
                ComfortHour(
                    cabin=c,
                    start=(run.start + first * run.step) % DAY,
                    activity=group.person.activity,
                    people=group.count,
                    air=air,
                    humidity=humidity,
                    radiant=radiant,
                    operative=operative_temperature(air, radiant, AIR_SPEED),
                    vote=vote,
                    dissatisfied=dissatisfied_share(vote),
                    within_standard=rate >= LEAST_RATE,
                )
            )
    return tuple(found)


def worst_votes(hours: tuple[ComfortHour, ...], cabins: Collection[int]) -> dict[int, float]:
    """The vote farthest from neither warm nor cool in each of some cabins, the night's first hour left out.

    In that hour the plant brings the boat down; it counts only where there is no other.
    """
    found = {}
    for cabin in cabins:
        there = [hour for hour in hours if hour.cabin == cabin]
        first = min((hour.start for hour in hours), default=0.0)
        votes = [hour.vote for hour in there if hour.start != first] or [hour.vote for hour in there]
        if votes:
            found[cabin] = max(votes, key=abs)
    return found
