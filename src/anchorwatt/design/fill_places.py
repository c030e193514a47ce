"""Where every part stands: what was typed, else the centre of its compartment, else amidships."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from anchorwatt.catalogue.part import nearest
from anchorwatt.design.fill_centres import placed
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.places import GENERATOR, REPLACED, PlaceEntry
from anchorwatt.design.specification import Cabin, Item, Point, Space

ROLES = {
    "cooling.plant.unit": "condensing unit",
    "ac.inverter.unit": "inverter",
    "ac.charger.unit": "charger",
    "ac.transformer.unit": "transformer",
    "dc.bank.module": "bank",
    "dc.solar.panel": "solar",
    "dc.engine_battery.unit": "engine battery",
}
"""What each part is called in plain words, by its key in the file."""

ON_AN_ENGINE = ("alternator", "belt")
ON_TOP = 2.0
"""m over the deck at which solar panels lie, on a deckhouse or an arch."""


def roles(items: Sequence[Item]) -> dict[str, tuple[str, ...]]:
    """Tags by what the file may call them; an engine's name stands for all that hangs on it."""
    found: dict[str, tuple[str, ...]] = {item.tag: (item.tag,) for item in items}
    titles = [item.key.split(".")[4] for item in items if item.kind == "alternator"]
    for item in items:
        if item.key in ROLES:
            found[ROLES[item.key]] = (item.tag,)
            continue
        parts = item.key.split(".")
        if item.kind == "air_handler":
            found[f"handler {parts[3]}"] = (item.tag,)
        elif item.kind in ON_AN_ENGINE:
            engine, title = parts[2], parts[4]
            found[f"{item.kind} {title} of {engine}"] = (item.tag,)
            if titles.count(title) == 1:
                found[f"{item.kind} {title}"] = (item.tag,)
            found[f"engine {engine}"] = (*found.get(f"engine {engine}", ()), item.tag)
    return found


def fill_places(
    items: Sequence[Item],
    places: Mapping[str, PlaceEntry],
    spaces: Sequence[Space],
    cabins: Sequence[Cabin],
    hull: Hull,
    ledger: Ledger,
) -> tuple[Item, ...]:
    """Every part at its place."""
    known = roles(items)
    by_tag: dict[str, str] = {}
    for name in places:
        if name in (GENERATOR, REPLACED):
            continue
        if name not in known:
            hint = nearest(name, [*known, GENERATOR, REPLACED])
            called = [one for one in known if len(known[one]) == 1 and one not in {item.tag for item in items}]
            ledger.refuse(
                ("places", name),
                f"no part “{name}”{hint}",
                f"a tag, {items[0].tag} to {items[-1].tag}, or what a part is: {', '.join(called)}, …",
            )
            continue
        if name.startswith("engine ") and len(known[name]) > 1:
            continue
        (tag,) = known[name]
        if tag in by_tag:
            ledger.refuse(
                ("places", name), f"a second place for {tag}; the first is places.{by_tag[tag]}", "one place a part"
            )
            continue
        by_tag[tag] = name
    _apart(by_tag, places, ledger)
    engines = {tag: name for name in places if name.startswith("engine ") for tag in known.get(name, ())}
    stands = {space.name: number for number, space in enumerate(spaces)}
    found: list[Item] = []
    belts: dict[str, Item] = {}
    for item in items:
        machine = belts.get(item.key.rpartition(".")[0]) if item.kind == "belt" else None
        said = by_tag.get(item.tag) or (None if machine is not None else engines.get(item.tag))
        if said is None and machine is not None:  # a belt lies beside its alternator
            made = replace(item, position=machine.position, placed=machine.placed, space=machine.space)
        elif said is None:
            made = _unplaced(item, cabins, hull, ledger)
        else:
            made = _placed(item, said, places[said], stands, spaces, cabins, hull, ledger)
        if item.kind == "alternator":
            belts[item.key.rpartition(".")[0]] = made
        found.append(made)
    return tuple(found)


def amidships(hull: Hull) -> Point:
    """Half the waterline, on the centreline, at the waterline."""
    return Point(0.5 * hull.waterline, 0.0, 0.0)


def _apart(by_tag: Mapping[str, str], places: Mapping[str, PlaceEntry], ledger: Ledger) -> None:
    """Two parts with one centre are one place typed twice."""
    taken: dict[tuple[float, ...], str] = {}
    for name in by_tag.values():
        entry = places[name]
        point = (entry.forward, entry.starboard, entry.up)
        if None in point:
            continue
        at = tuple(round(float(value), 6) for value in point if value is not None)
        if at in taken:
            ledger.refuse(("places", name), f"the very place of places.{taken[at]}", "a place of its own for each part")
        taken.setdefault(at, name)


def _unplaced(item: Item, cabins: Sequence[Cabin], hull: Hull, ledger: Ledger) -> Item:
    if item.cabin >= 0:
        point, rule = cabins[item.cabin].centre, f"centre of {cabins[item.cabin].name}"
    elif item.kind == "solar_panel":
        point, rule = replace(amidships(hull), up=hull.freeboard + ON_TOP), "on the deckhouse or an arch, amidships"
    else:
        point, rule = amidships(hull), "amidships at the waterline: no compartment and no place is given"
    told = f"{ledger.show(point.forward, 'length')} forward, {_side(point.starboard, ledger)}"
    ledger.note(("places", item.tag), told, f"{item.name}: {rule}", MEMORY)
    return replace(item, position=point, placed=False)


def _side(starboard: float, ledger: Ledger) -> str:
    if math.isclose(starboard, 0.0, abs_tol=1e-9):
        return "on the centreline"
    return f"{ledger.show(abs(starboard), 'length')} to {'starboard' if starboard > 0.0 else 'port'}"


def _placed(
    item: Item,
    name: str,
    entry: PlaceEntry,
    stands: Mapping[str, int],
    spaces: Sequence[Space],
    cabins: Sequence[Cabin],
    hull: Hull,
    ledger: Ledger,
) -> Item:
    space = stands.get(entry.space or "", -1)
    if space >= 0:
        estimate, rule = spaces[space].centre, f"centre of {spaces[space].name}"
    elif item.cabin >= 0:
        estimate, rule = cabins[item.cabin].centre, f"centre of {cabins[item.cabin].name}"
    else:
        estimate, rule = amidships(hull), "amidships at the waterline"
    # A space is a place that somebody named: its centre is no guess of ours.
    notes = ledger.aside() if space >= 0 else ledger
    position = placed(entry, ("places", name), estimate, rule, hull, notes)
    if notes is not ledger:
        ledger.problems += notes.problems
    said = space >= 0 or (entry.forward is not None and entry.starboard is not None)
    cabin = spaces[space].cabin if space >= 0 and item.cabin < 0 else item.cabin
    return replace(item, position=position, placed=said, space=space, cabin=cabin)
