"""Outlets, ducts and grilles that nobody typed."""

from __future__ import annotations

import math
from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import catalogue, design
from anchorwatt.design.specification import Handler, Specification


def specified(unit: Any = "air handler 6 kBtu/h", **handler: Any) -> Specification:
    entry = {"unit": unit, "cabin": "cabin", **handler}
    plant = {"unit": "variable-speed 12 kBtu/h", "handlers": {"main": entry}}
    return design.specify(design.parse(as_text(minimal(cooling={"plant": plant}))))


def made(unit: Any = "air handler 6 kBtu/h", **handler: Any) -> Handler:
    (one,) = specified(unit, **handler).plant.handlers
    return one


@pytest.mark.parametrize("unit", catalogue.names("air_handler"))
def test_an_estimated_duct_is_the_smallest_that_keeps_3_5_metres_a_second(unit: str) -> None:
    handler = made(unit)
    assert math.isclose(sum(outlet.share for outlet in handler.outlets), 1.0)
    for outlet in handler.outlets:
        assert outlet.cabin == handler.cabin
        speed = handler.airflow * outlet.share / (math.pi / 4.0 * outlet.duct.diameter**2)
        smaller = {0.1: 0.075, 0.125: 0.1, 0.15: 0.125, 0.175: 0.15, 0.2: 0.175, 0.25: 0.2}[outlet.duct.diameter]
        assert speed <= 3.5
        assert speed * (outlet.duct.diameter / smaller) ** 2 > 3.5


@pytest.mark.parametrize(("unit", "count"), [("air handler 10 kBtu/h", 1), ("air handler 12 kBtu/h", 2)])
def test_a_large_handler_has_as_many_outlets_as_the_largest_usual_duct_asks_for(unit: str, count: int) -> None:
    assert len(made(unit).outlets) == count


def test_air_leaves_a_grille_more_slowly_where_people_sleep() -> None:
    handler = made(outlets={"berth": {"cabin": "cabin"}, "saloon": {"cabin": "saloon"}})
    for outlet, velocity in zip(handler.outlets, (1.5, 1.8), strict=True):
        free = outlet.duct.grille_area * outlet.duct.grille_free_share
        assert math.isclose(handler.airflow * outlet.share / free, velocity)
    assert [outlet.duct.length for outlet in handler.outlets] == [1.5, 3.0]
    assert math.isclose(handler.return_area, 1.3 * sum(outlet.duct.grille_area for outlet in handler.outlets))


@pytest.mark.parametrize(
    ("typed", "shares"),
    [
        ([None, None, None], [1 / 3, 1 / 3, 1 / 3]),
        (["60 %", None, None], [0.6, 0.2, 0.2]),
        (["33 %", "33 %", "34 %"], [0.33, 0.33, 0.34]),
        (["33.3 %", "33.3 %", "33.3 %"], [1 / 3, 1 / 3, 1 / 3]),
    ],
)
def test_shares_left_out_are_equal_parts_of_what_is_left(typed: list[str | None], shares: list[float]) -> None:
    outlets = {
        f"outlet {number}": {"cabin": "cabin"} if share is None else {"cabin": "cabin", "share": share}
        for number, share in enumerate(typed)
    }
    handler = made(outlets=outlets)
    assert [outlet.share for outlet in handler.outlets] == pytest.approx(shares)


def test_what_is_typed_of_a_duct_is_taken() -> None:
    duct = {
        "kind": "smooth rigid duct",
        "length": "8 ft",
        "diameter": "6 in",
        "bends": 3,
        "grille": "wooden louvre",
        "grille_area": "60 in²",
    }
    handler = made(
        outlets={"berth": {"cabin": "cabin", "duct": duct}},
        return_grille={"kind": "open mouth", "area": "0.2 m2"},
        line_length="5 m",
    )
    (outlet,) = handler.outlets
    assert (outlet.duct.length, outlet.duct.diameter) == (2.4384, 0.1524)
    assert (outlet.duct.bends, outlet.duct.roughness, outlet.duct.stretch_factor) == (3.0, 0.09e-3, 1.0)
    assert (outlet.duct.grille_free_share, outlet.duct.grille_loss) == (0.5, 2.0)
    assert (handler.return_area, handler.return_free_share, handler.line_length) == (0.2, 1.0, 5.0)


def test_ducts_that_nobody_typed_are_one_line_on_the_list() -> None:
    keys = [one.key for one in specified().estimates if ".handlers.main." in one.key]
    assert sorted(key.rpartition(".")[2] for key in keys) == [
        "band", "line_length", "outlets", "return_grille",
    ]  # fmt: skip


def test_a_duct_of_which_something_is_typed_has_a_line_for_the_rest_of_it() -> None:
    outlets = {"berth": {"cabin": "cabin", "duct": {"length": "2 m"}}}
    above = "cooling.plant.handlers.main.outlets.berth."
    keys = {one.key.removeprefix(above) for one in specified(outlets=outlets).estimates if one.key.startswith(above)}
    assert keys == {"share", "duct.kind", "duct.diameter", "duct.bends", "duct.grille", "duct.grille_area"}


def test_a_handler_draws_its_air_where_its_thermostat_is() -> None:
    entry = {"unit": "air handler 6 kBtu/h", "cabin": "cabin", "thermostat": "saloon"}
    cooling = {"plant": {"unit": "variable-speed 12 kBtu/h", "handlers": {"main": entry}}}
    plan = [{**minimal()["plan"][0], "cool": {"saloon": "76 °F", "cabin": "76 °F"}}]
    (handler,) = design.specify(design.parse(as_text(minimal(cooling=cooling, plan=plan)))).plant.handlers
    assert handler.cabin == 0
    assert [outlet.cabin for outlet in handler.outlets] == [1]
