"""How air handlers share one compressor: plain functions that the kernel and the tests both call.

The compressor runs as slowly as the hardest-working handler lets it: the evaporating temperature is the
highest at which every handler still meets its call with its valve fully open. When the calls together ask
for more than the compressor gives, suction first floats up (coils give less, the compressor more) and, at
the upper limit, capacity is shared out by need and priority.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from anchorwatt.physics.air_handler import CYCLING_CALL
from anchorwatt.physics.coil import moisture_removed
from anchorwatt.physics.compressor import part_load_factor
from anchorwatt.physics.moist_air import CP_AIR, latent_heat, saturation_humidity_ratio
from anchorwatt.simulation.arrays import Floats, Integers

CALLS = 41
"""Points of the even grid of calls over which a handler's demand and fan power are tabulated."""

# The even grids of a plant's tables: evaporating and seawater temperature, °C.
EVAPORATING_START, EVAPORATING_STEP, EVAPORATING_COUNT = -10.0, 1.0, 35
SEA_START, SEA_STEP, SEA_COUNT = 0.0, 4.0, 11

# Evaporating temperature is not sought closer to the entering air than this, K.
LEAST_DIFFERENCE = 0.5


class Coils(NamedTuple):
    """Air handlers or self-contained units of one case at work."""

    owner: Integers  # cabin of each
    own: Floats  # share of its air that stays in that cabin
    outlet_coil: Integers  # of each outlet into a further cabin
    outlet_cabin: Integers
    outlet_share: Floats
    carried: Floats  # W of each such outlet's air on its way round
    reach: Floats  # K of the own cabin (rows) per W of each coil's heat
    call: Floats  # 0 to 1
    demand: Floats  # W/K; for a unit W of its compressor
    heat: Floats  # W into the cabin's air, fan included
    load: Floats  # W
    flow: Floats  # kg/s of air that meets the cold coil
    met: Floats  # the same, a unit's running share counted
    share: Floats  # of its wish that the compressor gives
    previous: Floats  # the share of the round before
    saturated: Floats  # kg/kg at the coil
    entering: Floats  # °C
    damp: Floats  # kg/kg entering
    approach: Floats  # K
    priority: Floats


def new_coils(owner: Integers, outlet_coil: Integers, outlet_cabin: Integers) -> Coils:
    """Room for the coils whose cabins are `owner`; every outlet into a further cabin begins shut."""
    n = owner.shape[0]
    return Coils(
        owner,
        np.ones(n),
        outlet_coil,
        outlet_cabin,
        np.zeros(outlet_coil.shape[0]),
        np.zeros(outlet_coil.shape[0]),
        np.zeros((n, n)),
        *(np.zeros(n), np.zeros(n), np.zeros(n), np.zeros(n), np.zeros(n), np.zeros(n)),
        *(np.ones(n), np.ones(n)),
        *(np.zeros(n), np.zeros(n), np.zeros(n), np.zeros(n)),
        np.ones(n),
    )


def grid_value(table: Floats, h: int, call: float) -> float:
    """Handler h's tabulated figure at a call between 0 and 1, linear between the grid's points."""
    last = table.shape[1] - 1
    place = min(max(call, 0.0), 1.0) * last
    low = min(int(place), last - 1)
    value: float = table[h, low] + (place - low) * (table[h, low + 1] - table[h, low])
    return value


def map_place(value: float, start: float, step: float, count: int) -> tuple[int, float]:
    """Cell and fraction of a value on an even grid; held at the ends."""
    place = min(max((value - start) / step, 0.0), count - 1.0)
    low = min(int(place), count - 2)
    return low, place - low


def map_value(table: Floats, evaporating: float, sea: float, speed: int) -> float:
    """A figure of the plant's map at one tabulated speed."""
    i, x = map_place(evaporating, EVAPORATING_START, EVAPORATING_STEP, EVAPORATING_COUNT)
    j, y = map_place(sea, SEA_START, SEA_STEP, SEA_COUNT)
    low = table[i, j, speed] + y * (table[i, j + 1, speed] - table[i, j, speed])
    high = table[i + 1, j, speed] + y * (table[i + 1, j + 1, speed] - table[i + 1, j, speed])
    value: float = low + x * (high - low)
    return value


def full_capacity(capacity: Floats, evaporating: float, sea: float) -> float:
    """W of cooling at full speed."""
    return map_value(capacity, evaporating, sea, capacity.shape[2] - 1)


def compressor_power(
    capacity: Floats, power: Floats, load: float, evaporating: float, sea: float, degradation: float
) -> tuple[float, float]:
    """Power of the compressor, and the share of the time that it runs, for a load.

    Between its lowest and highest speed it runs without stopping; below, it cycles at the lowest speed,
    with the loss of `part_load_factor`.
    """
    if load <= 0.0:
        return 0.0, 0.0
    lowest = map_value(capacity, evaporating, sea, 0)
    if load < lowest:
        share = load / lowest
        share = share / part_load_factor(share, degradation)
        return share * map_value(power, evaporating, sea, 0), share
    below = lowest
    for speed in range(1, capacity.shape[2]):
        above = map_value(capacity, evaporating, sea, speed)
        if load <= above or speed == capacity.shape[2] - 1:
            part = min(1.0, (load - below) / (above - below)) if above > below else 1.0
            slow = map_value(power, evaporating, sea, speed - 1)
            fast = map_value(power, evaporating, sea, speed)
            return slow + part * (fast - slow), 1.0
        below = above
    return 0.0, 0.0


def handler_load(
    demand: float,
    call: float,
    temperature: float,
    humidity: float,
    approach: float,
    lowest_evaporating: float,
    evaporating: float,
    saturated: float,
) -> tuple[float, float]:
    """Cooling that a handler takes at an evaporating temperature.

    Parameters
    ----------
    demand : W/K, sensible heat per kelvin between cabin and the coldest coil that the call asks for
    call : 0 to 1
    temperature : °C entering
    humidity : kg/kg entering
    approach : K, apparatus dew point over the evaporating temperature
    lowest_evaporating : °C
    evaporating : °C
    saturated : kg/kg, saturated air at the apparatus dew point

    Returns
    -------
    total W and the air that meets the cold coil, kg/s of dry air
    """
    difference = temperature - evaporating - approach
    if call <= 0.0 or difference <= LEAST_DIFFERENCE:
        return 0.0, 0.0
    wanted = demand * (temperature - lowest_evaporating - approach)
    fully_open = demand / max(call, CYCLING_CALL) * difference
    sensible = min(wanted, fully_open)
    flow = sensible / (CP_AIR * difference)
    wet = moisture_removed(flow, 0.0, humidity, saturated)
    return sensible + latent_heat(evaporating + approach) * wet, flow


def share_out(load: Floats, priority: Floats, capacity: float, share: Floats) -> None:
    """Share a capacity among loads that together exceed it; writes each load's share of its wish.

    Every load gets the same fraction of its wish times its priority, and none more than its wish.
    """
    count = load.shape[0]
    for h in range(count):
        share[h] = 0.0
    left = capacity
    for _ in range(count):
        weight = 0.0
        for h in range(count):
            if share[h] < 1.0:
                weight += priority[h] * load[h]
        if weight <= 0.0:
            return
        level = left / weight
        filled = False
        for h in range(count):
            if share[h] < 1.0 and level * priority[h] >= 1.0:
                share[h] = 1.0
                left -= load[h]
                filled = True
        if not filled:
            for h in range(count):
                if share[h] < 1.0:
                    share[h] = level * priority[h]
            return


def total_load(coils: Coils, lowest_evaporating: float, evaporating: float, pressure: float) -> float:
    """W that all handlers take at an evaporating temperature.

    Writes each one's load, cold air flow and humidity ratio of saturated air at its coil.
    """
    total = 0.0
    for h in range(coils.call.shape[0]):
        coils.load[h], coils.flow[h] = 0.0, 0.0
        if coils.call[h] <= 0.0:
            continue
        coils.saturated[h] = saturation_humidity_ratio(evaporating + coils.approach[h], pressure)
        coils.load[h], coils.flow[h] = handler_load(
            coils.demand[h],
            coils.call[h],
            coils.entering[h],
            coils.damp[h],
            coils.approach[h],
            lowest_evaporating,
            evaporating,
            coils.saturated[h],
        )
        total += coils.load[h]
    return total


def dispatch(
    coils: Coils,
    lowest_evaporating: float,
    highest_evaporating: float,
    capacity: Floats,
    sea: float,
    pressure: float,
) -> tuple[float, float]:
    """Set the plant for one moment.

    Parameters
    ----------
    coils : the handlers: calls, demands, approaches, priorities and entering air are read; loads, cold air
        flows, saturated humidity ratios and the share that each gets of its wish are written
    lowest_evaporating, highest_evaporating : °C
    capacity : W, the plant's map
    sea : °C
    pressure : Pa

    Returns
    -------
    evaporating temperature °C and total load W

    Source
    ------
    Our own statement of the balance on one suction pressure; see docs/theory.
    """
    count = coils.call.shape[0]
    evaporating = highest_evaporating
    ceiling = highest_evaporating
    for h in range(count):
        if coils.call[h] > 0.0:
            span = coils.entering[h] - lowest_evaporating - coils.approach[h]
            own = coils.entering[h] - coils.approach[h] - max(coils.call[h], CYCLING_CALL) * span
            evaporating = min(evaporating, max(lowest_evaporating, own))
            if coils.priority[h] > 1.0:
                ceiling = min(ceiling, max(lowest_evaporating, own))
        coils.share[h] = 1.0
    total = total_load(coils, lowest_evaporating, evaporating, pressure)
    given = full_capacity(capacity, evaporating, sea)
    if total <= given:
        return evaporating, total

    # The compressor binds: let suction float up as far as the highest-priority handlers allow.
    low, at_low = evaporating, total - given
    high = max(evaporating, ceiling)
    at_high = total_load(coils, lowest_evaporating, high, pressure) - full_capacity(capacity, high, sea)
    evaporating = high
    kept = 0
    for _ in range(60):
        if at_high >= 0.0:
            break  # even there it binds
        evaporating = high - at_high * (high - low) / (at_high - at_low)
        total = total_load(coils, lowest_evaporating, evaporating, pressure)
        excess = total - full_capacity(capacity, evaporating, sea)
        if abs(excess) <= 1e-9 * total or high - low < 1e-10:
            break
        # Illinois form of false position: halve the value at an end that stays put.
        if excess > 0.0:
            low, at_low = evaporating, excess
            if kept == 1:
                at_high *= 0.5
            kept = 1
        else:
            high, at_high = evaporating, excess
            if kept == -1:
                at_low *= 0.5
            kept = -1
    total = total_load(coils, lowest_evaporating, evaporating, pressure)
    given = full_capacity(capacity, evaporating, sea)
    if total > given * (1.0 + 1e-9):
        share_out(coils.load, coils.priority, given, coils.share)
    total = 0.0
    for h in range(count):
        coils.load[h] *= coils.share[h]
        coils.flow[h] *= coils.share[h]
        total += coils.load[h]
        wanted = coils.demand[h] * (coils.entering[h] - lowest_evaporating - coils.approach[h])
        sensible = coils.flow[h] * CP_AIR * (coils.entering[h] - evaporating - coils.approach[h])
        coils.share[h] = sensible / wanted if wanted > 0.0 else 1.0
    return evaporating, total


def unit_balance(
    temperature: float,
    humidity: float,
    flow: float,
    approach: float,
    capacity: Floats,
    sea: float,
    pressure: float,
) -> tuple[float, float]:
    """Evaporating temperature at which a fixed-speed unit's coil takes what its compressor gives.

    Parameters
    ----------
    temperature, humidity : °C and kg/kg of the air that enters
    flow : kg/s of dry air that meets the coil
    approach : K
    capacity : W, the unit's map over evaporating and seawater temperature, one speed
    sea : °C
    pressure : Pa

    Returns
    -------
    evaporating temperature °C and capacity W
    """
    low = EVAPORATING_START
    high = min(
        temperature - approach - LEAST_DIFFERENCE,
        EVAPORATING_START + EVAPORATING_STEP * (EVAPORATING_COUNT - 1),
    )
    if high <= low:
        return low, 0.0
    evaporating = low
    for _ in range(40):
        evaporating = 0.5 * (low + high)
        adp = evaporating + approach
        wet = moisture_removed(flow, 0.0, humidity, saturation_humidity_ratio(adp, pressure))
        coil = flow * CP_AIR * (temperature - adp) + latent_heat(adp) * wet
        if coil > map_value(capacity, evaporating, sea, 0):
            low = evaporating
        else:
            high = evaporating
        if high - low < 1e-6:
            break
    return evaporating, map_value(capacity, evaporating, sea, 0)
