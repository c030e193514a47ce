"""Whether parts go into the spaces where they are put: opening, room, hands, heat."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from anchorwatt.design.specification import Item, Space, Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.packing import Box, Placed, Room, alone, arrange, growth, reachable, through
from anchorwatt.sizing.space_heat import CompartmentHour, Heats, SpaceHeat

STAY = ("air_handler", "solar_panel", "alternator", "belt")
"""Kinds that stand where their cabin, the sun or their engine is: no locker is offered for them."""

SEVERAL = 3
"""Boxes from which on a search that finds nothing proves nothing."""


@dataclass(frozen=True)
class PartFit:
    """One part, or several alike, in its space."""

    item: Item
    sized: bool  # whether its size is known
    through: float  # m to spare in the opening, negative = the opening is that much too small
    alone: float  # m to spare along the tightest axis for one of them, negative = it misses by that
    alone_found: bool  # whether all of them find room in the empty space
    alone_serviced: bool  # and can all be worked on there
    together: bool  # whether the space holds them with their neighbours
    serviced: bool  # whether, so arranged, it can be worked on
    limit: float  # °C of the air up to which it gives its rating, nan = unknown
    air: float  # °C of the space in its hottest hour, nan = unknown
    kept: float  # share of its rating that it gives in that air, nan = unknown
    asked: float  # share of its rating that the runs ask of it, nan = unknown

    @property
    def spare(self) -> float:
        """K to spare, negative = too warm by that; nan = unknown."""
        return self.limit - self.air

    @property
    def goes_in(self) -> bool:
        """Through the opening, and finding room with its neighbours."""
        return self.sized and self.through >= 0.0 and self.together

    @property
    def cool_enough(self) -> bool:
        """Whether it gives all that is asked of it there; so, too, where that cannot be told."""
        return not self.spare < 0.0 or self.kept >= self.asked

    @property
    def good(self) -> bool:
        """All four hold, or heat cannot be told."""
        return self.goes_in and self.serviced and self.cool_enough


@dataclass(frozen=True)
class SpaceFit:
    """One space with its parts."""

    space: Space
    parts: tuple[PartFit, ...]
    share: float  # of its volume that the parts fill, clearances not counted
    arrangement: tuple[Placed, ...] | None  # of the parts whose size is known; None = none found
    proved: bool  # whether "none found" means that there is none
    heat: SpaceHeat

    @property
    def sized(self) -> bool:
        """Whether every part's size is known."""
        return all(part.sized for part in self.parts)


@dataclass(frozen=True)
class Fit:
    """All spaces with their parts, and the parts that stand in none."""

    spaces: tuple[SpaceFit, ...]
    loose: tuple[Item, ...]
    heats: Heats

    @property
    def parts(self) -> tuple[PartFit, ...]:
        """Every part that stands in a space."""
        return tuple(part for space in self.spaces for part in space.parts)

    @cached_property
    def loose_parts(self) -> tuple[LoosePart, ...]:
        """Every part that stands in no space and says what air it bears."""
        return tuple(self._loose(item) for item in self.loose if not math.isnan(item.highest_air))

    def _loose(self, item: Item) -> LoosePart:
        hour = None if item.cabin < 0 else self.heats.compartment(item.cabin)
        kept, asked = self.heats.rating(item, math.nan if hour is None else hour.air)
        return LoosePart(item, hour, kept, asked)

    def holding(self, part: PartFit) -> SpaceFit:
        """The space that a part stands in."""
        return next(space for space in self.spaces if part in space.parts)


@dataclass(frozen=True)
class LoosePart:
    """A part with a rating that stands in a compartment, in no space of it."""

    item: Item
    hour: CompartmentHour | None  # None = the file does not say in which compartment
    kept: float  # share of its rating that it gives in that hour's air, nan = unknown
    asked: float  # share of its rating that the runs ask of it, nan = unknown

    @property
    def spare(self) -> float:
        """K to spare, negative = too warm by that; nan = unknown."""
        return math.nan if self.hour is None else self.item.highest_air - self.hour.air

    @property
    def cool_enough(self) -> bool:
        """Whether it gives all that is asked of it there; so, too, where that cannot be told."""
        return not self.spare < 0.0 or self.kept >= self.asked


@dataclass(frozen=True)
class Place:
    """A space that would take a part."""

    item: Item
    space: Space
    air: float  # °C there with it, nan = unknown
    spare: float  # K to spare, nan = unknown


def fit(specification: Specification, simulation: Simulation) -> Fit:
    """Every space of the design with the parts that the file puts there."""
    heats = Heats(specification, simulation)
    spaces = tuple(
        space_fit(space, [item for item in specification.items if item.space == number], heats)
        for number, space in enumerate(specification.spaces)
    )
    return Fit(spaces, tuple(item for item in specification.items if item.space < 0), heats)


def room_of(space: Space) -> Room:
    """A space as the search sees it."""
    return Room(space.size, space.opening, space.opens)


def boxes_of(item: Item) -> tuple[Box, ...]:
    """A part's boxes, one for each of them; none where its size is unknown."""
    if any(math.isnan(side) for side in item.size):
        return ()
    clearance = 0.0 if math.isnan(item.clearance) else item.clearance
    return (Box(item.tag, item.size, clearance, item.upright, item.service),) * item.count


def limit_of(item: Item, specification: Specification) -> float:
    """°C of the air round a part up to which it gives its rating, or a bank's cells may be charged."""
    if item.kind == "battery_module":
        return specification.bank.highest_charge_temperature
    return item.highest_air


def space_fit(space: Space, items: Sequence[Item], heats: Heats) -> SpaceFit:
    """One space with those parts in it."""
    room, heat = room_of(space), heats.space(space, items)
    boxes = {item.tag: boxes_of(item) for item in items}
    every = [box for one in boxes.values() for box in one]
    held: tuple[Placed, ...] | None = None
    if all(alone(box, room) >= 0.0 for box in every):
        held = arrange(every, room, serviced=True) or arrange(every, room, serviced=False)
    return SpaceFit(
        space=space,
        parts=tuple(_part(item, boxes[item.tag], len(items) == 1, room, held, heat, heats) for item in items),
        share=math.fsum(box.volume for box in every) / room.volume,
        arrangement=held,
        proved=len(every) < SEVERAL or any(alone(box, room) < 0.0 for box in every) or _too_full(every, room),
        heat=heat,
    )


def more_room(found: SpaceFit) -> tuple[int, float] | None:
    """Axis and m by which a space that is too small would have to grow; None = no such growth found, or none needed."""
    if found.arrangement is not None or not found.sized or not found.parts:
        return None
    return growth([box for part in found.parts for box in boxes_of(part.item)], room_of(found.space))


def places_for(item: Item, found: Fit) -> tuple[Place, ...]:
    """The spaces of the boat that would take a part beside what stands there, the coolest first."""
    offered = []
    for other in found.spaces:
        beside = [part.item for part in other.parts if part.item.tag != item.tag]
        if len(beside) < len(other.parts):
            continue  # it stands there already
        cabin = other.space.cabin
        tried = space_fit(other.space, [*beside, replace(item, cabin=cabin)], found.heats)
        mine = tried.parts[-1]
        if all(part.good for part in tried.parts):
            offered.append(Place(item, other.space, tried.heat.air, mine.spare))
    return tuple(sorted(offered, key=lambda place: (math.isnan(place.spare), -place.spare)))


def _part(
    item: Item,
    boxes: Sequence[Box],
    only: bool,
    room: Room,
    held: tuple[Placed, ...] | None,
    heat: SpaceHeat,
    heats: Heats,
) -> PartFit:
    limit = limit_of(item, heats.specification)
    kept, asked = heats.rating(item, heat.air)
    if item.kind == "battery_module":
        limit -= heats.rise_of_cells(dict(heat.losses).get(item.tag, 0.0))
    if not boxes:
        nothing = math.nan
        return PartFit(item, False, nothing, nothing, False, False, False, False, limit, heat.air, kept, asked)
    mine = [] if held is None else [one for one in held if one.box.name == item.tag]
    serviced = bool(mine) and held is not None and all(reachable(one, held, room) for one in mine)
    by_itself: tuple[Placed, ...] | None = held if only and serviced else None
    spare = alone(boxes[0], room)
    if by_itself is None and spare >= 0.0:
        by_itself = arrange(boxes, room, serviced=True)
    alone_found = by_itself is not None or (spare >= 0.0 and arrange(boxes, room, serviced=False) is not None)
    return PartFit(
        item=item,
        sized=True,
        through=through(boxes[0], room),
        alone=spare,
        alone_found=alone_found,
        alone_serviced=by_itself is not None,
        together=bool(mine),
        serviced=serviced,
        limit=limit,
        air=heat.air,
        kept=kept,
        asked=asked,
    )


def _too_full(boxes: Sequence[Box], room: Room) -> bool:
    return math.fsum(box.volume for box in boxes) > room.volume
