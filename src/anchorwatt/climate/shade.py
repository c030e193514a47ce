"""What a projection over a window, and fins beside it, leave of the sun on an upright face."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

GRAZING = 1e-6
"""Cosine under which the sun is behind the face, or so nearly in its plane that it brings nothing."""

STRIPS = 50
"""Strips of a window over which the view of the sky is averaged."""


def sunlit_share(
    sun_elevation: Floats,
    sun_azimuth: Floats,
    azimuth: float,
    height: float,
    width: float,
    overhang: float,
    above: float,
    fins: float,
    beside: float,
) -> Floats:
    """Share of a window that the direct sun reaches, at every instant.

    The overhang is taken as long, the fins as tall: shadows have no ends.

    Parameters
    ----------
    sun_elevation, sun_azimuth : rad
    azimuth : rad true, to which the upright face looks
    height, width : m, of the window
    overhang : m by which the projection stands out, 0 = none
    above : m from the window's top up to it
    fins : m by which a fin on each side stands out, 0 = none
    beside : m from the window's edge to the fin

    Source
    ------
    Profile angles of the sun, any solar-energy text.

    Example
    -------
    >>> noon = np.array([np.pi / 4]), np.array([np.pi])
    >>> float(sunlit_share(*noon, np.pi, 2.0, 3.0, 1.0, 0.5, 0.0, 0.0)[0])
    0.75
    """
    aside = np.asarray(sun_azimuth) - azimuth
    facing = np.maximum(np.cos(aside), GRAZING)
    down = overhang * np.maximum(0.0, np.tan(np.minimum(sun_elevation, 0.5 * np.pi - GRAZING))) / facing
    across = fins * np.abs(np.sin(aside)) / facing
    from_above = np.clip(down - above, 0.0, height) / height
    from_beside = np.clip(across - beside, 0.0, width) / width
    return np.asarray((1.0 - from_above) * (1.0 - from_beside))


def sky_left(height: float, width: float, overhang: float, above: float, fins: float, beside: float) -> float:
    """Share of the sky before an upright window that a long overhang and tall fins leave in view, over its area.

    Parameters
    ----------
    height, width, overhang, above, fins, beside : m, see `sunlit_share`

    Source
    ------
    View factor of a strip to a long plane at right angles to it, (1 − sin β) / 2, any text on heat radiation; the sky
    makes half of what an upright face sees.

    Example
    -------
    >>> sky_left(2.0, 3.0, 0.0, 0.5, 0.0, 0.0)
    1.0
    """
    part = (np.arange(STRIPS) + 0.5) / STRIPS
    left = 1.0
    if overhang > 0.0:
        # All that the overhang hides is sky: twice its view factor.
        left *= float(np.mean(np.sin(np.arctan2(above + height * part, overhang))))
    if fins > 0.0:
        hidden = np.mean(0.5 * (1.0 - np.sin(np.arctan2(beside + width * part, fins))))
        left *= float(1.0 - 2.0 * hidden)
    return left


def ground_left(width: float, fins: float, beside: float) -> float:
    """Share of the ground before an upright window that fins beside it leave in view.

    Parameters
    ----------
    width, fins, beside : m, see `sunlit_share`

    Source
    ------
    As `sky_left`.

    Example
    -------
    >>> ground_left(3.0, 0.0, 0.0)
    1.0
    """
    return sky_left(1.0, width, 0.0, 0.0, fins, beside)
