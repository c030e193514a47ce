"""How warm a cabin feels: operative temperature, predicted mean vote and the share of people dissatisfied.

The vote's equation is that of Fanger. The standard holds it for metabolic rates of 0.8 to 4 met; a sleeper's 0.7 met
and thick bedding lie outside, so that a vote asleep is a guide and no more.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

LEAST_RATE = 0.8
"""met below which ISO 7730 does not hold the vote to apply; people asleep lie below it."""
MET = 58.15
"""W/m² of one met."""
CLO = 0.155
"""m² K/W of one clo."""
SETTLED = 0.015
"""K to which the clothing's temperature is found, as in the standard's own program."""
MOST_TRIES = 150
"""As many as that program makes; a score is usual."""


def operative_temperature(air: float, radiant: float, air_speed: float) -> float:
    """The one temperature of air and walls at which people would lose as much heat.

    Parameters
    ----------
    air : °C
    radiant : °C, mean radiant temperature
    air_speed : m/s

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        air speed outside 0 to 1 m/s.

    Source
    ------
    ASHRAE 55, simplified weights of the air's temperature: 0.5 below 0.2 m/s, 0.6 to 0.6 m/s, 0.7 to 1 m/s.

    Example
    -------
    >>> operative_temperature(24.0, 26.0, 0.1)
    25.0
    """
    if not 0.0 <= air_speed <= 1.0:
        raise OutOfRange("operative temperature is given for air speeds of 0 to 1 m/s; found", air_speed)
    weight = 0.5 if air_speed < 0.2 else 0.6 if air_speed < 0.6 else 0.7
    return weight * air + (1.0 - weight) * radiant


def predicted_mean_vote(
    air: float, radiant: float, air_speed: float, relative_humidity: float, metabolic_rate: float, clothing: float
) -> float:
    """Mean vote of a large group of people on a scale from cold (−3) over neutral (0) to hot (+3). Not for the kernel.

    Under 0.8 met, as asleep, and over 2 clo, as under a thick cover, it is used outside the standard's range.

    Parameters
    ----------
    air : °C
    radiant : °C, mean radiant temperature
    air_speed : m/s, relative to the body
    relative_humidity : 0 to 1
    metabolic_rate : met of 58.15 W/m²
    clothing : clo of 0.155 m² K/W, with what one lies in or under

    Returns
    -------
    vote; beyond ±3 it says no more than too cold or too hot

    Raises
    ------
    OutOfRange
        air outside 0 to 60 °C, radiant outside −20 to 80 °C, air speed outside 0 to 2 m/s, relative humidity outside 0
        to 1, metabolic rate outside 0.5 to 4 met, clothing outside 0 to 8 clo.

    Source
    ------
    ISO 7730, equations 1 to 4; the clothing's temperature is sought as in the program of its annex D.

    Example
    -------
    >>> predicted_mean_vote(22.0, 22.0, 0.10, 0.60, 1.2, 0.5)
    -0.75
    """
    if not 0.0 <= air <= 60.0:
        raise OutOfRange("the vote is computed for air of 0 to 60 °C; found", air)
    if not -20.0 <= radiant <= 80.0:
        raise OutOfRange("the vote is computed for mean radiant temperatures of -20 to 80 °C; found", radiant)
    if not 0.0 <= air_speed <= 2.0:
        raise OutOfRange("the vote is computed for air speeds of 0 to 2 m/s; found", air_speed)
    if not 0.0 <= relative_humidity <= 1.0:
        raise OutOfRange("relative humidity lies between 0 and 1; found", relative_humidity)
    if not 0.5 <= metabolic_rate <= 4.0:
        raise OutOfRange("the vote is computed for 0.5 to 4 met; found", metabolic_rate)
    if not 0.0 <= clothing <= 8.0:
        raise OutOfRange("the vote is computed for clothing of 0 to 8 clo; found", clothing)
    heat, cover = MET * metabolic_rate, CLO * clothing
    vapour = 1000.0 * relative_humidity * math.exp(16.6536 - 4030.183 / (air + 235.0))
    clad = 1.0 + 1.29 * cover if cover <= 0.078 else 1.05 + 0.645 * cover
    surface, radiation, convection = _clothing(air, radiant, air_speed, heat, cover, clad)
    losses = (
        3.05e-3 * (5733.0 - 6.99 * heat - vapour)  # through the skin
        + 0.42 * max(0.0, heat - MET)  # sweat
        + 1.7e-5 * heat * (5867.0 - vapour)  # breath, damp
        + 1.4e-3 * heat * (34.0 - air)  # breath, dry
        + radiation
        + convection * (surface - air)
    )
    return (0.303 * math.exp(-0.036 * heat) + 0.028) * (heat - losses)


def _clothing(
    air: float, radiant: float, air_speed: float, heat: float, cover: float, clad: float
) -> tuple[float, float, float]:
    """Temperature of the clothing's surface in °C, what it radiates in W/m², and what it passes to the air in W/(m² K).

    `heat` in W/m², `cover` in m² K/W; `clad` is the clothed area over the bare one. Areas are those of the bare body.
    """
    walls = math.pow(radiant + 273.0, 4.0)
    surface = air + (35.5 - air) / (3.5 * (6.45 * cover + 0.1))
    tried = 2.0 * surface + 273.0
    for _ in range(MOST_TRIES):
        tried = 0.5 * (tried + surface)
        convection = max(2.38 * math.pow(abs(tried - air), 0.25), 12.1 * math.sqrt(air_speed))
        radiation = 3.96e-8 * (math.pow(tried + 273.0, 4.0) - walls)
        skin = 35.7 - 0.028 * heat
        surface = (skin + cover * clad * (convection * air - radiation)) / (1.0 + cover * clad * convection)
        if abs(surface - tried) <= SETTLED:
            break
    return surface, 3.96e-8 * clad * (math.pow(surface + 273.0, 4.0) - walls), clad * convection


def dissatisfied_share(vote: float) -> float:
    """Share of people who are too warm or too cold at a mean vote.

    Parameters
    ----------
    vote : predicted mean vote

    Returns
    -------
    0.05 to 1: somebody always is

    Source
    ------
    ISO 7730, equation 5: PPD = 100 − 95 exp(−0.03353 PMV⁴ − 0.2179 PMV²), in per cent.

    Example
    -------
    >>> dissatisfied_share(-0.75)
    0.17
    """
    return 1.0 - 0.95 * math.exp(-0.03353 * math.pow(vote, 4.0) - 0.2179 * vote * vote)
