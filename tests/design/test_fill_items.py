"""The parts of a design, one by one."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from tests.design.strategies import as_text, designs
from tests.design.test_specify import minimal

from anchorwatt import catalogue, design
from anchorwatt.design.specification import Item, Specification


def specified(**changes: Any) -> Specification:
    return design.specify(design.parse(as_text(minimal(**changes))))


def item(made: Specification, key: str) -> Item:
    (one,) = [one for one in made.items if one.key == key]
    return one


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(designs())
def test_every_item_is_a_key_of_the_file_and_a_kind_of_the_catalogue(drawn: dict[str, Any]) -> None:
    read = design.parse(as_text(drawn))
    made = design.specify(read)
    assert len({one.key for one in made.items}) == len(made.items)
    for one in made.items:
        assert design.origin(read, one.key) in ("typed", "catalogue")
        assert one.kind in catalogue.kinds()
        assert one.count >= 1
        assert one.mass >= 0.0
        assert (one.currency == "") is math.isnan(one.price)
        assert -1 <= one.cabin < len(made.cabins)


def test_the_bank_is_as_many_modules_as_it_is_built_of() -> None:
    made = specified()
    modules = item(made, "dc.bank.module")
    assert modules.count == made.bank.series * made.bank.parallel
    assert modules.count * modules.mass == pytest.approx(made.bank.mass)
    assert modules.kind == "battery_module"


def test_a_price_of_ones_own_takes_the_place_of_the_catalogues() -> None:
    made = specified(ac={"inverter": {"unit": {"like": "inverter 24 V 3 kW", "price": "1 999 USD"}, "count": 2}})
    inverter = item(made, "ac.inverter.unit")
    assert (inverter.price, inverter.currency, inverter.count) == (1999.0, "USD", 2)


def test_a_part_typed_in_full_may_have_no_price() -> None:
    record = {
        key: value for key, value in catalogue.part.raw("inverter", "inverter 24 V 3 kW").items() if key != "price"
    }
    inverter = item(specified(ac={"inverter": {"unit": record}}), "ac.inverter.unit")
    assert math.isnan(inverter.price)
    assert inverter.currency == ""


def test_what_stands_in_a_compartment_says_so() -> None:
    made = specified(ac={"inverter": {"unit": "inverter 24 V 3 kW", "cabin": "saloon"}})
    assert made.cabins[item(made, "ac.inverter.unit").cabin].name == "saloon"
    assert made.cabins[item(made, "cooling.plant.handlers.cabin.unit").cabin].name == "cabin"
    assert item(made, "cooling.plant.unit").cabin == -1


def test_what_a_design_is_only_compared_with_is_no_item() -> None:
    alternative = {"units": {"cabin": {"unit": "self-contained 7 kBtu/h", "cabin": "cabin"}}}
    cooling = {**minimal()["cooling"], "alternative": alternative, "chilled_water": {"unit": "chiller 16 kBtu/h"}}
    made = specified(cooling=cooling, generator="diesel set 6 kW 50 Hz")
    assert made.items == specified().items
