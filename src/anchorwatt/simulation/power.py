"""Buses, bank, engines and alternators of a specification as the kernel's arrays."""

from __future__ import annotations

import numpy as np

from anchorwatt.design.specification import Converter, Specification
from anchorwatt.physics.alternator import REFERENCE_SPEED
from anchorwatt.simulation.arrays import (
    ALTERNATOR_HOLD,
    ALTERNATOR_LIMIT,
    ALTERNATOR_SHARE,
    ENGINE_AIR,
    Floats,
    Power,
)

BEYOND_ALL = 1e6
"""°C that no alternator reaches."""


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


def _inverter(inverter: Converter) -> list[float]:
    return [*_converter(inverter, 5), inverter.full_to, inverter.derating, inverter.highest_air]


def _padded(rows: list[tuple[float, ...]]) -> Floats:
    """Rows of a table as one array; short rows repeat their last point."""
    width = max((len(row) for row in rows), default=1)
    return np.array([[*row, *[row[-1]] * (width - len(row))] for row in rows]).reshape(len(rows), width)


def power_arrays(specification: Specification) -> Power:
    """The electrical side of a specification."""
    bank, engines = specification.bank, specification.engines
    transformer, charger, solar = specification.transformer, specification.charger, specification.solar
    machines = [(g, machine) for g, engine in enumerate(engines) for machine in engine.alternators]
    return Power(
        transformer=np.array(
            [[transformer.rated_power, transformer.core_loss, transformer.copper_loss] if transformer else [0.0] * 3]
        ),
        inverter=np.array([_inverter(specification.inverter)]),
        overload_share=np.array([specification.inverter.overload_shares], dtype=float).reshape(1, -1),
        overload_time=np.array([specification.inverter.overload_times], dtype=float).reshape(1, -1),
        charger=np.array([_converter(charger, 4)]),
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
                    bank.lowest_charge_temperature,
                    bank.highest_charge_temperature,
                    bank.lowest_discharge_temperature,
                    bank.highest_discharge_temperature,
                    bank.heat_capacity,
                    bank.heat_conductance,
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
                for engine in engines
            ]
        ).reshape(1, len(engines), 9),
        engine_speeds=_padded([engine.curve_speeds for engine in engines])[None],
        engine_powers=_padded([engine.curve_powers for engine in engines])[None],
        heat_cabin=np.array(
            [
                specification.inverter.cabin,
                transformer.cabin if transformer else -1,
                charger.cabin if charger else -1,
                bank.cabin,
            ],
            dtype=np.int64,
        ),
        engine_cabin=np.array([engine.cabin for engine in engines], dtype=np.int64),
        engine_block=np.array([[e.block_capacity, e.block_conductance, e.block_temperature] for e in engines]).reshape(
            1, len(engines), 3
        ),
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
                    1.0 / len(engines[g].alternators),
                ]
                for g, machine in machines
            ]
        ).reshape(1, len(machines), 15),
        alternator_speeds=_padded([machine.speeds for _, machine in machines])[None],
        alternator_currents=_padded([machine.currents for _, machine in machines])[None],
    )


def without_alternators(power: Power, lost: tuple[int, ...]) -> Power:
    """The same boat with some of its alternators out of work; what they leave of the engine goes to the others."""
    machines = power.alternator.copy()
    for a in lost:
        machines[:, a, ALTERNATOR_LIMIT] = 0.0
    for a in range(machines.shape[1]):
        engine = power.alternator_engine[a]
        left = [b for b in range(machines.shape[1]) if power.alternator_engine[b] == engine and b not in lost]
        machines[:, a, ALTERNATOR_SHARE] = 1.0 / len(left) if a in left else 0.0
    return power._replace(alternator=machines)


def without_fold_back(power: Power) -> Power:
    """The same boat with regulators that take no notice of temperature."""
    machines = power.alternator.copy()
    machines[:, :, ALTERNATOR_HOLD] = BEYOND_ALL
    return power._replace(alternator=machines)


def with_engine_air(power: Power, air: float) -> Power:
    """The same boat with air of that temperature, °C, round all its alternators."""
    engines = power.engine.copy()
    engines[:, :, ENGINE_AIR] = air
    return power._replace(engine=engines)
