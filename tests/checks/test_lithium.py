"""Every rule about installing a lithium bank: a boat that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.installation import Installation
from anchorwatt.design.specification import Converter, CutOff, EngineBattery, Regime, Specification
from anchorwatt.units.fields import Length
from anchorwatt.units.reading import parse
from tests.checks.spoiled import BOAT, Told, found_by
from tests.simulation import boats

WHOLE = (
    CutOff("overvoltage", "voltage", 29.2, "voltage", "charge", "by itself"),
    CutOff("undervoltage", "voltage", 20.0, "voltage", "discharge", "by hand"),
    CutOff("current", "current", 400.0, "current", "both", "by hand"),
    CutOff("too hot", "temperature", 60.0, "temperature", "both", "by itself"),
)
ASKED = {
    "battery-tested": "tested_battery",
    "warning-before-shutdown": "warning",
    "charging-stops-before-disconnect": "charge_stop",
    "battery-switch": "battery_switch",
    "remote-switch-breaks-coil": "contactor_coil",
    "cell-gas-led-away": "vented",
    "battery-papers-aboard": "safety_papers",
}


def moved(text: str) -> Installation:
    length: Length = parse(text, "length")
    return Installation(battery_movement=length)


def managed(*limits: CutOff) -> Specification:
    return replace(BOAT, bank=replace(BOAT.bank, management=limits))


def alternator_at(volts: float) -> Specification:
    return replace(BOAT, engines=(boats.engine((boats.alternator(volts=volts),)),))


def bank_in(cabin: int) -> Specification:
    engine = replace(boats.engine((boats.alternator(),)), cabin=0)
    return replace(BOAT, bank=replace(BOAT.bank, cabin=cabin), engines=(engine,))


def with_engine_battery() -> Specification:
    converter = Converter("dc-dc", 500.0, 2.0, 0.04, 0.03, 0.0, *boats.OVERLOAD, 2.0, -1)
    return replace(BOAT, engine_battery=EngineBattery(converter, 10.0, 5000.0, 2.0, 12.0))


TWO = boats.boat(2)
APART = replace(
    TWO,
    bank=replace(TWO.bank, cabin=1),
    engines=(replace(boats.engine((boats.alternator(),)), cabin=0),),
)
CASES = {
    "management-envelope": (Told(managed(*WHOLE)), Told(managed(*WHOLE[:2]))),
    "charge-sources-suit-bank": (Told(alternator_at(28.2)), Told(alternator_at(29.4))),
    "bank-out-of-engine-space": (Told(APART), Told(bank_in(0))),
    "bank-restrained": (Told(said=moved("5 mm")), Told(said=moved("30 mm"))),
    "vital-loads-second-source": (Told(with_engine_battery()), Told()),
    **{
        name: (Told(said=Installation(**{key: True})), Told(said=Installation(**{key: False})))
        for name, key in ASKED.items()
    },
}


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    found = found_by(name, CASES[name][0])
    assert found is not None
    assert found.verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    found = found_by(name, CASES[name][1])
    assert found is not None
    assert found.verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.lithium"} == {*CASES}


@pytest.mark.parametrize("name", [*ASKED, "bank-restrained", "bank-out-of-engine-space"])
def test_what_nobody_has_said_cannot_be_told(name: str) -> None:
    found = found_by(name, Told())
    assert found is not None
    assert found.verdict is Verdict.CANNOT_TELL
    assert "in the design file" in found.note


@pytest.mark.parametrize("name", CASES)
def test_a_bank_below_the_standards_threshold_is_not_asked(name: str) -> None:
    small = replace(BOAT, bank=replace(BOAT.bank, capacity=20.0 * 3600.0))
    assert found_by(name, Told(small)) is None


def test_iso_allows_a_battery_less_movement_than_the_us() -> None:
    iso = replace(BOAT, wiring=replace(BOAT.wiring, regime=Regime.ISO))
    verdicts = []
    for boat in (BOAT, iso):
        found = found_by("bank-restrained", Told(boat, moved("15 mm")))
        assert found is not None
        verdicts.append(found.verdict)
    assert verdicts == [Verdict.HOLDS, Verdict.FAILS]
