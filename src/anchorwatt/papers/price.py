"""The price command: what the customer pays; and, apart from it, what the job costs the yard and when to order."""

from __future__ import annotations

import datetime
import math
from decimal import Decimal
from typing import TYPE_CHECKING, Any

import typer

from anchorwatt.papers import screens
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Paragraph, Side, Title, Words, figures, page, section, table
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import Money, System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.offer import OfferStory
    from anchorwatt.sizing.offer import Line, Priced
    from anchorwatt.sizing.packages import Figures, Offered

Plain = dict[str, Any]

TO_ADD = "What is not counted below goes in as tasks with their hours, as consumables or within the margins."
INVENTED = "Prices and lead times of the generic catalogue are invented; lay your own over them before you offer."


def day(text: str | None) -> datetime.date:
    """The day on which the order dates are looked at: that typed, else today."""
    if text is None:
        return datetime.date.today()
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        found = f"found {text!r}; allowed: a date, year first, such as 2026-11-20"
        raise typer.BadParameter(found, param_hint="--today") from None


def screen(assessment: Assessment, today: datetime.date | None, cost: bool, system: System) -> Content:
    """The customer's view, or the yard's; without a day nothing is said of what comes too late."""
    story = assessment.offer
    parts: list[Content] = [Title(assessment.specification.name)]
    if cost:
        parts += [
            section("What the job costs the yard", *_cost(story)),
            section("Bill of materials", *_bill(story)),
            section("Labour", _labour(story.priced)),
            section("When to order", *_orders(story, today)),
            section("What to add", Paragraph(TO_ADD)),
        ]
    else:
        parts += [
            section("Price", *customer(story)),
            section("What it holds", contents(story.priced)),
            section("Time", Paragraph(time_told(story, today))),
        ]
    if story.packages:
        parts.append(section("Packages", *_packages(story, system)))
    return page(*parts, section("Not counted", *map(Paragraph, story.not_counted)), screens.cautions(assessment))


def plain(assessment: Assessment, today: datetime.date, cost: bool) -> Plain:
    """What `price` shows, as plain data; the yard's view only when asked for."""
    story, made = assessment.offer, assessment.offer.priced
    currency = made.offer.currency
    late = {one.line: one.by for one in story.late(today)}
    content: Plain = {
        "currency": currency,
        "complete": made.complete,
        "unknown": list(made.unknown),
        f"parts_{currency}": float(made.customer_parts),
        f"labour_{currency}": float(made.customer_labour),
        f"price_{currency}": float(made.price),
        f"tax_{currency}": float(made.tax),
        f"total_{currency}": float(made.total),
        "exchange_rates": list(story.rates),
        "arrival": made.offer.arrival or None,
        "today": today.isoformat(),
        "parts": [{**_plain_line(line), "too_late_days": late.get(line)} for line in made.lines],
        "packages": [_plain_package(one, currency) for one in story.packages],
        "not_counted": list(story.not_counted),
        "cautions": list(assessment.cautions),
    }
    if cost:
        content["cost"] = _plain_cost(made)
    return content


def bill(assessment: Assessment, cost: bool) -> list[Plain]:
    """The bill of materials as a table; with cost prices only when asked for."""
    made = assessment.offer.priced
    return [
        {**_plain_line(line), "tags": " ".join(line.tags), **(_cost_of(line, made.offer.currency) if cost else {})}
        for line in made.lines
    ]


def labour(assessment: Assessment) -> list[Plain]:
    """The labour by task as a table; the yard's view."""
    return _plain_labour(assessment.offer.priced)


def packages(assessment: Assessment) -> list[Plain]:
    """The packages as a table."""
    made = assessment.offer
    return [_plain_package(one, made.priced.offer.currency) for one in made.packages]


def _plain_line(line: Line) -> Plain:
    return {
        "tags": list(line.tags),
        "kind": line.kind,
        "name": line.name,
        "unit": line.unit,
        "count": float(line.count),
        "spares": line.spares,
        "lead_time_days": in_unit(line.lead_time, "d", "time"),
        "order_by": None if line.order_by is None else line.order_by.isoformat(),
    }


def _cost_of(line: Line, currency: str) -> Plain:
    return {
        f"unit_cost_{currency}": _float(line.price),
        f"cost_{currency}": _float(line.cost),
        "supplier": line.supplier or None,
        "unknown": line.unknown or None,
    }


def _plain_labour(made: Priced) -> list[Plain]:
    currency = made.offer.currency
    return [
        {
            "task": task.name,
            "labour_hours": float(task.hours),
            f"hourly_rate_{currency}": _float(task.rate),
            f"cost_{currency}": _float(task.cost),
        }
        for task in made.labour
    ]


def _plain_cost(made: Priced) -> Plain:
    currency, offer = made.offer.currency, made.offer
    return {
        f"parts_cost_{currency}": float(made.parts_cost),
        f"consumables_{currency}": float(made.consumables),
        f"labour_cost_{currency}": float(made.labour_cost),
        f"cost_{currency}": float(made.cost),
        "parts_margin_pct": in_unit(offer.parts_margin, "%", "share"),
        f"parts_margin_{currency}": float(made.parts_margin),
        "labour_margin_pct": in_unit(offer.labour_margin, "%", "share"),
        f"labour_margin_{currency}": float(made.labour_margin),
        f"net_{currency}": float(made.net),
        "commission_pct": in_unit(offer.commission, "%", "share"),
        f"commission_{currency}": float(made.commission),
        "bill": [{"name": line.name, "tags": list(line.tags), **_cost_of(line, currency)} for line in made.lines],
        "labour": _plain_labour(made),
    }


def _plain_package(one: Offered, currency: str) -> Plain:
    return {
        "package": one.package.name,
        "about": one.package.about,
        "changes": dict(one.package.changes),
        f"total_{currency}": _float(one.figures.total),
        f"more_to_pay_{currency}": _float(one.more_to_pay),
        "hold_hours": in_unit(one.figures.hold, "h", "time"),
        "more_hold_hours": in_unit(one.more_hold, "h", "time"),
        "mass_kg": in_unit(one.figures.mass, "kg", "mass"),
        "more_mass_kg": in_unit(one.more_mass, "kg", "mass"),
        "engine_hours": in_unit(one.figures.engine_time, "h", "time"),
        "more_engine_hours": in_unit(one.more_engine_time, "h", "time"),
    }


def _float(amount: Decimal | None) -> float | None:
    return None if amount is None else float(amount)


def customer(story: OfferStory) -> list[Content]:
    """The price as the customer sees it, and what it leaves out."""
    made, offer = story.priced, story.priced.offer
    rows: list[tuple[str | Words, str | Words]] = [
        ("Parts and consumables", _money(made.customer_parts, offer.currency)),
        (f"Labour, {made.labour_hours:f} h", _money(made.customer_labour, offer.currency)),
        ("Price before tax", _money(made.price, offer.currency)),
        (f"Tax, {show(offer.tax, 'share', 'si')}", _money(made.tax, offer.currency)),
        (Words("To pay", "strong"), Words(_money(made.total, offer.currency), "strong")),
    ]
    return [table(("", ""), ("<", ">"), rows), *_doubts(story)]


def _doubts(story: OfferStory) -> list[Content]:
    """What the sums leave out, and the exchange rates behind them."""
    doubts: list[Content] = []
    if not story.priced.complete:
        doubts.append(Paragraph(f"At least that; without a price: {'; '.join(story.priced.unknown)}."))
    if story.rates:
        doubts.append(Paragraph(f"Exchange rates: {'; '.join(story.rates)}."))
    return doubts


def contents(made: Priced) -> Content:
    """Every part by count and spares, without its price."""
    rows = [(line.name, _quantity(line), str(line.spares or ""), " ".join(line.tags)) for line in made.lines]
    return table(("part", "count", "spares", "tags"), ("<", ">", ">", "<"), rows, shares=(7, 2, 2, 6))


def kind_told(kind: str) -> str:
    """What a part is, in words.

    Example
    -------
    >>> kind_told("air_handler"), kind_told("dc_dc")
    ('air handler', 'DC-DC converter')
    """
    return "DC-DC converter" if kind == "dc_dc" else kind.replace("_", " ")


def time_told(story: OfferStory, today: datetime.date | None) -> str:
    """Whether every part can still come in time, seen from a day."""
    offer = story.priced.offer
    if not offer.arrival:
        return "The design names no day on which the boat arrives: type offer.arrival, and order dates follow."
    if today is None:
        return (
            f"The boat arrives on {offer.arrival}. Order dates are held against no day: the design has no offer.date."
        )
    late = story.late(today)
    words = f"The boat arrives on {offer.arrival}. "
    if not late:
        return f"{words}Seen on {today.isoformat()}, every part with a known lead time can still come in time."
    named = "; ".join(dict.fromkeys(f"{one.line.name} ({one.by} d)" for one in late))
    return f"{words}Seen on {today.isoformat()}, too late by so many days: {named}."


def _cost(story: OfferStory) -> list[Content]:
    made, offer = story.priced, story.priced.offer

    def share(value: float) -> str:
        return show(value, "share", "si")

    rows: list[tuple[str | Words, str | Words]] = [
        ("Parts", amount(made.parts_cost)),
        (f"Consumables, {share(offer.consumables)} of the parts", amount(made.consumables)),
        (f"Labour, {made.labour_hours:f} h", amount(made.labour_cost)),
        ("Cost", amount(made.cost)),
        (f"Margin on parts and consumables, {share(offer.parts_margin)}", amount(made.parts_margin)),
        (f"Margin on labour, {share(offer.labour_margin)}", amount(made.labour_margin)),
        ("Net for the yard", amount(made.net)),
        (f"Broker's commission, {share(offer.commission)} of the price", amount(made.commission)),
        ("Price before tax", amount(made.price)),
        (f"Tax, {share(offer.tax)}", amount(made.tax)),
        (Words("The customer pays", "strong"), Words(amount(made.total), "strong")),
    ]
    return [table(("", offer.currency), ("<", ">"), rows), *_doubts(story)]


def _bill(story: OfferStory) -> list[Content]:
    made = story.priced
    currency = made.offer.currency
    heads = ("part", "count", "spares", f"of one\n{currency}", f"together\n{currency}", "tags")
    rows = [
        (
            line.name,
            _quantity(line),
            str(line.spares or ""),
            amount(line.price),
            amount(line.cost),
            " ".join(line.tags),
        )
        for line in made.lines
    ]
    sides: tuple[Side, ...] = ("<", ">", ">", ">", ">", "<")
    return [table(heads, sides, rows), Paragraph(INVENTED)]


def _labour(made: Priced) -> Content:
    currency = made.offer.currency
    rows = [(task.name, f"{task.hours:f}", amount(task.rate), amount(task.cost)) for task in made.labour]
    heads = ("task", "hours\nh", f"an hour\n{currency}", f"cost\n{currency}")
    return table(heads, figures(heads), rows)


def slack_told(story: OfferStory) -> str:
    """How long before the boat parts are asked to be there."""
    return f"Order dates keep {story.slack.days} days between delivery and arrival (common practice, no source)."


def _orders(story: OfferStory, today: datetime.date | None) -> list[Content]:
    made = story.priced
    late = {} if today is None else {one.line: one.by for one in story.late(today)}

    def told(line: Line) -> str:
        if line in late:
            return f"too late by {late[line]} d"
        return "" if line.order_by is not None else "unknown"

    lines = sorted(made.lines, key=lambda line: line.order_by or datetime.date.max)
    rows = [
        (
            line.name,
            "—" if math.isnan(line.lead_time) else f"{in_unit(line.lead_time, 'd', 'time'):g}",
            "—" if line.order_by is None else line.order_by.isoformat(),
            Words(told(line), "fails" if line in late else ""),
        )
        for line in lines
    ]
    words = f"{time_told(story, today)} {slack_told(story)}"
    return [table(("part", "lead time\ndays", "order by", ""), ("<", ">", "<", "<"), rows), Paragraph(words)]


def _packages(story: OfferStory, system: System) -> list[Content]:
    currency = story.priced.offer.currency
    heads = (
        "",
        f"to pay\n{currency}",
        f"bank holds\n{heading_unit('time', system)}",
        f"mass\n{heading_unit('mass', system)}",
        f"engine\n{heading_unit('time', system)}",
    )
    rows = [("as designed", *_absolute(story.base, system))]
    rows += [(one.package.name, *_more(one, system)) for one in story.packages]
    parts: list[Content] = [table(heads, figures(heads), rows)]
    for one in story.packages:
        changes = "; ".join(f"{key}: {value}" for key, value in one.package.changes)
        about = f"{one.package.about.rstrip('. ')}. " if one.package.about else ""
        parts.append(Paragraph(f"{one.package.name.capitalize()}: {about}It changes {changes}."))
    words = (
        "Packages: what is more (+) or less (−) than as designed, each worked out again from its own design. Engine: "
        "until the night is put back. Mass: brought aboard, cables within."
    )
    return [*parts, Paragraph(words)]


def _absolute(found: Figures, system: System) -> tuple[str, ...]:
    return (
        amount(found.total),
        reading(found.hold, "time", system),
        reading(found.mass, "mass", system),
        reading(found.engine_time, "time", system),
    )


def _more(one: Offered, system: System) -> tuple[str, ...]:
    return (
        "—" if one.more_to_pay is None else _signed(amount(one.more_to_pay)),
        _signed(reading(one.more_hold, "time", system)),
        _signed(reading(one.more_mass, "mass", system)),
        _signed(reading(one.more_engine_time, "time", system)),
    )


def _signed(text: str) -> str:
    return text if text[:1] in "−-—" else f"+{text}"


def _quantity(line: Line) -> str:
    return f"{line.count:f}" if line.unit == "each" else f"{line.count:f} {line.unit}"


def _money(amount: Decimal, currency: str) -> str:
    return str(Money(amount, currency))


def amount(amount: Decimal | None) -> str:
    """Money without its currency."""
    return "—" if amount is None else f"{amount:,.2f}".replace(",", " ").replace("-", "−")
