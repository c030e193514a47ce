"""The purchase list: by supplier, what is urgent on top, and room for whom nobody named."""

from __future__ import annotations

import datetime
import math
from dataclasses import replace
from types import SimpleNamespace
from typing import Any, cast

from tests.starters import assessed

from anchorwatt.assessment import Assessment
from anchorwatt.papers.page import Section, Table
from anchorwatt.papers.sets.purchase import NOBODY, purchase_list, purchase_rows
from anchorwatt.sizing.offer import Line

TRAWLER = "trawler-14m"
DAYS = {"late": 28, "early": 3, "middle": 14, "open": None}


def line(name: str, supplier: str) -> Line:
    some = assessed(TRAWLER).offer.priced.lines[0]
    day = DAYS[name]
    order_by = None if day is None else datetime.date(2027, 1, day)
    return replace(some, name=name, supplier=supplier, order_by=order_by, lead_time=math.nan)


def boat(*lines: Line) -> Assessment:
    found = assessed(TRAWLER)
    story = replace(found.offer, priced=replace(found.offer.priced, lines=lines))
    return cast(Assessment, SimpleNamespace(offer=story, specification=found.specification))


def listed(*lines: Line) -> dict[str, list[str]]:
    """Names of parts by the heading that they stand under."""
    sections = [one for one in purchase_list(boat(*lines)) if isinstance(one, Section)]
    tables = {one.heading: part for one in sections for part in one.body if isinstance(part, Table)}
    return {heading: [row[0].text for row in one.rows] for heading, one in tables.items()}


def test_each_supplier_has_a_table_with_what_must_be_ordered_first_on_top() -> None:
    found = listed(
        line("late", "Ropewalk"), line("open", "Ropewalk"), line("early", "Ropewalk"), line("middle", "Slip")
    )
    assert found == {"Ropewalk": ["early", "late", "open"], "Slip": ["middle"]}


def test_what_nobody_is_named_for_comes_last_however_early_it_is() -> None:
    found = listed(line("early", ""), line("late", "Ropewalk"))
    assert list(found) == ["Ropewalk", NOBODY]


def test_a_line_without_a_supplier_has_room_to_write_one() -> None:
    (nobody,) = [one for one in purchase_list(boat(line("early", ""))) if isinstance(one, Section)]
    (made,) = [part for part in nobody.body if isinstance(part, Table)]
    assert "supplier" in made.heads[-1]
    assert made.rows[0][-1].text == ""


def test_the_workbook_has_the_supplier_of_each_line_and_the_same_order() -> None:
    rows: list[dict[str, Any]] = purchase_rows(boat(line("early", ""), line("late", "Ropewalk")))
    assert [(row["part"], row["supplier"]) for row in rows] == [("late", "Ropewalk"), ("early", "")]


def test_a_part_bought_from_two_is_two_lines() -> None:
    found = listed(line("early", "Ropewalk"), line("early", "Slip"))
    assert found == {"Ropewalk": ["early"], "Slip": ["early"]}
