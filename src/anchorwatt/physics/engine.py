"""A four-stroke diesel engine: what it can give, what is left for the alternators, what it burns."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.interpolation import Table, interpolate

DIESEL_HEATING_VALUE = 42.84e6  # J/kg, lower; UK 2025 fuel properties, average blend
DIESEL_DENSITY = 832.36  # kg/m³; UK 2025 fuel properties, average blend


def full_load_power(
    speed: float, rated_speed: float, rated_power: float, curve_speeds: Table, curve_powers: Table
) -> float:
    """Power that the engine can give at a speed.

    Parameters
    ----------
    speed : rad/s
    rated_speed : rad/s
    rated_power : W at the crankshaft
    curve_speeds : shares of rated speed, rising, the first above 0
    curve_powers : shares of rated power at full load, at those speeds

    Returns
    -------
    W; below the first point the torque of that point is held, above the last the power

    Raises
    ------
    OutOfRange
        speed or rated power negative, or rated speed not positive.

    Source
    ------
    The maker's full-load curve, read linearly.

    Example
    -------
    >>> full_load_power(125.0, 250.0, 60e3, (0.3, 0.5, 1.0), (0.20, 0.53, 1.0))
    31800.0
    """
    if rated_speed <= 0.0:
        raise OutOfRange("rated speed must be positive; found", rated_speed)
    if speed < 0.0:
        raise OutOfRange("speed must not be negative; found", speed)
    if rated_power < 0.0:
        raise OutOfRange("rated power must not be negative; found", rated_power)
    share = speed / rated_speed
    power = rated_power * interpolate(share, curve_speeds, curve_powers)
    if share < curve_speeds[0]:
        power *= share / curve_speeds[0]
    return power


def spare_power(full_load: float, demand: float, margin: float) -> float:
    """Power left for the alternators when the propeller has had its share and a margin is kept.

    Parameters
    ----------
    full_load : W at this speed
    demand : W taken by the propeller
    margin : share of the full-load power that is never asked for

    Returns
    -------
    W, 0 or more

    Raises
    ------
    OutOfRange
        margin outside 0 to 1.

    Source
    ------
    A balance at the crankshaft.

    Example
    -------
    >>> spare_power(30e3, 10e3, 0.15)
    15500.0
    """
    if margin < 0.0 or margin > 1.0:
        raise OutOfRange("margin must be within 0 and 1; found", margin)
    return max(0.0, (1.0 - margin) * full_load - demand)


def fuel_flow(
    power: float,
    speed: float,
    displacement: float,
    friction_pressure: float,
    indicated_efficiency: float,
    heating_value: float,
) -> float:
    """Fuel that a four-stroke engine burns, by a Willans line.

    Parameters
    ----------
    power : W at the crankshaft, all that hangs on it together
    speed : rad/s
    displacement : m³ swept
    friction_pressure : Pa, friction mean effective pressure, with pumping and the engine's own auxiliaries
    indicated_efficiency : share of the heating value that reaches the pistons
    heating_value : J/kg, lower

    Returns
    -------
    kg/s; a running engine burns fuel at no power too

    Raises
    ------
    OutOfRange
        power, speed, displacement or friction negative, efficiency outside 0 to 0.6, or heating value not
        positive.

    Source
    ------
    Willans's straight line of fuel over power at constant speed; friction power = pressure x displacement x
    revolutions / 2 for a four-stroke (Heywood, Internal Combustion Engine Fundamentals, from memory).

    Example
    -------
    >>> 1e3 * fuel_flow(10e3, 200.0, 0.0025, 150e3, 0.42, 42.84e6)
    0.887
    """
    if power < 0.0:
        raise OutOfRange("power must not be negative; found", power)
    if speed < 0.0:
        raise OutOfRange("speed must not be negative; found", speed)
    if displacement < 0.0:
        raise OutOfRange("displacement must not be negative; found", displacement)
    if friction_pressure < 0.0:
        raise OutOfRange("friction pressure must not be negative; found", friction_pressure)
    if indicated_efficiency <= 0.0 or indicated_efficiency > 0.6:
        raise OutOfRange("indicated efficiency must be within 0 and 0.6; found", indicated_efficiency)
    if heating_value <= 0.0:
        raise OutOfRange("heating value must be positive; found", heating_value)
    friction_power = friction_pressure * displacement * speed / (4.0 * math.pi)
    return (power + friction_power) / (indicated_efficiency * heating_value)


def combustion_air(speed: float, displacement: float, volumetric_efficiency: float) -> float:
    """Air that a four-stroke engine draws in.

    Parameters
    ----------
    speed : rad/s
    displacement : m³ swept
    volumetric_efficiency : air drawn in over swept volume; above 1 with a turbocharger

    Returns
    -------
    m³/s of the air at its inlet

    Raises
    ------
    OutOfRange
        speed, displacement or volumetric efficiency negative.

    Source
    ------
    Swept volume once every two revolutions (Heywood, Internal Combustion Engine Fundamentals, from memory).

    Example
    -------
    >>> 1e3 * combustion_air(251.33, 0.0045, 0.9)
    81.0
    """
    if speed < 0.0:
        raise OutOfRange("speed must not be negative; found", speed)
    if displacement < 0.0:
        raise OutOfRange("displacement must not be negative; found", displacement)
    if volumetric_efficiency < 0.0:
        raise OutOfRange("volumetric efficiency must not be negative; found", volumetric_efficiency)
    return volumetric_efficiency * displacement * speed / (4.0 * math.pi)


def fuel_volume(mass: float) -> float:
    """Volume of diesel fuel of a given mass.

    Parameters
    ----------
    mass : kg

    Returns
    -------
    m³

    Raises
    ------
    Nothing.

    Source
    ------
    832.36 kg/m³, UK government conversion factors 2025, average biofuel blend.

    Example
    -------
    >>> 1000.0 * fuel_volume(832.36)
    1000.0
    """
    return mass / DIESEL_DENSITY
