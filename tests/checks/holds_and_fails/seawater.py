"""The seawater circuit."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Specification
from tests.checks.changed import ONE_CABIN as BOAT
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats


def hose(**changes: float) -> Specification:
    sea = replace(boats.SEA_HOSE, **changes)
    return replace(BOAT, plant=replace(BOAT.plant, sea=sea))


def flow(share: float) -> Specification:
    circuit = replace(BOAT.plant.circuit, sea_flow=share * BOAT.plant.circuit.sea_flow)
    return replace(BOAT, plant=replace(BOAT.plant, circuit=circuit))


def pump(power: float) -> Specification:
    return replace(BOAT, plant=replace(BOAT.plant, pump_power=power))


def summer(warmest: float) -> Specification:
    return replace(BOAT, place=replace(BOAT.place, sea_temperatures=(*[24.0] * 7, warmest, *[24.0] * 4)))


CASES = {
    "seawater-rise": Case(BOAT, flow(0.6)),
    "hose-velocity": Case(BOAT, hose(diameter=0.0125)),
    "through-hull-velocity": Case(BOAT, hose(through_hull=0.0125)),
    "pump-head": Case(BOAT, hose(lift=6.0)),
    "pump-power-possible": Case(BOAT, pump(15.0)),
    "sea-within-map": Case(summer(31.0), summer(41.0)),
    "condensing-in-warmest-sea": Case(summer(31.0), flow(0.2)),
}
