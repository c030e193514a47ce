"""The parts of a design as they are bought and carried, one row for each place in the file that takes a part."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from anchorwatt.catalogue.part import Part
from anchorwatt.design.charging import Charging
from anchorwatt.design.cooling import Cooling
from anchorwatt.design.document import Key, dotted
from anchorwatt.design.fill_power import place_of
from anchorwatt.design.power import AlternatingSide, DirectSide
from anchorwatt.design.specification import Item, Point

LETTERS = {
    "battery_module": "G",
    "alternator": "G",
    "solar_panel": "G",
    "inverter": "T",
    "charger": "T",
    "transformer": "T",
    "dc_dc": "T",
    "condensing_unit": "E",
    "air_handler": "E",
    "belt": "V",
}
"""Classes of IEC 81346-2, from memory: G gives power, T converts it, E heats or cools. A belt has none: ours is V."""

Row = tuple[Key, str, Part, float, int, str | None]
"""Key, kind, part, kg of one, how many, and the compartment."""


def fill_items(
    cooling: Cooling,
    ac: AlternatingSide,
    dc: DirectSide,
    charging: Charging,
    cabins: Mapping[str, int],
    centres: Sequence[Point],
    amidships: Point,
) -> tuple[Item, ...]:
    """Cooling plant, power and alternators; engines are aboard already, cables, ducts and pipes are not sized yet."""
    rows = (*_cooling(cooling), *_alternating(ac), *_direct(dc), *_charging(charging))
    counted: dict[str, int] = {}
    items = []
    for key, kind, part, mass, count, cabin in rows:
        letter = LETTERS[kind]
        counted[letter] = counted.get(letter, 0) + 1
        index = place_of(cabin, cabins)
        items.append(
            Item(
                tag=f"{letter}{counted[letter]}",
                key=dotted(key),
                kind=kind,
                name=part.name,
                count=count,
                mass=mass,
                price=math.nan if part.price is None else float(part.price.amount),
                currency="" if part.price is None else part.price.currency,
                lead_time=math.nan if part.lead_time is None else float(part.lead_time),
                supplier=part.supplier or "",
                cabin=index,
                space=-1,
                position=amidships if index < 0 else centres[index],
                placed=False,
                size=_size(part),
                clearance=math.nan if part.clearance is None else float(part.clearance),
                service=part.service or "",
                upright=part.upright,
                highest_air=_known(getattr(part, "full_to", None)),
            )
        )
    return tuple(items)


def _cooling(cooling: Cooling) -> Iterator[Row]:
    plant, key = cooling.plant, ("cooling", "plant")
    yield (*key, "unit"), "condensing_unit", plant.unit, float(plant.unit.mass), 1, None
    for name, entry in plant.handlers.items():
        place: Key = (*key, "handlers", name, "unit")
        yield place, "air_handler", entry.unit, float(entry.unit.mass), 1, entry.cabin


def _alternating(ac: AlternatingSide) -> Iterator[Row]:
    inverter, charger, transformer = ac.inverter, ac.charger, ac.transformer
    yield (
        ("ac", "inverter", "unit"),
        "inverter",
        inverter.unit,
        float(inverter.unit.mass),
        inverter.count,
        inverter.cabin,
    )
    if charger is not None:
        yield ("ac", "charger", "unit"), "charger", charger.unit, float(charger.unit.mass), charger.count, charger.cabin
    if transformer is not None:
        unit = transformer.unit
        yield ("ac", "transformer", "unit"), "transformer", unit, float(unit.mass), 1, transformer.cabin


def _direct(dc: DirectSide) -> Iterator[Row]:
    bank, solar, battery = dc.bank, dc.solar, dc.engine_battery
    modules = bank.series * bank.parallel
    yield ("dc", "bank", "module"), "battery_module", bank.module, float(bank.module.mass), modules, bank.cabin
    if solar is not None:
        yield ("dc", "solar", "panel"), "solar_panel", solar.panel, float(solar.panel.mass), solar.count, None
    if battery is not None:
        yield ("dc", "engine_battery", "unit"), "dc_dc", battery.unit, float(battery.unit.mass), 1, battery.cabin


def _charging(charging: Charging) -> Iterator[Row]:
    for name, engine in charging.engines.items():
        for title, entry in engine.alternators.items():
            key: Key = ("charging", "engines", name, "alternators", title)
            machine, belt = entry.alternator, entry.belt
            yield (*key, "alternator"), "alternator", machine, float(machine.mass), 1, engine.cabin
            yield (*key, "belt"), "belt", belt, float(belt.mass), 1, engine.cabin


def _size(part: Part) -> tuple[float, float, float]:
    if part.size is None:
        return math.nan, math.nan, math.nan
    length, width, height = part.size
    return float(length), float(width), float(height)


def _known(value: float | None) -> float:
    """A figure that a part may leave out; nan where it does."""
    return math.nan if value is None else float(value)
