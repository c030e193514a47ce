"""Where air handlers blow to and draw from: outlets, ducts and grilles, every gap filled."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from anchorwatt.catalogue.duct import Duct as DuctRecord
from anchorwatt.catalogue.grille import Grille
from anchorwatt.catalogue.part import typed
from anchorwatt.design.cabins import CabinEntry
from anchorwatt.design.cooling import DuctEntry, HandlerEntry, OutletEntry
from anchorwatt.design.document import Key
from anchorwatt.design.ledger import MEMORY, PRACTICE, Ledger
from anchorwatt.design.specification import Duct, Outlet

USUAL_DUCT = "stretched flexible duct"
USUAL_GRILLE = "stamped metal grille"

SIZES = (0.075, 0.100, 0.125, 0.150, 0.175, 0.200, 0.250)
"""m; usual inside diameters of round duct. From memory."""

DUCT_VELOCITY = 3.5  # m/s in a branch: 2.5 to 3.6 in dwellings
VELOCITY_SOURCE = "trade page on duct velocities in dwellings: 2.5 to 3.6 m/s in branches"

# m/s through the open part of a supply grille: 1.5 to 1.8 where it must be quiet (NC 20 to 25), 1.8 to 2.1 else.
GRILLE_VELOCITY, GRILLE_VELOCITY_ELSE = 1.5, 1.8
GRILLE_SOURCE = "architectural-acoustics reference: 1.5 to 1.8 m/s for NC 20 to 25, to 2.1 m/s for NC 25 to 30"

RETURN_OVER_SUPPLY = 1.3

LENGTH_SAME, LENGTH_OTHER, BENDS = 1.5, 3.0, 2.0  # m in its own cabin, m into another one, right-angled bends
SHARES_TOLERANCE = 0.005  # that typed shares may be off 100 % together: three of 33 %
WHOLE = 1.0 + SHARES_TOLERANCE


@dataclass(frozen=True)
class Air:
    """What a handler's air passes."""

    outlets: tuple[Outlet, ...]
    return_area: float  # m2
    return_free_share: float


def check_outlets(entry: HandlerEntry, key: Key, ledger: Ledger) -> None:
    """Refuse outlets of a handler that has no fan, and shares that do not make the whole of its air."""
    unit = entry.unit
    still = "static_pressure" if unit.static_pressure <= 0.0 else "fan_power" if unit.fan_power <= 0.0 else ""
    if still:
        place = (*key, "outlets") if entry.outlets else (*key, "unit")
        found = f"a duct with no fan: {unit.name or 'this handler'} has a {still} of {getattr(unit, still).text}"
        ledger.refuse(place, found, "an air handler with a fan_power and a static_pressure above 0")
    shares = [float(one.share) for one in (entry.outlets or {}).values() if one.share is not None]
    if not shares:
        return
    total, without = sum(shares), len(entry.outlets or {}) - len(shares)
    if without and total >= 1.0 - SHARES_TOLERANCE:
        found = f"outlets with {100.0 * total:.4g} % of the air, and {without} more that are left none"
        ledger.refuse((*key, "outlets"), found, "shares that leave some air for outlets without one")
    elif total > WHOLE or (not without and total < 1.0 - SHARES_TOLERANCE):
        found = f"outlets with {100.0 * total:.4g} % of the air together"
        ledger.refuse((*key, "outlets"), found, "shares that make 100 % together")


def fill_air(
    entry: HandlerEntry, key: Key, cabins: Mapping[str, CabinEntry], index: Mapping[str, int], ledger: Ledger
) -> Air:
    """Outlets with their ducts, and the return grille; an outlet into an unknown cabin is left out."""
    outlets = _outlets(entry, key, cabins, index, ledger)
    given = entry.return_grille
    at: Key = (*key, "return_grille")
    notes = ledger if given else ledger.aside()
    kind = _usual_grille((*at, "kind"), given.kind if given else None, notes)
    rule = f"{RETURN_OVER_SUPPLY:g} times the supply grilles"
    area = notes.fill(
        given.area if given else None,
        (*at, "area"),
        RETURN_OVER_SUPPLY * sum(outlet.duct.grille_area for outlet in outlets),
        "area",
        rule,
        MEMORY,
    )
    if not given:
        ledger.note(at, f"{ledger.show(area, 'area')}, {kind.name}", rule, MEMORY)
    return Air(tuple(outlets), area, float(kind.free_share))


def _outlets(
    entry: HandlerEntry, key: Key, cabins: Mapping[str, CabinEntry], index: Mapping[str, int], ledger: Ledger
) -> list[Outlet]:
    entries = entry.outlets
    if entries is None:
        return _usual_outlets(entry, (*key, "outlets"), cabins, index, ledger)
    given = [float(one.share) for one in entries.values() if one.share is not None]
    without = len(entries) - len(given)
    rest = max(0.0, 1.0 - sum(given)) / without if without else 0.0
    scale = 1.0 if without else 1.0 / sum(given)
    outlets = []
    for name, one in entries.items():
        place: Key = (*key, "outlets", name)
        rule = "an equal part of what the others leave" if given else "all outlets alike"
        share = ledger.fill(one.share, (*place, "share"), rest, "share", rule, "as the file leaves it") * scale
        if one.cabin not in index:
            continue
        flow = float(entry.unit.airflow) * share
        at: Key = (*place, "duct")
        duct = _duct(
            one, at, flow, one.cabin == entry.cabin, cabins[one.cabin].use, ledger if one.duct else ledger.aside()
        )
        if one.duct is None:
            ledger.note(at, _in_words(duct, ledger), _duct_rule(flow), VELOCITY_SOURCE)
        outlets.append(Outlet(name, index[one.cabin], share, duct))
    return outlets


def _usual_outlets(
    entry: HandlerEntry, key: Key, cabins: Mapping[str, CabinEntry], index: Mapping[str, int], ledger: Ledger
) -> list[Outlet]:
    """One outlet into the handler's cabin, or as few as keep the air slow in the largest of the usual ducts."""
    count = max(1, math.ceil(float(entry.unit.airflow) / _flow(SIZES[-1]) - 1e-9))
    flow = float(entry.unit.airflow) / count
    duct = _duct(OutletEntry(cabin=entry.cabin), key, flow, True, cabins[entry.cabin].use, ledger.aside())
    ledger.note(
        key,
        f"{count} into {entry.cabin}, {_in_words(duct, ledger)}",
        f"all of the air into its own cabin; {_duct_rule(flow)}",
        VELOCITY_SOURCE,
    )
    names = ["outlet"] if count == 1 else [f"outlet {number + 1}" for number in range(count)]
    return [Outlet(name, index[entry.cabin], 1.0 / count, duct) for name in names]


def _in_words(duct: Duct, ledger: Ledger) -> str:
    return (
        f"{ledger.show(duct.diameter, 'length')} across, {ledger.show(duct.length, 'length')} long, "
        f"{duct.bends:g} bends, grille of {ledger.show(duct.grille_area, 'area')}"
    )


def _duct_rule(flow: float) -> str:
    return f"{USUAL_DUCT}, {_size(flow)[1]}; {USUAL_GRILLE}"


def _size(flow: float) -> tuple[float, str]:
    """m of the duct for a flow, and how it was chosen."""
    for size in SIZES:
        if flow <= _flow(size) * (1.0 + 1e-9):
            return size, f"smallest usual size up to {DUCT_VELOCITY:g} m/s"
    velocity = flow / (math.pi / 4.0 * SIZES[-1] * SIZES[-1])
    return SIZES[-1], f"largest usual size, with {velocity:.1f} m/s in it"


def _duct(outlet: OutletEntry, key: Key, flow: float, same_cabin: bool, use: str, ledger: Ledger) -> Duct:
    given = outlet.duct or DuctEntry()
    kind = given.kind
    if kind is None:
        kind = typed(DuctRecord, USUAL_DUCT)
        ledger.note((*key, "kind"), kind.name, "usual on boats, laid with care", MEMORY)
    grille = _usual_grille((*key, "grille"), given.grille, ledger)
    size, chosen = _size(flow)
    quiet = use == "sleeping"
    through = GRILLE_VELOCITY if quiet else GRILLE_VELOCITY_ELSE
    return Duct(
        length=ledger.fill(
            given.length,
            (*key, "length"),
            LENGTH_SAME if same_cabin else LENGTH_OTHER,
            "length",
            "within the handler's cabin" if same_cabin else "into another cabin",
            PRACTICE,
        ),
        diameter=ledger.fill(
            given.diameter,
            (*key, "diameter"),
            size,
            "length",
            chosen,
            VELOCITY_SOURCE,
        ),
        roughness=float(kind.roughness),
        stretch_factor=kind.stretch_factor,
        bends=ledger.fill(given.bends, (*key, "bends"), BENDS, "", "one at the handler, one at the grille", PRACTICE),
        bend_loss=kind.bend_loss,
        insulation=float(kind.insulation),
        insulation_conductivity=float(kind.insulation_conductivity),
        grille_area=ledger.fill(
            given.grille_area,
            (*key, "grille_area"),
            flow / (through * grille.free_share),
            "area",
            f"{through:g} m/s through its open part{', quiet for sleepers' if quiet else ''}",
            GRILLE_SOURCE,
        ),
        grille_free_share=float(grille.free_share),
        grille_loss=grille.loss,
    )


def _usual_grille(key: Key, given: Grille | None, ledger: Ledger) -> Grille:
    if given is not None:
        return given
    ledger.note(key, USUAL_GRILLE, "the usual kind", MEMORY)
    return typed(Grille, USUAL_GRILLE)


def _flow(diameter: float) -> float:
    """m3/s that a duct carries at the velocity that it is chosen for."""
    return DUCT_VELOCITY * math.pi / 4.0 * diameter * diameter
