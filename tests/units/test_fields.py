"""Quantities as fields of pydantic models."""

from __future__ import annotations

import json
import subprocess
import sys
from typing import Annotated, Any

import jsonschema
import pytest
from pydantic import BaseModel, ConfigDict, Field, ValidationError

from anchorwatt.units import DIMENSIONS, Quantity, fields, parse
from anchorwatt.units.fields import (
    Area,
    ClockTime,
    Gauge,
    HeatFlow,
    Length,
    Power,
    Price,
    Share,
    Temperature,
    above,
    gathered,
    within,
)


class Boat(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")

    length: Annotated[Length, within("0.5 m", "100 m")] = Field(description="Over all.")
    window: Annotated[Area, above("0 m²")] | None = None
    set_point: Annotated[Temperature, within("15 °C", "32 °C")] = Field(default=parse("76 °F", "temperature"))
    reserve: Annotated[Share, within(None, "90 %")] = parse("20 %", "share")
    cooling: HeatFlow = parse("24 kBtu/h", "heat flow")
    lengths: tuple[Annotated[Length, within("0 m")], ...] = ()
    night: ClockTime | None = None
    price: Price | None = None
    cable: Gauge | None = None


FULL = {
    "length": "46 ft",
    "window": "3 ft²",
    "set_point": "75 °F",
    "reserve": "15 %",
    "cooling": "2 ton",
    "lengths": ["6 ft 4 in", "12 mm"],
    "night": "21:30",
    "price": "65 000 USD",
    "cable": "4/0 AWG",
}


def problem(**wrong: object) -> dict[str, Any]:
    with pytest.raises(ValidationError) as caught:
        Boat(**{**FULL, **wrong})
    [error] = caught.value.errors()
    assert error["type"] == "quantity"
    assert error["msg"] == f"found {error['ctx']['found']}; allowed: {error['ctx']['allowed']}"
    return dict(error["ctx"])


def test_texts_become_quantities() -> None:
    boat = Boat.model_validate(FULL)
    assert float(boat.length) == pytest.approx(14.0208)
    assert boat.length.text == "46 ft"
    assert boat.cooling.dimension == "heat flow"


@pytest.mark.parametrize("mode", ["python", "json"])
def test_what_was_written_is_dumped_and_read_again(mode: Any) -> None:
    boat = Boat.model_validate(FULL)
    dumped = boat.model_dump(mode=mode)
    assert json.loads(json.dumps(dumped)) == FULL
    assert Boat.model_validate(dumped) == boat


def test_defaults_are_dumped_as_texts_too() -> None:
    assert Boat.model_validate({"length": "46 ft"}).model_dump()["set_point"] == "76 °F"


@pytest.mark.parametrize(
    ("wrong", "found", "allowed"),
    [
        ({"length": 14}, "the bare number 14 without a unit", 'a length such as "12 ft"'),
        ({"length": 14.5}, "the bare number 14.5 without a unit", "in one of mm, cm, m"),
        ({"length": "14"}, '"14", a bare number without a unit', "a length"),
        ({"length": None}, "nothing without a unit", "a length"),
        ({"length": "14 V"}, '"14 V", which is a voltage', "a length"),
        ({"length": "1 ft"}, '"1 ft"', "from 0.5 m to 100 m (1.64 to 328.1 ft)"),
        ({"length": "101 m"}, '"101 m"', "from 0.5 m to 100 m"),
        ({"window": "-1 ft²"}, '"-1 ft²"', "an area not below zero"),
        ({"window": "0 ft²"}, '"0 ft²"', "more than 0 m²"),
        ({"set_point": "50 °F"}, '"50 °F"', "from 15 °C to 32 °C (59 to 89.6 °F)"),
        ({"reserve": "95 %"}, '"95 %"', "at most 90 %"),
        ({"lengths": ["-1 m"]}, '"-1 m"', "at least 0 m"),
        ({"cooling": parse("2 kWh", "energy")}, '"2 kWh", which is an energy', "a heat flow"),
        ({"night": 1290}, "the bare number 1290", "a time of day"),
        ({"price": "65000"}, '"65000"', "currency code"),
        ({"cable": "9/0 AWG"}, '"9/0 AWG"', "a wire gauge"),
    ],
)
def test_a_fault_says_what_was_found_and_what_is_allowed(wrong: dict[str, object], found: str, allowed: str) -> None:
    told = problem(**wrong)
    assert told["found"] == found
    assert allowed in told["allowed"]


def test_limits_themselves_are_allowed() -> None:
    assert Boat.model_validate({"length": "100 m"}).length == 100.0
    assert Boat.model_validate({"length": "0.5 m"}).length == 0.5


def test_a_quantity_of_a_kindred_dimension_is_taken() -> None:
    boat = Boat.model_validate({"length": "46 ft", "cooling": parse("2 kW", "power")})
    assert (boat.cooling.text, boat.cooling.dimension) == ("2 kW", "heat flow")


def test_a_default_stands_in_the_schema_as_a_text() -> None:
    assert gathered(SCHEMA)["properties"]["set_point"]["default"] == "76 °F"
    assert gathered(SCHEMA)["properties"]["cooling"]["default"] == "24 kBtu/h"


def test_a_bare_quantity_takes_only_a_quantity() -> None:
    class Note(BaseModel):
        value: Quantity

    assert Note(value=parse("46 ft", "length")).model_dump() == {"value": "46 ft"}
    with pytest.raises(ValidationError, match="instance of Quantity"):
        Note(value=14.0)


def test_a_range_needs_a_quantity_to_stand_on() -> None:
    with pytest.raises(TypeError, match="a range stands on a quantity"):

        class Wrong(BaseModel):
            count: Annotated[float, within("0 m", "1 m")]


def test_a_limit_that_is_no_quantity_is_found_when_the_model_is_made() -> None:
    with pytest.raises(ValueError, match="a bare number without a unit"):

        class Wrong(BaseModel):
            power: Annotated[Power, within("0", "1")]


SCHEMA = Boat.model_json_schema()


@pytest.mark.parametrize("schema", [SCHEMA, gathered(SCHEMA)], ids=["as pydantic makes it", "gathered"])
def test_the_schema_is_one_and_takes_what_the_model_takes(schema: dict[str, Any]) -> None:
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(FULL, schema)


@pytest.mark.parametrize("schema", [SCHEMA, gathered(SCHEMA)], ids=["as pydantic makes it", "gathered"])
@pytest.mark.parametrize(
    "wrong",
    [{"length": 14}, {"length": "14"}, {"length": "14 V"}, {"night": "9 pm"}, {"price": "5"}, {"cable": "8"}],
)
def test_the_schema_marks_a_mistake(schema: dict[str, Any], wrong: dict[str, object]) -> None:
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**FULL, **wrong}, schema)


def test_a_gathered_schema_tells_what_is_allowed_and_defines_each_kind_once() -> None:
    schema = gathered(SCHEMA)
    units = "mm, cm, m, km, in, ft, yd, nmi"
    assert schema["properties"]["length"] == {
        "$ref": "#/$defs/length",
        "description": f'Over all. A length such as "12 ft", in one of {units}; from 0.5 m to 100 m.',
        "title": "Length",
    }
    assert set(schema["$defs"]) == {
        "area", "clock-time", "heat-flow", "length", "money", "share", "temperature", "wire-gauge",
    }  # fmt: skip
    assert json.dumps(schema, ensure_ascii=False).count('"pattern"') == len(schema["$defs"])
    assert schema["$defs"]["length"]["examples"] == ["12 ft"]


def test_a_gathered_schema_is_gathered_for_good() -> None:
    assert gathered(gathered(SCHEMA)) == gathered(SCHEMA)


def test_there_is_a_field_for_every_dimension() -> None:
    made = {
        kind.__metadata__[0].dimension
        for kind in vars(fields).values()
        if hasattr(kind, "__metadata__") and kind.__metadata__[0].dimension
    }
    assert made == set(DIMENSIONS)


def test_units_alone_load_neither_pydantic_nor_numpy() -> None:
    code = "import sys, anchorwatt.units; print([m for m in ('pydantic', 'numpy') if m in sys.modules])"
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "[]"
