"""What the circuits of a boat end on, as the drawings show it: symbol, name and rating of every tag."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from anchorwatt.drawings.sheets.tree import Thing
from anchorwatt.sizing.ends import End, Ends
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def things(assessment: Assessment, system: System) -> dict[str, Thing]:
    """Every end of a circuit by its tag, in the order of the wire schedule."""
    known = _known(assessment, system)
    made: dict[str, Thing] = {}
    for tag, name in assessment.wiring.ends:
        symbol, rating = known.get(tag, ("LOAD", ""))
        made[tag] = Thing(tag, name, rating, symbol, told=f"{tag}, {name}" + (f", {rating}" if rating else ""))
    return made


def _known(assessment: Assessment, system: System) -> dict[str, tuple[str, str]]:
    """Symbol and rating by tag."""
    boat = assessment.specification
    ends = Ends(boat)
    bank, inverter, transformer = boat.bank, boat.inverter, boat.transformer

    def current(value: float) -> str:
        return show(value, "current", system)

    def power(value: float) -> str:
        return show(value, "power", system)

    made: dict[str, tuple[str, str]] = {}

    def put(end: End | None, symbol: str, rating: str = "") -> None:
        if end is not None:
            made[end.tag] = symbol, rating

    energy = show(bank.capacity * bank.nominal_voltage, "energy", system)
    put(ends.bank, "BATTERY", f"{show(bank.nominal_voltage, 'voltage', system)} {energy}")
    put(ends.inverters, "INVERTER", power(inverter.rated_power))
    if boat.charger is not None:
        put(ends.charger, "CHARGER", power(boat.charger.rated_power))
    if transformer is not None:
        put(ends.transformer, "TRANSFORMER", show(transformer.rated_power, "apparent power", system))
    if boat.engine_battery is not None:
        put(ends.dc_dc, "CONVERTER-DC", power(boat.engine_battery.converter.rated_power))
        put(ends.engine_battery, "BATTERY", show(boat.engine_battery.voltage, "voltage", system))
    if boat.solar is not None:
        put(ends.solar, "SOLAR", power(boat.solar.peak_power))
        put(ends.controller, "CONVERTER-DC")
    put(ends.plant, "COMPRESSOR", power(boat.plant.circuit.rated_power))
    machines = [machine for engine in boat.engines for machine in engine.alternators]
    for end, regulator, machine in zip(ends.alternators, ends.regulators, machines, strict=True):
        put(end, "ALTERNATOR", current(machine.rated_current))
        put(regulator, "REGULATOR", f"set {current(machine.current_limit)}")
    for end, handler in zip(ends.handlers, boat.plant.handlers, strict=True):
        put(end, "AIR-HANDLER", show(handler.rated_capacity, "heat flow", system))
    for end, load in zip(ends.loads, boat.loads, strict=True):
        put(end, "LOAD", power(load.power))
    put(ends.pump, "MOTOR", power(boat.plant.pump_power))
    if boat.shore is not None:
        put(ends.inlet, "SOCKET", current(boat.shore.current))
    put(ends.breaker, "SWITCH")
    put(ends.transfer, "SWITCH-TWO-WAY")
    put(ends.monitor, "INDICATOR")
    put(ends.management, "MANAGEMENT")
    for tag, rating in _bars(assessment, system).items():
        made[tag] = "", rating
    for tag, _ in assessment.wiring.ends:
        if tag.startswith("B"):
            made.setdefault(tag, ("SENSOR", ""))
    return made


def _bars(assessment: Assessment, system: System) -> dict[str, str]:
    """Rating of every bus and panel by its tag, empty where none is worked out."""
    ends = Ends(assessment.specification)
    rated = {bar.tag: bar.rating for bar in assessment.wiring.busbars}
    bars = (ends.bank_bus, ends.dc_bus, ends.dc_panel, ends.ac_panel, ends.bonding)
    found = {end.tag: rated.get(end.tag, math.nan) for end in bars}
    return {tag: "" if math.isnan(value) else show(value, "current", system) for tag, value in found.items()}
