"""Flow in round pipes: velocity, friction and the loss of fittings, for air and water alike."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

ROUGHEST = 0.05
"""Roughness over diameter at which the Moody chart ends."""


def pipe_velocity(flow: float, diameter: float) -> float:
    """Mean velocity in a round pipe.

    Parameters
    ----------
    flow : m³/s
    diameter : m, inside

    Returns
    -------
    m/s

    Raises
    ------
    OutOfRange
        flow negative, diameter not positive.

    Source
    ------
    Continuity.

    Example
    -------
    >>> pipe_velocity(0.0472, 0.1524)
    2.59
    """
    if not flow >= 0.0:
        raise OutOfRange("a flow is not negative; found", flow)
    if not diameter > 0.0:
        raise OutOfRange("a pipe's diameter must be positive; found", diameter)
    return flow / (0.25 * math.pi * diameter * diameter)


def dynamic_pressure(velocity: float, density: float) -> float:
    """Dynamic pressure of a stream; a fitting's loss is its loss coefficient times this.

    Parameters
    ----------
    velocity : m/s
    density : kg/m³

    Returns
    -------
    Pa

    Raises
    ------
    OutOfRange
        density not positive.

    Source
    ------
    Bernoulli; any hydraulics text.

    Example
    -------
    >>> dynamic_pressure(4.0, 1.2)
    9.6
    """
    if not density > 0.0:
        raise OutOfRange("a density must be positive; found", density)
    return 0.5 * density * velocity * velocity


def friction_gradient(flow: float, diameter: float, roughness: float, density: float, viscosity: float) -> float:
    """Pressure lost to friction in each metre of a round pipe. Not for the kernel.

    Below a Reynolds number of 2040 the flow is taken as laminar; the loss jumps upward there.

    Parameters
    ----------
    flow : m³/s
    diameter : m, inside
    roughness : m, of the wall, as Colebrook's equation counts it
    density : kg/m³
    viscosity : Pa s, dynamic

    Returns
    -------
    Pa/m

    Raises
    ------
    OutOfRange
        flow negative, diameter, density or viscosity not positive, roughness outside 0 to 5 % of the diameter.

    Source
    ------
    Darcy and Weisbach with Colebrook's friction factor, as the `fluids` library solves it (D. Clamond, "Efficient
    resolution of the Colebrook equation", Ind. Eng. Chem. Res. 48, 2009).

    Example
    -------
    >>> friction_gradient(0.0472, 0.1524, 0.00009, 1.2, 1.81e-5)
    0.68
    """
    from fluids.friction import friction_factor

    velocity = pipe_velocity(flow, diameter)
    if not viscosity > 0.0:
        raise OutOfRange("a viscosity must be positive; found", viscosity)
    if not 0.0 <= roughness <= ROUGHEST * diameter:
        raise OutOfRange("a pipe's roughness lies between 0 and 5 % of its diameter; found m", roughness)
    pressure = dynamic_pressure(velocity, density)
    if pressure == 0.0:
        return 0.0
    reynolds = density * velocity * diameter / viscosity
    return float(friction_factor(Re=reynolds, eD=roughness / diameter)) / diameter * pressure
