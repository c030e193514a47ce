"""What the job costs the yard and the customer: parts, labour, margins, commission, tax; and when to order what.

Money is exact: every amount is rounded to the cent where it first stands, half up, and sums are of what is shown.
What has no price, or no rate into the offer's currency, is named and never counted as nothing.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from functools import cached_property

from anchorwatt.catalogue import find, names
from anchorwatt.catalogue.overlay import NOTHING as NOTHING_OVER
from anchorwatt.catalogue.overlay import Overlay, laid_over
from anchorwatt.design.hold_points import HoldPointName
from anchorwatt.design.specification import Item, Offer, Rate, Specification
from anchorwatt.sizing.wiring import Wiring

CENT = Decimal("0.01")
NOTHING = Decimal("0.00")
DAY = 86_400.0
SLACK = datetime.timedelta(days=7)
"""Between a part's delivery and the boat's arrival; common practice, no source."""

EACH, METRE = "each", "m"

NOT_COUNTED = (
    "Engines are aboard already. Fuses, breakers, busbars, lugs, ducts, pipes, haul-out and storage are not counted."
)


@dataclass(frozen=True)
class Cable:
    """A size of cable as it is bought."""

    name: str
    length: float  # m
    price: float  # a metre, nan = unknown
    currency: str  # ISO 4217, "" = price unknown
    lead_time: float = math.nan  # s, nan = unknown
    supplier: str = ""


@dataclass(frozen=True)
class Line:
    """Parts of one sort in the bill of materials."""

    tags: tuple[str, ...]
    kind: str  # of the catalogue
    name: str
    unit: str  # EACH or METRE
    count: Decimal  # without spares
    spares: int
    typed: Decimal | None  # price of one as the catalogue has it, None = unknown
    typed_currency: str
    rate: Rate | None  # that turned it into the offer's currency, None = it is in that, or there is none
    price: Decimal | None  # of one, in the offer's currency, None = unknown
    lead_time: float  # s, nan = unknown
    supplier: str  # "" = nobody is named
    order_by: datetime.date | None  # None = arrival or lead time unknown

    @property
    def quantity(self) -> Decimal:
        """With spares."""
        return self.count + self.spares

    @property
    def cost(self) -> Decimal | None:
        """What all of them cost, in the offer's currency; None where that is unknown."""
        return None if self.price is None else cents(self.price * self.quantity)

    @property
    def unknown(self) -> str:
        """Why the price is unknown; nothing where it is known."""
        if self.price is not None:
            return ""
        return "no price" if self.typed is None else f"no rate for {self.typed_currency}"


@dataclass(frozen=True)
class Labour:
    """A task."""

    name: str
    hours: Decimal
    rate: Decimal | None  # an hour, in the offer's currency, None = unknown
    hold_points: tuple[HoldPointName, ...] = ()  # named for it: where work stops before it

    @property
    def cost(self) -> Decimal | None:
        return None if self.rate is None else cents(self.hours * self.rate)


@dataclass(frozen=True)
class Late:
    """A part that would come too late, were it ordered today."""

    line: Line
    by: int  # days after the day on which it had to be ordered


@dataclass(frozen=True)
class Priced:
    """The bill of materials, the labour and what is put on them; all amounts in the offer's currency."""

    offer: Offer
    lines: tuple[Line, ...]
    labour: tuple[Labour, ...]

    @cached_property
    def unknown(self) -> tuple[str, ...]:
        """What has no price, with the reason; the amounts below leave it out."""
        names = [f"{line.name} ({line.unknown})" for line in self.lines if line.unknown]
        names += [f"labour: {task.name} (no rate)" for task in self.labour if task.cost is None]
        return tuple(dict.fromkeys(names))

    @property
    def complete(self) -> bool:
        """Whether everything listed has a price; else every sum is a lower bound."""
        return not self.unknown

    @cached_property
    def parts_cost(self) -> Decimal:
        return _sum(line.cost for line in self.lines)

    @cached_property
    def consumables(self) -> Decimal:
        return cents(self.parts_cost * decimal(self.offer.consumables))

    @cached_property
    def labour_hours(self) -> Decimal:
        return sum((task.hours for task in self.labour), Decimal(0))

    @cached_property
    def labour_cost(self) -> Decimal:
        return _sum(task.cost for task in self.labour)

    @property
    def cost(self) -> Decimal:
        """What the job costs the yard."""
        return self.parts_cost + self.consumables + self.labour_cost

    @cached_property
    def parts_margin(self) -> Decimal:
        return cents((self.parts_cost + self.consumables) * decimal(self.offer.parts_margin))

    @cached_property
    def labour_margin(self) -> Decimal:
        return cents(self.labour_cost * decimal(self.offer.labour_margin))

    @property
    def net(self) -> Decimal:
        """What the yard keeps once the broker is paid: cost and margins."""
        return self.cost + self.parts_margin + self.labour_margin

    @cached_property
    def price(self) -> Decimal:
        """Before tax: so high that, the commission taken off, the net is left."""
        return with_commission(self.net, decimal(self.offer.commission))

    @property
    def commission(self) -> Decimal:
        return self.price - self.net

    @cached_property
    def tax(self) -> Decimal:
        return cents(self.price * decimal(self.offer.tax))

    @property
    def total(self) -> Decimal:
        """What the customer pays; a lower bound where something has no price."""
        return self.price + self.tax

    @cached_property
    def customer_parts(self) -> Decimal:
        """Parts and consumables as the customer sees them: margin and their share of the commission within."""
        return self._with_share_of_commission(self.parts_cost + self.consumables + self.parts_margin)

    @property
    def customer_labour(self) -> Decimal:
        """Labour as the customer sees it; with the parts it makes the price before tax exactly."""
        return self.price - self.customer_parts

    def _with_share_of_commission(self, amount: Decimal) -> Decimal:
        return cents(amount * self.price / self.net) if self.net else NOTHING

    def late(self, today: datetime.date) -> tuple[Late, ...]:
        """Parts that had to be ordered before today, the latest first."""
        found = [
            Late(line, (today - line.order_by).days)
            for line in self.lines
            if line.order_by is not None and line.order_by < today
        ]
        return tuple(sorted(found, key=lambda one: -one.by))

    @property
    def without_lead_time(self) -> tuple[str, ...]:
        """Parts of which nobody knows how long they take."""
        return tuple(dict.fromkeys(line.name for line in self.lines if math.isnan(line.lead_time)))

    @property
    def rates_used(self) -> tuple[Rate, ...]:
        """Exchange rates behind the prices of parts."""
        return tuple(dict.fromkeys(line.rate for line in self.lines if line.rate is not None))


def priced(specification: Specification, cables: Sequence[Cable] = ()) -> Priced:
    """Price a design as it is specified, with its cables as they were sized."""
    offer = specification.offer
    lines = [_line(items, offer) for items in _alike(specification.items)]
    lines += [_cable_line(cable, offer) for cable in cables]
    labour = tuple(
        Labour(
            task.name,
            decimal(task.hours),
            None if math.isnan(task.rate) else cents(decimal(task.rate)),
            task.hold_points,
        )
        for task in offer.tasks
    )
    return Priced(offer, tuple(lines), labour)


def bought(wiring: Wiring, overlay: Overlay = NOTHING_OVER) -> tuple[Cable, ...]:
    """Conductors of every circuit by size, at the prices of the catalogue with a yard's own rows over it."""
    lengths: dict[str, float] = {}
    for one in wiring.circuits:
        name = one.conductor.conductor.name
        lengths[name] = lengths.get(name, 0.0) + one.conductor.circuit.laid * one.conductor.parallel
    with laid_over(overlay):
        rows = [find("conductor", name) for name in names("conductor") if name in lengths]
    return tuple(
        Cable(
            name=row.name,
            length=lengths[row.name],
            price=math.nan if row.price is None else float(row.price.amount),
            currency="" if row.price is None else row.price.currency,
            lead_time=math.nan if row.lead_time is None else float(row.lead_time),
            supplier=row.supplier or "",
        )
        for row in rows
    )


def with_commission(net: Decimal, commission: Decimal) -> Decimal:
    """The price of which a share goes to the broker and the net is left.

    Example
    -------
    >>> with_commission(Decimal("950.00"), Decimal("0.05"))
    Decimal('1000.00')
    """
    return cents(net / (1 - commission))


def exchanged(amount: float, source: str, target: str, offer: Offer) -> tuple[float, tuple[Rate, ...]]:
    """An amount in another currency by the offer's rates, to the cent, and those used; nan where one is missing."""
    if source == target or math.isnan(amount):
        return amount, ()
    rates = {rate.currency: rate for rate in offer.rates}
    used, exact = [], decimal(amount)
    for currency, buys in ((source, False), (target, True)):
        if currency == offer.currency:
            continue
        rate = rates.get(currency)
        if rate is None:
            return math.nan, ()
        used.append(rate)
        exact = exact * decimal(rate.per_unit) if buys else exact / decimal(rate.per_unit)
    return float(cents(exact)), tuple(used)


def rate_told(rate: Rate, offer: Offer) -> str:
    """An exchange rate in words, with its date."""
    return f"{rate.per_unit:g} {rate.currency} for 1 {offer.currency} on {rate.date}"


def cents(amount: Decimal) -> Decimal:
    """Rounded to the cent, half up as trade does.

    Example
    -------
    >>> cents(Decimal("2.675"))
    Decimal('2.68')
    """
    return amount.quantize(CENT, ROUND_HALF_UP)


def decimal(value: float) -> Decimal:
    """A figure of the specification as its author wrote it, as far as twelve digits tell."""
    return Decimal(f"{value:.12g}")


def _sum(amounts: Iterable[Decimal | None]) -> Decimal:
    return sum((amount for amount in amounts if amount is not None), NOTHING)


def _alike(items: Sequence[Item]) -> list[list[Item]]:
    groups: dict[tuple[str, ...], list[Item]] = {}
    for item in items:
        name = item.name or item.key
        key = (item.kind, name, repr(item.price), item.currency, repr(item.lead_time), item.supplier)
        groups.setdefault(key, []).append(item)
    return list(groups.values())


def _line(items: Sequence[Item], offer: Offer) -> Line:
    first, spares = items[0], dict(offer.spares)
    tags = tuple(item.tag for item in items)
    typed = None if math.isnan(first.price) else decimal(first.price)
    price, rate = _in_offer(typed, first.currency, offer)
    return Line(
        tags=tags,
        kind=first.kind,
        name=first.name or first.key,
        unit=EACH,
        count=Decimal(sum(item.count for item in items)),
        spares=sum(spares.get(tag, 0) for tag in tags),
        typed=typed,
        typed_currency=first.currency,
        rate=rate,
        price=price,
        lead_time=first.lead_time,
        supplier=first.supplier,
        order_by=_order_by(offer.arrival, first.lead_time),
    )


def _cable_line(cable: Cable, offer: Offer) -> Line:
    typed = None if math.isnan(cable.price) else decimal(cable.price)
    price, rate = _in_offer(typed, cable.currency, offer)
    return Line(
        tags=(),
        kind="conductor",
        name=cable.name,
        unit=METRE,
        count=Decimal(f"{cable.length:.1f}"),
        spares=0,
        typed=typed,
        typed_currency=cable.currency,
        rate=rate,
        price=price,
        lead_time=cable.lead_time,
        supplier=cable.supplier,
        order_by=_order_by(offer.arrival, cable.lead_time),
    )


def _in_offer(typed: Decimal | None, currency: str, offer: Offer) -> tuple[Decimal | None, Rate | None]:
    if typed is None:
        return None, None
    if currency == offer.currency:
        return typed.quantize(CENT, ROUND_HALF_UP), None
    rate = next((rate for rate in offer.rates if rate.currency == currency), None)
    if rate is None:
        return None, None
    return (typed / decimal(rate.per_unit)).quantize(CENT, ROUND_HALF_UP), rate


def _order_by(arrival: str, lead_time: float) -> datetime.date | None:
    if not arrival or math.isnan(lead_time):
        return None
    days = math.ceil(lead_time / DAY - 1e-9)
    return datetime.date.fromisoformat(arrival) - datetime.timedelta(days=days) - SLACK
