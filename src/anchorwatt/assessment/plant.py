"""What the shared plant gives and draws over seawater temperature and load."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from anchorwatt.design.specification import SharedPlant
from anchorwatt.simulation.arrays import Plant
from anchorwatt.simulation.cooling import MIRROR
from anchorwatt.simulation.plant import compressor_power, full_capacity, grid_value
from anchorwatt.sizing.selection import evaporating_at_rating

SEAS = (10.0, 14.0, 18.0, 22.0, 26.0, 28.0, 30.0, 32.0, 34.0, 36.0)
"""°C."""

COLD_SEAS = (4.0, 8.0, 12.0, 16.0, 20.0)
"""°C, for heating."""

LOADS = (1.0, 0.75, 0.5, 0.35, 0.25, 0.15)
"""Share of what the compressor gives at full speed at that sea."""

WARM_COIL = 45.0
"""°C at which the refrigerant condenses in the coils while heating is told for."""


@dataclass(frozen=True)
class PlantPoint:
    """The plant at one sea temperature and load."""

    sea: float  # °C
    share: float  # of what it gives at full speed at that sea
    load: float  # W of cooling, or of heat given
    coil: float  # °C of the refrigerant in the coils
    compressor_power: float  # W with drive
    plant_power: float  # W with fans, seawater pump and controls
    running: float  # share of the time that the compressor runs

    @property
    def compressor_cop(self) -> float:
        """W for each W of the compressor."""
        return self.load / self.compressor_power if self.compressor_power > 0.0 else math.nan

    @property
    def plant_cop(self) -> float:
        """W for each W of the whole plant."""
        return self.load / self.plant_power if self.plant_power > 0.0 else math.nan


@dataclass(frozen=True)
class PlantMap:
    """The shared plant over the sea and the load."""

    name: str
    refrigerant: str
    cooling: tuple[PlantPoint, ...]
    heating: tuple[PlantPoint, ...]  # none where it does not heat

    def at(self, share: float) -> tuple[PlantPoint, ...]:
        """The points of one load's share, by rising sea temperature."""
        return tuple(point for point in self.cooling if point.share == share)

    def heating_at(self, share: float) -> tuple[PlantPoint, ...]:
        """The points of one load's share while it heats, by rising sea temperature."""
        return tuple(point for point in self.heating if point.share == share)


def _point(plant: Plant, sea: float, share: float, coil: float) -> PlantPoint:
    capacity, power = plant.plant_capacity[0], plant.plant_power[0]
    load = share * full_capacity(capacity, coil, sea)
    drawn, running = compressor_power(capacity, power, load, coil, sea, float(plant.degradation[0]))
    # Fans follow the call of their handlers, here all alike.
    fans = sum(abs(grid_value(plant.handler_fan[0], h, share)) for h in range(plant.handler_cabin.size))
    whole = drawn + running * float(plant.pump_power[0]) + float(plant.standby_power[0]) + fans
    return PlantPoint(sea, share, float(load), coil, float(drawn), float(whole), float(running))


def full_speed(specification: SharedPlant, cooling: Plant, sea: float) -> PlantPoint:
    """The plant at full speed in a sea, °C, at the coil's temperature of `plant_points`."""
    return _point(cooling, sea, 1.0, evaporating_at_rating(specification.circuit))


def plant_points(specification: SharedPlant, cooling: Plant, heating: Plant) -> PlantMap:
    """The map, at the evaporating temperature of the rating or the highest that the plant allows."""
    cold = evaporating_at_rating(specification.circuit)
    cools = tuple(_point(cooling, sea, share, cold) for share in LOADS for sea in SEAS)
    heats: tuple[PlantPoint, ...] = ()
    if specification.reversible:
        warm = min(WARM_COIL, specification.highest_heating_condensing)
        turned = [_point(heating, sea, share, MIRROR - warm) for share in LOADS for sea in COLD_SEAS]
        heats = tuple(replace(point, coil=warm) for point in turned)
    return PlantMap(specification.name, specification.safety.name, cools, heats)
