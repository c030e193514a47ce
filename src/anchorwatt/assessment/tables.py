"""Runs as tables of columns."""

from __future__ import annotations

import numpy as np

from anchorwatt.assessment.records import Column, Table
from anchorwatt.design.specification import Specification
from anchorwatt.physics.engine import DIESEL_DENSITY
from anchorwatt.physics.moist_air import relative_humidity
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.runs import Run


def humidity_share(run: Run, cabin: int) -> Floats:
    """Relative humidity of a cabin through a run, 0 to 1."""
    pressure = float(run.forcing.pressure[0])
    return np.array(
        [
            relative_humidity(float(air), float(wet), pressure)
            for air, wet in zip(run.series.air[0, cabin], run.series.humidity[0, cabin], strict=True)
        ]
    )


def _bank_and_plant(run: Run) -> tuple[Column, ...]:
    """What every table of a run begins with."""
    series = run.series
    return (
        Column("charge_pct", "state of charge", "share", series.charge[0]),
        Column("bank_current_A", "bank current, out positive", "current", series.current[0]),
        Column("bank_voltage_V", "bank voltage", "voltage", series.voltage[0]),
        Column("plant_power_W", "cooling plant", "power", series.plant_power[0]),
    )


def run_table(specification: Specification, run: Run) -> Table:
    """Bank, plant, cabins and weather through a run."""
    series = run.series
    columns = [
        *_bank_and_plant(run),
        Column("plant_cooling_W", "cooling given", "heat flow", series.plant_load[0]),
        Column("evaporating_temperature_C", "evaporating temperature", "temperature", series.evaporating[0]),
        Column("inverter_power_W", "inverter output", "power", series.inverter_output[0]),
        Column("inverter_input_W", "inverter input", "power", series.inverter_input[0]),
        Column("dc_load_W", "DC loads", "power", series.dc_load[0]),
        Column("solar_W", "solar", "power", series.solar[0]),
        Column("shore_W", "shore power", "power", series.shore[0]),
        Column("charger_W", "charger output", "power", series.charger[0]),
        Column("outdoor_temperature_C", "outdoor air", "temperature", run.forcing.dry_bulb[0, 1:]),
        Column("sea_temperature_C", "seawater", "temperature", run.forcing.sea[0, 1:]),
    ]
    for c, cabin in enumerate(specification.cabins):
        columns += [
            Column(f"air_temperature_C.{cabin.name}", f"{cabin.name} air", "temperature", series.air[0, c]),
            Column(
                f"relative_humidity_pct.{cabin.name}",
                f"{cabin.name} humidity",
                "share",
                humidity_share(run, c),
            ),
            Column(
                f"sensible_W.{cabin.name}",
                f"{cabin.name} sensible cooling",
                "heat flow",
                series.sensible[0, c],
            ),
            Column(f"latent_W.{cabin.name}", f"{cabin.name} latent cooling", "heat flow", series.latent[0, c]),
        ]
    return Table(run.name, run.clock, tuple(columns))


def recharge_table(specification: Specification, run: Run) -> Table:
    """Bank and alternators while the engines put the night back."""
    series = run.series
    columns = [
        *_bank_and_plant(run),
        Column("fuel_flow_L_per_h", "fuel burnt", "fuel flow", series.fuel_flow[0] / DIESEL_DENSITY),
    ]
    machines = [m for engine in specification.engines for m in engine.alternators]
    for a, machine in enumerate(machines):
        columns += [
            Column(
                f"alternator_current_A.{machine.name}",
                f"{machine.name} current",
                "current",
                series.alternator_current[0, a],
            ),
            Column(
                f"winding_temperature_C.{machine.name}",
                f"{machine.name} winding",
                "temperature",
                series.alternator_winding[0, a],
            ),
            Column(
                f"frame_temperature_C.{machine.name}",
                f"{machine.name} frame",
                "temperature",
                series.alternator_frame[0, a],
            ),
        ]
    return Table(run.name, run.clock, tuple(columns))
