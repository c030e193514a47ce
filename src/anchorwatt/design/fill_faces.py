"""The outside faces of a cabin: estimated from the boat's proportions, changed by what was typed."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from anchorwatt.catalogue.part import nearest
from anchorwatt.design.bearing import FACES
from anchorwatt.design.cabins import CabinEntry, Neighbour, SurfaceEntry
from anchorwatt.design.document import Key
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.skin import SkinParts
from anchorwatt.design.specification import Outside

HEADROOM = {"below": 1.90, "main": 1.98}  # m, mean over the floor; from memory
SIDES = {"ahead": "front", "starboard": "starboard side", "astern": "back", "port": "port side"}

BOW_SHARE = 0.5  # the front of a cabin below is narrower than the cabin: bows meet at the stem

SMALLEST_FACE = 0.005  # m2; less is nothing
SMALLEST_HEIGHT = 0.05  # m under the waterline; less is nothing


@dataclass(frozen=True)
class Plan:
    """A cabin seen from above, and its headroom."""

    length: float  # m, fore and aft
    width: float  # m
    height: float  # m


@dataclass(frozen=True)
class Face:
    """One outside face of a cabin."""

    name: str
    area: float  # m2, windows included
    covered: str  # key of `Hull.skins`
    skin: SkinParts
    faces: float  # rad from the bow
    tilt: float  # rad from straight up
    outside: Outside
    rule: str  # how its area was estimated
    sun_left: float = 1.0  # share of the sun that what stands over it leaves
    sky_left: float = 1.0


def fill_plan_of(name: str, cabin: CabinEntry, hull: Hull, ledger: Ledger) -> Plan:
    """Length, width and headroom of a cabin."""
    form = hull.form
    # Sides left out err towards more heat, and whoever left them out must see it.
    if "sides" not in cabin.model_fields_set:
        ledger.note(
            ("cabins", name, "sides"), ", ".join(cabin.sides), "no sides are given: taken from side to side", MEMORY
        )
    height = ledger.fill(
        cabin.height,
        ("cabins", name, "height"),
        HEADROOM[cabin.deck],
        "length",
        "mean headroom below" if cabin.deck == "below" else "mean headroom in a deckhouse",
        MEMORY,
    )
    share = form.hull_beam_share * form.floor_beam_share
    across = hull.beam * (share if cabin.deck == "below" else form.superstructure_beam_share)
    touched = len({"port", "starboard"} & set(cabin.sides))
    if touched == 2:
        width, words = across, "from side to side"
    elif touched == 1:
        width, words = across / 2.0, "half of the width"
    else:
        width, words = math.sqrt(cabin.floor_area), "square, touching neither side"
    length = ledger.fill(
        cabin.length,
        ("cabins", name, "length"),
        cabin.floor_area / width,
        "length",
        f"floor area over {ledger.show(width, 'length')}, {words}; {form.name}",
        form.source,
    )
    return Plan(length, cabin.floor_area / length, height)


def fill_faces(
    name: str,
    cabin: CabinEntry,
    plan: Plan,
    neighbours: Sequence[Neighbour],
    cabins: Mapping[str, CabinEntry],
    hull: Hull,
    ledger: Ledger,
) -> dict[str, Face]:
    """Every outside face of a cabin by name."""
    key: Key = ("cabins", name, "surfaces")
    estimated = _estimated(name, cabin, plan, hull, ledger)
    free = _free_sole(name, cabin, neighbours, cabins, hull)
    if free is not None:
        estimated.append(free)
    faces = {}
    for face in estimated:
        given = cabin.surfaces.get(face.name)
        typed = given.area if given is not None else None
        area = ledger.fill(typed, (*key, face.name, "area"), face.area, "area", face.rule, hull.form.source)
        faces[face.name] = _changed(replace(face, area=area), given, (*key, face.name), ledger)
    for title, given in cabin.surfaces.items():
        if title in faces:
            continue
        skin = given.skin
        needed = ["area", "skin", "faces", "tilt", "outside"]
        if given.outside == "nothing":
            needed = ["area", "skin"]
        lacking = [field for field in needed if getattr(given, field) is None]
        if lacking or skin is None:
            ledger.refuse(
                (*key, title),
                f"a surface that is not among the estimated ones{nearest(title, faces)}, without {', '.join(lacking)}",
                f"one of {', '.join(faces)}; or a surface with area, skin, faces, tilt and outside",
            )
            continue
        face = Face(title, float(given.area or 0.0), "", skin, 0.0, math.pi / 2, Outside.AIR, "typed")
        faces[title] = _changed(face, given, (*key, title), ledger)
    return faces


def _estimated(name: str, cabin: CabinEntry, plan: Plan, hull: Hull, ledger: Ledger) -> list[Face]:
    below = cabin.deck == "below"
    faces = []

    def add(title: str, area: float, covered: str, bearing: float, tilt: float, outside: Outside, rule: str) -> None:
        faces.append(Face(title, area, covered, hull.skins[covered], bearing, tilt, outside, rule))

    above = min(plan.height, hull.freeboard) if below else plan.height
    under = plan.height - above
    covered = "topsides" if below else "superstructure"
    tilt = math.pi / 2 + (hull.form.flare if below else -hull.form.lean)
    for side, bearing in FACES.items():
        if side not in cabin.sides:
            continue
        along = plan.length if side in ("port", "starboard") else plan.width
        along *= BOW_SHARE if below and side == "ahead" else 1.0
        by = f"{ledger.show(along, 'length')} by"
        rule = f"{by} {ledger.show(above, 'length')} of {covered}"
        add(SIDES[side], along * above, covered, bearing, tilt, Outside.AIR, rule)
        if under > SMALLEST_HEIGHT:
            rule = f"{by} {ledger.show(under, 'length')} under the waterline"
            add(f"{SIDES[side]} under water", along * under, "bottom", bearing, tilt, Outside.SEA, rule)
    floor, over_sea = float(cabin.floor_area), _over_sea(name, cabin, hull, ledger)
    open_deck = ledger.fill(
        cabin.open_deck,
        ("cabins", name, "open_deck"),
        1.0,
        "share",
        "nothing is said to stand over it",
        MEMORY,
    )
    if open_deck > 0.0:
        title = "deck" if below else "roof"
        add(title, floor * open_deck, title, 0.0, 0.0, Outside.AIR, f"{open_deck:.0%} of the floor area")
    if over_sea > 0.0:
        title = "bottom" if below else "bridge deck"
        outside = Outside.SEA if below else Outside.AIR
        add(title, floor * over_sea, "bottom", 0.0, math.pi, outside, f"{over_sea:.0%} of the floor area")
    return faces


def _over_sea(name: str, cabin: CabinEntry, hull: Hull, ledger: Ledger) -> float:
    bridge = hull.form.hulls > 1
    if cabin.deck == "below":
        share, rule = 1.0, "a cabin in the hull"
    else:
        share, rule = (0.5, "between two hulls, over the water") if bridge else (0.0, "a cabin in the deckhouse")
    return ledger.fill(cabin.over_sea, ("cabins", name, "over_sea"), share, "share", rule, MEMORY)


def _free_sole(
    name: str,
    cabin: CabinEntry,
    neighbours: Sequence[Neighbour],
    cabins: Mapping[str, CabinEntry],
    hull: Hull,
) -> Face | None:
    """The part of a deckhouse's sole that is over no other cabin and no water: it lets no heat through."""
    if cabin.deck == "below":
        return None
    share = cabin.over_sea if cabin.over_sea is not None else 0.5 if hull.form.hulls > 1 else 0.0
    free = cabin.floor_area * (1.0 - share)
    for neighbour in neighbours:
        if name in neighbour.between and all(other in cabins for other in neighbour.between):
            first, second = (cabins[other] for other in neighbour.between)
            if first.deck != second.deck:
                usual = sole_between(first, second)
                free -= neighbour.area if neighbour.area is not None else usual
    if free < SMALLEST_FACE and "sole" not in cabin.surfaces:
        return None
    skin = SkinParts(construction=hull.soles, finish=None)
    rule = "floor over no cabin and no water; it lets no heat through"
    area = max(free, SMALLEST_FACE)
    return Face("sole", area, "", skin, 0.0, math.pi, Outside.NOTHING, rule)


def sole_between(first: CabinEntry, second: CabinEntry) -> float:
    """m2 of sole that two cabins, one over the other, are taken to share."""
    return 0.5 * min(first.floor_area, second.floor_area)


def _changed(face: Face, given: SurfaceEntry | None, key: Key, ledger: Ledger) -> Face:
    if given is None:
        return face
    outside = face.outside if given.outside is None else Outside(given.outside)
    cover = given.cover
    if cover is not None and outside is not Outside.AIR:
        found = f"a cover over a surface with {outside.value} outside"
        ledger.refuse((*key, "cover"), found, "a cover over a surface with air outside")
    return replace(
        face,
        sun_left=1.0 if cover is None else float(cover.factor),
        sky_left=1.0 if cover is None or cover.sky is None else float(cover.sky),
        skin=face.skin if given.skin is None else _with_finish(given.skin, face.skin),
        faces=face.faces if given.faces is None else float(given.faces),
        tilt=face.tilt if given.tilt is None else float(given.tilt),
        outside=outside,
    )


def _with_finish(skin: SkinParts, other: SkinParts) -> SkinParts:
    return skin if skin.finish is not None else skin.model_copy(update={"finish": other.finish})
