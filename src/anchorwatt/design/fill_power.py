"""The AC side and the DC side, every gap filled."""

from __future__ import annotations

import math
from collections.abc import Mapping

from anchorwatt.catalogue.charger import Charger
from anchorwatt.catalogue.inverter import Inverter
from anchorwatt.catalogue.shore_service import ShoreService
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
    TransformerParts,
)
from anchorwatt.design.specification import Bank, Converter, Load, Shore, Solar, Transformer

NOMINAL_VOLTAGES = (12.0, 24.0, 48.0)

# A bank's voltage may stand this far from the nominal voltage of the boat: 12.8 V on 12 V, 51.2 V on 48 V.
VOLTAGE_BAND = 0.10


def fill_loads(ac: AlternatingSide, dc: DirectSide, cabins: Mapping[str, int]) -> list[Load]:
    """All electrical loads, those on alternating current first."""
    return [_load(name, entry, True, cabins) for name, entry in ac.loads.items()] + [
        _load(name, entry, False, cabins) for name, entry in dc.loads.items()
    ]


def fill_inverter(ac: AlternatingSide, cabins: Mapping[str, int]) -> Converter:
    """The inverters taken together."""
    return _converter(ac.inverter, cabins)


def fill_charger(ac: AlternatingSide, cabins: Mapping[str, int]) -> Converter | None:
    """The chargers taken together."""
    return None if ac.charger is None else _converter(ac.charger, cabins)


def fill_transformer(transformer: TransformerParts | None, cabins: Mapping[str, int]) -> Transformer | None:
    """The isolation transformer."""
    if transformer is None:
        return None
    unit = transformer.unit
    return Transformer(
        unit.name,
        float(unit.rated_power),
        float(unit.core_loss),
        float(unit.copper_loss),
        float(unit.mass),
        place_of(transformer.cabin, cabins),
    )


def fill_shore(shore: ShoreService | None) -> Shore | None:
    """The shore service."""
    if shore is None:
        return None
    power = shore.voltage * shore.current * shore.continuous_share
    return Shore(shore.name, float(shore.voltage), float(shore.current), power)


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
    return Bank(
        module=module.name,
        series=bank.series,
        parallel=bank.parallel,
        cells=module.cells_in_series * bank.series,
        nominal_voltage=module.nominal_voltage * bank.series,
        capacity=module.capacity * bank.parallel,
        resistance=module.resistance * bank.series / bank.parallel + links,
        charge_points=tuple(float(point) for point in cell.charge_points),
        open_circuit_voltages=tuple(float(voltage) for voltage in cell.open_circuit_voltages),
        resistance_points=tuple(cell.resistance_points),
        charge_current=module.charge_current * bank.parallel,
        discharge_current=module.discharge_current * bank.parallel,
        absorb_voltage=module.absorb_voltage * bank.series,
        cut_off_voltage=module.cut_off_voltage * bank.series,
        cut_off_charge=float(module.cut_off_charge),
        temperature=temperature,
        mass=module.mass * bank.series * bank.parallel,
        cabin=place_of(bank.cabin, cabins),
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
        delivered_share=ledger.fill(
            solar.delivered_share,
            (*key, "delivered_share"),
            0.75,
            "share",
            "shade of rig and rails, dirt, wiring and controller; heat counted apart",
            MEMORY,
        ),
        faces=ledger.fill(solar.faces, (*key, "faces"), 0.0, "angle", "flat on deck", MEMORY),
        tilt=ledger.fill(solar.tilt, (*key, "tilt"), 0.0, "angle", "flat on deck", MEMORY),
        mass=panel.mass * solar.count,
    )


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
    unit: Inverter | Charger = entry.unit
    count = entry.count
    return Converter(
        name=unit.name if count == 1 else f"{count} × {unit.name}",
        rated_power=unit.rated_power * count,
        no_load_power=unit.no_load_power * count,
        linear=float(unit.linear),
        quadratic=float(unit.quadratic),
        sleep_power=unit.sleep_power * count,
        mass=unit.mass * count,
        cabin=place_of(entry.cabin, cabins),
    )
