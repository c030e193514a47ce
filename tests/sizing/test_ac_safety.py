"""What the AC side needs, by what the design has."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.design.specification import Point, Specification
from anchorwatt.sizing.ac_safety import ac_safety
from tests.simulation import boats

BOAT = boats.boat(1)
INLET = Point(0.0, 2.2, 1.0)


def with_transformer(isolating: bool = True, charger: bool = False, apart: float = 2.0) -> Specification:
    assert BOAT.transformer is not None
    item = boats.item("ac.transformer.unit", "transformer", "transformer", 1, 30.0, 0.0, "", -1, "T1")
    return replace(
        BOAT,
        transformer=replace(BOAT.transformer, isolating=isolating),
        charger=BOAT.charger if charger else None,
        items=(replace(item, position=Point(apart, 2.2, 1.0)),),
    )


def test_a_transformer_near_the_inlet_takes_the_place_of_the_device() -> None:
    found = ac_safety(with_transformer())
    assert found.isolates_all
    assert not found.earth_fault_needed
    assert not found.galvanic_needed
    assert not found.polarity_needed


@pytest.mark.parametrize(
    ("boat", "words"),
    [
        (with_transformer(apart=3.5), "3.5 m from the inlet"),
        (with_transformer(isolating=False), "nothing isolates"),
        (with_transformer(charger=True), "charger"),
        (replace(BOAT, transformer=None), "nothing isolates"),
    ],
)
def test_what_needs_an_earth_fault_device_says_why(boat: Specification, words: str) -> None:
    found = ac_safety(boat)
    assert found.earth_fault_needed
    assert words in found.earth_fault_why


def test_a_far_transformer_still_isolates() -> None:
    assert not ac_safety(with_transformer(apart=5.0)).galvanic_needed


def test_a_charger_before_the_transformer_brings_the_shores_earth_aboard() -> None:
    found = ac_safety(with_transformer(charger=True))
    assert found.galvanic_needed
    assert "charger" in found.galvanic_why


def test_an_autotransformer_isolates_nothing() -> None:
    found = ac_safety(with_transformer(isolating=False))
    assert found.autotransformer
    assert not found.isolating


def test_without_shore_power_nothing_of_it_is_needed() -> None:
    found = ac_safety(replace(BOAT, shore=None))
    assert not found.earth_fault_needed
    assert not found.galvanic_needed
    assert not found.polarity_needed


def test_on_shore_power_neutral_is_earthed_ashore_only() -> None:
    shore, inverter = ac_safety(replace(BOAT, transformer=None)).bonds
    assert (shore.source, shore.joined) == ("shore power", False)
    assert (inverter.source, inverter.joined) == ("inverter", True)


def test_a_boat_without_shore_power_joins_them_at_the_inverter() -> None:
    (only,) = ac_safety(replace(BOAT, transformer=None, shore=None)).bonds
    assert (only.source, only.joined) == ("inverter", True)


def test_behind_an_isolation_transformer_they_are_joined_at_its_secondary_always() -> None:
    assert {(one.joined, one.where) for one in ac_safety(with_transformer()).bonds} == {
        (True, "the transformer's secondary")
    }
