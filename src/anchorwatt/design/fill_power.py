"""The AC side and the DC side, every gap filled."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from anchorwatt.catalogue.converter import Converter as ConverterPart
from anchorwatt.design.document import Key
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.power import (
    AlternatingSide,
    BankEntry,
    ChargerEntry,
    DirectSide,
    InverterEntry,
    LoadEntry,
    SolarEntry,
)
from anchorwatt.design.specification import Bank, Converter, CutOff, Load, Shore, Solar, Transformer

YEAR = 365.25 * 86_400.0  # s
NOMINAL_VOLTAGES = (12.0, 24.0, 48.0)

VOLTAGE_WITHOUT_SHORE = 230.0  # V, of a transformer whose part does not say
HIGHEST_OF_60_HZ = 130.0  # V of a leg

# Of a module as a body that warms itself. All from memory.
MODULE_HEAT = 1000.0  # J/(kg K)
MODULE_DENSITY = 1100.0  # kg/m3
MODULE_FILM = 8.0  # W/(m2 K) of convection and radiation
MODULE_BARE = 0.5  # share of its faces that are not against something

# V a cell, where a module does not say. From memory.
FLOAT_OF_CELL, HIGHEST_OF_CELL = 3.375, 3.65

# A bank's voltage may stand this far from the nominal voltage of the boat: 12.8 V on 12 V, 51.2 V on 48 V.
VOLTAGE_BAND = 0.10


def fill_loads(ac: AlternatingSide, dc: DirectSide, cabins: Mapping[str, int]) -> list[Load]:
    """All electrical loads, those on alternating current first."""
    return [_load(name, entry, True, cabins) for name, entry in ac.loads.items()] + [
        _load(name, entry, False, cabins) for name, entry in dc.loads.items()
    ]


def fill_inverter(ac: AlternatingSide, cabins: Mapping[str, int]) -> Converter:
    """The inverters taken together."""
    entry = ac.inverter
    return replace(
        _converter(entry, cabins),
        output_voltage=math.nan if entry.output_voltage is None else float(entry.output_voltage),
        output_frequency=math.nan if entry.output_frequency is None else float(entry.output_frequency),
    )


def fill_charger(ac: AlternatingSide, cabins: Mapping[str, int]) -> Converter | None:
    """The chargers taken together."""
    return None if ac.charger is None else _converter(ac.charger, cabins)


def fill_transformer(ac: AlternatingSide, cabins: Mapping[str, int]) -> Transformer | None:
    """The transformer between inverter or shore and the loads."""
    transformer = ac.transformer
    if transformer is None:
        return None
    unit = transformer.unit
    if unit.primary_voltage is not None:
        primary = float(unit.primary_voltage)
    else:
        primary = float(ac.shore.voltage) if ac.shore is not None else VOLTAGE_WITHOUT_SHORE
    return Transformer(
        unit.name,
        float(unit.rated_power),
        float(unit.core_loss),
        float(unit.copper_loss),
        primary,
        primary if unit.secondary_voltage is None else float(unit.secondary_voltage),
        unit.isolating,
        unit.inrush,
        float(unit.mass),
        place_of(transformer.cabin, cabins),
        unit.primary_voltage is not None,
    )


def fill_shore(ac: AlternatingSide, ledger: Ledger) -> Shore | None:
    """The shore service."""
    shore, limit = ac.shore, ac.shore_limit
    if shore is None:
        if limit is not None:
            ledger.refuse(("ac", "shore_limit"), "a limit without a shore service", "a shore service, or no limit")
        return None
    if limit is not None and limit > shore.current:
        ledger.refuse(("ac", "shore_limit"), f'"{limit.text}"', f"at most the service's {shore.current.text}")
    frequency = 60.0 if shore.voltage <= HIGHEST_OF_60_HZ else 50.0
    if shore.frequency is None:
        key: Key = ("ac", "shore", "frequency")
        ledger.note(key, f"{frequency:g} Hz", f"60 Hz up to {HIGHEST_OF_60_HZ:g} V, else 50 Hz", MEMORY)
    else:
        frequency = float(shore.frequency)
    current = float(shore.current if limit is None else limit)
    return Shore(
        name=shore.name,
        voltage=float(shore.voltage),
        legs=shore.legs,
        frequency=frequency,
        current=float(shore.current),
        current_limit=current,
        continuous_power=shore.voltage * shore.legs * min(current, shore.current * shore.continuous_share),
        lowest_voltage=shore.voltage * shore.lowest_share,
        frequency_said=shore.frequency is not None,
    )


def fill_bank(bank: BankEntry, cabins: Mapping[str, int], ledger: Ledger) -> Bank:
    """All modules taken together."""
    module, key = bank.module, ("dc", "bank")
    links = ledger.fill(
        bank.link_resistance,
        (*key, "link_resistance"),
        0.8e-3,
        "resistance",
        "links, fuses and main cables of the whole bank",
        MEMORY,
    )
    temperature = ledger.fill(
        bank.temperature, (*key, "temperature"), 30.0, "temperature", "a ventilated locker in summer", MEMORY
    )
    cell = module.cell
    count = bank.series * bank.parallel
    mass = module.mass * count
    capacity = module.capacity * bank.parallel
    area = 6.0 * math.pow(module.mass / MODULE_DENSITY, 2.0 / 3.0)
    part: Key = (*key, "module")
    held = ledger.fill(
        module.float_voltage,
        (*part, "float_voltage"),
        FLOAT_OF_CELL * module.cells_in_series,
        "voltage",
        f"{FLOAT_OF_CELL:g} V a cell",
        MEMORY,
    )
    highest = ledger.fill(
        module.high_cut_off_voltage,
        (*part, "high_cut_off_voltage"),
        max(HIGHEST_OF_CELL * module.cells_in_series, 1.01 * module.absorb_voltage),
        "voltage",
        f"{HIGHEST_OF_CELL:g} V a cell, and above the absorb voltage",
        MEMORY,
    )
    return Bank(
        module=module.name,
        series=bank.series,
        parallel=bank.parallel,
        cells=module.cells_in_series * bank.series,
        nominal_voltage=module.nominal_voltage * bank.series,
        capacity=capacity,
        resistance=module.resistance * bank.series / bank.parallel + links,
        charge_points=tuple(float(point) for point in cell.charge_points),
        open_circuit_voltages=tuple(float(voltage) for voltage in cell.open_circuit_voltages),
        resistance_points=tuple(cell.resistance_points),
        charge_current=module.charge_current * bank.parallel,
        discharge_current=module.discharge_current * bank.parallel,
        absorb_voltage=module.absorb_voltage * bank.series,
        float_voltage=held * bank.series,
        tail_current=module.tail * capacity / 3600.0,
        cut_off_voltage=module.cut_off_voltage * bank.series,
        cut_off_charge=float(module.cut_off_charge),
        lowest_charge_temperature=float(module.lowest_charge_temperature),
        highest_charge_temperature=float(module.highest_charge_temperature),
        lowest_discharge_temperature=float(module.lowest_discharge_temperature),
        highest_discharge_temperature=float(module.highest_discharge_temperature),
        management=_management(bank, highest * bank.series),
        temperature=temperature,
        heat_capacity=ledger.fill(
            bank.heat_capacity,
            (*key, "heat_capacity"),
            MODULE_HEAT * mass,
            "heat capacity",
            f"{MODULE_HEAT / 1e3:g} kJ/(kg K)",
            MEMORY,
        ),
        heat_conductance=ledger.fill(
            bank.heat_conductance,
            (*key, "heat_conductance"),
            MODULE_FILM * MODULE_BARE * area * count,
            "thermal conductance",
            f"{MODULE_FILM:g} W/(m2 K) at half of the faces of a cube of each module's mass",
            MEMORY,
        ),
        cycle_life=module.cycle_life,
        calendar_loss=float(module.calendar_loss),
        warranted_years=module.warranted / YEAR,
        warranted_share=float(module.warranted_share),
        aged_resistance=module.aged_resistance,
        mass=mass,
        cabin=place_of(bank.cabin, cabins),
    )


def _management(bank: BankEntry, highest: float) -> tuple[CutOff, ...]:
    """The management system's limits, for the whole bank."""
    module = bank.module
    charge, discharge = module.charge_current * bank.parallel, module.discharge_current * bank.parallel
    waits = "by itself, once it is back within the limit"
    by_hand = "by hand, or by a charger that it allows"
    return (
        CutOff("overvoltage", "voltage of the cells, told for the bank", highest, "voltage", "charge", waits),
        CutOff(
            "undervoltage",
            "voltage of the cells under load, told for the bank",
            module.cut_off_voltage * bank.series,
            "voltage",
            "discharge",
            by_hand,
        ),
        CutOff("empty", "state of charge", float(module.cut_off_charge), "share", "discharge", by_hand),
        CutOff("charging current", "current into the bank", charge, "current", "charge", waits),
        CutOff("discharging current", "current out of the bank", discharge, "current", "both", "by hand"),
        CutOff(
            "too cold to charge",
            "temperature of the cells",
            float(module.lowest_charge_temperature),
            "temperature",
            "charge",
            waits,
        ),
        CutOff(
            "too hot to charge",
            "temperature of the cells",
            float(module.highest_charge_temperature),
            "temperature",
            "charge",
            waits,
        ),
        CutOff(
            "too cold",
            "temperature of the cells",
            float(module.lowest_discharge_temperature),
            "temperature",
            "both",
            waits,
        ),
        CutOff(
            "too hot",
            "temperature of the cells",
            float(module.highest_discharge_temperature),
            "temperature",
            "both",
            waits,
        ),
    )


def fill_solar(solar: SolarEntry | None, ledger: Ledger) -> Solar | None:
    """All panels taken together."""
    if solar is None:
        return None
    panel, key = solar.panel, ("dc", "solar")
    return Solar(
        peak_power=panel.peak_power * solar.count,
        temperature_coefficient=float(panel.temperature_coefficient),
        rise=float(panel.rise),
        delivered_share=_delivered(solar, ledger),
        faces=ledger.fill(solar.faces, (*key, "faces"), 0.0, "angle", "flat on deck", MEMORY),
        tilt=ledger.fill(solar.tilt, (*key, "tilt"), 0.0, "angle", "flat on deck", MEMORY),
        mass=panel.mass * solar.count,
    )


def _delivered(solar: SolarEntry, ledger: Ledger) -> float:
    """What shading and all that comes after it leave together."""
    key: Key = ("dc", "solar", "delivered_share")
    if solar.shading is None:
        return ledger.fill(
            solar.delivered_share,
            key,
            0.75,
            "share",
            "shade of rig and rails, dirt, wiring and controller; heat counted apart",
            MEMORY,
        )
    after = ledger.fill(
        solar.delivered_share, key, 0.88, "share", "dirt, wiring and controller; shading and heat counted apart", MEMORY
    )
    return after * solar.shading


def check_bank(dc: DirectSide, ledger: Ledger) -> None:
    """Refuse a bank that cannot be built from its modules."""
    bank, key = dc.bank, ("dc", "bank")
    if not any(math.isclose(dc.nominal_voltage, allowed) for allowed in NOMINAL_VOLTAGES):
        ledger.refuse(("dc", "nominal_voltage"), f'"{dc.nominal_voltage.text}"', "12 V, 24 V or 48 V")
    module = bank.module
    made = module.nominal_voltage * bank.series
    if abs(made / dc.nominal_voltage - 1.0) > VOLTAGE_BAND:
        fitting = round(dc.nominal_voltage / module.nominal_voltage)
        hint = (
            f"{fitting} in series"
            if fitting >= 1 and abs(fitting * module.nominal_voltage / dc.nominal_voltage - 1.0) <= VOLTAGE_BAND
            else f"modules that make about {dc.nominal_voltage:g} V"
        )
        ledger.refuse(
            (*key, "series"),
            f"{bank.series} in series of {module.nominal_voltage.text}, which make {made:.4g} V",
            f"{hint}, for {dc.nominal_voltage.text} nominal",
        )
    if bank.series > module.highest_series:
        ledger.refuse(
            (*key, "series"),
            f"{bank.series} in series",
            f"at most {module.highest_series} in series of {module.name or 'this module'}",
        )
    if bank.parallel > module.highest_parallel:
        ledger.refuse(
            (*key, "parallel"),
            f"{bank.parallel} in parallel",
            f"at most {module.highest_parallel} in parallel of {module.name or 'this module'}",
        )


def check_converters(ac: AlternatingSide, nominal: float, ledger: Ledger) -> None:
    """Refuse an inverter or a charger made for another bank."""
    inverter = ac.inverter.unit.input_voltage
    if not math.isclose(inverter, nominal):
        key: Key = ("ac", "inverter", "unit")
        ledger.refuse(key, f"an inverter for {inverter.text}", f"one for the bank's {nominal:g} V")
    if ac.charger is not None and not math.isclose(ac.charger.unit.output_voltage, nominal):
        found = f"a charger for {ac.charger.unit.output_voltage.text}"
        ledger.refuse(("ac", "charger", "unit"), found, f"one for the bank's {nominal:g} V")


def _load(name: str, entry: LoadEntry, alternating: bool, cabins: Mapping[str, int]) -> Load:
    appliance = entry.appliance
    cabin = place_of(entry.cabin, cabins)
    inside = cabin >= 0
    return Load(
        name=name,
        alternating=alternating,
        power=appliance.power * entry.count,
        cabin=cabin,
        sensible_share=float(appliance.sensible_share) if inside else 0.0,
        latent_share=float(appliance.latent_share) if inside else 0.0,
        radiant_share=float(appliance.radiant_share) if inside else 0.0,
    )


def place_of(cabin: str | None, cabins: Mapping[str, int]) -> int:
    """Number of a cabin; -1 for none, or one that is not known."""
    return -1 if cabin is None else cabins.get(cabin, -1)


def _converter(entry: InverterEntry | ChargerEntry, cabins: Mapping[str, int]) -> Converter:
    return converter_of(entry.unit, entry.count, place_of(entry.cabin, cabins))


def converter_of(unit: ConverterPart, count: int, cabin: int) -> Converter:
    """So many converters side by side, taken together."""
    return Converter(
        name=unit.name if count == 1 else f"{count} × {unit.name}",
        rated_power=unit.rated_power * count,
        no_load_power=unit.no_load_power * count,
        linear=float(unit.linear),
        quadratic=float(unit.quadratic),
        sleep_power=unit.sleep_power * count,
        overload_shares=tuple(float(share) for share in unit.overload_shares),
        overload_times=tuple(float(time) for time in unit.overload_times),
        full_to=float(unit.full_to),
        derating=float(unit.derating),
        highest_air=float(unit.highest_air),
        mass=unit.mass * count,
        cabin=cabin,
    )
