"""The time kernel: heat, moisture, plant, buses, bank and engines stepped together on one clock.

`run_cases` is compiled by `simulation.compiled`; one case or ten thousand run through it. The equations
are those of `anchorwatt.physics`, called, not copied.
"""

from __future__ import annotations

import math

import numpy as np

from anchorwatt.physics.air_handler import call_share
from anchorwatt.physics.engine import DIESEL_HEATING_VALUE, fuel_flow, full_load_power, spare_power
from anchorwatt.physics.moist_air import (
    CP_AIR,
    latent_heat,
    saturation_humidity_ratio,
    vapour_pressure,
)
from anchorwatt.physics.alternator import shaft_power
from anchorwatt.physics.battery import stored_energy
from anchorwatt.physics.inverter import converter_input, converter_output
from anchorwatt.physics.people import latent_from_person, sensible_from_person
from anchorwatt.physics.propeller import propeller_demand
from anchorwatt.physics.solar import cell_temperature, panel_power
from anchorwatt.simulation.arrays import (
    ALTERNATOR_CURRENT,
    ALTERNATOR_EFFICIENCY,
    ALTERNATOR_PULLEY,
    ALTERNATOR_SHARE,
    BANK_ABSORB,
    BANK_CUT_OFF_CHARGE,
    ENGINE_AIR,
    ENGINE_DISPLACEMENT,
    ENGINE_EFFICIENCY,
    ENGINE_EXPONENT,
    ENGINE_FRICTION,
    ENGINE_MARGIN,
    ENGINE_POWER,
    ENGINE_PROPELLER,
    ENGINE_SPEED,
    IDEAL,
    ON_SHORE,
    SELF_CONTAINED,
    SHARED,
    TO_OUTSIDE,
    UNCOOLED,
    Boat,
    Floats,
    Forcing,
    Integers,
    Series,
    Settings,
    State,
    Summary,
)
from anchorwatt.simulation.electric import (
    alternator_current,
    bank_capacity,
    bank_limits,
    bank_step,
    heated,
    inverter_power,
    transformer_power,
)
from anchorwatt.simulation.fabric import (
    GAMMA,
    PEOPLE_RADIANT,
    SOLAR_TO_FURNISHINGS,
    empty_factors,
    fabric_of,
    factor,
    gather,
    scatter,
    surface_exchange,
    sweep,
)
from anchorwatt.simulation.plant import (
    compressor_power,
    dispatch,
    full_capacity,
    grid_value,
    map_value,
    total_load,
    unit_balance,
)

RESTART = 600.0
"""s for which a tripped inverter stays off. From practice, no source."""

RECONNECT = 0.02
"""State of charge over the cut-off at which the bank may discharge again. From practice, no source."""

FINE_PARTS = 6
FINE_FOR = 600.0
"""Parts of a step, and s for which steps are so divided, after the plan switches a set point or power fails.

While it lasts a cabin's air falls by kelvins a minute, and the second-order method, whose second stage reaches
ahead, would overshoot the thermostat's band."""

SETTLED_HEAT = 1e-4  # W, where the iteration over handlers rests
SETTLED_TEMPERATURE = 1e-9  # K
SETTLED_SHARE = 1e-8
SETTLED_HUMIDITY = 1e-11  # kg/kg

IDEAL_HUMIDITY = 0.55
"""Relative humidity at the set point that the load calculation holds. From practice, no source."""


def call_for(other: float, response: float, set_point: float, band: float, approach: float,
             lowest_evaporating: float, demand: Floats, fan: Floats, share: float, call: float) -> float:
    """The call at which a handler's cooling and its cabin's temperature agree at the end of a stage.

    Parameters
    ----------
    other : °C of the cabin at the end of the stage without this handler
    response : K per W into the cabin's air
    set_point, band, approach, lowest_evaporating : °C, K, K, °C
    demand, fan : W/K and W over the even grid of calls
    share : of its wish that the compressor gives it
    call : first guess

    Returns
    -------
    0 to 1
    """
    if other <= set_point:
        return 0.0
    coldest = lowest_evaporating + approach
    top = set_point + band
    full = top - other - response * (fan[-1] - share * demand[-1] * (top - coldest))
    if full <= 0.0:
        return 1.0
    low, high = 0.0, 1.0
    last = demand.shape[0] - 1
    call = min(max(call, 0.0), 1.0)
    for _ in range(60):
        place = call * last
        cell = min(int(place), last - 1)
        part = place - cell
        d_slope, f_slope = demand[cell + 1] - demand[cell], fan[cell + 1] - fan[cell]
        d, f = demand[cell] + part * d_slope, fan[cell] + part * f_slope
        temperature = set_point + band * call
        error = temperature - other - response * (f - share * d * (temperature - coldest))
        if abs(error) < SETTLED_TEMPERATURE:
            break
        if error > 0.0:
            high = call
        else:
            low = call
        slope = band - response * (f_slope * last - share * (d_slope * last * (temperature - coldest) + d * band))
        following = call - error / slope
        if not low < following < high:
            following = 0.5 * (low + high)
        if abs(following - call) < 1e-13:
            call = following
            break
        call = following
    return call


def dry_out(mass: Floats, base: Floats, gain: Floats, outdoor_flow: Floats, outdoor: float, exchange: Floats,
            flow: Floats, saturated: Floats, owner: Integers, dew_flow: Floats, most: Floats, stage_step: float,
            known: Floats, weight: Floats, humidity: Floats) -> None:
    """Humidity ratios of the cabins at the end of a stage, implicitly, by iteration to rest.

    `flow` kg/s of air meets a coil with saturated humidity ratio `saturated`; `owner` is each coil's cabin.
    `dew_flow` kg/s meets the cabin's surfaces, which take what is over saturation (`most`). `known` and
    `weight` are room for work.
    """
    cabins = mass.shape[0]
    for c in range(cabins):
        known[c] = mass[c] / stage_step * base[c] + gain[c] + outdoor_flow[c] * outdoor
        weight[c] = mass[c] / stage_step + outdoor_flow[c]
        for d in range(cabins):
            weight[c] += exchange[c, d]
        if humidity[c] > most[c]:
            known[c] += dew_flow[c] * most[c]
            weight[c] += dew_flow[c]
    for h in range(owner.shape[0]):
        # A coil dries only air that is damper than it is.
        if flow[h] > 0.0 and humidity[owner[h]] > saturated[h]:
            known[owner[h]] += flow[h] * saturated[h]
            weight[owner[h]] += flow[h]
    for _ in range(60):
        change = 0.0
        for c in range(cabins):
            new = known[c]
            for d in range(cabins):
                new += exchange[c, d] * humidity[d]
            new /= weight[c]
            change = max(change, abs(new - humidity[c]))
            humidity[c] = new
        if change < SETTLED_HUMIDITY:
            break


def run_cases(boat: Boat, forcing: Forcing, settings: Settings, state: State, step: float, mode: int, live: int,
              reserve: float, target: float, summary: Summary, series: Series, held: Floats, first: int,
              last: int) -> None:
    """Run cases `first` to `last` (not included).

    Parameters
    ----------
    boat, forcing, settings, state : see `simulation.arrays`; `state` is read and left at the end's
    step : s
    mode : how cabins are cooled (SHARED, SELF_CONTAINED, IDEAL, UNCOOLED)
    live : 1 = the bank carries the boat; 0 = electricity is there and costs no charge (before the night)
    reserve, target : states of charge whose moments are noted
    summary, series : written; empty series are left alone
    held : (M, A, 6) written, s that each alternator was held by each cause
    """
    steps = forcing.ac_load.shape[1]
    cabins, nodes = boat.air_mass.shape[1], boat.node_capacity.shape[1]
    walls, handlers, units = boat.wall_kind.shape[0], boat.handler_cabin.shape[0], boat.unit_cabin.shape[0]
    engines, alternators = boat.engine.shape[1], boat.alternator_engine.shape[0]
    demand_points = boat.handler_demand.shape[2]
    factors = empty_factors(nodes, cabins)
    node, base_node = np.empty(nodes), np.empty(nodes)
    furnishing, base_furnishing = np.empty(cabins), np.empty(cabins)
    air, base_air = np.empty(cabins), np.empty(cabins)
    humidity, base_humidity = np.empty(cabins), np.empty(cabins)
    right, cabin, free = np.empty(2 * cabins), np.empty(2 * cabins), np.empty(cabins)
    far_temperature, dew_heat = np.empty(walls), np.zeros(cabins)
    dew_flow, most = np.empty(cabins), np.empty(cabins)
    air_gain, radiant_gain, furnishing_gain = np.empty(cabins), np.empty(cabins), np.empty(cabins)
    moisture_gain, cooling = np.empty(cabins), np.empty(cabins)
    coils = max(handlers, units)
    owner = boat.unit_cabin if mode == SELF_CONTAINED else boat.handler_cabin
    call, demand, heat = np.zeros(coils), np.zeros(coils), np.zeros(coils)
    entering, entering_humidity, priority, approach = np.zeros(coils), np.zeros(coils), np.zeros(coils), np.zeros(coils)
    load, flow, share, saturated, previous = np.zeros(coils), np.zeros(coils), np.ones(coils), np.zeros(coils), np.ones(coils)
    met = np.zeros(coils)
    known, wet_weight = np.empty(cabins), np.empty(cabins)
    sensible_step, latent_step = np.empty(cabins), np.empty(cabins)
    film_then, points_then = np.empty(walls), np.empty(cabins)
    wanted_share = np.empty(alternators)

    for m in range(first, last):
        v, day = settings.variant[m], settings.day[m]
        fabric = fabric_of(boat, v)
        gains = settings.gain_factor[m]
        air_offset, sea_offset = settings.air_offset[m], settings.sea_offset[m]
        pressure = forcing.pressure[day]
        bank, points = boat.bank[v], boat.bank_charge[v]
        voltages, resistances = boat.bank_voltage[v], boat.bank_factor[v]
        capacity = bank_capacity(bank, settings.capacity_factor[m])
        inverter, transformer, charger = boat.inverter[v], boat.transformer[v], boat.charger[v]
        film_now, parts_then, fine_left, was_powered = -1, 0, 0.0, True
        points_then[:] = math.nan
        dew_heat[:] = 0.0
        surface_exchange(fabric, dew_flow)
        previous[:] = 1.0
        share[:] = 1.0
        call[:] = 0.0
        node[:] = state.node[m]
        air[:] = state.air[m]
        furnishing[:] = state.furnishing[m]
        humidity[:] = state.humidity[m]
        charge = state.charge[m]
        start_charge = charge
        connected, trip = state.connected[m], state.trip[m]
        compressor_energy = plant_energy = transformer_loss = inverter_energy = inverter_loss = 0.0
        ac_energy = dc_energy = solar_energy = alternator_energy = shaft_energy = shore_energy = charger_energy = 0.0
        bank_out = bank_loss = unserved = heat_in = passed = fuel = fuel_added = 0.0
        peak_plant = peak_inverter = peak_shore = 0.0
        lowest_charge, lowest_voltage = charge, math.inf
        reserve_at = full_at = lost_at = math.nan
        hottest = -math.inf
        bus_voltage = math.nan
        for c in range(cabins):
            summary.highest_air[m, c] = air[c]
            most[c] = saturation_humidity_ratio(air[c], pressure)
            summary.highest_relative_humidity[m, c] = min(1.0, humidity[c] / most[c])
            summary.sensible_energy[m, c] = 0.0
            summary.moisture_removed[m, c] = 0.0
        stored_before = 0.0
        for i in range(nodes):
            stored_before += fabric.node_capacity[i] * node[i]
        for c in range(cabins):
            stored_before += fabric.air_mass[c] * CP_AIR * air[c] + fabric.furnishing_capacity[c] * furnishing[c]

        for k in range(steps):
            ashore = forcing.doing[k] == ON_SHORE
            powered = live == 0 or ashore or (connected == 1 and trip <= 0.0)
            # Where the plan switches something the air moves fast: take short steps for a while.
            if k > 0 and powered != was_powered:
                fine_left = FINE_FOR
            for c in range(cabins):
                point = forcing.set_point[day, c, k]
                if (point != points_then[c]) and not (math.isnan(point) and math.isnan(points_then[c])):
                    fine_left = FINE_FOR
                points_then[c] = point
            was_powered = powered
            parts = FINE_PARTS if fine_left > 0.0 else 1
            if mode == SELF_CONTAINED:
                parts = FINE_PARTS
            elif mode == IDEAL or mode == UNCOOLED:
                parts = 1
            fine_left -= step
            short = step / parts
            stage_step = GAMMA * short
            if forcing.film_row[k] != film_now or parts != parts_then:
                film_now, parts_then = forcing.film_row[k], parts
                film_then[:] = forcing.far_film[day, film_now]
                factor(fabric, film_then, stage_step, factors)
            compressor_step = plant_step = fan_step = load_step = evaporating_step = 0.0
            sensible_step[:] = 0.0
            latent_step[:] = 0.0
            for piece in range(parts):
                # Two stages from two bases.
                base_node[:] = node
                base_air[:] = air
                base_furnishing[:] = furnishing
                base_humidity[:] = humidity
                if mode == SELF_CONTAINED:
                    for u in range(units):
                        c = owner[u]
                        set_point, half = forcing.set_point[day, c, k], 0.5 * boat.unit_hysteresis[v, u]
                        if math.isnan(set_point) or not powered or air[c] <= set_point - half + 1e-9:
                            state.unit_time[m, u] = -1.0
                        elif state.unit_time[m, u] < 0.0 and air[c] >= set_point + half:
                            state.unit_time[m, u] = 0.0
                        heat[u], flow[u], load[u], saturated[u], demand[u] = 0.0, 0.0, 0.0, 0.0, 0.0
                        if state.unit_time[m, u] >= 0.0:
                            sea = forcing.sea[day, k] + sea_offset
                            cold, taken = unit_balance(
                                air[c], humidity[c], boat.unit_flow[v, u], boat.unit_approach[v, u],
                                boat.unit_capacity[v, u], sea, pressure,
                            )
                            adp = cold + boat.unit_approach[v, u]
                            saturated[u] = saturation_humidity_ratio(adp, pressure)
                            # Right after a start the coil is not cold yet.
                            lost = max(0.0, boat.unit_start[v, u] - state.unit_time[m, u])
                            cooling_share = 1.0 - min(1.0, lost / short)
                            flow[u] = cooling_share * boat.unit_flow[v, u]
                            heat[u] = boat.unit_fan[v, u] - flow[u] * CP_AIR * (air[c] - adp)
                            load[u] = cooling_share * taken
                            demand[u] = map_value(boat.unit_power[v, u], cold, sea, 0)
                            evaporating_step = cold
                            state.unit_time[m, u] += short

                for stage in range(2):
                    part = (piece + (GAMMA if stage == 0 else 1.0)) / parts
                    weight = (1.0 - GAMMA if stage == 0 else GAMMA) / parts
                    if stage == 1:
                        # The second base lies on the line through the start and the first stage.
                        beyond = (1.0 - GAMMA) / GAMMA
                        for i in range(nodes):
                            base_node[i] += beyond * (node[i] - base_node[i])
                        for c in range(cabins):
                            base_air[c] += beyond * (air[c] - base_air[c])
                            base_furnishing[c] += beyond * (furnishing[c] - base_furnishing[c])
                            # A coil switched on for the first time may throw the line below nothing.
                            base_humidity[c] = max(0.0, base_humidity[c] + beyond * (humidity[c] - base_humidity[c]))
                    outdoor = (1.0 - part) * forcing.dry_bulb[day, k] + part * forcing.dry_bulb[day, k + 1] + air_offset
                    outdoor_humidity = (
                        (1.0 - part) * forcing.humidity_ratio[day, k] + part * forcing.humidity_ratio[day, k + 1]
                    )
                    sea = (1.0 - part) * forcing.sea[day, k] + part * forcing.sea[day, k + 1] + sea_offset
                    for w in range(walls):
                        if fabric.wall_kind[w] == TO_OUTSIDE:
                            far_temperature[w] = (
                                (1.0 - part) * forcing.far_temperature[day, w, k]
                                + part * forcing.far_temperature[day, w, k + 1]
                                + air_offset
                            )
                    for c in range(cabins):
                        sun = gains * (
                            (1.0 - part) * forcing.solar_gain[day, c, k] + part * forcing.solar_gain[day, c, k + 1]
                        )
                        sensible, latent = forcing.people_sensible[day, c, k], forcing.people_latent[day, c, k]
                        people = vapour = 0.0
                        if sensible + latent > 0.0:
                            people = gains * sensible_from_person(sensible, latent, forcing.people_shift[day, c, k], air[c])
                            vapour = gains * latent_from_person(sensible, latent, forcing.people_shift[day, c, k], air[c])
                            vapour /= latent_heat(air[c])
                        air_gain[c] = gains * forcing.air_gain[day, c, k] + (1.0 - PEOPLE_RADIANT) * people + dew_heat[c]
                        radiant_gain[c] = (
                            gains * forcing.radiant_gain[day, c, k] + PEOPLE_RADIANT * people + (1.0 - SOLAR_TO_FURNISHINGS) * sun
                        )
                        furnishing_gain[c] = SOLAR_TO_FURNISHINGS * sun
                        moisture_gain[c] = gains * forcing.moisture_gain[day, c, k] + vapour
                    sweep(fabric, film_then, far_temperature, base_node, stage_step, factors, node)
                    gather(fabric, node, base_air, base_furnishing, outdoor, air_gain, radiant_gain, furnishing_gain,
                           stage_step, right)
                    for c in range(cabins):
                        total = 0.0
                        for j in range(2 * cabins):
                            total += factors.cabins[c, j] * right[j]
                        free[c] = total
                        cooling[c] = 0.0

                    if mode == SHARED and powered:
                        # Calls, loads and shares agree at the end of the stage: iterate to rest.
                        evaporating = boat.highest_evaporating[v]
                        taken = 0.0
                        for h in range(handlers):
                            previous[h] = share[h]
                        for outer in range(60):
                            for turn in range(60):
                                change = 0.0
                                for h in range(handlers):
                                    c = owner[h]
                                    set_point = forcing.set_point[day, c, k]
                                    new, wish = 0.0, 0.0
                                    if not math.isnan(set_point):
                                        other = free[c]
                                        for g in range(handlers):
                                            if g != h:
                                                other += factors.cabins[c, owner[g]] * heat[g]
                                        response = factors.cabins[c, c]
                                        band, near_coil = boat.handler_band[v, h], boat.handler_approach[v, h]
                                        lowest = boat.lowest_evaporating[v]
                                        new = call_for(other, response, set_point, band, near_coil, lowest,
                                                       boat.handler_demand[v, h], boat.handler_fan[v, h], previous[h], call[h])
                                        wish = grid_value(boat.handler_demand[v, h], new)
                                        blown = grid_value(boat.handler_fan[v, h], new)
                                        drawn = previous[h] * wish
                                        # End temperature with this call held; linear in it, so exact.
                                        reached = (other + response * (blown + drawn * (lowest + near_coil))) / (
                                            1.0 + response * drawn
                                        )
                                        put = blown - drawn * (reached - lowest - near_coil)
                                    else:
                                        put = 0.0
                                    change = max(change, abs(put - heat[h]))
                                    call[h], demand[h], heat[h] = new, wish, put
                                if change < SETTLED_HEAT or handlers == 1:
                                    break
                            for h in range(handlers):
                                c = owner[h]
                                reached = free[c]
                                for g in range(handlers):
                                    reached += factors.cabins[c, owner[g]] * heat[g]
                                entering[h] = reached
                                entering_humidity[h] = humidity[c]
                                approach[h] = boat.handler_approach[v, h]
                                priority[h] = boat.handler_priority[v, h]
                            evaporating, taken = dispatch(
                                entering[:handlers], entering_humidity[:handlers], call[:handlers], demand[:handlers],
                                approach[:handlers], priority[:handlers], boat.lowest_evaporating[v],
                                boat.highest_evaporating[v], boat.plant_capacity[v], sea, pressure, load[:handlers],
                                flow[:handlers], share[:handlers], saturated[:handlers],
                            )
                            dry_out(boat.moisture_mass[v], base_humidity, moisture_gain, fabric.outdoor_flow,
                                    outdoor_humidity, fabric.exchange, flow[:handlers], saturated[:handlers], owner,
                                    dew_flow, most, stage_step,
                                    known, wet_weight, humidity)
                            bound, worst = False, 0.0
                            for h in range(handlers):
                                bound = bound or share[h] < 1.0
                                worst = max(worst, abs(share[h] - previous[h]))
                                damper = abs(entering_humidity[h] - humidity[owner[h]])
                                if share[h] < 1.0:
                                    worst = max(worst, damper)
                                entering_humidity[h] = humidity[owner[h]]
                                # A smaller share leaves its cabin warmer, whose call then grows: step as far as
                                # that feedback asks for, else the iteration creeps.
                                place = min(int(call[h] * (demand_points - 1)), demand_points - 2)
                                table = boat.handler_demand[v, h]
                                span = entering[h] - boat.lowest_evaporating[v] - approach[h]
                                slope = demand[h]
                                if 0.0 < call[h] < 1.0:
                                    rise = (table[place + 1] - table[place]) * (demand_points - 1)
                                    slope += rise * span / boat.handler_band[v, h]
                                feedback = previous[h] * slope * factors.cabins[owner[h], owner[h]]
                                if outer > 30:
                                    feedback = 0.0
                                stepped = previous[h] + (share[h] - previous[h]) * (1.0 + feedback)
                                previous[h] = min(1.0, max(0.0, stepped))
                            if not bound and worst < SETTLED_SHARE:
                                # Moisture changes the load, but neither suction nor valves.
                                taken = total_load(
                                    evaporating, entering[:handlers], entering_humidity[:handlers], call[:handlers],
                                    demand[:handlers], approach[:handlers], boat.lowest_evaporating[v], pressure,
                                    load[:handlers], flow[:handlers], saturated[:handlers],
                                )
                                if taken <= full_capacity(boat.plant_capacity[v], evaporating, sea):
                                    break
                            elif bound and worst < SETTLED_SHARE:
                                break
                        for h in range(handlers):
                            cooling[owner[h]] += heat[h]
                        duty = 0.0
                        compressor = 0.0
                        fans = 0.0
                        if taken > 0.0:
                            compressor, duty = compressor_power(
                                boat.plant_capacity[v], boat.plant_power[v], taken, evaporating, sea, boat.degradation[v]
                            )
                        for h in range(handlers):
                            c = owner[h]
                            if call[h] > 0.0:
                                blown = grid_value(boat.handler_fan[v, h], call[h])
                                fans += blown
                                sensible_step[c] += weight * (blown - heat[h])
                                wet = flow[h] * max(0.0, humidity[c] - saturated[h])
                                latent_step[c] += weight * wet * latent_heat(evaporating + approach[h])
                                summary.moisture_removed[m, c] += weight * wet * step
                        compressor_step += weight * compressor
                        fan_step += weight * fans
                        plant_step += weight * (compressor + fans + duty * boat.pump_power[v] + boat.standby_power[v])
                        load_step += weight * taken
                        evaporating_step = evaporating
                    else:
                        if mode == IDEAL:
                            for turn in range(200):
                                change = 0.0
                                for c in range(cabins):
                                    set_point = forcing.set_point[day, c, k]
                                    if not math.isnan(set_point):
                                        other = free[c]
                                        for d in range(cabins):
                                            if d != c:
                                                other += factors.cabins[c, d] * cooling[d]
                                        new = min(0.0, (set_point - other) / factors.cabins[c, c])
                                        change = max(change, abs(new - cooling[c]))
                                        cooling[c] = new
                                if change < 1e-8:
                                    break
                            for c in range(cabins):
                                sensible_step[c] -= weight * cooling[c]
                        elif mode == SELF_CONTAINED:
                            pumped = 0.0
                            for u in range(units):
                                c = owner[u]
                                share[u] = 0.0
                                if demand[u] > 0.0:
                                    # The thermostat ends a run within the stage when the cabin gets there.
                                    lower = forcing.set_point[day, c, k] - 0.5 * boat.unit_hysteresis[v, u]
                                    share[u] = 1.0
                                    if heat[u] < 0.0:
                                        part_run = (lower - free[c]) / (factors.cabins[c, c] * heat[u])
                                        share[u] = min(1.0, max(0.0, part_run))
                                    cooling[c] += share[u] * heat[u]
                                    sensible_step[c] += weight * share[u] * (boat.unit_fan[v, u] - heat[u])
                                    fan_step += weight * share[u] * boat.unit_fan[v, u]
                                    compressor_step += weight * share[u] * demand[u]
                                    load_step += weight * share[u] * load[u]
                                    pumped = max(pumped, share[u])
                                met[u] = share[u] * flow[u]
                            plant_step += weight * pumped * boat.unit_pump[v]
                        dry_out(boat.moisture_mass[v], base_humidity, moisture_gain, fabric.outdoor_flow, outdoor_humidity,
                                fabric.exchange, met, saturated, owner if mode == SELF_CONTAINED else owner[:0],
                                dew_flow, most, stage_step,
                                    known, wet_weight, humidity)
                        for c in range(cabins):
                            if mode == IDEAL and not math.isnan(forcing.set_point[day, c, k]):
                                set_point = forcing.set_point[day, c, k]
                                dry = IDEAL_HUMIDITY * saturation_humidity_ratio(set_point, pressure)
                                if humidity[c] > dry:
                                    exchanged = fabric.outdoor_flow[c]
                                    for d in range(cabins):
                                        exchanged += fabric.exchange[c, d]
                                    removed = (humidity[c] - dry) * (boat.moisture_mass[v, c] / stage_step + exchanged)
                                    humidity[c] = dry
                                    latent_step[c] += weight * removed * latent_heat(set_point)
                                    summary.moisture_removed[m, c] += weight * removed * step
                        if mode == SELF_CONTAINED:
                            for u in range(units):
                                c = owner[u]
                                wet = met[u] * max(0.0, humidity[c] - saturated[u])
                                latent_step[c] += weight * wet * latent_heat(air[c])
                                summary.moisture_removed[m, c] += weight * wet * step

                    for i in range(2 * cabins):
                        total = 0.0
                        for j in range(2 * cabins):
                            total += factors.cabins[i, j] * right[j]
                        for j in range(cabins):
                            total += factors.cabins[i, j] * cooling[j]
                        cabin[i] = total
                    scatter(fabric, cabin, base_furnishing, furnishing_gain, stage_step, factors, node, furnishing)
                    for c in range(cabins):
                        air[c] = cabin[c]
                        # What condenses on surfaces gives up its heat to the stage that follows.
                        if parts > 1:
                            most[c] = saturation_humidity_ratio(air[c], pressure)
                        dew_heat[c] = 0.0
                        if humidity[c] > most[c]:
                            dew_heat[c] = dew_flow[c] * (humidity[c] - most[c]) * latent_heat(air[c])
                        outside = fabric.window_conductance[c] + fabric.outdoor_flow[c] * CP_AIR
                        heat_in += weight * step * (
                            air_gain[c] + radiant_gain[c] + furnishing_gain[c] + cooling[c] + outside * (outdoor - air[c])
                        )
                    for w in range(walls):
                        if fabric.wall_kind[w] == TO_OUTSIDE:
                            heat_in += weight * step * film_then[w] * (far_temperature[w] - node[fabric.wall_first[w]])

            if mode == SELF_CONTAINED:
                plant_step += compressor_step + fan_step
            for c in range(cabins):
                summary.highest_air[m, c] = max(summary.highest_air[m, c], air[c])
                most[c] = saturation_humidity_ratio(air[c], pressure)
                wetness = min(1.0, vapour_pressure(humidity[c], pressure) / vapour_pressure(most[c], pressure))
                summary.highest_relative_humidity[m, c] = max(summary.highest_relative_humidity[m, c], wetness)
                summary.sensible_energy[m, c] += sensible_step[c] * step

            # The electrical step.
            ac = plant_step + forcing.ac_load[day, k]
            dc = forcing.dc_load[day, k]
            inverter_out = inverter_in = shore = charger_in = charger_out = 0.0
            solar = solar_used = generated = fuel_rate = current = 0.0
            voltage = math.nan
            if not powered:
                unserved += forcing.ac_load[day, k] * step
                ac = 0.0
            through = transformer_power(ac, transformer) if powered else 0.0
            if mode == IDEAL:
                pass
            elif live == 1:
                if boat.solar[v, 0] > 0.0:
                    sun = 0.5 * (forcing.panel_irradiance[day, k] + forcing.panel_irradiance[day, k + 1])
                    around = 0.5 * (forcing.dry_bulb[day, k] + forcing.dry_bulb[day, k + 1]) + air_offset
                    solar = panel_power(sun, cell_temperature(around, sun, boat.solar[v, 2]), boat.solar[v, 0],
                                        boat.solar[v, 1], boat.solar[v, 3])
                gives, takes, takes_power = bank_limits(charge, step, capacity, bank, points, voltages,
                                                        resistances, settings.resistance_factor[m])
                if ashore:
                    shore = through
                elif powered:
                    inverter_out = through
                    inverter_in = inverter_power(through, inverter)
                # What the bus needs and would take: loads, and the bank's acceptance.
                needs = dc + inverter_in
                room = needs + takes_power - solar
                if ashore and charger[0] > 0.0:
                    charger_out = max(0.0, min(room, charger[0]))
                    if charger_out > 0.0:
                        charger_in = converter_input(charger_out, charger[0], charger[1], charger[2], charger[3])
                        spare_shore = boat.shore_power[v] - shore
                        if charger_in > spare_shore:
                            charger_in = max(0.0, spare_shore)
                            charger_out = converter_output(charger_in, charger[0], charger[1], charger[2], charger[3])
                    shore += charger_in
                # Engines and alternators work at the bus voltage that the last step left.
                bus = bank[BANK_ABSORB] if takes <= 0.0 else takes_power / takes
                if not math.isnan(bus_voltage):
                    bus = min(bus, bus_voltage)
                for a in range(alternators):
                    wanted_share[a] = 0.0
                left = max(0.0, room - charger_out) / bus
                running = 0.0
                for a in range(alternators):
                    g = boat.alternator_engine[a]
                    if forcing.engine_speed[day, g, k] > 0.0:
                        running += 1.0
                if running > 0.0:
                    for g in range(engines):
                        speed = forcing.engine_speed[day, g, k]
                        if speed <= 0.0:
                            continue
                        machine = boat.engine[v, g]
                        pushing = 0.0
                        if forcing.propelling[k] == 1:
                            pushing = propeller_demand(speed, machine[ENGINE_SPEED], machine[ENGINE_PROPELLER],
                                                       machine[ENGINE_EXPONENT])
                        able = full_load_power(speed, machine[ENGINE_SPEED], machine[ENGINE_POWER],
                                               boat.engine_speeds[v, g], boat.engine_powers[v, g])
                        spare = spare_power(able, pushing, machine[ENGINE_MARGIN])
                        shaft = 0.0
                        for a in range(alternators):
                            if boat.alternator_engine[a] != g:
                                continue
                            row = boat.alternator[v, a]
                            rotor = speed * row[ALTERNATOR_PULLEY]
                            winding, frame = state.alternator[m, a, 0], state.alternator[m, a, 1]
                            amps, cause = alternator_current(
                                left / running, bus, rotor, spare * row[ALTERNATOR_SHARE], winding, frame,
                                machine[ENGINE_AIR], step, row, boat.alternator_speeds[v, a],
                                boat.alternator_currents[v, a],
                            )
                            # What one machine cannot give is left to those that follow.
                            left -= amps
                            running -= 1.0
                            held[m, a, cause] += step
                            generated += amps * bus
                            if amps > 0.0:
                                shaft += shaft_power(amps, bus, rotor, winding, row[ALTERNATOR_CURRENT],
                                                     row[ALTERNATOR_EFFICIENCY])
                            wanted_share[a] = amps
                        burnt = fuel_flow(pushing + shaft, speed, machine[ENGINE_DISPLACEMENT],
                                          machine[ENGINE_FRICTION], machine[ENGINE_EFFICIENCY], DIESEL_HEATING_VALUE)
                        alone = fuel_flow(pushing, speed, machine[ENGINE_DISPLACEMENT], machine[ENGINE_FRICTION],
                                          machine[ENGINE_EFFICIENCY], DIESEL_HEATING_VALUE)
                        fuel_rate += burnt
                        fuel_added += (burnt - alone) * step
                        shaft_energy += shaft * step
                for a in range(alternators):
                    g = boat.alternator_engine[a]
                    row = boat.alternator[v, a]
                    rotor = forcing.engine_speed[day, g, k] * row[ALTERNATOR_PULLEY]
                    winding, frame = heated(wanted_share[a], bus, rotor, state.alternator[m, a, 0],
                                            state.alternator[m, a, 1], boat.engine[v, g, ENGINE_AIR], step, row)
                    state.alternator[m, a, 0], state.alternator[m, a, 1] = winding, frame
                    hottest = max(hottest, winding)
                # The bank makes up the difference, or the sun is turned down, or loads go without.
                solar_used = min(solar, max(0.0, needs + takes_power - generated - charger_out))
                from_bank = needs - generated - charger_out - solar_used
                if from_bank > 0.0 and (connected == 0 or from_bank > gives):
                    # The bank cannot: AC loads trip first; DC loads go when the bank is off.
                    unserved += inverter_out * step
                    ac = plant_step = compressor_step = through = inverter_out = inverter_in = 0.0
                    trip = RESTART
                    needs = dc
                    solar_used = min(solar, max(0.0, needs + takes_power - generated - charger_out))
                    from_bank = needs - generated - charger_out - solar_used
                    if from_bank > 0.0 and (connected == 0 or from_bank > gives):
                        unserved += from_bank * step
                        dc -= from_bank
                        from_bank = 0.0
                    if math.isnan(lost_at):
                        lost_at = k * step
                else:
                    trip = max(0.0, trip - step)
                if inverter_out > inverter[0] and trip <= 0.0:
                    trip = RESTART
                    if math.isnan(lost_at):
                        lost_at = k * step
                before = charge
                charge, current, voltage, lost = bank_step(charge, from_bank, step, capacity, bank, points, voltages,
                                                           resistances, settings.resistance_factor[m])
                bus_voltage = voltage
                bank_out += from_bank * step
                bank_loss += lost * step
                passed += current * step
                lowest_charge = min(lowest_charge, charge)
                lowest_voltage = min(lowest_voltage, voltage)
                if charge <= bank[BANK_CUT_OFF_CHARGE] and current >= 0.0:
                    connected = 0
                elif charge >= bank[BANK_CUT_OFF_CHARGE] + RECONNECT:
                    connected = 1
                if math.isnan(reserve_at) and charge <= reserve:
                    fell = before - charge
                    part = (before - reserve) / fell if fell > 0.0 else 0.0
                    reserve_at = (k + min(1.0, max(0.0, part))) * step
                if math.isnan(full_at) and charge >= target:
                    rose = charge - before
                    part = (target - before) / rose if rose > 0.0 else 0.0
                    full_at = (k + min(1.0, max(0.0, part))) * step
                fuel += fuel_rate * step
                inverter_energy += inverter_in * step
                inverter_loss += (inverter_in - inverter_out) * step
                shore_energy += shore * step
                charger_energy += charger_out * step
                solar_energy += solar_used * step
                alternator_energy += generated * step
                peak_inverter = max(peak_inverter, inverter_out)
                peak_shore = max(peak_shore, shore)
            compressor_energy += compressor_step * step
            plant_energy += plant_step * step
            transformer_loss += (through - ac) * step
            ac_energy += (ac - plant_step) * step
            dc_energy += dc * step
            peak_plant = max(peak_plant, plant_step)

            if series.charge.shape[1] > 0:
                for c in range(cabins):
                    series.air[m, c, k] = air[c]
                    series.humidity[m, c, k] = humidity[c]
                    series.sensible[m, c, k] = sensible_step[c]
                    series.latent[m, c, k] = latent_step[c]
                for a in range(alternators):
                    series.alternator_current[m, a, k] = wanted_share[a] if live == 1 else 0.0
                    series.alternator_winding[m, a, k] = state.alternator[m, a, 0]
                    series.alternator_frame[m, a, k] = state.alternator[m, a, 1]
                series.evaporating[m, k] = evaporating_step if load_step > 0.0 else math.nan
                series.plant_load[m, k] = load_step
                series.plant_power[m, k] = plant_step
                series.inverter_output[m, k] = inverter_out
                series.inverter_input[m, k] = inverter_in
                series.dc_load[m, k] = dc
                series.solar[m, k] = solar_used
                series.shore[m, k] = shore
                series.charger[m, k] = charger_out
                series.charge[m, k] = charge
                series.voltage[m, k] = voltage
                series.current[m, k] = current
                series.fuel_flow[m, k] = fuel_rate

        state.node[m] = node
        state.air[m] = air
        state.furnishing[m] = furnishing
        state.humidity[m] = humidity
        state.charge[m] = charge
        state.connected[m] = connected
        state.trip[m] = trip
        stored_after = 0.0
        for i in range(nodes):
            stored_after += fabric.node_capacity[i] * node[i]
        for c in range(cabins):
            stored_after += fabric.air_mass[c] * CP_AIR * air[c] + fabric.furnishing_capacity[c] * furnishing[c]
        summary.compressor_energy[m] = compressor_energy
        summary.plant_energy[m] = plant_energy
        summary.transformer_loss[m] = transformer_loss
        summary.inverter_energy[m] = inverter_energy
        summary.inverter_loss[m] = inverter_loss
        summary.ac_load_energy[m] = ac_energy
        summary.dc_load_energy[m] = dc_energy
        summary.solar_energy[m] = solar_energy
        summary.alternator_energy[m] = alternator_energy
        summary.shaft_energy[m] = shaft_energy
        summary.shore_energy[m] = shore_energy
        summary.charger_energy[m] = charger_energy
        summary.bank_out[m] = bank_out
        summary.bank_loss[m] = bank_loss
        summary.bank_stored[m] = stored_energy(charge, points, voltages, capacity) - stored_energy(
            start_charge, points, voltages, capacity
        )
        summary.unserved_energy[m] = unserved
        summary.heat_in[m] = heat_in
        summary.heat_stored[m] = stored_after - stored_before
        summary.peak_plant_power[m] = peak_plant
        summary.peak_inverter_power[m] = peak_inverter
        summary.peak_shore_power[m] = peak_shore
        summary.lowest_charge[m] = lowest_charge
        summary.lowest_voltage[m] = lowest_voltage
        summary.reserve_at[m] = reserve_at
        summary.full_at[m] = full_at
        summary.lost_at[m] = lost_at
        summary.charge_passed[m] = passed
        summary.fuel[m] = fuel
        summary.fuel_added[m] = fuel_added
        summary.hottest_winding[m] = hottest
