"""Electric power of an air handler's fan at part of its airflow."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

AIRFLOW_EXPONENT = 2.7
"""A little under the 3 of the fan law, as filters are partly laminar. From practice, no source."""

ELECTRONICS_SHARE = 0.03
"""Share of full power that the fan's drive takes at any speed. From practice, no source."""


def fan_power(rated_power: float, airflow_share: float) -> float:
    """Electric power of a fan whose speed is controlled.

    Parameters
    ----------
    rated_power : W at full airflow
    airflow_share : of full airflow, 0 = stopped

    Returns
    -------
    W; 0 when stopped, else not below `ELECTRONICS_SHARE` of the rated power

    Raises
    ------
    OutOfRange
        rated power negative, airflow share outside 0 to 1.5.

    Source
    ------
    Fan law, any fan text; its exponent and the drive's own share are from practice, no source.

    Example
    -------
    >>> fan_power(60.0, 0.5)
    10.8
    """
    if not rated_power >= 0.0:
        raise OutOfRange("a rated power is not negative; found", rated_power)
    if not 0.0 <= airflow_share <= 1.5:
        raise OutOfRange("the share of full airflow lies between 0 and 1.5; found", airflow_share)
    if airflow_share == 0.0:
        return 0.0
    return rated_power * (ELECTRONICS_SHARE + (1.0 - ELECTRONICS_SHARE) * math.pow(airflow_share, AIRFLOW_EXPONENT))
