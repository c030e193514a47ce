"""How much of its field an alternator needs for a current."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange


def field_share(current_share: float, cut_in_speed: float, speed: float) -> float:
    """Share of the full field at which an alternator gives a share of what it can at that speed.

    Parameters
    ----------
    current_share : of the current that it gives at full field at this speed
    cut_in_speed : rad/s of the rotor at which it begins to give current with full field
    speed : rad/s of the rotor

    Returns
    -------
    share of the field current, 0 to 1; just below the share at which no current flows where none is wanted

    Raises
    ------
    OutOfRange
        current share outside 0 to 1, or cut-in speed not between 0 and the speed.

    Source
    ------
    Machine limited by its own reactance, not saturated: E = k f n and I = sqrt(E² - U²) / (omega L), which at full
    field is sqrt(1 - (n0/n)²); from memory. Hot rotors and saturation ask for somewhat more.

    Example
    -------
    >>> field_share(0.5, 100.0, 300.0)
    0.577
    """
    if current_share < 0.0 or current_share > 1.0:
        raise OutOfRange("share of the current must be within 0 and 1; found", current_share)
    if cut_in_speed < 0.0:
        raise OutOfRange("cut-in speed must not be negative; found", cut_in_speed)
    if speed <= 0.0 or speed < cut_in_speed:
        raise OutOfRange("rotor speed must not be below the cut-in speed; found", speed)
    start = (cut_in_speed / speed) * (cut_in_speed / speed)
    return math.sqrt(start + (1.0 - start) * current_share * current_share)
