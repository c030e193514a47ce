"""Where the bow points."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from anchorwatt.climate.series import Weather


def bow_bearing(weather: Weather, heading: float) -> NDArray[np.float64]:
    """Bearing of the bow at every instant.

    Parameters
    ----------
    weather : the table
    heading : rad true; nan = at anchor, where the bow lies to the wind and swings with it hour by hour

    Returns
    -------
    rad true, one for each instant
    """
    if math.isnan(heading):
        return weather.wind_direction.copy()
    return np.full_like(weather.time, heading)
