"""The plant, and the cabins it cools, dries and heats."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.design.specification import Refrigeration, Specification
from tests.checks.changed import TWO_CABINS as BOAT
from tests.checks.changed import cabins, nobody
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats


def with_circuit(boat: Specification, circuit: Refrigeration) -> Specification:
    return replace(boat, plant=replace(boat.plant, circuit=circuit))


def in_winter() -> Specification:
    """Cold weather, every cabin heated day and night."""
    weather = boats.place(replace(boats.DAY, highest_dry_bulb=-4.0, dew_point=-9.0))
    off, on = (math.nan,) * len(BOAT.cabins), (20.0,) * len(BOAT.cabins)
    return replace(
        BOAT,
        place=replace(weather, sea_temperatures=(12.0,) * 12),
        plan=tuple(replace(period, set_points=off, warm_points=on) for period in BOAT.plan),
    )


CIRCUIT = BOAT.plant.circuit
TINY_PLANT = with_circuit(BOAT, boats.circuit(700.0, 200.0))
FROSTING = with_circuit(BOAT, replace(CIRCUIT, lowest_evaporating=-3.0))
DRIER = with_circuit(
    cabins(nobody(BOAT), leakage=0.1 / 3600.0, fresh_air=0.0),
    replace(CIRCUIT, highest_evaporating=3.5, lowest_evaporating=1.0),
)
WETTER = cabins(BOAT, fresh_air=0.03)
WINTER = in_winter()
WINTER_TINY = with_circuit(WINTER, boats.circuit(250.0, 75.0))
UNCOOLED = replace(BOAT, plan=tuple(replace(one, set_points=(math.nan,) * 2) for one in BOAT.plan))

CASES = {
    "cabins-cool-at-night": Case(BOAT, TINY_PLANT, UNCOOLED),
    "cabins-dry-at-night": Case(DRIER, WETTER, UNCOOLED),
    "compressor-carries-boat": Case(BOAT, TINY_PLANT),
    "connected-ratio": Case(BOAT, TINY_PLANT),
    "coils-above-frost": Case(BOAT, FROSTING),
    "plant-heats-boat": Case(WINTER, WINTER_TINY),
    "cabins-warm-at-night": Case(WINTER, WINTER_TINY),
}
