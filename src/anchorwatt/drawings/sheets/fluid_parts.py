"""What the schematics of water, refrigerant and air share: handlers, tags of pipes, marks of estimates."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.design.document import dotted
from anchorwatt.drawings.sheets.tree import Thing
from anchorwatt.sizing.ends import Ends
from anchorwatt.units import System, convert, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.design.specification import Handler

READ = (
    "≈ marks what nobody typed: it is estimated, see the list of estimates. What is no part of the design has the "
    "tag of its plant or handler and a letter after IEC 81346-2, from memory: C stores, H strains, Q shuts, R holds"
    " back, W leads, X joins; our own numbers. Symbols are ours."
)

PLANT = ("cooling", "plant")


class Marks:
    """Which figures of a design are estimates."""

    def __init__(self, assessment: Assessment) -> None:
        self._keys = {estimate.key for estimate in assessment.estimates}

    def estimated(self, *key: str) -> bool:
        """Whether that figure of the cooling plant, or anything that it is a part of, is on the list of estimates."""
        path = (*PLANT, *key)
        return any(dotted(path[:depth]) in self._keys for depth in range(len(PLANT), len(path) + 1))

    def marked(self, words: str, *key: str) -> str:
        """The words, with the mark of an estimate before them where they are one."""
        return f"≈ {words}" if self.estimated(*key) else words


def handler_things(assessment: Assessment, system: System) -> tuple[tuple[Handler, Thing], ...]:
    """Every air handler of the shared plant, in the order of the design."""
    boat = assessment.specification
    ends = Ends(boat)
    made = []
    for handler, end in zip(boat.plant.handlers, ends.handlers, strict=True):
        rating = show(handler.rated_capacity, "heat flow", system)
        told = f"{end.tag}, {end.name}, {rating}"
        made.append((handler, Thing(end.tag, end.name, rating, "AIR-HANDLER", told)))
    return tuple(made)


def part(owner: str, letter: str, number: int) -> str:
    """Tag of a part of a plant or handler.

    Example
    -------
    >>> part("E2", "W", 1)
    'E2.W1'
    """
    return f"{owner}.{letter}{number}"


def grille(handler: str, number: int) -> str:
    """Tag of a handler's grille, 0 = the one that it draws from.

    Example
    -------
    >>> grille("E2", 1)
    'E2.1'
    """
    return f"{handler}.{number}"


def bore(diameter: float, system: System) -> str:
    """Inside diameter of a hose or duct, m, as they are sold: in whole small units.

    Example
    -------
    >>> bore(0.2, "si"), bore(0.2032, "us")
    ('200 mm', '8 in')
    """
    unit = "mm" if system == "si" else "in"
    return f"{convert(diameter, unit, 'length'):.3g} {unit}"
