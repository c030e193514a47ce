"""The offer: the price as the customer and as the yard see it, and the packages beside the design."""

from __future__ import annotations

import datetime
import math
from dataclasses import dataclass
from decimal import Decimal

from anchorwatt.assessment.records import Answer, Input, Why
from anchorwatt.checks import Evidence
from anchorwatt.design import Design
from anchorwatt.sizing.offer import NOT_COUNTED, SLACK, Late, Priced, rate_told
from anchorwatt.sizing.packages import Figures, Offered, figures, offered
from anchorwatt.units import show

NAMED = 3
"""How many parts without a price a note names."""


@dataclass(frozen=True)
class OfferStory:
    """What the job costs, when its parts must be ordered, and what else is offered."""

    priced: Priced
    base: Figures
    packages: tuple[Offered, ...]
    rates: tuple[str, ...]  # exchange rates behind the prices, in words

    @property
    def slack(self) -> datetime.timedelta:
        """Kept between a part's delivery and the boat's arrival."""
        return SLACK

    @property
    def not_counted(self) -> tuple[str, ...]:
        """What the price leaves out, in words."""
        return (NOT_COUNTED,)

    def late(self, today: datetime.date) -> tuple[Late, ...]:
        """Parts that come too late when they are ordered today."""
        return self.priced.late(today)


def offer_story(design: Design, evidence: Evidence) -> OfferStory:
    """Price a design and its packages."""
    offer = evidence.specification.offer
    base = figures(evidence.simulation, evidence.offer, evidence.weight)
    return OfferStory(
        priced=base.price,
        base=base,
        packages=offered(design, offer.packages, base),
        rates=tuple(rate_told(rate, offer) for rate in base.price.rates_used),
    )


def price_answer(found: Priced) -> Answer:
    """What the customer pays, in the offer's currency; nan where no part has a price."""
    currency = found.offer.currency
    told = any(line.price is not None for line in found.lines)
    return Answer(
        f"total_{currency}",
        "What does the customer pay?",
        float(found.total) if told else math.nan,
        "money",
        currency,
        _price_note(found, told),
        Why(
            "parts and consumables, labour, and tax on both; the yard's margins and a broker's commission are within",
            (
                _amount("parts and consumables", found.customer_parts),
                _amount("labour", found.customer_labour),
                _amount("tax", found.tax),
            ),
            "prices of the catalogue, of the yard's own files or of the design; labour of the design, else what is "
            f"usual (from memory). {NOT_COUNTED.removesuffix('.')}",
            "the bank, mostly; prices, labour, margins and tax under offer",
        ),
    )


def _amount(name: str, amount: Decimal) -> Input:
    return Input(name, float(amount), "money", "computed")


def _price_note(found: Priced, told: bool) -> str:
    money = f"in {found.offer.currency}"
    if not told:
        return f"{money}; no part has a price"
    if found.complete:
        tax = found.offer.tax
        return f"{money}; " + (f"tax of {show(tax, 'share', 'si')} is in it" if tax else "no tax is named")
    more = len(found.unknown) - NAMED
    named = ", ".join(found.unknown[:NAMED]) + (f" and {more} more" if more > 0 else "")
    return f"{money}; at least that, without {named}"
