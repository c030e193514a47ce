"""The spaces where parts go, every gap filled."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from anchorwatt.design.document import Key
from anchorwatt.design.fill_centres import placed
from anchorwatt.design.fill_places import amidships
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import MEMORY, PRACTICE, Ledger
from anchorwatt.design.spaces import SpaceEntry
from anchorwatt.design.specification import Cabin, Item, Space

TRANSMITTANCE = 2.5
"""W/(m² K) of 18 mm of plywood between two films of 0.13 m² K/W, ISO 6946 from memory: 1/(0.13 + 0.14 + 0.13)."""

LEEWAY = 1e-6
"""m by which an opening may seem larger than its side: two roundings of one figure."""


def fill_spaces(
    entries: Mapping[str, SpaceEntry], names: Mapping[str, int], cabins: Sequence[Cabin], hull: Hull, ledger: Ledger
) -> tuple[Space, ...]:
    """Every space of the file."""
    spaces = tuple(_space(name, entry, names, cabins, hull, ledger) for name, entry in entries.items())
    _within_compartments(spaces, cabins, ledger)
    return spaces


def check_spaces(items: Sequence[Item], spaces: Sequence[Space], cabins: Sequence[Cabin], ledger: Ledger) -> None:
    """A part stands in the compartment of its space: its heat goes there."""
    for item in items:
        if item.space < 0:
            continue
        space = spaces[item.space]
        if item.cabin != space.cabin and space.cabin >= 0:
            ledger.refuse(
                tuple(item.key.split(".")),
                f"{item.tag} ({item.name}) in {cabins[item.cabin].name}, but its space {space.name} is in "
                f"{cabins[space.cabin].name}",
                "one and the same compartment for a part and its space",
            )


def _space(
    name: str, entry: SpaceEntry, names: Mapping[str, int], cabins: Sequence[Cabin], hull: Hull, ledger: Ledger
) -> Space:
    key: Key = ("spaces", name)
    cabin = names.get(entry.cabin, -1) if entry.cabin is not None else -1
    known = 0 <= cabin < len(cabins)
    length, width, height = (float(one) for one in (entry.length, entry.width, entry.height))
    area = 2.0 * (length * width + length * height + width * height)
    return Space(
        name=name,
        cabin=cabin,
        centre=placed(
            entry.at,
            (*key, "at"),
            cabins[cabin].centre if known else amidships(hull),
            f"centre of {entry.cabin}" if known else "amidships at the waterline",
            hull,
            ledger,
        ),
        size=(length, width, height),
        opening=_opening(entry, key, ledger),
        opens=entry.opens,
        wall_conductance=ledger.fill(
            entry.walls,
            (*key, "walls"),
            TRANSMITTANCE * area,
            "thermal conductance",
            f"{TRANSMITTANCE:g} W/(m²·K) of 18 mm plywood, over all six sides",
            MEMORY,
        ),
        airflow=ledger.fill(entry.ventilation, (*key, "ventilation"), 0.0, "volume flow", "a shut locker", PRACTICE),
    )


def _opening(entry: SpaceEntry, key: Key, ledger: Ledger) -> tuple[float, float]:
    across, along, up = float(entry.length), float(entry.width), float(entry.height)
    face = {"front": (across, up), "end": (along, up), "top": (across, along)}[entry.opens]
    if entry.opening is None:
        words = f"{ledger.show(face[0], 'length')} by {ledger.show(face[1], 'length')}"
        ledger.note((*key, "opening"), words, f"the whole {entry.opens} of it", PRACTICE)
        return face
    opening = float(entry.opening.width), float(entry.opening.height)
    ways = [opening, opening[::-1]] if entry.opens == "top" else [opening]
    if not any(way[0] <= face[0] + LEEWAY and way[1] <= face[1] + LEEWAY for way in ways):
        ledger.refuse(
            (*key, "opening"),
            f"{entry.opening.width.text} by {entry.opening.height.text}, which is larger than the {entry.opens} of it",
            f"up to {ledger.show(face[0], 'length')} by {ledger.show(face[1], 'length')}",
        )
    return opening


def _within_compartments(spaces: Sequence[Space], cabins: Sequence[Cabin], ledger: Ledger) -> None:
    taken: dict[int, float] = {}
    for space in spaces:
        if not 0 <= space.cabin < len(cabins):
            continue
        volume = space.size[0] * space.size[1] * space.size[2]
        taken[space.cabin] = taken.get(space.cabin, 0.0) + volume
        room = cabins[space.cabin]
        if taken[space.cabin] > room.volume:
            ledger.refuse(
                ("spaces", space.name),
                f"spaces of {ledger.show(taken[space.cabin], 'volume')} in {room.name}, up to this one",
                f"up to its {ledger.show(room.volume, 'volume')}",
            )
