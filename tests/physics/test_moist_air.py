"""Laws of moist air, and the dew point as the inverse of saturation."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.moist_air import (
    CP_VAPOUR,
    CP_WATER,
    density,
    dew_point,
    enthalpy,
    humidity_ratio,
    humidity_ratio_from_dew_point,
    latent_heat,
    relative_humidity,
    saturation_humidity_ratio,
    saturation_pressure,
    vapour_pressure,
)

SEA_LEVEL = 101_325.0
temperatures = st.floats(-60.0, 60.0)
pressures = st.floats(80_000.0, 110_000.0)
shares = st.floats(0.001, 1.0)


@given(temperatures, st.floats(1e-3, 20.0))
def test_warmer_vapour_saturates_at_a_higher_pressure(temperature: float, warmer: float) -> None:
    assert saturation_pressure(temperature + warmer) > saturation_pressure(temperature)


def test_water_and_ice_meet_at_the_triple_point() -> None:
    assert saturation_pressure(0.01) == pytest.approx(saturation_pressure(0.01 - 1e-9), rel=2e-5)


@given(st.one_of(st.floats(-90.0, 0.0), st.floats(0.02, 60.0)), pressures)
def test_dew_point_undoes_saturation(temperature: float, pressure: float) -> None:
    ratio = humidity_ratio_from_dew_point(temperature, pressure)
    assert dew_point(ratio, pressure) == pytest.approx(temperature, abs=1e-8)


@given(temperatures, shares, pressures)
def test_relative_humidity_undoes_humidity_ratio(temperature: float, share: float, pressure: float) -> None:
    ratio = humidity_ratio(temperature, share, pressure)
    assert relative_humidity(temperature, ratio, pressure) == pytest.approx(share, rel=1e-9)


@given(temperatures, st.floats(0.01, 1.0), pressures)
def test_dew_point_is_not_above_the_dry_bulb(temperature: float, share: float, pressure: float) -> None:
    # The formulas for water and ice are 0.0003 K apart where they meet.
    assert dew_point(humidity_ratio(temperature, share, pressure), pressure) <= temperature + 3e-4


@given(temperatures, shares, pressures)
def test_dry_air_and_vapour_add_up_by_their_partial_pressures(
    temperature: float, share: float, pressure: float
) -> None:
    ratio = humidity_ratio(temperature, share, pressure)
    air = density(temperature, ratio, pressure)
    vapour = vapour_pressure(ratio, pressure)
    alone = density(temperature, 0.0, pressure - vapour)
    assert air == pytest.approx(alone, rel=1e-12)


@given(st.floats(0.0, 50.0), st.floats(0.0, 0.03), st.floats(0.0, 0.01))
def test_latent_heat_is_what_enthalpy_loses_less_the_water(temperature: float, ratio: float, removed: float) -> None:
    lost = enthalpy(temperature, ratio + removed) - enthalpy(temperature, ratio)
    water = removed * CP_WATER * temperature
    assert lost - water == pytest.approx(removed * latent_heat(temperature), abs=1e-6)


def test_enthalpy_rises_with_vapour_at_its_own_heat_capacity() -> None:
    rise = enthalpy(21.0, 0.01) - enthalpy(20.0, 0.01) - (enthalpy(21.0, 0.0) - enthalpy(20.0, 0.0))
    assert rise == pytest.approx(0.01 * CP_VAPOUR, rel=1e-9)


def test_dry_air_has_no_relative_humidity() -> None:
    assert relative_humidity(25.0, 0.0, SEA_LEVEL) == 0.0


@pytest.mark.parametrize("temperature", [-100.1, 200.1, math.nan, math.inf])
def test_saturation_pressure_ends_where_its_formula_does(temperature: float) -> None:
    with pytest.raises(OutOfRange, match="-100 to 200"):
        saturation_pressure(temperature)


def test_boiling_is_refused() -> None:
    with pytest.raises(OutOfRange, match="saturated vapour; found Pa 5000"):
        saturation_humidity_ratio(40.0, 5000.0)


@pytest.mark.parametrize("share", [-0.01, 1.01, math.nan])
def test_relative_humidity_outside_0_to_1_is_refused(share: float) -> None:
    with pytest.raises(OutOfRange, match="between 0 and 1"):
        humidity_ratio(25.0, share, SEA_LEVEL)


@pytest.mark.parametrize("ratio", [-1e-9, math.nan])
def test_negative_humidity_is_refused(ratio: float) -> None:
    with pytest.raises(OutOfRange, match="not negative"):
        density(25.0, ratio, SEA_LEVEL)
    with pytest.raises(OutOfRange, match="not negative"):
        enthalpy(25.0, ratio)
    with pytest.raises(OutOfRange, match="not negative"):
        vapour_pressure(ratio, SEA_LEVEL)


def test_dry_air_has_no_dew_point() -> None:
    with pytest.raises(OutOfRange, match="dew point"):
        dew_point(0.0, SEA_LEVEL)


@pytest.mark.parametrize("temperature", [-100.0, -99.99, 0.0, 0.005, 0.01, 0.0101, 199.99])
def test_dew_point_is_found_at_the_ends_and_at_the_triple_point(temperature: float) -> None:
    pressure = 2e6
    ratio = humidity_ratio_from_dew_point(temperature, pressure)
    assert dew_point(ratio, pressure) == pytest.approx(temperature, abs=3e-4)
