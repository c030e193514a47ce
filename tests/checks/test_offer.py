"""The whole price and its days: to the cent and to the day, and what cannot be told."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.checks import Evidence, Finding, Verdict
from anchorwatt.design.specification import Rate, Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.offer import priced
from tests.checks.found import BY_ID, finding
from tests.checks.holds_and_fails.offer import DAY, boat, rate, undated


def sure(name: str, made: Specification) -> Finding:
    """What a rule finds when cables are left out, so that the figures stay round."""
    evidence = Evidence(made, Simulation(made))
    vars(evidence)["offer"] = priced(made)
    found = BY_ID[name].find(evidence)
    assert found is not None
    return found


@pytest.mark.parametrize(("limit", "fails"), [("4 510 EUR", False), ("4 509.99 EUR", True)])
def test_the_whole_price_is_held_to_the_cent(limit: str, fails: bool) -> None:
    assert (sure("whole-price-limit", boat(limit)).verdict is Verdict.FAILS) is fails


def test_a_limit_in_another_currency_is_held_at_the_offers_rate() -> None:
    found = sure("whole-price-limit", boat("5 000 USD", rates=(Rate("USD", 1.1, "2026-11-20"),)))
    assert found.value == pytest.approx(4961.0)
    assert "1.1 USD for 1 EUR on 2026-11-20" in found.note
    assert sure("whole-price-limit", boat("5 000 USD")).verdict is Verdict.CANNOT_TELL


def test_cables_are_in_the_whole_price() -> None:
    made = boat()
    evidence = Evidence(made, Simulation(made))
    assert evidence.offer.total > priced(made).total


def test_margins_and_tax_are_told() -> None:
    note = sure("whole-price-limit", boat()).note
    assert "margins of 20% and 0% and tax of 10% are in" in note


def test_a_part_without_a_price_cannot_tell_until_the_rest_is_too_much() -> None:
    bare = boat(price=math.nan)
    found = sure("whole-price-limit", bare)
    assert found.verdict is Verdict.CANNOT_TELL
    assert "without module (no price)" in found.note
    assert sure("whole-price-limit", replace(bare, brief=boat("100 EUR").brief)).verdict is Verdict.FAILS


def test_without_a_limit_rates_or_an_arrival_there_is_nothing_to_hold() -> None:
    assert finding("whole-price-limit", boat("")) is None
    assert finding("exchange-rate-age", boat()) is None
    assert finding("parts-before-arrival", boat(arrival="")) is None


@pytest.mark.parametrize("name", ["exchange-rate-age", "parts-before-arrival"])
def test_without_a_day_of_the_offer_that_day_is_asked_for(name: str) -> None:
    assert "offer.date" in sure(name, undated(rate("2026-11-20"))).note


def test_a_rate_from_after_the_offers_day_cannot_be() -> None:
    assert sure("exchange-rate-age", rate("2026-11-24")).verdict is Verdict.CANNOT_TELL


@pytest.mark.parametrize(("days", "expected"), [(60, Verdict.HOLDS), (80, Verdict.NEAR), (100, Verdict.FAILS)])
def test_what_must_be_ordered_within_two_weeks_is_near(days: int, expected: Verdict) -> None:
    assert sure("parts-before-arrival", boat(lead_time=days * DAY)).verdict is expected


def test_a_part_of_which_nobody_knows_how_long_it_takes_cannot_tell() -> None:
    found = sure("parts-before-arrival", boat(lead_time=math.nan))
    assert found.verdict is Verdict.CANNOT_TELL
    assert "no lead time of module" in found.note


@pytest.mark.parametrize(
    ("limit", "expected"), [("3 300 USD", Verdict.NEAR), ("3 299 USD", Verdict.FAILS), ("6 000 USD", Verdict.HOLDS)]
)
def test_the_parts_alone_are_converted_for_their_limit_too(limit: str, expected: Verdict) -> None:
    found = sure("price-limit", boat(limit, rates=(Rate("USD", 1.1, "2026-11-20"),)))
    assert found.verdict is expected
    assert found.note == "in USD; 1.1 USD for 1 EUR on 2026-11-20"
