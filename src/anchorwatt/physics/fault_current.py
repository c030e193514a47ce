"""Prospective fault current: what a bank drives into a short circuit, at its terminals and after a cable.

The current is the steady one of resistances alone: inductance only delays it, and nothing electronic is counted on to
stop it. Transistors of a management system may fail shut, so they are never credited with interrupting a fault.
"""

from __future__ import annotations

from anchorwatt.errors import OutOfRange


def string_resistance(cells: int, cell: float, link: float, path: float = 0.0) -> float:
    """Resistance of cells in series with what joins them.

    Parameters
    ----------
    cells : in series
    cell : ohm of one cell
    link : ohm of what joins one cell to the next
    path : ohm of what the whole string has besides, such as its own cable

    Returns
    -------
    ohm

    Raises
    ------
    OutOfRange
        no cell, or a resistance that is negative.

    Source
    ------
    Resistances in series.

    Example
    -------
    >>> 1e3 * string_resistance(4, 0.20e-3, 0.05e-3)
    1.0
    """
    if cells < 1:
        raise OutOfRange("a string must have a cell; found", cells)
    if not (cell >= 0.0 and link >= 0.0 and path >= 0.0):
        raise OutOfRange("resistances must not be negative; found", min(cell, link, path))
    return cells * (cell + link) + path


def parallel_resistance(string: float, strings: int) -> float:
    """Resistance of like strings side by side.

    Parameters
    ----------
    string : ohm of one
    strings : how many

    Returns
    -------
    ohm

    Raises
    ------
    OutOfRange
        no string, or a resistance that is negative.

    Source
    ------
    Resistances in parallel.

    Example
    -------
    >>> 1e3 * parallel_resistance(1.0e-3, 2)
    0.5
    """
    if strings < 1:
        raise OutOfRange("a bank must have a string; found", strings)
    if not string >= 0.0:
        raise OutOfRange("resistances must not be negative; found", string)
    return string / strings


def fault_current(voltage: float, resistance: float) -> float:
    """Current of a dead short.

    Parameters
    ----------
    voltage : V, open circuit
    resistance : ohm of all that it flows through

    Returns
    -------
    A

    Raises
    ------
    OutOfRange
        voltage negative, or resistance not positive.

    Source
    ------
    Ohm's law.

    Example
    -------
    >>> fault_current(13.2, 1.0e-3)
    13200.
    """
    if not voltage >= 0.0:
        raise OutOfRange("voltage must not be negative; found", voltage)
    if not resistance > 0.0:
        raise OutOfRange("a short circuit needs a resistance that is positive; found", resistance)
    return voltage / resistance


def fault_current_after(voltage: float, current: float, loop: float) -> float:
    """Fault current at the end of a cable, from that at its start.

    Parameters
    ----------
    voltage : V, open circuit
    current : A of a fault at the start of the cable
    loop : ohm of the cable, out and back

    Returns
    -------
    A

    Raises
    ------
    OutOfRange
        voltage or current not positive, or a loop resistance that is negative.

    Source
    ------
    The source's own resistance is voltage over current; the cable's is in series with it.

    Example
    -------
    >>> fault_current_after(13.2, 13_200.0, 1.0e-3)
    6600.
    """
    if not voltage > 0.0:
        raise OutOfRange("voltage must be positive; found", voltage)
    if not current > 0.0:
        raise OutOfRange("a fault current must be positive; found", current)
    if not loop >= 0.0:
        raise OutOfRange("resistances must not be negative; found", loop)
    return voltage / (voltage / current + loop)


def transformer_fault_current(power: float, voltage: float, short_circuit_voltage: float) -> float:
    """Current of a dead short across a transformer's secondary, fed by a supply that does not give way.

    Parameters
    ----------
    power : VA rated
    voltage : V of the secondary
    short_circuit_voltage : share of the primary voltage that drives the rated current into a short

    Returns
    -------
    A

    Raises
    ------
    OutOfRange
        power, voltage or share not positive.

    Source
    ------
    Definition of the short-circuit voltage (IEC 60076-1, from memory).

    Example
    -------
    >>> transformer_fault_current(5000.0, 120.0, 0.04)
    1042.
    """
    if not (power > 0.0 and voltage > 0.0):
        raise OutOfRange("power and voltage must be positive; found", min(power, voltage))
    if not short_circuit_voltage > 0.0:
        raise OutOfRange("a short-circuit voltage must be positive; found", short_circuit_voltage)
    return power / voltage / short_circuit_voltage
