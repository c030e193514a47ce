"""What a belt lets through, seen from the alternator's shaft."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange


def belt_power_limit(belt_power: float, belt_speed: float, speed: float) -> float:
    """Shaft power that a belt carries: torque held up to the reference speed, power held above it.

    A belt slips at a difference of tension, so at low speed the torque is the limit and the amperes must come
    down with the speed. Above the reference speed centrifugal tension and wear eat what more speed would
    give; the power is held, on the safe side.

    Parameters
    ----------
    belt_power : W carried at the reference speed
    belt_speed : rad/s, the reference speed of the alternator's pulley
    speed : rad/s of the alternator's pulley

    Returns
    -------
    W

    Raises
    ------
    OutOfRange
        a speed negative, the reference speed not positive, or the power negative.

    Source
    ------
    P = (T1 - T2) v with a constant effective tension; the cap is an assumption of ours.

    Example
    -------
    >>> belt_power_limit(5000.0, 500.0, 300.0)
    3000.0
    """
    if belt_power < 0.0:
        raise OutOfRange("belt power must not be negative; found", belt_power)
    if belt_speed <= 0.0:
        raise OutOfRange("reference speed of the belt must be positive; found", belt_speed)
    if speed < 0.0:
        raise OutOfRange("speed must not be negative; found", speed)
    return belt_power * min(1.0, speed / belt_speed)
