"""The engines' own battery on its DC-DC converter, every gap filled."""

from __future__ import annotations

import math
from collections.abc import Mapping

from anchorwatt.design.charging import Charging
from anchorwatt.design.document import Key
from anchorwatt.design.fill_power import converter_of, place_of
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.power import AlternatingSide, DirectSide
from anchorwatt.design.specification import EngineBattery, Load
from anchorwatt.physics.inverter import converter_input

DAY = 86_400.0  # s
LOAD = "engine battery"
"""The load on the DC bus that its converter is."""

KEY: Key = ("dc", "engine_battery")

# All from memory.
STANDING_LOAD = 4.0  # W: engine electronics asleep, an alarm, a tank gauge
CRANKING = 1.2e6  # W of the starter for each m3 of swept volume
CRANKING_TIME = 4.0  # s, glow plugs counted in
STARTS = 2.0  # a day


def fill_engine_battery(
    dc: DirectSide, charging: Charging, cabins: Mapping[str, int], ledger: Ledger
) -> EngineBattery | None:
    """The engines' battery and its converter; None where the file names none."""
    entry = dc.engine_battery
    if entry is None:
        return None
    swept = math.fsum(engine.engine.displacement for engine in charging.engines.values())
    return EngineBattery(
        converter=converter_of(entry.unit, 1, place_of(entry.cabin, cabins)),
        standing_load=ledger.fill(
            entry.standing_load, (*KEY, "standing_load"), STANDING_LOAD, "power", "electronics asleep, alarms", MEMORY
        ),
        start_energy=ledger.fill(
            entry.start_energy,
            (*KEY, "start_energy"),
            CRANKING * CRANKING_TIME * swept,
            "energy",
            f"{CRANKING / 1e6:g} kW for each litre of all engines through {CRANKING_TIME:g} s, glow plugs counted in",
            MEMORY,
        ),
        starts_per_day=ledger.fill(entry.starts_per_day, (*KEY, "starts_per_day"), STARTS, "", "once each way", MEMORY),
        voltage=float(entry.voltage),
    )


def check_engine_battery(ac: AlternatingSide | None, dc: DirectSide, ledger: Ledger) -> None:
    """Refuse a converter that is made for another bank or another battery, and a load of its name."""
    entry = dc.engine_battery
    if entry is None:
        return
    unit, key = entry.unit, (*KEY, "unit")
    if not math.isclose(unit.input_voltage, dc.nominal_voltage):
        found = f"a DC-DC converter from {unit.input_voltage.text}"
        ledger.refuse(key, found, f"one from the bank's {dc.nominal_voltage:g} V")
    if not math.isclose(unit.output_voltage, entry.voltage):
        found = f"a DC-DC converter to {unit.output_voltage.text}"
        ledger.refuse(key, found, f"one to the engine battery's {entry.voltage:g} V")
    sides: tuple[tuple[str, Mapping[str, object]], ...] = (("dc", dc.loads), ("ac", ac.loads if ac else {}))
    for side, loads in sides:
        if LOAD in loads:
            ledger.refuse((side, "loads", LOAD), f"a load “{LOAD}” beside dc.engine_battery", "another name")


def mean_output(battery: EngineBattery) -> float:
    """W that the battery takes on average: what stands on it, and its starts put back over the day."""
    return battery.standing_load + battery.start_energy * battery.starts_per_day / DAY


def engine_battery_load(battery: EngineBattery) -> Load:
    """The converter as a load of the DC bus: its losses warm its compartment, what it gives does not."""
    converter, output = battery.converter, mean_output(battery)
    taken = converter_input(
        output, converter.rated_power, converter.no_load_power, converter.linear, converter.quadratic
    )
    lost = 1.0 - output / taken if taken > 0.0 else 0.0
    return Load(LOAD, False, taken, converter.cabin, lost if converter.cabin >= 0 else 0.0, 0.0, 0.0)
