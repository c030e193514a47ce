"""A coil by its bypass factor: limits, balances, dry and wet."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.coil import (
    bypass_factor,
    leaving_humidity_ratio,
    leaving_temperature,
    moisture_removed,
    sensible_heat,
)
from anchorwatt.physics.moist_air import CP_AIR

flows = st.floats(0.0, 1.0)
bypasses = st.floats(0.0, 1.0)
warm = st.floats(10.0, 40.0)
cold = st.floats(-5.0, 30.0)
ratios = st.floats(0.0, 0.03)


@given(st.floats(0.02, 0.6), st.floats(0.05, 1.0), st.floats(0.001, 0.5))
def test_more_air_slips_by_more(rated: float, share: float, more: float) -> None:
    assert bypass_factor(rated, share + more) > bypass_factor(rated, share)


@given(st.floats(0.02, 0.6))
def test_full_airflow_has_the_rated_bypass(rated: float) -> None:
    assert bypass_factor(rated, 1.0) == pytest.approx(rated)


@given(st.floats(0.02, 0.6), st.floats(0.05, 0.99), st.floats(0.005, 0.5))
def test_less_air_still_carries_less_heat(rated: float, share: float, more: float) -> None:
    """Air that meets the coil, share x (1 - bypass), rises with airflow, although the bypass does too."""
    met = share * (1.0 - bypass_factor(rated, share))
    assert (share + more) * (1.0 - bypass_factor(rated, share + more)) > met


@given(flows, bypasses, warm, cold)
def test_heat_taken_is_heat_the_air_lost(flow: float, bypass: float, entering: float, apparatus: float) -> None:
    lost = flow * CP_AIR * (entering - leaving_temperature(bypass, entering, apparatus))
    assert sensible_heat(flow, bypass, entering, apparatus) == pytest.approx(lost, abs=1e-9)


@given(flows, bypasses, ratios, ratios)
def test_water_taken_is_water_the_air_lost(flow: float, bypass: float, entering: float, apparatus: float) -> None:
    lost = flow * (entering - leaving_humidity_ratio(bypass, entering, apparatus))
    assert moisture_removed(flow, bypass, entering, apparatus) == pytest.approx(lost, abs=1e-15)


@given(bypasses, warm, cold)
def test_air_leaves_between_the_coil_and_where_it_came_from(bypass: float, entering: float, apparatus: float) -> None:
    leaving = leaving_temperature(bypass, entering, apparatus)
    assert min(entering, apparatus) - 1e-9 <= leaving <= entering


@given(flows, bypasses, warm, st.floats(0.0, 20.0))
def test_a_coil_never_heats(flow: float, bypass: float, entering: float, warmer: float) -> None:
    assert sensible_heat(flow, bypass, entering, entering + warmer) == 0.0
    assert leaving_temperature(bypass, entering, entering + warmer) == entering


@given(flows, bypasses, ratios, st.floats(0.0, 0.02))
def test_a_coil_never_wets(flow: float, bypass: float, entering: float, wetter: float) -> None:
    assert moisture_removed(flow, bypass, entering, entering + wetter) == 0.0
    assert leaving_humidity_ratio(bypass, entering, entering + wetter) == entering


def test_a_perfect_coil_and_no_coil() -> None:
    assert leaving_temperature(0.0, 26.0, 9.0) == 9.0
    assert leaving_temperature(1.0, 26.0, 9.0) == 26.0
    assert leaving_humidity_ratio(0.0, 0.012, 0.007) == pytest.approx(0.007)
    assert moisture_removed(0.1, 1.0, 0.012, 0.007) == 0.0


@pytest.mark.parametrize("rated", [0.0, 1.0, -0.1, math.nan])
def test_impossible_rated_bypasses_are_refused(rated: float) -> None:
    with pytest.raises(OutOfRange, match="bypass factor"):
        bypass_factor(rated, 0.5)


def test_impossible_flows_and_shares_are_refused() -> None:
    with pytest.raises(OutOfRange, match="airflow"):
        bypass_factor(0.2, 0.0)
    with pytest.raises(OutOfRange, match="mass flow"):
        sensible_heat(-0.1, 0.1, 24.0, 9.0)
    with pytest.raises(OutOfRange, match="mass flow"):
        moisture_removed(-0.1, 0.1, 0.01, 0.007)
    for call in (sensible_heat, moisture_removed):
        with pytest.raises(OutOfRange, match="bypass"):
            call(0.1, 1.1, 24.0, 9.0)
    for leave in (leaving_temperature, leaving_humidity_ratio):
        with pytest.raises(OutOfRange, match="bypass"):
            leave(-0.1, 24.0, 9.0)
