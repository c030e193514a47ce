"""Seawater from the through-hull to the condenser and overboard: flow, pressure, and what the pump gives."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.condenser import SEAWATER_DENSITY, SEAWATER_SPECIFIC_HEAT
from anchorwatt.physics.pipe import dynamic_pressure, friction_gradient, pipe_velocity

SEAWATER_VISCOSITY = 0.96e-3
"""Pa s, open sea at 25 °C."""

GRAVITY = 9.80665
"""m/s², standard."""

HOSE_ROUGHNESS = 1e-5
"""m, smooth rubber or plastic hose. From practice, no source."""

FITTING_LOSS = 0.9
"""Loss coefficient of a right-angled bend made by a fitting; hydraulics texts print 0.75 to 1.5. From memory."""

HULL_LOSS = 1.5
"""Loss coefficient of the through-hull: in at a sharp edge 0.5, and the stream's own pressure, 1, lost overboard."""


def flow_for_rise(heat: float, rise: float) -> float:
    """Seawater that carries a heat away with a given rise of its temperature.

    Parameters
    ----------
    heat : W
    rise : K

    Returns
    -------
    m³/s

    Raises
    ------
    OutOfRange
        heat negative, rise not positive.

    Source
    ------
    Heat balance of the water.

    Example
    -------
    >>> flow_for_rise(1000.0, 5.0) * 60_000.0
    2.94
    """
    if not heat >= 0.0:
        raise OutOfRange("the heat rejected is not negative; found", heat)
    if not rise > 0.0:
        raise OutOfRange("the water's rise must be positive; found K", rise)
    return heat / (SEAWATER_DENSITY * SEAWATER_SPECIFIC_HEAT * rise)


def hose_pressure(flow: float, length: float, diameter: float, bends: float) -> float:
    """Pressure that a hose with its bends takes. Not for the kernel.

    Parameters
    ----------
    flow : m³/s
    length : m
    diameter : m, inside
    bends : right-angled bends and fittings counted as such

    Returns
    -------
    Pa

    Raises
    ------
    OutOfRange
        as `friction_gradient`, or length or bends negative.

    Source
    ------
    Friction: `friction_gradient`. Bends: `FITTING_LOSS`.

    Example
    -------
    >>> hose_pressure(5e-4, 7.0, 0.025, 4.0) / 1000.0
    5.63
    """
    if not min(length, bends) >= 0.0:
        raise OutOfRange("length and bends are not negative; found", min(length, bends))
    friction = length * friction_gradient(flow, diameter, HOSE_ROUGHNESS, SEAWATER_DENSITY, SEAWATER_VISCOSITY)
    return friction + bends * FITTING_LOSS * dynamic_pressure(pipe_velocity(flow, diameter), SEAWATER_DENSITY)


def pressure_needed(
    flow: float, length: float, diameter: float, bends: float, lift: float, through_hull: float, other_losses: float
) -> float:
    """Pressure that a pump must give to drive seawater round its circuit. Not for the kernel.

    Parameters
    ----------
    flow : m³/s
    length : m of hose
    diameter : m of the hose, inside
    bends : right-angled bends and fittings counted as such
    lift : m from the waterline to the highest point
    through_hull : m, inside diameter
    other_losses : Pa of condenser and strainer at this flow

    Returns
    -------
    Pa

    Raises
    ------
    OutOfRange
        as `hose_pressure`, or lift or other losses negative.

    Source
    ------
    Bernoulli with losses, any hydraulics text. The whole lift is counted: what falls overboard gives nothing back,
    and a pump that starts must fill the highest point first.

    Example
    -------
    >>> pressure_needed(5e-4, 7.0, 0.025, 4.0, 1.2, 0.032, 15_000.0) / 1000.0
    32.9
    """
    if not min(lift, other_losses) >= 0.0:
        raise OutOfRange("lift and other losses are not negative; found", min(lift, other_losses))
    hull = HULL_LOSS * dynamic_pressure(pipe_velocity(flow, through_hull), SEAWATER_DENSITY)
    raised = SEAWATER_DENSITY * GRAVITY * lift
    return hose_pressure(flow, length, diameter, bends) + hull + raised + other_losses


def hydraulic_power(flow: float, pressure: float) -> float:
    """Power that a pump gives to the water.

    Parameters
    ----------
    flow : m³/s
    pressure : Pa across the pump

    Returns
    -------
    W

    Raises
    ------
    OutOfRange
        flow or pressure negative.

    Source
    ------
    Pressure times flow, any hydraulics text.

    Example
    -------
    >>> hydraulic_power(5e-4, 60_000.0)
    30.0
    """
    if not min(flow, pressure) >= 0.0:
        raise OutOfRange("flow and pressure are not negative; found", min(flow, pressure))
    return flow * pressure


def pump_efficiency(flow: float, pressure: float, electric_power: float) -> float:
    """Power given to the water over electric power taken, motor included.

    Parameters
    ----------
    flow : m³/s
    pressure : Pa across the pump
    electric_power : W

    Returns
    -------
    above 1 the three figures cannot belong to one pump

    Raises
    ------
    OutOfRange
        flow or pressure negative, electric power not positive.

    Source
    ------
    Definition; small magnet-driven pumps reach 0.1 to 0.3 (from memory).

    Example
    -------
    >>> pump_efficiency(5e-4, 60_000.0, 120.0)
    0.25
    """
    if not electric_power > 0.0:
        raise OutOfRange("a pump's electric power must be positive; found", electric_power)
    return hydraulic_power(flow, pressure) / electric_power
