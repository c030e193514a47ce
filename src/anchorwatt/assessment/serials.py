"""The register of serial numbers: every part, where it stands, and what the design file says is on its plate."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.catalogue.part import nearest
from anchorwatt.design.design import Design
from anchorwatt.design.specification import Item, Specification
from anchorwatt.errors import BadDesign


@dataclass(frozen=True)
class Registered:
    """A part in the register."""

    item: Item
    place: str  # the space or the cabin that it stands in, "" = nobody has said
    serial: str  # as the file has it, "" = not written


def register(design: Design, specification: Specification) -> tuple[Registered, ...]:
    """Every part with its serial number, in the order of the design.

    Raises
    ------
    BadDesign
        the file has a serial number for a part that there is not.
    """
    tags = [item.tag for item in specification.items]
    problems = tuple(
        design.document.problem(
            ("serials", tag),
            f"no part “{tag}”{nearest(tag, tags)}",
            f"one of: {', '.join(tags)}" if tags else "nothing: the design has no part with a tag",
        )
        for tag in design.serials
        if tag not in tags
    )
    if problems:
        raise BadDesign(problems)
    return tuple(
        Registered(item, _place(item, specification), design.serials.get(item.tag, "")) for item in specification.items
    )


def _place(item: Item, specification: Specification) -> str:
    if item.space >= 0:
        return specification.spaces[item.space].name
    return specification.cabins[item.cabin].name if item.cabin >= 0 else ""
