"""Every rule about fuses and breakers: wiring that makes it hold and wiring that makes it fail."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.specification import Specification
from anchorwatt.sizing.wiring import WiredCircuit
from tests.checks.spoiled import BOAT, Spoil, Told, evidence, found_by


def device(**changes: object) -> Spoil:
    def change(one: WiredCircuit) -> WiredCircuit:
        if one.protection is None:
            return one
        return replace(one, protection=replace(one.protection, **changes))  # type: ignore[arg-type]

    return change


def bare(one: WiredCircuit) -> WiredCircuit:
    return replace(one, protection=None)


def rated(ratio: float) -> Spoil:
    """Every device rated that much below what feeds it."""

    def depth(start: str) -> int:
        guarded = (
            one.circuit
            for one in evidence(Told()).wiring.circuits
            if one.protection is not None and one.protection.at == "start"
        )
        return 1 + max((depth(one.start) for one in guarded if one.end == start), default=0)

    def change(one: WiredCircuit) -> WiredCircuit:
        return device(rating=1000.0 / ratio ** depth(one.circuit.start))(one)

    return change


def in_strings(parallel: int) -> Specification:
    return replace(BOAT, bank=replace(BOAT.bank, parallel=parallel, resistance=2e-3))


THREE = in_strings(3)
AS_IT_IS = Told()
CASES = {
    "circuits-protected": (AS_IT_IS, Told(spoil=bare)),
    "rating-within-conductor": (AS_IT_IS, Told(spoil=device(at_most=0.5))),
    "rating-carries-load": (AS_IT_IS, Told(spoil=device(at_least=5000.0))),
    "interrupting-capacity": (AS_IT_IS, Told(spoil=device(interrupting=50.0))),
    "device-voltage": (AS_IT_IS, Told(spoil=device(highest_voltage=14.0))),
    "string-devices": (Told(THREE), Told(THREE, spoil=device(interrupting=2000.0))),
    "faults-open-devices": (AS_IT_IS, Told(spoil=device(trips_by=50e3))),
    "selective-devices": (Told(spoil=rated(3.0)), Told(spoil=rated(1.1))),
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
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.protection"} == {*CASES}


def test_one_string_needs_no_device_of_its_own() -> None:
    assert found_by("string-devices", AS_IT_IS) is None


def test_a_device_without_a_rating_is_none() -> None:
    found = found_by("circuits-protected", Told(spoil=device(rating=math.nan)))
    assert found is not None
    assert found.verdict is Verdict.FAILS
    assert "W1" in found.note
