"""What the parts of a design cost, currency by currency; what has no price is named, never counted as nothing."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal

from anchorwatt.design.specification import Item, Specification
from anchorwatt.units import Money


@dataclass(frozen=True)
class PriceTotal:
    currency: str  # ISO 4217
    amount: float


@dataclass(frozen=True)
class Prices:
    """All parts taken together."""

    totals: tuple[PriceTotal, ...]  # one a currency, in the order of the parts
    unknown: tuple[str, ...]  # names of parts without a price

    def only(self, currency: str) -> float:
        """The whole price in a currency; nan where one has none or another currency, or no part is there."""
        if self.unknown or [total.currency for total in self.totals] != [currency]:
            return math.nan
        return self.totals[0].amount

    @property
    def in_words(self) -> str:
        """All totals, such as “31 200 EUR and 450 USD”."""
        return " and ".join(str(Money(Decimal(round(total.amount)), total.currency)) for total in self.totals)


def prices(specification: Specification, kinds: tuple[str, ...] = ()) -> Prices:
    """The price of all parts, or of those of some kinds of the catalogue."""
    items = [item for item in specification.items if not kinds or item.kind in kinds]
    amounts: dict[str, float] = {}
    for item in items:
        if not math.isnan(item.price):
            amounts[item.currency] = amounts.get(item.currency, 0.0) + item.count * item.price
    return Prices(
        totals=tuple(PriceTotal(currency, amount) for currency, amount in amounts.items()),
        unknown=tuple(dict.fromkeys(_called(item) for item in items if math.isnan(item.price))),
    )


def _called(item: Item) -> str:
    return item.name or item.key
