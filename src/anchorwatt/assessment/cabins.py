"""What the day and the night come to in each cabin."""

from __future__ import annotations

import math

import numpy as np

from anchorwatt.assessment.records import CabinAnswer
from anchorwatt.design.specification import Specification
from anchorwatt.physics.moist_air import CP_AIR
from anchorwatt.physics.people import sensible_from_person
from anchorwatt.simulation.forcing import period_at
from anchorwatt.simulation.runs import Run, Simulation

HOUR = 3600.0


def _gains(simulation: Simulation, run: Run, c: int, hour: slice) -> tuple[tuple[str, float], ...]:
    """W by cause, mean of an hour; what the fabric gives is what the rest leaves."""
    boat, driving = simulation.boat, run.forcing
    air = run.series.air[0, c, hour]
    outdoor = driving.dry_bulb[0, 1:][hour]
    sun = float(driving.solar_gain[0, c, 1:][hour].mean())
    glass = float((boat.fabric.window_conductance[0, c] * (outdoor - air)).mean())
    flow = driving.outdoor_flow[0, driving.film_row[hour], c]
    leak = float((flow * CP_AIR * (outdoor - air)).mean())
    people = float(
        np.mean(
            [
                sensible_from_person(float(s), float(latent), float(shift), float(t))
                for s, latent, shift, t in zip(
                    driving.people_sensible[0, c, hour],
                    driving.people_latent[0, c, hour],
                    driving.people_shift[0, c, hour],
                    air,
                    strict=True,
                )
            ]
        )
    )
    appliances = float((driving.air_gain[0, c, hour] + driving.radiant_gain[0, c, hour]).mean())
    total = float(run.series.sensible[0, c, hour].mean())
    return (
        ("sun through glass", sun),
        ("conduction through glass", glass),
        ("outdoor air", leak),
        ("people", people),
        ("appliances", appliances),
        ("walls, decks and neighbours", total - sun - glass - leak - people - appliances),
    )


def cabin_answers(specification: Specification, simulation: Simulation) -> tuple[CabinAnswer, ...]:
    """One answer a cabin, in the design's order."""
    loads, night = simulation.loads, simulation.night
    steps = round(HOUR / loads.step)
    points = period_at(specification, specification.brief.night_start).set_points
    answers = []
    for c, cabin in enumerate(specification.cabins):
        cooled = not math.isnan(float(loads.forcing.set_point[0, c, 0]))
        hourly = loads.series.sensible[0, c].reshape(-1, steps).mean(axis=1)
        peak = int(np.argmax(hourly))
        hour = slice(peak * steps, (peak + 1) * steps)
        answers.append(
            CabinAnswer(
                name=cabin.name,
                use=cabin.use,
                peak_sensible=float(hourly[peak]) if cooled else math.nan,
                peak_latent=float(loads.series.latent[0, c, hour].mean()) if cooled else math.nan,
                peak_at=float(loads.clock[hour.stop - 1]) if cooled else math.nan,
                gains=_gains(simulation, loads, c, hour) if cooled else (),
                handler_capacity=sum(h.rated_capacity for h in specification.plant.handlers if h.cabin == c),
                set_point=points[c],
                night_highest_temperature=float(night.summary.highest_air[0, c]),
                night_highest_humidity=float(night.summary.highest_relative_humidity[0, c]),
            )
        )
    return tuple(answers)
