"""The regulator's set-up sheet: what an alternator may be set to give at each engine speed, and what says so.

Every limit is that of the time kernel (`simulation.electric`), asked for the state in which it has settled.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from anchorwatt.design.specification import Alternator, Engine, Specification
from anchorwatt.physics.alternator import (
    REFERENCE_SPEED,
    alternator_losses,
    cold_current,
    current_for_shaft_power,
    fold_back,
    frame_cooling,
    frame_heat,
    hot_factor,
    shaft_power,
    steady_temperatures,
    winding_heat,
)
from anchorwatt.physics.battery import acceptance, bank_resistance, open_circuit_voltage
from anchorwatt.physics.belt import belt_power_limit
from anchorwatt.physics.belt_drive import belt_speed, effective_tension, shaft_load, side_tensions
from anchorwatt.physics.engine import full_load_power, spare_power
from anchorwatt.physics.excitation import field_share
from anchorwatt.physics.propeller import propeller_demand
from anchorwatt.simulation.runs import Simulation

ROWS = 12
SPEED_STEP = 50.0 * math.pi / 30.0
"""rad/s of which the steps between rows are multiples."""
HALF_CHARGED = 0.5
"""State of charge at which the bank is asked what it takes: the flat middle of its curve."""
WARM_CELLS = 25.0
"""°C of the cells at which it is asked."""
BURNT = 400.0
"""°C of a winding beyond which `physics.alternator` does not tell."""
BLIND = 1e6
"""°C of a held temperature that takes no notice of heat."""
COLDEST_AIR = -50.0
"""°C below which no engine space is looked at."""
PROBES = (25.0, 125.0)
"""°C of the winding between which losses, straight in that temperature, are read."""

CURVE, SETTING, BELT, ENGINE, BANK, HEAT = (
    "its own curve",
    "its current limit",
    "the belt",
    "the engine",
    "the bank",
    "heat",
)


@dataclass(frozen=True)
class Settled:
    """An alternator after a long time at one speed."""

    current: float  # A
    winding: float  # °C
    frame: float  # °C


@dataclass(frozen=True)
class RegulatorRow:
    """One engine speed of the sheet."""

    engine_speed: float  # rad/s
    rotor_speed: float  # rad/s
    cold: float  # A that the curve gives, cold
    hot: float  # A that it settles at when nothing but heat and the held temperature limits it
    hot_winding: float  # °C then
    belt: float  # A that the belt carries
    at_anchor: float  # A that the engine leaves with the propeller at rest
    under_way: float  # A that it leaves with the propeller turning
    bank: float  # A that the bank takes of this machine
    asked: float  # A that a single current limit would let it give, cold
    asked_power: float  # W of shaft that those take, windings hot
    spare: float  # W of shaft that the engine leaves it, the propeller turning
    set_current: float  # A to set at this speed
    field: float  # share of the full field that this needs, cold
    governs: str  # the limit that set_current comes from
    lasting: Settled  # what comes of it after a long time
    lasting_governs: str  # what holds it then


@dataclass(frozen=True)
class BeltPull:
    """What an alternator's belt does to the shafts, at the heaviest of the sheet's rows."""

    engine_speed: float  # rad/s of that row
    velocity: float  # m/s of the belt there
    effective: float  # N, tight less slack side
    allowed: float  # N of that which the belt carries
    tight: float  # N
    slack: float  # N
    load: float  # N sideways on both shafts, sides parallel


@dataclass(frozen=True)
class RegulatorSheet:
    """What one alternator's regulator is to be set to, by engine speed."""

    engine: int  # which of the specification's
    machine: int  # which of the engine's
    place: int  # which of all alternators aboard, in order
    air: float  # °C round it
    voltage: float  # V at which amperes are told: the bank's absorb voltage
    bank_current: float  # A that the bank takes of this machine
    rows: tuple[RegulatorRow, ...]
    pull: BeltPull

    def at(self, engine_speed: float) -> RegulatorRow:
        """The row nearest to an engine speed, rad/s."""
        return min(self.rows, key=lambda row: abs(row.engine_speed - engine_speed))

    @property
    def highest(self) -> float:
        """A, the most that any row allows."""
        return max(row.set_current for row in self.rows)

    @property
    def hottest_winding(self) -> float:
        """°C at which the winding settles at worst, the held temperature alone looking after it."""
        return max(row.hot_winding for row in self.rows)


@dataclass(frozen=True)
class SideLoad:
    """All belts of one engine on the front of its crankshaft, as if they pulled the same way."""

    engine: int
    load: float  # N
    limit: float  # N that the maker allows, nan = not asked yet


def temperatures(machine: Alternator, current: float, voltage: float, rotor: float, air: float) -> tuple[float, float]:
    """Winding and frame, °C, after a long time at a current; infinite where heat feeds on itself."""

    def settle(winding: float) -> tuple[float, float]:
        losses = 0.0
        if current > 0.0:
            losses = alternator_losses(current, voltage, rotor, winding, machine.rated_current, machine.efficiency)
        cooling = frame_cooling(machine.frame_conductance, rotor, REFERENCE_SPEED)
        return steady_temperatures(air, winding_heat(losses), frame_heat(losses), machine.winding_conductance, cooling)

    # Losses grow in a straight line with the winding's temperature, so two probes tell where it settles.
    cool, warm = PROBES
    (from_cool, frame_cool), (from_warm, frame_warm) = settle(cool), settle(warm)
    slope = (from_warm - from_cool) / (warm - cool)
    if slope >= 1.0:
        return math.inf, math.inf
    winding = cool + (from_cool - cool) / (1.0 - slope)
    return winding, frame_cool + (frame_warm - frame_cool) * (winding - cool) / (warm - cool)


def settled(
    machine: Alternator,
    voltage: float,
    rotor: float,
    air: float,
    power: float = math.inf,
    setting: float = math.inf,
) -> Settled:
    """Where an alternator settles under the regulator's law of the time kernel.

    Parameters
    ----------
    machine
    voltage : V
    rotor : rad/s
    air : °C round it
    power : W at the shaft that belt and engine allow
    setting : A that the regulator is set to
    """
    cold = cold_current(rotor, machine.speeds, machine.currents, machine.rated_current)
    low, high = 0.0, min(cold, setting)
    for _ in range(60):
        current = 0.5 * (low + high)
        winding, frame = temperatures(machine, current, voltage, rotor, air)
        if winding > BURNT:
            high = current
            continue
        least = min(setting, cold * hot_factor(winding, machine.hot_loss))
        if math.isfinite(power):
            least = min(least, _at_power(machine, power, voltage, rotor, winding))
        if least * fold_back(frame, machine.hold_temperature, machine.fold_band) >= current:
            low = current
        else:
            high = current
    return Settled(low, *temperatures(machine, low, voltage, rotor, air))


def air_that_reaches_hold(machine: Alternator, voltage: float, rotor: float, power: float, setting: float) -> float:
    """°C of the air round an alternator above which its regulator must fold back in the end, at that speed.

    Parameters
    ----------
    machine
    voltage : V
    rotor : rad/s
    power : W at the shaft that belt and engine allow
    setting : A that the regulator is set to
    """
    blind = replace(machine, hold_temperature=BLIND)
    low, high = COLDEST_AIR, machine.hold_temperature
    for _ in range(50):
        air = 0.5 * (low + high)
        if settled(blind, voltage, rotor, air, power, setting).frame < machine.hold_temperature:
            low = air
        else:
            high = air
    return low


def _at_power(machine: Alternator, power: float, voltage: float, rotor: float, winding: float) -> float:
    return current_for_shaft_power(power, voltage, rotor, winding, machine.rated_current, machine.efficiency)


def _power(machine: Alternator, current: float, voltage: float, rotor: float, winding: float) -> float:
    if current <= 0.0:
        return 0.0
    return shaft_power(current, voltage, rotor, winding, machine.rated_current, machine.efficiency)


def row_speeds(engine: Engine) -> tuple[float, ...]:
    """Engine speeds of the sheet, rad/s: idle, whole steps, the charging speed, rated."""
    span = engine.rated_speed - engine.idle_speed
    step = max(1.0, math.ceil(span / (ROWS - 1) / SPEED_STEP - 1e-9)) * SPEED_STEP
    first = math.floor(engine.idle_speed / step + 1e-9) + 1
    steps = [number * step for number in range(first, first + ROWS + 1)]
    between = [speed for speed in steps if engine.idle_speed < speed < engine.rated_speed]
    speeds = sorted({engine.idle_speed, *between, engine.charging_speed, engine.rated_speed})
    apart = [a for a, b in pairwise(speeds) if b - a > 1e-6 * b]
    return (*apart, speeds[-1])


def bank_takes(specification: Specification) -> float:
    """A that the bank takes, half charged and warm."""
    bank = specification.bank
    resistance = bank_resistance(bank.resistance, HALF_CHARGED, bank.charge_points, bank.resistance_points, WARM_CELLS)
    voltage = bank.cells * open_circuit_voltage(HALF_CHARGED, bank.charge_points, bank.open_circuit_voltages)
    return acceptance(
        voltage,
        resistance,
        bank.charge_current,
        bank.absorb_voltage,
        WARM_CELLS,
        bank.lowest_charge_temperature,
        bank.highest_charge_temperature,
    )


def air_round(specification: Specification, simulation: Simulation) -> tuple[float, ...]:
    """°C round the alternators of each engine: as typed, else the warmest of its compartment while it recharges."""
    run = simulation.recharge
    airs = []
    for engine in specification.engines:
        air = engine.air_temperature
        if math.isnan(air) and run is not None:
            air = float(np.max(run.series.air[0, engine.cabin]))
        airs.append(air)
    return tuple(airs)


def spare_for_one(engine: Engine, speed: float, propelling: bool) -> float:
    """W at the crankshaft that an engine leaves for each of its alternators."""
    pushing = 0.0
    if propelling:
        pushing = propeller_demand(speed, engine.rated_speed, engine.propeller_power, engine.propeller_exponent)
    able = full_load_power(speed, engine.rated_speed, engine.rated_power, engine.curve_speeds, engine.curve_powers)
    return spare_power(able, pushing, engine.margin) / len(engine.alternators)


def _row(engine: Engine, machine: Alternator, speed: float, voltage: float, air: float, bank: float) -> RegulatorRow:
    rotor = speed * machine.pulley_ratio
    cold = cold_current(rotor, machine.speeds, machine.currents, machine.rated_current)
    hot = settled(machine, voltage, rotor, air)
    belt_power = belt_power_limit(machine.belt_power, machine.belt_speed, rotor)
    left = spare_for_one(engine, speed, True)
    # A hot winding loses more, so that the same shaft power gives fewer amperes: the safe side.
    belt, anchor, under_way = (
        _at_power(machine, power, voltage, rotor, hot.winding)
        for power in (belt_power, spare_for_one(engine, speed, False), left)
    )
    asked = min(cold, machine.current_limit)
    limits = {CURVE: cold, SETTING: machine.current_limit, BELT: belt, ENGINE: under_way, BANK: bank}
    governs = min(limits, key=lambda name: limits[name])
    current = limits[governs]
    lasting = settled(machine, voltage, rotor, air, min(belt_power, left), current)
    held = current > 0.0 and lasting.current < 0.999 * current
    return RegulatorRow(
        engine_speed=speed,
        rotor_speed=rotor,
        cold=cold,
        hot=hot.current,
        hot_winding=hot.winding,
        belt=belt,
        at_anchor=anchor,
        under_way=under_way,
        bank=bank,
        asked=asked,
        asked_power=_power(machine, asked, voltage, rotor, hot.winding),
        spare=left,
        set_current=current,
        field=field_share(current / cold, machine.speeds[0], rotor) if cold > 0.0 and current > 0.0 else 0.0,
        governs=governs,
        lasting=lasting,
        lasting_governs=HEAT if held else governs,
    )


def _pull(machine: Alternator, rows: tuple[RegulatorRow, ...], voltage: float) -> BeltPull:
    def effective(row: RegulatorRow) -> float:
        power = _power(machine, row.set_current, voltage, row.rotor_speed, row.hot_winding)
        return effective_tension(power, belt_speed(row.rotor_speed, machine.pulley_diameter))

    worst = max(rows, key=effective)
    force = effective(worst)
    tight, slack = side_tensions(force, machine.belt_tension_ratio)
    return BeltPull(
        engine_speed=worst.engine_speed,
        velocity=belt_speed(worst.rotor_speed, machine.pulley_diameter),
        effective=force,
        allowed=effective_tension(machine.belt_power, belt_speed(machine.belt_speed, machine.pulley_diameter)),
        tight=tight,
        slack=slack,
        load=shaft_load(tight, slack, math.pi),
    )


def regulator_sheets(specification: Specification, airs: tuple[float, ...]) -> tuple[RegulatorSheet, ...]:
    """A sheet for every alternator aboard.

    Parameters
    ----------
    specification
    airs : °C round the alternators of each engine
    """
    voltage, takes = specification.bank.absorb_voltage, bank_takes(specification)
    together = sum(machine.rated_current for engine in specification.engines for machine in engine.alternators)
    sheets: list[RegulatorSheet] = []
    for number, (engine, air) in enumerate(zip(specification.engines, airs, strict=True)):
        for which, machine in enumerate(engine.alternators):
            share = takes * machine.rated_current / together
            rows = tuple(_row(engine, machine, speed, voltage, air, share) for speed in row_speeds(engine))
            pull = _pull(machine, rows, voltage)
            sheets.append(RegulatorSheet(number, which, len(sheets), air, voltage, share, rows, pull))
    return tuple(sheets)


def side_loads(specification: Specification, sheets: tuple[RegulatorSheet, ...]) -> tuple[SideLoad, ...]:
    """What the belts of each engine with alternators pull sideways at its crankshaft."""
    return tuple(
        SideLoad(number, sum(sheet.pull.load for sheet in sheets if sheet.engine == number), engine.side_load_limit)
        for number, engine in enumerate(specification.engines)
        if engine.alternators
    )
