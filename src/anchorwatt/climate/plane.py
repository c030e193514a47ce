"""What the sun puts on one plane of a boat, or of a building."""

from __future__ import annotations

import datetime
import functools
import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from anchorwatt.climate.series import Weather
from anchorwatt.climate.sun import sun_outside_through
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.sun_and_sky import DIFFUSE_SEA_REFLECTANCE, fresnel_sea_reflectance

Floats = NDArray[np.float64]

LOWEST_HEIGHT = 0.01745
"""Sine of 1°, below which the bright patch is no longer scaled up (as pvlib does)."""


@dataclass(frozen=True, eq=False)
class PlaneIrradiance:
    """Sun on a plane at every instant of a table."""

    beam: Floats  # W/m2, direct sun
    diffuse: Floats  # W/m2, from the sky (its bright patch round the sun too) and from the sea or the ground
    around_sun: Floats  # W/m2, the part of the diffuse that comes from the sun's bright patch
    from_below: Floats  # W/m2, the part of the diffuse that sea or ground throws up
    cosine: Floats  # of the direct sun's angle of incidence; 0 when the sun is down or behind the plane


def irradiance_on(
    weather: Weather, tilt: float, bearing: float | Floats, ground_reflectance: float | None = None
) -> PlaneIrradiance:
    """Sun on a plane.

    The sky is Hay and Davies' (a bright patch that moves with the sun over an even dome): close to fuller
    models on clear days, and well behaved for every tilt to straight down. The sea mirrors the direct sun by
    Fresnel's law and the sky by a fixed share, and what it mirrors is spread evenly over the half space
    below: a glitter path's own direction is not followed.

    Parameters
    ----------
    weather : the table
    tilt : rad between the plane's outward normal and straight up, 0 to π
    bearing : rad true of the outward normal; one for all instants, or one an instant
    ground_reflectance : share of the sun on the level that land all round throws back evenly, 0.2 for grass and
        worn paving; left out, the sea is all round

    Returns
    -------
    W/m2 and the cosine of incidence

    Raises
    ------
    OutOfRange
        Ground reflectance outside 0 to 1.
    """
    if ground_reflectance is not None and not 0.0 <= ground_reflectance <= 1.0:
        raise OutOfRange("the ground's reflectance lies between 0 and 1; found", ground_reflectance)
    from pvlib import irradiance

    elevation = weather.sun_elevation
    above = elevation > 0.0
    zenith = 90.0 - np.degrees(elevation)
    slope, facing = math.degrees(tilt), np.degrees(bearing)
    cosine = irradiance.aoi_projection(slope, facing, zenith, np.degrees(weather.sun_azimuth))
    cosine = np.where(above, np.maximum(cosine, 0.0), 0.0)
    height = np.where(above, np.sin(elevation), 0.0)
    outside = sun_outside_through(datetime.date(weather.year, weather.month, weather.day), weather.time)
    sky = irradiance.haydavies(
        slope,
        facing,
        weather.diffuse_horizontal,
        weather.direct_normal,
        outside,
        projection_ratio=cosine / np.maximum(height, LOWEST_HEIGHT),
        return_components=True,
    )
    if ground_reflectance is None:
        mirrored = weather.direct_normal * height * beam_reflectance(zenith)
        upward = mirrored + weather.diffuse_horizontal * DIFFUSE_SEA_REFLECTANCE
    else:
        upward = ground_reflectance * (weather.direct_normal * height + weather.diffuse_horizontal)
    from_below = upward * 0.5 * (1.0 - math.cos(tilt))
    return PlaneIrradiance(
        beam=weather.direct_normal * cosine,
        diffuse=sky["poa_sky_diffuse"] + from_below,
        around_sun=sky["poa_circumsolar"],
        from_below=from_below,
        cosine=cosine,
    )


def beam_reflectance(zenith: Floats) -> Floats:
    """The sea's reflectance for the direct sun at zenith angles in °."""
    degrees, reflectance = reflectance_by_degree()
    return np.interp(zenith, degrees, reflectance)


@functools.lru_cache(maxsize=1)
def reflectance_by_degree() -> tuple[Floats, Floats]:
    """Fresnel's reflectance of a smooth sea at each half degree from the zenith to the horizon."""
    degrees = np.linspace(0.0, 90.0, 181)
    return degrees, np.array([fresnel_sea_reflectance(math.radians(each)) for each in degrees.tolist()])
