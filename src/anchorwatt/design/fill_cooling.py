"""The cooling plant and its alternative, every gap filled."""

from __future__ import annotations

from collections.abc import Mapping

from anchorwatt.catalogue.condensing_unit import CondensingUnit
from anchorwatt.catalogue.self_contained_unit import SelfContainedUnit as UnitRecord
from anchorwatt.design.cooling import AlternativeEntry, PlantEntry
from anchorwatt.design.document import Key
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.specification import (
    Handler,
    Refrigeration,
    SelfContainedPlant,
    SelfContainedUnit,
    SharedPlant,
)


def fill_plant(plant: PlantEntry, cabins: Mapping[str, int], ledger: Ledger) -> SharedPlant:
    """The shared plant; a handler in an unknown cabin is left out."""
    unit = plant.unit
    handlers = []
    for name, entry in plant.handlers.items():
        if entry.cabin not in cabins:
            continue
        key: Key = ("cooling", "plant", "handlers", name)
        handlers.append(
            Handler(
                name=name,
                cabin=cabins[entry.cabin],
                rated_capacity=float(entry.unit.rated_capacity),
                airflow=float(entry.unit.airflow),
                fan_power=float(entry.unit.fan_power),
                lowest_fan=float(entry.unit.lowest_fan),
                bypass_factor=float(entry.unit.bypass_factor),
                approach=float(entry.unit.approach),
                band=ledger.fill(
                    entry.band,
                    (*key, "band"),
                    1.0,
                    "temperature difference",
                    "usual of a proportional thermostat",
                    MEMORY,
                ),
                priority=ledger.fill(entry.priority, (*key, "priority"), 1.0, "", "all alike", "as the file leaves it"),
                mass=float(entry.unit.mass),
            )
        )
    return SharedPlant(
        name=unit.name,
        circuit=_circuit(unit, float(unit.turn_down)),
        pump_power=float(unit.pump_power),
        standby_power=float(unit.standby_power),
        mass=float(unit.mass),
        handlers=tuple(handlers),
    )


def fill_alternative(
    alternative: AlternativeEntry | None, cabins: Mapping[str, int], ledger: Ledger
) -> SelfContainedPlant | None:
    """The self-contained units; one in an unknown cabin is left out."""
    if alternative is None:
        return None
    key: Key = ("cooling", "alternative")
    units = tuple(
        SelfContainedUnit(
            name=name,
            cabin=cabins[entry.cabin],
            circuit=_circuit(entry.unit, 1.0),
            airflow=float(entry.unit.airflow),
            fan_power=float(entry.unit.fan_power),
            bypass_factor=float(entry.unit.bypass_factor),
            approach=float(entry.unit.approach),
            hysteresis=float(entry.unit.hysteresis),
            starting_ratio=float(entry.unit.starting_ratio),
            mass=float(entry.unit.mass),
        )
        for name, entry in alternative.units.items()
        if entry.cabin in cabins
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


def _circuit(unit: CondensingUnit | UnitRecord, turn_down: float) -> Refrigeration:
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
