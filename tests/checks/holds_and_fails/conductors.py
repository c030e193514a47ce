"""Conductors: what is done to the wiring."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.catalogue import find
from anchorwatt.catalogue.conductor import Conductor
from anchorwatt.design.specification import CircuitWish
from anchorwatt.sizing.wiring import WiredCircuit
from tests.checks.changed import ONE_CABIN
from tests.checks.found import Spoil, Told
from tests.checks.holds_and_fails.case import Case


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


def wishing(tag: str) -> Told:
    """A file that says something of one circuit."""
    wish = CircuitWish(tag, 3.0, "", 0, math.nan, "", 0, math.nan, "boat.yaml:7")
    return Told(replace(ONE_CABIN, wiring=replace(ONE_CABIN.wiring, wishes=(wish,))))


AS_IT_IS = Told()
CASES = {
    "conductors-carry-load": Case(AS_IT_IS, Told(spoil=conductor(ampacity=0.04))),
    "drop-in-feeders": Case(AS_IT_IS, Told(spoil=drop(0.031))),
    "drop-elsewhere": Case(Told(spoil=drop(0.09)), Told(spoil=drop(0.11))),
    "drop-at-peak": Case(AS_IT_IS, Told(spoil=peak(100.0))),
    "conductors-thick-enough": Case(AS_IT_IS, Told(spoil=size("0.75 mm²"))),
    "parallel-conductors-large": Case(Told(spoil=size("50 mm²", 2)), Told(spoil=size("35 mm²", 2))),
    "circuits-named-exist": Case(wishing("W1"), wishing("W999")),
    "terminals-carry-load": Case(AS_IT_IS, Told(spoil=lambda one: replace(one, terminal_ampacity=0.01))),
}
