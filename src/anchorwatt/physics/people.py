"""Heat of people: the total stays, and the warmer the cabin, the more of it leaves as moisture."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange

REFERENCE_TEMPERATURE = 24.0
"""°C of the cabin for which sensible and latent heat are given."""


def sensible_from_person(sensible: float, latent: float, shift: float, temperature: float) -> float:
    """Sensible heat of a person, or of several taken together.

    Parameters
    ----------
    sensible : W at 24 °C
    latent : W at 24 °C
    shift : W that move from sensible to latent for each kelvin warmer
    temperature : °C of the cabin

    Returns
    -------
    W, from 0 to sensible + latent

    Raises
    ------
    OutOfRange
        sensible, latent or shift negative.

    Source
    ------
    Linear between the rows of a handbook table of heat from people; the total kept.

    Example
    -------
    >>> sensible_from_person(75.0, 40.0, 5.0, 26.0)
    65.0
    """
    if not (sensible >= 0.0 and latent >= 0.0):
        raise OutOfRange("heat of people is not negative; found W", min(sensible, latent))
    if not shift >= 0.0:
        raise OutOfRange("the shift from sensible to latent is not negative; found", shift)
    return min(sensible + latent, max(0.0, sensible - shift * (temperature - REFERENCE_TEMPERATURE)))


def latent_from_person(sensible: float, latent: float, shift: float, temperature: float) -> float:
    """Latent heat of a person, or of several taken together.

    Parameters
    ----------
    sensible : W at 24 °C
    latent : W at 24 °C
    shift : W that move from sensible to latent for each kelvin warmer
    temperature : °C of the cabin

    Returns
    -------
    W, from 0 to sensible + latent

    Raises
    ------
    OutOfRange
        sensible, latent or shift negative.

    Source
    ------
    Linear between the rows of a handbook table of heat from people; the total kept.

    Example
    -------
    >>> latent_from_person(75.0, 40.0, 5.0, 26.0)
    50.0
    """
    return sensible + latent - sensible_from_person(sensible, latent, shift, temperature)
