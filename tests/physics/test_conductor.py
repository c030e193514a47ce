"""Laws of copper conductors."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.conductor import (
    ambient_factor,
    area_for_drop,
    conductor_loss,
    conductor_temperature,
    copper_mass,
    resistance_per_length,
    resistance_ratio,
    voltage_drop,
)

areas = st.floats(0.5e-6, 500e-6)
currents = st.floats(0.1, 1000.0)
lengths = st.floats(0.1, 50.0)
temperatures = st.floats(-40.0, 200.0)
insulations = st.sampled_from([60.0, 75.0, 80.0, 90.0, 105.0, 125.0, 200.0])


@given(currents, lengths, areas, areas, temperatures)
def test_drop_never_rises_with_size(current: float, length: float, one: float, other: float, warm: float) -> None:
    thin, thick = (resistance_per_length(area) for area in sorted((one, other)))
    assert voltage_drop(current, length, thick, warm) <= voltage_drop(current, length, thin, warm)


@given(currents, lengths, st.floats(0.01, 5.0), temperatures)
def test_the_area_for_a_drop_has_that_drop(current: float, length: float, drop: float, warm: float) -> None:
    area = area_for_drop(current, length, drop, warm)
    assert voltage_drop(current, length, resistance_per_length(area), warm) == pytest.approx(drop)


@given(currents, lengths, areas, temperatures)
def test_the_loss_is_current_times_drop(current: float, length: float, area: float, warm: float) -> None:
    each = resistance_per_length(area)
    assert conductor_loss(current, length, each, warm) == pytest.approx(
        current * voltage_drop(current, length, each, warm)
    )


@given(areas, lengths)
def test_mass_times_resistance_does_not_depend_on_the_area(area: float, length: float) -> None:
    """Less copper, more loss: their product is that of one square metre."""
    product = copper_mass(area, length) * resistance_per_length(area) * length
    assert product == pytest.approx(copper_mass(1.0, length) * resistance_per_length(1.0) * length)


@given(insulations, st.floats(-20.0, 250.0), st.floats(-20.0, 250.0))
def test_warmer_surroundings_never_leave_more(insulation: float, one: float, other: float) -> None:
    cool, warm = sorted((one, other))
    assert ambient_factor(insulation, warm) <= ambient_factor(insulation, cool)


@given(insulations, st.floats(-20.0, 59.0))
def test_at_its_ampacity_a_conductor_is_as_hot_as_it_may_be(insulation: float, ambient: float) -> None:
    assert conductor_temperature(100.0, 100.0, insulation, ambient) == pytest.approx(insulation)


@given(insulations, st.floats(30.0, 59.0))
def test_the_ambient_factor_keeps_the_conductor_at_its_limit(insulation: float, ambient: float) -> None:
    """Rise at 30 °C, scaled by the square of the current that the factor leaves, is the rise that is left."""
    rise = (insulation - 30.0) * ambient_factor(insulation, ambient) ** 2
    assert ambient + rise == pytest.approx(insulation)


def test_without_current_a_conductor_is_as_warm_as_its_surroundings() -> None:
    assert conductor_temperature(0.0, 100.0, 105.0, 50.0) == 50.0


@pytest.mark.parametrize(
    "refused",
    [
        lambda: resistance_ratio(math.nan),
        lambda: resistance_ratio(500.0),
        lambda: resistance_per_length(0.0),
        lambda: resistance_per_length(1e-6, 0.9),
        lambda: voltage_drop(1.0, -1.0, 0.1),
        lambda: voltage_drop(1.0, 1.0, -0.1),
        lambda: area_for_drop(-1.0, 1.0, 0.1),
        lambda: area_for_drop(1.0, -1.0, 0.1),
        lambda: area_for_drop(1.0, 1.0, 0.0),
        lambda: copper_mass(-1.0, 1.0),
        lambda: copper_mass(1.0, -1.0),
        lambda: ambient_factor(30.0, 20.0),
        lambda: conductor_temperature(1.0, 0.0, 105.0, 30.0),
        lambda: conductor_temperature(1.0, 1.0, 105.0, 105.0),
    ],
)
def test_what_makes_no_sense_is_refused(refused: object) -> None:
    with pytest.raises(OutOfRange):
        refused()  # type: ignore[operator]
