"""What the installation weighs, where its weight lies, and how the boat floats with it.

Masses are those of the parts, of the cables once they are sized, and of what a refit takes out. What the boat's
displacement already counts, engines among it, is left alone. Refrigerant, its lines, ducts and hoses have no mass in
the catalogue and are not counted.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from anchorwatt.design.specification import Item, Point, Specification
from anchorwatt.physics import hydrostatics
from anchorwatt.sizing.ends import End, Ends
from anchorwatt.sizing.wiring import Wiring

ON_ITS_MACHINE = ("alternator", "belt", "air_handler", "solar_panel")
"""Kinds that stand where their engine, their cabin or the sun is: nobody moves them to level a boat."""

LEVEL = math.radians(0.1)
"""rad of heel below which nobody sees it. Common practice, no source."""

CABLES = "W"
"""Tag of all cables together, whose circuits are W1 on."""

INSIDE = 0.42
"""Share of the beam of a hull to which a part's centre can be moved off its middle. From memory."""

MOST_MOVES, SHORTEST_MOVE = 3, 0.1
"""How many parts are moved to level a boat, and m below which it is not worth it."""

UNCOUNTED = "refrigerant and its lines, ducts and hoses: the catalogue has no mass for them"
"""What the sum leaves out."""


@dataclass(frozen=True)
class Carried:
    """A mass at its place."""

    tag: str  # "" = it is taken out, "W" = all cables
    name: str
    mass: float  # kg, all of them together; negative = taken out
    position: Point
    placed: bool  # whether somebody said where it stands
    movable: bool

    @property
    def across(self) -> float:
        """kg m, to starboard positive."""
        return self.mass * self.position.starboard

    @property
    def upward(self) -> float:
        """kg m over the waterline."""
        return self.mass * self.position.up


@dataclass(frozen=True)
class Move:
    """One part moved."""

    tag: str
    name: str
    start: Point
    end: Point
    space: str  # the space that it goes to, "" = across the boat where it stands
    distance: float  # m
    heel: float  # rad that is left


@dataclass(frozen=True)
class Float:
    """How the boat floats with a set of masses, against how it did without."""

    mass: float  # kg, added less taken out
    displacement: float  # kg, after
    heel: float  # rad, starboard down positive
    trim: float  # m, bow down positive
    at_bow: float  # m deeper there, sinkage and trim together
    at_stern: float
    sinkage: float  # m, deeper positive
    gravity_up: float  # m over the old waterline, after
    metacentric_height: float  # m, after


@dataclass(frozen=True)
class Weight:
    """All masses and what they do to the boat."""

    carried: tuple[Carried, ...]  # heaviest first
    added: float  # kg
    taken_out: float  # kg
    placed: float  # share of the mass that somebody has said the place of
    centre: Point  # of what is added
    radius: float  # m, root mean square distance of what is added from amidships, in plan
    floats: Float
    mass_per_immersion: float  # kg/m
    moment_to_trim: float  # kg m for 1 cm
    trim_arms: tuple[float, ...]  # m forward of the centre of flotation, one a mass of `carried`
    moves: tuple[Move, ...]  # each by itself levels the boat or nearly does, smallest first
    together: tuple[Move, ...]  # where none does by itself: moves that level it together, or come nearest
    uncounted: str


def weight(specification: Specification, cables: Sequence[Carried] = ()) -> Weight:
    """Add up everything that the design brings aboard and takes ashore.

    Parameters
    ----------
    cables : the cables by `cables_at`; they follow the parts, so they count neither as placed nor as unplaced
    """
    parts = [_carried(item) for item in specification.items]
    out = [Carried("", one.name, -one.mass, one.position, one.placed, False) for one in specification.removed]
    stands = (*parts, *out)
    carried = tuple(sorted((*stands, *cables), key=lambda one: -abs(one.mass)))
    brought = [one for one in carried if one.mass > 0.0]
    added = math.fsum(one.mass for one in brought)
    total = math.fsum(abs(one.mass) for one in stands)
    amidships = 0.5 * specification.waterline
    spread = math.fsum(
        one.mass * ((one.position.forward - amidships) ** 2 + one.position.starboard**2) for one in brought
    )
    floats = floating(specification, carried)
    moves = _moves(specification, carried, floats)
    return Weight(
        carried=carried,
        added=added,
        taken_out=math.fsum(-one.mass for one in carried if one.mass < 0.0),
        placed=math.fsum(abs(one.mass) for one in stands if one.placed) / total if total else 0.0,
        centre=_centre(brought, added, Point(amidships, 0.0, 0.0)),
        radius=math.sqrt(spread / added) if added else 0.0,
        floats=floats,
        mass_per_immersion=hydrostatics.mass_per_immersion(specification.waterplane),
        moment_to_trim=hydrostatics.moment_to_trim(
            floats.displacement, specification.longitudinal_metacentric_height, specification.waterline
        ),
        trim_arms=tuple(one.position.forward - specification.flotation for one in carried),
        moves=moves,
        together=() if moves else _together(specification, carried, floats),
        uncounted=UNCOUNTED,
    )


def cables_at(specification: Specification, wired: Wiring) -> tuple[Carried, ...]:
    """All cables as one mass, each taken at the middle between its ends; none where nothing is wired."""
    ends = Ends(specification)
    known = {
        end.tag: end.position
        for held in vars(ends).values()
        for end in (held if isinstance(held, tuple) else (held,))
        if isinstance(end, End)
    }
    amidships = Point(0.5 * specification.waterline, 0.0, 0.0)
    laid = []
    for one in wired.circuits:
        # A sensor is made at the part that it sits on: the other end tells where its cable runs.
        start = known.get(one.circuit.start) or known.get(one.circuit.end) or amidships
        end = known.get(one.circuit.end) or start
        middle = Point(
            0.5 * (start.forward + end.forward), 0.5 * (start.starboard + end.starboard), 0.5 * (start.up + end.up)
        )
        laid.append(Carried(one.circuit.tag, one.circuit.function, one.conductor.mass, middle, False, False))
    total = math.fsum(one.mass for one in laid)
    if not total:
        return ()
    name = f"cables, {len(laid)} circuits"
    return (Carried(CABLES, name, total, _centre(laid, total, amidships), False, False),)


def floating(specification: Specification, carried: Sequence[Carried]) -> Float:
    """How the boat floats with those masses."""
    it = specification
    mass = math.fsum(one.mass for one in carried)
    across = math.fsum(one.across for one in carried)
    upward = math.fsum(one.upward for one in carried)
    along = math.fsum(one.mass * (one.position.forward - it.flotation) for one in carried)
    after = it.displacement + mass
    stiffness = hydrostatics.metacentric_height_after(
        it.metacentric_height, it.displacement, mass, upward, it.waterplane
    )
    trim = hydrostatics.change_of_trim(along, after, it.longitudinal_metacentric_height, it.waterline)
    sunk = hydrostatics.sinkage(mass, it.waterplane)
    bow = hydrostatics.trim_at_bow(trim, it.flotation, it.waterline)
    return Float(
        mass=mass,
        displacement=after,
        heel=_heel(across, after, stiffness),
        trim=trim,
        at_bow=sunk + bow,
        at_stern=sunk + bow - trim,
        sinkage=sunk,
        gravity_up=hydrostatics.gravity_height(it.gravity_up, it.displacement, mass, upward),
        metacentric_height=stiffness,
    )


def _heel(across: float, displacement: float, stiffness: float) -> float:
    """nan where the boat has lost its stability or heels so far that the formula ends."""
    if stiffness <= 0.0 or abs(across) > displacement * stiffness * math.tan(hydrostatics.LARGEST_HEEL):
        return math.nan
    return hydrostatics.heel_angle(across, displacement, stiffness)


def _carried(item: Item) -> Carried:
    return Carried(
        tag=item.tag,
        name=item.counted,
        mass=item.count * item.mass,
        position=item.position,
        placed=item.placed,
        movable=item.kind not in ON_ITS_MACHINE and (item.placed or item.space >= 0),
    )


def _centre(masses: Sequence[Carried], total: float, otherwise: Point) -> Point:
    if not total:
        return otherwise
    return Point(
        math.fsum(one.mass * one.position.forward for one in masses) / total,
        math.fsum(one.across for one in masses) / total,
        math.fsum(one.upward for one in masses) / total,
    )


def _moves(specification: Specification, carried: Sequence[Carried], floats: Float) -> tuple[Move, ...]:
    """Single moves that take the heel away, or bring it below what one sees."""
    if math.isnan(floats.heel) or abs(floats.heel) <= LEVEL:
        return ()
    across = math.fsum(one.across for one in carried)
    stands = {item.tag: item.space for item in specification.items}
    moves = []
    for one in carried:
        if not one.movable or one.mass <= 0.0:
            continue
        level = replace(one.position, starboard=one.position.starboard - across / one.mass)
        low, high = _reach(one.position.starboard, specification)
        if low <= level.starboard <= high:
            moves.append(_move(specification, carried, one, level, ""))
        for number, space in enumerate(specification.spaces):
            if number != stands.get(one.tag):
                made = _move(specification, carried, one, space.centre, space.name)
                if abs(made.heel) <= LEVEL:
                    moves.append(made)
    return tuple(sorted(moves, key=lambda move: move.distance))


def _together(specification: Specification, carried: Sequence[Carried], floats: Float) -> tuple[Move, ...]:
    """The heaviest parts one after another, each across its hull as far as it helps."""
    masses = list(carried)
    moves: list[Move] = []
    for number, one in enumerate(masses):
        across = math.fsum(other.across for other in masses)
        if math.isnan(floats.heel) or abs(floats.heel) <= LEVEL or len(moves) == MOST_MOVES:
            break
        if not one.movable or one.mass <= 0.0:
            continue
        low, high = _reach(one.position.starboard, specification)
        wanted = min(max(one.position.starboard - across / one.mass, low), high)
        if abs(wanted - one.position.starboard) < SHORTEST_MOVE:
            continue
        move = _move(specification, masses, one, replace(one.position, starboard=wanted), "")
        masses[number] = replace(one, position=move.end)
        floats = floating(specification, masses)
        moves.append(move)
    return tuple(moves)


def _reach(starboard: float, specification: Specification) -> tuple[float, float]:
    """m to starboard between which a part's centre stays in its hull."""
    middle = 0.5 * (specification.beam - specification.hull_beam) if specification.hulls > 1 else 0.0
    hull = math.copysign(middle, starboard)
    return hull - INSIDE * specification.hull_beam, hull + INSIDE * specification.hull_beam


def _move(specification: Specification, carried: Sequence[Carried], one: Carried, end: Point, space: str) -> Move:
    moved = [replace(other, position=end) if other is one else other for other in carried]
    start = one.position
    return Move(
        tag=one.tag,
        name=one.name,
        start=start,
        end=end,
        space=space,
        distance=math.dist((start.forward, start.starboard, start.up), (end.forward, end.starboard, end.up)),
        heel=floating(specification, moved).heel,
    )
