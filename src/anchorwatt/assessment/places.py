"""Where everything aboard lies: masses with their keys in the file, and the centre of gravity before and after."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from anchorwatt.assessment.records import Input, Why
from anchorwatt.assessment.weight import Basis
from anchorwatt.design.fill_places import roles
from anchorwatt.design.specification import Item, Point, Space, Specification
from anchorwatt.sizing.weight import CABLES, Carried, Weight
from anchorwatt.units import System, show

UNSEEN = 5e-4
"""m that are told as none."""

BEFORE = (
    "before anything is brought aboard the boat floats upright and level, so its centre of gravity lies over that of "
    "its buoyancy: taken on the centreline and at the centre of flotation, at the height that the design gives; "
    "afterwards it is the mean of boat and masses by mass"
)


@dataclass(frozen=True)
class MassAt:
    """A mass at its place."""

    carried: Carried
    key: str  # of its place in the design file, "" = it follows the others and cannot be put anywhere


@dataclass(frozen=True)
class PlacesStory:
    """What a picture of the places shows."""

    masses: tuple[MassAt, ...]  # heaviest first
    spaces: tuple[Space, ...]
    gravity_before: Point
    gravity_after: Point
    why: Why  # of the centre of gravity

    def shift(self, system: System) -> str:
        """How far the centre of gravity moves, in words."""
        one, other = self.gravity_before, self.gravity_after
        ways = (
            (other.forward - one.forward, "forward", "aft"),
            (other.starboard - one.starboard, "to starboard", "to port"),
            (other.up - one.up, "up", "down"),
        )
        told = [
            f"{show(abs(way), 'length', system)} {there if way > 0.0 else back}"
            for way, there, back in ways
            if abs(way) >= UNSEEN
        ]
        return "moves " + ", ".join(told) if told else "stays where it was"


def place_keys(items: tuple[Item, ...], typed: Mapping[str, object]) -> dict[str, str]:
    """Under which key each part's place stands in the file, or would stand: by tag.

    Parameters
    ----------
    typed : the file's places by name
    """
    known = roles(items)
    found: dict[str, str] = {}
    # A part's own name goes before that of the engine on which it hangs.
    for name in sorted(typed, key=lambda one: one.startswith("engine ")):
        for tag in known.get(name, ()):
            found.setdefault(tag, f"places.{name}")
    machines = {item.key.rpartition(".")[0]: item.tag for item in items if item.kind == "alternator"}
    for item in items:
        own = f"places.{item.tag}"
        machine = machines.get(item.key.rpartition(".")[0]) if item.kind == "belt" else None
        found.setdefault(item.tag, own if machine is None else found.get(machine, f"places.{machine}"))
    return found


def places_story(
    specification: Specification, figures: Weight, typed: Mapping[str, object], basis: Basis
) -> PlacesStory:
    """Where everything aboard lies, `basis` saying where a figure of the design comes from."""
    keys = place_keys(specification.items, typed)
    masses = []
    for one in figures.carried:
        if one.tag == CABLES:
            masses.append(MassAt(one, ""))
        elif one.tag:
            masses.append(MassAt(one, keys.get(one.tag, f"places.{one.tag}")))
        else:  # what is taken out is called by what it is, then by its name
            masses.append(MassAt(one, f"places.{one.name.partition(':')[0]}"))
    floats = figures.floats
    before = Point(specification.flotation, 0.0, specification.gravity_up)
    along = sum(one.mass * (one.position.forward - specification.flotation) for one in figures.carried)
    across = sum(one.across for one in figures.carried)
    after = Point(
        specification.flotation + along / floats.displacement, across / floats.displacement, floats.gravity_up
    )
    why = Why(
        BEFORE,
        (
            Input("displacement before", specification.displacement, "mass", basis("boat.displacement")),
            Input("mass added less taken out", floats.mass, "mass", "computed"),
            Input("centre of flotation", specification.flotation, "length", basis("boat.flotation")),
            Input("centre of gravity before", specification.gravity_up, "length", basis("boat.gravity_height")),
        ),
        "public-domain textbook of seamanship, chapters on stability and trim",
        "the mass, and where it stands",
    )
    return PlacesStory(tuple(masses), specification.spaces, before, after, why)
