"""Forces of a belt drive: what pulls, what pulls back, what bends the shaft.

A belt carries power by the difference between its tight and its slack side. How much both pull together on the
shaft follows from the ratio of the two at which it just does not slip, to which it must be tensioned.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from anchorwatt.errors import OutOfRange


def belt_speed(speed: float, diameter: float) -> float:
    """Speed of a belt on a pulley.

    Parameters
    ----------
    speed : rad/s of the pulley
    diameter : m of the pulley, where the belt's cords run

    Returns
    -------
    m/s

    Raises
    ------
    OutOfRange
        speed negative, or diameter not positive.

    Source
    ------
    Definition: v = omega d / 2.

    Example
    -------
    >>> belt_speed(5000 * 2 * math.pi / 60, 0.065)
    17.0
    """
    if speed < 0.0:
        raise OutOfRange("speed must not be negative; found", speed)
    if diameter <= 0.0:
        raise OutOfRange("pulley diameter must be positive; found", diameter)
    return 0.5 * speed * diameter


def effective_tension(power: float, belt_speed: float) -> float:
    """Difference of tension between the tight and the slack side.

    Parameters
    ----------
    power : W carried
    belt_speed : m/s

    Returns
    -------
    N

    Raises
    ------
    OutOfRange
        power negative, or the belt not moving.

    Source
    ------
    P = (T1 - T2) v.

    Example
    -------
    >>> effective_tension(5000.0, 17.02)
    293.8
    """
    if power < 0.0:
        raise OutOfRange("power must not be negative; found", power)
    if belt_speed <= 0.0:
        raise OutOfRange("belt speed must be positive; found", belt_speed)
    return power / belt_speed


def side_tensions(effective_tension: float, tension_ratio: float) -> tuple[float, float]:
    """Tension of the tight and of the slack side, so that the belt just does not slip.

    Parameters
    ----------
    effective_tension : N
    tension_ratio : tight over slack side

    Returns
    -------
    N of the tight side, N of the slack side

    Raises
    ------
    OutOfRange
        effective tension negative, or a ratio not above 1.

    Source
    ------
    T1 - T2 given and T1 / T2 = K: T2 = (T1 - T2) / (K - 1). K is e^(friction x wrap); 4 to 5 for V and rib belts,
    from memory.

    Example
    -------
    >>> side_tensions(300.0, 4.0)
    (400.0, 100.0)
    """
    if effective_tension < 0.0:
        raise OutOfRange("effective tension must not be negative; found", effective_tension)
    if tension_ratio <= 1.0:
        raise OutOfRange("tension ratio must be above 1; found", tension_ratio)
    slack = effective_tension / (tension_ratio - 1.0)
    return tension_ratio * slack, slack


def shaft_load(tight: float, slack: float, wrap: float) -> float:
    """Pull of a belt sideways on a shaft.

    Parameters
    ----------
    tight : N
    slack : N
    wrap : rad of the pulley that the belt lies on; pi where both sides run parallel, which is the most

    Returns
    -------
    N

    Raises
    ------
    OutOfRange
        a tension negative, or a wrap outside 0 to pi.

    Source
    ------
    Sum of two forces under an angle: F² = T1² + T2² - 2 T1 T2 cos(wrap). With parallel sides F = T1 + T2, which is
    (T1 - T2)(K + 1)/(K - 1).

    Example
    -------
    >>> shaft_load(400.0, 100.0, math.pi)
    500.0
    """
    if tight < 0.0 or slack < 0.0:
        raise OutOfRange("tension must not be negative; found", min(tight, slack))
    if wrap < 0.0 or wrap > math.pi:
        raise OutOfRange("wrap must be within 0 and pi; found", wrap)
    return math.sqrt(max(0.0, tight * tight + slack * slack - 2.0 * tight * slack * math.cos(wrap)))


def combined_load(loads: Sequence[float], positions: Sequence[float]) -> float:
    """Pull of several belts together on one shaft. Not for the kernel.

    Parameters
    ----------
    loads : N of each
    positions : rad, where each pulls to, clockwise from straight up

    Returns
    -------
    N

    Raises
    ------
    OutOfRange
        a load negative, or not as many positions as loads.

    Source
    ------
    Sum of vectors.

    Example
    -------
    >>> combined_load((300.0, 400.0), (0.0, math.pi / 2))
    500.0
    """
    if len(loads) != len(positions):
        raise OutOfRange("each load has one position; found positions", float(len(positions)))
    for load in loads:
        if load < 0.0:
            raise OutOfRange("load must not be negative; found", load)
    up = sum(load * math.cos(at) for load, at in zip(loads, positions, strict=True))
    right = sum(load * math.sin(at) for load, at in zip(loads, positions, strict=True))
    return math.hypot(up, right)
