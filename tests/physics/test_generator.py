"""Laws of a generating set."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.engine import DIESEL_HEATING_VALUE
from anchorwatt.physics.generator import D2_LOADS, D2_WEIGHTS, cycle_specific_fuel, generator_fuel_flow

POWER = st.floats(0.0, 10e3)
EFFICIENCY = st.floats(0.5, 0.95)


def flow(output: float, efficiency: float = 0.86) -> float:
    return generator_fuel_flow(output, efficiency, 188.5, 1.1e-3, 66e3, 0.40)


@given(POWER, POWER)
def test_each_watt_more_costs_the_same_fuel(a: float, b: float) -> None:
    assert flow(a + b) - flow(a) == pytest.approx(flow(b) - flow(0.0), abs=1e-12)


@given(POWER, EFFICIENCY)
def test_less_than_the_indicated_share_of_the_heat_becomes_electricity(output: float, efficiency: float) -> None:
    assert output < 0.40 * efficiency * flow(output, efficiency) * DIESEL_HEATING_VALUE


@given(st.floats(1.0, 10e3))
def test_light_load_costs_more_for_each_unit_of_work(output: float) -> None:
    assert flow(output) / output > flow(2.0 * output) / (2.0 * output)


def test_a_set_without_load_burns_fuel() -> None:
    assert flow(0.0) > 0.0


def test_a_cycle_of_one_load_is_that_load() -> None:
    assert cycle_specific_fuel([1e-3], [10e3], [1.0]) == pytest.approx(1e-7)


@given(st.floats(1e3, 20e3))
def test_a_cycle_lies_between_its_best_and_its_worst_load(rated: float) -> None:
    powers = [load * rated for load in D2_LOADS]
    flows = [flow(power) for power in powers]
    each = [f / p for f, p in zip(flows, powers, strict=True)]
    assert min(each) < cycle_specific_fuel(flows, powers, D2_WEIGHTS) < max(each)


@pytest.mark.parametrize(("output", "efficiency"), [(-1.0, 0.8), (1.0, 0.0), (1.0, 1.01)])
def test_limits_of_a_set(output: float, efficiency: float) -> None:
    with pytest.raises(OutOfRange):
        flow(output, efficiency)


@pytest.mark.parametrize(
    ("flows", "powers", "weights"),
    [([1.0], [1.0, 2.0], [1.0]), ([1.0], [0.0], [1.0]), ([1.0, 1.0], [1.0, 2.0], [2.0, -1.0])],
)
def test_limits_of_a_cycle(flows: list[float], powers: list[float], weights: list[float]) -> None:
    with pytest.raises(OutOfRange):
        cycle_specific_fuel(flows, powers, weights)
