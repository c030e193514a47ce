"""The cooling plants of a specification as the kernel's arrays."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

import numpy as np

from anchorwatt.design.specification import ChilledWaterPlant, Handler, SelfContainedPlant, SharedPlant
from anchorwatt.physics.air_handler import airflow_share, running_share
from anchorwatt.physics.coil import bypass_factor
from anchorwatt.physics.fan import fan_power
from anchorwatt.physics.moist_air import CP_AIR, density, humidity_ratio
from anchorwatt.simulation.arrays import Floats, Plant, Units
from anchorwatt.simulation.cooling import MIRROR
from anchorwatt.simulation.plant import CALLS, EVAPORATING_COUNT, EVAPORATING_STEP, SEA_COUNT
from anchorwatt.simulation.plant_map import PlantMap, heating_map, plant_map

STANDARD_PRESSURE = 101_325.0
CABIN_AIR_DENSITY = density(25.0, humidity_ratio(25.0, 0.5, STANDARD_PRESSURE), STANDARD_PRESSURE)
"""kg of dry air per m³ in a cabin; held constant, 1 % over the range of a cabin's temperatures."""


def handler_tables(handler: Handler) -> tuple[Floats, Floats, Floats]:
    """A handler's sensible demand (W/K), fan power (W) and air (kg/s) over the even grid of calls.

    The demand is the heat taken for each kelvin between cabin and the coldest coil: below the cycling call
    the handler runs part of the time at lowest fan, above it fan and valve open together.
    """
    demand, fan, air = np.empty(CALLS), np.empty(CALLS), np.empty(CALLS)
    for i, call in enumerate(np.linspace(0.0, 1.0, CALLS)):
        share = airflow_share(float(call), handler.lowest_fan)
        flow = handler.airflow * CABIN_AIR_DENSITY * share
        met = flow * (1.0 - bypass_factor(handler.bypass_factor, share))
        demand[i] = met * CP_AIR * float(call)
        fan[i] = running_share(float(call)) * fan_power(handler.fan_power, share)
        air[i] = running_share(float(call)) * flow
    return demand, fan, air


def handlers_as(
    handlers: tuple[Handler, ...],
    the_map: PlantMap,
    *,
    lowest: float,
    highest: float,
    degradation: float,
    pump_power: float,
    standby_power: float,
    fans: float = 1.0,
) -> Plant:
    """Handlers on a plant of that map; `fans` multiplies the fans' heat."""
    tables = [handler_tables(handler) for handler in handlers]
    further = [(h, o) for h, handler in enumerate(handlers) for o in handler.outlets if o.cabin != handler.cabin]
    own = [
        sum(o.share for o in handler.outlets if o.cabin == handler.cabin) if handler.outlets else 1.0
        for handler in handlers
    ]
    shape = (1, len(handlers), CALLS)
    return Plant(
        handler_cabin=np.array([h.cabin for h in handlers], dtype=np.int64),
        handler_own=np.array([own]),
        outlet_handler=np.array([h for h, _ in further], dtype=np.int64),
        outlet_cabin=np.array([o.cabin for _, o in further], dtype=np.int64),
        outlet_share=np.array([[o.share for _, o in further]]),
        handler_air=np.array([a for _, _, a in tables]).reshape(shape),
        handler_demand=np.array([d for d, _, _ in tables]).reshape(shape),
        handler_fan=fans * np.array([f for _, f, _ in tables]).reshape(shape),
        handler_approach=np.array([[h.approach for h in handlers]]),
        handler_band=np.array([[h.band for h in handlers]]),
        handler_priority=np.array([[h.priority for h in handlers]]),
        lowest_evaporating=np.array([lowest]),
        highest_evaporating=np.array([highest]),
        degradation=np.array([degradation]),
        pump_power=np.array([pump_power]),
        standby_power=np.array([standby_power]),
        plant_capacity=the_map.capacity[None],
        plant_power=the_map.power[None],
    )


@lru_cache(maxsize=16)
def shared_plant(plant: SharedPlant) -> Plant:
    """The shared plant as it cools."""
    circuit = plant.circuit
    return handlers_as(
        plant.handlers,
        plant_map(circuit),
        lowest=circuit.lowest_evaporating,
        highest=circuit.highest_evaporating,
        degradation=circuit.degradation,
        pump_power=plant.pump_power,
        standby_power=plant.standby_power,
    )


@lru_cache(maxsize=16)
def shared_plant_heating(plant: SharedPlant) -> Plant:
    """The shared plant as it heats, told upside down: see `simulation.cooling`."""
    return handlers_as(
        plant.handlers,
        heating_map(plant.circuit),
        lowest=MIRROR - plant.highest_heating_condensing,
        highest=MIRROR - plant.lowest_heating_condensing,
        degradation=plant.circuit.degradation,
        pump_power=plant.pump_power,
        standby_power=plant.standby_power,
        fans=-1.0,
    )


def chilled_water_plant(chilled: ChilledWaterPlant) -> Plant:
    """A chiller whose water meets every coil at one temperature.

    To the coils the water's mean temperature is what evaporating is to the shared plant's, and it does not float.
    The chiller itself boils its refrigerant an approach below the water that it sends out; the water pump's heat
    comes out of its capacity.
    """
    made = plant_map(chilled.circuit)
    mean = chilled.supply_temperature + 0.5 * chilled.water_rise
    lower = (mean - chilled.supply_temperature + chilled.evaporator_approach) / EVAPORATING_STEP
    rows = np.clip(np.arange(EVAPORATING_COUNT) - lower, 0.0, EVAPORATING_COUNT - 1.0)
    first = np.minimum(rows.astype(int), EVAPORATING_COUNT - 2)
    part = (rows - first)[:, None, None]
    capacity, power = ((1.0 - part) * table[first] + part * table[first + 1] for table in (made.capacity, made.power))
    left = np.maximum(0.0, capacity - chilled.water_pump_power)
    return handlers_as(
        chilled.fan_coils,
        replace(made, capacity=left, power=power),
        lowest=mean,
        highest=mean,
        degradation=chilled.circuit.degradation,
        pump_power=chilled.sea_pump_power,
        standby_power=chilled.standby_power + chilled.water_pump_power,
    )


@lru_cache(maxsize=16)
def self_contained_units(alternative: SelfContainedPlant | None) -> Units:
    """Self-contained units; none where the design names none."""
    units = alternative.units if alternative else ()
    maps = [plant_map(unit.circuit) for unit in units]
    shape = (1, len(units), EVAPORATING_COUNT, SEA_COUNT, 1)
    return Units(
        unit_cabin=np.array([u.cabin for u in units], dtype=np.int64),
        unit_flow=np.array([[u.airflow * CABIN_AIR_DENSITY * (1.0 - u.bypass_factor) for u in units]]),
        unit_fan=np.array([[u.fan_power for u in units]]),
        unit_approach=np.array([[u.approach for u in units]]),
        unit_hysteresis=np.array([[u.hysteresis for u in units]]),
        unit_degradation=np.array([[u.circuit.degradation for u in units]]),
        unit_capacity=np.array([m.capacity for m in maps]).reshape(shape),
        unit_power=np.array([m.power for m in maps]).reshape(shape),
        unit_pump=np.array([alternative.pump_power if alternative else 0.0]),
    )
