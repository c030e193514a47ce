"""Parts in spaces."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.design.specification import Item, Space, Specification
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats


def part(kind: str, tag: str, **changes: object) -> Item:
    made = boats.item(f"key.{tag}", kind, f"an invented {kind}", 1, 10.0, math.nan, "", cabin=0, tag=tag)
    sized = replace(
        made,
        space=0,
        size=(0.30, 0.20, 0.40),
        clearance=0.05,
        service="front",
        upright=True,
        highest_air=60.0,
    )
    return replace(sized, **changes)  # type: ignore[arg-type]


def boat(space: Space, *items: Item, full_to: float = 60.0) -> Specification:
    made = boats.boat(1)
    inverter = replace(made.inverter, full_to=full_to, highest_air=full_to + 5.0, derating=0.2)
    return replace(made, spaces=(space,), items=items, inverter=inverter)


INVERTER, CHARGER = part("inverter", "T1"), part("charger", "T2")
FITS = boat(boats.space(), INVERTER, CHARGER)
SHORT = boats.space(size=(0.60, 0.30, 0.60), opening=(0.5, 0.5))
HOT = boat(boats.space(airflow=0.0), replace(INVERTER, highest_air=20.0), full_to=20.0)
IN_NO_COMPARTMENT = boat(boats.space(cabin=-1), INVERTER)
SIZELESS = boat(boats.space(), INVERTER, part("charger", "T2", size=(math.nan,) * 3))
NARROW = boats.space(size=(0.35, 0.9, 0.5), opening=(0.34, 0.40))

CASES = {
    "goes-through-opening": Case(FITS, boat(boats.space(opening=(0.35, 0.38)), INVERTER), SIZELESS),
    "fits-in-space": Case(FITS, boat(SHORT, INVERTER, CHARGER), SIZELESS),
    "serviceable": Case(FITS, boat(NARROW, part("inverter", "T1", size=(0.8, 0.25, 0.4), clearance=0.0)), SIZELESS),
    "space-cool-enough": Case(FITS, HOT, IN_NO_COMPARTMENT),
}
