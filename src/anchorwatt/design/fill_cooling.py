"""The cooling plant and what it is compared with, every gap filled."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from anchorwatt.catalogue.circuit import Circuit
from anchorwatt.catalogue.part import typed
from anchorwatt.catalogue.refrigerant import Refrigerant
from anchorwatt.catalogue.refrigerant import RefrigerantSafety as SafetyRecord
from anchorwatt.design.cabins import CabinEntry
from anchorwatt.design.cooling import AlternativeEntry, ChilledWaterEntry, Cooling, HandlerEntry, PlantEntry
from anchorwatt.design.document import Key
from anchorwatt.design.fill_air import check_outlets, fill_air
from anchorwatt.design.fill_seawater import fill_seawater
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import MEMORY, PRACTICE, Ledger
from anchorwatt.design.specification import (
    ChilledWaterPlant,
    Handler,
    RefrigerantSafety,
    Refrigeration,
    SelfContainedPlant,
    SelfContainedUnit,
    SharedPlant,
)

HANDLERS: Key = ("cooling", "plant", "handlers")
FAN_COILS: Key = ("cooling", "chilled_water", "fan_coils")

LINE_SHARE = 0.5  # of the boat's length


def check_cooling(cooling: Cooling, ledger: Ledger) -> None:
    """Refuse handlers and fan coils whose outlets cannot be."""
    for name, entry in cooling.plant.handlers.items():
        check_outlets(entry, (*HANDLERS, name), ledger)
    if cooling.chilled_water is not None:
        for name, entry in (cooling.chilled_water.fan_coils or {}).items():
            check_outlets(entry, (*FAN_COILS, name), ledger)


def fill_plant(plant: PlantEntry, cabins: Mapping[str, CabinEntry], hull: Hull, ledger: Ledger) -> SharedPlant:
    """The shared plant; a handler in an unknown cabin is left out."""
    unit = plant.unit
    return SharedPlant(
        name=unit.name,
        circuit=circuit_of(unit, float(unit.turn_down)),
        pump_power=float(unit.pump_power),
        standby_power=float(unit.standby_power),
        mass=float(unit.mass),
        handlers=_handlers(plant.handlers, HANDLERS, cabins, hull, ledger),
        reversible=unit.reversible,
        highest_heating_condensing=float(unit.highest_heating_condensing),
        lowest_heating_condensing=float(unit.lowest_heating_condensing),
        charge=float(unit.charge),
        charge_per_length=float(unit.charge_per_length),
        charged_length=float(unit.charged_length),
        safety=safety_of(unit.refrigerant),
        sea=fill_seawater(plant.seawater, unit, hull, ledger),
    )


def fill_alternative(
    alternative: AlternativeEntry | None, cabins: Mapping[str, CabinEntry], ledger: Ledger
) -> SelfContainedPlant | None:
    """The self-contained units; one in an unknown cabin is left out."""
    if alternative is None:
        return None
    key: Key = ("cooling", "alternative")
    index = _index(cabins)
    units = tuple(
        SelfContainedUnit(
            name=name,
            cabin=index[entry.cabin],
            circuit=circuit_of(entry.unit, 1.0),
            airflow=float(entry.unit.airflow),
            fan_power=float(entry.unit.fan_power),
            bypass_factor=float(entry.unit.bypass_factor),
            approach=float(entry.unit.approach),
            hysteresis=float(entry.unit.hysteresis),
            starting_ratio=float(entry.unit.starting_ratio),
            mass=float(entry.unit.mass),
        )
        for name, entry in alternative.units.items()
        if entry.cabin in index
    )
    total = sum(unit.circuit.rated_capacity for unit in units)
    return SelfContainedPlant(
        units=units,
        pump_power=ledger.fill(
            alternative.pump_power,
            (*key, "pump_power"),
            30.0 + 0.014 * total,
            "power",
            "30 W and 14 W for each kW of all units",
            f"{MEMORY}: 40 to 100 W up to 5 kW, 100 to 250 W up to 15 kW",
        ),
        mass=ledger.fill(
            alternative.mass,
            (*key, "mass"),
            5.0 + 2.0 * len(units),
            "mass",
            "pump and strainer 5 kg, 2 kg of manifold and hose a unit",
            MEMORY,
        ),
    )


def fill_chilled(
    chilled: ChilledWaterEntry | None,
    shared: SharedPlant,
    cabins: Mapping[str, CabinEntry],
    hull: Hull,
    ledger: Ledger,
) -> ChilledWaterPlant | None:
    """The chiller and its fan coils; in place of the shared plant's handlers where the file names none."""
    if chilled is None:
        return None
    unit = chilled.unit
    if chilled.fan_coils is None:
        coils = shared.handlers
        ledger.note(
            FAN_COILS,
            f"{len(coils)}, in place of the air handlers",
            f"same cabins, air, fans and outlets; the coil {unit.fan_coil_approach.text} over the water's mean",
            PRACTICE,
        )
    else:
        coils = _handlers(chilled.fan_coils, FAN_COILS, cabins, hull, ledger)
    return ChilledWaterPlant(
        name=unit.name,
        circuit=circuit_of(unit, float(unit.turn_down)),
        supply_temperature=float(unit.supply_temperature),
        evaporator_approach=float(unit.evaporator_approach),
        water_rise=float(unit.water_rise),
        water_pump_power=float(unit.water_pump_power),
        sea_pump_power=float(unit.sea_pump_power),
        standby_power=float(unit.standby_power),
        fan_coils=tuple(replace(coil, approach=float(unit.fan_coil_approach)) for coil in coils),
        mass=float(unit.mass),
    )


def safety_of(refrigerant: Refrigerant) -> RefrigerantSafety:
    """What the safety standards say of a refrigerant of the catalogue."""
    row = typed(SafetyRecord, refrigerant)
    return RefrigerantSafety(
        name=row.designation,
        safety_class=row.safety_class,
        flammable_limit=math.nan if row.flammable_limit is None else float(row.flammable_limit),
        practical_limit=float(row.practical_limit),
        limit_with_ventilation=float(row.limit_with_ventilation),
        limit_with_two_measures=float(row.limit_with_two_measures),
        warming_potential=row.warming_potential,
        source=row.source,
    )


def _handlers(
    entries: Mapping[str, HandlerEntry], above: Key, cabins: Mapping[str, CabinEntry], hull: Hull, ledger: Ledger
) -> tuple[Handler, ...]:
    index = _index(cabins)
    return tuple(
        _handler(name, entry, (*above, name), cabins, index, hull, ledger)
        for name, entry in entries.items()
        if entry.cabin in index and (entry.thermostat or entry.cabin) in index
    )


def _handler(
    name: str,
    entry: HandlerEntry,
    key: Key,
    cabins: Mapping[str, CabinEntry],
    index: Mapping[str, int],
    hull: Hull,
    ledger: Ledger,
) -> Handler:
    air = fill_air(entry, key, cabins, index, ledger)
    return Handler(
        name=name,
        cabin=index[entry.thermostat or entry.cabin],
        rated_capacity=float(entry.unit.rated_capacity),
        airflow=float(entry.unit.airflow),
        fan_power=float(entry.unit.fan_power),
        lowest_fan=float(entry.unit.lowest_fan),
        bypass_factor=float(entry.unit.bypass_factor),
        approach=float(entry.unit.approach),
        band=ledger.fill(
            entry.band, (*key, "band"), 1.0, "temperature difference", "usual of a proportional thermostat", MEMORY
        ),
        priority=1.0 if entry.priority is None else entry.priority,
        mass=float(entry.unit.mass),
        outlets=air.outlets,
        static_pressure=float(entry.unit.static_pressure),
        return_area=air.return_area,
        return_free_share=air.return_free_share,
        line_length=ledger.fill(
            entry.line_length,
            (*key, "line_length"),
            LINE_SHARE * hull.length,
            "length",
            f"{LINE_SHARE:.0%} of the boat's length, one way",
            PRACTICE,
        ),
    )


def _index(cabins: Mapping[str, CabinEntry]) -> dict[str, int]:
    return {name: number for number, name in enumerate(cabins)}


def circuit_of(unit: Circuit, turn_down: float) -> Refrigeration:
    """A catalogue record's refrigerant circuit as plain figures."""
    return Refrigeration(
        refrigerant=unit.refrigerant,
        rated_capacity=float(unit.rated_capacity),
        rated_power=float(unit.rated_power),
        rated_evaporating=float(unit.rated_evaporating),
        rated_sea=float(unit.rated_sea),
        superheat=float(unit.superheat),
        subcooling=float(unit.subcooling),
        sea_flow=float(unit.sea_flow),
        condenser_ntu=unit.condenser_ntu,
        turn_down=turn_down,
        degradation=float(unit.degradation),
        lowest_evaporating=float(unit.lowest_evaporating),
        highest_evaporating=float(unit.highest_evaporating),
        highest_condensing=float(unit.highest_condensing),
    )
