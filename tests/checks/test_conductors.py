"""Every rule about conductors: wiring that makes it hold and wiring that makes it fail."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.catalogue import find
from anchorwatt.catalogue.conductor import Conductor
from anchorwatt.checks import Verdict, rules
from anchorwatt.sizing.wiring import WiredCircuit
from tests.checks.spoiled import Spoil, Told, found_by


def conductor(**changes: float) -> Spoil:
    return lambda one: replace(one, conductor=replace(one.conductor, **changes))  # type: ignore[arg-type]


def drop(share: float) -> Spoil:
    def change(one: WiredCircuit) -> WiredCircuit:
        return replace(one, conductor=replace(one.conductor, drop=share * one.circuit.voltage))

    return change


def size(name: str, parallel: int = 1) -> Spoil:
    part = find("conductor", name)
    assert isinstance(part, Conductor)
    return lambda one: replace(one, conductor=replace(one.conductor, conductor=part, parallel=parallel))


def peak(times: float) -> Spoil:
    return lambda one: replace(one, circuit=replace(one.circuit, peak=times * one.circuit.continuous))


AS_IT_IS = Told()
CASES = {
    "conductors-carry-load": (AS_IT_IS, Told(spoil=conductor(ampacity=0.04))),
    "drop-in-feeders": (AS_IT_IS, Told(spoil=drop(0.031))),
    "drop-elsewhere": (Told(spoil=drop(0.09)), Told(spoil=drop(0.11))),
    "drop-at-peak": (AS_IT_IS, Told(spoil=peak(100.0))),
    "conductors-thick-enough": (AS_IT_IS, Told(spoil=size("0.75 mm²"))),
    "parallel-conductors-large": (Told(spoil=size("50 mm²", 2)), Told(spoil=size("35 mm²", 2))),
    "terminals-carry-load": (AS_IT_IS, Told(spoil=lambda one: replace(one, terminal_ampacity=0.01))),
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
    assert found.note.startswith("W")


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.conductors"} == {*CASES}


def test_single_conductors_say_nothing_of_parallel_ones() -> None:
    assert found_by("parallel-conductors-large", Told(spoil=size("16 mm²"))) is None
