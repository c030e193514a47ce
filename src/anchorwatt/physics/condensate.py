"""Water out of the air: what a coil drains, how it runs off, and surfaces that dew forms on."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.moist_air import MASS_RATIO, dew_point, latent_heat, vapour_pressure

WATER_DENSITY = 1000.0
"""kg/m³."""

ROUGHNESS = 0.012
"""Manning's n of smooth plastic pipe with some slime, s/m^(1/3). From memory of hydraulics texts: 0.009 to 0.013."""


def condensate(heat: float, temperature: float) -> float:
    """Water that runs off a coil for the latent heat that it takes.

    Parameters
    ----------
    heat : J of latent heat, or W
    temperature : °C of the coil's surface

    Returns
    -------
    kg for J, kg/s for W

    Raises
    ------
    OutOfRange
        heat negative, temperature outside -100 to 200 °C.

    Source
    ------
    Heat of condensing, see `moist_air.latent_heat`.

    Example
    -------
    >>> 3600.0 * condensate(1000.0, 12.0)
    1.46
    """
    if not heat >= 0.0:
        raise OutOfRange("the latent heat that a coil takes is not negative; found", heat)
    return heat / latent_heat(temperature)


def drain_flow(diameter: float, slope: float) -> float:
    """Water that a sloping drain carries half full, so that air can come back over it.

    Parameters
    ----------
    diameter : m, inside
    slope : fall over length

    Returns
    -------
    m³/s

    Raises
    ------
    OutOfRange
        diameter not positive, slope outside 0 to 1.

    Source
    ------
    Manning's formula, any hydraulics text; in small pipes it is no more than an order of size.

    Example
    -------
    >>> 3.6e6 * drain_flow(0.016, 0.01)
    76.0
    """
    if not diameter > 0.0:
        raise OutOfRange("a drain's diameter must be positive; found", diameter)
    if not 0.0 <= slope <= 1.0:
        raise OutOfRange("a drain's slope lies between 0 and 1; found", slope)
    velocity = math.pow(diameter / 4.0, 2.0 / 3.0) * math.sqrt(slope) / ROUGHNESS
    return velocity * math.pi * diameter * diameter / 8.0


def margin_over_dew(surface: float, humidity_ratio: float, pressure: float) -> float:
    """How far a surface is over the dew point of the air at it.

    Parameters
    ----------
    surface : °C
    humidity_ratio : kg water per kg dry air, above zero
    pressure : Pa of the air

    Returns
    -------
    K; below zero dew forms

    Raises
    ------
    OutOfRange
        as `moist_air.dew_point`.

    Source
    ------
    Definition of the dew point.

    Example
    -------
    >>> margin_over_dew(24.0, 0.01114, 101_325.0)
    8.3
    """
    return surface - dew_point(humidity_ratio, pressure)


def temperature_at_humidity(humidity_ratio: float, surface_humidity: float, pressure: float) -> float:
    """Temperature of a surface at which the air that touches it has a relative humidity.

    Parameters
    ----------
    humidity_ratio : kg water per kg dry air, above zero
    surface_humidity : 0 to 1; 0.8 for where mould begins
    pressure : Pa of the air

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        surface humidity outside 0 to 1, and as `moist_air.dew_point`.

    Source
    ------
    ISO 13788: mould is to be feared where a surface's relative humidity stays over 80 % for a month.

    Example
    -------
    >>> temperature_at_humidity(0.00726, 0.8, 101_325.0)
    12.6
    """
    if not 0.0 < surface_humidity <= 1.0:
        raise OutOfRange("a surface's relative humidity lies between 0 and 1; found", surface_humidity)
    saturated = vapour_pressure(humidity_ratio, pressure) / surface_humidity
    if not saturated < pressure:
        raise OutOfRange("air that dry does not boil; found Pa of vapour", saturated)
    return dew_point(MASS_RATIO * saturated / (pressure - saturated), pressure)
