"""An alternator wound for another voltage: the same iron, copper, belt and heat, another number of turns."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.alternator import RECTIFIER_DROP, scaled_drop


def rewound_current(rated_current: float, voltage: float, new_voltage: float) -> float:
    """Rated current of the same machine wound for another voltage.

    Parameters
    ----------
    rated_current : A, as it is
    voltage : V at regulation, as it is
    new_voltage : V at regulation, rewound

    Returns
    -------
    A

    Raises
    ------
    OutOfRange
        a voltage not positive.

    Source
    ------
    With the slots filled alike, current times turns and voltage over turns stay: so does their product.

    Example
    -------
    >>> rewound_current(175.0, 28.2, 56.4)
    87.5
    """
    if not voltage > 0.0:
        raise OutOfRange("voltage must be positive; found", voltage)
    if not new_voltage > 0.0:
        raise OutOfRange("voltage must be positive; found", new_voltage)
    return rated_current * voltage / new_voltage


def rewound_efficiency(efficiency: float, voltage: float, new_voltage: float) -> float:
    """Efficiency at the reference point of the same machine wound for another voltage.

    Losses in copper, iron, field and bearings stay as they are at the same output; the two diodes' drop does not
    grow with the voltage, so the rectifier's loss falls with the current.

    Parameters
    ----------
    efficiency : at the reference point of `physics.alternator`, as it is
    voltage : V at regulation, as it is
    new_voltage : V at regulation, rewound

    Returns
    -------
    ratio

    Raises
    ------
    OutOfRange
        a voltage not positive, or as `physics.alternator.scaled_drop`.

    Source
    ------
    The loss model of `physics.alternator`, its losses for each watt of output kept except the rectifier's.

    Example
    -------
    >>> rewound_efficiency(0.74, 28.2, 56.4)
    0.758
    """
    if not new_voltage > 0.0:
        raise OutOfRange("voltage must be positive; found", new_voltage)
    others = scaled_drop(voltage, efficiency) / voltage
    return 1.0 / (1.0 + RECTIFIER_DROP / new_voltage + others)
