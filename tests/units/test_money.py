"""Amounts of money."""

from __future__ import annotations

import contextlib
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import BadQuantity
from anchorwatt.units import Money


@pytest.mark.parametrize(
    ("text", "amount"),
    [
        ("65000 USD", "65000"),
        ("65 000 USD", "65000"),
        ("65\u202f000.50 USD", "65000.50"),
        ("0.99USD", "0.99"),
    ],
)
def test_it_reads(text: str, amount: str) -> None:
    assert Money.parse(text) == Money(Decimal(amount), "USD")


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("", "an amount and a currency code"),
        ("65000", "an amount and a currency code"),
        ("$65000", "an amount and a currency code"),
        ("65000 usd", "an amount and a currency code"),
        ("65,000 USD", "a comma may mean thousands or decimals"),
        ("65 00 USD", "an amount and a currency code"),
        ("-5 USD", "an amount and a currency code"),
        ("65000 XYZ", "XYZ is no currency"),
        ("9" * 5000 + " USD", "an amount and a currency code"),
    ],
)
def test_it_refuses_and_says_why(text: str, why: str) -> None:
    with pytest.raises(BadQuantity, match=why.replace("$", r"\$")):
        Money.parse(text)


@pytest.mark.parametrize("value", [65000, 1.5, None])
def test_what_is_no_text_is_refused(value: object) -> None:
    with pytest.raises(BadQuantity, match="without a currency"):
        Money.parse(value)  # type: ignore[arg-type]


@given(st.decimals(0, 10**9, places=2), st.sampled_from(["USD", "EUR", "NZD"]))
def test_it_is_written_as_it_is_read(amount: Decimal, currency: str) -> None:
    money = Money(amount, currency)
    assert Money.parse(str(money)) == money


@given(st.text(max_size=30))
def test_any_text_is_read_or_refused(text: str) -> None:
    with contextlib.suppress(BadQuantity):
        assert Money.parse(text).amount >= 0


def test_it_adds_and_multiplies_in_one_currency() -> None:
    euro = Money(Decimal("0.10"), "EUR")
    assert euro * 3 == euro + euro + euro == Money(Decimal("0.30"), "EUR")
    assert euro - euro < euro
    assert euro <= euro


def test_it_never_mixes_currencies() -> None:
    euro, dollar = Money(Decimal(1), "EUR"), Money(Decimal(1), "USD")
    with pytest.raises(ValueError, match="cannot set EUR against USD"):
        euro + dollar
    with pytest.raises(ValueError, match="cannot set EUR against USD"):
        euro < dollar  # noqa: B015
