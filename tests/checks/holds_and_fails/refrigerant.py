"""Refrigerant in cabins."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import RefrigerantSafety, Specification
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats

R32 = RefrigerantSafety("R-32", "A2L", 0.307, 0.061, 0.063, 0.15, 675.0, "tests")


def charged(charge: float, safety: RefrigerantSafety = boats.R410A) -> Specification:
    boat = boats.boat(2)
    return replace(boat, plant=replace(boat.plant, charge=charge, safety=safety))


CASES = {
    "refrigerant-concentration": Case(charged(1.5), charged(8.0)),
    "refrigerant-with-measures": Case(charged(1.0, R32), charged(3.0, R32)),
    "flammable-charge": Case(charged(0.7, R32), charged(1.5, R32)),
}
