"""How an air handler answers its thermostat: call, fan share and running share.

The handler's valve and fan follow the cabin's temperature over its set point in proportion. At a very
small call the fan would have to turn slower than it can, so the handler runs at lowest fan for a share
of the time instead.
"""

from __future__ import annotations

from anchorwatt.errors import OutOfRange

CYCLING_CALL = 0.1
"""Call below which the handler runs part of the time, at lowest fan. From practice, no source."""


def call_share(temperature: float, set_point: float, band: float) -> float:
    """Share of full duty that the thermostat asks for.

    Parameters
    ----------
    temperature : °C of the cabin
    set_point : °C
    band : K over the set point at which full duty is asked for

    Returns
    -------
    0 to 1

    Raises
    ------
    OutOfRange
        band not positive.

    Source
    ------
    Proportional control, any controls text.

    Example
    -------
    >>> call_share(24.5, 24.0, 1.0)
    0.5
    """
    if band <= 0.0:
        raise OutOfRange("the thermostat's band must be above 0 K; found", band)
    return min(1.0, max(0.0, (temperature - set_point) / band))


def running_share(call: float) -> float:
    """Share of the time a handler runs at a given call.

    Parameters
    ----------
    call : 0 to 1

    Returns
    -------
    0 to 1; 1 from `CYCLING_CALL` upward

    Raises
    ------
    OutOfRange
        call outside 0 to 1.

    Source
    ------
    Time-proportioning of on-off control, any controls text.

    Example
    -------
    >>> running_share(0.05)
    0.5
    """
    if call < 0.0 or call > 1.0:
        raise OutOfRange("a call lies between 0 and 1; found", call)
    return min(1.0, call / CYCLING_CALL)


def airflow_share(call: float, lowest: float) -> float:
    """Share of full airflow while the handler runs.

    Parameters
    ----------
    call : 0 to 1
    lowest : share of full airflow at lowest fan

    Returns
    -------
    lowest to 1, rising evenly from `CYCLING_CALL` to a full call

    Raises
    ------
    OutOfRange
        call outside 0 to 1, lowest not above 0 or above 1.

    Source
    ------
    Proportional control, any controls text.

    Example
    -------
    >>> airflow_share(1.0, 0.4)
    1.0
    >>> airflow_share(0.05, 0.4)
    0.4
    """
    if call < 0.0 or call > 1.0:
        raise OutOfRange("a call lies between 0 and 1; found", call)
    if lowest <= 0.0 or lowest > 1.0:
        raise OutOfRange("the lowest fan share lies above 0 and not above 1; found", lowest)
    return lowest + (1.0 - lowest) * max(0.0, (call - CYCLING_CALL) / (1.0 - CYCLING_CALL))


def coil_approach(full_approach: float, call: float) -> float:
    """How far a coil's surface stays warmer than the refrigerant in it.

    The gap drives the heat through tube and fin, so it shrinks with the heat: a handler at low call has a
    colder surface, and dries better, than the same refrigerant would give at full call.

    Parameters
    ----------
    full_approach : K, apparatus dew point over the evaporating temperature at full call
    call : 0 to 1

    Returns
    -------
    K; below `CYCLING_CALL`, while the handler runs, that of `CYCLING_CALL`

    Raises
    ------
    OutOfRange
        approach negative, call outside 0 to 1.

    Source
    ------
    Heat flow in proportion to temperature difference over a fixed resistance, any heat-transfer text.

    Example
    -------
    >>> coil_approach(4.0, 0.5)
    2.0
    """
    if full_approach < 0.0:
        raise OutOfRange("an approach is not negative; found", full_approach)
    if call < 0.0 or call > 1.0:
        raise OutOfRange("a call lies between 0 and 1; found", call)
    return full_approach * max(call, CYCLING_CALL)
