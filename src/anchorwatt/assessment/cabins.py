"""What the day and the night come to in each cabin."""

from __future__ import annotations

import math

import numpy as np

from anchorwatt.assessment.gains import DRY_CAUSES, HOUR, BoatGains
from anchorwatt.assessment.records import CabinAnswer
from anchorwatt.design.specification import Specification
from anchorwatt.simulation.forcing import period_at
from anchorwatt.simulation.runs import Simulation


def cabin_answers(specification: Specification, simulation: Simulation, gains: BoatGains) -> tuple[CabinAnswer, ...]:
    """One answer a cabin, in the design's order; the hour is that of its highest sensible load."""
    night = simulation.night
    points = period_at(specification, specification.brief.night_start).set_points
    cooled = {cabin.cabin: cabin for cabin in gains.cabins}
    answers = []
    for c, cabin in enumerate(specification.cabins):
        own = cooled.get(c)
        hour = 0 if own is None else int(np.argmax(own.sensible))
        dry = () if own is None else own.causes[: len(DRY_CAUSES)]
        answers.append(
            CabinAnswer(
                name=cabin.name,
                use=cabin.use,
                peak_sensible=math.nan if own is None else float(own.sensible[hour]),
                peak_latent=math.nan if own is None else float(own.latent[hour]),
                peak_at=math.nan if own is None else HOUR * (hour + 1),
                gains=tuple((cause, float(values[hour])) for cause, values in dry),
                handler_capacity=sum(h.rated_capacity for h in specification.plant.handlers if h.cabin == c),
                set_point=points[c],
                night_highest_temperature=float(night.summary.highest_air[0, c]),
                night_highest_humidity=float(night.summary.highest_relative_humidity[0, c]),
            )
        )
    return tuple(answers)
