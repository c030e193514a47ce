"""How long charging and discharging take behind a resistance, in closed form, where the voltage is a straight line.

Voltages, resistances and currents are those of whatever the caller means, a cell or the whole bank, as long as
all of one call are of the same thing. They are what the stepped simulation is held against.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange


def charge_where_voltage_is_reached(
    current: float, empty_voltage: float, slope: float, resistance: float, absorb_voltage: float
) -> float:
    """State of charge at which a steady charging current reaches the absorb voltage.

    Parameters
    ----------
    current : A of charge
    empty_voltage : V, open circuit, at no charge
    slope : V, open circuit, from empty to full
    resistance : ohm
    absorb_voltage : V held at the terminals from there on

    Returns
    -------
    state of charge, held within 0 and 1

    Raises
    ------
    OutOfRange
        slope not positive, or current or resistance negative.

    Source
    ------
    Kirchhoff: E0 + k z + I R = V, solved for z.

    Example
    -------
    >>> charge_where_voltage_is_reached(100.0, 25.0, 2.0, 0.01, 27.5)
    0.75
    """
    if slope <= 0.0:
        raise OutOfRange("slope of the open-circuit voltage must be positive; found", slope)
    if min(current, resistance) < 0.0:
        raise OutOfRange("current and resistance must not be negative; found", min(current, resistance))
    return min(1.0, max(0.0, (absorb_voltage - current * resistance - empty_voltage) / slope))


def constant_current_time(charge_from: float, charge_to: float, capacity: float, current: float) -> float:
    """Time of the constant-current part.

    Parameters
    ----------
    charge_from, charge_to : states of charge, 0 to 1
    capacity : A s
    current : A of charge

    Returns
    -------
    s, 0 when it is there already

    Raises
    ------
    OutOfRange
        capacity or current not positive.

    Source
    ------
    Conservation of charge: t = Q (z2 - z1)/I.

    Example
    -------
    >>> constant_current_time(0.25, 0.75, 360_000.0, 100.0)
    1800.0
    """
    if capacity <= 0.0:
        raise OutOfRange("capacity must be positive; found", capacity)
    if current <= 0.0:
        raise OutOfRange("current must be positive; found", current)
    return max(0.0, charge_to - charge_from) * capacity / current


def tail_time_constant(slope: float, resistance: float, capacity: float) -> float:
    """Time in which the current falls to 1/e while the voltage is held.

    Parameters
    ----------
    slope : V, open circuit, from empty to full
    resistance : ohm
    capacity : A s

    Returns
    -------
    s

    Raises
    ------
    OutOfRange
        slope or capacity not positive, or the resistance negative.

    Source
    ------
    I R = V - E0 - k z and dz/dt = I/Q give dI/dt = -I k/(R Q): an exponential with R Q/k.

    Example
    -------
    >>> tail_time_constant(2.0, 0.01, 360_000.0)
    1800.0
    """
    if slope <= 0.0:
        raise OutOfRange("slope of the open-circuit voltage must be positive; found", slope)
    if capacity <= 0.0:
        raise OutOfRange("capacity must be positive; found", capacity)
    if resistance < 0.0:
        raise OutOfRange("resistance must not be negative; found", resistance)
    return resistance * capacity / slope


def tail_time(current: float, tail_current: float, time_constant: float) -> float:
    """Time of the constant-voltage part, until the current has fallen to the tail at which charging ends.

    Parameters
    ----------
    current : A when the voltage is first held
    tail_current : A at which charging ends
    time_constant : s, of `tail_time_constant`

    Returns
    -------
    s, 0 when the current is not above the tail

    Raises
    ------
    OutOfRange
        tail current not positive, or the time constant negative.

    Source
    ------
    The exponential of `tail_time_constant`: t = τ ln(I/I_tail).

    Example
    -------
    >>> tail_time(100.0, 10.0, 1800.0)
    4144.7
    """
    if tail_current <= 0.0:
        raise OutOfRange("tail current must be positive; found", tail_current)
    if time_constant < 0.0:
        raise OutOfRange("time constant must not be negative; found", time_constant)
    if current <= tail_current:
        return 0.0
    return time_constant * math.log(current / tail_current)


def constant_power_time(
    power: float,
    charge_from: float,
    charge_to: float,
    capacity: float,
    empty_voltage: float,
    slope: float,
    resistance: float,
) -> float:
    """Time for which a bank gives a steady power between two states of charge.

    Parameters
    ----------
    power : W at the terminals
    charge_from, charge_to : states of charge, 0 to 1, the second the lower
    capacity : A s
    empty_voltage : V, open circuit, at no charge
    slope : V, open circuit, from empty to full, may be 0
    resistance : ohm, may be 0

    Returns
    -------
    s

    Raises
    ------
    OutOfRange
        power or capacity not positive, resistance or slope negative, charges not falling, or a power that the
        bank cannot give at the end.

    Source
    ------
    I = 2 P/(E + sqrt(E² - 4 R P)), the smaller root of R I² - E I + P = 0, put into dz/dt = -I/Q and integrated with
    E = E0 + k z: t = Q/(2 P k) [F(E1) - F(E2)] with F(E) = E²/2 + (E w - 4 R P ln(E + w))/2 and
    w = sqrt(E² - 4 R P).

    Example
    -------
    >>> constant_power_time(2500.0, 1.0, 0.0, 360_000.0, 26.0, 0.0, 0.01)
    3600.0
    """
    if power <= 0.0:
        raise OutOfRange("power must be positive; found", power)
    if capacity <= 0.0:
        raise OutOfRange("capacity must be positive; found", capacity)
    if min(slope, resistance) < 0.0:
        raise OutOfRange("slope and resistance must not be negative; found", min(slope, resistance))
    if charge_to > charge_from:
        raise OutOfRange("the bank must be left with less charge than it began with; found", charge_to)
    first, last = empty_voltage + slope * charge_from, empty_voltage + slope * charge_to
    product = 4.0 * resistance * power
    if last <= 0.0 or last * last < product:
        raise OutOfRange("power must not pass what the bank can give at the end, E²/(4 R); found", power)
    if first - last < 1e-9 * first:
        root = math.sqrt(first * first - product)
        return capacity * (charge_from - charge_to) * (first + root) / (2.0 * power)
    given = _voltage_integral(first, product) - _voltage_integral(last, product)
    return capacity * given / (2.0 * power * slope)


def _voltage_integral(voltage: float, product: float) -> float:
    """V², ∫ (E + sqrt(E² - 4 R P)) dE up to E."""
    root = math.sqrt(max(0.0, voltage * voltage - product))
    return 0.5 * voltage * voltage + 0.5 * (voltage * root - product * math.log(voltage + root))
