"""The seawater circuit that nobody typed."""

from __future__ import annotations

import math

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import catalogue, design
from anchorwatt.design.fill_seawater import HOSES
from anchorwatt.design.specification import SeaCircuit

LENGTH = 46 * 0.3048  # m, of `minimal`


def made(unit: str, **seawater: str) -> SeaCircuit:
    handlers = {"cabin": {"unit": "air handler 6 kBtu/h", "cabin": "cabin"}}
    plant = {"unit": unit, "handlers": handlers, "seawater": seawater}
    return design.specify(design.parse(as_text(minimal(cooling={"plant": plant})))).plant.sea


@pytest.mark.parametrize("unit", catalogue.names("condensing_unit"))
def test_an_estimated_hose_is_the_smallest_that_keeps_1_5_metres_a_second(unit: str) -> None:
    sea = made(unit)
    flow = float(catalogue.find("condensing_unit", unit).sea_flow)  # type: ignore[attr-defined]
    place = HOSES.index(sea.diameter)
    assert flow <= 1.5 * math.pi / 4.0 * sea.diameter**2
    assert place == 0 or flow > 1.5 * math.pi / 4.0 * HOSES[place - 1] ** 2
    assert sea.through_hull == HOSES[place + 1]


def test_length_and_lift_follow_the_boat() -> None:
    sea = made("variable-speed 12 kBtu/h")
    assert math.isclose(sea.length, 0.5 * LENGTH)
    assert 0.5 < sea.lift < 2.0


def test_what_is_typed_is_taken() -> None:
    sea = made("variable-speed 12 kBtu/h", hose_length="9 m", hose_diameter="1 in", lift="0.4 m", through_hull="1.5 in")
    assert (sea.length, sea.diameter, sea.lift, sea.through_hull) == (9.0, 0.0254, 0.4, 0.0381)


@pytest.mark.parametrize("unit", catalogue.names("condensing_unit"))
def test_a_plants_own_pump_overcomes_the_estimated_circuit(unit: str) -> None:
    from anchorwatt.physics.sea_circuit import pressure_needed

    sea = made(unit)
    flow = float(catalogue.find("condensing_unit", unit).sea_flow)  # type: ignore[attr-defined]
    losses = sea.condenser_loss + sea.strainer_loss
    assert (
        pressure_needed(flow, sea.length, sea.diameter, sea.bends, sea.lift, sea.through_hull, losses) < sea.pump_head
    )
