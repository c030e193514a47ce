"""A power converter, inverter or charger: no-load, linear and quadratic loss.

Sleep, in which the no-load loss falls away, is the caller's decision.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.interpolation import Table


def converter_input(output: float, rated: float, no_load: float, linear: float, quadratic: float) -> float:
    """Power that a converter takes for what it gives.

    Parameters
    ----------
    output : W, 0 or more
    rated : W of output
    no_load : W lost at no load
    linear : loss over output
    quadratic : loss over output at rated output

    Returns
    -------
    W

    Raises
    ------
    OutOfRange
        output negative or rated power not positive. Output above rated is allowed: whether it may last is
        the caller's question.

    Source
    ------
    Second-order loss model of photovoltaic inverter testing (European and CEC weighted efficiencies).

    Example
    -------
    >>> converter_input(1500.0, 3000.0, 24.0, 0.03, 0.05)
    1606.5
    """
    if rated <= 0.0:
        raise OutOfRange("rated power must be positive; found", rated)
    if output < 0.0:
        raise OutOfRange("output must not be negative; found", output)
    return no_load + output * (1.0 + linear + quadratic * output / rated)


def converter_output(supply: float, rated: float, no_load: float, linear: float, quadratic: float) -> float:
    """Power that a converter gives from what it takes: the inverse of `converter_input`.

    Parameters
    ----------
    supply : W taken by the converter
    rated : W of output
    no_load : W lost at no load
    linear : loss over output
    quadratic : loss over output at rated output

    Returns
    -------
    W, 0 when the supply does not cover the no-load loss

    Raises
    ------
    OutOfRange
        rated power not positive, linear loss at or below -1, or quadratic loss negative.

    Source
    ------
    The root of `converter_input`, in the form that stands when the quadratic loss is 0.

    Example
    -------
    >>> converter_output(1606.5, 3000.0, 24.0, 0.03, 0.05)
    1500.0
    """
    if rated <= 0.0:
        raise OutOfRange("rated power must be positive; found", rated)
    if linear <= -1.0:
        raise OutOfRange("linear loss must be above -1; found", linear)
    if quadratic < 0.0:
        raise OutOfRange("quadratic loss must not be negative; found", quadratic)
    passed = supply - no_load
    if passed <= 0.0:
        return 0.0
    slope = 1.0 + linear
    return 2.0 * passed / (slope + math.sqrt(slope * slope + 4.0 * quadratic * passed / rated))


def output_of_best_efficiency(rated: float, no_load: float, quadratic: float) -> float:
    """Output at which a converter loses the least of what it takes.

    Parameters
    ----------
    rated : W of output
    no_load : W lost at no load
    quadratic : loss over output at rated output

    Returns
    -------
    W, not above the rated output

    Raises
    ------
    OutOfRange
        rated power not positive, or a loss negative.

    Source
    ------
    Where the fixed and the quadratic loss are equal, as in any machine with both.

    Example
    -------
    >>> output_of_best_efficiency(3000.0, 24.0, 0.05)
    1200.0
    """
    if rated <= 0.0:
        raise OutOfRange("rated power must be positive; found", rated)
    if no_load < 0.0:
        raise OutOfRange("no-load loss must not be negative; found", no_load)
    if quadratic < 0.0:
        raise OutOfRange("quadratic loss must not be negative; found", quadratic)
    if quadratic * rated <= no_load:
        return rated
    return math.sqrt(no_load * rated / quadratic)


def temperature_factor(air: float, full_to: float, derating: float, highest: float) -> float:
    """Share of its rating that a converter gives in warm air.

    Parameters
    ----------
    air : °C round it
    full_to : °C up to which it gives all
    derating : 1/K, share lost for each kelvin above
    highest : °C from which on it gives nothing

    Returns
    -------
    share, 0 to 1

    Raises
    ------
    OutOfRange
        derating negative.

    Source
    ------
    A straight line, as on makers' sheets: 1 to 1.5 % a kelvin above 40 °C, from memory.

    Example
    -------
    >>> temperature_factor(50.0, 40.0, 0.015, 65.0)
    0.85
    """
    if derating < 0.0:
        raise OutOfRange("derating must not be negative; found", derating)
    if air >= highest:
        return 0.0
    return max(0.0, 1.0 - derating * max(0.0, air - full_to))


def overload_time(share: float, shares: Table, times: Table) -> float:
    """How long an inverter gives more than its rating.

    Parameters
    ----------
    share : output over rating
    shares : of the rating, rising
    times : s for which it gives those, falling

    Returns
    -------
    s: endless up to the rating, the time of the next share on the list above it, 0 beyond the last

    Raises
    ------
    OutOfRange
        share negative.

    Source
    ------
    Read from the maker's list on the safe side, as a staircase.

    Example
    -------
    >>> overload_time(1.3, (1.2, 1.5, 2.0), (1800.0, 60.0, 3.0))
    60.0
    """
    if share < 0.0:
        raise OutOfRange("share of the rating must not be negative; found", share)
    if share <= 1.0:
        return math.inf
    for i in range(len(shares)):
        if share <= shares[i]:
            return times[i]
    return 0.0
