"""The offer section: what is usual where nothing is typed, and what is refused."""

from __future__ import annotations

import math

import pytest
from tests.design.sample import SAMPLE

from anchorwatt import design
from anchorwatt.design.fill_offer import USUAL_TASKS
from anchorwatt.design.specification import Offer, Rate, Task
from anchorwatt.errors import BadDesign


def offer(text: str = "") -> Offer:
    return design.specify(design.parse(f"{SAMPLE}\n{text}")).offer


def problem(text: str) -> str:
    with pytest.raises(BadDesign) as refused:
        design.parse(f"{SAMPLE}\n{text}", "boat.yaml")
    (told,) = refused.value.problems
    return str(told)


def test_a_file_without_an_offer_gets_usual_figures_told_in_one_line() -> None:
    made = design.specify(design.parse(SAMPLE))
    assert made.offer.tasks
    (told,) = [one for one in made.estimates if one.key.split(".")[0] == "offer"]
    assert (told.key, told.source) == ("offer", "from memory")


def test_what_an_offer_leaves_out_is_listed_key_by_key() -> None:
    made = design.specify(design.parse(f"{SAMPLE}\noffer: {{tax: 19 %, currency: EUR}}\n"))
    keys = {one.key for one in made.estimates}
    assert {"offer.parts_margin", "offer.commission", "offer.labour.bank and its boxes.hours"} <= keys
    assert not {"offer.tax", "offer.currency"} & keys


def test_labour_grows_with_the_parts() -> None:
    made = design.specify(design.parse(SAMPLE))
    more = design.specify(design.edit(design.parse(SAMPLE), "dc.bank.parallel", 3))
    name = "bank and its boxes"
    hours = [next(task.hours for task in one.offer.tasks if task.name == name) for one in (made, more)]
    (usual,) = [task for task in USUAL_TASKS if task.name == name]
    added = sum(item.count for item in more.items) - sum(item.count for item in made.items)
    assert hours[1] - hours[0] == pytest.approx(added * usual.each)


def test_labour_of_parts_that_are_not_there_is_left_out() -> None:
    names = [task.name for task in offer().tasks]
    assert ("solar panels" in names) == ("solar:" in SAMPLE)


def test_typed_labour_stands_for_the_usual_and_beside_it() -> None:
    found = offer("offer: {labour: {trials and papers: {hours: 9}, paint: {hours: 4, rate: 50 EUR}}}\n").tasks
    assert Task("trials and papers", 9.0, 75.0) in found
    assert Task("paint", 4.0, 50.0) in found


def test_own_tasks_come_before_trials_and_papers() -> None:
    names = [task.name for task in offer("offer: {labour: {varnish: {hours: 2}, paint: {hours: 4}}}\n").tasks]
    assert names[-3:] == ["varnish", "paint", "trials and papers"]


def test_a_task_keeps_the_hold_points_that_it_names() -> None:
    found = offer("offer: {labour: {close lockers: {hours: 2, hold_points: [joinery, bank]}}}\n").tasks
    (task,) = [one for one in found if one.name == "close lockers"]
    assert task.hold_points == ("joinery", "bank")


def test_a_hold_point_that_there_is_not_is_told_with_those_there_are() -> None:
    told = problem("offer: {labour: {paint: {hours: 2, hold_points: [banc]}}}\n")
    assert "offer.labour.paint.hold_points" in told
    assert "shore power" in told


def test_rates_turn_labour_into_the_offers_currency() -> None:
    text = (
        "offer: {currency: USD, rates: {EUR: {per_unit: 0.5, date: 2026-11-20}}, labour: {x: {hours: 1, rate: 40 EUR}}}"
    )
    found = offer(text)
    assert found.rates == (Rate("EUR", 0.5, "2026-11-20"),)
    assert {task.rate for task in found.tasks} == {150.0, 80.0}


def test_without_a_rate_usual_labour_has_no_price() -> None:
    assert all(math.isnan(task.rate) for task in offer("offer: {currency: USD}\n").tasks)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("{rates: {USD: {per_unit: 1.08}}}", "offer.rates.USD.date: found nothing; allowed: date, which must be there"),
        ("{rates: {USD: {per_unit: 1.08, date: 20 November}}}", 'found "20 November"; allowed: a date, year first'),
        ("{rates: {USD: {per_unit: 1.08, date: 2026-02-30}}}", "which no calendar has"),
        ("{rates: {USD: {per_unit: 0, date: 2026-02-20}}}", "allowed: a number above 0"),
        ("{rates: {XYZ: {per_unit: 1, date: 2026-02-20}}}", "allowed: a currency code of ISO 4217"),
        ("{rates: {EUR: {per_unit: 1, date: 2026-02-20}}}", "found a rate for EUR, which the offer is in"),
        ("{currency: euro}", "allowed: a currency code of ISO 4217"),
        ("{labour: {paint: {rate: 50 EUR}}}", "found no hours of “paint”"),
        ("{labour: {paint: {hours: 2, rate: 50}}}", "offer.labour.paint.rate: found the bare number 50 without a cur"),
        ("{labour: {paint: {hours: 2, rate: 50 USD}}}", "without a rate for USD"),
        ("{labour: {paint: {hours: -2}}}", "allowed: a number of at least 0"),
        ("{spares: {X9: 1}}", "found no part with the tag “X9”"),
        ("{spares: {G1: 0}}", "allowed: a number of at least 1"),
        ("{tax: 19}", "offer.tax: found the bare number 19"),
        ("{arrival: soon}", "offer.arrival: found"),
        ("{packages: {more: {changes: {bank.parallel: 3}}}}", "found no key “bank.parallel”"),
        ("{packages: {more: {changes: {}}}}", "offer.packages.more.changes: found"),
        ("{margin: 3 %}", "found an unknown key “margin”"),
    ],
)
def test_what_is_wrong_is_told_with_its_line(text: str, told: str) -> None:
    found = problem(f"offer: {text}\n")
    assert told in found
    assert found.startswith(f"boat.yaml:{SAMPLE.count(chr(10)) + 2}: offer.")
