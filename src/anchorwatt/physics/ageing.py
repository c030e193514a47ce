"""Ageing of lithium iron phosphate: capacity lost to the calendar and to cycles, and the resistance that grows with it.

Losses are shares of the rated capacity. A full cycle is one rated capacity out of the cells, in however many pieces.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

YEAR = 365.25 * 86_400.0  # s
REFERENCE_TEMPERATURE = 25.0  # °C
CALENDAR_ENERGY = 40_000.0  # J/mol, of the calendar loss. From memory.
CHARGE_SLOPE = 0.8  # of the calendar loss for a whole charge more. From memory.
COLDEST, HOTTEST = -30.0, 80.0  # °C, beyond which no law here says anything

CYCLE_ENERGY = 31_700.0  # J/mol
CYCLE_ENERGY_FALL = 370.3  # J/mol for each capacity an hour
CYCLE_EXPONENT = 0.55
PRINTED_GAS_CONSTANT = 8.314  # J/(mol K)
GAS_CONSTANT = 8.314462618  # J/(mol K), SI 2019
TESTED_CAPACITY = 2.0  # Ah of the cell of the cycle tests
TESTED_RATES = (0.5, 2.0, 6.0, 10.0)  # capacities an hour
RATE_FACTORS = (31_630.0, 21_681.0, 12_934.0, 15_512.0)


def calendar_stress(temperature: float, charge: float) -> float:
    """How much faster than at 25 °C and half charge a resting cell loses capacity.

    Parameters
    ----------
    temperature : °C, of the cells
    charge : state of charge, 0 to 1

    Returns
    -------
    ratio of the losses after the same time, 1 at 25 °C and half charge

    Raises
    ------
    OutOfRange
        temperature outside -30 to 80 °C, or a charge outside 0 to 1.

    Source
    ------
    Arrhenius with 40 kJ/mol, and a straight line in the charge from 0.6 empty to 1.4 full: both from memory, set so
    that 2 % in the first year at 25 °C half full becomes 4 to 6 % at 35 to 40 °C near full (from memory). That both
    stresses compound: Energies 2021 14 1732 and RSC Adv. 2025 15 22576, whose coefficients are not used.

    Example
    -------
    >>> calendar_stress(35.0, 0.9)
    2.23
    """
    if temperature < COLDEST or temperature > HOTTEST:
        raise OutOfRange("temperature of the cells must be within -30 and 80 °C; found", temperature)
    if charge < 0.0 or charge > 1.0:
        raise OutOfRange("state of charge must be within 0 and 1; found", charge)
    exponent = CALENDAR_ENERGY / GAS_CONSTANT * (1.0 / (REFERENCE_TEMPERATURE + 273.15) - 1.0 / (temperature + 273.15))
    return math.exp(exponent) * (1.0 + CHARGE_SLOPE * (charge - 0.5))


def calendar_loss(first_year: float, stress: float, time: float) -> float:
    """Capacity lost by standing, by the root of the time.

    Parameters
    ----------
    first_year : share lost in the first year at 25 °C, half full
    stress : ratio, of `calendar_stress`
    time : s

    Returns
    -------
    share of the rated capacity, at most 1

    Raises
    ------
    OutOfRange
        any of them negative.

    Source
    ------
    Growth of the interface layer limited by diffusion through it, hence the root of the time; from memory.

    Example
    -------
    >>> calendar_loss(0.02, 1.0, 9.0 * 365.25 * 86_400.0)
    0.06
    """
    if first_year < 0.0:
        raise OutOfRange("loss of the first year must not be negative; found", first_year)
    if stress < 0.0:
        raise OutOfRange("stress must not be negative; found", stress)
    if time < 0.0:
        raise OutOfRange("time must not be negative; found", time)
    return min(1.0, first_year * stress * math.sqrt(time / YEAR))


def mixed_stress(first: float, second: float, share: float) -> float:
    """The one stress under which as much is lost as under two that take turns.

    Parameters
    ----------
    first, second : ratios, of `calendar_stress`
    share : of the time under the first, 0 to 1

    Returns
    -------
    ratio

    Raises
    ------
    OutOfRange
        share outside 0 to 1, or a stress negative.

    Source
    ------
    By the root law the square of the loss grows evenly with time, so that squares are averaged: our own algebra.

    Example
    -------
    >>> mixed_stress(2.0, 1.0, 0.5)
    1.58
    """
    if share < 0.0 or share > 1.0:
        raise OutOfRange("share of the time must be within 0 and 1; found", share)
    if min(first, second) < 0.0:
        raise OutOfRange("stress must not be negative; found", min(first, second))
    return math.sqrt(share * first * first + (1.0 - share) * second * second)


def throughput_loss(full_cycles: float, temperature: float, rate: float) -> float:
    """Capacity lost by cycling small cells, by the charge that has passed: the published model.

    Parameters
    ----------
    full_cycles : number, one is the capacity out once
    temperature : °C, of the cells
    rate : capacities an hour, 0 to 10; below one half counted as one half, the lowest that was tested

    Returns
    -------
    share of the rated capacity, at most 1

    Raises
    ------
    OutOfRange
        full cycles or rate negative, rate above 10, or a temperature outside -30 to 80 °C.

    Source
    ------
    J. Power Sources 196 (2011) 3942: loss in % = B exp((-31700 + 370.3 C)/(R T)) Ah^0.55, B 31630, 21681, 12934 and
    15512 at C/2, 2C, 6C and 10C, for a cell of 2 Ah; equation and coefficients from memory. B is read between
    those by a straight line.

    Example
    -------
    >>> throughput_loss(3940.0, 35.0, 0.5)
    0.200
    """
    if full_cycles < 0.0:
        raise OutOfRange("full cycles must not be negative; found", full_cycles)
    if temperature < COLDEST or temperature > HOTTEST:
        raise OutOfRange("temperature of the cells must be within -30 and 80 °C; found", temperature)
    if rate < 0.0 or rate > TESTED_RATES[-1]:
        raise OutOfRange("rate must be within 0 and 10 capacities an hour; found", rate)
    tested = max(rate, TESTED_RATES[0])
    upper = 1
    while upper < len(TESTED_RATES) - 1 and tested > TESTED_RATES[upper]:
        upper += 1
    part = (tested - TESTED_RATES[upper - 1]) / (TESTED_RATES[upper] - TESTED_RATES[upper - 1])
    factor = RATE_FACTORS[upper - 1] + part * (RATE_FACTORS[upper] - RATE_FACTORS[upper - 1])
    energy = CYCLE_ENERGY - CYCLE_ENERGY_FALL * tested
    passed = full_cycles * TESTED_CAPACITY
    percent = (
        factor * math.exp(-energy / (PRINTED_GAS_CONSTANT * (temperature + 273.15))) * math.pow(passed, CYCLE_EXPONENT)
    )
    return min(1.0, percent / 100.0)


def cycle_loss(full_cycles: float, cycle_life: float, share_left: float, temperature: float) -> float:
    """Capacity lost by cycling, scaled to the cycle life that a maker states.

    Parameters
    ----------
    full_cycles : number, one is the capacity out once
    cycle_life : number at 25 °C until the share is left
    share_left : of the rated capacity, at the end of the cycle life
    temperature : °C, of the cells

    Returns
    -------
    share of the rated capacity, at most 1

    Raises
    ------
    OutOfRange
        full cycles negative, cycle life not positive, the share outside 0 to 1, or a temperature outside
        -30 to 80 °C.

    Source
    ------
    Shape and temperature of J. Power Sources 196 (2011) 3942 at C/2 (see `throughput_loss`, from memory), through the
    one point that the maker states. A maker's cycles pass within a year or two, so that the calendar has
    little part in them: an assumption.

    Example
    -------
    >>> cycle_loss(3500.0, 3500.0, 0.75, 25.0)
    0.250
    """
    if full_cycles < 0.0:
        raise OutOfRange("full cycles must not be negative; found", full_cycles)
    if cycle_life <= 0.0:
        raise OutOfRange("cycle life must be positive; found", cycle_life)
    if share_left < 0.0 or share_left > 1.0:
        raise OutOfRange("share left must be within 0 and 1; found", share_left)
    if temperature < COLDEST or temperature > HOTTEST:
        raise OutOfRange("temperature of the cells must be within -30 and 80 °C; found", temperature)
    energy = CYCLE_ENERGY - CYCLE_ENERGY_FALL * TESTED_RATES[0]
    exponent = energy / PRINTED_GAS_CONSTANT
    exponent *= 1.0 / (REFERENCE_TEMPERATURE + 273.15) - 1.0 / (temperature + 273.15)
    return min(1.0, (1.0 - share_left) * math.exp(exponent) * math.pow(full_cycles / cycle_life, CYCLE_EXPONENT))


def capacity_left(calendar: float, cycles: float) -> float:
    """Capacity that is left of the rated one.

    Parameters
    ----------
    calendar : share lost by standing
    cycles : share lost by cycling

    Returns
    -------
    share of the rated capacity, 0 to 1

    Raises
    ------
    OutOfRange
        a loss negative.

    Source
    ------
    Superposition of the two losses, as semi-empirical ageing models have it; from memory.

    Example
    -------
    >>> capacity_left(0.06, 0.10)
    0.84
    """
    if min(calendar, cycles) < 0.0:
        raise OutOfRange("a loss must not be negative; found", min(calendar, cycles))
    return max(0.0, 1.0 - calendar - cycles)


def aged_resistance(capacity_left: float, share_left: float, factor: float) -> float:
    """Resistance of an aged cell over that of a new one.

    Parameters
    ----------
    capacity_left : share of the rated capacity that is left now
    share_left : of the rated capacity, at the end of the warranted life
    factor : ratio of the resistances at that end

    Returns
    -------
    ratio, 1 or more

    Raises
    ------
    OutOfRange
        a share outside 0 to 1, or a factor below 1.

    Source
    ------
    In step with the capacity lost, as both follow the growth of the same layer: a usual simplification, from memory.
    Where the warranted end is the rated capacity itself, the factor holds from the first.

    Example
    -------
    >>> aged_resistance(0.90, 0.75, 1.5)
    1.20
    """
    if capacity_left < 0.0 or capacity_left > 1.0:
        raise OutOfRange("capacity left must be within 0 and 1; found", capacity_left)
    if share_left < 0.0 or share_left > 1.0:
        raise OutOfRange("share left must be within 0 and 1; found", share_left)
    if factor < 1.0:
        raise OutOfRange("factor on the resistance must be 1 or more; found", factor)
    if share_left >= 1.0:
        return factor
    return 1.0 + (factor - 1.0) * (1.0 - capacity_left) / (1.0 - share_left)
