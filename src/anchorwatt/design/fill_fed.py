"""What takes alternating current aboard, and the voltage and the frequency that each accepts.

Nothing here is estimated: what nobody has said stays unknown.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from anchorwatt.catalogue.fed import Fed as FedPart
from anchorwatt.catalogue.transformer import Transformer
from anchorwatt.design.cooling import Cooling
from anchorwatt.design.document import Key, dotted
from anchorwatt.design.power import AlternatingSide
from anchorwatt.design.specification import Fed, FedFrom

Range = tuple[float, float]

WOUND = 0.10
"""Share of its primary voltage that a transformer bears either way, where it says no more. From memory."""


def fill_fed(cooling: Cooling, ac: AlternatingSide) -> tuple[Fed, ...]:
    """Charger, transformer, shared plant with its fans, AC loads; what is only compared with is not aboard."""
    return tuple(_all(cooling, ac))


def _all(cooling: Cooling, ac: AlternatingSide) -> Iterator[Fed]:
    if ac.charger is not None:
        yield _fed("charger", ("ac", "charger", "unit"), ac.charger.unit, FedFrom.SHORE)
    if ac.transformer is not None:
        unit = ac.transformer.unit
        yield Fed(
            "transformer",
            dotted(("ac", "transformer", "unit")),
            FedFrom.TRANSFER,
            _primary(unit),
            _range(unit.frequency_range),
        )
    plant = cooling.plant
    yield _fed("cooling plant", ("cooling", "plant", "unit"), plant.unit, FedFrom.PANEL)
    for name, handler in plant.handlers.items():
        yield _fed(f"handler {name}", ("cooling", "plant", "handlers", name, "unit"), handler.unit, FedFrom.PANEL)
    for name, load in ac.loads.items():
        yield _fed(name, ("ac", "loads", name, "appliance"), load.appliance, FedFrom.PANEL)


def _fed(name: str, key: Key, part: FedPart, fed_from: FedFrom) -> Fed:
    return Fed(name, dotted(key), fed_from, _range(part.voltage_range), _range(part.frequency_range))


def _primary(unit: Transformer) -> Range:
    """What a transformer accepts: what it says, else a band round the voltage that its primary side is wound for."""
    if unit.voltage_range is not None:
        return _range(unit.voltage_range)
    wound = math.nan if unit.primary_voltage is None else float(unit.primary_voltage)
    return (1.0 - WOUND) * wound, (1.0 + WOUND) * wound


def _range(given: tuple[float, float] | None) -> Range:
    return (math.nan, math.nan) if given is None else (float(given[0]), float(given[1]))
