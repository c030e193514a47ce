"""Adding prices up without losing what has none."""

from __future__ import annotations

import math

from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.design.specification import Item
from anchorwatt.sizing.price import prices
from tests.simulation import boats


def item(name: str, price: float, currency: str = "EUR", count: int = 1, kind: str = "inverter") -> Item:
    return boats.item(f"key of {name}", kind, name, count, 1.0, price, "" if math.isnan(price) else currency, -1)


@given(st.lists(st.tuples(st.floats(1.0, 1e4), st.integers(1, 9), st.sampled_from(["EUR", "USD"])), max_size=8))
def test_each_currency_has_its_own_total(drawn: list[tuple[float, int, str]]) -> None:
    items = tuple(item(str(n), price, currency, count) for n, (price, count, currency) in enumerate(drawn))
    found = prices(boats.boat(1, items=items))
    totals = {total.currency: total.amount for total in found.totals}
    for currency in ("EUR", "USD"):
        expected = sum(price * count for price, count, one in drawn if one == currency)
        assert math.isclose(totals.get(currency, 0.0), expected)
    assert found.unknown == ()


def test_what_has_no_price_is_named_once_and_leaves_the_total_open() -> None:
    found = prices(boats.boat(1, items=(item("a", 100.0), item("b", math.nan), item("b", math.nan))))
    assert found.unknown == ("b",)
    assert math.isnan(found.only("EUR"))
    assert found.in_words == "100 EUR"


def test_a_total_is_told_in_its_own_currency_alone() -> None:
    one = prices(boats.boat(1, items=(item("a", 100.0, count=3), item("b", 50.0))))
    assert one.only("EUR") == 350.0
    assert math.isnan(one.only("USD"))
    two = prices(boats.boat(1, items=(item("a", 1100.0), item("b", 50.0, "USD"))))
    assert math.isnan(two.only("EUR"))
    assert two.in_words == "1 100 EUR and 50 USD"


def test_no_parts_have_no_price() -> None:
    assert math.isnan(prices(boats.boat(1, items=())).only("EUR"))


def test_some_kinds_alone() -> None:
    items = (item("a", 100.0), item("b", 50.0, kind="belt"), item("c", math.nan, kind="charger"))
    assert prices(boats.boat(1, items=items), ("belt", "inverter")).only("EUR") == 150.0
