"""A specification as the kernel's arrays."""

from __future__ import annotations

import math

import numpy as np

from anchorwatt.design.specification import Converter, Handler, Outside, Specification
from anchorwatt.physics.air_handler import airflow_share, running_share
from anchorwatt.physics.alternator import REFERENCE_SPEED
from anchorwatt.physics.coil import bypass_factor
from anchorwatt.physics.envelope import INSIDE_RADIATION, discretise, inside_convection
from anchorwatt.physics.fan import fan_power
from anchorwatt.physics.moist_air import CP_AIR, density, humidity_ratio
from anchorwatt.simulation.arrays import (
    TO_CABIN,
    TO_NOTHING,
    TO_OUTSIDE,
    Boat,
    Fabric,
    Floats,
    Plant,
    Power,
    Units,
)
from anchorwatt.simulation.plant import CALLS, EVAPORATING_COUNT, SEA_COUNT
from anchorwatt.simulation.plant_map import plant_map

STANDARD_PRESSURE = 101_325.0
CABIN_AIR_DENSITY = density(25.0, humidity_ratio(25.0, 0.5, STANDARD_PRESSURE), STANDARD_PRESSURE)
"""kg of dry air per m³ in a cabin; held constant, 1 % over the range of a cabin's temperatures."""

UPRIGHT = math.pi / 2


def handler_tables(handler: Handler) -> tuple[Floats, Floats]:
    """A handler's sensible demand (W/K) and fan power (W) over the even grid of calls.

    The demand is the heat taken for each kelvin between cabin and the coldest coil: below the cycling call
    the handler runs part of the time at lowest fan, above it fan and valve open together.
    """
    demand, fan = np.empty(CALLS), np.empty(CALLS)
    for i, call in enumerate(np.linspace(0.0, 1.0, CALLS)):
        share = airflow_share(float(call), handler.lowest_fan)
        flow = handler.airflow * CABIN_AIR_DENSITY * share
        met = flow * (1.0 - bypass_factor(handler.bypass_factor, share))
        demand[i] = met * CP_AIR * float(call)
        fan[i] = running_share(float(call)) * fan_power(handler.fan_power, share)
    return demand, fan


def _converter(converter: Converter | None, width: int) -> list[float]:
    if converter is None:
        return [0.0] * width
    values = [
        converter.rated_power,
        converter.no_load_power,
        converter.linear,
        converter.quadratic,
        converter.sleep_power,
    ]
    return values[:width]


def _padded(rows: list[tuple[float, ...]]) -> Floats:
    """Rows of a table as one array; short rows repeat their last point."""
    width = max((len(row) for row in rows), default=1)
    return np.array([[*row, *[row[-1]] * (width - len(row))] for row in rows]).reshape(len(rows), width)


def boat_arrays(specification: Specification) -> Boat:
    """The specification as the one variant of a `Boat`."""
    cabins = specification.cabins
    first, kinds, near, far = [0], [], [], []
    capacities: list[float] = []
    conductances: list[float] = []
    near_convection, near_radiation, far_convection, far_radiation = [], [], [], []

    def add(layers: object, area: float, kind: int, cabin: int, far_cabin: int, tilt: float) -> None:
        nodes = discretise([(x.thickness, x.conductivity, x.density, x.specific_heat) for x in layers])  # type: ignore[attr-defined]
        capacities.extend(area * c for c in nodes.capacities)
        conductances.extend([*(area * g for g in nodes.conductances), 0.0])
        first.append(len(capacities))
        kinds.append(kind)
        near.append(cabin)
        far.append(far_cabin)
        convection = area * inside_convection(tilt)
        between = kind == TO_CABIN
        near_convection.append(convection)
        near_radiation.append(area * INSIDE_RADIATION)
        far_convection.append(convection if between else 0.0)
        far_radiation.append(area * INSIDE_RADIATION if between else 0.0)

    for c, cabin in enumerate(cabins):
        for surface in cabin.surfaces:
            kind = TO_NOTHING if surface.outside is Outside.NOTHING else TO_OUTSIDE
            add(surface.layers, surface.area, kind, c, -1, surface.tilt)
    exchange = np.zeros((len(cabins), len(cabins)))
    for partition in specification.partitions:
        a, b = partition.cabins
        if partition.area > 0.0:
            add(partition.layers, partition.area, TO_CABIN, b, a, UPRIGHT)
        exchange[a, b] += partition.air_exchange * CABIN_AIR_DENSITY
        exchange[b, a] += partition.air_exchange * CABIN_AIR_DENSITY

    plant = specification.plant
    handlers = plant.handlers
    tables = [handler_tables(handler) for handler in handlers]
    the_map = plant_map(plant.circuit)
    alternative = specification.alternative
    units = alternative.units if alternative else ()
    unit_maps = [plant_map(unit.circuit) for unit in units]
    bank = specification.bank
    transformer, solar = specification.transformer, specification.solar
    machines = [(g, machine) for g, engine in enumerate(specification.engines) for machine in engine.alternators]

    air_mass = np.array([cabin.volume * CABIN_AIR_DENSITY for cabin in cabins])
    return Boat(
        fabric=Fabric(
            wall_first=np.array(first, dtype=np.int64),
            wall_kind=np.array(kinds, dtype=np.int64),
            wall_cabin=np.array(near, dtype=np.int64),
            wall_far_cabin=np.array(far, dtype=np.int64),
            node_capacity=np.array([capacities]),
            node_conductance=np.array([conductances]),
            near_convection=np.array([near_convection]),
            near_radiation=np.array([near_radiation]),
            far_convection=np.array([far_convection]),
            far_radiation=np.array([far_radiation]),
            air_mass=air_mass[None],
            moisture_mass=(air_mass * [cabin.moisture_factor for cabin in cabins])[None],
            furnishing_capacity=np.array([[cabin.furnishing_heat_capacity for cabin in cabins]]),
            furnishing_convection=np.array([[cabin.furnishing_area * inside_convection(UPRIGHT) for cabin in cabins]]),
            furnishing_radiation=np.array([[cabin.furnishing_area * INSIDE_RADIATION for cabin in cabins]]),
            window_conductance=np.array([[sum(w.area * w.u_value for w in cabin.windows) for cabin in cabins]]),
            outdoor_flow=np.array(
                [[(cabin.leakage * cabin.volume + cabin.fresh_air) * CABIN_AIR_DENSITY for cabin in cabins]]
            ),
            exchange=exchange[None],
        ),
        plant=Plant(
            handler_cabin=np.array([h.cabin for h in handlers], dtype=np.int64),
            handler_demand=np.array([d for d, _ in tables]).reshape(1, len(handlers), CALLS),
            handler_fan=np.array([f for _, f in tables]).reshape(1, len(handlers), CALLS),
            handler_approach=np.array([[h.approach for h in handlers]]),
            handler_band=np.array([[h.band for h in handlers]]),
            handler_priority=np.array([[h.priority for h in handlers]]),
            lowest_evaporating=np.array([plant.circuit.lowest_evaporating]),
            highest_evaporating=np.array([plant.circuit.highest_evaporating]),
            degradation=np.array([plant.circuit.degradation]),
            pump_power=np.array([plant.pump_power]),
            standby_power=np.array([plant.standby_power]),
            plant_capacity=the_map.capacity[None],
            plant_power=the_map.power[None],
        ),
        units=Units(
            unit_cabin=np.array([u.cabin for u in units], dtype=np.int64),
            unit_flow=np.array([[u.airflow * CABIN_AIR_DENSITY * (1.0 - u.bypass_factor) for u in units]]),
            unit_fan=np.array([[u.fan_power for u in units]]),
            unit_approach=np.array([[u.approach for u in units]]),
            unit_hysteresis=np.array([[u.hysteresis for u in units]]),
            unit_degradation=np.array([[u.circuit.degradation for u in units]]),
            unit_capacity=np.array([m.capacity for m in unit_maps]).reshape(
                1, len(units), EVAPORATING_COUNT, SEA_COUNT, 1
            ),
            unit_power=np.array([m.power for m in unit_maps]).reshape(1, len(units), EVAPORATING_COUNT, SEA_COUNT, 1),
            unit_pump=np.array([alternative.pump_power if alternative else 0.0]),
        ),
        power=Power(
            transformer=np.array(
                [
                    [transformer.rated_power, transformer.core_loss, transformer.copper_loss]
                    if transformer
                    else [0.0] * 3
                ]
            ),
            inverter=np.array([_converter(specification.inverter, 5)]),
            charger=np.array([_converter(specification.charger, 4)]),
            shore_power=np.array([specification.shore.continuous_power if specification.shore else 0.0]),
            bank=np.array(
                [
                    [
                        bank.capacity,
                        bank.resistance,
                        bank.charge_current,
                        bank.discharge_current,
                        bank.absorb_voltage,
                        bank.cut_off_voltage,
                        bank.cut_off_charge,
                        bank.temperature,
                    ]
                ]
            ),
            bank_charge=np.array([bank.charge_points]),
            bank_voltage=np.array([bank.open_circuit_voltages]) * bank.cells,
            bank_factor=np.array([bank.resistance_points]),
            solar=np.array(
                [
                    [solar.peak_power, solar.temperature_coefficient, solar.rise, solar.delivered_share]
                    if solar
                    else [0.0] * 4
                ]
            ),
            engine=np.array(
                [
                    [
                        engine.rated_power,
                        engine.rated_speed,
                        engine.propeller_power,
                        engine.propeller_exponent,
                        engine.margin,
                        engine.indicated_efficiency,
                        engine.friction_pressure,
                        engine.displacement,
                        engine.air_temperature,
                    ]
                    for engine in specification.engines
                ]
            ).reshape(1, len(specification.engines), 9),
            engine_speeds=_padded([engine.curve_speeds for engine in specification.engines])[None],
            engine_powers=_padded([engine.curve_powers for engine in specification.engines])[None],
            alternator_engine=np.array([g for g, _ in machines], dtype=np.int64),
            alternator=np.array(
                [
                    [
                        machine.rated_current,
                        machine.hot_loss,
                        machine.efficiency,
                        machine.pulley_ratio,
                        machine.winding_capacity,
                        machine.frame_capacity,
                        machine.winding_conductance,
                        machine.frame_conductance,
                        REFERENCE_SPEED,
                        machine.belt_power,
                        machine.belt_speed,
                        machine.current_limit,
                        machine.hold_temperature,
                        machine.fold_band,
                        1.0 / len(specification.engines[g].alternators),
                    ]
                    for g, machine in machines
                ]
            ).reshape(1, len(machines), 15),
            alternator_speeds=_padded([machine.speeds for _, machine in machines])[None],
            alternator_currents=_padded([machine.currents for _, machine in machines])[None],
        ),
    )
