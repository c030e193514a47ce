"""Every rule about the offer: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.checks import Evidence, Finding, Verdict, rules
from anchorwatt.design.specification import Offer, Rate, Specification, Task
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.offer import priced
from tests.checks.cases import Case
from tests.simulation import boats

DAY = 86_400.0
TODAY = "2026-11-23"
OFFER = Offer("EUR", (), 0.2, 0.0, 0.0, 0.1, (Task("fit", 10.0, 50.0),), 0.0, (), "2027-03-01", ())


def boat(
    limit: str = "4 500 EUR", lead_time: float = 30 * DAY, price: float = 1000.0, **offer: object
) -> Specification:
    """Parts of 3000 and labour of 500: with margin and tax 4510 in the offer's currency."""
    plain = boats.boat(1)
    part = boats.item("dc.bank.module", "battery_module", "module", 3, 40.0, price, "EUR", -1)
    return replace(
        plain,
        items=(replace(part, lead_time=lead_time),),
        brief=replace(plain.brief, price_limit=limit),
        offer=replace(OFFER, **offer),  # type: ignore[arg-type]
    )


def rate(date: str) -> Specification:
    return boat(rates=(Rate("USD", 1.1, date),))


CASES = {
    "whole-price-limit": Case(boat("4 510 EUR"), boat("4 509.99 EUR")),
    "exchange-rate-age": Case(rate("2026-10-24"), rate("2026-10-23")),
    "parts-before-arrival": Case(boat(lead_time=91 * DAY), boat(lead_time=92 * DAY)),
}


def finding(name: str, made: Specification, today: str = TODAY) -> Finding | None:
    evidence = Evidence(made, Simulation(made), today=today)
    vars(evidence)["offer"] = priced(made)  # cables left out: the figures stay round
    (found,) = [rule.find(evidence) for rule in rules() if rule.id == name]
    return found


def sure(name: str, made: Specification, today: str = TODAY) -> Finding:
    found = finding(name, made, today)
    assert found is not None
    assert found.source
    assert found.remedy
    return found


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    assert sure(name, CASES[name].holds).verdict in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    assert sure(name, CASES[name].fails).verdict is Verdict.FAILS


def test_every_rule_of_the_subject_has_its_cases() -> None:
    assert {rule.id for rule in rules() if rule.measure.__module__ == "anchorwatt.checks.offer"} == {*CASES}


def test_a_limit_in_another_currency_is_held_at_the_offers_rate() -> None:
    found = sure("whole-price-limit", boat("5 000 USD", rates=(Rate("USD", 1.1, "2026-11-20"),)))
    assert found.value == pytest.approx(4961.0)
    assert "1.1 USD for 1 EUR on 2026-11-20" in found.note
    assert sure("whole-price-limit", boat("5 000 USD")).verdict is Verdict.CANNOT_TELL


def test_cables_are_in_the_whole_price() -> None:
    made = boat()
    evidence = Evidence(made, Simulation(made))
    assert evidence.offer.cables_counted
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
def test_without_a_day_of_the_offer_nobody_can_tell(name: str) -> None:
    found = sure(name, rate("2026-11-20"), today="")
    assert found.verdict is Verdict.CANNOT_TELL
    assert "offer.date" in found.note


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
