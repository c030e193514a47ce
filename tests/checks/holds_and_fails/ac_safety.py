"""Safety of the AC side."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.installation import Installation
from anchorwatt.sizing.wiring import WiredCircuit
from tests.checks.found import Told
from tests.checks.holds_and_fails.case import Case
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
UNSAID = Told(AUTOTRANSFORMER)


def far_breaker(one: WiredCircuit) -> WiredCircuit:
    return replace(one, circuit=replace(one.circuit, length=4.0)) if one.circuit.source == "shore" else one


CASES = {
    "earth-fault-device": Case(Told(said=ALL), Told(said=NONE), UNSAID),
    "galvanic-isolation": Case(Told(said=ALL), Told(said=NONE), UNSAID),
    "reverse-polarity": Case(Told(said=ALL), Told(said=NONE), UNSAID),
    "neutral-earth-bond": Case(Told(said=ALL), Told(said=NONE), UNSAID),
    "transfer-breaks-neutral": Case(Told(said=ALL), Told(said=NONE), UNSAID),
    "shore-breaker-near-inlet": Case(Told(), Told(spoil=far_breaker)),
    "autotransformer-isolates-nothing": Case(Told(AUTOTRANSFORMER, ALL), Told(AUTOTRANSFORMER, NONE), UNSAID),
}
