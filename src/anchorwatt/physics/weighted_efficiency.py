"""One figure for a converter's efficiency over the loads of a year of sun."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.inverter import converter_input

EUROPEAN = ((0.05, 0.03), (0.10, 0.06), (0.20, 0.13), (0.30, 0.10), (0.50, 0.48), (1.00, 0.20))
"""Share of the rating, and the weight of the efficiency there. From memory."""


def european_efficiency(rated: float, no_load: float, linear: float, quadratic: float) -> float:
    """Weighted European efficiency of a converter.

    Parameters
    ----------
    rated : W of output
    no_load : W lost at no load
    linear : loss over output
    quadratic : loss over output at rated output

    Returns
    -------
    share

    Raises
    ------
    OutOfRange
        rated power not positive.

    Source
    ------
    Weights 0.03, 0.06, 0.13, 0.10, 0.48 and 0.20 at 5, 10, 20, 30, 50 and 100 % of the rating, from memory. Made for
    solar inverters of central Europe: a boat's own night weighs otherwise, but makers quote it.

    Example
    -------
    >>> european_efficiency(3000.0, 24.0, 0.03, 0.05)
    0.925
    """
    if rated <= 0.0:
        raise OutOfRange("rated power must be positive; found", rated)
    total = 0.0
    for share, weight in EUROPEAN:
        output = share * rated
        total += weight * output / converter_input(output, rated, no_load, linear, quadratic)
    return total
