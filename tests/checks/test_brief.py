"""What the brief asks for: the price of the parts, and in what it is told."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.checks import Verdict
from tests.checks.found import sure
from tests.checks.holds_and_fails.brief import PRICELESS, priced


def test_a_price_that_can_be_told_says_in_what() -> None:
    found = sure("price-limit", priced("65 000 EUR"))
    assert (found.value, found.limit, found.note) == (3000.0, 65_000.0, "in EUR")


def test_price_limit_in_another_currency_cannot_tell_and_says_why() -> None:
    found = sure("price-limit", priced("65 000 USD"))
    assert found.verdict is Verdict.CANNOT_TELL
    assert found.note == "in USD; the parts come to 3 000 EUR, which is not converted"


def test_a_part_without_a_price_is_named() -> None:
    assert sure("price-limit", priced("65 000 EUR", PRICELESS)).note == "in EUR; no price of our own module"


def test_price_limit_without_parts_cannot_tell() -> None:
    assert sure("price-limit", replace(priced("65 000 EUR"), items=())).verdict is Verdict.CANNOT_TELL
