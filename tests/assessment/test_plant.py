"""The plant's map as it is shown: laws that hold over all of it."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest

from anchorwatt.assessment.plant import COLD_SEAS, LOADS, SEAS, PlantMap, plant_points
from anchorwatt.design.specification import SharedPlant
from anchorwatt.simulation.plants import shared_plant, shared_plant_heating
from tests.simulation import boats

REFRIGERANTS = ("R410A", "R32", "R134a")


@cache
def made(refrigerant: str = "R410A", reversible: bool = True) -> tuple[SharedPlant, PlantMap]:
    circuit = replace(boats.circuit(), refrigerant=refrigerant)
    plant = replace(boats.plant(circuit, (boats.handler("one", 0, 9000.0),)), reversible=reversible)
    return plant, plant_points(plant, shared_plant(plant), shared_plant_heating(plant))


@pytest.mark.parametrize("refrigerant", REFRIGERANTS)
def test_capacity_falls_and_power_rises_with_the_sea(refrigerant: str) -> None:
    for share in LOADS:
        for cooler, warmer in pairwise(made(refrigerant)[1].at(share)):
            assert warmer.load < cooler.load
            assert warmer.compressor_power > cooler.compressor_power
            assert warmer.plant_cop < cooler.plant_cop


@pytest.mark.parametrize("refrigerant", REFRIGERANTS)
def test_cop_is_below_carnot_everywhere(refrigerant: str) -> None:
    """Between the coil and the sea; no bound where the sea is the colder."""
    for point in made(refrigerant)[1].cooling:
        if point.sea > point.coil + 1.0:
            assert point.compressor_cop < (point.coil + 273.15) / (point.sea - point.coil)


def test_the_whole_plant_draws_more_than_its_compressor() -> None:
    for point in made()[1].cooling:
        assert point.plant_power > point.compressor_power
        assert point.plant_cop < point.compressor_cop


def test_part_load_is_best_in_the_middle_and_does_not_rise_without_end() -> None:
    for sea in SEAS:
        cops = {point.share: point.plant_cop for point in made()[1].cooling if point.sea == sea}
        best = max(cops, key=lambda share: cops[share])
        assert 0.25 <= best < 1.0
        assert cops[0.15] < cops[best]


def test_it_stops_and_starts_only_below_its_lowest_speed() -> None:
    for point in made()[1].cooling:
        if point.share >= 0.5:
            assert point.running == 1.0
        if point.share <= 0.15:
            assert point.running < 1.0


def test_heat_is_more_than_power_and_rises_with_the_sea() -> None:
    points = made()[1].heating_at(1.0)
    assert tuple(point.sea for point in points) == COLD_SEAS
    for cooler, warmer in pairwise(points):
        assert warmer.load > cooler.load > cooler.compressor_power


def test_heating_is_below_carnot_everywhere() -> None:
    """Between the sea and the coil: heat over power is at most the absolute coil temperature over the lift."""
    for point in made()[1].heating:
        assert 0.0 < point.compressor_cop < (point.coil + 273.15) / (point.coil - point.sea)


def test_a_plant_that_only_cools_has_no_heating() -> None:
    assert made(reversible=False)[1].heating == ()
