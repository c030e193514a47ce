"""Ducts, grilles and fans."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Duct, Outlet, Specification
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats

WIDE = replace(boats.DUCT, diameter=0.20, grille_area=0.11)
"""What a handler of 120 L/s needs to be quiet."""
DRY = replace(boats.DAY, highest_dry_bulb=33.0, daily_range=7.0, dew_point=12.0)


def ducted(*ducts: Duct, use: str = "sleeping", **changes: float) -> Specification:
    """Two cabins of that use, each with a handler of 120 L/s that blows into these ducts alike."""
    boat = boats.boat(2)
    handlers = tuple(
        replace(
            boats.handler(f"handler {c + 1}", c, 2400.0),
            outlets=tuple(Outlet(f"outlet {n + 1}", c, 1.0 / len(ducts), duct) for n, duct in enumerate(ducts)),
            **{"return_area": 0.10, **changes},  # type: ignore[arg-type]
        )
        for c in range(2)
    )
    cabins = tuple(replace(cabin, use=use) for cabin in boat.cabins)
    return replace(boat, cabins=cabins, plant=replace(boat.plant, handlers=handlers))


def dry(boat: Specification) -> Specification:
    return replace(boat, place=boats.place(DRY))


SMALL_GRILLE = replace(WIDE, grille_area=0.06)

CASES = {
    "duct-velocity": Case(ducted(WIDE), ducted(replace(WIDE, diameter=0.15))),
    "grille-velocity-asleep": Case(ducted(WIDE), ducted(SMALL_GRILLE)),
    "grille-velocity-awake": Case(ducted(WIDE, use="saloon"), ducted(SMALL_GRILLE, use="saloon")),
    "return-grille-velocity": Case(ducted(WIDE), ducted(WIDE, return_area=0.05)),
    "duct-static-pressure": Case(ducted(WIDE), ducted(WIDE, static_pressure=5.0)),
    "airflow-delivered": Case(ducted(WIDE), ducted(replace(WIDE, diameter=0.10))),
    "branch-balance": Case(ducted(WIDE, WIDE), ducted(WIDE, replace(WIDE, length=12.0, bends=6.0))),
    "ducts-dry": Case(dry(ducted(WIDE)), ducted(replace(WIDE, insulation=0.0))),
}
