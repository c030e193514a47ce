"""What a transformer does to its supply at the moment it is switched on, and what it does to the voltage."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

DECAY = 0.1
"""s in which the inrush of a small transformer falls to 37 %. From memory: some cycles; large ones take seconds."""


def peak_current(apparent: float, voltage: float) -> float:
    """Peak of the alternating current that an apparent power makes.

    Parameters
    ----------
    apparent : VA
    voltage : V

    Returns
    -------
    A

    Raises
    ------
    OutOfRange
        apparent power negative or voltage not positive.

    Source
    ------
    The square root of 2 times apparent power over voltage, a sine wave.

    Example
    -------
    >>> peak_current(5000.0, 120.0)
    58.93
    """
    if apparent < 0.0:
        raise OutOfRange("apparent power must not be negative; found", apparent)
    if voltage <= 0.0:
        raise OutOfRange("voltage must be positive; found", voltage)
    return math.sqrt(2.0) * apparent / voltage


def inrush_ratio(time: float, first: float, decay: float = DECAY) -> float:
    """Peak of a transformer's inrush some time after it was switched on, over the peak of its rated current.

    Parameters
    ----------
    time : s after switching on
    first : that ratio in the first cycle
    decay : s in which it falls to 37 %

    Returns
    -------
    ratio

    Raises
    ------
    OutOfRange
        time or first ratio negative, or decay not positive.

    Source
    ------
    An exponential envelope, any electrical machines text; its time constant from memory.

    Example
    -------
    >>> inrush_ratio(0.1, 10.0, 0.1)
    3.68
    """
    if time < 0.0:
        raise OutOfRange("time must not be negative; found", time)
    if first < 0.0:
        raise OutOfRange("an inrush is not negative; found", first)
    if decay <= 0.0:
        raise OutOfRange("a decay takes time; found", decay)
    return first * math.exp(-time / decay)


def time_above(ratio: float, first: float, decay: float = DECAY) -> float:
    """How long a transformer's inrush stays above a ratio: the inverse of `inrush_ratio`.

    Parameters
    ----------
    ratio : of its peak over the peak of the rated current
    first : that ratio in the first cycle
    decay : s in which it falls to 37 %

    Returns
    -------
    s, 0 when it never is above

    Raises
    ------
    OutOfRange
        ratio not positive, first ratio negative, or decay not positive.

    Source
    ------
    The inverse of the exponential envelope of `inrush_ratio`.

    Example
    -------
    >>> time_above(2.0, 10.0, 0.1)
    0.161
    """
    if ratio <= 0.0:
        raise OutOfRange("ratio must be positive; found", ratio)
    if first < 0.0:
        raise OutOfRange("an inrush is not negative; found", first)
    if decay <= 0.0:
        raise OutOfRange("a decay takes time; found", decay)
    return decay * math.log(first / ratio) if first > ratio else 0.0


def inrush_survived(
    first: float,
    transformer: float,
    inverter: float,
    shares: tuple[float, ...],
    times: tuple[float, ...],
    decay: float = DECAY,
) -> bool:
    """Whether an inverter that is switched onto a transformer bears its inrush.

    Parameters
    ----------
    first : peak of the inrush in the first cycle, over the peak of the transformer's rated current
    transformer : VA, rating
    inverter : W, rating
    shares : of the inverter's rating that it gives for a while, rising
    times : s for which it gives those, falling
    decay : s in which the inrush falls to 37 %

    Returns
    -------
    whether the peaks stay within the inverter's list for as long as they last

    Raises
    ------
    OutOfRange
        a rating or the decay not positive, or the inrush negative.

    Source
    ------
    The envelope of `inrush_ratio` held against the maker's list, peak against peak, as electronics trip on peaks.
    On the safe side: the first cycle's peak must be on the list, and each share may last no longer than listed.

    Example
    -------
    >>> inrush_survived(10.0, 5000.0, 5000.0, (1.5, 2.0), (60.0, 3.0))
    False
    >>> inrush_survived(1.5, 5000.0, 5000.0, (1.5, 2.0), (60.0, 3.0))
    True
    """
    if transformer <= 0.0:
        raise OutOfRange("rating must be positive; found", transformer)
    if inverter <= 0.0:
        raise OutOfRange("rating must be positive; found", inverter)
    scale = transformer / inverter
    highest = max((1.0, *shares))
    if first * scale > highest * (1.0 + 1e-12):
        return False
    lower = 1.0
    for share, time in zip(shares, times, strict=True):
        # Above the share before it, this one's time counts.
        if time_above(lower / scale, first, decay) > time:
            return False
        lower = share
    return True


def secondary_voltage(supply: float, primary: float, secondary: float, load: float, copper_share: float) -> float:
    """Voltage that a transformer gives to its loads.

    Parameters
    ----------
    supply : V on its primary side
    primary, secondary : V, the ratio of its windings
    load : share of its rating
    copper_share : copper loss at rated load over the rating

    Returns
    -------
    V

    Raises
    ------
    OutOfRange
        a voltage of the ratio not positive, or load or copper loss negative.

    Source
    ------
    Ratio of turns, less the drop in the resistance of the windings at unity power factor; leakage is left out.

    Example
    -------
    >>> secondary_voltage(120.0, 120.0, 240.0, 0.5, 0.03)
    236.4
    """
    if primary <= 0.0:
        raise OutOfRange("primary voltage must be positive; found", primary)
    if secondary <= 0.0:
        raise OutOfRange("secondary voltage must be positive; found", secondary)
    if load < 0.0:
        raise OutOfRange("load must not be negative; found", load)
    if copper_share < 0.0:
        raise OutOfRange("copper loss must not be negative; found", copper_share)
    return supply * secondary / primary * (1.0 - copper_share * load)


def transformed_share(primary: float, secondary: float) -> float:
    """Share of its power that an autotransformer really transforms; the rest passes straight through.

    Parameters
    ----------
    primary : V
    secondary : V

    Returns
    -------
    share, 0 for equal voltages

    Raises
    ------
    OutOfRange
        a voltage not positive.

    Source
    ------
    1 less the lower over the higher voltage, any electrical machines text.

    Example
    -------
    >>> transformed_share(120.0, 240.0)
    0.5
    """
    if primary <= 0.0:
        raise OutOfRange("primary voltage must be positive; found", primary)
    if secondary <= 0.0:
        raise OutOfRange("secondary voltage must be positive; found", secondary)
    return 1.0 - min(primary, secondary) / max(primary, secondary)
