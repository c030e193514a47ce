"""How a sound falls off with distance."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange


def level_at_distance(level: float, reference: float, distance: float) -> float:
    """Sound level of a small source at another distance than it was measured at.

    Parameters
    ----------
    level : dB, or dB(A), at the reference distance
    reference : m
    distance : m

    Returns
    -------
    dB, or dB(A); in the open: 6 dB less for twice the distance

    Raises
    ------
    OutOfRange
        a distance not positive.

    Source
    ------
    Spherical spreading, 20 lg of the ratio of distances: the divergence term of ISO 9613-2 (from memory). Bulkheads,
    hull-borne sound, exhaust and the echo of a cabin are not in it.

    Example
    -------
    >>> level_at_distance(64.0, 1.0, 4.0)
    52.0
    """
    if reference <= 0.0 or distance <= 0.0:
        raise OutOfRange("distances must be positive; found", min(reference, distance))
    return level - 20.0 * math.log10(distance / reference)
