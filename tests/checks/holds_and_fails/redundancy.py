"""What the loss of any single part leaves."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Converter, EngineBattery, Solar, Specification
from tests.checks.changed import ONE_CABIN
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats

SUN = Solar(400.0, -0.0035, 30.0, 0.75, 0.0, 0.0, 20.0)
CONVERTER = Converter("dc-dc", 250.0, 5.0, 0.05, 0.04, 0.5, *boats.OVERLOAD, 1.0, -1)


def strings(number: int) -> Specification:
    return replace(ONE_CABIN, bank=replace(ONE_CABIN.bank, parallel=number))


def charged(engines: int, *, sun: bool = False, dock: bool = False) -> Specification:
    """One alternator an engine, panels or not, a charger at the dock or not; two strings, so that one may go."""
    driven = tuple(boats.engine((boats.alternator(),), name=f"engine {number + 1}") for number in range(engines))
    made = replace(strings(2), engines=driven, solar=SUN if sun else None)
    return made if dock else replace(made, shore=None, charger=None)


def with_engine_battery(boat: Specification) -> Specification:
    return replace(boat, engine_battery=EngineBattery(CONVERTER, 10.0, 20e3, 2.0, 12.0))


CASES = {
    "direct-current-after-any-loss": Case(strings(2), strings(1)),
    "charging-after-any-loss": Case(charged(2), charged(1)),
}
