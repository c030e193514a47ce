"""Refrigerant in a cabin: laws of its charge and of what is allowed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.refrigerant_charge import (
    FLOOR_RELEASE,
    charge_without_area_rule,
    circuit_charge,
    largest_charge,
    leak_concentration,
    least_floor_area,
)

limits = st.floats(0.03, 0.5)
areas = st.floats(0.5, 100.0)
heights = st.floats(0.0, 2.5)


@given(limits, areas, heights)
def test_least_floor_is_the_largest_charge_turned_over(limit: float, area: float, height: float) -> None:
    assert least_floor_area(limit, largest_charge(limit, area, height), height) == pytest.approx(area)


@given(limits, areas, heights, st.floats(1.01, 3.0))
def test_more_floor_and_a_higher_unit_allow_more(limit: float, area: float, height: float, more: float) -> None:
    charge = largest_charge(limit, area, height)
    assert largest_charge(limit, area * more, height) > charge
    assert largest_charge(limit, area, height + more) > charge
    assert largest_charge(limit * more, area, height) > charge


def test_a_release_under_the_least_height_counts_as_that() -> None:
    assert largest_charge(0.3, 6.0, 0.1) == largest_charge(0.3, 6.0, FLOOR_RELEASE) == largest_charge(0.3, 6.0)


@given(st.floats(0.1, 10.0), st.floats(0.0, 20.0), st.floats(0.0, 60.0), st.floats(0.0, 0.1))
def test_longer_lines_only_add(charge: float, charged: float, length: float, more: float) -> None:
    found = circuit_charge(charge, charged, length, more)
    assert found >= charge
    assert found == pytest.approx(charge + more * max(0.0, length - charged))


@given(st.floats(0.1, 10.0), st.floats(1.0, 50.0))
def test_concentration_times_volume_is_the_charge(charge: float, volume: float) -> None:
    assert leak_concentration(charge, volume) * volume == pytest.approx(charge)


def test_impossible_charges_are_refused() -> None:
    for charge in ((0.0, 1.0, 1.0, 0.1), (1.0, -1.0, 1.0, 0.1), (1.0, 1.0, -1.0, 0.1), (1.0, 1.0, 1.0, -0.1)):
        with pytest.raises(OutOfRange):
            circuit_charge(*charge)
    for leak in ((-1.0, 5.0), (1.0, 0.0)):
        with pytest.raises(OutOfRange):
            leak_concentration(*leak)
    for floor in ((0.0, 5.0, 0.6), (0.3, 0.0, 0.6), (0.3, 5.0, -0.1)):
        with pytest.raises(OutOfRange):
            largest_charge(*floor)
        with pytest.raises(OutOfRange):
            least_floor_area(*floor)
    with pytest.raises(OutOfRange):
        charge_without_area_rule(float("nan"))
