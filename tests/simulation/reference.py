"""The same equations, solved by scipy's `solve_ivp`, assembled here on their own.

Only the physics functions, the sharing of the compressor and the arrays of the network are the program's;
the assembly of the heat balance, the stepping and the integrals are not.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from scipy.integrate import solve_ivp

from anchorwatt.physics.air_handler import call_share, coil_approach
from anchorwatt.physics.battery import current_for_power
from anchorwatt.physics.moist_air import CP_AIR, latent_heat, saturation_humidity_ratio
from anchorwatt.physics.people import latent_from_person, sensible_from_person
from anchorwatt.simulation.arrays import (
    BANK_CONDUCTANCE,
    BANK_HEAT_CAPACITY,
    BANK_SURROUNDINGS,
    HEAT_OF_BANK,
    TO_CABIN,
    TO_OUTSIDE,
    Boat,
    Floats,
    Forcing,
    State,
)
from anchorwatt.simulation.cooling import MIRROR
from anchorwatt.simulation.electric import bank_point, inverter_power, transformer_power
from anchorwatt.simulation.fabric import PEOPLE_RADIANT
from anchorwatt.simulation.plant import compressor_power, dispatch, grid_value, new_coils


@dataclass(frozen=True)
class Reference:
    time: Floats  # s from the start
    air: Floats  # (C, times) °C
    humidity: Floats
    charge: Floats  # (times,)
    night_energy: float  # J from the bank's terminals


def solve(boat: Boat, forcing: Forcing, state: State, step: float, rtol: float = 1e-6) -> Reference:
    """Integrate one case of the shared plant at anchor, no charging, nothing tripping."""
    steps = forcing.ac_load.shape[1]
    cabins, nodes = boat.fabric.air_mass.shape[1], boat.fabric.node_capacity.shape[1]
    handlers = boat.plant.handler_cabin.size
    coils = new_coils(boat.plant.handler_cabin, boat.plant.outlet_handler, boat.plant.outlet_cabin)
    coils.priority[:] = boat.plant.handler_priority[0]
    pressure = float(forcing.pressure[0])
    air_at, wet_at = slice(nodes, nodes + cabins), slice(nodes + 2 * cabins, nodes + 3 * cabins)
    loose_at = slice(nodes + cabins, nodes + 2 * cabins)

    dew_flow = boat.fabric.furnishing_convection[0] / CP_AIR
    np.add.at(dew_flow, boat.fabric.wall_cabin, boat.fabric.near_convection[0] / CP_AIR)
    between = boat.fabric.wall_kind == TO_CABIN
    np.add.at(dew_flow, boat.fabric.wall_far_cabin[between], boat.fabric.far_convection[0, between] / CP_AIR)

    def rates(t: float, y: Floats, k: int) -> Floats:
        node, air, loose, wet, charge = y[:nodes], y[air_at], y[loose_at], y[wet_at], y[-3]
        part = (t - k * step) / step

        def at(series: Floats) -> Floats:
            between: Floats = (1.0 - part) * series[..., k] + part * series[..., k + 1]
            return between

        outdoor, damp, sea = (
            float(at(forcing.dry_bulb[0])),
            float(at(forcing.humidity_ratio[0])),
            float(at(forcing.sea[0])),
        )
        far, film = at(forcing.far_temperature[0]), forcing.far_film[0, forcing.film_row[k]]
        sun = at(forcing.solar_gain[0])
        outdoor_flow = forcing.outdoor_flow[0, forcing.film_row[k]]
        into_node = np.zeros(nodes)
        into_air, into_loose, into_wet = np.zeros(cabins), np.zeros(cabins), np.zeros(cabins)
        # Radiant stars: no storage, so their temperature follows from what meets there.
        star_heat = np.zeros(cabins)
        star_weight = boat.fabric.furnishing_radiation[0].copy()
        star_sum = boat.fabric.furnishing_radiation[0] * loose
        for c in range(cabins):
            s, wet_heat, f = (
                float(x[0, c, k]) for x in (forcing.people_sensible, forcing.people_latent, forcing.people_shift)
            )
            people = sensible_from_person(s, wet_heat, f, float(air[c])) if s + wet_heat > 0 else 0.0
            vapour = (
                latent_from_person(s, wet_heat, f, float(air[c])) / latent_heat(float(air[c]))
                if s + wet_heat > 0
                else 0.0
            )
            into_air[c] += forcing.air_gain[0, c, k] + (1 - PEOPLE_RADIANT) * people
            star_heat[c] += (
                forcing.radiant_gain[0, c, k] + PEOPLE_RADIANT * people + boat.fabric.sun_star[0, c] * sun[c]
            )
            into_loose[c] += boat.fabric.sun_furnishing[0, c] * sun[c]
            into_wet[c] += forcing.moisture_gain[0, c, k] + vapour
        for w in range(boat.fabric.wall_kind.size):
            first, last = boat.fabric.wall_first[w], boat.fabric.wall_first[w + 1] - 1
            star_weight[boat.fabric.wall_cabin[w]] += boat.fabric.near_radiation[0, w]
            star_sum[boat.fabric.wall_cabin[w]] += boat.fabric.near_radiation[0, w] * node[last]
            if boat.fabric.wall_kind[w] == TO_CABIN:
                star_weight[boat.fabric.wall_far_cabin[w]] += boat.fabric.far_radiation[0, w]
                star_sum[boat.fabric.wall_far_cabin[w]] += boat.fabric.far_radiation[0, w] * node[first]
        star = (star_sum + star_heat) / star_weight
        for w in range(boat.fabric.wall_kind.size):
            first, last = boat.fabric.wall_first[w], boat.fabric.wall_first[w + 1] - 1
            for i in range(first, last):
                passed = boat.fabric.node_conductance[0, i] * (node[i + 1] - node[i])
                into_node[i] += passed
                into_node[i + 1] -= passed
            c = boat.fabric.wall_cabin[w]
            blown = boat.fabric.near_convection[0, w] * (air[c] - node[last])
            into_node[last] += blown + boat.fabric.near_radiation[0, w] * (star[c] - node[last])
            into_air[c] -= blown
            if boat.fabric.wall_kind[w] == TO_OUTSIDE:
                into_node[first] += film[w] * (far[w] - node[first])
            elif boat.fabric.wall_kind[w] == TO_CABIN:
                a = boat.fabric.wall_far_cabin[w]
                blown = boat.fabric.far_convection[0, w] * (air[a] - node[first])
                into_node[first] += blown + boat.fabric.far_radiation[0, w] * (star[a] - node[first])
                into_air[a] -= blown
        blown = boat.fabric.furnishing_convection[0] * (air - loose)
        into_loose += blown + boat.fabric.furnishing_radiation[0] * (star - loose)
        into_air += (boat.fabric.window_conductance[0] + outdoor_flow * CP_AIR) * (outdoor - air) - blown
        into_air += CP_AIR * (boat.fabric.exchange[0] @ air - boat.fabric.exchange[0].sum(axis=1) * air)
        into_wet += (
            outdoor_flow * (damp - wet) + boat.fabric.exchange[0] @ wet - boat.fabric.exchange[0].sum(axis=1) * wet
        )
        for c in range(cabins):
            over = max(0.0, wet[c] - saturation_humidity_ratio(float(air[c]), pressure))
            into_wet[c] -= dew_flow[c] * over
            into_air[c] += dew_flow[c] * over * latent_heat(float(air[c]))
        # The plant; one that heats is told upside down, its coils dry.
        warming = not np.isnan(forcing.warm_point[0, :, k]).all()
        plant = boat.heating if warming else boat.plant
        points = MIRROR - forcing.warm_point[0, :, k] if warming else forcing.set_point[0, :, k]
        felt, sign = (MIRROR - air, -1.0) if warming else (air, 1.0)
        lowest, highest = float(plant.lowest_evaporating[0]), float(plant.highest_evaporating[0])
        for h in range(handlers):
            c = plant.handler_cabin[h]
            coils.entering[h], coils.damp[h] = felt[c], 0.0 if warming else wet[c]
            band = float(plant.handler_band[0, h])
            coils.call[h] = 0.0 if math.isnan(points[c]) else call_share(float(felt[c]), float(points[c]), band)
            coils.approach[h] = coil_approach(float(plant.handler_approach[0, h]), float(coils.call[h]))
            coils.demand[h] = grid_value(plant.handler_demand[0], h, float(coils.call[h]))
        cold, taken = dispatch(coils, lowest, highest, plant.plant_capacity[0], sea, pressure)
        power = float(plant.standby_power[0])
        for h in range(handlers):
            if coils.call[h] <= 0.0:
                continue
            c = plant.handler_cabin[h]
            adp = cold + float(coils.approach[h])
            fan = grid_value(plant.handler_fan[0], h, float(coils.call[h]))
            power += abs(fan)
            wished = coils.demand[h] * (felt[c] - lowest - coils.approach[h])
            sensible = sign * (fan - coils.share[h] * wished)
            over = 0.0 if warming else max(0.0, wet[c] - saturation_humidity_ratio(adp, pressure))
            dried = coils.flow[h] * over
            into_air[c] += plant.handler_own[0, h] * sensible
            into_wet[c] -= plant.handler_own[0, h] * dried
            for o in np.flatnonzero(plant.outlet_handler == h):
                d, share = plant.outlet_cabin[o], plant.outlet_share[0, o]
                # What is blown into another space comes back through the door with that space's air.
                round_trip = share * grid_value(plant.handler_air[0], h, float(coils.call[h]))
                into_air[d] += share * sensible + round_trip * CP_AIR * (air[c] - air[d])
                into_air[c] -= round_trip * CP_AIR * (air[c] - air[d])
                into_wet[d] += round_trip * (wet[c] - wet[d]) - share * dried
                into_wet[c] -= round_trip * (wet[c] - wet[d])
        if taken > 0.0:
            drawn, duty = compressor_power(
                plant.plant_capacity[0], plant.plant_power[0], taken, cold, sea, float(plant.degradation[0])
            )
            power += drawn + duty * float(plant.pump_power[0])
        through = transformer_power(power + float(forcing.ac_load[0, k]), boat.power.transformer[0])
        drain = inverter_power(through, boat.power.inverter[0]) + float(forcing.dc_load[0, k])
        volts, ohms = bank_point(
            float(charge),
            float(y[-2]),
            boat.power.bank[0],
            boat.power.bank_charge[0],
            boat.power.bank_voltage[0],
            boat.power.bank_factor[0],
            1.0,
        )
        current = current_for_power(drain, volts, ohms)
        stands = int(boat.power.heat_cabin[HEAT_OF_BANK])
        around = float(air[stands]) if stands >= 0 else float(boat.power.bank[0, BANK_SURROUNDINGS])
        given = float(boat.power.bank[0, BANK_CONDUCTANCE]) * (float(y[-2]) - around)
        warmer = (current * current * ohms - given) / float(boat.power.bank[0, BANK_HEAT_CAPACITY])
        return np.concatenate(
            [
                into_node / boat.fabric.node_capacity[0],
                into_air / (boat.fabric.air_mass[0] * CP_AIR),
                into_loose / boat.fabric.furnishing_capacity[0],
                into_wet / boat.fabric.moisture_mass[0],
                [-current / boat.power.bank[0, 0], warmer, drain],
            ]
        )

    y = np.concatenate(
        [state.node[0], state.air[0], state.furnishing[0], state.humidity[0], state.charge, state.cells, [0.0]]
    )
    history = [y]
    # What the plan or the hour changes is constant between these edges: one integration each.
    changing = [
        forcing.film_row,
        forcing.ac_load[0],
        forcing.dc_load[0],
        *np.nan_to_num(forcing.set_point[0]),
        *np.nan_to_num(forcing.warm_point[0]),
        *forcing.people_sensible[0],
    ]
    edges = sorted({0, steps, *(k for k in range(1, steps) for x in changing if x[k] != x[k - 1])})
    for first, last in pairwise(edges):
        times = np.arange(first + 1, last + 1) * step

        def right(t: float, y: Floats, first: int = first, last: int = last) -> Floats:
            return rates(t, y, min(max(int(t / step), first), last - 1))

        answer = solve_ivp(
            right,
            (first * step, last * step),
            y,
            method="LSODA",
            t_eval=times,
            rtol=rtol,
            atol=1e-7,
            max_step=1800.0,
        )
        assert answer.success, answer.message
        history.extend(answer.y.T)
        y = answer.y[:, -1]
    table = np.array(history).T
    return Reference(np.arange(steps + 1) * step, table[air_at], table[wet_at], table[-3], float(table[-1, -1]))
