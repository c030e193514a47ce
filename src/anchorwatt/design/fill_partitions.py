"""What lies between cabins: bulkheads, soles and the doors in them."""

from __future__ import annotations

from collections.abc import Sequence

from anchorwatt.design.cabins import Neighbour
from anchorwatt.design.document import Key
from anchorwatt.design.fill_cabins import Room, layers_of
from anchorwatt.design.fill_faces import sole_between
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.specification import Partition

# m3/s each way. An open door of 0.6 by 1.85 m with 1 K across it passes about 60 L/s by the form for the
# doors of cold stores; a shut one leaks round its edges.
AIR_EXCHANGE = {"none": 0.0, "closed": 0.002, "louvred": 0.008, "open": 0.060}


def fill_partitions(
    neighbours: Sequence[Neighbour], rooms: Sequence[Room], hull: Hull, ledger: Ledger
) -> list[Partition]:
    """What lies between cabins; a neighbour that names an unknown cabin is left out."""
    index = {room.cabin.name: number for number, room in enumerate(rooms)}
    partitions = []
    for number, entry in enumerate(neighbours):
        if any(name not in index for name in entry.between):
            continue
        key: Key = ("neighbours", number)
        first, second = (rooms[index[name]] for name in entry.between)
        stacked = first.entry.deck != second.entry.deck
        if stacked:
            area = sole_between(first.entry, second.entry)
            rule = "half of the smaller floor"
        else:
            width, height = (
                min(first.plan.width, second.plan.width),
                min(first.plan.height, second.plan.height),
            )
            area, rule = width * height, f"{ledger.show(width, 'length')} by {ledger.show(height, 'length')}"
        area = ledger.fill(entry.area, (*key, "area"), area, "area", rule, "geometry of the two cabins")
        through = entry.through
        if through is None:
            through = hull.soles if stacked else hull.bulkheads
            usual = "the boat's soles" if stacked else "the boat's bulkheads"
            ledger.note((*key, "through"), through.name, usual, MEMORY)
        door = entry.door
        if door is None and entry.air_exchange is None:
            private = {"sleeping", "head", "machinery", "stowage"} & {first.entry.use, second.entry.use}
            door = "none" if stacked else "closed" if private else "open"
            ledger.note((*key, "door"), door, "usual between such cabins", MEMORY)
        air = ledger.fill(
            entry.air_exchange,
            (*key, "air_exchange"),
            AIR_EXCHANGE[door or "none"],
            "volume flow",
            f"door: {door}",
            f"{MEMORY}; open: cold-store doorway form, 0.6 by 1.85 m, 1 K across it",
        )
        name = f"{entry.between[0]} to {entry.between[1]}"
        pair = (index[entry.between[0]], index[entry.between[1]])
        partitions.append(Partition(name, pair, area, layers_of(through), air))
    return partitions
