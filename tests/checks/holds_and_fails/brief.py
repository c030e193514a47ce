"""What the brief asks for."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.design.specification import Item, Specification
from tests.checks.changed import TWO_CABINS as BOAT
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats

INVERTER = boats.item("ac.inverter.unit", "inverter", "inverter", 1, 25.0, 1000.0, "EUR", -1)
MODULE = boats.item("dc.bank.module", "battery_module", "module", 2, 40.0, 1000.0, "EUR", -1)
PRICELESS = replace(MODULE, name="our own module", price=math.nan, currency="")


def priced(limit: str, *items: Item) -> Specification:
    """Parts of 3000 EUR together unless others are given, and a limit."""
    return replace(BOAT, items=items or (INVERTER, MODULE), brief=replace(BOAT.brief, price_limit=limit))


def weighing(limit: float) -> Specification:
    """Parts of 80 kg, and the cables."""
    return replace(BOAT, items=(MODULE,), brief=replace(BOAT.brief, mass_limit=limit))


SMALL_BANK = replace(BOAT, bank=boats.bank(capacity=60.0))
HURRIED = replace(BOAT, brief=replace(BOAT.brief, recharge=600.0))
WITHOUT_ENGINE = replace(BOAT, engines=())

CASES = {
    "bank-holds-night": Case(BOAT, SMALL_BANK),
    "reserve-at-dawn": Case(BOAT, SMALL_BANK),
    "night-without-interruption": Case(BOAT, SMALL_BANK),
    "recharge-in-time": Case(BOAT, HURRIED, WITHOUT_ENGINE),
    "mass-limit": Case(weighing(500.0), weighing(80.0)),
    "price-limit": Case(priced("3 500 EUR"), priced("2 999.99 EUR"), priced("65 000 EUR", PRICELESS)),
}
