"""The time kernel: heat, moisture, plant, buses, bank and engines stepped together on one clock.

`run_cases` is compiled by `simulation.compiled`; one case or ten thousand run through it. The equations
are those of `anchorwatt.physics`, called, not copied.
"""

from __future__ import annotations

import math

import numpy as np

from anchorwatt.physics.battery import stored_energy
from anchorwatt.physics.moist_air import CP_AIR, saturation_humidity_ratio, vapour_pressure
from anchorwatt.simulation.arrays import (
    IDEAL,
    ON_SHORE,
    SELF_CONTAINED,
    SHARED,
    TO_CABIN,
    TO_OUTSIDE,
    UNCOOLED,
    Boat,
    Fabric,
    Floats,
    Forcing,
    Series,
    Settings,
    State,
    Summary,
    boat_row,
    day_row,
)
from anchorwatt.simulation.cabins import (
    Cabins,
    between,
    condense,
    drive,
    go_back,
    keep,
    moved,
    new_cabins,
    reach_ahead,
    start_from_here,
)
from anchorwatt.simulation.cooling import (
    COMPRESSOR,
    EVAPORATING,
    LOAD,
    PLANT,
    RUNNING,
    SPENT,
    heating_stage,
    ideal_stage,
    no_plant,
    reach_of,
    shared_stage,
    switch_units,
    units_stage,
)
from anchorwatt.simulation.electric import bank_capacity, inverter_power, transformer_power
from anchorwatt.simulation.fabric import (
    GAMMA,
    Factors,
    empty_factors,
    factor,
    gather,
    scatter,
    sweep,
)
from anchorwatt.simulation.moisture import surface_exchange
from anchorwatt.simulation.plant import Coils, new_coils
from anchorwatt.simulation.supply import (
    BUS,
    CHARGER,
    CURRENT,
    DC,
    FUEL,
    INVERTER_IN,
    INVERTER_OUT,
    SHORE,
    SUN,
    TRANSFORMER_LOSS,
    VOLTAGE,
    supply,
    warm_bank,
)
from anchorwatt.simulation.waste import engine_heat, machine_heat

FINE_PARTS, UNIT_PARTS = 6, 6
FINE_FOR = 180.0
FAST, BEND = 0.06, 0.008
"""Parts of a step, s for which steps are so divided after the plan switches a set point or power fails, and K a step
from which they are divided anyway, or by which one step may differ from the last.

While a cabin's air falls by kelvins a minute, the second-order method, whose second stage reaches ahead, would
overshoot the thermostat's band. Self-contained units switch all the time: their steps are always divided, into
`UNIT_PARTS`."""


def switched(points: Floats, points_then: Floats) -> bool:
    """Whether any set point differs from the last step's; remembers them."""
    changed = False
    for c in range(points.shape[0]):
        both_off = math.isnan(points[c]) and math.isnan(points_then[c])
        if points[c] != points_then[c] and not both_off:
            changed = True
        points_then[c] = points[c]
    return changed


def heat_stored(fabric: Fabric, room: Cabins) -> float:
    """J in walls, air and furnishings over 0 °C."""
    total = 0.0
    for i in range(room.node.shape[0]):
        total += fabric.node_capacity[i] * room.node[i]
    for c in range(room.air.shape[0]):
        total += fabric.air_mass[c] * CP_AIR * room.air[c] + fabric.furnishing_capacity[c] * room.furnishing[c]
    return total


def heat_taken_in(fabric: Fabric, film: Floats, outdoor: float, room: Cabins) -> float:
    """W into the boat at the end of a stage: outside faces, windows, outdoor air, gains and cooling."""
    total = 0.0
    for c in range(room.air.shape[0]):
        outside = fabric.window_conductance[c] + room.outdoor_flow[c] * CP_AIR
        gains = room.air_gain[c] + room.radiant_gain[c] + room.furnishing_gain[c]
        gains += (1.0 - fabric.sun_star[c] - fabric.sun_furnishing[c]) * room.sun[c]
        total += gains + room.cooling[c] + room.dew_heat[c] + outside * (outdoor - room.air[c])
    for w in range(fabric.wall_kind.shape[0]):
        if fabric.wall_kind[w] == TO_OUTSIDE:
            total += film[w] * (room.far_temperature[w] - room.node[fabric.wall_first[w]])
    return total


def begin(m: int, charge: float, room: Cabins, pressure: float, summary: Summary) -> None:
    """Empty a case's summary."""
    for c in range(room.air.shape[0]):
        room.dew_heat[c] = 0.0
        room.most[c] = saturation_humidity_ratio(room.air[c], pressure)
        summary.highest_air[m, c] = room.air[c]
        summary.highest_relative_humidity[m, c] = min(1.0, room.humidity[c] / room.most[c])
        summary.sensible_energy[m, c] = 0.0
        summary.latent_energy[m, c] = 0.0
        summary.heating_energy[m, c] = 0.0
    for total in (
        summary.compressor_energy, summary.plant_energy, summary.transformer_loss, summary.inverter_energy,
        summary.inverter_loss, summary.ac_load_energy, summary.dc_load_energy, summary.solar_energy,
        summary.alternator_energy, summary.shaft_energy, summary.shore_energy, summary.charger_energy,
        summary.bank_out, summary.bank_loss, summary.unserved_energy, summary.heat_in, summary.charge_passed,
        summary.fuel, summary.fuel_added, summary.peak_plant_power, summary.peak_inverter_power,
        summary.peak_shore_power,
        summary.peak_ac_power,
    ):  # fmt: skip
        total[m] = 0.0
    for moment in (summary.reserve_at, summary.full_at, summary.lost_at):
        moment[m] = math.nan
    summary.lowest_charge[m] = charge
    summary.lowest_voltage[m] = math.inf
    summary.hottest_winding[m] = -math.inf
    summary.hottest_bank[m] = -math.inf


def note_cabins(m: int, step: float, pressure: float, room: Cabins, summary: Summary) -> None:
    """Keep the warmest and dampest, and what was taken from each cabin in a step."""
    for c in range(room.air.shape[0]):
        room.most[c] = saturation_humidity_ratio(room.air[c], pressure)
        damp = vapour_pressure(room.humidity[c], pressure) / vapour_pressure(room.most[c], pressure)
        summary.highest_air[m, c] = max(summary.highest_air[m, c], room.air[c])
        summary.highest_relative_humidity[m, c] = max(summary.highest_relative_humidity[m, c], min(1.0, damp))
        summary.sensible_energy[m, c] += room.sensible[c] * step
        summary.latent_energy[m, c] += room.latent[c] * step
        summary.heating_energy[m, c] += room.heating[c] * step


def record(
    m: int,
    k: int,
    fabric: Fabric,
    room: Cabins,
    state: State,
    amps: Floats,
    spent: Floats,
    bus: Floats,
    series: Series,
) -> None:
    """Write a step into the series."""
    cabins = room.air.shape[0]
    for c in range(cabins):
        series.heating[m, c, k] = room.heating[c]
        series.radiant[m, c, k] = room.cabin[cabins + c]
        series.coldest[m, c, k] = room.furnishing[c]
    for w in range(fabric.wall_kind.shape[0]):
        c, near = fabric.wall_cabin[w], room.node[fabric.wall_first[w + 1] - 1]
        series.coldest[m, c, k] = min(series.coldest[m, c, k], near)
        if fabric.wall_kind[w] == TO_CABIN:
            c, far = fabric.wall_far_cabin[w], room.node[fabric.wall_first[w]]
            series.coldest[m, c, k] = min(series.coldest[m, c, k], far)
    for c in range(cabins):
        series.air[m, c, k] = room.air[c]
        series.humidity[m, c, k] = room.humidity[c]
        series.sensible[m, c, k] = room.sensible[c]
        series.latent[m, c, k] = room.latent[c]
    for a in range(amps.shape[0]):
        series.alternator_current[m, a, k] = amps[a]
        series.alternator_winding[m, a, k] = state.alternator[m, a, 0]
        series.alternator_frame[m, a, k] = state.alternator[m, a, 1]
    series.evaporating[m, k] = spent[EVAPORATING] if spent[LOAD] > 0.0 else math.nan
    series.plant_load[m, k] = spent[LOAD]
    series.plant_power[m, k] = spent[PLANT]
    series.inverter_output[m, k] = bus[INVERTER_OUT]
    series.inverter_input[m, k] = bus[INVERTER_IN]
    series.dc_load[m, k] = bus[DC]
    series.solar[m, k] = bus[SUN]
    series.shore[m, k] = bus[SHORE]
    series.charger[m, k] = bus[CHARGER]
    series.charge[m, k] = state.charge[m]
    series.voltage[m, k] = bus[VOLTAGE]
    series.current[m, k] = bus[CURRENT]
    series.bank_temperature[m, k] = state.cells[m]
    series.fuel_flow[m, k] = bus[FUEL]


def run_case(
    boat: Boat,
    forcing: Forcing,
    settings: Settings,
    m: int,
    state: State,
    step: float,
    mode: int,
    live: int,
    reserve: float,
    target: float,
    summary: Summary,
    series: Series,
    held: Floats,
    room: Cabins,
    factors: Factors,
    coils: Coils,
    film: Floats,
    points: Floats,
    points_then: Floats,
    warm: Floats,
    warm_then: Floats,
    amps: Floats,
    spent: Floats,
    bus: Floats,
) -> None:
    """Run case m from its state; see `run_cases`. The arrays from `room` on are room for work."""
    fabric, power = boat.fabric, boat.power
    cabins, steps = room.air.shape[0], forcing.ac_load.shape[0]
    pressure, air_offset, sea_offset = forcing.pressure, settings.air_offset[m], settings.sea_offset[m]
    capacity = bank_capacity(power.bank, settings.capacity_factor[m])
    for i in range(room.node.shape[0]):
        room.node[i] = state.node[m, i]
    for c in range(cabins):
        room.air[c], room.furnishing[c] = state.air[m, c], state.furnishing[m, c]
        room.humidity[c], points_then[c], warm_then[c] = state.humidity[m, c], math.nan, math.nan
        room.cooling[c], room.waste[c], room.mix[c] = 0.0, 0.0, 0.0
    coils.share[:] = 1.0
    coils.call[:] = 0.0
    coils.heat[:] = 0.0
    coils.carried[:] = 0.0
    bus[:] = 0.0
    room.blown[:, :] = 0.0
    surface_exchange(fabric, room.dew_flow)
    begin(m, state.charge[m], room, pressure, summary)
    heat_before = heat_stored(fabric, room)
    bank_before = stored_energy(state.charge[m], power.bank_charge, power.bank_voltage, capacity)
    film_then, parts_then, fine_left, powered_then, moved_then = -1, 0, 0.0, True, 0.0

    for k in range(steps):
        ashore = forcing.doing[k] == ON_SHORE
        powered = live == 0 or ashore or (state.connected[m] == 1 and state.trip[m] <= 0.0)
        warming = False
        for c in range(cabins):
            points[c] = forcing.set_point[c, k] if powered else math.nan
            warm[c] = forcing.warm_point[c, k] if powered else math.nan
            warming = warming or not math.isnan(warm[c])
        changed = switched(points, points_then)
        if switched(warm, warm_then) or changed or powered != powered_then:
            fine_left = FINE_FOR
        powered_then = powered
        engine_heat(power, forcing, k, m, step, state, room)
        keep(room)
        fine, fine_left, heat_in = fine_left > 0.0, fine_left - step, 0.0
        for attempt in range(2):
            parts = UNIT_PARTS if mode == SELF_CONTAINED else 1
            if mode in (SHARED, UNCOOLED) and fine:
                parts = FINE_PARTS
            short = step / parts
            stage_step = GAMMA * short
            if forcing.film_row[k] != film_then or parts != parts_then:
                film_then, parts_then = forcing.film_row[k], parts
                for w in range(film.shape[0]):
                    film[w] = forcing.far_film[film_then, w]
                for c in range(cabins):
                    room.outdoor_flow[c] = forcing.outdoor_flow[film_then, c]
                factor(fabric, film, room.outdoor_flow, stage_step, factors)
                if mode == SHARED:
                    reach_of(boat.plant, factors.cabins, coils)
            room.sensible[:] = 0.0
            room.latent[:] = 0.0
            room.heating[:] = 0.0
            spent[:] = 0.0
            heat_in = 0.0
            for piece in range(parts):
                if mode == SELF_CONTAINED:
                    sea = between(forcing.sea[k], forcing.sea[k + 1], piece / parts) + sea_offset
                    switch_units(
                        boat.units,
                        points,
                        powered,
                        sea,
                        pressure,
                        short,
                        room,
                        coils,
                        state.unit_on[m],
                        state.unit_lately[m],
                        state.unit_thaw[m],
                        spent,
                    )
                start_from_here(room)
                for stage in range(2):
                    if stage == 1:
                        reach_ahead(room, (1.0 - GAMMA) / GAMMA)
                    part = (piece + (GAMMA if stage == 0 else 1.0)) / parts
                    weight = (1.0 - GAMMA if stage == 0 else GAMMA) / parts
                    outdoor = between(forcing.dry_bulb[k], forcing.dry_bulb[k + 1], part) + air_offset
                    wet = between(forcing.humidity_ratio[k], forcing.humidity_ratio[k + 1], part)
                    drive(forcing, fabric, k, part, settings.gain_factor[m], air_offset, room)
                    sweep(fabric, film, room.far_temperature, room.sun, room.base_node, stage_step, factors, room.node)
                    gather(
                        fabric, room.node, room.base_air, room.base_furnishing, outdoor, room.outdoor_flow,
                        room.air_gain, room.radiant_gain, room.furnishing_gain, stage_step, room.right,
                    )  # fmt: skip
                    for i in range(2 * cabins):
                        total = 0.0
                        for j in range(2 * cabins):
                            total += factors.cabins[i, j] * room.right[j]
                        room.cabin[i] = total
                    for c in range(cabins):
                        room.free[c] = room.cabin[c]
                    condense(room, factors.cabins, pressure)
                    for c in range(cabins):
                        room.cooling[c] = 0.0
                    sea = between(forcing.sea[k], forcing.sea[k + 1], part) + sea_offset
                    if mode == SHARED and powered and warming:
                        heating_stage(
                            boat.heating, fabric, factors, warm, sea, wet, pressure, stage_step, weight, room, coils,
                            not warming, spent,
                        )  # fmt: skip
                    elif mode == SHARED and powered:
                        shared_stage(
                            boat.plant, fabric, factors, points, sea, wet, pressure, stage_step, weight, room, coils,
                            not warming, room.sensible, spent,
                        )  # fmt: skip
                    elif mode == SELF_CONTAINED:
                        units_stage(boat.units, fabric, factors, points, wet, stage_step, weight, room, coils, spent)
                    elif mode == IDEAL:
                        ideal_stage(fabric, factors, points, warm, wet, pressure, stage_step, weight, room)
                    else:
                        room.blown[:, :] = 0.0
                        no_plant(fabric, room, wet, stage_step)
                    for i in range(2 * cabins):
                        for j in range(cabins):
                            room.cabin[i] += factors.cabins[i, j] * (room.cooling[j] + room.dew_heat[j])
                    scatter(
                        fabric, room.cabin, room.base_furnishing, room.furnishing_gain, stage_step, factors,
                        room.node, room.furnishing,
                    )  # fmt: skip
                    for c in range(cabins):
                        room.air[c] = room.cabin[c]
                        if parts > 1:
                            room.most[c] = saturation_humidity_ratio(room.air[c], pressure)
                    heat_in += weight * step * heat_taken_in(fabric, film, outdoor, room)
            now = moved(room)
            if attempt == 1 or parts > 1 or mode == IDEAL or (now <= FAST and abs(now - moved_then) <= BEND):
                break
            go_back(room)
            fine = True
        summary.heat_in[m] += heat_in
        now = moved(room)
        if now > FAST or abs(now - moved_then) > BEND:
            fine_left = max(fine_left, 2.0 * step)
        moved_then = now
        note_cabins(m, step, pressure, room, summary)
        if live == 1:
            supply(
                boat.power, forcing, k, m, step, ashore, powered, room.air, air_offset,
                settings.capacity_factor[m], settings.resistance_factor[m], reserve, target, state, summary, held, amps,
                spent, bus,
            )  # fmt: skip
        else:
            drawn = spent[PLANT] + forcing.ac_load[k]
            bus[INVERTER_OUT] = transformer_power(drawn, power.transformer)
            bus[INVERTER_IN] = inverter_power(bus[INVERTER_OUT], power.inverter)
            bus[TRANSFORMER_LOSS] = bus[INVERTER_OUT] - drawn
            warm_bank(power, m, step, 0.0, room.air, state, bus)
        machine_heat(power, bus, room)
        summary.compressor_energy[m] += spent[COMPRESSOR] * step
        summary.plant_energy[m] += spent[PLANT] * step
        summary.peak_plant_power[m] = max(summary.peak_plant_power[m], spent[RUNNING])
        if series.charge.shape[1] > 0:
            record(m, k, fabric, room, state, amps, spent, bus, series)

    for i in range(room.node.shape[0]):
        state.node[m, i] = room.node[i]
    for c in range(cabins):
        state.air[m, c], state.furnishing[m, c] = room.air[c], room.furnishing[c]
        state.humidity[m, c] = room.humidity[c]
    summary.heat_stored[m] = heat_stored(fabric, room) - heat_before
    bank_after = stored_energy(state.charge[m], power.bank_charge, power.bank_voltage, capacity)
    summary.bank_stored[m] = bank_after - bank_before


def run_cases(
    boats: Boat,
    days: Forcing,
    settings: Settings,
    state: State,
    step: float,
    mode: int,
    live: int,
    reserve: float,
    target: float,
    summary: Summary,
    series: Series,
    held: Floats,
    first: int,
    last: int,
) -> None:
    """Run cases `first` to `last` (not included).

    Parameters
    ----------
    boats, days, settings, state : see `simulation.arrays`; `state` is read and left at the end's
    step : s
    mode : how cabins are cooled (SHARED, SELF_CONTAINED, IDEAL, UNCOOLED)
    live : 1 = the bank carries the boat; 0 = electricity is there and costs no charge (before the night)
    reserve, target : states of charge whose moments are noted
    summary, series : written; empty series are left alone
    held : (M, A, 6) s that each alternator was held by each cause are added
    """
    walls, nodes, cabins = (
        boats.fabric.wall_kind.shape[0],
        boats.fabric.node_capacity.shape[1],
        boats.fabric.air_mass.shape[1],
    )
    room, factors = new_cabins(nodes, cabins, walls), empty_factors(nodes, cabins)
    plant = boats.plant
    coils = new_coils(plant.handler_cabin, plant.outlet_handler, plant.outlet_cabin)
    if mode == SELF_CONTAINED:
        coils = new_coils(boats.units.unit_cabin, plant.outlet_handler[:0], plant.outlet_cabin[:0])
    film, points, points_then = np.empty(walls), np.empty(cabins), np.empty(cabins)
    warm, warm_then = np.empty(cabins), np.empty(cabins)
    amps, spent, bus = (
        np.zeros(boats.power.alternator_engine.shape[0]),
        np.zeros(SPENT),
        np.zeros(BUS + boats.power.engine.shape[1]),
    )
    for m in range(first, last):
        boat, forcing = boat_row(boats, settings.variant[m]), day_row(days, settings.day[m])
        run_case(
            boat, forcing, settings, m, state, step, mode, live, reserve, target, summary, series, held, room,
            factors, coils, film, points, points_then, warm, warm_then, amps, spent, bus,
        )  # fmt: skip
