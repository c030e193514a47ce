"""What a refit takes out of the boat though its weighed displacement still counts it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from anchorwatt.design.boat import Boat
from anchorwatt.design.document import Key
from anchorwatt.design.fill_centres import placed
from anchorwatt.design.fill_places import amidships
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import Ledger
from anchorwatt.design.places import GENERATOR, REPLACED, PlaceEntry
from anchorwatt.design.specification import Cabin, Generator, Item, LeadAcidBank, TakenOut

LARGEST_SHARE = 0.3
"""Of the displacement: more is a slip of the pen."""


def taken_out(
    boat: Boat,
    places: Mapping[str, PlaceEntry],
    items: Sequence[Item],
    cabins: Sequence[Cabin],
    generator: Generator | None,
    replaced: LeadAcidBank | None,
    hull: Hull,
    ledger: Ledger,
) -> tuple[TakenOut, ...]:
    """What the file says is removed, where it stood."""
    for name in (GENERATOR, REPLACED):
        if name in places and name not in boat.removed:
            ledger.refuse(
                ("places", name), f"a place for the {name}, which the design does not take out", "boat.removed with it"
            )
    found = []
    for number, name in enumerate(boat.removed):
        key: Key = ("boat", "removed", number)
        if name in boat.removed[:number]:
            ledger.refuse(key, f"“{name}” twice", "each once")
            continue
        part = generator if name == GENERATOR else replaced
        if part is None:
            where = "generator" if name == GENERATOR else "dc.replaced_bank"
            ledger.refuse(key, f"a {name} that the file does not describe", f"one under {where}")
            continue
        if part.mass > LARGEST_SHARE * hull.displacement:
            ledger.refuse(
                key,
                f"a {name} of {ledger.show(part.mass, 'mass')} in a boat of {ledger.show(hull.displacement, 'mass')}",
                f"at most {LARGEST_SHARE:.0%} of the displacement",
            )
            continue
        if name == GENERATOR:
            rooms = [cabin for cabin in cabins if cabin.use == "machinery"]
            estimate = rooms[0].centre if rooms else amidships(hull)
            rule = f"centre of {rooms[0].name}" if rooms else "amidships: no engine room is described"
        else:
            bank = next(item for item in items if item.kind == "battery_module")
            estimate, rule = bank.position, "where the new bank stands"
        entry = places.get(name)
        position = placed(entry, ("places", name), estimate, rule, hull, ledger)
        said = entry is not None and entry.forward is not None and entry.starboard is not None
        title = part.name if isinstance(part, Generator) else part.battery
        found.append(TakenOut(f"{name}: {title}", part.mass, position, said))
    return tuple(found)
