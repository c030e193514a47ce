"""Outdoor air that comes in by itself: leaks in the breeze, a hatch left ajar, an open companionway."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

REFERENCE_WIND = 3.0
"""m/s of the breeze for which a cabin's leakage is given."""

REFERENCE_DIFFERENCE = 4.0
"""K between inside and outside for which a cabin's leakage is given."""

STACK, WIND = 0.000145, 0.000319
"""(L/s)²/(cm⁴ K) and (L/s)²/(cm⁴ (m/s)²) of a house of one storey without shelter: ASHRAE Handbook - Fundamentals
2001, chapter 26, basic model, as repeated in the documentation of a public building-energy program."""

DISCHARGE = 0.61
"""Share of the ideal flow that passes a sharp-edged opening. Any fluid-mechanics text."""

GRAVITY = 9.80665
"""m/s²."""

MEAN_KELVIN = 300.0
"""K of the air for what warmth drives."""


def leakage_in_wind(leakage: float, wind_speed: float, difference: float) -> float:
    """Air changes through leaks at a wind and a temperature difference.

    Parameters
    ----------
    leakage : 1/s at `REFERENCE_WIND` and `REFERENCE_DIFFERENCE`
    wind_speed : m/s
    difference : K between inside and outside, either sign

    Returns
    -------
    1/s

    Raises
    ------
    OutOfRange
        leakage or wind speed negative.

    Source
    ------
    ASHRAE Handbook - Fundamentals 2001, chapter 26, basic model of infiltration: the flow goes with the square root
    of Cs |dT| + Cw v²; a boat at anchor is taken as a house of one storey without shelter.

    Example
    -------
    >>> 3600.0 * leakage_in_wind(0.3 / 3600.0, 10.0, 4.0)
    0.92
    """
    if not leakage >= 0.0:
        raise OutOfRange("a leakage is not negative; found", leakage)
    if not wind_speed >= 0.0:
        raise OutOfRange("a wind speed is not negative; found", wind_speed)
    drive = STACK * abs(difference) + WIND * wind_speed * wind_speed
    return leakage * math.sqrt(drive / (STACK * REFERENCE_DIFFERENCE + WIND * REFERENCE_WIND * REFERENCE_WIND))


def opening_flow(area: float, wind_speed: float, difference: float, height: float) -> float:
    """Air through one opening, the rest of the cabin shut: gusts and warmth drive it in and out.

    Parameters
    ----------
    area : m², free
    wind_speed : m/s
    difference : K between inside and outside, either sign
    height : m from where air goes out to where it comes in, the opening's upright extent

    Returns
    -------
    m³/s in, and as much out

    Raises
    ------
    OutOfRange
        area, wind speed or height negative.

    Source
    ------
    BS 5925:1991, clause 12, openings on one side: 0.025 A v by wind, Cd A / 3 sqrt(g H |dT| / T) by warmth, the larger
    of the two (from memory; T taken as 300 K). A scoop or a second opening lets in more.

    Example
    -------
    >>> opening_flow(0.1, 3.0, 3.0, 0.3)
    0.0075
    """
    if not (area >= 0.0 and wind_speed >= 0.0 and height >= 0.0):
        raise OutOfRange("area, wind speed and height are not negative; found", min(area, wind_speed, height))
    by_wind = 0.025 * area * wind_speed
    by_warmth = DISCHARGE * area / 3.0 * math.sqrt(GRAVITY * height * abs(difference) / MEAN_KELVIN)
    return max(by_wind, by_warmth)


def doorway_flow(area: float, height: float, inside_density: float, outside_density: float) -> float:
    """Air that a doorway left open to the outdoors exchanges when nothing but its weight drives it.

    Parameters
    ----------
    area : m²
    height : m
    inside_density : kg/m³ of the cooler, denser air inside, its vapour counted in
    outside_density : kg/m³, its vapour counted in

    Returns
    -------
    m³/s in, and as much out

    Raises
    ------
    OutOfRange
        area or height not positive, inside air not denser.

    Source
    ------
    ASHRAE Handbook Refrigeration, infiltration by air exchange through the doorways of cold stores (from memory):
    0.221 A sqrt(1 - r_out/r_in) sqrt(g H) F with F = (2 / (1 + (r_in/r_out)^(1/3)))^1.5.

    Example
    -------
    >>> doorway_flow(1.0, 1.7, 1.18, 1.14)
    0.16
    """
    if not (area > 0.0 and height > 0.0):
        raise OutOfRange("a doorway's area and height must be positive; found", min(area, height))
    if not inside_density >= outside_density > 0.0:
        raise OutOfRange("the inside air must be the denser; found kg/m³ less", outside_density - inside_density)
    shape = math.pow(2.0 / (1.0 + math.pow(inside_density / outside_density, 1.0 / 3.0)), 1.5)
    return 0.221 * area * math.sqrt(1.0 - outside_density / inside_density) * math.sqrt(GRAVITY * height) * shape
