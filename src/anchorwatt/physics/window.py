"""How a window's solar gain falls as the sun strikes it more slantwise.

Clear sheets are followed ray by ray: Fresnel at each surface, absorption within, both polarisations, all
passes to and fro; a share of what a sheet absorbs comes inside.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.sun_and_sky import interface_reflectances

REFRACTIVE_INDEX = 1.526
"""Of glass; acrylic, 1.49, is close enough to share it."""

EXTINCTION = 0.09
"""Share of an e-fold absorbed straight through one sheet: 8 % of the light, as clear 3 mm glass takes."""

OUTER_INWARD, INNER_INWARD, SINGLE_INWARD = 0.12, 0.52, 0.27
"""Shares of what a sheet absorbs that come inside: outer and inner of two, and a single one.

From the resistances on its two sides with 22 W/(m² K) outside, 8 inside and 6 across the gap.
"""

GRAZING = 1e-9
"""Cosine of incidence up to which nothing comes in: there two sheets mirror each other without end."""


def _sheet(cosine: float, polarisation: int) -> tuple[float, float]:
    """Transmittance and reflectance of one sheet, all passes to and fro added up."""
    surface = interface_reflectances(cosine, REFRACTIVE_INDEX)[polarisation]
    inside = math.sqrt(1.0 - (1.0 - cosine * cosine) / (REFRACTIVE_INDEX * REFRACTIVE_INDEX))
    passed = math.exp(-EXTINCTION / inside)
    repeated = 1.0 - surface * surface * passed * passed
    transmittance = passed * (1.0 - surface) * (1.0 - surface) / repeated
    return transmittance, surface * (1.0 + passed * transmittance)


def _gain(cosine: float, panes: int) -> float:
    """Solar gain of clear glazing: transmitted, and what of the absorbed comes inside."""
    total = 0.0
    for polarisation in range(2):
        transmittance, reflectance = _sheet(cosine, polarisation)
        absorptance = 1.0 - transmittance - reflectance
        if panes == 1:
            total += transmittance + SINGLE_INWARD * absorptance
        else:
            between = 1.0 / (1.0 - reflectance * reflectance)
            outer = absorptance * (1.0 + transmittance * reflectance * between)
            inner = absorptance * transmittance * between
            total += transmittance * transmittance * between + OUTER_INWARD * outer + INNER_INWARD * inner
    return 0.5 * total


def angle_modifier(cosine: float, panes: int) -> float:
    """Solar gain of clear glazing at an angle of incidence, over that at normal incidence.

    Parameters
    ----------
    cosine : of the angle of incidence; not above 0 = the sun is behind the window
    panes : 1 or 2

    Returns
    -------
    0 to 1

    Raises
    ------
    OutOfRange
        cosine above 1, panes neither 1 nor 2.

    Source
    ------
    Fresnel's equations and the net transmittance of sheets in series: J. A. Duffie and W. A. Beckman, "Solar
    Engineering of Thermal Processes", chapter on radiation transmission through glazing.

    Example
    -------
    >>> angle_modifier(math.cos(math.radians(60.0)), 1)
    0.91
    """
    if panes != 1 and panes != 2:
        raise OutOfRange("a window has 1 or 2 panes; found", panes)
    if not cosine <= 1.000001:
        raise OutOfRange("the cosine of incidence is not above 1; found", cosine)
    if cosine <= GRAZING:
        return 0.0
    return min(1.0, _gain(min(1.0, cosine), panes) / _gain(1.0, panes))


def diffuse_modifier(panes: int) -> float:
    """Solar gain of clear glazing for light from all sides alike, over that at normal incidence.

    Parameters
    ----------
    panes : 1 or 2

    Returns
    -------
    0 to 1

    Raises
    ------
    OutOfRange
        panes neither 1 nor 2.

    Source
    ------
    Integral of `angle_modifier` over the half sphere, weighted by the cosine of incidence.

    Example
    -------
    >>> diffuse_modifier(1)
    0.91
    """
    total = 0.0
    for i in range(200):
        total += angle_modifier(math.sqrt((i + 0.5) / 200.0), panes)
    return total / 200.0
