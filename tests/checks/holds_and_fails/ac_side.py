"""Inverter, transformer, shore power and the small converters."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Converter, EngineBattery, Shore, Specification
from tests.checks.changed import ONE_CABIN as BOAT
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats


def inverter(**changes: object) -> Specification:
    return replace(BOAT, inverter=replace(BOAT.inverter, **changes))  # type: ignore[arg-type]


def transformer(**changes: object) -> Specification:
    assert BOAT.transformer is not None
    return replace(BOAT, transformer=replace(BOAT.transformer, **changes))  # type: ignore[arg-type]


def shore(**changes: object) -> Specification:
    assert BOAT.shore is not None
    return replace(BOAT, shore=replace(BOAT.shore, **changes))  # type: ignore[arg-type]


def charger(**changes: object) -> Specification:
    assert BOAT.charger is not None
    return replace(BOAT, charger=replace(BOAT.charger, **changes))  # type: ignore[arg-type]


def engine_battery(standing_load: float) -> Specification:
    converter = Converter("dc-dc", 250.0, 5.0, 0.05, 0.04, 0.5, *boats.OVERLOAD, 1.0, -1)
    return replace(BOAT, engine_battery=EngineBattery(converter, standing_load, 20e3, 2.0, 12.0))


def one_legged(loads: float) -> Specification:
    """Two legs, and a transformer that hangs on one of them."""
    service = Shore("split", 120.0, 2, 60.0, 30.0, 30.0, 5760.0, 104.0)
    heavy = (BOAT.loads[0], replace(BOAT.loads[1], power=loads, cabin=-1))
    return replace(BOAT, shore=service, loads=heavy)


CASES = {
    "inverter-in-heat": Case(inverter(cabin=0), inverter(cabin=0, full_to=0.0, derating=0.035, highest_air=100.0)),
    "inverter-all-at-once": Case(BOAT, inverter(rated_power=300.0)),
    "inverter-surge": Case(BOAT, inverter(rated_power=100.0)),
    "inrush-on-inverter": Case(transformer(inrush=1.5), transformer(inrush=10.0)),
    "inrush-on-shore-breaker": Case(transformer(inrush=4.0), transformer(inrush=10.0)),
    "transformer-secondary": Case(transformer(), transformer(secondary_voltage=200.0)),
    "shore-legs": Case(one_legged(500.0), one_legged(8000.0)),
    "shore-sag": Case(shore(lowest_voltage=104.0), shore(lowest_voltage=112.0)),
    "charger-refills-overnight": Case(charger(rated_power=3000.0), charger(rated_power=400.0)),
    "engine-battery-kept": Case(engine_battery(10.0), engine_battery(260.0)),
}
