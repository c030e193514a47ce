"""A specification as the kernel's arrays."""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np

from anchorwatt.design.specification import Cabin, Outside, Partition, Specification
from anchorwatt.physics.envelope import INSIDE_RADIATION, discretise, inside_convection
from anchorwatt.simulation.arrays import TO_CABIN, TO_NOTHING, TO_OUTSIDE, Boat, Fabric
from anchorwatt.simulation.plants import (
    CABIN_AIR_DENSITY,
    self_contained_units,
    shared_plant,
    shared_plant_heating,
)
from anchorwatt.simulation.power import power_arrays

UPRIGHT = math.pi / 2

SUN_TO_FURNISHINGS = 0.3
"""Share of the sun through windows that falls on furnishings; the rest is spread over all surfaces. From
practice, no source."""


def boat_arrays(specification: Specification) -> Boat:
    """The specification as the one variant of a `Boat`."""
    return Boat(
        fabric=fabric_arrays(specification),
        plant=shared_plant(specification.plant),
        heating=shared_plant_heating(specification.plant),
        units=self_contained_units(specification.alternative),
        power=power_arrays(specification),
    )


def fabric_arrays(specification: Specification) -> Fabric:
    """Walls, cabins and the air between them."""
    return _fabric(specification.cabins, specification.partitions)


@lru_cache(maxsize=16)
def _fabric(cabins: tuple[Cabin, ...], partitions: tuple[Partition, ...]) -> Fabric:
    first, kinds, near, far = [0], [], [], []
    capacities: list[float] = []
    conductances: list[float] = []
    near_convection, near_radiation, far_convection, far_radiation = [], [], [], []

    def add(layers: object, area: float, kind: int, cabin: int, far_cabin: int, tilt: float) -> None:
        nodes = discretise([(x.thickness, x.conductivity, x.density, x.specific_heat) for x in layers])  # type: ignore[attr-defined]
        capacities.extend(area * c for c in nodes.capacities)
        conductances.extend([*(area * g for g in nodes.conductances), 0.0])
        first.append(len(capacities))
        kinds.append(kind)
        near.append(cabin)
        far.append(far_cabin)
        convection = area * inside_convection(tilt)
        between = kind == TO_CABIN
        near_convection.append(convection)
        near_radiation.append(area * INSIDE_RADIATION)
        far_convection.append(convection if between else 0.0)
        far_radiation.append(area * INSIDE_RADIATION if between else 0.0)

    for c, cabin in enumerate(cabins):
        for surface in cabin.surfaces:
            kind = TO_NOTHING if surface.outside is Outside.NOTHING else TO_OUTSIDE
            add(surface.layers, surface.area, kind, c, -1, surface.tilt)
    exchange = np.zeros((len(cabins), len(cabins)))
    for partition in partitions:
        a, b = partition.cabins
        if partition.area > 0.0:
            add(partition.layers, partition.area, TO_CABIN, b, a, UPRIGHT)
        exchange[a, b] += partition.air_exchange * CABIN_AIR_DENSITY
        exchange[b, a] += partition.air_exchange * CABIN_AIR_DENSITY

    air_mass = np.array([cabin.volume * CABIN_AIR_DENSITY for cabin in cabins])
    return Fabric(
        wall_first=np.array(first, dtype=np.int64),
        wall_kind=np.array(kinds, dtype=np.int64),
        wall_cabin=np.array(near, dtype=np.int64),
        wall_far_cabin=np.array(far, dtype=np.int64),
        node_capacity=np.array([capacities]),
        node_conductance=np.array([conductances]),
        near_convection=np.array([near_convection]),
        near_radiation=np.array([near_radiation]),
        far_convection=np.array([far_convection]),
        far_radiation=np.array([far_radiation]),
        air_mass=air_mass[None],
        moisture_mass=(air_mass * [cabin.moisture_factor for cabin in cabins])[None],
        furnishing_capacity=np.array([[cabin.furnishing_heat_capacity for cabin in cabins]]),
        furnishing_convection=np.array([[cabin.furnishing_area * inside_convection(UPRIGHT) for cabin in cabins]]),
        furnishing_radiation=np.array([[cabin.furnishing_area * INSIDE_RADIATION for cabin in cabins]]),
        window_conductance=np.array([[sum(w.area * w.u_value for w in cabin.windows) for cabin in cabins]]),
        sun_wall=np.zeros((1, len(kinds))),
        sun_furnishing=np.full((1, len(cabins)), SUN_TO_FURNISHINGS),
        sun_star=np.full((1, len(cabins)), 1.0 - SUN_TO_FURNISHINGS),
        exchange=exchange[None],
    )
