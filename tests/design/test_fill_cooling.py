"""The plant and what it is compared with, filled in."""

from __future__ import annotations

import dataclasses
import math
from typing import Any

from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import design
from anchorwatt.design.specification import Specification


def made(plant: dict[str, Any] | None = None, **cooling: Any) -> Specification:
    return design.specify(design.parse(as_text(minimal(cooling={**minimal()["cooling"], **cooling} | (plant or {})))))


def test_fan_coils_stand_in_place_of_the_air_handlers_unless_they_are_typed() -> None:
    it = made(chilled_water={"unit": "chiller 16 kBtu/h"})
    assert it.chilled is not None
    (coil,), (handler,) = it.chilled.fan_coils, it.plant.handlers
    assert coil == dataclasses.replace(handler, approach=2.0)
    assert "cooling.chilled_water.fan_coils" in {one.key for one in it.estimates}

    coils = {"saloon coil": {"unit": "air handler 10 kBtu/h", "cabin": "saloon"}}
    it = made(chilled_water={"unit": "chiller 16 kBtu/h", "fan_coils": coils})
    assert it.chilled is not None
    assert [(coil.name, coil.cabin, coil.approach) for coil in it.chilled.fan_coils] == [("saloon coil", 0, 2.0)]
    assert "cooling.chilled_water.fan_coils" not in {one.key for one in it.estimates}


def test_a_chiller_boils_its_refrigerant_below_its_water_and_above_frost() -> None:
    chilled = made(chilled_water={"unit": "chiller 24 kBtu/h"}).chilled
    assert chilled is not None
    assert chilled.supply_temperature - chilled.evaporator_approach >= chilled.circuit.lowest_evaporating


def test_a_boat_without_chilled_water_has_none() -> None:
    assert made().chilled is None


def test_the_safety_record_is_that_of_the_plants_refrigerant() -> None:
    assert made().plant.safety.name == "R-410A"
    unit = {"like": "variable-speed 12 kBtu/h", "refrigerant": "R32"}
    safety = made({"plant": {**minimal()["cooling"]["plant"], "unit": unit}}).plant.safety
    assert (safety.name, safety.safety_class, safety.flammable_limit) == ("R-32", "A2L", 0.307)


def test_the_line_to_a_handler_is_half_of_the_boats_length() -> None:
    (handler,) = made().plant.handlers
    assert math.isclose(handler.line_length, 0.5 * 46 * 0.3048)
