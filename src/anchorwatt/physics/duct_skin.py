"""Heat through the wall of a cold duct: how far its air warms, and whether its outside sweats."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.duct import AIR_DENSITY, AIR_VISCOSITY
from anchorwatt.physics.moist_air import CP_AIR

AIR_CONDUCTIVITY = 0.0257
"""W/(m K), air at 20 °C; any heat-transfer text."""

PRANDTL = 0.71
"""Of air; any heat-transfer text."""

OUTSIDE_FILM = 8.0
"""W/(m² K), convection and radiation on a dull duct in still air (ISO 6946's inside film is 7.7; from memory)."""

LAMINAR_NUSSELT = 3.66
"""In a long round pipe of one wall temperature; any heat-transfer text."""

THICKEST = 0.5
"""m of insulation beyond which none is sought."""


def inside_film(velocity: float, diameter: float) -> float:
    """Film coefficient of the air that flows in a round duct.

    Parameters
    ----------
    velocity : m/s
    diameter : m, inside

    Returns
    -------
    W/(m² K)

    Raises
    ------
    OutOfRange
        velocity negative, diameter not positive.

    Source
    ------
    Nu = 0.023 Re^0.8 Pr^0.4, named for F. W. Dittus and L. M. K. Boelter (1930), in the form of W. H. McAdams (1942),
    any heat-transfer text; it holds above Re 10 000. Never below the laminar 3.66.

    Example
    -------
    >>> inside_film(3.0, 0.125)
    13.6
    """
    if not velocity >= 0.0:
        raise OutOfRange("a velocity is not negative; found", velocity)
    if not diameter > 0.0:
        raise OutOfRange("a duct's diameter must be positive; found", diameter)
    reynolds = AIR_DENSITY * velocity * diameter / AIR_VISCOSITY
    nusselt = 0.023 * math.pow(reynolds, 0.8) * math.pow(PRANDTL, 0.4)
    return max(LAMINAR_NUSSELT, nusselt) * AIR_CONDUCTIVITY / diameter


def _resistances(
    diameter: float, insulation: float, conductivity: float, inside: float, outside: float
) -> tuple[float, float]:
    """K m/W from the air in the duct to its skin, and from the skin to the surroundings, for each metre."""
    if not diameter > 0.0:
        raise OutOfRange("a duct's diameter must be positive; found", diameter)
    if not insulation >= 0.0:
        raise OutOfRange("an insulation's thickness is not negative; found", insulation)
    if not min(conductivity, inside, outside) > 0.0:
        raise OutOfRange("conductivity and films must be positive; found", min(conductivity, inside, outside))
    over = diameter + 2.0 * insulation
    wall = math.log(over / diameter) / (2.0 * math.pi * conductivity)
    return 1.0 / (inside * math.pi * diameter) + wall, 1.0 / (outside * math.pi * over)


def duct_conductance(
    diameter: float, insulation: float, conductivity: float, inside: float, outside: float = OUTSIDE_FILM
) -> float:
    """Heat through each metre of an insulated round duct for each kelvin; the duct's thin wall is left out.

    Parameters
    ----------
    diameter : m, inside
    insulation : m thick
    conductivity : W/(m K) of the insulation
    inside : W/(m² K), film of the air in the duct
    outside : W/(m² K), film of the surroundings

    Returns
    -------
    W/(m K)

    Raises
    ------
    OutOfRange
        diameter, conductivity or a film not positive, insulation negative.

    Source
    ------
    Resistances of cylinders in series, any heat-transfer text.

    Example
    -------
    >>> duct_conductance(0.125, 0.013, 0.038, 13.6)
    0.805
    """
    within, beyond = _resistances(diameter, insulation, conductivity, inside, outside)
    return 1.0 / (within + beyond)


def skin_temperature(
    air: float,
    surroundings: float,
    diameter: float,
    insulation: float,
    conductivity: float,
    inside: float,
    outside: float = OUTSIDE_FILM,
) -> float:
    """Temperature of the outside of an insulated round duct.

    Parameters
    ----------
    air : °C in the duct
    surroundings : °C round it
    diameter : m, inside
    insulation : m thick
    conductivity : W/(m K) of the insulation
    inside : W/(m² K), film of the air in the duct
    outside : W/(m² K), film of the surroundings

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        as `duct_conductance`.

    Source
    ------
    Resistances of cylinders in series, any heat-transfer text.

    Example
    -------
    >>> skin_temperature(10.0, 28.0, 0.125, 0.013, 0.038, 13.6)
    24.2
    """
    within, beyond = _resistances(diameter, insulation, conductivity, inside, outside)
    return air + (surroundings - air) * within / (within + beyond)


def insulation_needed(
    air: float,
    surroundings: float,
    dew_point: float,
    diameter: float,
    conductivity: float,
    inside: float,
    outside: float = OUTSIDE_FILM,
) -> float:
    """Least insulation that keeps a duct's outside at the dew point of its surroundings. Not for the kernel.

    Parameters
    ----------
    air : °C in the duct
    surroundings : °C round it
    dew_point : °C of the surroundings
    diameter : m, inside
    conductivity : W/(m K) of the insulation
    inside : W/(m² K), film of the air in the duct
    outside : W/(m² K), film of the surroundings

    Returns
    -------
    m; 0 where the bare duct stays dry, inf where `THICKEST` is not enough

    Raises
    ------
    OutOfRange
        as `duct_conductance`.

    Source
    ------
    `skin_temperature`, solved by Brent's method (scipy).

    Example
    -------
    >>> insulation_needed(10.0, 28.0, 24.0, 0.125, 0.038, 13.6)
    0.0122
    """
    from scipy.optimize import brentq

    def over(thickness: float) -> float:
        return skin_temperature(air, surroundings, diameter, thickness, conductivity, inside, outside) - dew_point

    if over(0.0) >= 0.0:
        return 0.0
    if over(THICKEST) < 0.0:
        return math.inf
    return float(brentq(over, 0.0, THICKEST, xtol=1e-9))


def air_at_end(air: float, surroundings: float, conductance: float, length: float, flow: float) -> float:
    """Temperature of the air at the end of a duct.

    Parameters
    ----------
    air : °C where it enters
    surroundings : °C round the duct
    conductance : W/(m K), see `duct_conductance`
    length : m
    flow : m³/s

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        conductance or length negative, flow not positive.

    Source
    ------
    Heat balance along the duct, any heat-transfer text.

    Example
    -------
    >>> air_at_end(10.0, 28.0, 0.805, 3.0, 0.05)
    10.7
    """
    if not min(conductance, length) >= 0.0:
        raise OutOfRange("conductance and length are not negative; found", min(conductance, length))
    if not flow > 0.0:
        raise OutOfRange("a flow must be positive; found", flow)
    units = conductance * length / (AIR_DENSITY * flow * CP_AIR)
    return surroundings - (surroundings - air) * math.exp(-units)
