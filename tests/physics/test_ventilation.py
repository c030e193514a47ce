"""Outdoor air through leaks, an opening and a doorway."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.moist_air import density, enthalpy, humidity_ratio
from anchorwatt.physics.ventilation import (
    REFERENCE_DIFFERENCE,
    REFERENCE_WIND,
    doorway_flow,
    leakage_in_wind,
    opening_flow,
)

leakages = st.floats(0.0, 0.01)
winds = st.floats(0.0, 30.0)
differences = st.floats(-30.0, 30.0)
areas = st.floats(0.001, 2.0)
heights = st.floats(0.1, 2.0)
more = st.floats(0.01, 10.0)


@given(leakages, st.sampled_from((-1.0, 1.0)))
def test_in_the_reference_breeze_leakage_is_as_given(leakage: float, sign: float) -> None:
    found = leakage_in_wind(leakage, REFERENCE_WIND, sign * REFERENCE_DIFFERENCE)
    assert found == pytest.approx(leakage)


@given(leakages, winds, differences, more)
def test_more_wind_or_warmth_lets_in_no_less(leakage: float, wind: float, difference: float, add: float) -> None:
    now = leakage_in_wind(leakage, wind, difference)
    assert leakage_in_wind(leakage, wind + add, difference) >= now
    assert leakage_in_wind(leakage, wind, math.copysign(abs(difference) + add, difference)) >= now


def test_without_wind_or_warmth_nothing_comes() -> None:
    assert leakage_in_wind(1e-4, 0.0, 0.0) == 0.0
    assert opening_flow(0.1, 0.0, 0.0, 0.3) == 0.0


@given(st.floats(1e-6, 0.01), st.floats(50.0, 100.0))
def test_a_gale_goes_with_the_wind(leakage: float, wind: float) -> None:
    assert leakage_in_wind(leakage, 2.0 * wind, 0.0) == pytest.approx(2.0 * leakage_in_wind(leakage, wind, 0.0))


@given(areas, winds, differences, heights, more)
def test_flow_goes_with_the_opening(area: float, wind: float, difference: float, height: float, times: float) -> None:
    found = opening_flow(area, wind, difference, height)
    assert opening_flow(times * area, wind, difference, height) == pytest.approx(times * found)
    assert found >= 0.025 * area * wind


@given(areas, winds, differences, heights)
def test_the_larger_of_wind_and_warmth_counts(area: float, wind: float, difference: float, height: float) -> None:
    wind_alone, warmth_alone = opening_flow(area, wind, 0.0, height), opening_flow(area, 0.0, difference, height)
    assert opening_flow(area, wind, difference, height) == pytest.approx(max(wind_alone, warmth_alone))


@given(areas, heights, st.floats(1.0, 1.3), st.floats(0.5, 1.0))
def test_doorway_flow_goes_with_area_and_root_of_height(
    area: float, height: float, inside: float, share: float
) -> None:
    found = doorway_flow(area, height, inside, share * inside)
    assert doorway_flow(2.0 * area, height, inside, share * inside) == pytest.approx(2.0 * found)
    assert doorway_flow(area, 4.0 * height, inside, share * inside) == pytest.approx(2.0 * found)


def test_air_as_dense_outside_as_inside_stays_where_it_is() -> None:
    assert doorway_flow(1.0, 1.7, 1.18, 1.18) == 0.0


def test_an_open_companionway_by_hand() -> None:
    """1.0 m² and 1.7 m, 24 °C 60 % against 32 °C 75 %, 1.1800 and 1.1414 kg/m³ with the vapour: sqrt(1 - 0.96729) is
    0.1809, sqrt(9.80665 x 1.7) 4.0830, shape 0.9917: 0.221 x 0.1809 x 4.0830 x 0.9917 = 0.1619 m³/s; 37.6 kJ/kg of
    dry air make 7.1 kW of it."""
    inside, outside = humidity_ratio(24.0, 0.6, 101_325.0), humidity_ratio(32.0, 0.75, 101_325.0)
    dry = density(24.0, inside, 101_325.0)
    flow = doorway_flow(1.0, 1.7, dry * (1.0 + inside), density(32.0, outside, 101_325.0) * (1.0 + outside))
    assert flow == pytest.approx(0.1619, rel=1e-3)
    assert flow * dry * (enthalpy(32.0, outside) - enthalpy(24.0, inside)) == pytest.approx(7100.0, rel=0.01)


def test_impossible_openings_are_refused() -> None:
    for leak in ((-1e-5, 3.0), (1e-5, -3.0), (math.nan, 3.0)):
        with pytest.raises(OutOfRange):
            leakage_in_wind(*leak, 4.0)
    for opening in ((-0.1, 3.0, 0.3), (0.1, -3.0, 0.3), (0.1, 3.0, -0.3)):
        with pytest.raises(OutOfRange):
            opening_flow(opening[0], opening[1], 4.0, opening[2])
    for door in ((0.0, 1.7, 1.2, 1.1), (1.0, 0.0, 1.2, 1.1), (1.0, 1.7, 1.1, 1.2), (1.0, 1.7, 1.2, 0.0)):
        with pytest.raises(OutOfRange):
            doorway_flow(*door)
