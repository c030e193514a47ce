"""Inverter, transformer, shore power, bank and alternators under their loads."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Doing, Specification
from tests.checks.changed import TWO_CABINS as BOAT
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats


def ashore(power: float) -> Specification:
    day, *others = BOAT.plan
    assert BOAT.shore is not None
    plan = (replace(day, doing=Doing.ON_SHORE_POWER), *others)
    return replace(BOAT, plan=plan, shore=replace(BOAT.shore, continuous_power=power))


def one_alternator(**changes: float) -> Specification:
    machine = replace(boats.alternator(), **changes)  # type: ignore[arg-type]
    return replace(BOAT, engines=(boats.engine((machine,)),))


def small_transformer() -> Specification:
    assert BOAT.transformer is not None
    return replace(BOAT, transformer=replace(BOAT.transformer, rated_power=250.0))


CASES = {
    "inverter-carries-peak": Case(BOAT, replace(BOAT, inverter=replace(BOAT.inverter, rated_power=250.0))),
    "transformer-carries-peak": Case(BOAT, small_transformer()),
    "shore-carries-load": Case(ashore(2880.0), ashore(40.0)),
    "bank-carries-inverter": Case(BOAT, replace(BOAT, bank=replace(BOAT.bank, discharge_current=5.0))),
    "alternator-winding": Case(BOAT, one_alternator(highest_winding=60.0)),
    "alternator-overspeed": Case(BOAT, one_alternator(highest_speed=5000 * boats.RPM)),
}
