"""The JSON Schema that editors use."""

from __future__ import annotations

from importlib import resources
from typing import Any

import jsonschema
import pytest
from hypothesis import HealthCheck, given, settings
from tests.design.sample import SAMPLE, changed
from tests.design.strategies import as_text, designs

from anchorwatt import design
from anchorwatt.design.document import scan
from anchorwatt.design.file_schema import schema_text


@pytest.fixture(scope="module")
def validator() -> jsonschema.Draft202012Validator:
    generated = design.schema()
    jsonschema.Draft202012Validator.check_schema(generated)
    return jsonschema.Draft202012Validator(generated)


def test_the_shipped_schema_is_the_one_that_the_types_give() -> None:
    shipped = resources.files("anchorwatt.design").joinpath("anchorwatt.schema.json").read_text(encoding="utf-8")
    assert shipped == schema_text(), "run make docs"


@pytest.mark.parametrize("starter", design.starters())
def test_starters_pass_the_schema(starter: str, validator: jsonschema.Draft202012Validator) -> None:
    validator.validate(scan(design.starter_text(starter)).data)


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(designs())
def test_what_the_reader_takes_the_schema_takes(
    validator: jsonschema.Draft202012Validator, drawn: dict[str, Any]
) -> None:
    validator.validate(scan(as_text(drawn)).data)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("beam: 4 m", "beem: 4 m"),
        ("length: 12 m", "length: 12"),
        ("length: 12 m", "length: 12 kg"),
        ("use: sleeping", "use: bedroom"),
        ("hull: foam-cored, white", "hull: foam-cored, whit"),
        ("unit: inverter 24 V 3 kW", "unit: inverter 24 V 33 kW"),
        ("charge_current: 100 A", "charge_curent: 100 A"),
        ("start: 16:00", "start: 25:00"),
        ("parallel: 2", "parallel: 2.5"),
    ],
)
def test_an_editor_marks_what_the_reader_refuses(
    old: str, new: str, validator: jsonschema.Draft202012Validator
) -> None:
    validator.validate(scan(SAMPLE).data)
    assert list(validator.iter_errors(scan(changed(old, new)).data))


def described(node: Any, path: str = "") -> list[str]:
    """Properties without a description."""
    if isinstance(node, dict):
        bare = [
            f"{path}.{name}"
            for name, field in node.get("properties", {}).items()
            if isinstance(field, dict) and "description" not in field
        ]
        return bare + [one for key, value in node.items() for one in described(value, f"{path}.{key}")]
    if isinstance(node, list):
        return [one for value in node for one in described(value, path)]
    return []


def test_every_key_is_described() -> None:
    assert described(design.schema()) == []
