"""The offer: what nobody typed of margins and labour is usual, and said to be so."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from anchorwatt.catalogue.part import CURRENCY, nearest
from anchorwatt.design import offer as section
from anchorwatt.design import specification as spec
from anchorwatt.design.design import Design
from anchorwatt.design.document import Key
from anchorwatt.design.hold_points import ALTERNATORS, BANK, CONVERTERS, COOLING, SOLAR, SURVEY, TRIALS, WIRING
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.plain_value import written
from anchorwatt.units import Money

KEY: Key = ("offer",)
HOUR = 3600.0

PARTS_MARGIN = 0.20
LABOUR_MARGIN = 0.25
CONSUMABLES = 0.03
HOURLY_RATE = 75.0
"""In the catalogue's currency."""


@dataclass(frozen=True)
class UsualTask:
    """Labour of a usual job, from memory: some hours, and some for every item of certain kinds."""

    name: str
    hours: float
    each: float
    kinds: tuple[str, ...]  # of the catalogue; none = done once in every job

    def estimate(self, items: Sequence[spec.Item]) -> float:
        """Hours for the items of a design; 0 where it has none of them."""
        count = sum(item.count for item in items if item.kind in self.kinds)
        return self.hours + self.each * count if count or not self.kinds else 0.0


USUAL_TASKS = (
    UsualTask(SURVEY, 16.0, 0.0, ()),
    UsualTask(COOLING, 16.0, 8.0, ("condensing_unit", "air_handler")),
    UsualTask(BANK, 8.0, 1.5, ("battery_module",)),
    UsualTask(CONVERTERS, 2.0, 6.0, ("inverter", "charger", "transformer", "dc_dc")),
    UsualTask(ALTERNATORS, 4.0, 8.0, ("alternator",)),
    UsualTask(SOLAR, 4.0, 2.0, ("solar_panel",)),
    UsualTask(WIRING, 24.0, 6.0, ("inverter", "charger", "transformer", "alternator", "air_handler")),
    UsualTask(TRIALS, 16.0, 0.0, ()),
)


def check_offer(entry: section.Offer | None, ledger: Ledger) -> None:
    """Refuse what cannot be priced, whatever else the file says."""
    if entry is None:
        return
    currency = entry.currency or CURRENCY
    if currency in entry.rates:
        found = f"a rate for {currency}, which the offer is in"
        ledger.refuse((*KEY, "rates", currency), found, "rates for other currencies")
    usual = [task.name for task in USUAL_TASKS]
    for name, task in entry.labour.items():
        if task.hours is None and name not in usual:
            allowed = "hours: with a task of your own; or a usual task: " + ", ".join(usual)
            ledger.refuse((*KEY, "labour", name), f"no hours of “{name}”{nearest(name, usual)}", allowed)
        if task.rate is not None and task.rate.currency not in (currency, *entry.rates):
            found = f"“{task.rate}” in an offer in {currency} without a rate for {task.rate.currency}"
            allowed = f"{currency}; or rates: {{{task.rate.currency}: {{per_unit: …, date: …}}}}"
            ledger.refuse((*KEY, "labour", name, "rate"), found, allowed)
    sections = list(Design.model_fields)
    for name, package in entry.packages.items():
        for key in package.changes:
            first = key.split(".")[0]
            if first not in sections:
                place = (*KEY, "packages", name, "changes", key)
                allowed = "a key of this file, such as dc.bank.parallel"
                ledger.refuse(place, f"no key “{key}”{nearest(first, sections)}", allowed)


def fill_offer(entry: section.Offer | None, items: Sequence[spec.Item], ledger: Ledger) -> spec.Offer:
    """The offer; with the usual figures where the file says nothing."""
    if entry is None:
        found = f"in {CURRENCY}, with usual margins and labour"
        ledger.note(KEY, found, "the file says nothing of the price", MEMORY)
        ledger, entry = ledger.aside(), section.Offer()
    _check_spares(entry, items, ledger)
    if entry.currency is None:
        ledger.note((*KEY, "currency"), CURRENCY, "that of the catalogue", "the catalogue")
    currency = entry.currency or CURRENCY
    rates = tuple(spec.Rate(name, rate.per_unit, rate.date) for name, rate in entry.rates.items())

    def share(field: str, usual: float, rule: str) -> float:
        return ledger.fill(getattr(entry, field), (*KEY, field), usual, "share", rule, MEMORY)

    return spec.Offer(
        currency=currency,
        date=entry.date or "",
        rates=rates,
        parts_margin=share("parts_margin", PARTS_MARGIN, "usual on parts"),
        labour_margin=share("labour_margin", LABOUR_MARGIN, "usual on labour"),
        commission=share("commission", 0.0, "no broker is named"),
        tax=share("tax", 0.0, "no tax is named"),
        tasks=_tasks(entry, items, currency, rates, ledger),
        consumables=share("consumables", CONSUMABLES, "usual share of the parts"),
        spares=tuple(entry.spares.items()),
        arrival=entry.arrival or "",
        packages=tuple(
            spec.Package(name, package.about, tuple((key, written(value)) for key, value in package.changes.items()))
            for name, package in entry.packages.items()
        ),
    )


def _check_spares(entry: section.Offer, items: Sequence[spec.Item], ledger: Ledger) -> None:
    tags = [item.tag for item in items]
    for tag in entry.spares:
        if tag not in tags:
            allowed = "one of: " + ", ".join(f"{item.tag} ({item.name or item.key})" for item in items)
            ledger.refuse((*KEY, "spares", tag), f"no part with the tag “{tag}”", allowed)


def _tasks(
    entry: section.Offer,
    items: Sequence[spec.Item],
    currency: str,
    rates: Sequence[spec.Rate],
    ledger: Ledger,
) -> tuple[spec.Task, ...]:
    per_unit = {currency: 1.0, **{rate.currency: rate.per_unit for rate in rates}}

    def cost(name: str, typed: Money | None) -> float:
        if typed is not None:
            return float(typed.amount) / per_unit.get(typed.currency, math.nan)
        usual = HOURLY_RATE / per_unit.get(CURRENCY, math.nan)
        shown = "unknown" if math.isnan(usual) else f"{usual:.2f} {currency}"
        ledger.note((*KEY, "labour", name, "rate"), shown, f"{HOURLY_RATE:g} {CURRENCY} an hour", MEMORY)
        return usual

    tasks = []
    for usual in USUAL_TASKS:
        task = entry.labour.get(usual.name, section.TaskEntry())
        hours = task.hours
        if hours is None:
            hours = usual.estimate(items)
            if hours == 0.0:
                continue
            rule = f"{usual.hours:g} h and {usual.each:g} h for each of them" if usual.each else f"{usual.hours:g} h"
            ledger.note((*KEY, "labour", usual.name, "hours"), ledger.show(hours * HOUR, "time"), rule, MEMORY)
        tasks.append(spec.Task(usual.name, hours, cost(usual.name, task.rate), task.hold_points))
    usual_names = {usual.name for usual in USUAL_TASKS}
    own = [
        spec.Task(name, task.hours, cost(name, task.rate), task.hold_points)
        for name, task in entry.labour.items()
        if name not in usual_names and task.hours is not None
    ]
    last = [task for task in tasks if task.name == TRIALS]
    return (*(task for task in tasks if task.name != TRIALS), *own, *last)
