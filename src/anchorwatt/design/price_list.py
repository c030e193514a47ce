"""A supplier's price list in CSV, turned into a catalogue file of the yard: all of it, or nothing.

Columns: kind, name, price, currency; and where wanted unit (each or metre), lead_time_days and supplier. They stand in
any order, set apart by commas, semicolons or tabs.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from anchorwatt.catalogue.part import LONGEST_SUPPLIER, find, kinds, names, nearest
from anchorwatt.design.csv_table import read_table
from anchorwatt.design.plain_value import written
from anchorwatt.errors import BadPrices, Problem
from anchorwatt.units import Money
from anchorwatt.units.refusal import Refused, quoted

NEEDED = ("kind", "name", "price", "currency")
WANTED = ("unit", "lead_time_days", "supplier")
LONGEST_LEAD = 1000  # days

EACH, METRE = "each", "metre"
BY_THE_METRE = ("conductor",)
"""Kinds whose price is of one metre; of all others, of one."""

_Refuse = Callable[[str, str, str], None]


@dataclass(frozen=True)
class Taken:
    """One row of a list."""

    kind: str
    name: str
    price: Money
    lead_time: float | None  # days, None = the list does not say
    before: Money | None  # price in the generic catalogue
    supplier: str = ""  # "" = the list names nobody

    @property
    def unit(self) -> str:
        return unit_of(self.kind)


def unit_of(kind: str) -> str:
    """What a price of a kind is of."""
    return METRE if kind in BY_THE_METRE else EACH


def read_price_list(path: Path) -> tuple[Taken, ...]:
    """Rows of a price list.

    Raises
    ------
    BadPrices
        Something is wrong in it; every problem is told with its line and column.
    """
    file = str(path)
    rows, problems = read_table(path, "a price list in CSV", NEEDED, WANTED)
    taken: list[Taken] = []
    lines: dict[tuple[str, str], int] = {}
    for row in rows:
        found, more = _row(row.cells, file, row.line)
        problems += more
        if found is None:
            continue
        key = (found.kind, found.name)
        if key in lines:
            told = f"a second price of {found.kind} “{found.name}”; the first is on line {lines[key]}"
            problems.append(Problem(file, row.line, "name", told, "each part once"))
        else:
            lines[key] = row.line
            taken.append(found)
    if problems:
        raise BadPrices(tuple(problems))
    return tuple(taken)


def catalogue_text(taken: Sequence[Taken], listed: str) -> str:
    """The catalogue file that a list makes; `listed` is what the list is called."""
    lines = [f"# Prices from {' '.join(listed.split())}, of one each, cable of one metre; without tax.\n"]
    by_kind: dict[str, list[Taken]] = {}
    for one in taken:
        by_kind.setdefault(one.kind, []).append(one)
    for kind, rows in by_kind.items():
        lines.append(f"{kind}:\n")
        for one in rows:
            fields = {"like": one.name, "price": str(one.price)}
            if one.lead_time is not None:
                fields["lead_time"] = f"{one.lead_time:g} d"
            if one.supplier:
                fields["supplier"] = one.supplier
            lines.append(f"  {written(one.name)}: {written(fields)}\n")
    return "".join(lines)


def _row(row: Mapping[str, str], file: str, line: int) -> tuple[Taken | None, list[Problem]]:
    problems: list[Problem] = []

    def refuse(column: str, found: str, allowed: str) -> None:
        problems.append(Problem(file, line, column, found, allowed))

    kind, name = row["kind"].replace(" ", "_"), row["name"]
    if kind not in kinds():
        refuse("kind", f"no kind {quoted(row['kind'])}{nearest(kind, kinds())}", "one of: " + ", ".join(kinds()))
    elif name not in names(kind):
        allowed = f"a row of the catalogue; “anchorwatt catalogue {kind}” lists them"
        refuse("name", f"no {kind.replace('_', ' ')} {quoted(name)}{nearest(name, names(kind))}", allowed)
    price = _price(row, refuse)
    unit = row["unit"]
    if kind in kinds() and unit and unit != unit_of(kind):
        refuse("unit", quoted(unit), f"{unit_of(kind)}, as the price of a {kind.replace('_', ' ')} is")
    lead_time = _lead_time(row["lead_time_days"], refuse)
    supplier = row["supplier"]
    if len(supplier) > LONGEST_SUPPLIER or not supplier.isprintable():
        refuse("supplier", quoted(supplier), f"a name on one line, of at most {LONGEST_SUPPLIER} characters")
    if problems or price is None:
        return None, problems
    return Taken(kind, name, price, lead_time, find(kind, name).price, supplier), []


def _price(row: Mapping[str, str], refuse: _Refuse) -> Money | None:
    text, currency = row["price"], row["currency"]
    if not text:
        refuse("price", "nothing", "an amount, such as 1234.50")
    elif not currency:
        refuse("currency", f"a price of {quoted(text)} without a currency", "a code of ISO 4217, such as EUR")
    elif "," in text:
        found = f"{quoted(text)}, where a comma may mean thousands or decimals"
        refuse("price", found, "an amount with a decimal point, such as 1234.50")
    else:
        try:
            money = Money.parse(f"{text} {currency}")
        except Refused as refusal:
            refuse("price", refusal.found, refusal.allowed)
            return None
        if money.amount > 0:
            return money
        refuse("price", quoted(text), "more than nothing; leave out what has no price")
    return None


def _lead_time(text: str, refuse: _Refuse) -> float | None:
    if not text:
        return None
    if not re.fullmatch(r"[0-9]{1,4}(?:\.[0-9])?", text) or float(text) > LONGEST_LEAD:
        refuse("lead_time_days", quoted(text), f"days from 0 to {LONGEST_LEAD}")
        return None
    return float(text)
