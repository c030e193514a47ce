"""Where the centres of the cabins are, where the file does not say."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from anchorwatt.design.cabins import CabinEntry, Neighbour
from anchorwatt.design.document import Key
from anchorwatt.design.fill_faces import Plan
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.places import Spot
from anchorwatt.design.specification import Point

BOW, STERN = 0.97, 0.03
"""Shares of the waterline between which cabins below lie."""
DECKHOUSE = 0.8
"""Share of the waterline that a deckhouse takes at most."""
SOLE = 0.6
"""Share of the draught that the sole of an engine room or a hold lies below the waterline."""
LOW = ("machinery", "stowage")


def fill_centres(
    cabins: Mapping[str, CabinEntry],
    plans: Mapping[str, Plan],
    neighbours: Sequence[Neighbour],
    hull: Hull,
    ledger: Ledger,
) -> dict[str, Point]:
    """The centre of every cabin: what was typed, else by deck, sides, and who is next to whom."""
    forward = _along(cabins, plans, neighbours, hull)
    centres = {}
    for name, entry in cabins.items():
        estimate = Point(forward[name], _across(name, entry, plans[name], hull), _up(entry, plans[name], hull))
        key: Key = ("cabins", name, "at")
        centres[name] = placed(
            entry.at, key, estimate, "by deck, sides, neighbours and name, counted from the bow", hull, ledger
        )
    return centres


def placed(spot: Spot | None, key: Key, estimate: Point, rule: str, hull: Hull, ledger: Ledger) -> Point:
    """What was typed over an estimate; what was not typed goes on the list, and a place outside the hull is refused."""
    typed = {} if spot is None else {name: getattr(spot, name) for name in ("forward", "starboard", "up")}
    point = Point(
        *(
            float(getattr(estimate, name) if typed.get(name) is None else typed[name])
            for name in ("forward", "starboard", "up")
        )
    )
    guessed = [name for name in ("forward", "starboard", "up") if typed.get(name) is None]
    if spot is not None:
        for name in guessed:
            ledger.note((*key, name), ledger.show(getattr(point, name), "length"), rule, MEMORY)
    elif guessed:
        words = ", ".join(f"{ledger.show(getattr(point, name), 'length')} {name}" for name in guessed)
        ledger.note(key, words, rule, MEMORY)
    for name, (low, high) in limits(hull).items():
        if typed.get(name) is not None and not low <= typed[name] <= high:
            ledger.refuse(
                (*key, name),
                f"{typed[name].text}, which is outside the boat",
                f"{ledger.show(low, 'length')} to {ledger.show(high, 'length')} {name}",
            )
    return point


def limits(hull: Hull) -> dict[str, tuple[float, float]]:
    """The box that the boat fills: overhangs, beam, and from the bottom of its body to the top of a low rig."""
    overhang = max(hull.length - hull.waterline, 0.0)
    return {
        "forward": (-overhang, hull.waterline + overhang),
        "starboard": (-0.5 * hull.beam, 0.5 * hull.beam),
        "up": (-hull.draught, hull.freeboard + 0.5 * hull.length),
    }


def _along(
    cabins: Mapping[str, CabinEntry], plans: Mapping[str, Plan], neighbours: Sequence[Neighbour], hull: Hull
) -> dict[str, float]:
    """m forward of the aft end of the waterline, each deck laid out by itself from the bow."""
    found = {}
    for deck in ("below", "main"):
        names = [name for name, entry in cabins.items() if entry.deck == deck]
        ranks = _ranks(names, cabins, neighbours)
        rows: dict[int, list[str]] = {}
        for name in names:
            rows.setdefault(ranks[name], []).append(name)
        lengths = [max(plans[name].length for name in rows[rank]) for rank in sorted(rows)]
        room = hull.waterline * (BOW - STERN if deck == "below" else DECKHOUSE)
        scale = min(1.0, room / sum(lengths)) if lengths else 1.0
        at = hull.waterline * BOW if deck == "below" else 0.5 * (hull.waterline + scale * sum(lengths))
        for rank, length in zip(sorted(rows), lengths, strict=True):
            for name in rows[rank]:
                found[name] = at - 0.5 * scale * length
            at -= scale * length
    return found


def _ranks(names: Sequence[str], cabins: Mapping[str, CabinEntry], neighbours: Sequence[Neighbour]) -> dict[str, int]:
    """How many cabins of its deck lie before each, by who is next to whom; by the file's order where that is unknown.

    Two cabins share a rank when each touches one side only: they lie beside each other.
    """
    pairs = [set(one.between) for one in neighbours]
    first = [name for name in names if "ahead" in cabins[name].sides] or list(names[:1])
    order, rank = dict.fromkeys(first, 0), 0
    last = [name for name in names if "astern" in cabins[name].sides and name not in order]
    edge = list(first)
    while edge:
        rank += 1
        beside = [n for n in names if n not in order and n not in last if any({n, e} in pairs for e in edge)]
        for name in beside:
            whole = {"port", "starboard"} <= set(cabins[name].sides)
            order[name] = rank
            rank += 1 if whole and name != beside[-1] else 0
        edge = beside
    for name in names:
        if name not in order and name not in last:
            order[name] = rank = rank + 1
    return order | dict.fromkeys(last, rank + 1)


def _across(name: str, entry: CabinEntry, plan: Plan, hull: Hull) -> float:
    sides = {str(side) for side in entry.sides} & {"port", "starboard"}
    if hull.form.hulls > 1 and entry.deck == "below":  # a cabin of one hull touches both of its sides
        sides = set(name.split()) & {"port", "starboard"} or sides
    if len(sides) != 1:
        return 0.0
    sign = 1.0 if "starboard" in sides else -1.0
    if hull.form.hulls > 1 and entry.deck == "below":
        return sign * 0.5 * hull.beam * (1.0 - hull.form.hull_beam_share)
    return sign * 0.5 * plan.width


def _up(entry: CabinEntry, plan: Plan, hull: Hull) -> float:
    if entry.deck == "main":
        return hull.freeboard + 0.5 * plan.height
    if entry.use in LOW:
        return 0.5 * plan.height - SOLE * hull.draught
    return hull.freeboard - 0.5 * plan.height
