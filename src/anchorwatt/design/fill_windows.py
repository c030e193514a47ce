"""The windows of a cabin, and what is usual where the file says nothing of them."""

from __future__ import annotations

from collections.abc import Mapping

from anchorwatt.catalogue.glazing import Glazing
from anchorwatt.catalogue.part import nearest, typed
from anchorwatt.design.cabins import CabinEntry
from anchorwatt.design.document import Key
from anchorwatt.design.fill_faces import SMALLEST_FACE, Face
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.specification import Window

# Of a cabin of which nothing is said; from memory.
USUAL_GLAZING = "smoked acrylic 10 mm"
USUAL_SHARES = {"topsides": 0.04, "superstructure": 0.35}
USUAL_HATCH = 0.25  # m2, over living and sleeping cabins
LIVED_IN = ("sleeping", "saloon", "galley", "pilothouse")


def fill_windows(
    name: str, cabin: CabinEntry, faces: Mapping[str, Face], ledger: Ledger
) -> tuple[list[Window], dict[str, float]]:
    """The windows, and the m2 that they take of each face."""
    if cabin.windows is None:
        return _usual(name, cabin, faces, ledger)
    windows = []
    glazed: dict[str, float] = {}
    for title, given in cabin.windows.items():
        key: Key = ("cabins", name, "windows", title)
        face = faces.get(given.surface)
        if face is None:
            ledger.refuse(
                (*key, "surface"),
                f"no surface “{given.surface}” in {name}{nearest(given.surface, faces)}",
                "one of: " + ", ".join(faces) if faces else "a surface; this cabin touches no outside",
            )
            continue
        area = given.area * given.count
        whole = glazed.get(face.name, 0.0) + area
        if whole > face.area * (1.0 + 1e-9):
            ledger.refuse(
                (*key, "area"),
                f"{ledger.show(whole, 'area')} of windows in {given.surface}",
                f"at most the surface's {ledger.show(face.area, 'area')}",
            )
            continue
        glazed[face.name] = whole
        factor = face.sun_left
        for shade in (given.cover, given.blind):
            factor *= 1.0 if shade is None else float(shade.factor)
        tilt = face.tilt if given.tilt is None else float(given.tilt)
        windows.append(_window(title, area, given.glazing, factor, face.faces, tilt))
    return windows, glazed


def _usual(
    name: str, cabin: CabinEntry, faces: Mapping[str, Face], ledger: Ledger
) -> tuple[list[Window], dict[str, float]]:
    key: Key = ("cabins", name, "windows")
    if cabin.use in ("machinery", "stowage"):
        ledger.note(key, "none", f"usual for {cabin.use}", MEMORY)
        return [], {}
    glazing = typed(Glazing, USUAL_GLAZING)
    windows = []
    glazed: dict[str, float] = {}
    for face in faces.values():
        area = face.area * USUAL_SHARES.get(face.covered, 0.0)
        if face.covered == "deck" and cabin.use in LIVED_IN:
            area = min(USUAL_HATCH, 0.2 * face.area)
        if face.outside.value == "air" and area > SMALLEST_FACE:
            glazed[face.name] = area
            title = "hatch" if face.covered == "deck" else f"windows in {face.name}"
            windows.append(_window(title, area, glazing, face.sun_left, face.faces, face.tilt))
    ledger.note(
        key,
        f"{ledger.show(sum(glazed.values()), 'area')} of {glazing.name}, no covers",
        f"{USUAL_SHARES['topsides']:.0%} of topsides, {USUAL_SHARES['superstructure']:.0%} of a deckhouse's "
        f"sides, a hatch of {ledger.show(USUAL_HATCH, 'area')} in the deck",
        MEMORY,
    )
    return windows, glazed


def _window(title: str, area: float, glazing: Glazing, factor: float, faces: float, tilt: float) -> Window:
    return Window(title, area, float(glazing.u_value), float(glazing.solar_gain), glazing.panes, factor, faces, tilt)
