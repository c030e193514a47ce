"""A refrigerant circuit's map: capacity and power over evaporating temperature, sea and speed.

The cycle's states come from CoolProp once a refrigerant, and stay on disk. The two constants of a plant,
swept volume and efficiency scale, follow from the maker's rated capacity and power; the rest is physics.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from functools import lru_cache
from importlib.metadata import version

import numpy as np

from anchorwatt.design.specification import Refrigeration
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.compressor import cycle_table, isentropic_efficiency, volumetric_efficiency
from anchorwatt.physics.condenser import condensing_temperature, effectiveness, sea_out
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.compiled import cache_folder, compiled
from anchorwatt.simulation.cooling import MIRROR
from anchorwatt.simulation.plant import (
    EVAPORATING_COUNT,
    EVAPORATING_START,
    EVAPORATING_STEP,
    SEA_COUNT,
    SEA_START,
    SEA_STEP,
    map_place,
)
from anchorwatt.stored import keep

SPEEDS = 9
"""Speeds of a variable-speed plant's map, even from its lowest to its highest."""

DENSITY, EFFECT, WORK, RATIO = 0, 1, 2, 3
"""Figures of a stacked cycle table, see `CycleTable`."""

CONDENSING_START, CONDENSING_STEP, CONDENSING_COUNT = 0.0, 1.0, 69
COLDEST_WATER = -1.0
"""°C of sea water leaving a plant that heats; sea water freezes at −1.9 °C. From practice, no source."""

LEAST_LIFT = 3.0
"""K between evaporating and condensing temperature below which the cycle's table is held."""


@dataclass(frozen=True)
class CycleTable:
    """A refrigerant's cycle over evaporating (rows) and condensing temperature, SI."""

    suction_density: Floats
    effect: Floats
    work: Floats
    ratio: Floats


@dataclass(frozen=True)
class PlantMap:
    """Capacity and power, W, over evaporating temperature, sea and speed; and the two fitted constants."""

    capacity: Floats
    power: Floats
    swept_flow: float  # m3/s at full speed
    efficiency_scale: float


@lru_cache(maxsize=16)
def stored_cycles(refrigerant: str, superheat: float, subcooling: float) -> CycleTable:
    """The cycle's table, from disk when it was computed before."""
    key = f"{refrigerant} {superheat} {subcooling} {version('coolprop')} {CONDENSING_COUNT} {EVAPORATING_COUNT}"
    path = cache_folder() / f"cycle-{hashlib.sha256(key.encode()).hexdigest()[:16]}.npy"
    if path.exists():
        try:
            return CycleTable(*np.load(path))
        except (OSError, ValueError, TypeError):
            path.unlink(missing_ok=True)  # damaged: compute it again
    table = np.empty((4, EVAPORATING_COUNT, CONDENSING_COUNT))
    condensing = CONDENSING_START + CONDENSING_STEP * np.arange(CONDENSING_COUNT)
    for i in range(EVAPORATING_COUNT):
        evaporating = EVAPORATING_START + EVAPORATING_STEP * i
        held = np.maximum(condensing, evaporating + LEAST_LIFT).tolist()
        (row,) = cycle_table(refrigerant, (evaporating,), held, superheat, subcooling)
        table[:, i] = np.array(
            [(c.suction_density, c.refrigerating_effect, c.isentropic_work, c.pressure_ratio) for c in row]
        ).T
    keep(path, lambda out: np.save(out, table))
    return CycleTable(*table)


def table_value(table: Floats, figure: int, evaporating: float, condensing: float) -> float:
    """A figure of a cycle's table, linear between its points, held at its ends."""
    i, x = map_place(evaporating, EVAPORATING_START, EVAPORATING_STEP, EVAPORATING_COUNT)
    j, y = map_place(condensing, CONDENSING_START, CONDENSING_STEP, CONDENSING_COUNT)
    low = table[figure, i, j] + y * (table[figure, i, j + 1] - table[figure, i, j])
    high = table[figure, i + 1, j] + y * (table[figure, i + 1, j + 1] - table[figure, i + 1, j])
    value: float = low + x * (high - low)
    return value


def cooling_and_work(
    table: Floats, evaporating: float, condensing: float, swept_flow: float, speed: float, scale: float
) -> tuple[float, float]:
    """W that a compressor of a swept flow, m³/s, takes in the cold and draws, at a share of full speed."""
    ratio = table_value(table, RATIO, evaporating, condensing)
    density = table_value(table, DENSITY, evaporating, condensing)
    mass_flow = swept_flow * speed * density * volumetric_efficiency(ratio)
    cooling = mass_flow * table_value(table, EFFECT, evaporating, condensing)
    work = mass_flow * table_value(table, WORK, evaporating, condensing)
    return cooling, work / isentropic_efficiency(ratio, speed, scale)


def fill_heating_map(
    table: Floats,
    swept_flow: float,
    scale: float,
    sea_flow: float,
    effective: float,
    speeds: Floats,
    capacity: Floats,
    power: Floats,
) -> None:
    """Fill the map of a plant turned round: heat given and power over condensing temperature, sea and speed.

    Rows are `MIRROR` less the condensing temperature. Each point has its own balance of the exchanger in the sea
    water, which now boils the refrigerant; where the water would leave it near freezing the plant slows down, or
    stands still.
    """
    for i in range(EVAPORATING_COUNT):
        condensing = MIRROR - (EVAPORATING_START + EVAPORATING_STEP * i)
        for j in range(SEA_COUNT):
            sea = SEA_START + SEA_STEP * j
            for k in range(speeds.shape[0]):
                evaporating = min(sea - 8.0 * speeds[k], condensing - LEAST_LIFT)
                cooling, work = 0.0, 0.0
                for _ in range(60):
                    cooling, work = cooling_and_work(table, evaporating, condensing, swept_flow, speeds[k], scale)
                    # The exchanger's heat flows the other way: the same balance about the sea's temperature.
                    new = 2.0 * sea - condensing_temperature(sea, cooling, sea_flow, effective)
                    new = min(new, condensing - LEAST_LIFT)
                    if abs(new - evaporating) < 1e-8:
                        break
                    evaporating = 0.5 * (evaporating + new)
                leaving = 2.0 * sea - sea_out(sea, cooling, sea_flow)
                capacity[i, j, k], power[i, j, k] = cooling + work, work
                if leaving < COLDEST_WATER or evaporating < EVAPORATING_START:
                    slower = k > 0
                    capacity[i, j, k] = capacity[i, j, k - 1] if slower else 0.0
                    power[i, j, k] = power[i, j, k - 1] if slower else 0.0


def fill_map(
    table: Floats,
    swept_flow: float,
    scale: float,
    sea_flow: float,
    effective: float,
    highest_condensing: float,
    speeds: Floats,
    capacity: Floats,
    power: Floats,
) -> None:
    """Fill a plant's map from its cycle table, each point with its own condenser balance.

    Beyond the highest condensing temperature the plant slows down: the map stays flat there.
    """
    for i in range(EVAPORATING_COUNT):
        evaporating = EVAPORATING_START + EVAPORATING_STEP * i
        for j in range(SEA_COUNT):
            sea = SEA_START + SEA_STEP * j
            for k in range(speeds.shape[0]):
                condensing = max(sea + 8.0 * speeds[k], evaporating + LEAST_LIFT)
                cooling, work = 0.0, 0.0
                for _ in range(60):
                    cooling, work = cooling_and_work(table, evaporating, condensing, swept_flow, speeds[k], scale)
                    new = condensing_temperature(sea, cooling + work, sea_flow, effective)
                    new = max(new, evaporating + LEAST_LIFT)
                    if abs(new - condensing) < 1e-8:
                        break
                    condensing = new
                if condensing > highest_condensing and k > 0:
                    cooling, work = capacity[i, j, k - 1], power[i, j, k - 1]
                capacity[i, j, k] = cooling
                power[i, j, k] = work


def fit(circuit: Refrigeration) -> tuple[float, float]:
    """Swept flow m³/s at full speed and efficiency scale from a circuit's rating.

    Raises
    ------
    OutOfRange
        the rating asks for an overall efficiency that no compressor has (0.25 to 0.85 is allowed), or
        condenses outside the table.
    """
    effective = effectiveness(circuit.condenser_ntu)
    rejected = circuit.rated_capacity + circuit.rated_power
    condensing = condensing_temperature(circuit.rated_sea, rejected, circuit.sea_flow, effective)
    if condensing > circuit.highest_condensing:
        raise OutOfRange(
            "at its rating the plant must condense below its highest condensing temperature; it would condense at °C",
            condensing,
        )
    table = stacked(circuit)
    density, effect, work, ratio = (
        float(table_value(table, figure, circuit.rated_evaporating, condensing))
        for figure in (DENSITY, EFFECT, WORK, RATIO)
    )
    swept_flow = circuit.rated_capacity / (effect * density * volumetric_efficiency(ratio))
    efficiency = circuit.rated_capacity / effect * work / circuit.rated_power
    if not 0.25 <= efficiency <= 0.85:
        raise OutOfRange(
            "the rating must imply an overall compressor efficiency of 0.25 to 0.85; it implies", efficiency
        )
    return swept_flow, efficiency / isentropic_efficiency(ratio, 1.0, 1.0)


@lru_cache(maxsize=64)
def plant_map(circuit: Refrigeration) -> PlantMap:
    """The map of a circuit; see `fit` for what its rating must satisfy."""
    swept_flow, scale = fit(circuit)
    speeds, capacity, power = _empty_map(circuit)
    compiled(fill_map)(
        stacked(circuit),
        swept_flow,
        scale,
        circuit.sea_flow,
        effectiveness(circuit.condenser_ntu),
        circuit.highest_condensing,
        speeds,
        capacity,
        power,
    )
    return PlantMap(capacity, power, swept_flow, scale)


@lru_cache(maxsize=64)
def heating_map(circuit: Refrigeration) -> PlantMap:
    """The map of a circuit turned round to heat, rows upside down; the same two constants."""
    swept_flow, scale = fit(circuit)
    speeds, capacity, power = _empty_map(circuit)
    compiled(fill_heating_map)(
        stacked(circuit),
        swept_flow,
        scale,
        circuit.sea_flow,
        effectiveness(circuit.condenser_ntu),
        speeds,
        capacity,
        power,
    )
    return PlantMap(capacity, power, swept_flow, scale)


def stacked(circuit: Refrigeration) -> Floats:
    """The cycle's table as the kernel takes it: suction density, effect, work, pressure ratio."""
    table = stored_cycles(circuit.refrigerant, circuit.superheat, circuit.subcooling)
    return np.stack([table.suction_density, table.effect, table.work, table.ratio])


def _empty_map(circuit: Refrigeration) -> tuple[Floats, Floats, Floats]:
    """The map's speeds, and room for capacity and power."""
    speeds = np.linspace(circuit.turn_down, 1.0, SPEEDS) if circuit.turn_down < 1.0 else np.ones(1)
    shape = (EVAPORATING_COUNT, SEA_COUNT, speeds.size)
    return speeds, np.empty(shape), np.empty(shape)
