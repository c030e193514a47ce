"""Fuses and breakers: what is done to the wiring."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Specification
from anchorwatt.sizing.wiring import WiredCircuit
from tests.checks.changed import ONE_CABIN as BOAT
from tests.checks.found import Spoil, Told, evidence
from tests.checks.holds_and_fails.case import Case


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
    "circuits-protected": Case(AS_IT_IS, Told(spoil=bare)),
    "rating-within-conductor": Case(AS_IT_IS, Told(spoil=device(at_most=0.5))),
    "rating-carries-load": Case(AS_IT_IS, Told(spoil=device(at_least=5000.0))),
    "interrupting-capacity": Case(AS_IT_IS, Told(spoil=device(interrupting=50.0))),
    "device-voltage": Case(AS_IT_IS, Told(spoil=device(highest_voltage=14.0))),
    "string-devices": Case(Told(THREE), Told(THREE, spoil=device(interrupting=2000.0))),
    "faults-open-devices": Case(AS_IT_IS, Told(spoil=device(trips_by=50e3))),
    "selective-devices": Case(Told(spoil=rated(3.0)), Told(spoil=rated(1.1))),
}
