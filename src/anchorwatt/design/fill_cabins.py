"""Cabins with their faces, windows and furnishings, every gap filled."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from anchorwatt.catalogue.construction import Construction
from anchorwatt.design.cabins import CabinEntry, Neighbour
from anchorwatt.design.document import Key
from anchorwatt.design.fill_centres import fill_centres
from anchorwatt.design.fill_faces import SMALLEST_FACE, Face, Plan, fill_faces, fill_plan_of
from anchorwatt.design.fill_windows import fill_windows
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.specification import Cabin, Layer, Outside, Point, Surface

# Air changes an hour with hatches shut, by use: 0.2 to 0.5 for a closed modern boat, more where doors and
# hatches are used. From memory.
LEAKAGE = {
    "sleeping": 0.3,
    "saloon": 0.5,
    "galley": 0.6,
    "pilothouse": 0.8,
    "head": 0.5,
    "passage": 0.5,
    "stowage": 0.3,
    "machinery": 2.0,
}

# kJ/K and m2 for each m2 of floor: mattresses, lockers, upholstery; engines are counted apart. From memory.
FURNISHING_HEAT = {"sleeping": 45.0, "saloon": 45.0, "galley": 55.0, "stowage": 60.0, "machinery": 60.0}
FURNISHING_HEAT_ELSE = 30.0
FURNISHING_AREA = 2.0
MOISTURE_FACTOR = 8.0
USUAL_EMITTANCE = 0.9  # of a face whose finish does not matter
AIR_SHARE = 0.85  # of floor area times headroom; furniture takes the rest


@dataclass(frozen=True)
class Room:
    """A cabin and its plan."""

    cabin: Cabin
    plan: Plan
    entry: CabinEntry


def fill_cabins(
    cabins: Mapping[str, CabinEntry], neighbours: Sequence[Neighbour], hull: Hull, ledger: Ledger
) -> list[Room]:
    """Every cabin, with its faces and windows."""
    plans = {name: fill_plan_of(name, entry, hull, ledger) for name, entry in cabins.items()}
    centres = fill_centres(cabins, plans, neighbours, hull, ledger)
    return [
        _room(name, entry, plans[name], centres[name], neighbours, cabins, hull, ledger)
        for name, entry in cabins.items()
    ]


def layers_of(construction: Construction) -> tuple[Layer, ...]:
    """The layers of a construction as plain figures."""
    return tuple(
        Layer(
            layer.material.name,
            float(layer.thickness),
            float(layer.material.conductivity),
            float(layer.material.density),
            float(layer.material.specific_heat),
        )
        for layer in construction.layers
    )


def _room(
    name: str,
    entry: CabinEntry,
    plan: Plan,
    centre: Point,
    neighbours: Sequence[Neighbour],
    cabins: Mapping[str, CabinEntry],
    hull: Hull,
    ledger: Ledger,
) -> Room:
    key: Key = ("cabins", name)
    floor = float(entry.floor_area)
    volume = ledger.fill(
        entry.volume,
        (*key, "volume"),
        AIR_SHARE * floor * plan.height,
        "volume",
        f"{AIR_SHARE:.0%} of floor area times headroom; furniture takes the rest",
        MEMORY,
    )
    faces = fill_faces(name, entry, plan, neighbours, cabins, hull, ledger)
    windows, glazed = fill_windows(name, entry, faces, ledger)
    surfaces = [
        _surface(face, face.area - glazed.get(face.name, 0.0))
        for face in faces.values()
        if face.area - glazed.get(face.name, 0.0) >= SMALLEST_FACE
    ]
    heat = FURNISHING_HEAT.get(entry.use, FURNISHING_HEAT_ELSE)
    cabin = Cabin(
        name=name,
        use=entry.use,
        deck=entry.deck,
        floor_area=floor,
        length=plan.length,
        height=plan.height,
        volume=volume,
        surfaces=tuple(surfaces),
        windows=tuple(windows),
        leakage=ledger.fill(
            entry.leakage,
            (*key, "leakage"),
            LEAKAGE[entry.use] / 3600.0,
            "air changes",
            f"{entry.use}, hatches shut",
            MEMORY,
        ),
        fresh_air=float(entry.fresh_air or 0.0),
        fresh_air_per_person=float(entry.fresh_air_per_person or 0.0),
        fresh_air_recovery=float(entry.fresh_air_recovery or 0.0),
        furnishing_heat_capacity=ledger.fill(
            entry.furnishing_heat_capacity,
            (*key, "furnishing_heat_capacity"),
            1e3 * heat * floor,
            "heat capacity",
            f"{heat:g} kJ/K for each m² of floor, {entry.use}",
            MEMORY,
        ),
        furnishing_area=ledger.fill(
            entry.furnishing_area,
            (*key, "furnishing_area"),
            FURNISHING_AREA * floor,
            "area",
            f"{FURNISHING_AREA:g} times the floor",
            MEMORY,
        ),
        moisture_factor=ledger.fill(
            entry.moisture_factor,
            (*key, "moisture_factor"),
            MOISTURE_FACTOR,
            "",
            "textiles and wood hold several times what the air holds",
            MEMORY,
        ),
        centre=centre,
    )
    return Room(cabin, plan, entry)


def _surface(face: Face, area: float) -> Surface:
    finish = face.skin.finish
    dry = face.outside is Outside.AIR and finish is not None
    return Surface(
        name=face.name,
        area=area,
        layers=layers_of(face.skin.construction),
        absorptance=float(finish.absorptance) if dry and finish is not None else 0.0,
        emittance=float(finish.emittance) if finish is not None else USUAL_EMITTANCE,
        faces=face.faces,
        tilt=face.tilt,
        outside=face.outside,
        sun_left=face.sun_left,
        sky_left=face.sky_left,
    )
