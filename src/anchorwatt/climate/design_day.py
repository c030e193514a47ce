"""The outside air of a design day: a day's highest dry bulb, its range and a steady dew point."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from anchorwatt.design.specification import DesignDay

Floats = NDArray[np.float64]

DAILY_RANGE_SHARES = (
    0.82, 0.88, 0.92, 0.95, 0.98, 1.00, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23,
    0.13, 0.05, 0.00, 0.00, 0.06, 0.14, 0.24, 0.39, 0.50, 0.59, 0.68, 0.75,
)  # fmt: skip
"""Share of the daily range below the highest dry bulb, at 0 to 23 h of local standard time.

ASHRAE Handbook Fundamentals, climatic design information, table 6 (2021 edition, page 14.13, as quoted by a
public source; the same from memory). The table's hour 24 stands first here.
"""

YEAR = 2025
"""Year of the sun's path on a design day; not a leap year. The choice moves the sun by less than 0.2°."""

SEA_LEVEL_PRESSURE = 101_325.0
"""Pa."""


def dry_bulb_of(day: DesignDay, time: Floats) -> Floats:
    """Dry bulb of the design day, the same on every day, °C at `time` (s of local standard time)."""
    hours = np.arange(25.0)
    shares = np.append(DAILY_RANGE_SHARES, DAILY_RANGE_SHARES[0])
    below = np.interp((time / 3600.0) % 24.0, hours, shares)
    return np.asarray(day.highest_dry_bulb - day.daily_range * below, dtype=np.float64)


def clear_sky(elevation: Floats, turbidity: float, sun_outside: float, pressure: float) -> tuple[Floats, Floats]:
    """Direct normal and diffuse horizontal sun under a clear sky.

    Parameters
    ----------
    elevation : rad, apparent
    turbidity : Linke
    sun_outside : W/m2 at right angles, outside the air
    pressure : Pa

    Returns
    -------
    W/m2, W/m2

    Source
    ------
    Ineichen and Perez 2002, as in pvlib.clearsky.ineichen, at the sea's level.
    """
    from pvlib import atmosphere, clearsky

    zenith = 90.0 - np.degrees(elevation)
    above = elevation > 0.0
    # The model is undefined below the horizon, so it is asked for a high sun there and answered with nothing.
    zenith = np.where(above, zenith, 0.0)
    air_mass = atmosphere.get_absolute_airmass(atmosphere.get_relative_airmass(zenith), pressure)
    sky = clearsky.ineichen(zenith, air_mass, turbidity, altitude=0.0, dni_extra=sun_outside)
    return np.where(above, sky["dni"], 0.0), np.where(above, sky["dhi"], 0.0)
