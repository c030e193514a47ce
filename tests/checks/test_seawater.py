"""Every rule about seawater: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Specification
from tests.checks.cases import Case, finding
from tests.simulation import boats

BOAT = boats.boat(1)


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
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.seawater"} == {*CASES}


@pytest.mark.parametrize(("share", "expected"), [(1.0, Verdict.HOLDS), (0.85, Verdict.NEAR), (0.65, Verdict.FAILS)])
def test_a_rise_over_the_trades_is_near_before_it_fails(share: float, expected: Verdict) -> None:
    found = finding("seawater-rise", flow(share))
    assert found is not None
    assert found.verdict is expected
