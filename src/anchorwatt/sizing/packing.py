"""Boxes through an opening and into a space: which way they stand, and whether they all find room.

Axes are those of the boat: 0 fore and aft, 1 across, 2 up. The opening of a space that opens to the front lies at the
low end of axis 1, that of one which opens at its end at the low end of axis 0, a hatch at the high end of axis 2.

The search tries every order and every way to stand, with each box pushed against a wall or another box along each
axis. For one box and for two it is complete. For more it misses arrangements in which boxes hold each other apart in
a ring, and it gives up after `TRIES`: "no arrangement found" is then not a proof.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

Triple = tuple[float, float, float]

OPENING_AXIS = {"end": 0, "front": 1, "top": 2}
SIDES = {"end": 0, "front": 1, "top": 2}
"""The axis of a part, as its size is told, that its service side looks along."""

HAND = 0.25
"""m kept before a service side that does not look at the opening, for a hand with a tool. From memory."""
REACH = 0.7
"""m from the opening to which an arm reaches. From memory: a forearm and upper arm."""
PERSON = (0.45, 0.60)
"""m of an opening through which a person's head and shoulders go. From memory."""

LEEWAY, DIGITS = 1e-9, 9
"""m by which sums of the same sizes may differ, and the digits that are told of a length."""
TRIES = 20_000
"""Places looked at before the search gives up."""
FINEST, WIDEST = 0.01, 2.0
"""m to which, and up to which, it is told how much larger a space would have to be."""


@dataclass(frozen=True)
class Room:
    """The inside of a space."""

    size: Triple
    opening: tuple[float, float]
    opens: str

    @property
    def axis(self) -> int:
        """Along which one looks in."""
        return OPENING_AXIS[self.opens]

    @property
    def by_arm(self) -> bool:
        """Whether only an arm goes in, not a person."""
        small, large = sorted(self.opening)
        return small < PERSON[0] or large < PERSON[1]

    @property
    def volume(self) -> float:
        """m³."""
        return math.prod(self.size)


@dataclass(frozen=True)
class Box:
    """One part as the search sees it."""

    name: str
    size: Triple  # m, as it stands
    clearance: float  # m kept free on every side but the one that it stands on
    upright: bool
    service: str  # "front", "end", "top", or "" = from anywhere

    @property
    def volume(self) -> float:
        """m³."""
        return math.prod(self.size)

    @cached_property
    def turns(self) -> tuple[tuple[int, int, int], ...]:
        """Which of its own axes lies along each axis of the boat."""
        if self.upright:
            return ((0, 1, 2), (1, 0, 2))
        return tuple((a, b, c) for a, b, c in itertools.permutations(range(3)))


@dataclass(frozen=True)
class Stand:
    """One way in which a box stands."""

    size: Triple  # m along the boat's axes
    faces: int  # the axis along which its service side looks, -1 = it has none
    before: Triple  # m kept free for a hand on the low side of each axis
    after: Triple  # m kept free on the high side


@dataclass(frozen=True)
class Placed:
    """A box at its place."""

    box: Box
    stand: Stand
    low: Triple  # m from the low corner of the space, of the box itself

    @property
    def high(self) -> Triple:
        """m of its far corner."""
        return _sum(self.low, self.stand.size)

    @cached_property
    def kept(self) -> tuple[Triple, Triple]:
        """Corners of what is kept for it: itself, and room for a hand."""
        low = tuple(a - b for a, b in zip(self.low, self.stand.before, strict=True))
        return (low[0], low[1], low[2]), _sum(self.high, self.stand.after)


def through(box: Box, room: Room) -> float:
    """m to spare in the opening, both ways, the better way round; negative = the opening is that much too small.

    A box goes through level, along one of its edges, never aslant.
    """
    one, other = room.opening
    best = -math.inf
    for turn in box.turns:
        size = [box.size[axis] for axis in turn]
        face = [size[axis] for axis in range(3) if axis != room.axis]
        ways = [(one, other)] if room.opens != "top" else [(one, other), (other, one)]
        best = max([best, *(min(a - face[0], b - face[1]) for a, b in ways)])
    return round(best, DIGITS)


def alone(box: Box, room: Room) -> float:
    """m to spare along the tightest axis, its clearance kept, in the better way to stand; negative = it misses by."""
    best = max(
        min(room.size[axis] - box.size[turn[axis]] - box.clearance * (2.0 if axis < 2 else 1.0) for axis in range(3))
        for turn in box.turns
    )
    return round(best, DIGITS)


def arrange(boxes: Sequence[Box], room: Room, serviced: bool, tries: int = TRIES) -> tuple[Placed, ...] | None:
    """A place for every box, with `serviced` each so that its service side can be worked on; None = none found."""
    if math.fsum(box.volume for box in boxes) > room.volume + LEEWAY:
        return None
    kinds = sorted(set(boxes), key=lambda box: (-box.volume, box.name))
    counts = [sum(box == kind for box in boxes) for kind in kinds]
    stands = [tuple(_stands(kind, room, serviced)) for kind in kinds]
    search = _Search(room, kinds, stands, serviced, tries)
    return search.found([], counts)


def growth(boxes: Sequence[Box], room: Room, tries: int = TRIES // 4) -> tuple[int, float] | None:
    """Axis along which the least more room would do, and how much, m; None = none within `WIDEST` was found."""
    best: tuple[int, float] | None = None
    for axis in range(3):
        low, high = 0.0, WIDEST if best is None else best[1]
        if not arrange(boxes, _grown(room, axis, high), False, tries):
            continue
        while high - low > FINEST:
            middle = 0.5 * (low + high)
            if arrange(boxes, _grown(room, axis, middle), False, tries):
                high = middle
            else:
                low = middle
        if best is None or high < best[1]:
            best = (axis, high)
    return best


def reachable(one: Placed, all_of_them: Sequence[Placed], room: Room) -> bool:
    """Whether the service side of a placed box can be worked on from the opening."""
    axis = room.axis
    depth = room.size[2] - one.high[2] if axis == 2 else one.low[axis]
    if room.by_arm and depth > REACH + LEEWAY:
        return False
    faces = one.stand.faces
    if faces < 0:
        return True
    others = [other for other in all_of_them if other is not one]
    if faces == axis:
        return not any(_in_the_way(other, one, axis) for other in others)
    hand = HAND - LEEWAY
    above = one.high[faces], one.high[faces] + hand
    below = one.low[faces] - hand, one.low[faces]
    return any(
        low >= 0.0
        and high <= room.size[faces]
        and not any(
            _overlaps(other, one, faces) and other.low[faces] < high and low < other.high[faces] for other in others
        )
        for low, high in ((above,) if faces == 2 else (above, below))
    )


def _overlaps(other: Placed, one: Placed, but: int) -> bool:
    """Whether two boxes cover each other, seen along an axis."""
    return all(
        other.low[a] < one.high[a] - LEEWAY and one.low[a] < other.high[a] - LEEWAY for a in range(3) if a != but
    )


def _in_the_way(other: Placed, one: Placed, axis: int) -> bool:
    nearer = other.low[axis] >= one.high[axis] - LEEWAY if axis == 2 else other.high[axis] <= one.low[axis] + LEEWAY
    return nearer and _overlaps(other, one, axis)


def _stands(box: Box, room: Room, serviced: bool) -> Iterator[Stand]:
    nothing = (0.0, 0.0, 0.0)
    seen = set()
    for turn in box.turns:
        size = (box.size[turn[0]], box.size[turn[1]], box.size[turn[2]])
        if not box.service:
            made = [Stand(size, -1, nothing, nothing)]
        else:
            faces = turn.index(SIDES[box.service])
            if faces == room.axis or not serviced:
                made = [Stand(size, faces, nothing, nothing)]
            else:
                hand = max(HAND - box.clearance, 0.0)
                free = (hand if faces == 0 else 0.0, hand if faces == 1 else 0.0, hand if faces == 2 else 0.0)
                made = [Stand(size, faces, nothing, free)]
                if faces != 2:  # nothing is worked on from underneath
                    made.append(Stand(size, faces, free, nothing))
        for stand in made:
            if stand not in seen:
                seen.add(stand)
                yield stand


class _Search:
    """Depth first, the largest boxes first."""

    def __init__(
        self, room: Room, kinds: Sequence[Box], stands: Sequence[tuple[Stand, ...]], serviced: bool, tries: int
    ) -> None:
        self.room, self.kinds, self.stands, self.serviced = room, kinds, stands, serviced
        self.left = tries

    def found(self, placed: list[Placed], counts: list[int]) -> tuple[Placed, ...] | None:
        if not any(counts):
            if self.serviced and not all(reachable(one, placed, self.room) for one in placed):
                return None
            return tuple(placed)
        for number, kind in enumerate(self.kinds):
            if not counts[number]:
                continue
            fewer = [count - (which == number) for which, count in enumerate(counts)]
            for stand in self.stands[number]:
                for one in self._places(kind, stand, placed):
                    all_of_them = self.found([*placed, one], fewer)
                    if all_of_them is not None:
                        return all_of_them
                    if self.left <= 0:
                        return None
        return None

    def _places(self, box: Box, stand: Stand, placed: Sequence[Placed]) -> Iterator[Placed]:
        size = _sum(_sum(stand.size, stand.before), stand.after)
        gap = box.clearance
        ends: list[list[float]] = []
        for axis in range(3):
            wall = 0.0 if axis == 2 else gap
            last = self.room.size[axis] - size[axis] - gap
            if last < wall - LEEWAY:
                return
            starts = {wall}
            for other in placed:
                start = other.kept[1][axis] + (other.box.clearance if axis == 2 else max(gap, other.box.clearance))
                if wall - LEEWAY <= start <= last + LEEWAY:
                    starts.add(start)
            ends.append(sorted(starts))
        for up, across, along in itertools.product(ends[2], ends[1], ends[0]):
            self.left -= 1
            if self.left <= 0:
                return
            low = _sum((along, across, up), stand.before)
            one = Placed(box, stand, low)
            if all(_apart(one, other) for other in placed):
                yield one


def _apart(one: Placed, other: Placed) -> bool:
    (low, high), (other_low, other_high) = one.kept, other.kept
    mine, others = one.box.clearance, other.box.clearance
    gap = max(mine, others) - LEEWAY
    return (
        other_low[0] - high[0] >= gap
        or low[0] - other_high[0] >= gap
        or other_low[1] - high[1] >= gap
        or low[1] - other_high[1] >= gap
        or other_low[2] - high[2] >= mine - LEEWAY
        or low[2] - other_high[2] >= others - LEEWAY
    )


def _grown(room: Room, axis: int, more: float) -> Room:
    size = [one + (more if number == axis else 0.0) for number, one in enumerate(room.size)]
    return Room((size[0], size[1], size[2]), room.opening, room.opens)


def _sum(one: Triple, other: Triple) -> Triple:
    return one[0] + other[0], one[1] + other[1], one[2] + other[2]
