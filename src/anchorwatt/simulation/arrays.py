"""What the time kernel reads and writes: plain arrays, grouped.

Every array of `Boat` has a leading axis of variants and every array of `Forcing` one of days, so that ten
thousand cases can share what they have in common: a case picks one row of each. `wall_*`, `handler_cabin`
and the other integer maps are the same for all variants.

Walls run from their far side (outside, or the partition's first cabin) to their near side (the cabin).
"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Integers = NDArray[np.int64]
PerVariant = Any
"""An array with one figure a variant or a day; in a row of the group, that figure."""

# Kinds of wall, by what its far side meets.
TO_OUTSIDE, TO_CABIN, TO_NOTHING = 0, 1, 2

# How cabins are cooled in a run.
SHARED, SELF_CONTAINED, IDEAL, UNCOOLED = 0, 1, 2, 3

# What the boat does, in `Forcing.doing`.
AT_ANCHOR, MOTORING, ON_SHORE = 0, 1, 2


class Fabric(NamedTuple):
    """Walls (W) of nodes (N), cabins (C) and the air between them."""

    wall_first: Integers  # (W + 1,) first node of each wall
    wall_kind: Integers
    wall_cabin: Integers  # near side
    wall_far_cabin: Integers  # far side of a partition, else -1
    node_capacity: Floats  # (V, N) J/K
    node_conductance: Floats  # (V, N) W/K to the next node of the wall
    near_convection: Floats  # (V, W) W/K
    near_radiation: Floats  # (V, W) W/K
    far_convection: Floats  # (V, W) W/K, partitions
    far_radiation: Floats  # (V, W) W/K, partitions
    air_mass: Floats  # (V, C) kg dry air
    moisture_mass: Floats  # (V, C) kg of dry air that would hold as much moisture
    furnishing_capacity: Floats  # (V, C) J/K
    furnishing_convection: Floats  # (V, C) W/K
    furnishing_radiation: Floats  # (V, C) W/K
    window_conductance: Floats  # (V, C) W/K
    sun_wall: Floats  # (V, W) share of its cabin's sun that falls on a wall's near side
    sun_furnishing: Floats  # (V, C) share of the sun that falls on furnishings
    sun_star: Floats  # (V, C) the rest, spread over all surfaces
    exchange: Floats  # (V, C, C) kg/s dry air, symmetric, zero diagonal


class Plant(NamedTuple):
    """Air handlers (H), their outlets into further cabins (O) and their shared plant.

    A plant that heats is told as one that cools in a world turned upside down, see `simulation.cooling`.
    """

    handler_cabin: Integers
    handler_own: Floats  # (V, H) share of its air that it blows into its own cabin
    outlet_handler: Integers  # of each outlet into another cabin
    outlet_cabin: Integers
    outlet_share: Floats  # (V, O) of the handler's air
    handler_air: Floats  # (V, H, K) kg/s dry air over the grid of calls
    handler_demand: Floats  # (V, H, K) W/K over an even grid of calls, see `plant`
    handler_fan: Floats  # (V, H, K) W over the same grid
    handler_approach: Floats  # (V, H) K
    handler_band: Floats  # (V, H) K
    handler_priority: Floats  # (V, H)
    lowest_evaporating: PerVariant  # (V,) °C
    highest_evaporating: PerVariant  # (V,) °C
    degradation: PerVariant  # (V,)
    pump_power: PerVariant  # (V,) W
    standby_power: PerVariant  # (V,) W
    plant_capacity: Floats  # (V, E, S, X) W over evaporating, sea and speed
    plant_power: Floats  # (V, E, S, X) W


class Units(NamedTuple):
    """Self-contained units (U)."""

    unit_cabin: Integers
    unit_flow: Floats  # (V, U) kg/s dry air that meets the coil
    unit_fan: Floats  # (V, U) W
    unit_approach: Floats  # (V, U) K
    unit_hysteresis: Floats  # (V, U) K
    unit_degradation: Floats  # (V, U)
    unit_capacity: Floats  # (V, U, E, S) W
    unit_power: Floats  # (V, U, E, S) W
    unit_pump: PerVariant  # (V,) W


class Power(NamedTuple):
    """Buses, bank, engines (G) and alternators (A)."""

    transformer: Floats  # (V, 3) rated W, core loss W, copper loss W; rated 0 = none
    inverter: Floats  # (V, 8) see INVERTER_* below
    overload_share: Floats  # (V, O) of the inverter's rating, rising
    overload_time: Floats  # (V, O) s
    charger: Floats  # (V, 4) rated W, no-load W, linear, quadratic; rated 0 = none
    shore_power: PerVariant  # (V,) W
    bank: Floats  # (V, 14) see BANK_* below
    bank_charge: Floats  # (V, P) charge points
    bank_voltage: Floats  # (V, P) V of the bank, open circuit
    bank_factor: Floats  # (V, P) on the resistance
    solar: Floats  # (V, 4) peak W, coefficient 1/K, rise K, delivered share
    engine: Floats  # (V, G, 9) see ENGINE_* below
    engine_speeds: Floats  # (V, G, Q) share of rated speed
    engine_powers: Floats  # (V, G, Q) share of rated power
    heat_cabin: Integers  # (4,) see HEAT_OF_* below: that takes the losses of each, -1 = none
    engine_cabin: Integers  # (G,) that the engine stands in, -1 = none
    engine_block: Floats  # (V, G, 3) capacity J/K, conductance W/K, temperature °C while it runs
    alternator_engine: Integers
    alternator: Floats  # (V, A, 15) see ALTERNATOR_* below
    alternator_speeds: Floats  # (V, A, Q) rad/s
    alternator_currents: Floats  # (V, A, Q) share of rated current


class Boat(NamedTuple):
    """One design, or several of the same layout, as arrays."""

    fabric: Fabric
    plant: Plant
    heating: Plant
    units: Units
    power: Power


BANK_CAPACITY, BANK_RESISTANCE, BANK_CHARGE_CURRENT, BANK_DISCHARGE_CURRENT = 0, 1, 2, 3
BANK_ABSORB, BANK_CUT_OFF_VOLTAGE, BANK_CUT_OFF_CHARGE, BANK_SURROUNDINGS = 4, 5, 6, 7
BANK_COLDEST_CHARGE, BANK_HOTTEST_CHARGE, BANK_COLDEST, BANK_HOTTEST = 8, 9, 10, 11
BANK_HEAT_CAPACITY, BANK_CONDUCTANCE = 12, 13

INVERTER_RATED, INVERTER_NO_LOAD, INVERTER_LINEAR, INVERTER_QUADRATIC, INVERTER_SLEEP = 0, 1, 2, 3, 4
INVERTER_FULL_TO, INVERTER_DERATING, INVERTER_HOTTEST = 5, 6, 7

HEAT_OF_INVERTER, HEAT_OF_TRANSFORMER, HEAT_OF_CHARGER, HEAT_OF_BANK = 0, 1, 2, 3

ENGINE_POWER, ENGINE_SPEED, ENGINE_PROPELLER, ENGINE_EXPONENT, ENGINE_MARGIN = 0, 1, 2, 3, 4
ENGINE_EFFICIENCY, ENGINE_FRICTION, ENGINE_DISPLACEMENT = 5, 6, 7
ENGINE_AIR = 8
"""°C round the alternators, nan = that of the compartment."""

ALTERNATOR_CURRENT, ALTERNATOR_HOT_LOSS, ALTERNATOR_EFFICIENCY, ALTERNATOR_PULLEY = 0, 1, 2, 3
ALTERNATOR_WINDING_CAPACITY, ALTERNATOR_FRAME_CAPACITY = 4, 5
ALTERNATOR_WINDING_CONDUCTANCE, ALTERNATOR_FRAME_CONDUCTANCE, ALTERNATOR_RATED_SPEED = 6, 7, 8
ALTERNATOR_BELT_POWER, ALTERNATOR_BELT_SPEED, ALTERNATOR_LIMIT = 9, 10, 11
ALTERNATOR_HOLD, ALTERNATOR_BAND, ALTERNATOR_SHARE = 12, 13, 14


class Forcing(NamedTuple):
    """What drives the boat: weather and plan, at the instants (T + 1) and through the steps (T)."""

    dry_bulb: Floats  # (D, T + 1) °C
    humidity_ratio: Floats  # (D, T + 1)
    sea: Floats  # (D, T + 1) °C
    pressure: PerVariant  # (D,) Pa
    far_temperature: Floats  # (D, W, T + 1) °C of walls to outside: sol-air, or the sea
    film_row: Integers  # (T,) row of `far_film` and `outdoor_flow` that holds through a step
    far_film: Floats  # (D, R, W) W/K
    outdoor_flow: Floats  # (D, R, C) kg/s dry air as it comes from outdoors
    renewed_flow: Floats  # (D, R, C) the same, with what came through an exchanger; the kernel does not ask for it
    solar_gain: Floats  # (D, C, T + 1) W through windows
    panel_irradiance: Floats  # (D, T + 1) W/m2
    air_gain: Floats  # (D, C, T) W from appliances, to the air
    radiant_gain: Floats  # (D, C, T) W from appliances, radiant
    moisture_gain: Floats  # (D, C, T) kg/s from appliances
    people_sensible: Floats  # (D, C, T) W at 24 °C, all people of the cabin
    people_latent: Floats  # (D, C, T) W at 24 °C
    people_shift: Floats  # (D, C, T) W/K
    set_point: Floats  # (D, C, T) °C, nan = not cooled
    warm_point: Floats  # (D, C, T) °C, nan = not heated
    ac_load: Floats  # (D, T) W, the plant apart
    dc_load: Floats  # (D, T) W
    doing: Integers  # (T,)
    engine_speed: Floats  # (D, G, T) rad/s, 0 = stopped
    propelling: Integers  # (T,) 1 while the propeller turns


def plant_row(plant: Plant, v: int) -> Plant:
    """One variant of a plant."""
    return Plant(
        plant.handler_cabin,
        plant.handler_own[v],
        plant.outlet_handler,
        plant.outlet_cabin,
        plant.outlet_share[v],
        plant.handler_air[v],
        plant.handler_demand[v],
        plant.handler_fan[v],
        plant.handler_approach[v],
        plant.handler_band[v],
        plant.handler_priority[v],
        plant.lowest_evaporating[v],
        plant.highest_evaporating[v],
        plant.degradation[v],
        plant.pump_power[v],
        plant.standby_power[v],
        plant.plant_capacity[v],
        plant.plant_power[v],
    )


def boat_row(boats: Boat, v: int) -> Boat:
    """One variant: the same groups without the leading axis."""
    fabric, units, power = boats.fabric, boats.units, boats.power
    return Boat(
        Fabric(
            fabric.wall_first,
            fabric.wall_kind,
            fabric.wall_cabin,
            fabric.wall_far_cabin,
            fabric.node_capacity[v],
            fabric.node_conductance[v],
            fabric.near_convection[v],
            fabric.near_radiation[v],
            fabric.far_convection[v],
            fabric.far_radiation[v],
            fabric.air_mass[v],
            fabric.moisture_mass[v],
            fabric.furnishing_capacity[v],
            fabric.furnishing_convection[v],
            fabric.furnishing_radiation[v],
            fabric.window_conductance[v],
            fabric.sun_wall[v],
            fabric.sun_furnishing[v],
            fabric.sun_star[v],
            fabric.exchange[v],
        ),
        plant_row(boats.plant, v),
        plant_row(boats.heating, v),
        Units(
            units.unit_cabin,
            units.unit_flow[v],
            units.unit_fan[v],
            units.unit_approach[v],
            units.unit_hysteresis[v],
            units.unit_degradation[v],
            units.unit_capacity[v],
            units.unit_power[v],
            units.unit_pump[v],
        ),
        Power(
            power.transformer[v],
            power.inverter[v],
            power.overload_share[v],
            power.overload_time[v],
            power.charger[v],
            power.shore_power[v],
            power.bank[v],
            power.bank_charge[v],
            power.bank_voltage[v],
            power.bank_factor[v],
            power.solar[v],
            power.engine[v],
            power.engine_speeds[v],
            power.engine_powers[v],
            power.heat_cabin,
            power.engine_cabin,
            power.engine_block[v],
            power.alternator_engine,
            power.alternator[v],
            power.alternator_speeds[v],
            power.alternator_currents[v],
        ),
    )


def day_row(days: Forcing, d: int) -> Forcing:
    """One day: the same groups without the leading axis."""
    return Forcing(
        days.dry_bulb[d],
        days.humidity_ratio[d],
        days.sea[d],
        days.pressure[d],
        days.far_temperature[d],
        days.film_row,
        days.far_film[d],
        days.outdoor_flow[d],
        days.renewed_flow[d],
        days.solar_gain[d],
        days.panel_irradiance[d],
        days.air_gain[d],
        days.radiant_gain[d],
        days.moisture_gain[d],
        days.people_sensible[d],
        days.people_latent[d],
        days.people_shift[d],
        days.set_point[d],
        days.warm_point[d],
        days.ac_load[d],
        days.dc_load[d],
        days.doing,
        days.engine_speed[d],
        days.propelling,
    )


class State(NamedTuple):
    """The boat at an instant; a leading axis of cases. The kernel writes the last instant back into it."""

    node: Floats  # (M, N) °C
    air: Floats  # (M, C) °C
    furnishing: Floats  # (M, C) °C
    humidity: Floats  # (M, C) kg/kg
    charge: Floats  # (M,)
    connected: Integers  # (M,) 1 while the bank may discharge
    trip: Floats  # (M,) s until the inverter may start again
    overload: Floats  # (M,) share used of what the inverter has to give above its rating
    cells: Floats  # (M,) °C of the bank
    alternator: Floats  # (M, A, 2) °C winding, frame
    unit_on: Integers  # (M, U)
    unit_lately: Floats  # (M, U) share of the time that each unit ran
    unit_thaw: Floats  # (M, U) s that a frosted coil still thaws
    block: Floats  # (M, G) °C of each engine


class Settings(NamedTuple):
    """What may differ from case to case without a boat or a day of its own; (M,) each."""

    variant: Integers  # row of Boat
    day: Integers  # row of Forcing
    sea_offset: Floats  # K
    air_offset: Floats  # K on the outdoor air and the sol-air temperatures
    gain_factor: Floats  # on people, appliances and sun
    capacity_factor: Floats  # of the bank
    resistance_factor: Floats  # of the bank


class Summary(NamedTuple):
    """What a run comes to; a leading axis of cases."""

    # energies, J
    compressor_energy: Floats
    plant_energy: Floats  # compressor, fans, pump, controls
    transformer_loss: Floats
    inverter_energy: Floats  # into the inverter, from the DC bus
    inverter_loss: Floats
    ac_load_energy: Floats
    dc_load_energy: Floats
    solar_energy: Floats
    alternator_energy: Floats  # electrical
    shaft_energy: Floats
    shore_energy: Floats  # AC from shore
    charger_energy: Floats  # DC from the charger
    bank_out: Floats  # at the terminals, out minus in
    bank_loss: Floats
    bank_stored: Floats  # change of stored energy
    unserved_energy: Floats
    heat_in: Floats  # thermal: everything into the boat's fabric and air
    heat_stored: Floats
    # extremes
    # peaks are of a step's mean, a cycling machine counted at what it draws while it runs
    peak_plant_power: Floats
    peak_ac_power: Floats  # plant and AC loads
    peak_inverter_power: Floats  # output
    peak_shore_power: Floats
    lowest_charge: Floats
    lowest_voltage: Floats
    # moments, s from the start of the run, nan = never
    reserve_at: Floats  # charge fell to the reserve
    full_at: Floats  # charge rose to the target
    lost_at: Floats  # first moment without supply
    charge_passed: Floats  # A s out minus in
    fuel: Floats  # kg, all that the engines burn
    fuel_added: Floats  # kg, burnt for the alternators alone
    hottest_winding: Floats  # °C
    hottest_bank: Floats  # °C of the cells
    # by cabin: an axis more
    highest_air: Floats  # °C
    highest_relative_humidity: Floats
    sensible_energy: Floats  # J taken from each cabin
    latent_energy: Floats  # J
    heating_energy: Floats  # J given to each cabin


class Series(NamedTuple):
    """A run step by step; empty (0 rows) when not asked for. Instants are the ends of the steps."""

    air: Floats  # (M, C, T)
    humidity: Floats  # (M, C, T)
    sensible: Floats  # (M, C, T) W taken from the cabin, mean of the step
    latent: Floats  # (M, C, T) W
    heating: Floats  # (M, C, T) W given to the cabin, mean of the step
    radiant: Floats  # (M, C, T) °C of the cabin's radiant star
    coldest: Floats  # (M, C, T) °C of the cabin's coldest inside surface
    evaporating: Floats  # (M, T) °C at which the coils' refrigerant boils; while heating, condenses
    plant_load: Floats  # (M, T) W of cooling
    plant_power: Floats  # (M, T)
    inverter_output: Floats  # (M, T)
    inverter_input: Floats  # (M, T)
    dc_load: Floats  # (M, T)
    solar: Floats  # (M, T)
    shore: Floats  # (M, T)
    charger: Floats  # (M, T)
    charge: Floats  # (M, T)
    voltage: Floats  # (M, T)
    current: Floats  # (M, T) A, out of the bank positive
    bank_temperature: Floats  # (M, T) °C of the cells
    alternator_current: Floats  # (M, A, T)
    alternator_winding: Floats  # (M, A, T)
    alternator_frame: Floats  # (M, A, T)
    fuel_flow: Floats  # (M, T) kg/s
