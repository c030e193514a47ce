"""What burning diesel fuel gives off."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange

CARBON_DIOXIDE_OF_DIESEL = 2640.0  # kg for each m³ of fuel


def carbon_dioxide_emitted(volume: float) -> float:
    """Carbon dioxide out of diesel fuel that is burnt.

    Parameters
    ----------
    volume : m³ of diesel

    Returns
    -------
    kg

    Raises
    ------
    OutOfRange
        volume negative.

    Source
    ------
    2640 g for each litre, Commission Implementing Decision (EU) 2020/728; what is burnt on board, not what was
    emitted on its way there.

    Example
    -------
    >>> carbon_dioxide_emitted(0.010)
    26.4
    """
    if volume < 0.0:
        raise OutOfRange("volume must not be negative; found", volume)
    return volume * CARBON_DIOXIDE_OF_DIESEL
