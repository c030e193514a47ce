"""A transformer: core loss all the time it is energised, copper loss with the square of the load.

Loads are active power at unity power factor; a poor power factor adds copper loss that is not counted.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange


def transformer_input(output: float, rated: float, core_loss: float, copper_loss: float) -> float:
    """Power that an energised transformer takes for what it gives.

    Parameters
    ----------
    output : W, 0 or more
    rated : VA
    core_loss : W, at any load
    copper_loss : W, at rated load

    Returns
    -------
    W

    Raises
    ------
    OutOfRange
        output negative or rating not positive.

    Source
    ------
    Open-circuit and short-circuit loss, any electrical machines text.

    Example
    -------
    >>> transformer_input(2500.0, 5000.0, 50.0, 120.0)
    2580.0
    """
    if rated <= 0.0:
        raise OutOfRange("rating must be positive; found", rated)
    if output < 0.0:
        raise OutOfRange("output must not be negative; found", output)
    share = output / rated
    return output + core_loss + copper_loss * share * share


def load_of_best_efficiency(core_loss: float, copper_loss: float) -> float:
    """Load at which a transformer is most efficient.

    Parameters
    ----------
    core_loss : W
    copper_loss : W, at rated load

    Returns
    -------
    share of the rating; above 1 when the copper loss is the smaller

    Raises
    ------
    OutOfRange
        core loss negative, or copper loss not positive.

    Source
    ------
    Copper loss equals core loss, any electrical machines text.

    Example
    -------
    >>> load_of_best_efficiency(30.0, 120.0)
    0.5
    """
    if core_loss < 0.0:
        raise OutOfRange("core loss must not be negative; found", core_loss)
    if copper_loss <= 0.0:
        raise OutOfRange("copper loss must be positive; found", copper_loss)
    return math.sqrt(core_loss / copper_loss)


def efficiency(output: float, rated: float, core_loss: float, copper_loss: float) -> float:
    """Output of a transformer over what it takes.

    Parameters
    ----------
    output : W, 0 or more
    rated : VA
    core_loss : W, at any load
    copper_loss : W, at rated load

    Returns
    -------
    share, 0 at no load

    Raises
    ------
    OutOfRange
        output negative or rating not positive.

    Source
    ------
    By definition, over `transformer_input`.

    Example
    -------
    >>> efficiency(2500.0, 5000.0, 50.0, 120.0)
    0.969
    """
    taken = transformer_input(output, rated, core_loss, copper_loss)
    if output == 0.0:
        return 0.0
    return output / taken
