"""Prices in the catalogue: invented, whole where they are needed, in one currency."""

from __future__ import annotations

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue.generator import Generator
from anchorwatt.catalogue.part import CURRENCY

BOUGHT = (
    "air_handler",
    "alternator",
    "battery_module",
    "belt",
    "charger",
    "chilled_water_unit",
    "condensing_unit",
    "dc_dc",
    "generator",
    "inverter",
    "self_contained_unit",
    "solar_panel",
    "transformer",
)


@pytest.mark.parametrize("kind", BOUGHT)
def test_every_part_that_a_design_buys_has_a_price(kind: str) -> None:
    assert [row.name for row in catalogue.rows(kind).values() if row.price is None] == []


@pytest.mark.parametrize("kind", catalogue.kinds())
def test_all_prices_are_in_one_currency(kind: str) -> None:
    for row in catalogue.rows(kind).values():
        assert row.price is None or row.price.currency == CURRENCY
        assert row.price is None or row.price.amount > 0


def test_services_are_in_that_currency_too() -> None:
    for row in catalogue.rows("generator").values():
        assert isinstance(row, Generator)
        assert row.service_price.currency == CURRENCY


@pytest.mark.parametrize("kind", ["air_handler", "condensing_unit", "generator", "self_contained_unit"])
def test_more_of_the_same_costs_more(kind: str) -> None:
    prices = [row.price.amount for row in catalogue.rows(kind).values() if row.price is not None]
    assert prices == sorted(prices)
