"""A transformer by itself, or with the compartment that it stands in."""

from __future__ import annotations

import pytest
from tests.design.sample import changed, line_of

from anchorwatt import design
from anchorwatt.errors import BadDesign


def with_transformer(said: str) -> str:
    return changed("  inverter:\n", f"  transformer: {said}\n  inverter:\n")


@pytest.mark.parametrize(
    ("said", "core_loss", "cabin"),
    [
        ("isolation transformer 5 kVA", 45.0, None),
        ("{like: isolation transformer 5 kVA, core_loss: 30 W}", 30.0, None),
        ("{rated_power: 4 kVA, core_loss: 31 W, copper_loss: 99 W, mass: 30 kg}", 31.0, None),
        ("{unit: isolation transformer 5 kVA}", 45.0, None),
        ("{unit: {like: isolation transformer 5 kVA, core_loss: 30 W}, cabin: cabin}", 30.0, "cabin"),
    ],
)
def test_all_forms_are_read(said: str, core_loss: float, cabin: str | None) -> None:
    transformer = design.parse(with_transformer(said)).ac.transformer
    assert transformer is not None
    assert (transformer.unit.core_loss, transformer.cabin) == (core_loss, cabin)


@pytest.mark.parametrize(
    ("said", "key", "found", "allowed"),
    [
        ("isolation transformer 55 kVA", "ac.transformer", "perhaps “isolation transformer 5 kVA”", "12 kVA"),
        ("{unit: isolation transformer 55 kVA}", "ac.transformer.unit", "no transformer", "12 kVA"),
        ("{like: isolation transformer 5 kVA, core_los: 3 W}", "ac.transformer.core_los", "core_loss", "copper_loss"),
        ("{like: isolation transformer 5 kVA, core_loss: 3 V}", "ac.transformer.core_loss", "3 V", "a power"),
        ("{unit: {like: isolation transformer 5 kVA, mass: 3 V}}", "ac.transformer.unit.mass", "3 V", "a mass"),
        ("{unitt: isolation transformer 5 kVA}", "ac.transformer.unitt", "perhaps “unit”", "unit, cabin"),
        ("{cabin: cabin}", "ac.transformer.unit", "nothing", "Isolation transformer"),
        ("{core_loss: 3 W, copper_loss: 9 W, mass: 3 kg}", "ac.transformer.rated_power", "nothing", "Rating"),
        ("7", "ac.transformer", "7", "unit, cabin"),
    ],
)
def test_a_fault_in_either_form_is_told_once_at_the_key_that_was_written(
    said: str, key: str, found: str, allowed: str
) -> None:
    text = with_transformer(said)
    with pytest.raises(BadDesign) as caught:
        design.parse(text)
    (problem,) = caught.value.problems
    assert problem.key == key
    assert problem.line == line_of(text, "  transformer:")
    assert found in problem.found
    assert allowed in problem.allowed


@pytest.mark.parametrize(
    ("said", "key", "origin"),
    [
        ("isolation transformer 5 kVA", "ac.transformer", "typed"),
        ("isolation transformer 5 kVA", "ac.transformer.core_loss", "catalogue"),
        ("isolation transformer 5 kVA", "ac.transformer.unit.core_loss", "catalogue"),
        ("isolation transformer 5 kVA", "ac.transformer.cabin", "estimated"),
        ("{like: isolation transformer 5 kVA, core_loss: 30 W}", "ac.transformer.core_loss", "typed"),
        ("{like: isolation transformer 5 kVA, core_loss: 30 W}", "ac.transformer.copper_loss", "catalogue"),
        ("{unit: isolation transformer 5 kVA, cabin: cabin}", "ac.transformer.cabin", "typed"),
        ("{unit: isolation transformer 5 kVA}", "ac.transformer.unit.core_loss", "catalogue"),
    ],
)
def test_origin_of_its_figures(said: str, key: str, origin: str) -> None:
    assert design.origin(design.parse(with_transformer(said)), key) == origin
