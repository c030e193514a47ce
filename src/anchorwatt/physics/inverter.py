"""A power converter, inverter or charger: no-load, linear and quadratic loss.

Sleep, in which the no-load loss falls away, is the caller's decision.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange


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
