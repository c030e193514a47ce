"""Circuits of the DC side: bank, bus, inverter, alternators, charger, sun, engine battery, loads."""

from __future__ import annotations

from anchorwatt.design.fill_engine_battery import LOAD
from anchorwatt.design.specification import Converter
from anchorwatt.physics.inverter import converter_input
from anchorwatt.sizing.circuit_list import CircuitList
from anchorwatt.sizing.circuits import FEEDER_DROP, ORDINARY_DROP
from anchorwatt.sizing.ends import End
from anchorwatt.sizing.setting import Input

UNEVEN = 1.15
"""What the hardest string of several carries over its even share. From memory."""

ARRAY_VOLTAGE = 40.0
"""V of solar panels side by side in full sun, cells of 60 to 72 in series. From memory."""

SUN_FACTOR = 1.25
"""Over the rated current, for edges of clouds. From memory."""

FEEDERS = ("light", "blower", "navigation", "monitor", "router", "exchanger", "pump")
"""In the name of a DC load that may lose 3 % only: lights of the collision rules, blowers, electronics, bilge pumps."""


def drawn(converter: Converter, output: float) -> float:
    """W that a converter takes for what it gives."""
    return converter_input(
        output, converter.rated_power, converter.no_load_power, converter.linear, converter.quadratic
    )


def inverter_current(made: CircuitList, share: float = 1.0) -> float:
    """A into all inverters at a share of their rating, at the bank's lowest voltage in the runs."""
    inverter = made.specification.inverter
    return drawn(inverter, share * inverter.rated_power) / made.currents.lowest_voltage


def direct(made: CircuitList) -> None:
    """Put all circuits of the DC side on the list."""
    _bank(made)
    _inverters(made)
    _alternators(made)
    _charger(made)
    _sun(made)
    _engine_battery(made)
    _panel(made)


def _bank(made: CircuitList) -> None:
    specification, ends = made.specification, made.ends
    bank, currents = specification.bank, made.currents
    largest = max((load.power for load in specification.loads if not load.alternating), default=0.0)
    away = inverter_current(made) + max(currents.dc_power.highest_hour, largest) / made.nominal
    back = sum(one.current_limit for engine in specification.engines for one in engine.alternators)
    if specification.solar is not None:
        back += specification.solar.peak_power / made.nominal
    ashore = 0.0 if specification.charger is None else specification.charger.rated_power / made.nominal
    overload = max(specification.inverter.overload_shares, default=1.0)
    main = max(min(away, bank.discharge_current), min(max(back, ashore), bank.charge_current))
    peak = max(main, inverter_current(made, overload))
    inputs = (
        Input("inverter at its rating and DC loads", away, "current", "computed"),
        Input("all alternators at their set limit, and sun", back, "current", "computed"),
        Input("charger at its rating", ashore, "current", "computed"),
        Input("highest hour in the runs", currents.bank.highest_hour, "current", "computed"),
    )
    words = "the larger of what may be drawn at once and what charges at once, within the bank's own limits"
    strings = bank.parallel
    for number in range(1, strings + 1):
        name = "string" if strings == 1 else f"string {number} of {strings}"
        share = main if strings == 1 else UNEVEN * main / strings
        uneven = () if strings == 1 else (Input("hardest string over its even share", UNEVEN, "ratio", "estimated"),)
        made.add(
            End(ends.bank.tag, f"bank, {name}", ends.bank.position, ends.bank.cabin),
            ends.bank_bus,
            f"bank {name}",
            system="dc",
            voltage=made.nominal,
            continuous=share,
            peak=peak if strings == 1 else UNEVEN * peak / strings,
            mean_square=currents.bank.mean_square / strings**2,
            formula=words if strings == 1 else f"{words}, shared by {strings} strings, not quite evenly",
            inputs=(*inputs, *uneven),
            highest_drop=FEEDER_DROP,
            source="bank",
            bundled=1,
        )
    made.add(
        ends.bank_bus,
        ends.dc_bus,
        "main feeder",
        system="dc",
        voltage=made.nominal,
        continuous=main,
        peak=peak,
        mean_square=currents.bank.mean_square,
        formula=words,
        inputs=inputs,
        highest_drop=FEEDER_DROP,
        source="bank",
        bundled=1,
    )


def _count(made: CircuitList, kind: str) -> int:
    return next((item.count for item in made.specification.items if item.kind == kind), 1)


def _inverters(made: CircuitList) -> None:
    inverter, count = made.specification.inverter, _count(made, "inverter")
    overload = max(inverter.overload_shares, default=1.0)
    for number in range(1, count + 1):
        made.add(
            made.ends.dc_bus,
            made.ends.inverters,
            "inverter supply" if count == 1 else f"inverter supply {number} of {count}",
            system="dc",
            voltage=made.nominal,
            continuous=inverter_current(made) / count,
            peak=inverter_current(made, overload) / count,
            mean_square=made.currents.inverter.mean_square / count**2,
            formula="what the inverter takes at its rating over the bank's lowest voltage in the runs",
            inputs=(
                Input("rated output", inverter.rated_power / count, "power", "catalogue"),
                Input("taken at that output", drawn(inverter, inverter.rated_power) / count, "power", "computed"),
                Input("lowest voltage of the bank in the runs", made.currents.lowest_voltage, "voltage", "computed"),
                Input("highest hour in the runs", made.currents.inverter.highest_hour / count, "current", "computed"),
            ),
            highest_drop=FEEDER_DROP,
            bundled=1,
        )


def _alternators(made: CircuitList) -> None:
    machines = [one for engine in made.specification.engines for one in engine.alternators]
    for number, machine in enumerate(machines):
        flow = made.currents.alternator(number)
        made.add(
            made.ends.alternators[number],
            made.ends.dc_bus,
            f"{machine.name} output",
            system="dc",
            voltage=made.nominal,
            continuous=machine.current_limit,
            peak=machine.rated_current,
            mean_square=flow.mean_square,
            formula="the limit set in its regulator; peak is its rating, cold",
            inputs=(
                Input("set limit", machine.current_limit, "current", "typed or estimated"),
                Input("rated current", machine.rated_current, "current", "catalogue"),
                Input("highest hour in the runs", flow.highest_hour, "current", "computed"),
            ),
            highest_drop=FEEDER_DROP,
            source="alternator",
            bundled=1,
        )


def _charger(made: CircuitList) -> None:
    charger, end = made.specification.charger, made.ends.charger
    if charger is None or end is None:
        return
    count = _count(made, "charger")
    for number in range(1, count + 1):
        made.add(
            made.ends.dc_bus,
            end,
            "charger output" if count == 1 else f"charger output {number} of {count}",
            system="dc",
            voltage=made.nominal,
            continuous=charger.rated_power / made.nominal / count,
            mean_square=made.currents.charger.mean_square / count**2,
            formula="rated output over the nominal voltage; the bank's end feeds a fault",
            inputs=(
                Input("rated output", charger.rated_power / count, "power", "catalogue"),
                Input("highest hour in the runs", made.currents.charger.highest_hour / count, "current", "computed"),
            ),
            highest_drop=FEEDER_DROP,
        )


def _sun(made: CircuitList) -> None:
    solar, end = made.specification.solar, made.ends.solar
    if solar is None or end is None:
        return
    peak = Input("peak power of all panels", solar.peak_power, "power", "catalogue")
    flow = made.currents.solar
    made.add(
        end,
        made.ends.controller,
        "solar panels",
        system="dc",
        voltage=ARRAY_VOLTAGE,
        continuous=SUN_FACTOR * solar.peak_power / ARRAY_VOLTAGE,
        mean_square=flow.mean_square / ARRAY_VOLTAGE**2,
        formula=f"{SUN_FACTOR:g} times peak power over {ARRAY_VOLTAGE:g} V, panels side by side: from memory, ask",
        inputs=(peak,),
        highest_drop=FEEDER_DROP,
        source="solar",
    )
    made.add(
        made.ends.dc_bus,
        made.ends.controller,
        "solar controller output",
        system="dc",
        voltage=made.nominal,
        continuous=SUN_FACTOR * solar.peak_power / made.nominal,
        mean_square=flow.mean_square / made.nominal**2,
        formula=f"{SUN_FACTOR:g} times peak power over the nominal voltage; the bank's end feeds a fault",
        inputs=(peak, Input("highest hour in the runs", flow.highest_hour / made.nominal, "current", "computed")),
        highest_drop=FEEDER_DROP,
    )


def _engine_battery(made: CircuitList) -> None:
    battery, end = made.specification.engine_battery, made.ends.dc_dc
    if battery is None or end is None:
        return
    converter = battery.converter
    mean = next((load.power for load in made.specification.loads if load.name == LOAD), 0.0)
    rated = Input("rated output", converter.rated_power, "power", "catalogue")
    made.add(
        made.ends.dc_bus,
        end,
        "DC-DC converter supply",
        system="dc",
        voltage=made.nominal,
        continuous=drawn(converter, converter.rated_power) / made.nominal,
        mean_square=(mean / made.nominal) ** 2,
        formula="what it takes at its rating over the nominal voltage",
        inputs=(rated,),
        highest_drop=FEEDER_DROP,
    )
    made.add(
        made.ends.engine_battery,
        end,
        "engine battery charge",
        system="dc",
        voltage=battery.voltage,
        continuous=converter.rated_power / battery.voltage,
        mean_square=(mean / battery.voltage) ** 2,
        formula="rated output over that battery's voltage; the battery's end feeds a fault",
        inputs=(rated,),
        highest_drop=FEEDER_DROP,
        source="bank",
    )


def _panel(made: CircuitList) -> None:
    loads = [
        (number, load)
        for number, load in enumerate(made.specification.loads)
        if not load.alternating and load.name != LOAD
    ]
    if not loads:
        return
    flow = made.currents.dc_power
    all_on = sum(load.power for _, load in loads) / made.nominal
    largest = max(load.power for _, load in loads) / made.nominal
    made.add(
        made.ends.dc_bus,
        made.ends.dc_panel,
        "DC panel feeder",
        system="dc",
        voltage=made.nominal,
        continuous=max(flow.highest / made.nominal, largest),
        peak=all_on,
        mean_square=flow.mean_square / made.nominal**2,
        formula="highest minute of all DC loads in the runs, or the largest of them; peak is all of them at once",
        inputs=(
            Input("highest minute in the runs", flow.highest / made.nominal, "current", "computed"),
            Input("largest load", largest, "current", "catalogue"),
            Input("all loads at once", all_on, "current", "catalogue"),
        ),
        highest_drop=FEEDER_DROP,
    )
    for number, load in loads:
        current = load.power / made.nominal
        made.add(
            made.ends.dc_panel,
            made.ends.loads[number],
            load.name,
            system="dc",
            voltage=made.nominal,
            continuous=current,
            mean_square=current**2 * made.currents.running(number),
            formula="its power while it runs over the nominal voltage",
            inputs=(
                Input("power", load.power, "power", "catalogue"),
                Input("share of the day that it runs", made.currents.running(number), "share", "computed"),
            ),
            highest_drop=FEEDER_DROP if any(word in load.name for word in FEEDERS) else ORDINARY_DROP,
        )
