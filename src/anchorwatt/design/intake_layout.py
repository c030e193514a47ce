"""Where the cabins of an intake go, and how much floor each gets: proportions from memory, for boats of 10 to 16 m."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.catalogue.hull_form import HullForm
from anchorwatt.catalogue.part import typed

# Shares of the rectangle of length and floor width. From memory.
BELOW_SHARE = {1: 0.70, 2: 0.90}  # by hulls: what cabins, heads and machinery below take
MAIN_SHARE = {1: 0.50, 2: 0.35}  # by hulls: the deckhouse
MACHINERY_SHARE = 0.16  # of the floor below
LIVING_BELOW = {"saloon": 0.28, "galley": 0.10}  # of the floor below, where a sailing boat has them
ON_DECK = {"saloon": 0.50, "galley": 0.20, "pilothouse": 0.30}  # of the deckhouse
SMALLEST_CABIN = 2.2  # m2: a berth, and room to stand
LARGEST_CABIN = 14.0  # m2
HEAD_SHARE, SMALLEST_HEAD = 0.025, 0.9  # of the floor below; m2
SAILING = "sailing monohull"


@dataclass(frozen=True)
class Room:
    """A cabin or compartment as the design file will name it."""

    name: str
    use: str
    deck: str
    floor: float  # m2
    sides: tuple[str, ...] | None  # None = as the program estimates, port and starboard
    covered: bool = False  # whether the deckhouse stands over all of it


def estimated_beam(form: str, length: float) -> float:
    """m of beam over all hulls for a length in m.

    Source
    ------
    Common practice, no source: length to the power of 2/3 and one more, in feet; 0.55 of the length with two hulls.

    Example
    -------
    >>> round(estimated_beam("sailing monohull", 12.0), 2), estimated_beam("catamaran", 13.0)
    (3.84, 7.15)
    """
    if _form(form).hulls > 1:
        return round(0.55 * length, 2)
    feet = length / 0.3048
    return round(0.3048 * (float(feet ** (2.0 / 3.0)) + 1.0), 2)


def most_cabins(form: str, length: float, beam: float, saloon: bool, galley: bool, heads: int) -> int:
    """How many sleeping cabins have the floor of a berth each."""
    return max(0, int(_left_below(form, length, beam, saloon, galley, heads) / SMALLEST_CABIN + 1e-9))


def rooms(
    form: str, length: float, beam: float, sleeping: int, living: tuple[str, ...], heads: int, engines: int
) -> tuple[Room, ...]:
    """Cabins from the bow, then the heads, then what is lived in, then the machinery.

    Parameters
    ----------
    form : name of a hull form
    length, beam : m
    sleeping, heads, engines : how many
    living : of pilothouse, galley and saloon, those that there are
    """
    hull = _form(form)
    below, sailing = _below(hull, length, beam), form == SAILING
    left = _left_below(form, length, beam, "saloon" in living, "galley" in living, heads)
    floor = min(left / sleeping, LARGEST_CABIN) if sleeping else 0.0
    made = [
        Room(f"cabin {number}", "sleeping", "below", floor, _sides(hull, number, sleeping))
        for number in range(1, sleeping + 1)
    ]
    made += [
        Room(f"head {number}", "head", "below", _head(below), None if hull.hulls > 1 else (_side(number),))
        for number in range(1, heads + 1)
    ]
    deckhouse = MAIN_SHARE[int(hull.hulls)] * length * beam * float(hull.superstructure_beam_share)
    for use in living:
        down = sailing and use in LIVING_BELOW
        share = LIVING_BELOW[use] * below if down else ON_DECK[use] * deckhouse
        made.append(Room(use, use, "below" if down else "main", share, _living_sides(use, down)))
    covered = not sailing and bool(living)
    apart = hull.hulls > 1 and engines > 1
    for name in ("port engine room", "starboard engine room") if apart else ("engine room",):
        share = MACHINERY_SHARE * below / (2.0 if apart else 1.0)
        made.append(Room(name, "machinery", "below", share, None, covered and not apart))
    return tuple(made)


def _form(name: str) -> HullForm:
    return typed(HullForm, name)


def _below(hull: HullForm, length: float, beam: float) -> float:
    width = beam * float(hull.hull_beam_share) * float(hull.floor_beam_share)
    return BELOW_SHARE[int(hull.hulls)] * float(hull.hulls) * length * width


def _head(below: float) -> float:
    return max(HEAD_SHARE * below, SMALLEST_HEAD)


def _left_below(form: str, length: float, beam: float, saloon: bool, galley: bool, heads: int) -> float:
    below = _below(_form(form), length, beam)
    taken = MACHINERY_SHARE * below + heads * _head(below)
    if form == SAILING:
        taken += below * (LIVING_BELOW["saloon"] * saloon + LIVING_BELOW["galley"] * galley)
    return below - taken


def _side(number: int) -> str:
    return "port" if number % 2 else "starboard"


def _sides(hull: HullForm, number: int, of: int) -> tuple[str, ...] | None:
    """From the bow: one across the boat, then pairs; what is left of a pair goes across again."""
    bow = ("port", "starboard", "ahead")
    if hull.hulls > 1:
        return bow if number <= 2 else None
    if number == 1:
        return bow
    return None if number == of and number % 2 == 0 else (_side(number + 1),)


def _living_sides(use: str, below: bool) -> tuple[str, ...] | None:
    if below:
        return ("port",) if use == "galley" else None
    return {"pilothouse": ("port", "starboard", "ahead"), "saloon": ("port", "starboard", "astern")}.get(use)
