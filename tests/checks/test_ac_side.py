"""Every rule about the AC side: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Converter, EngineBattery, Shore, Specification
from tests.checks.cases import Case, finding
from tests.simulation import boats

BOAT = boats.boat(1)


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


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    found = finding(name, CASES[name].holds)
    assert found is not None
    assert found.verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    found = finding(name, CASES[name].fails)
    assert found is not None
    assert found.verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.ac_side"} == {*CASES}


def test_rules_without_an_object_are_left_out() -> None:
    bare = replace(BOAT, transformer=None, shore=None, charger=None)
    left_out = {name for name in CASES if finding(name, bare) is None}
    assert left_out == {*CASES} - {"inverter-all-at-once", "inverter-surge"}


def test_a_secondary_above_its_band_fails_without_load() -> None:
    found = finding("transformer-secondary", transformer(secondary_voltage=270.0))
    assert found is not None
    assert found.verdict is Verdict.FAILS
    assert found.value > found.limit


def test_a_transformer_for_another_supply_gives_the_wrong_voltage() -> None:
    """230 to 230 V on a service of 120 V."""
    found = finding("transformer-secondary", transformer(primary_voltage=230.0, secondary_voltage=230.0))
    assert found is not None
    assert found.verdict is Verdict.FAILS


def test_a_breaker_that_may_trip_is_near() -> None:
    found = finding("inrush-on-shore-breaker", transformer(inrush=6.0))
    assert found is not None
    assert found.verdict is Verdict.NEAR


def test_a_bank_that_shore_never_fills_fails() -> None:
    found = finding("charger-refills-overnight", shore(continuous_power=60.0))
    assert found is not None
    assert found.verdict is Verdict.FAILS
