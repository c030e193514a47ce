"""What the weather does to the boat's faces, once for all runs of an assessment."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from anchorwatt.climate import PlaneIrradiance, Weather, bow_bearing, irradiance_on
from anchorwatt.design.specification import Outside as Beyond
from anchorwatt.design.specification import Specification, Surface, Window
from anchorwatt.physics.envelope import hull_film, outside_convection, radiative_film
from anchorwatt.physics.sun_and_sky import equivalent_outside_temperature
from anchorwatt.physics.window import angle_modifier, diffuse_modifier
from anchorwatt.simulation.arrays import Floats, Integers
from anchorwatt.simulation.compiled import compiled

HOUR = 3600.0
MEAN_TEMPERATURE = 30.0
"""°C about which long-wave exchange outside is made linear."""
LEVEL = (0.0, math.pi)
"""rad, tilts of planes that face no way."""


@dataclass(frozen=True)
class OutsideSeries:
    """Outside conditions at every instant of a weather window, in the order of the kernel's walls."""

    weather: Weather
    hour: Integers  # (T,) index of the hour that each step lies in
    far_temperature: Floats  # (W, T + 1) °C; walls between cabins and to nothing are 0
    far_film: Floats  # (hours, W) W/K
    wind: Floats  # (hours,) m/s
    dry_bulb: Floats  # (hours,) °C, mean
    solar_gain: Floats  # (C, T + 1) W
    panel_irradiance: Floats  # (T + 1,) W/m2


def sol_air_series(
    dry_bulb: Floats,
    sky: Floats,
    irradiance: Floats,
    hour: Integers,
    convection: Floats,
    radiation: float,
    absorptance: float,
    emittance: float,
    tilt: float,
    out: Floats,
) -> None:
    """`equivalent_outside_temperature` at every instant; `convection` is by the hour."""
    for i in range(dry_bulb.shape[0]):
        film = convection[hour[min(i, hour.shape[0] - 1)]]
        out[i] = equivalent_outside_temperature(
            dry_bulb[i], sky[i], irradiance[i], absorptance, emittance, film, radiation, tilt
        )


def window_series(
    beam: Floats,
    diffuse: Floats,
    cosine: Floats,
    panes: int,
    diffuse_share: float,
    factor: float,
    out: Floats,
) -> None:
    """Add the solar gain of a window to `out`; `factor` is area × gain coefficient × cover, m²."""
    for i in range(beam.shape[0]):
        through = diffuse[i] * diffuse_share
        if beam[i] > 0.0:
            through += beam[i] * angle_modifier(cosine[i], panes)
        out[i] += factor * through


@dataclass(frozen=True)
class Faces:
    """What of a boat meets the weather, and nothing else: designs that share it share what the weather does to it."""

    heading: float | None  # rad, true; None = the bow lies to the wind
    cabins: tuple[tuple[tuple[Surface, ...], tuple[Window, ...]], ...]
    partitions: int  # that are walls
    panels: tuple[float, float] | None  # rad, tilt and direction from the bow


def faces_of(specification: Specification) -> Faces:
    """What of a specification meets the weather."""
    heading, panels = specification.place.heading, specification.solar
    return Faces(
        heading=None if math.isnan(heading) else heading,
        cabins=tuple((cabin.surfaces, cabin.windows) for cabin in specification.cabins),
        partitions=sum(partition.area > 0.0 for partition in specification.partitions),
        panels=None if panels is None else (panels.tilt, panels.faces),
    )


@lru_cache(maxsize=32)
def _plane(weather: Weather, heading: float | None, tilt: float, faces: float) -> PlaneIrradiance:
    """Sun on a plane that faces `faces` rad from the bow; kept for those asked for last, about 0.5 MB each."""
    bow = bow_bearing(weather, math.nan if heading is None else heading)
    return irradiance_on(weather, tilt, 0.0 if tilt in LEVEL else bow + faces)


_diffuse_modifier = lru_cache(maxsize=4)(diffuse_modifier)


def outside_series(specification: Specification, weather: Weather) -> OutsideSeries:
    """Every face of the boat through the whole weather window; not to be written to, since it is kept."""
    return _outside(faces_of(specification), weather)


@lru_cache(maxsize=6)
def _outside(boat: Faces, weather: Weather) -> OutsideSeries:
    """Kept for the boats and weathers asked for last, about 5 MB each."""
    instants = weather.time.size
    hour = ((weather.time[:-1] - weather.time[0]) // HOUR).astype(np.int64)
    hours = int(hour[-1]) + 1
    wind = np.bincount(hour, weather.wind_speed[:-1], hours) / np.bincount(hour, minlength=hours)

    def plane(tilt: float, faces: float) -> PlaneIrradiance:
        return _plane(weather, boat.heading, tilt, 0.0 if tilt in LEVEL else faces % (2.0 * math.pi))

    temperatures: list[Floats] = []
    films: list[Floats] = []
    convection = np.array([outside_convection(float(v)) for v in wind])
    solar_gain = np.zeros((len(boat.cabins), instants))
    for c, (surfaces, windows) in enumerate(boat.cabins):
        for surface in surfaces:
            if surface.outside is Beyond.AIR:
                radiation = radiative_film(surface.emittance, MEAN_TEMPERATURE)
                sun = plane(surface.tilt, surface.faces)
                out = np.empty(instants)
                compiled(sol_air_series)(
                    weather.dry_bulb,
                    # What an awning hides of the sky is as warm as the air.
                    weather.dry_bulb + surface.sky_left * (weather.sky_temperature - weather.dry_bulb),
                    surface.sun_left * (sun.beam + sun.diffuse),
                    hour,
                    convection,
                    radiation,
                    surface.absorptance,
                    surface.emittance,
                    surface.tilt,
                    out,
                )
                temperatures.append(out)
                films.append(surface.area * (convection + radiation))
            elif surface.outside is Beyond.SEA:
                temperatures.append(weather.sea_temperature)
                films.append(np.full(hours, surface.area * hull_film()))
            else:
                temperatures.append(np.zeros(instants))
                films.append(np.zeros(hours))
        for window in windows:
            sun = plane(window.tilt, window.faces)
            compiled(window_series)(
                sun.beam,
                sun.diffuse,
                sun.cosine,
                window.panes,
                _diffuse_modifier(window.panes),
                window.area * window.solar_gain * window.cover_factor,
                solar_gain[c],
            )
    for _ in range(boat.partitions):
        temperatures.append(np.zeros(instants))
        films.append(np.zeros(hours))
    panel = np.zeros(instants)
    if boat.panels is not None:
        sun = plane(*boat.panels)
        panel = sun.beam + sun.diffuse
    return OutsideSeries(
        weather,
        hour,
        np.array(temperatures).reshape(len(temperatures), instants),
        np.array(films).reshape(len(films), hours).T.copy(),
        wind,
        np.bincount(hour, weather.dry_bulb[:-1], hours) / np.bincount(hour, minlength=hours),
        solar_gain,
        panel,
    )
