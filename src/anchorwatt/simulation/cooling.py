"""How cabins are cooled within a stage: the shared plant, self-contained units, or a plant without limit."""

from __future__ import annotations

import math

from anchorwatt.physics.air_handler import CYCLING_CALL, coil_approach
from anchorwatt.physics.compressor import part_load_factor
from anchorwatt.physics.moist_air import CP_AIR, latent_heat, saturation_humidity_ratio
from anchorwatt.simulation.arrays import Fabric, Floats, Integers, Plant, Units
from anchorwatt.simulation.cabins import Cabins
from anchorwatt.simulation.fabric import Factors
from anchorwatt.simulation.moisture import dry_out
from anchorwatt.simulation.plant import (
    Coils,
    compressor_power,
    dispatch,
    full_capacity,
    grid_value,
    map_value,
    total_load,
    unit_balance,
)

SETTLED_HEAT = 1e-2  # W, where the iteration over handlers rests
SETTLED_TEMPERATURE = 1e-7  # K
SETTLED_SHARE = 1e-8
PLAIN_AFTER = 30
"""Rounds after which shares are no longer stepped ahead, should that not settle."""

IDEAL_HUMIDITY = 0.55
"""Relative humidity at the set point that the load calculation holds. From practice, no source."""

CYCLING_MEMORY = 1800.0
"""s over which the share of the time that a self-contained unit runs is averaged. From practice, no source."""

# What cooling comes to in a step, in the array `spent`: mean W, the last evaporating temperature, and mean W
# with a cycling machine counted at what it draws while it runs.
COMPRESSOR, PLANT, LOAD, EVAPORATING, RUNNING = 0, 1, 2, 3, 4
SPENT = 5


def call_for(
    other: float,
    response: float,
    set_point: float,
    band: float,
    lowest: float,
    approach: float,
    demand: Floats,
    fan: Floats,
    h: int,
    share: float,
    call: float,
) -> float:
    """The call at which a handler's cooling and its cabin's temperature agree at the end of a stage.

    Parameters
    ----------
    other : °C of the cabin at the end of the stage without this handler
    response : K per W into the cabin's air
    set_point, band : °C, K
    lowest, approach : °C evaporating, and K over it at full call
    demand, fan : W/K and W of all handlers over the even grid of calls
    h : the handler's row
    share : of its wish that the compressor gives it
    call : first guess

    Returns
    -------
    0 to 1
    """
    if other <= set_point:
        return 0.0
    last = demand.shape[1] - 1
    top = set_point + band
    if top - other - response * (fan[h, last] - share * demand[h, last] * (top - lowest - approach)) <= 0.0:
        return 1.0
    low, high = 0.0, 1.0
    call = min(max(call, 0.0), 1.0)
    for _ in range(60):
        place = call * last
        cell = min(int(place), last - 1)
        part = place - cell
        d_slope, f_slope = demand[h, cell + 1] - demand[h, cell], fan[h, cell + 1] - fan[h, cell]
        d, f = demand[h, cell] + part * d_slope, fan[h, cell] + part * f_slope
        temperature = set_point + band * call
        span = temperature - lowest - coil_approach(approach, call)
        widening = band - (approach if call > CYCLING_CALL else 0.0)
        error = temperature - other - response * (f - share * d * span)
        if abs(error) < SETTLED_TEMPERATURE:
            break
        if error > 0.0:
            high = call
        else:
            low = call
        slope = band - response * (f_slope * last - share * (d_slope * last * span + d * widening))
        following = call - error / slope
        if not low < following < high:
            following = 0.5 * (low + high)
        if abs(following - call) < 1e-13:
            call = following
            break
        call = following
    return call


def cool_with_shares(plant: Plant, points: Floats, response: Floats, free: Floats, coils: Coils) -> None:
    """Calls and heat of all handlers at the shares in `coils.previous`, by iteration over handlers.

    Parameters
    ----------
    points : °C a cabin, nan = not cooled
    response : K of each cabin's air (rows) per W into each cabin's air
    free : °C a cabin without cooling
    coils : written
    """
    handlers = coils.owner.shape[0]
    lowest = plant.lowest_evaporating
    for _ in range(60):
        change = 0.0
        for h in range(handlers):
            c = coils.owner[h]
            new, wish, put = 0.0, 0.0, 0.0
            if not math.isnan(points[c]):
                other = free[c]
                for g in range(handlers):
                    if g != h and coils.heat[g] != 0.0:
                        other += response[c, coils.owner[g]] * coils.heat[g]
                new = call_for(
                    other, response[c, c], points[c], plant.handler_band[h], lowest, plant.handler_approach[h],
                    plant.handler_demand, plant.handler_fan, h, coils.previous[h], coils.call[h],
                )  # fmt: skip
                coils.approach[h] = coil_approach(plant.handler_approach[h], new)
                coldest = lowest + coils.approach[h]
                wish = grid_value(plant.handler_demand, h, new)
                blown = grid_value(plant.handler_fan, h, new)
                drawn = coils.previous[h] * wish
                # The end temperature with this call held is linear in it, so this is exact.
                reached = (other + response[c, c] * (blown + drawn * coldest)) / (1.0 + response[c, c] * drawn)
                put = blown - drawn * (reached - coldest)
            change = max(change, abs(put - coils.heat[h]))
            coils.call[h], coils.demand[h], coils.heat[h] = new, wish, put
        if change < SETTLED_HEAT or handlers == 1:
            break


def step_shares(plant: Plant, response: Floats, coils: Coils, plain: bool) -> float:
    """Move each handler's share towards what the compressor gave; returns the largest gap.

    A smaller share leaves its cabin warmer, whose call then grows: unless `plain`, step as far as that
    feedback asks for, else the iteration creeps.
    """
    gap = 0.0
    last = plant.handler_demand.shape[1] - 1
    for h in range(coils.owner.shape[0]):
        difference = coils.share[h] - coils.previous[h]
        gap = max(gap, abs(difference))
        slope = coils.demand[h]
        if 0.0 < coils.call[h] < 1.0:
            cell = min(int(coils.call[h] * last), last - 1)
            span = coils.entering[h] - plant.lowest_evaporating - coils.approach[h]
            rise = plant.handler_demand[h, cell + 1] - plant.handler_demand[h, cell]
            slope += rise * last * span / plant.handler_band[h]
            if coils.call[h] > CYCLING_CALL:
                slope -= coils.demand[h] * plant.handler_approach[h] / plant.handler_band[h]
        feedback = 0.0 if plain else coils.previous[h] * slope * response[coils.owner[h], coils.owner[h]]
        coils.previous[h] = min(1.0, max(0.0, coils.previous[h] + difference * (1.0 + feedback)))
    return gap


def shared_stage(
    plant: Plant,
    fabric: Fabric,
    factors: Factors,
    points: Floats,
    sea: float,
    outdoor: float,
    pressure: float,
    stage_step: float,
    weight: float,
    room: Cabins,
    coils: Coils,
    spent: Floats,
) -> None:
    """One stage of the shared plant: calls, loads and shares agree at the stage's end.

    `outdoor` is the humidity ratio of the outdoor air. Writes the cabins' cooling and humidity, and adds the
    stage with its `weight` to `spent` and to the heat taken from each cabin.
    """
    handlers = coils.owner.shape[0]
    evaporating, taken = plant.highest_evaporating, 0.0
    for h in range(handlers):
        coils.previous[h] = coils.share[h]
        coils.priority[h] = plant.handler_priority[h]
    for turn in range(60):
        cool_with_shares(plant, points, factors.cabins, room.free, coils)
        for h in range(handlers):
            reached = room.free[coils.owner[h]]
            for g in range(handlers):
                reached += factors.cabins[coils.owner[h], coils.owner[g]] * coils.heat[g]
            coils.entering[h] = reached
            coils.damp[h] = room.humidity[coils.owner[h]]
        evaporating, taken = dispatch(
            coils, plant.lowest_evaporating, plant.highest_evaporating, plant.plant_capacity, sea, pressure
        )
        dry_out(
            fabric, room.base_humidity, room.moisture_gain, outdoor, coils.flow,
            coils.saturated, coils.owner, room.dew_flow, room.most, stage_step, room.known, room.weight, room.humidity,
        )  # fmt: skip
        bound, drier = False, 0.0
        for h in range(handlers):
            bound = bound or coils.share[h] < 1.0
            drier = max(drier, abs(coils.damp[h] - room.humidity[coils.owner[h]]))
            coils.damp[h] = room.humidity[coils.owner[h]]
        gap = step_shares(plant, factors.cabins, coils, turn >= PLAIN_AFTER)
        if bound:
            if max(gap, drier) < SETTLED_SHARE:
                break
        elif gap < SETTLED_SHARE:
            # Moisture changes the load, but neither suction nor valves.
            taken = total_load(coils, plant.lowest_evaporating, evaporating, pressure)
            if taken <= full_capacity(plant.plant_capacity, evaporating, sea):
                break
    compressor, duty, fans = 0.0, 0.0, 0.0
    if taken > 0.0:
        compressor, duty = compressor_power(
            plant.plant_capacity, plant.plant_power, taken, evaporating, sea, plant.degradation
        )
    for h in range(handlers):
        c = coils.owner[h]
        room.cooling[c] += coils.heat[h]
        if coils.call[h] > 0.0:
            blown = grid_value(plant.handler_fan, h, coils.call[h])
            fans += blown
            wet = coils.flow[h] * max(0.0, room.humidity[c] - coils.saturated[h])
            room.sensible[c] += weight * (blown - coils.heat[h])
            room.latent[c] += weight * wet * latent_heat(evaporating + coils.approach[h])
    spent[COMPRESSOR] += weight * compressor
    spent[PLANT] += weight * (compressor + fans + duty * plant.pump_power + plant.standby_power)
    spent[LOAD] += weight * taken
    spent[EVAPORATING] = evaporating
    running = fans + plant.standby_power
    if duty > 0.0:
        running += compressor / duty + plant.pump_power
    spent[RUNNING] += weight * running


def ideal_stage(
    fabric: Fabric,
    factors: Factors,
    points: Floats,
    outdoor: float,
    pressure: float,
    stage_step: float,
    weight: float,
    room: Cabins,
) -> None:
    """One stage of a plant without limit: no cabin over its set point, nor damper than `IDEAL_HUMIDITY` there."""
    cabins = points.shape[0]
    for _ in range(200):
        change = 0.0
        for c in range(cabins):
            if not math.isnan(points[c]):
                other = room.free[c]
                for d in range(cabins):
                    if d != c:
                        other += factors.cabins[c, d] * room.cooling[d]
                new = min(0.0, (points[c] - other) / factors.cabins[c, c])
                change = max(change, abs(new - room.cooling[c]))
                room.cooling[c] = new
        if change < SETTLED_HEAT:
            break
    no_coils = room.known[:0]
    dry_out(
        fabric, room.base_humidity, room.moisture_gain, outdoor, no_coils, no_coils,
        fabric.wall_cabin[:0], room.dew_flow, room.most, stage_step, room.known, room.weight, room.humidity,
    )  # fmt: skip
    for c in range(cabins):
        if not math.isnan(points[c]):
            room.sensible[c] -= weight * room.cooling[c]
            dry = IDEAL_HUMIDITY * saturation_humidity_ratio(points[c], pressure)
            if room.humidity[c] > dry:
                exchanged = fabric.outdoor_flow[c]
                for d in range(cabins):
                    exchanged += fabric.exchange[c, d]
                removed = (room.humidity[c] - dry) * (fabric.moisture_mass[c] / stage_step + exchanged)
                room.humidity[c] = dry
                room.latent[c] += weight * removed * latent_heat(points[c])


def switch_units(
    units: Units,
    points: Floats,
    powered: bool,
    sea: float,
    pressure: float,
    short: float,
    room: Cabins,
    coils: Coils,
    on: Integers,
    lately: Floats,
    spent: Floats,
) -> None:
    """Thermostats of self-contained units at the start of a short step of `short` s, and what each would give.

    `on` is each unit's state, 0 or 1, and `lately` the share of the time that it ran, both written.
    """
    for u in range(coils.owner.shape[0]):
        c = coils.owner[u]
        half = 0.5 * units.unit_hysteresis[u]
        lately[u] += (coils.share[u] - lately[u]) * min(1.0, short / CYCLING_MEMORY)
        if math.isnan(points[c]) or not powered or room.air[c] <= points[c] - half + SETTLED_TEMPERATURE:
            on[u] = 0
        elif room.air[c] >= points[c] + half:
            on[u] = 1
        coils.heat[u], coils.flow[u], coils.load[u], coils.saturated[u], coils.demand[u] = (
            0.0,
            0.0,
            0.0,
            0.0,
            0.0,
        )
        if on[u] == 1:
            coils.flow[u] = units.unit_flow[u]
            cold, coils.load[u] = unit_balance(
                room.air[c], room.humidity[c], coils.flow[u], units.unit_approach[u], units.unit_capacity[u], sea,
                pressure,
            )  # fmt: skip
            adp = cold + units.unit_approach[u]
            coils.saturated[u] = saturation_humidity_ratio(adp, pressure)
            coils.heat[u] = units.unit_fan[u] - coils.flow[u] * CP_AIR * (room.air[c] - adp)
            # Starting over and over costs what the standard's line says, at the share that it ran of late.
            lost = part_load_factor(min(1.0, max(0.0, lately[u])), units.unit_degradation[u])
            coils.demand[u] = map_value(units.unit_power[u], cold, sea, 0) / lost
            spent[EVAPORATING] = cold


def units_stage(
    units: Units,
    fabric: Fabric,
    factors: Factors,
    points: Floats,
    outdoor: float,
    stage_step: float,
    weight: float,
    room: Cabins,
    coils: Coils,
    spent: Floats,
) -> None:
    """One stage of self-contained units; a thermostat ends a run within the stage when its cabin gets there."""
    pumped, running = 0.0, 0.0
    for u in range(coils.owner.shape[0]):
        c = coils.owner[u]
        coils.share[u] = 0.0
        if coils.demand[u] > 0.0:
            coils.share[u] = 1.0
            if coils.heat[u] < 0.0:
                lower = points[c] - 0.5 * units.unit_hysteresis[u]
                part_run = (lower - room.free[c]) / (factors.cabins[c, c] * coils.heat[u])
                coils.share[u] = min(1.0, max(0.0, part_run))
            run = weight * coils.share[u]
            room.cooling[c] += coils.share[u] * coils.heat[u]
            room.sensible[c] += run * (units.unit_fan[u] - coils.heat[u])
            spent[COMPRESSOR] += run * coils.demand[u]
            spent[PLANT] += run * (coils.demand[u] + units.unit_fan[u])
            spent[LOAD] += run * coils.load[u]
            pumped = max(pumped, coils.share[u])
            if coils.share[u] > 0.0:
                running += coils.demand[u] + units.unit_fan[u]
        coils.met[u] = coils.share[u] * coils.flow[u]
    spent[PLANT] += weight * pumped * units.unit_pump
    if running > 0.0:
        spent[RUNNING] += weight * (running + units.unit_pump)
    dry_out(
        fabric, room.base_humidity, room.moisture_gain, outdoor, coils.met, coils.saturated,
        coils.owner, room.dew_flow, room.most, stage_step, room.known, room.weight, room.humidity,
    )  # fmt: skip
    for u in range(coils.owner.shape[0]):
        c = coils.owner[u]
        wet = coils.met[u] * max(0.0, room.humidity[c] - coils.saturated[u])
        room.latent[c] += weight * wet * latent_heat(room.air[c])
