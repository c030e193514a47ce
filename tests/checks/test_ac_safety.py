"""Every rule about the safety of the AC side: a boat that makes it hold and one that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict, rules
from anchorwatt.design.installation import Installation
from anchorwatt.sizing.wiring import WiredCircuit
from tests.checks.spoiled import BOAT, Told, found_by
from tests.sizing.test_ac_safety import with_transformer

ALL = Installation(
    earth_fault_device=True,
    galvanic_isolator=True,
    polarity_indicator=True,
    double_pole=False,
    neutral_bond=True,
    transfer_breaks_neutral=True,
)
NONE = Installation(
    earth_fault_device=False,
    galvanic_isolator=False,
    polarity_indicator=False,
    double_pole=False,
    neutral_bond=False,
    transfer_breaks_neutral=False,
)
AUTOTRANSFORMER = with_transformer(isolating=False)
WITHOUT_SHORE = replace(BOAT, shore=None)


def far_breaker(one: WiredCircuit) -> WiredCircuit:
    return replace(one, circuit=replace(one.circuit, length=4.0)) if one.circuit.source == "shore" else one


CASES = {
    "earth-fault-device": (Told(said=ALL), Told(said=NONE)),
    "galvanic-isolation": (Told(said=ALL), Told(said=NONE)),
    "reverse-polarity": (Told(said=ALL), Told(said=NONE)),
    "neutral-earth-bond": (Told(said=ALL), Told(said=NONE)),
    "transfer-breaks-neutral": (Told(said=ALL), Told(said=NONE)),
    "shore-breaker-near-inlet": (Told(), Told(spoil=far_breaker)),
    "autotransformer-isolates-nothing": (Told(AUTOTRANSFORMER, ALL), Told(AUTOTRANSFORMER, NONE)),
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
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.ac_safety"} == {*CASES}


@pytest.mark.parametrize("name", [name for name in CASES if name != "shore-breaker-near-inlet"])
def test_what_nobody_has_said_cannot_be_told(name: str) -> None:
    found = found_by(name, Told(AUTOTRANSFORMER))
    assert found is not None
    assert found.verdict is Verdict.CANNOT_TELL
    assert "installation." in found.note


@pytest.mark.parametrize("name", ["earth-fault-device", "galvanic-isolation", "reverse-polarity"])
def test_a_transformer_before_everything_does_their_work(name: str) -> None:
    found = found_by(name, Told(with_transformer()))
    assert found is not None
    assert found.verdict is Verdict.HOLDS
    assert "transformer" in found.note


def test_double_pole_breakers_do_for_polarity() -> None:
    found = found_by("reverse-polarity", Told(said=Installation(double_pole=True)))
    assert found is not None
    assert found.verdict is Verdict.HOLDS


@pytest.mark.parametrize("name", [name for name in CASES if name != "neutral-earth-bond"])
def test_without_shore_power_there_is_nothing_to_ask(name: str) -> None:
    assert found_by(name, Told(WITHOUT_SHORE)) is None
