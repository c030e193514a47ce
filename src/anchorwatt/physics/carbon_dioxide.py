"""Carbon dioxide that people breathe out, and what outdoor air makes of it in a closed cabin."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

OUTDOOR = 420e-6
"""Share by volume in outdoor air: 420 ppm, the rounded mean of recent years; from memory."""

RESPIRATORY_QUOTIENT = 0.85
"""Carbon dioxide breathed out over oxygen taken up, on a mixed diet (Persily and de Jonge 2017)."""

ASLEEP = 0.95
"""Of the basal rate. From memory of the compendium of physical activities."""

ZERO_CELSIUS = 273.15
"""K."""

DAY = 86_400.0
"""s."""

LEAST_BASAL, MOST_BASAL = 20.0, 200.0
"""W between which a basal rate, an infant's to a very heavy person's, lies."""


def generation_rate(
    basal_rate: float, metabolic_rate: float, respiratory_quotient: float, temperature: float, pressure: float
) -> float:
    """Carbon dioxide that a person breathes out, as a volume at a temperature and a pressure.

    Parameters
    ----------
    basal_rate : W of heat at metabolic rate 1: the basal rate of a person by sex, age and mass, or 58.2 W/m² times the
        body's area where the metabolic rate is counted in that met
    metabolic_rate : times that
    respiratory_quotient : carbon dioxide out over oxygen in
    temperature : °C at which the volume is counted
    pressure : Pa

    Returns
    -------
    m³/s

    Raises
    ------
    OutOfRange
        basal rate outside 20 to 200 W (it is not in MJ/day), metabolic rate negative, respiratory quotient outside
        0.6 to 1.3, temperature at absolute zero, pressure not positive.

    Source
    ------
    A. Persily and L. de Jonge, "Carbon dioxide generation rates for building occupants", Indoor Air 27(5), 2017,
    doi 10.1111/ina.12383, equation 10: RQ BMR M (T/P) 0.000211, in L/s of MJ/day, K and kPa.

    Example
    -------
    >>> 1000.0 * generation_rate(89.5, 1.0, 0.85, 0.0, 101_000.0)
    0.0038
    """
    if not LEAST_BASAL <= basal_rate <= MOST_BASAL:
        raise OutOfRange("a basal rate lies between 20 and 200 W; found", basal_rate)
    if not metabolic_rate >= 0.0:
        raise OutOfRange("a metabolic rate is not negative; found", metabolic_rate)
    if not 0.6 <= respiratory_quotient <= 1.3:
        raise OutOfRange("a respiratory quotient lies between 0.6 and 1.3; found", respiratory_quotient)
    if not temperature > -ZERO_CELSIUS:
        raise OutOfRange("a temperature lies above -273.15 °C; found", temperature)
    if not pressure > 0.0:
        raise OutOfRange("the air's pressure must be positive; found", pressure)
    daily = basal_rate * DAY / 1e6
    state = (temperature + ZERO_CELSIUS) / (pressure / 1e3)
    return respiratory_quotient * daily * metabolic_rate * state * 0.000211e-3


def steady_concentration(generation: float, flow: float, outdoor: float) -> float:
    """Carbon dioxide in a cabin once it no longer changes.

    Parameters
    ----------
    generation : m³/s of all people
    flow : m³/s of outdoor air
    outdoor : share by volume outdoors

    Returns
    -------
    share by volume; inf where people breathe and no outdoor air comes

    Raises
    ------
    OutOfRange
        generation or flow negative, outdoor share outside 0 to 1.

    Source
    ------
    Balance of one well-mixed space, any ventilation text.

    Example
    -------
    >>> steady_concentration(0.0066e-3, 12.0 * 0.5 / 3600.0, 420e-6)
    0.00438
    """
    if not (generation >= 0.0 and flow >= 0.0):
        raise OutOfRange("generation and flow are not negative; found m³/s", min(generation, flow))
    if not 0.0 <= outdoor <= 1.0:
        raise OutOfRange("a share by volume lies between 0 and 1; found", outdoor)
    if generation == 0.0:
        return outdoor
    return outdoor + generation / flow if flow > 0.0 else math.inf


def concentration_after(
    time: float, start: float, generation: float, flow: float, volume: float, outdoor: float
) -> float:
    """Carbon dioxide in a cabin some time after it was at another level.

    Parameters
    ----------
    time : s
    start : share by volume at the beginning
    generation : m³/s of all people
    flow : m³/s of outdoor air
    volume : m³ of the cabin's air
    outdoor : share by volume outdoors

    Returns
    -------
    share by volume

    Raises
    ------
    OutOfRange
        time, start, generation or flow negative, volume not positive, outdoor share outside 0 to 1.

    Source
    ------
    Balance of one well-mixed space, any ventilation text: C(t) = C_ss + (C_0 - C_ss) e^(-n t).

    Example
    -------
    >>> concentration_after(8 * 3600.0, 420e-6, 0.0066e-3, 12.0 * 0.25 / 3600.0, 12.0, 420e-6)
    0.00727
    """
    if not (time >= 0.0 and start >= 0.0):
        raise OutOfRange("time and share at the start are not negative; found", min(time, start))
    if not volume > 0.0:
        raise OutOfRange("a cabin's volume must be positive; found m³", volume)
    if not (generation >= 0.0 and flow >= 0.0):
        raise OutOfRange("generation and flow are not negative; found m³/s", min(generation, flow))
    if not 0.0 <= outdoor <= 1.0:
        raise OutOfRange("a share by volume lies between 0 and 1; found", outdoor)
    changes = flow * time / volume
    # (1 - e^-x) / x, which is 1 where no air comes.
    mixed = -math.expm1(-changes) / changes if changes > 0.0 else 1.0
    return start + (generation * time / volume - changes * (start - outdoor)) * mixed


def fresh_air_for(generation: float, limit: float, outdoor: float) -> float:
    """Outdoor air that keeps a cabin at or below a limit for as long as one likes.

    Parameters
    ----------
    generation : m³/s of all people
    limit : share by volume, over that outdoors
    outdoor : share by volume outdoors

    Returns
    -------
    m³/s

    Raises
    ------
    OutOfRange
        generation negative, or a limit not over the outdoor share.

    Source
    ------
    Balance of one well-mixed space, any ventilation text.

    Example
    -------
    >>> 1000.0 * fresh_air_for(0.0033e-3, 1000e-6, 420e-6)
    5.7
    """
    if not generation >= 0.0:
        raise OutOfRange("a generation is not negative; found m³/s", generation)
    if not limit > outdoor >= 0.0:
        raise OutOfRange("the limit must lie over the outdoor share; found", limit)
    return generation / (limit - outdoor)
