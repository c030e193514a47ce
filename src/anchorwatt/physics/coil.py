"""A cooling coil by the bypass factor: part of the air takes on the coil's dew point, the rest goes by.

The coil is wet where its apparatus dew point lies below the dew point of the air that enters, else dry; the
same functions serve both. The heat of the vapour that stays in the air, about 2 % of the sensible heat, is
left out, as it is in the heat balance of the cabin's air.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.moist_air import CP_AIR


def bypass_factor(rated_bypass: float, airflow_share: float) -> float:
    """Bypass factor of a coil at part of its airflow.

    The coil has -ln(bypass) transfer units. The air's film coefficient grows with about the 0.55th power of
    the airflow, so that the transfer units fall with its 0.45th power.

    Parameters
    ----------
    rated_bypass : at full airflow, between 0 and 1
    airflow_share : of full airflow

    Returns
    -------
    above 0, below 1

    Raises
    ------
    OutOfRange
        rated bypass not between 0 and 1, airflow share not positive.

    Source
    ------
    Heat exchanger of one unchanging temperature: 1 - bypass = 1 - exp(-NTU), any heat-transfer text; the
    exponent of the air's film for plate fins is from memory.

    Example
    -------
    >>> bypass_factor(0.15, 0.5)
    0.075
    """
    if not 0.0 < rated_bypass < 1.0:
        raise OutOfRange("a bypass factor lies between 0 and 1; found", rated_bypass)
    if not airflow_share > 0.0:
        raise OutOfRange("the share of full airflow must be positive; found", airflow_share)
    return math.exp(math.log(rated_bypass) * math.pow(airflow_share, -0.45))


def sensible_heat(mass_flow: float, bypass: float, entering_temperature: float, apparatus_dew_point: float) -> float:
    """Sensible heat that a coil takes out of the air; nothing when the coil is warmer than the air.

    Parameters
    ----------
    mass_flow : kg/s dry air
    bypass : share of the air that goes by the coil untouched, 0 to 1
    entering_temperature : °C
    apparatus_dew_point : °C

    Returns
    -------
    W, not negative

    Raises
    ------
    OutOfRange
        mass flow negative, bypass outside 0 to 1.

    Source
    ------
    Definition of the bypass factor, any air-conditioning text.

    Example
    -------
    >>> sensible_heat(0.1, 0.15, 24.0, 9.0)
    1282.7
    """
    if not mass_flow >= 0.0:
        raise OutOfRange("a mass flow is not negative; found", mass_flow)
    if not 0.0 <= bypass <= 1.0:
        raise OutOfRange("a bypass factor lies between 0 and 1; found", bypass)
    return mass_flow * (1.0 - bypass) * CP_AIR * max(0.0, entering_temperature - apparatus_dew_point)


def moisture_removed(
    mass_flow: float, bypass: float, entering_humidity_ratio: float, apparatus_humidity_ratio: float
) -> float:
    """Water that a coil takes out of the air; nothing when the coil is dry.

    Parameters
    ----------
    mass_flow : kg/s dry air
    bypass : share of the air that goes by the coil untouched, 0 to 1
    entering_humidity_ratio : kg/kg
    apparatus_humidity_ratio : kg/kg, saturated air at the apparatus dew point

    Returns
    -------
    kg/s, not negative

    Raises
    ------
    OutOfRange
        mass flow negative, bypass outside 0 to 1.

    Source
    ------
    Definition of the bypass factor, any air-conditioning text.

    Example
    -------
    >>> moisture_removed(0.1, 0.15, 0.0112, 0.0071) * 3600.0
    1.25
    """
    if not mass_flow >= 0.0:
        raise OutOfRange("a mass flow is not negative; found", mass_flow)
    if not 0.0 <= bypass <= 1.0:
        raise OutOfRange("a bypass factor lies between 0 and 1; found", bypass)
    return mass_flow * (1.0 - bypass) * max(0.0, entering_humidity_ratio - apparatus_humidity_ratio)


def leaving_temperature(bypass: float, entering_temperature: float, apparatus_dew_point: float) -> float:
    """Temperature of the air that leaves a coil.

    Parameters
    ----------
    bypass : share of the air that goes by the coil untouched, 0 to 1
    entering_temperature : °C
    apparatus_dew_point : °C

    Returns
    -------
    °C, not above the entering temperature

    Raises
    ------
    OutOfRange
        bypass outside 0 to 1.

    Source
    ------
    Definition of the bypass factor, any air-conditioning text.

    Example
    -------
    >>> leaving_temperature(0.15, 24.0, 8.0)
    10.4
    """
    if not 0.0 <= bypass <= 1.0:
        raise OutOfRange("a bypass factor lies between 0 and 1; found", bypass)
    return entering_temperature - (1.0 - bypass) * max(0.0, entering_temperature - apparatus_dew_point)


def leaving_humidity_ratio(bypass: float, entering_humidity_ratio: float, apparatus_humidity_ratio: float) -> float:
    """Humidity ratio of the air that leaves a coil.

    Parameters
    ----------
    bypass : share of the air that goes by the coil untouched, 0 to 1
    entering_humidity_ratio : kg/kg
    apparatus_humidity_ratio : kg/kg, saturated air at the apparatus dew point

    Returns
    -------
    kg/kg, not above the entering one

    Raises
    ------
    OutOfRange
        bypass outside 0 to 1.

    Source
    ------
    Definition of the bypass factor, any air-conditioning text.

    Example
    -------
    >>> leaving_humidity_ratio(0.15, 0.0112, 0.0071)
    0.0077
    """
    if not 0.0 <= bypass <= 1.0:
        raise OutOfRange("a bypass factor lies between 0 and 1; found", bypass)
    dried = max(0.0, entering_humidity_ratio - apparatus_humidity_ratio)
    return entering_humidity_ratio - (1.0 - bypass) * dried
