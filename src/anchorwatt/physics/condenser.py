"""A seawater condenser: the refrigerant condenses at one temperature, the sea water warms along it."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

SEAWATER_DENSITY = 1023.0
"""kg/m³, open sea at about 25 °C."""

SEAWATER_SPECIFIC_HEAT = 3993.0
"""J/(kg K), open sea at about 25 °C."""


def effectiveness(ntu: float) -> float:
    """Effectiveness of a heat exchanger one of whose sides keeps its temperature.

    Parameters
    ----------
    ntu : transfer units, conductance over the water's heat capacity flow

    Returns
    -------
    0 to 1

    Raises
    ------
    OutOfRange
        transfer units not positive.

    Source
    ------
    Effectiveness-NTU method with heat capacity ratio 0: W. M. Kays and A. L. London, "Compact Heat
    Exchangers"; any heat-transfer text.

    Example
    -------
    >>> effectiveness(1.0)
    0.632
    """
    if not ntu > 0.0:
        raise OutOfRange("the condenser's transfer units must be positive; found", ntu)
    return -math.expm1(-ntu)


def condensing_temperature(sea_in: float, heat_rejected: float, sea_flow: float, effectiveness: float) -> float:
    """Temperature at which the refrigerant condenses.

    Parameters
    ----------
    sea_in : °C
    heat_rejected : W, cooling and compressor power together
    sea_flow : m³/s
    effectiveness : above 0, not above 1

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        heat rejected negative, flow not positive, effectiveness outside 0 to 1.

    Source
    ------
    Definition of effectiveness: heat = effectiveness x heat capacity flow x greatest difference.

    Example
    -------
    >>> condensing_temperature(28.0, 13_000.0, 5.5e-4, 0.6)
    37.6
    """
    if not heat_rejected >= 0.0:
        raise OutOfRange("the heat rejected is not negative; found", heat_rejected)
    if not sea_flow > 0.0:
        raise OutOfRange("the sea-water flow must be positive; found", sea_flow)
    if not 0.0 < effectiveness <= 1.0:
        raise OutOfRange("an effectiveness lies above 0 and not above 1; found", effectiveness)
    return sea_in + heat_rejected / (effectiveness * SEAWATER_DENSITY * sea_flow * SEAWATER_SPECIFIC_HEAT)


def sea_out(sea_in: float, heat_rejected: float, sea_flow: float) -> float:
    """Temperature of the sea water that leaves the condenser.

    Parameters
    ----------
    sea_in : °C
    heat_rejected : W
    sea_flow : m³/s

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        heat rejected negative or flow not positive.

    Source
    ------
    Heat balance of the water.

    Example
    -------
    >>> sea_out(28.0, 13_000.0, 5.5e-4)
    33.8
    """
    if not heat_rejected >= 0.0:
        raise OutOfRange("the heat rejected is not negative; found", heat_rejected)
    if not sea_flow > 0.0:
        raise OutOfRange("the sea-water flow must be positive; found", sea_flow)
    return sea_in + heat_rejected / (SEAWATER_DENSITY * sea_flow * SEAWATER_SPECIFIC_HEAT)
