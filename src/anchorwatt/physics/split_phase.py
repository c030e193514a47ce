"""Currents of a shore service: one leg and neutral, or the two legs of split phase."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange


def leg_current(to_neutral: float, across: float, voltage: float) -> float:
    """Current of one leg.

    Parameters
    ----------
    to_neutral : VA of the loads between this leg and neutral
    across : VA of the loads between both legs, 0 for a service of one leg
    voltage : V, the leg to neutral

    Returns
    -------
    A

    Raises
    ------
    OutOfRange
        a load negative or voltage not positive.

    Source
    ------
    Load over voltage; loads across both legs stand at twice the voltage. Power factors taken as alike.

    Example
    -------
    >>> leg_current(1200.0, 4800.0, 120.0)
    30.0
    """
    if to_neutral < 0.0:
        raise OutOfRange("load must not be negative; found", to_neutral)
    if across < 0.0:
        raise OutOfRange("load must not be negative; found", across)
    if voltage <= 0.0:
        raise OutOfRange("voltage must be positive; found", voltage)
    return (to_neutral + 0.5 * across) / voltage


def neutral_current(first: float, second: float, voltage: float) -> float:
    """Current that the neutral of split phase carries: what the legs do not balance.

    Parameters
    ----------
    first, second : VA of the loads between each leg and neutral
    voltage : V, a leg to neutral

    Returns
    -------
    A

    Raises
    ------
    OutOfRange
        a load negative or voltage not positive.

    Source
    ------
    Kirchhoff's law; the legs are half a cycle apart. With one leg loaded it is that leg's current.

    Example
    -------
    >>> neutral_current(2400.0, 1200.0, 120.0)
    10.0
    """
    return abs(leg_current(first, 0.0, voltage) - leg_current(second, 0.0, voltage))


def apparent_power(voltage: float, legs: int, current: float) -> float:
    """Apparent power of a service, every leg at the same current.

    Parameters
    ----------
    voltage : V, a leg to neutral
    legs : 1, or 2 of split phase
    current : A of each leg

    Returns
    -------
    VA

    Raises
    ------
    OutOfRange
        voltage not positive, current negative, or legs other than 1 or 2.

    Source
    ------
    Voltage times current, added over the legs.

    Example
    -------
    >>> apparent_power(120.0, 2, 50.0)
    12000.0
    """
    if voltage <= 0.0:
        raise OutOfRange("voltage must be positive; found", voltage)
    if current < 0.0:
        raise OutOfRange("current must not be negative; found", current)
    if legs not in (1, 2):
        raise OutOfRange("a service has one leg or two; found", legs)
    return voltage * legs * current


def current_under_sag(power: float, voltage: float, sag: float) -> float:
    """Current of loads that hold their power while the voltage sags, as compressors and chargers do.

    Parameters
    ----------
    power : VA
    voltage : V, nominal
    sag : share of the voltage that is missing, below 1

    Returns
    -------
    A

    Raises
    ------
    OutOfRange
        power negative, voltage not positive, or sag outside 0 to 1.

    Source
    ------
    Power over the voltage that is left.

    Example
    -------
    >>> current_under_sag(2880.0, 120.0, 0.10)
    26.7
    """
    if power < 0.0:
        raise OutOfRange("power must not be negative; found", power)
    if voltage <= 0.0:
        raise OutOfRange("voltage must be positive; found", voltage)
    if sag < 0.0 or sag >= 1.0:
        raise OutOfRange("sag must be within 0 and 1; found", sag)
    return power / (voltage * (1.0 - sag))
