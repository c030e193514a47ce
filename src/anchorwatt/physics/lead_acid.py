"""Lead-acid batteries: what they give at a current, their voltage at rest, and the charge that they take.

Currents are counted positive in the direction that the function is about.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

RATED_TIME = 20.0 * 3600.0  # s, of the discharge that the capacity is told for
HOUR_OF_THE_LAW = 3600.0  # s, current taken in amperes against ampere-hours missing
FULL_RATE = 0.01  # of the capacity an hour, taken at absorb voltage, at which it counts as full. From memory.


def peukert_time(current: float, capacity: float, exponent: float) -> float:
    """Time for which a full battery gives a steady current.

    Parameters
    ----------
    current : A
    capacity : A s, at the 20 h rate
    exponent : ratio, 1 or more

    Returns
    -------
    s until it is empty

    Raises
    ------
    OutOfRange
        current or capacity not positive, or an exponent below 1.

    Source
    ------
    Peukert's law (1897) in the form for a capacity told at a rate: t = H (C/(I H))^k with H 20 h.

    Example
    -------
    >>> peukert_time(10.0, 100.0 * 3600.0, 1.2) / 3600.0
    8.71
    """
    if current <= 0.0:
        raise OutOfRange("current must be positive; found", current)
    if capacity <= 0.0:
        raise OutOfRange("capacity must be positive; found", capacity)
    if exponent < 1.0:
        raise OutOfRange("exponent must be 1 or more; found", exponent)
    return RATED_TIME * math.pow(capacity / (current * RATED_TIME), exponent)


def peukert_capacity(current: float, capacity: float, exponent: float) -> float:
    """Charge that a full battery gives at a steady current.

    Parameters
    ----------
    current : A
    capacity : A s, at the 20 h rate
    exponent : ratio, 1 or more

    Returns
    -------
    A s, at currents below the 20 h rate no more than the capacity

    Raises
    ------
    OutOfRange
        current or capacity not positive, or an exponent below 1.

    Source
    ------
    Current times `peukert_time`. The law is fitted at currents above the 20 h rate; that less current gives no
    more than the capacity is on the safe side.

    Example
    -------
    >>> peukert_capacity(10.0, 100.0 * 3600.0, 1.2) / 3600.0
    87.1
    """
    return min(capacity, current * peukert_time(current, capacity, exponent))


def rest_voltage(charge: float, empty_voltage: float, full_voltage: float) -> float:
    """Voltage of a battery that has rested for hours.

    Parameters
    ----------
    charge : state of charge, 0 to 1
    empty_voltage : V at rest, empty
    full_voltage : V at rest, full

    Returns
    -------
    V

    Raises
    ------
    OutOfRange
        charge outside 0 to 1.

    Source
    ------
    A straight line, as acid density falls evenly with charge; 11.8 to 12.7 V of a 12 V battery is usual, from memory.

    Example
    -------
    >>> rest_voltage(0.5, 11.8, 12.7)
    12.25
    """
    if charge < 0.0 or charge > 1.0:
        raise OutOfRange("state of charge must be within 0 and 1; found", charge)
    return empty_voltage + charge * (full_voltage - empty_voltage)


def lead_acid_acceptance(charge: float, capacity: float, charge_rate: float, available: float) -> float:
    """Charging current that a battery takes: bulk at a limit, then a tail that falls with what is missing.

    Parameters
    ----------
    charge : state of charge, 0 to 1
    capacity : A s, at the 20 h rate
    charge_rate : 1/s, highest current over capacity
    available : A that the charging sources give

    Returns
    -------
    A, 0 or more

    Raises
    ------
    OutOfRange
        charge outside 0 to 1, capacity not positive, charge rate or available current negative.

    Source
    ------
    The ampere-hour law of Woodbridge (1935): no more amperes than ampere-hours are missing. The limit before that is
    the maker's.

    Example
    -------
    >>> lead_acid_acceptance(0.9, 100.0 * 3600.0, 0.2 / 3600.0, 50.0)
    10.0
    """
    if charge < 0.0 or charge > 1.0:
        raise OutOfRange("state of charge must be within 0 and 1; found", charge)
    if capacity <= 0.0:
        raise OutOfRange("capacity must be positive; found", capacity)
    if charge_rate < 0.0:
        raise OutOfRange("charge rate must not be negative; found", charge_rate)
    if available < 0.0:
        raise OutOfRange("available current must not be negative; found", available)
    return min(available, charge_rate * capacity, (1.0 - charge) * capacity / HOUR_OF_THE_LAW)


def lead_acid_charge_time(
    charge_from: float, charge_to: float, capacity: float, charge_rate: float, available: float, efficiency: float
) -> float:
    """Time to bring a battery from one state of charge to another.

    Parameters
    ----------
    charge_from, charge_to : states of charge, 0 to 1
    capacity : A s, at the 20 h rate
    charge_rate : 1/s, highest current over capacity
    available : A that the charging sources give
    efficiency : share of the current that stays as charge

    Returns
    -------
    s, 0 when it is there already, infinite when no current flows or for the last of the charge, to 1

    Raises
    ------
    OutOfRange
        a charge outside 0 to 1, capacity not positive, charge rate or available current negative, or an efficiency
        not above 0 and at most 1.

    Source
    ------
    The integral of `lead_acid_acceptance`: steady until the ampere-hour law takes over, then exponential with one hour
    over the efficiency.

    Example
    -------
    >>> lead_acid_charge_time(0.5, 0.9, 100.0 * 3600.0, 0.2 / 3600.0, 50.0, 1.0) / 3600.0
    2.19
    """
    if min(charge_from, charge_to) < 0.0 or max(charge_from, charge_to) > 1.0:
        raise OutOfRange("state of charge must be within 0 and 1; found", charge_from)
    if capacity <= 0.0:
        raise OutOfRange("capacity must be positive; found", capacity)
    if charge_rate < 0.0 or available < 0.0:
        raise OutOfRange("charge rate and available current must not be negative; found", min(charge_rate, available))
    if efficiency <= 0.0 or efficiency > 1.0:
        raise OutOfRange("efficiency must be above 0 and at most 1; found", efficiency)
    if charge_to <= charge_from:
        return 0.0
    steady = min(charge_rate, available / capacity)
    if steady <= 0.0:
        return math.inf
    turns = max(0.0, 1.0 - steady * HOUR_OF_THE_LAW)
    time = 0.0
    if charge_from < turns:
        time = (min(charge_to, turns) - charge_from) / (steady * efficiency)
    begins = max(charge_from, turns)
    if charge_to > begins:
        if charge_to >= 1.0:
            return math.inf
        time += HOUR_OF_THE_LAW / efficiency * math.log((1.0 - begins) / (1.0 - charge_to))
    return time


def full_charge() -> float:
    """State of charge at which a battery counts as full: where the tail has fallen to a hundredth of its capacity.

    Returns
    -------
    share

    Raises
    ------
    Nothing.

    Source
    ------
    Charging ends at 1 to 2 % of the capacity an hour at absorb voltage: from memory; by the ampere-hour law that
    is 99 %.

    Example
    -------
    >>> full_charge()
    0.99
    """
    return 1.0 - FULL_RATE
