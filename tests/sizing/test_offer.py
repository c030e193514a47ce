"""The offer: money to the cent, both ways, and nothing unknown counted as nothing."""

from __future__ import annotations

import datetime
import math
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.design.specification import Item, Offer, Rate, Specification, Task
from anchorwatt.sizing.offer import CENT, Cable, cents, exchanged, priced, with_commission
from tests.simulation import boats

DAY = 86_400.0
BOAT = boats.boat(1)
OFFER = Offer("EUR", "", (), 0.2, 0.25, 0.05, 0.19, (Task("fit", 10.5, 80.0),), 0.03, (), "2027-03-01", ())


def item(tag: str, name: str, count: int, price: float, currency: str = "EUR", lead_time: float = 14 * DAY) -> Item:
    made = boats.item("dc.bank.module", "battery_module", name, count, 40.0, price, currency, -1)
    return replace(made, tag=tag, lead_time=lead_time)


def boat(*items: Item, **changes: object) -> Specification:
    return replace(BOAT, items=items, offer=replace(OFFER, **changes))  # type: ignore[arg-type]


MODULES, BELT = item("G1", "module", 2, 1000.0), item("V1", "belt", 1, 33.33)


def test_a_job_worked_by_hand() -> None:
    made = priced(boat(MODULES, BELT))
    told = {
        "parts": made.parts_cost,  # 2 × 1000.00 + 33.33
        "consumables": made.consumables,  # 3 % of that: 60.9999
        "labour": made.labour_cost,  # 10.5 × 80
        "parts margin": made.parts_margin,  # 20 % of 2094.33: 418.866
        "labour margin": made.labour_margin,  # 25 % of 840
        "net": made.net,
        "price": made.price,  # 3563.20 / 0.95: 3750.7368
        "commission": made.commission,
        "tax": made.tax,  # 19 %: 712.6406
        "total": made.total,
    }
    assert {key: str(amount) for key, amount in told.items()} == {
        "parts": "2033.33",
        "consumables": "61.00",
        "labour": "840.00",
        "parts margin": "418.87",
        "labour margin": "210.00",
        "net": "3563.20",
        "price": "3750.74",
        "commission": "187.54",
        "tax": "712.64",
        "total": "4463.38",
    }


def test_what_the_customer_sees_makes_the_price_exactly() -> None:
    made = priced(boat(MODULES, BELT))
    assert made.customer_parts + made.customer_labour == made.price


def test_like_parts_stand_on_one_line_and_spares_are_bought_too() -> None:
    made = priced(boat(MODULES, replace(MODULES, tag="G2", count=1), spares=(("G2", 2),)))
    (line,) = made.lines
    assert line.tags == ("G1", "G2")
    assert line.count == 3
    assert line.spares == 2
    assert line.quantity == 5
    assert line.cost == Decimal("5000.00")


def test_another_currency_is_converted_with_the_days_rate() -> None:
    made = priced(boat(item("G1", "module", 3, 100.0, "USD"), rates=(Rate("USD", 1.08, "2026-11-20"),)))
    (line,) = made.lines
    assert line.price == Decimal("92.59")
    assert line.cost == Decimal("277.77")
    assert made.rates_used == (Rate("USD", 1.08, "2026-11-20"),)


@pytest.mark.parametrize(
    ("part", "told"),
    [
        (item("G1", "module", 1, math.nan, ""), "module (no price)"),
        (item("G1", "module", 1, 100.0, "USD"), "module (no rate for USD)"),
    ],
)
def test_what_has_no_price_is_named_and_not_counted_as_nothing(part: Item, told: str) -> None:
    made = priced(boat(part, BELT))
    assert made.unknown == (told,)
    assert not made.complete
    assert made.lines[0].cost is None


def test_labour_without_a_rate_is_named() -> None:
    made = priced(boat(BELT, tasks=(Task("fit", 3.0, math.nan),)))
    assert made.unknown == ("labour: fit (no rate)",)


def test_cables_are_bought_by_the_metre_when_they_are_sized() -> None:
    made = priced(boat(BELT), [Cable("70 mm²", 12.34, 11.2, "EUR"), Cable("2.5 mm²", 100.0, 0.46, "EUR")])
    assert [line.cost for line in made.lines[1:]] == [Decimal("137.76"), Decimal("46.00")]


def test_an_order_date_is_arrival_less_lead_time_less_a_week() -> None:
    made = priced(boat(item("G1", "module", 1, 1.0, lead_time=21.2 * DAY)))
    assert made.lines[0].order_by == datetime.date(2027, 3, 1) - datetime.timedelta(days=22 + 7)


@pytest.mark.parametrize(("today", "days"), [("2027-02-08", []), ("2027-02-09", [1]), ("2027-03-01", [21])])
def test_what_is_too_late_on_a_day(today: str, days: list[int]) -> None:
    made = priced(boat(MODULES))
    assert [one.by for one in made.late(datetime.date.fromisoformat(today))] == days


def test_parts_without_a_lead_time_are_named_and_have_no_date() -> None:
    made = priced(boat(item("G1", "module", 1, 1.0, lead_time=math.nan)))
    assert made.without_lead_time == ("module",)
    assert made.lines[0].order_by is None
    assert made.late(datetime.date(2030, 1, 1)) == ()


def test_without_parts_and_labour_the_price_is_nothing() -> None:
    made = priced(boat(tasks=()))
    assert made.total == made.customer_parts == made.customer_labour == Decimal(0)


def test_exchange_goes_by_the_offers_currency() -> None:
    offer = replace(OFFER, rates=(Rate("USD", 1.08, "2026-11-20"), Rate("GBP", 0.9, "2026-11-19")))
    amount, used = exchanged(90.0, "GBP", "USD", offer)
    assert amount == pytest.approx(108.0)
    assert [rate.currency for rate in used] == ["GBP", "USD"]
    assert exchanged(5.0, "GBP", "GBP", offer) == (5.0, ())
    assert math.isnan(exchanged(5.0, "EUR", "SEK", offer)[0])


MONEY = st.decimals(min_value=Decimal("0.01"), max_value=Decimal(1_000_000), places=2)
SHARES = st.floats(0.0, 0.5)


@st.composite
def offers(draw: st.DrawFn) -> Specification:
    items = [
        item(f"G{number}", f"part {number}", draw(st.integers(1, 20)), float(draw(MONEY)))
        for number in range(draw(st.integers(1, 4)))
    ]
    tasks = (Task("fit", draw(st.floats(0.0, 500.0)), float(draw(MONEY))),)
    return boat(
        *items,
        tasks=tasks,
        parts_margin=draw(SHARES),
        labour_margin=draw(SHARES),
        commission=draw(SHARES),
        tax=draw(SHARES),
        consumables=draw(SHARES),
    )


@given(offers(), st.data())
def test_the_total_rises_with_any_price(before: Specification, data: st.DataObject) -> None:
    number = data.draw(st.integers(0, len(before.items) - 1))
    dearer = replace(before.items[number], price=before.items[number].price + float(data.draw(MONEY)))
    items = (*before.items[:number], dearer, *before.items[number + 1 :])
    assert priced(replace(before, items=items)).total > priced(before).total


@given(offers())
def test_every_sum_is_of_what_is_shown(made: Specification) -> None:
    found = priced(made)
    assert found.parts_cost == sum(line.cost for line in found.lines if line.cost is not None)
    assert found.cost + found.parts_margin + found.labour_margin + found.commission + found.tax == found.total
    assert found.customer_parts + found.customer_labour + found.tax == found.total
    for amount in (found.parts_cost, found.consumables, found.labour_cost, found.net, found.price, found.tax):
        assert amount == cents(amount)


@given(MONEY, st.decimals(min_value=Decimal(0), max_value=Decimal("0.5"), places=4))
def test_the_commission_is_its_share_of_the_price_and_leaves_the_net(net: Decimal, commission: Decimal) -> None:
    price = with_commission(net, commission)
    assert price >= net
    assert abs(price * (1 - commission) - net) <= CENT / 2
    assert abs((price - net) - price * commission) <= CENT / 2


def test_parts_of_two_suppliers_are_two_lines() -> None:
    other = replace(item("G2", "module", 1, 1000.0), supplier="Ropewalk")
    found = priced(boat(MODULES, other)).lines
    assert [(line.tags, line.supplier) for line in found] == [(("G1",), ""), (("G2",), "Ropewalk")]


def test_a_cable_keeps_its_supplier() -> None:
    made = priced(boat(BELT), [Cable("70 mm²", 12.34, 11.2, "EUR", supplier="Ropewalk")])
    assert made.lines[-1].supplier == "Ropewalk"
