"""Clouds warm the sky."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange


def cloudy_sky_temperature(clear_sky_temperature: float, dry_bulb: float, opaque_cover: float) -> float:
    """Effective temperature of a sky that is partly covered by clouds.

    Parameters
    ----------
    clear_sky_temperature : °C, effective, without clouds
    dry_bulb : °C of the outside air
    opaque_cover : share of the sky that clouds hide, 0 to 1

    Returns
    -------
    °C, not above the dry bulb

    Raises
    ------
    OutOfRange
        cover outside 0 to 1, or a temperature at or below absolute zero.

    Source
    ------
    Emissivity of the clear sky times 1 + 0.0224 n − 0.0035 n² + 0.00028 n³, n the cover in tenths: G. Walton,
    Thermal Analysis Research Program reference manual, NBSIR 83-2655, 1983, after Clark and Allen 1978 (as
    quoted by several public sources).

    Example
    -------
    >>> round(cloudy_sky_temperature(14.0, 27.0, 0.0), 2)
    14.00
    >>> round(cloudy_sky_temperature(14.0, 27.0, 0.5), 1)
    18.2
    """
    if opaque_cover < 0.0 or opaque_cover > 1.0:
        raise OutOfRange("cloud cover lies between 0 and 1; found", opaque_cover)
    if clear_sky_temperature <= -273.15:
        raise OutOfRange("the sky is warmer than -273.15 °C; found", clear_sky_temperature)
    if dry_bulb <= -273.15:
        raise OutOfRange("the air is warmer than -273.15 °C; found", dry_bulb)
    tenths = 10.0 * opaque_cover
    factor = 1.0 + 0.0224 * tenths - 0.0035 * tenths**2 + 0.00028 * tenths**3
    emissivity = ((clear_sky_temperature + 273.15) / (dry_bulb + 273.15)) ** 4 * factor
    return float((dry_bulb + 273.15) * min(1.0, emissivity) ** 0.25 - 273.15)
