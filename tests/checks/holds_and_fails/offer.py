"""The whole price and its days."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Offer, Rate, Specification, Task
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats

DAY = 86_400.0
TODAY = "2026-11-23"
OFFER = Offer("EUR", TODAY, (), 0.2, 0.0, 0.0, 0.1, (Task("fit", 10.0, 50.0),), 0.0, (), "2027-03-01", ())


def boat(
    limit: str = "4 500 EUR", lead_time: float = 30 * DAY, price: float = 1000.0, **offer: object
) -> Specification:
    """Parts of 3000 and labour of 500: with margin and tax 4510 in the offer's currency."""
    plain = boats.boat(1)
    part = boats.item("dc.bank.module", "battery_module", "module", 3, 40.0, price, "EUR", -1)
    return replace(
        plain,
        items=(replace(part, lead_time=lead_time),),
        brief=replace(plain.brief, price_limit=limit),
        offer=replace(OFFER, **offer),  # type: ignore[arg-type]
    )


def rate(date: str) -> Specification:
    return boat(rates=(Rate("USD", 1.1, date),))


def undated(made: Specification) -> Specification:
    return replace(made, offer=replace(made.offer, date=""))


CASES = {
    "whole-price-limit": Case(boat("20 000 EUR"), boat("4 500 EUR"), boat("5 000 USD")),
    "exchange-rate-age": Case(rate("2026-10-24"), rate("2026-10-23"), undated(rate("2026-11-20"))),
    "parts-before-arrival": Case(boat(lead_time=91 * DAY), boat(lead_time=92 * DAY), undated(boat())),
}
