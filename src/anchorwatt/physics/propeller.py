"""What the propeller asks of the engine."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange


def propeller_demand(speed: float, rated_speed: float, rated_power: float, exponent: float) -> float:
    """Power that a fixed-pitch propeller absorbs at an engine speed.

    Parameters
    ----------
    speed : rad/s of the engine
    rated_speed : rad/s of the engine
    rated_power : W absorbed at rated speed
    exponent : of the speed ratio; 3 for a slow hull, 2.7 for most pleasure craft, 2.2 for a ducted propeller

    Returns
    -------
    W

    Raises
    ------
    OutOfRange
        speed or power negative, rated speed not positive, or an exponent outside 1 to 4.

    Source
    ------
    The propeller law; exponent 3 is that of test cycle E3, NOx Technical Code 3.2.

    Example
    -------
    >>> propeller_demand(0.8, 1.0, 100.0, 3.0)
    51.2
    """
    if rated_speed <= 0.0:
        raise OutOfRange("rated speed must be positive; found", rated_speed)
    if speed < 0.0:
        raise OutOfRange("speed must not be negative; found", speed)
    if rated_power < 0.0:
        raise OutOfRange("power must not be negative; found", rated_power)
    if exponent < 1.0 or exponent > 4.0:
        raise OutOfRange("exponent must be within 1 and 4; found", exponent)
    return rated_power * math.pow(speed / rated_speed, exponent)


def engine_speed_for(boat_speed: float, rated_boat_speed: float, rated_speed: float) -> float:
    """Engine speed at which the boat makes a speed, with constant slip.

    Parameters
    ----------
    boat_speed : m/s through the water
    rated_boat_speed : m/s at rated engine speed
    rated_speed : rad/s of the engine

    Returns
    -------
    rad/s

    Raises
    ------
    OutOfRange
        boat speed negative or more than 5 % above the rated one, or a rated value not positive.

    Source
    ------
    Constant apparent slip: boat speed in proportion to shaft speed. Good enough at displacement speed;
    wrong through the hump of a planing hull.

    Example
    -------
    >>> engine_speed_for(3.0, 4.0, 240.0)
    180.0
    """
    if rated_boat_speed <= 0.0:
        raise OutOfRange("rated boat speed must be positive; found", rated_boat_speed)
    if rated_speed <= 0.0:
        raise OutOfRange("rated speed must be positive; found", rated_speed)
    if boat_speed < 0.0 or boat_speed > 1.05 * rated_boat_speed:
        raise OutOfRange("boat speed must be within 0 and its rated value; found", boat_speed)
    return rated_speed * boat_speed / rated_boat_speed
