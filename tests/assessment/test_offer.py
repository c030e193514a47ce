"""What the customer pays, as an answer with its why."""

from __future__ import annotations

import math

import pytest

from anchorwatt.assessment.offer import price_answer
from anchorwatt.design.specification import Rate
from anchorwatt.sizing.offer import priced
from tests.sizing.test_offer import BELT, MODULES, boat, item

UNPRICED = tuple(item(f"T{n}", f"part {n}", 1, math.nan) for n in range(5))


def test_the_answer_is_what_the_offer_asks_the_customer_for() -> None:
    made = priced(boat(MODULES, BELT))
    answer = price_answer(made)
    assert answer.value == float(made.total)
    assert answer.note == "in EUR; tax of 19 % is in it"


def test_its_inputs_add_up_to_it() -> None:
    answer = price_answer(priced(boat(MODULES, BELT)))
    assert sum(one.value for one in answer.why.inputs) == pytest.approx(answer.value, abs=1e-6)


def test_its_key_ends_in_the_offers_currency() -> None:
    made = priced(boat(MODULES, currency="USD", rates=(Rate("EUR", 0.9, "2026-11-20"),)))
    assert price_answer(made).key == "total_USD"


def test_a_part_without_a_price_makes_it_a_lower_bound() -> None:
    answer = price_answer(priced(boat(MODULES, UNPRICED[0])))
    assert answer.note == "in EUR; at least that, without part 0 (no price)"
    assert math.isfinite(answer.value)


def test_many_parts_without_a_price_are_counted_and_not_all_named() -> None:
    assert price_answer(priced(boat(MODULES, *UNPRICED))).note.endswith("part 2 (no price) and 2 more")


@pytest.mark.parametrize("parts", [UNPRICED, ()])
def test_labour_alone_is_no_price(parts: tuple[object, ...]) -> None:
    answer = price_answer(priced(boat(*parts)))  # type: ignore[arg-type]
    assert math.isnan(answer.value)
    assert answer.note == "in EUR; no part has a price"
