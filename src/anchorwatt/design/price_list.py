"""A supplier's price list in CSV, turned into a catalogue file of the yard: all of it, or nothing.

Columns: kind, name, price, currency; and where wanted unit (each or metre), lead_time_days and supplier. They stand in
any order, set apart by commas, semicolons or tabs.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from anchorwatt.catalogue.part import LONGEST_SUPPLIER, find, kinds, names, nearest
from anchorwatt.design.plain_value import written
from anchorwatt.errors import BadPrices, Problem
from anchorwatt.units import Money
from anchorwatt.units.refusal import Refused, quoted

NEEDED = ("kind", "name", "price", "currency")
WANTED = ("unit", "lead_time_days", "supplier")
LARGEST_LIST = 2_000_000  # bytes
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
    text = _text(path, file)
    first = text.split("\n", 1)[0]
    delimiter = max(",;\t", key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    problems: list[Problem] = []
    taken: list[Taken] = []
    lines: dict[tuple[str, str], int] = {}
    heads: list[str] = []
    try:
        for cells in reader:
            line = reader.line_num
            if not any(cell.strip() for cell in cells):
                continue
            if not heads:
                heads = [cell.strip().lower() for cell in cells]
                problems += _heading(heads, file, line)
                if problems:
                    break
                continue
            if len(cells) != len(heads):
                allowed = f"{len(heads)}, as the heading has; a decimal comma makes one more: write 12.50"
                problems.append(Problem(file, line, "", f"{len(cells)} columns", allowed))
                continue
            row = {head: cell.strip() for head, cell in zip(heads, cells, strict=True)}
            found, more = _row(row, file, line)
            problems += more
            if found is None:
                continue
            key = (found.kind, found.name)
            if key in lines:
                told = f"a second price of {found.kind} “{found.name}”; the first is on line {lines[key]}"
                problems.append(Problem(file, line, "name", told, "each part once"))
            else:
                lines[key] = line
                taken.append(found)
    except csv.Error as error:
        problems.append(Problem(file, reader.line_num, "", f"what is not CSV ({error})", "a table in CSV"))
    if not problems and not taken:
        problems.append(Problem(file, None, "", "no prices", "a heading, and a row for each price"))
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


def _text(path: Path, file: str) -> str:
    def refuse(found: str, allowed: str, line: int | None = None) -> BadPrices:
        return BadPrices((Problem(file, line, "", found, allowed),))

    if path.is_dir():
        raise refuse("a folder", "a price list in CSV")
    try:
        content = path.read_bytes()
    except FileNotFoundError:
        raise refuse("no such file", "a price list in CSV") from None
    except OSError as error:
        raise refuse(f"a file that cannot be read ({error.strerror})", "a price list that can be read") from None
    if len(content) > LARGEST_LIST:
        raise refuse(f"a file of {len(content) / 1e6:.1f} MB", f"at most {LARGEST_LIST / 1e6:g} MB")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content[: error.start].count(b"\n") + 1
        raise refuse(f"a byte 0x{content[error.start]:02x} that is not UTF-8", "text in UTF-8", line) from None


def _heading(heads: Sequence[str], file: str, line: int) -> list[Problem]:
    known = (*NEEDED, *WANTED)
    problems = [
        Problem(file, line, head, f"an unknown column {quoted(head)}{nearest(head, known)}", "of: " + ", ".join(known))
        for head in heads
        if head not in known
    ]
    problems += [
        Problem(file, line, head, "a second column of that name", "each column once")
        for number, head in enumerate(heads)
        if head in heads[:number]
    ]
    lacking = [head for head in NEEDED if head not in heads]
    if lacking and not problems:
        problems.append(Problem(file, line, "", f"no column {', '.join(lacking)}", "columns " + ", ".join(NEEDED)))
    return problems


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
    unit = row.get("unit", "")
    if kind in kinds() and unit and unit != unit_of(kind):
        refuse("unit", quoted(unit), f"{unit_of(kind)}, as the price of a {kind.replace('_', ' ')} is")
    lead_time = _lead_time(row.get("lead_time_days", ""), refuse)
    supplier = row.get("supplier", "")
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
