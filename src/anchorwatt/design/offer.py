"""How the job is priced: currency, margins, labour, spares, dates, and packages offered beside the design."""

from __future__ import annotations

import datetime
import re
from typing import Annotated, Any

from pydantic import Field
from pydantic.functional_validators import BeforeValidator
from pydantic.json_schema import WithJsonSchema

from anchorwatt.design.hold_points import HoldPointName
from anchorwatt.design.section import Name, Section, Text
from anchorwatt.units.fields import Price, Share, within
from anchorwatt.units.money import CURRENCIES
from anchorwatt.units.refusal import Refused, name_of_kind, quoted

DATE = "a date, year first, such as 2026-11-20"


def _shown(value: Any) -> str:
    return quoted(value) if isinstance(value, str) else name_of_kind(value)


def _read_date(value: Any) -> str:
    if not isinstance(value, str) or not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", value):
        raise Refused(_shown(value), DATE)
    try:
        return datetime.date.fromisoformat(value).isoformat()
    except ValueError:
        raise Refused(f"{quoted(value)}, which no calendar has", DATE) from None


def _read_currency(value: Any) -> str:
    if not isinstance(value, str) or value not in CURRENCIES:
        raise Refused(_shown(value), "a currency code of ISO 4217, such as EUR")
    return value


Date = Annotated[
    str,
    BeforeValidator(_read_date),
    WithJsonSchema({"type": "string", "format": "date", "examples": ["2026-11-20"]}),
]
Currency = Annotated[str, BeforeValidator(_read_currency), WithJsonSchema({"type": "string", "pattern": "^[A-Z]{3}$"})]
Margin = Annotated[Share, within("0 %", "300 %")]


class RateEntry(Section):
    """An exchange rate, with the day it is of."""

    per_unit: Annotated[float, Field(gt=0.0, le=1e9)] = Field(
        description="How much of that currency one unit of the offer's currency buys."
    )
    date: Date = Field(description="The day that the rate is of.")


class TaskEntry(Section):
    """Labour."""

    hours: Annotated[float, Field(ge=0.0, le=100_000.0)] | None = Field(
        default=None, description="Hours; estimated for usual tasks."
    )
    rate: Price | None = Field(default=None, description="What an hour costs the yard.")
    hold_points: tuple[HoldPointName, ...] = Field(
        default=(),
        max_length=8,
        description="Where work stops before it until somebody has looked and signed, such as [joinery, bank].",
    )


class PackageEntry(Section):
    """A variant of the design that is offered beside it."""

    about: Text = Field(default="", description="What the customer is told of it.")
    changes: dict[str, Any] = Field(
        min_length=1,
        max_length=60,
        description="Keys of this file, with full stops, and what they say in the package: dc.bank.parallel: 3. "
        "Nothing after the colon takes a key out.",
    )


class Offer(Section):
    """How the job is priced."""

    currency: Currency | None = Field(default=None, description="In which it is offered.")
    date: Date | None = Field(default=None, description="The day that it is made on.")
    rates: dict[Currency, RateEntry] = Field(default_factory=dict, description="Exchange rates by currency.")
    parts_margin: Margin | None = Field(default=None, description="Put on the cost of parts.")
    labour_margin: Margin | None = Field(default=None, description="Put on the cost of labour.")
    commission: Annotated[Share, within("0 %", "50 %")] | None = Field(
        default=None, description="The broker's share of the price before tax."
    )
    tax: Annotated[Share, within("0 %", "50 %")] | None = Field(default=None, description="On top of the price.")
    consumables: Annotated[Share, within("0 %", "50 %")] | None = Field(
        default=None, description="Screws, sealant, sleeves and the like, as a share of the parts' cost."
    )
    labour: dict[Name, TaskEntry] = Field(
        default_factory=dict,
        max_length=60,
        description="Tasks by name, over those that are usual; your own come before “trials and papers”.",
    )
    spares: dict[str, Annotated[int, Field(ge=1, le=1000)]] = Field(
        default_factory=dict, max_length=200, description="How many more of a part, by its tag, such as V1: 2."
    )
    arrival: Date | None = Field(default=None, description="The day that the boat comes to the yard.")
    packages: dict[Name, PackageEntry] = Field(
        default_factory=dict, max_length=20, description="Variants that are offered beside the design, by name."
    )
