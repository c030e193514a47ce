"""Where a figure comes from."""

from __future__ import annotations

import pytest
from tests.design.sample import SAMPLE

from anchorwatt import design
from anchorwatt.errors import BadDesign


@pytest.mark.parametrize(
    ("key", "origin"),
    [
        ("boat.length", "typed"),
        ("boat.hull", "typed"),
        ("boat.waterline", "estimated"),
        ("boat.hull.construction", "catalogue"),
        ("cabins.cabin.height", "estimated"),
        ("cabins.saloon.windows.port windows.glazing.u_value", "catalogue"),
        ("dc.bank.module.charge_current", "typed"),
        ("dc.bank.module.discharge_current", "catalogue"),
        ("dc.bank.temperature", "estimated"),
        ("plan.0.people.0.doing.sensible", "catalogue"),
        ("plan.1.running.television", "typed"),
        ("dc.loads.refrigerator.count", "estimated"),
    ],
)
def test_a_figure_is_typed_from_the_catalogue_or_estimated(key: str, origin: str) -> None:
    assert design.origin(design.parse(SAMPLE), key) == origin


@pytest.mark.parametrize("key", ["boat.hieght", "cabins.attic.height", "plan.7.start", "boat.length.more"])
def test_a_key_that_the_design_does_not_have_is_refused(key: str) -> None:
    with pytest.raises(BadDesign):
        design.origin(design.parse(SAMPLE), key)


def test_an_edit_moves_a_figure_from_estimated_to_typed() -> None:
    after = design.edit(design.parse(SAMPLE), "boat.waterline", "11 m")
    assert design.origin(after, "boat.waterline") == "typed"
