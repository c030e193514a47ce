"""The electrical side of a step: shore, sun and engines feed the buses, the bank makes up the difference."""

from __future__ import annotations

import math

from anchorwatt.physics.alternator import shaft_power
from anchorwatt.physics.battery import bank_temperature
from anchorwatt.physics.engine import DIESEL_HEATING_VALUE, fuel_flow, full_load_power, spare_power
from anchorwatt.physics.inverter import converter_input, converter_output, overload_time, temperature_factor
from anchorwatt.physics.propeller import propeller_demand
from anchorwatt.physics.solar import cell_temperature, panel_power
from anchorwatt.simulation.arrays import (
    ALTERNATOR_CURRENT,
    ALTERNATOR_EFFICIENCY,
    ALTERNATOR_PULLEY,
    ALTERNATOR_SHARE,
    BANK_ABSORB,
    BANK_CONDUCTANCE,
    BANK_CUT_OFF_CHARGE,
    BANK_HEAT_CAPACITY,
    BANK_SURROUNDINGS,
    ENGINE_AIR,
    ENGINE_DISPLACEMENT,
    ENGINE_EFFICIENCY,
    ENGINE_EXPONENT,
    ENGINE_FRICTION,
    ENGINE_MARGIN,
    ENGINE_POWER,
    ENGINE_PROPELLER,
    ENGINE_SPEED,
    HEAT_OF_BANK,
    HEAT_OF_INVERTER,
    INVERTER_DERATING,
    INVERTER_FULL_TO,
    INVERTER_HOTTEST,
    INVERTER_RATED,
    Floats,
    Forcing,
    Power,
    State,
    Summary,
)
from anchorwatt.simulation.cooling import COMPRESSOR, PLANT, RUNNING
from anchorwatt.simulation.electric import (
    alternator_current,
    bank_capacity,
    bank_limits,
    bank_step,
    heated,
    inverter_power,
    transformer_power,
)

RESTART = 600.0
"""s for which a tripped inverter stays off. From practice, no source."""

RECONNECT = 0.02
"""State of charge over the cut-off at which the bank may discharge again. From practice, no source."""

RECOVERY = 1800.0
"""s after which an inverter has cooled from an overload that it only just bore. From practice, no source."""

# What a step comes to, in the array `bus`: W, V, A and kg/s.
INVERTER_OUT, INVERTER_IN, DC, SUN, SHORE, CHARGER, VOLTAGE, CURRENT, FUEL = 0, 1, 2, 3, 4, 5, 6, 7, 8
SUN_OFFERED, TRANSFORMER_LOSS, CHARGER_LOSS, BANK_HEAT = 9, 10, 11, 12
BUS = 13
"""Figures before those of each engine: W lost in its alternators."""


def sun_power(power: Power, irradiance: float, air: float) -> float:
    """W that the panels offer."""
    panels = power.solar
    if panels[0] <= 0.0:
        return 0.0
    cells = cell_temperature(air, irradiance, panels[2])
    return panel_power(irradiance, cells, panels[0], panels[1], panels[3])


def charge_from_shore(charger: Floats, room: float, spare: float) -> tuple[float, float]:
    """W into and out of a charger that may put `room` W into the bus and take `spare` W from shore."""
    out = max(0.0, min(room, charger[0]))
    if charger[0] <= 0.0 or out <= 0.0:
        return 0.0, 0.0
    needed = converter_input(out, charger[0], charger[1], charger[2], charger[3])
    if needed > spare:
        needed = max(0.0, spare)
        out = converter_output(needed, charger[0], charger[1], charger[2], charger[3])
    return needed, out


def air_round_engine(power: Power, g: int, air: Floats) -> float:
    """°C of the air round an engine's alternators, `air` being that of the cabins."""
    given: float = power.engine[g, ENGINE_AIR]
    if math.isnan(given):
        in_compartment: float = air[power.engine_cabin[g]]
        return in_compartment
    return given


def warm_bank(power: Power, m: int, step: float, lost: float, air: Floats, state: State, bus: Floats) -> None:
    """Take the cells through a step with `lost` W in them, `air` being that of the cabins."""
    bank, c = power.bank, power.heat_cabin[HEAT_OF_BANK]
    around = air[c] if c >= 0 else bank[BANK_SURROUNDINGS]
    before = state.cells[m]
    after = bank_temperature(before, around, lost, bank[BANK_HEAT_CAPACITY], bank[BANK_CONDUCTANCE], step)
    state.cells[m] = after
    bus[BANK_HEAT] = lost - bank[BANK_HEAT_CAPACITY] * (after - before) / step


def overloaded(power: Power, m: int, step: float, output: float, air: Floats, state: State) -> bool:
    """Whether an output in W makes the inverter trip, after what it had to bear before; too hot, any does."""
    inverter, c = power.inverter, power.heat_cabin[HEAT_OF_INVERTER]
    rating: float = inverter[INVERTER_RATED]
    if c >= 0:
        rating *= temperature_factor(
            air[c], inverter[INVERTER_FULL_TO], inverter[INVERTER_DERATING], inverter[INVERTER_HOTTEST]
        )
    if rating > 0.0 and output <= rating:
        state.overload[m] = max(0.0, state.overload[m] - step / RECOVERY)
        return False
    bears = 0.0
    if rating > 0.0:
        bears = overload_time(output / rating, power.overload_share, power.overload_time)
    if bears <= 0.0:
        state.overload[m] = 1.0
    else:
        state.overload[m] = min(1.0, state.overload[m] + step / bears)
    tripped: bool = state.overload[m] >= 1.0
    return tripped


def generate(
    power: Power,
    forcing: Forcing,
    k: int,
    m: int,
    step: float,
    wanted: float,
    voltage: float,
    air: Floats,
    state: State,
    summary: Summary,
    held: Floats,
    amps: Floats,
    bus: Floats,
) -> float:
    """Run the engines through a step; returns W of all alternators.

    `air` is that of the cabins, °C; `wanted` A at `voltage` V is what bank and loads would take; what one machine
    cannot give is left to those that follow. Writes each machine's current to `amps`, warms it, and counts fuel
    and what held it back.
    """
    generated, running = 0.0, 0
    for a in range(amps.shape[0]):
        amps[a] = 0.0
        if forcing.engine_speed[power.alternator_engine[a], k] > 0.0:
            running += 1
    for g in range(power.engine.shape[0]):
        speed = forcing.engine_speed[g, k]
        if speed <= 0.0:
            continue
        engine = power.engine[g]
        pushing = 0.0
        if forcing.propelling[k] == 1:
            pushing = propeller_demand(speed, engine[ENGINE_SPEED], engine[ENGINE_PROPELLER], engine[ENGINE_EXPONENT])
        able = full_load_power(
            speed, engine[ENGINE_SPEED], engine[ENGINE_POWER], power.engine_speeds[g], power.engine_powers[g]
        )
        spare = spare_power(able, pushing, engine[ENGINE_MARGIN])
        shaft = 0.0
        for a in range(amps.shape[0]):
            if power.alternator_engine[a] != g:
                continue
            machine = power.alternator[a]
            rotor = speed * machine[ALTERNATOR_PULLEY]
            winding = state.alternator[m, a, 0]
            amps[a], cause = alternator_current(
                wanted / running, voltage, rotor, spare * machine[ALTERNATOR_SHARE], winding,
                state.alternator[m, a, 1], air_round_engine(power, g, air), step, machine, power.alternator_speeds[a],
                power.alternator_currents[a],
            )  # fmt: skip
            wanted -= amps[a]
            running -= 1
            held[m, a, cause] += step
            generated += amps[a] * voltage
            if amps[a] > 0.0:
                shaft += shaft_power(
                    amps[a],
                    voltage,
                    rotor,
                    winding,
                    machine[ALTERNATOR_CURRENT],
                    machine[ALTERNATOR_EFFICIENCY],
                )
        bus[BUS + g] = shaft
        for a in range(amps.shape[0]):
            if power.alternator_engine[a] == g:
                bus[BUS + g] -= amps[a] * voltage
        burnt, alone = 0.0, 0.0
        for with_shaft in range(2):
            flow = fuel_flow(
                pushing + with_shaft * shaft, speed, engine[ENGINE_DISPLACEMENT], engine[ENGINE_FRICTION],
                engine[ENGINE_EFFICIENCY], DIESEL_HEATING_VALUE,
            )  # fmt: skip
            if with_shaft == 1:
                burnt = flow
            else:
                alone = flow
        bus[FUEL] += burnt
        summary.fuel[m] += burnt * step
        summary.fuel_added[m] += (burnt - alone) * step
        summary.shaft_energy[m] += shaft * step
    for a in range(amps.shape[0]):
        g = power.alternator_engine[a]
        machine = power.alternator[a]
        rotor = forcing.engine_speed[g, k] * machine[ALTERNATOR_PULLEY]
        winding, frame = heated(
            amps[a], voltage, rotor, state.alternator[m, a, 0], state.alternator[m, a, 1],
            air_round_engine(power, g, air), step, machine,
        )  # fmt: skip
        state.alternator[m, a, 0], state.alternator[m, a, 1] = winding, frame
        summary.hottest_winding[m] = max(summary.hottest_winding[m], winding)
    summary.alternator_energy[m] += generated * step
    return generated


def crossing(before: float, after: float, level: float) -> float:
    """Share of a step at which a charge that moved from `before` to `after` passed a level."""
    moved = after - before
    return min(1.0, max(0.0, (level - before) / moved)) if moved != 0.0 else 0.0


def supply(
    power: Power,
    forcing: Forcing,
    k: int,
    m: int,
    step: float,
    ashore: bool,
    powered: bool,
    air: Floats,
    air_offset: float,
    capacity_factor: float,
    resistance_factor: float,
    reserve: float,
    target: float,
    state: State,
    summary: Summary,
    held: Floats,
    amps: Floats,
    spent: Floats,
    bus: Floats,
) -> None:
    """One step of shore, sun, engines, inverter and bank; `spent` holds what the plant draws.

    `air` is that of the cabins, °C. Writes `bus` and `amps`, moves the bank and the alternators in `state`, and
    adds to `summary`. When the bank cannot give what is asked, the inverter trips and AC loads go without; DC
    loads go when it is off.
    """
    bank, points = power.bank, power.bank_charge
    voltages, resistances = power.bank_voltage, power.bank_factor
    capacity = bank_capacity(bank, capacity_factor)
    last_voltage = bus[VOLTAGE]
    bus[:] = 0.0
    bus[DC] = forcing.dc_load[k]
    gives, takes, takes_power = bank_limits(
        state.charge[m], step, capacity, state.cells[m], bank, points, voltages, resistances, resistance_factor
    )
    sun = 0.5 * (forcing.panel_irradiance[k] + forcing.panel_irradiance[k + 1])
    around = 0.5 * (forcing.dry_bulb[k] + forcing.dry_bulb[k + 1]) + air_offset
    bus[SUN_OFFERED] = sun_power(power, sun, around)
    through, ac, most, most_through = 0.0, 0.0, 0.0, 0.0
    if powered:
        ac = spent[PLANT] + forcing.ac_load[k]
        through = transformer_power(ac, power.transformer)
        most = spent[RUNNING] + forcing.ac_load[k]
        most_through = transformer_power(most, power.transformer)
    else:
        summary.unserved_energy[m] += forcing.ac_load[k] * step
    if ashore:
        bus[SHORE] = through
    elif powered:
        bus[INVERTER_OUT] = through
        bus[INVERTER_IN] = inverter_power(through, power.inverter)
    room = bus[DC] + bus[INVERTER_IN] + takes_power - bus[SUN_OFFERED]
    if ashore:
        taken, bus[CHARGER] = charge_from_shore(power.charger, room, power.shore_power - bus[SHORE])
        bus[SHORE] += taken
        bus[CHARGER_LOSS] = taken - bus[CHARGER]
    # Alternators work at the bus voltage that the last step left, or at most at what the bank would rise to.
    voltage = bank[BANK_ABSORB] if takes <= 0.0 else takes_power / takes
    if last_voltage > 0.0:
        voltage = min(voltage, last_voltage)
    wanted = max(0.0, room - bus[CHARGER]) / voltage
    generated = generate(power, forcing, k, m, step, wanted, voltage, air, state, summary, held, amps, bus)
    # The bank makes up the difference, or the sun is turned down, or loads go without.
    fed = generated + bus[CHARGER]
    needs = bus[DC] + bus[INVERTER_IN]
    bus[SUN] = min(bus[SUN_OFFERED], max(0.0, needs + takes_power - fed))
    from_bank = needs - fed - bus[SUN]
    off = state.connected[m] == 0
    if from_bank > 0.0 and (off or from_bank > gives):
        summary.unserved_energy[m] += bus[INVERTER_OUT] * step
        if not ashore:
            spent[PLANT], spent[COMPRESSOR], ac, through = 0.0, 0.0, 0.0, 0.0
            spent[RUNNING], most, most_through = 0.0, 0.0, 0.0
        bus[INVERTER_OUT], bus[INVERTER_IN] = 0.0, 0.0
        state.trip[m] = RESTART
        bus[SUN] = min(bus[SUN_OFFERED], max(0.0, bus[DC] + takes_power - fed))
        from_bank = bus[DC] - fed - bus[SUN]
        if from_bank > 0.0 and (off or from_bank > gives):
            summary.unserved_energy[m] += from_bank * step
            bus[DC] -= from_bank
            from_bank = 0.0
        if math.isnan(summary.lost_at[m]):
            summary.lost_at[m] = k * step
    else:
        state.trip[m] = max(0.0, state.trip[m] - step)
        if not ashore and overloaded(power, m, step, most_through, air, state):
            state.trip[m] = RESTART
            if math.isnan(summary.lost_at[m]):
                summary.lost_at[m] = k * step
    before = state.charge[m]
    after, bus[CURRENT], bus[VOLTAGE], lost = bank_step(
        before, from_bank, step, capacity, state.cells[m], bank, points, voltages, resistances, resistance_factor
    )
    warm_bank(power, m, step, lost, air, state, bus)
    state.charge[m] = after
    if after <= bank[BANK_CUT_OFF_CHARGE] and from_bank >= 0.0:
        state.connected[m] = 0
    elif after >= bank[BANK_CUT_OFF_CHARGE] + RECONNECT:
        state.connected[m] = 1
    if math.isnan(summary.reserve_at[m]) and after <= reserve:
        summary.reserve_at[m] = (k + crossing(before, after, reserve)) * step
    if math.isnan(summary.full_at[m]) and after >= target:
        summary.full_at[m] = (k + crossing(before, after, target)) * step
    bus[TRANSFORMER_LOSS] = through - ac
    summary.bank_out[m] += from_bank * step
    summary.bank_loss[m] += lost * step
    summary.charge_passed[m] += bus[CURRENT] * step
    summary.hottest_bank[m] = max(summary.hottest_bank[m], state.cells[m])
    summary.lowest_charge[m] = min(summary.lowest_charge[m], after)
    summary.lowest_voltage[m] = min(summary.lowest_voltage[m], bus[VOLTAGE])
    summary.inverter_energy[m] += bus[INVERTER_IN] * step
    summary.inverter_loss[m] += (bus[INVERTER_IN] - bus[INVERTER_OUT]) * step
    summary.transformer_loss[m] += (through - ac) * step
    summary.ac_load_energy[m] += (ac - spent[PLANT] if powered else 0.0) * step
    summary.dc_load_energy[m] += bus[DC] * step
    summary.shore_energy[m] += bus[SHORE] * step
    summary.charger_energy[m] += bus[CHARGER] * step
    summary.solar_energy[m] += bus[SUN] * step
    summary.peak_ac_power[m] = max(summary.peak_ac_power[m], most)
    if not ashore:
        summary.peak_inverter_power[m] = max(summary.peak_inverter_power[m], most_through)
    summary.peak_shore_power[m] = max(summary.peak_shore_power[m], bus[SHORE])
