"""What stands behind one thing of the drawings: a part with its mass and its circuits."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from anchorwatt.assessment.part_keys import part_keys
from anchorwatt.assessment.places import place_keys
from anchorwatt.papers.page import Content, Paragraph, Words, section, table
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.design.specification import Item, Point
    from anchorwatt.sizing.wiring import WiredCircuit

WITHOUT_MASS = "It has no mass of its own in the catalogue and is not counted in the weight."


def owner(key: str) -> str:
    """Tag of the part that a thing of the drawings is or belongs to.

    Example
    -------
    >>> owner("E2.W1"), owner("line:E2.W1"), owner("E2")
    ('E2', 'E2', 'E2')
    """
    return key.rpartition(":")[2].partition(".")[0]


def part_screen(assessment: Assessment, tag: str, told: str, system: System) -> Content:
    """One part of the drawings: what it is, what it weighs and where it stands.

    Parameters
    ----------
    told : what the drawing says of it: tag, name and rating
    """
    item = next((one for one in assessment.specification.items if one.tag == tag), None)
    if item is None:
        return section(told, Paragraph(WITHOUT_MASS))
    kilograms = show(item.count * item.mass, "mass", system)
    many = "" if item.count == 1 else f", {item.count} of {show(item.mass, 'mass', system)}"
    rows = [
        ("what is bought", Words(item.name)),
        ("weighs", Words(f"{kilograms}{many}")),
        ("stands", Words(_where(item.position, system) + ("" if item.placed else "; nobody typed it"))),
    ]
    return section(told, table(("", ""), ("<", "<"), rows, free=1))


def circuits_at(assessment: Assessment, tag: str) -> tuple[WiredCircuit, ...]:
    """Circuits that begin or end at a part, in the order of the schedule."""
    return tuple(one for one in assessment.wiring.wiring.circuits if tag in (one.circuit.start, one.circuit.end))


def keys_of(assessment: Assessment, tag: str) -> Mapping[str, str]:
    """Where the file says a part, and where it says its place; in words, to dotted keys."""
    found = {}
    part = part_keys(assessment.specification).get(owner(tag))
    if part is not None:
        found["Change it"] = part
    items: tuple[Item, ...] = assessment.specification.items
    place = place_keys(items, assessment.design.places).get(owner(tag))
    if place is not None:
        found["Move it"] = place
    return found


def _where(at: Point, system: System) -> str:
    side = "to starboard" if at.starboard >= 0.0 else "to port"
    height = "over" if at.up >= 0.0 else "under"
    return (
        f"{show(at.forward, 'length', system)} forward of the aft end of the waterline, "
        f"{show(abs(at.starboard), 'length', system)} {side}, "
        f"{show(abs(at.up), 'length', system)} {height} the waterline"
    )
