"""What the bank is made of, and what the night, the day and the recharge ask of it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.battery import (
    bank_resistance,
    current_for_power,
    open_circuit_voltage,
    stored_energy,
    terminal_voltage,
)
from anchorwatt.physics.inverter import converter_input
from anchorwatt.simulation.runs import Run, Simulation


@dataclass(frozen=True)
class BankWindow:
    """The bank as it is built, and the part of it that a night may use."""

    nominal_energy: float  # J, capacity at nominal voltage
    stored_energy: float  # J from empty to full, at no current
    usable_energy: float  # J from the charge when nights begin to the reserve, at no current
    charge_at_start: float
    reserve: float
    cell_cut_off: float  # V a cell
    cell_absorb: float  # V a cell
    rest_at_start: float  # V of the bank at rest at the charge when nights begin
    rest_at_reserve: float  # V of the bank at rest at the reserve


@dataclass(frozen=True)
class RunTemperatures:
    """The cells through one run."""

    name: str
    first: float  # °C of the cells
    coldest: float
    hottest: float
    lost: float  # J that the bank turned to heat in itself
    highest_current: float  # A, out by night, in while charging
    highest_voltage: float  # V
    lowest_voltage: float  # V


@dataclass(frozen=True)
class BankState:
    """What the runs ask of the bank."""

    window: BankWindow
    night: RunTemperatures
    day: RunTemperatures
    recharge: RunTemperatures | None
    peak_power: float  # W at the bank, night or day, inverter and DC loads at their highest together
    peak_current: float  # A of that, at the nominal voltage
    voltage_at_reserve: (
        float  # V at that power, at the reserve, cells as cold as by night, at the warranty's end; 0 = no
    )
    alternators: float  # A that all alternators give cold, at their settings
    charger_and_sun: float  # A of the charger and, at full sun, the panels together


def bank_state(specification: Specification, simulation: Simulation) -> BankState:
    """The bank's build, and what night, day and recharge ask of it."""
    night, day = (_through(run, charging=False) for run in (simulation.night, simulation.day))
    recharge = None if simulation.recharge is None else _through(simulation.recharge, charging=True)
    peak = peak_power(specification, simulation)
    return BankState(
        window=bank_window(specification),
        night=night,
        day=day,
        recharge=recharge,
        peak_power=peak,
        peak_current=peak / specification.bank.nominal_voltage,
        voltage_at_reserve=_voltage_at_reserve(specification, peak, night.coldest),
        alternators=sum(
            min(one.rated_current, one.current_limit) for engine in specification.engines for one in engine.alternators
        ),
        charger_and_sun=charger_and_sun(specification),
    )


def bank_window(specification: Specification) -> BankWindow:
    """The bank as it is built, and the part of it that a night may use."""
    bank, brief = specification.bank, specification.brief

    def stored(charge: float) -> float:
        return bank.cells * stored_energy(charge, bank.charge_points, bank.open_circuit_voltages, bank.capacity)

    def rest(charge: float) -> float:
        return bank.cells * open_circuit_voltage(charge, bank.charge_points, bank.open_circuit_voltages)

    return BankWindow(
        nominal_energy=bank.capacity * bank.nominal_voltage,
        stored_energy=stored(1.0),
        usable_energy=stored(brief.charge_at_start) - stored(brief.reserve),
        charge_at_start=brief.charge_at_start,
        reserve=brief.reserve,
        cell_cut_off=bank.cut_off_voltage / bank.cells,
        cell_absorb=bank.absorb_voltage / bank.cells,
        rest_at_start=rest(brief.charge_at_start),
        rest_at_reserve=rest(brief.reserve),
    )


def peak_power(specification: Specification, simulation: Simulation) -> float:
    """W from the bank when inverter and DC loads draw their most of night and day together, nothing charging."""
    inverter, runs = specification.inverter, (simulation.night, simulation.day)
    output = max(float(run.summary.peak_inverter_power[0]) for run in runs)
    drawn = inverter.sleep_power
    if output > 0.0:
        drawn = converter_input(
            output, inverter.rated_power, inverter.no_load_power, inverter.linear, inverter.quadratic
        )
    return drawn + max(float(np.max(run.forcing.dc_load[0])) for run in runs)


def charger_and_sun(specification: Specification) -> float:
    """A of the charger on shore power and of the panels in full sun."""
    bank, solar, charger = specification.bank, specification.solar, specification.charger
    watts = 0.0 if solar is None else solar.peak_power * solar.delivered_share
    if charger is not None and specification.shore is not None:
        watts += charger.rated_power
    return watts / bank.nominal_voltage


def _through(run: Run, charging: bool) -> RunTemperatures:
    series = run.series
    cells, current, voltage = series.bank_temperature[0], series.current[0], series.voltage[0]
    return RunTemperatures(
        name=run.name,
        first=float(cells[0]),
        coldest=float(cells.min()),
        hottest=float(cells.max()),
        lost=float(run.summary.bank_loss[0]),
        highest_current=max(0.0, float(-current.min() if charging else current.max())),
        highest_voltage=float(voltage.max()),
        lowest_voltage=float(voltage.min()),
    )


def _voltage_at_reserve(specification: Specification, power: float, temperature: float) -> float:
    bank, charge = specification.bank, specification.brief.reserve
    voltage = bank.cells * open_circuit_voltage(charge, bank.charge_points, bank.open_circuit_voltages)
    aged = bank.resistance * bank.aged_resistance
    resistance = bank_resistance(aged, charge, bank.charge_points, bank.resistance_points, temperature)
    try:
        return terminal_voltage(current_for_power(power, voltage, resistance), voltage, resistance)
    except OutOfRange:
        return 0.0
