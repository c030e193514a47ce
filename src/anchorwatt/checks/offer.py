"""Rules about the offer: the whole price against the limit, old exchange rates, parts that come too late."""

from __future__ import annotations

import datetime
import math
from dataclasses import replace

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, at_most, rule
from anchorwatt.sizing.offer import DAY, exchanged, rate_told
from anchorwatt.units import Money

OLDEST_RATE = 30.0 * DAY
"""Common practice, no source."""
SOON = 14.0 * DAY
"""Left to order in: near; common practice, no source."""
NO_DATE = "the design names no day for the offer; type offer.date"


@rule(
    "whole-price-limit",
    "Is the whole price within the limit: parts, labour, margins, commission and tax?",
    "money",
    "the brief",
    "Fewer or smaller parts, a package with less in it, other margins; or agree on another limit.",
)
def whole_price_limit(evidence: Evidence) -> Measured | None:
    if not evidence.specification.brief.price_limit:
        return None
    limit, found = Money.parse(evidence.specification.brief.price_limit), evidence.offer
    offer = found.offer
    total, rates = exchanged(float(found.total), offer.currency, limit.currency, offer)
    within = f"margins of {offer.parts_margin:.0%} and {offer.labour_margin:.0%} and tax of {offer.tax:.0%} are in"
    note = "; ".join((f"in {limit.currency}", within, *(rate_told(rate, offer) for rate in rates)))
    if not found.lines:
        return Measured(math.nan, float(limit.amount), Verdict.CANNOT_TELL, f"{note}; no parts are listed")
    if math.isnan(total):
        return Measured(
            total, float(limit.amount), Verdict.CANNOT_TELL, f"{note}; no rate from {offer.currency} to that"
        )
    measured = at_most(total, float(limit.amount))
    if found.complete:
        return replace(measured, note=note)
    # What is known may be too much already; else nobody can tell.
    verdict = Verdict.FAILS if measured.verdict is Verdict.FAILS else Verdict.CANNOT_TELL
    return replace(measured, verdict=verdict, note=f"{note}; at least that, without {', '.join(found.unknown)}")


@rule(
    "exchange-rate-age",
    "Are the exchange rates of the offer no more than 30 days old?",
    "time",
    "common practice, no source",
    "Type the day's rate with its date under offer.rates.",
)
def exchange_rate_age(evidence: Evidence) -> Measured | None:
    rates = evidence.specification.offer.rates
    if not rates:
        return None
    if not evidence.specification.offer.date:
        return Measured(math.nan, OLDEST_RATE, Verdict.CANNOT_TELL, NO_DATE)
    today = datetime.date.fromisoformat(evidence.specification.offer.date)
    oldest = min(rates, key=lambda rate: rate.date)
    newest = max(rates, key=lambda rate: rate.date)
    if newest.date > evidence.specification.offer.date:
        note = f"the rate of {newest.currency} is of {newest.date}, after the offer's day"
        return Measured(math.nan, OLDEST_RATE, Verdict.CANNOT_TELL, note)
    age = (today - datetime.date.fromisoformat(oldest.date)).days * DAY
    return replace(at_most(age, OLDEST_RATE, near=1 / 3), note=f"{oldest.currency} of {oldest.date}")


@rule(
    "parts-before-arrival",
    "Can every part still be ordered in time for the boat's arrival, with a week to spare?",
    "time",
    "common practice, no source",
    "Order the parts named at once, agree on a later arrival, or choose others that come sooner.",
)
def parts_before_arrival(evidence: Evidence) -> Measured | None:
    found = evidence.offer
    if not found.offer.arrival:
        return None
    if not evidence.specification.offer.date:
        return Measured(math.nan, 0.0, Verdict.CANNOT_TELL, NO_DATE)
    today = datetime.date.fromisoformat(evidence.specification.offer.date)
    dated = [(line.order_by, line.name) for line in found.lines if line.order_by is not None]
    unknown = found.without_lead_time
    lacking = f"no lead time of {', '.join(unknown)}" if unknown else ""
    if not dated:
        return Measured(math.nan, 0.0, Verdict.CANNOT_TELL, lacking or "no parts are listed")
    first, name = min(dated)
    left = (first - today).days * DAY
    late = dict.fromkeys(one.line.name for one in found.late(today))
    note = f"too late: {', '.join(late)}" if late else f"first {name}, by {first.isoformat()}"
    if left < 0.0:
        verdict = Verdict.FAILS
    elif unknown:
        verdict = Verdict.CANNOT_TELL
    else:
        verdict = Verdict.NEAR if left < SOON else Verdict.HOLDS
    return Measured(left, 0.0, verdict, "; ".join(one for one in (note, lacking) if one))
