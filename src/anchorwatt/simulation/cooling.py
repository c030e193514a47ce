"""How cabins are cooled and warmed within a stage: the shared plant, self-contained units, a plant without limit.

A shared plant that heats is the same plant in a world turned upside down: every temperature T is told as
`MIRROR` − T, so that the coldest coil is the warmest one, evaporating is condensing, and the same functions
find calls, suction and shares.
"""

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

MIRROR = 60.0
"""°C; a condensing temperature of 36 to 70 °C falls on the grid of a plant's map."""

FROST, THAW = 0.0, 300.0
"""°C of a coil's surface below which a self-contained unit stops, and s for which it does. From memory of trade
practice: 3 to 5 minutes."""

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


def reach_of(plant: Plant, response: Floats, coils: Coils) -> None:
    """How far each handler's heat reaches each handler's own cabin, through its outlets.

    `response` is K of each cabin's air (rows) per W into each cabin's air.
    """
    for o in range(coils.outlet_coil.shape[0]):
        coils.outlet_share[o] = plant.outlet_share[o]
    for g in range(coils.owner.shape[0]):
        coils.own[g] = plant.handler_own[g]
        for h in range(coils.owner.shape[0]):
            coils.reach[h, g] = coils.own[g] * response[coils.owner[h], coils.owner[g]]
        for o in range(coils.outlet_coil.shape[0]):
            if coils.outlet_coil[o] == g:
                for h in range(coils.owner.shape[0]):
                    coils.reach[h, g] += coils.outlet_share[o] * response[coils.owner[h], coils.outlet_cabin[o]]


def send_round(plant: Plant, response: Floats, coils: Coils, room: Cabins) -> float:
    """Air that outlets send into further cabins comes back through the doors; returns the largest change, W.

    A handler draws its air from its own cabin. What it blows elsewhere carries its share of the coil's heat, and,
    on its way back, whatever its cabin's air is warmer: an exchange of air between the two. Writes that exchange to
    `room.blown` and its heat to `room.mix`, and brings `room.mixed` up to date.
    """
    outlets = coils.outlet_coil.shape[0]
    if outlets == 0:
        return 0.0
    reached = room.weight
    for c in range(reached.shape[0]):
        reached[c] = room.mixed[c]
        for g in range(coils.owner.shape[0]):
            reached[c] += coils.own[g] * response[c, coils.owner[g]] * coils.heat[g]
        for o in range(outlets):
            heat = coils.outlet_share[o] * coils.heat[coils.outlet_coil[o]]
            reached[c] += response[c, coils.outlet_cabin[o]] * heat
    for o in range(outlets):
        room.blown[coils.owner[coils.outlet_coil[o]], coils.outlet_cabin[o]] = 0.0
        room.blown[coils.outlet_cabin[o], coils.owner[coils.outlet_coil[o]]] = 0.0
    largest = 0.0
    for o in range(outlets):
        h = coils.outlet_coil[o]
        home, away = coils.owner[h], coils.outlet_cabin[o]
        air = coils.outlet_share[o] * grid_value(plant.handler_air, h, coils.call[h])
        room.blown[home, away] += air
        room.blown[away, home] += air
        # The heat carried brings the two together: solved with that, or much air in a small space would overshoot.
        together = response[home, home] + response[away, away] - response[home, away] - response[away, home]
        apart = reached[home] - reached[away] + together * coils.carried[o]
        carried = air * CP_AIR * apart / (1.0 + air * CP_AIR * together)
        change = carried - coils.carried[o]
        coils.carried[o] = carried
        largest = max(largest, abs(change))
        for c in range(reached.shape[0]):
            moved = (response[c, away] - response[c, home]) * change
            reached[c] += moved
            room.mixed[c] += moved
    for c in range(room.mix.shape[0]):
        room.mix[c] = 0.0
    for o in range(outlets):
        room.mix[coils.outlet_cabin[o]] += coils.carried[o]
        room.mix[coils.owner[coils.outlet_coil[o]]] -= coils.carried[o]
    return largest


def cool_with_shares(plant: Plant, points: Floats, free: Floats, coils: Coils) -> None:
    """Calls and heat of all handlers at the shares in `coils.previous`, by iteration over handlers.

    Parameters
    ----------
    points : °C a cabin, nan = not cooled
    free : °C a cabin without cooling
    coils : written; `coils.reach` is read
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
                        other += coils.reach[h, g] * coils.heat[g]
                new = call_for(
                    other, coils.reach[h, h], points[c], plant.handler_band[h], lowest, plant.handler_approach[h],
                    plant.handler_demand, plant.handler_fan, h, coils.previous[h], coils.call[h],
                )  # fmt: skip
                coils.approach[h] = coil_approach(plant.handler_approach[h], new)
                coldest = lowest + coils.approach[h]
                wish = grid_value(plant.handler_demand, h, new)
                blown = grid_value(plant.handler_fan, h, new)
                drawn = coils.previous[h] * wish
                # The end temperature with this call held is linear in it, so this is exact.
                own = coils.reach[h, h]
                reached = (other + own * (blown + drawn * coldest)) / (1.0 + own * drawn)
                put = blown - drawn * (reached - coldest)
            change = max(change, abs(put - coils.heat[h]))
            coils.call[h], coils.demand[h], coils.heat[h] = new, wish, put
        if change < SETTLED_HEAT or handlers == 1:
            break


def step_shares(plant: Plant, coils: Coils, plain: bool) -> float:
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
        feedback = 0.0 if plain else coils.previous[h] * slope * coils.reach[h, h]
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
    wet: bool,
    taken_from: Floats,
    spent: Floats,
) -> None:
    """One stage of the shared plant: calls, loads and shares agree at the stage's end.

    `outdoor` is the humidity ratio of the outdoor air; `wet` whether coils may dry the air. Writes the cabins'
    cooling and humidity, and adds the stage with its `weight` to `spent`, and the heat that the coils take from
    each cabin's air to `taken_from`.
    """
    handlers = coils.owner.shape[0]
    evaporating, taken = plant.highest_evaporating, 0.0
    for h in range(handlers):
        coils.previous[h] = coils.share[h]
        coils.priority[h] = plant.handler_priority[h]
    for c in range(room.free.shape[0]):
        room.mixed[c] = room.free[c]
        for d in range(room.free.shape[0]):
            room.mixed[c] += factors.cabins[c, d] * room.mix[d]
    for turn in range(60):
        for _ in range(60):
            cool_with_shares(plant, points, room.mixed, coils)
            if send_round(plant, factors.cabins, coils, room) <= SETTLED_HEAT:
                break
        for h in range(handlers):
            reached = room.mixed[coils.owner[h]]
            for g in range(handlers):
                reached += coils.reach[h, g] * coils.heat[g]
            coils.entering[h] = reached
            coils.damp[h] = room.humidity[coils.owner[h]] if wet else 0.0
        evaporating, taken = dispatch(
            coils, plant.lowest_evaporating, plant.highest_evaporating, plant.plant_capacity, sea, pressure
        )
        working = handlers if wet else 0
        dry_out(
            fabric, room, outdoor, stage_step, coils.flow, coils.saturated, coils.owner[:working], coils.own,
            coils.outlet_coil[: coils.outlet_coil.shape[0] if wet else 0], coils.outlet_cabin, coils.outlet_share,
        )  # fmt: skip
        bound, drier = False, 0.0
        for h in range(handlers):
            bound = bound or coils.share[h] < 1.0
            if wet:
                drier = max(drier, abs(coils.damp[h] - room.humidity[coils.owner[h]]))
                coils.damp[h] = room.humidity[coils.owner[h]]
        gap = step_shares(plant, coils, turn >= PLAIN_AFTER)
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
    for c in range(room.mix.shape[0]):
        room.cooling[c] += room.mix[c]
    for h in range(handlers):
        c = coils.owner[h]
        room.cooling[c] += coils.own[h] * coils.heat[h]
        blown, dried = 0.0, 0.0
        if coils.call[h] > 0.0:
            blown = grid_value(plant.handler_fan, h, coils.call[h])
            fans += abs(blown)
            if wet:
                dried = coils.flow[h] * max(0.0, room.humidity[c] - coils.saturated[h])
                dried *= latent_heat(evaporating + coils.approach[h])
            taken_from[c] += coils.own[h] * weight * (blown - coils.heat[h])
            room.latent[c] += coils.own[h] * weight * dried
        for o in range(coils.outlet_coil.shape[0]):
            if coils.outlet_coil[o] == h:
                share, d = coils.outlet_share[o], coils.outlet_cabin[o]
                room.cooling[d] += share * coils.heat[h]
                taken_from[d] += share * weight * (blown - coils.heat[h])
                room.latent[d] += share * weight * dried
    spent[COMPRESSOR] += weight * compressor
    spent[PLANT] += weight * (compressor + fans + duty * plant.pump_power + plant.standby_power)
    spent[LOAD] += weight * taken
    spent[EVAPORATING] = evaporating
    running = fans + plant.standby_power
    if duty > 0.0:
        running += compressor / duty + plant.pump_power
    spent[RUNNING] += weight * running


def heating_stage(
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
    wet: bool,
    spent: Floats,
) -> None:
    """One stage of the shared plant turned round to heat; `plant` is told upside down, `points` are not.

    `wet` is false: no coil dries while it heats. (A constant here would make a second compiled copy of the stage.)
    """
    for c in range(points.shape[0]):
        room.free[c] = MIRROR - room.free[c]
        room.mirrored[c] = MIRROR - points[c]
    shared_stage(
        plant, fabric, factors, room.mirrored, sea, outdoor, pressure, stage_step, weight, room, coils, wet,
        room.heating, spent,
    )  # fmt: skip
    spent[EVAPORATING] = MIRROR - spent[EVAPORATING]
    for c in range(points.shape[0]):
        room.free[c] = MIRROR - room.free[c]
        room.cooling[c] = -room.cooling[c]


def no_plant(fabric: Fabric, room: Cabins, outdoor: float, stage_step: float) -> None:
    """Humidity of a stage in which no coil works."""
    dry_out(
        fabric, room, outdoor, stage_step, room.known[:0], room.known[:0], fabric.wall_cabin[:0], room.known[:0],
        fabric.wall_cabin[:0], fabric.wall_cabin[:0], room.known[:0],
    )  # fmt: skip


def ideal_stage(
    fabric: Fabric,
    factors: Factors,
    points: Floats,
    warm: Floats,
    outdoor: float,
    pressure: float,
    stage_step: float,
    weight: float,
    room: Cabins,
) -> None:
    """One stage of a plant without limit.

    No cabin gets over its set point `points` nor under its `warm` one, nor damper than `IDEAL_HUMIDITY` at the
    former; nan = no such limit.
    """
    cabins = points.shape[0]
    for _ in range(200):
        change = 0.0
        for c in range(cabins):
            other = room.free[c]
            for d in range(cabins):
                if d != c:
                    other += factors.cabins[c, d] * room.cooling[d]
            new = 0.0
            if other > points[c]:
                new = (points[c] - other) / factors.cabins[c, c]
            elif other < warm[c]:
                new = (warm[c] - other) / factors.cabins[c, c]
            change = max(change, abs(new - room.cooling[c]))
            room.cooling[c] = new
        if change < SETTLED_HEAT:
            break
    no_plant(fabric, room, outdoor, stage_step)
    for c in range(cabins):
        room.heating[c] += weight * max(0.0, room.cooling[c])
        if not math.isnan(points[c]):
            room.sensible[c] += weight * max(0.0, -room.cooling[c])
            dry = IDEAL_HUMIDITY * saturation_humidity_ratio(points[c], pressure)
            if room.humidity[c] > dry:
                exchanged = room.outdoor_flow[c]
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
    thaw: Floats,
    spent: Floats,
) -> None:
    """Thermostats of self-contained units at the start of a short step of `short` s, and what each would give.

    `on` is each unit's state, 0 or 1, `lately` the share of the time that it ran, and `thaw` the s for which it
    still stands still because its coil had frosted; all written.
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
        thaw[u] = max(0.0, thaw[u] - short)
        if on[u] == 1 and thaw[u] <= 0.0:
            coils.flow[u] = units.unit_flow[u]
            cold, coils.load[u] = unit_balance(
                room.air[c], room.humidity[c], coils.flow[u], units.unit_approach[u], units.unit_capacity[u], sea,
                pressure,
            )  # fmt: skip
            adp = cold + units.unit_approach[u]
            if adp < FROST:
                thaw[u] = THAW
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
        fabric, room, outdoor, stage_step, coils.met, coils.saturated, coils.owner, coils.own,
        coils.outlet_coil, coils.outlet_cabin, coils.outlet_share,
    )  # fmt: skip
    for u in range(coils.owner.shape[0]):
        c = coils.owner[u]
        wet = coils.met[u] * max(0.0, room.humidity[c] - coils.saturated[u])
        room.latent[c] += weight * wet * latent_heat(room.air[c])
