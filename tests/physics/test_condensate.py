"""Water out of the air: laws of drains and of dew."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.condensate import condensate, drain_flow, margin_over_dew, temperature_at_humidity
from anchorwatt.physics.moist_air import latent_heat, relative_humidity

ratios = st.floats(0.002, 0.03)
pressures = st.floats(80e3, 110e3)


@given(st.floats(0.0, 1e5), st.floats(0.0, 30.0))
def test_water_holds_the_heat_that_it_gave_up(heat: float, temperature: float) -> None:
    assert condensate(heat, temperature) * latent_heat(temperature) == pytest.approx(heat)


@given(st.floats(0.005, 0.05), st.floats(0.001, 0.2))
def test_a_wider_or_steeper_drain_carries_more(diameter: float, slope: float) -> None:
    found = drain_flow(diameter, slope)
    assert drain_flow(2.0 * diameter, slope) == pytest.approx(2.0 ** (8.0 / 3.0) * found)
    assert drain_flow(diameter, 4.0 * slope) == pytest.approx(2.0 * found)


@given(st.floats(-5.0, 40.0), ratios, pressures)
def test_dew_forms_where_the_air_at_the_surface_is_saturated(surface: float, ratio: float, pressure: float) -> None:
    margin = margin_over_dew(surface, ratio, pressure)
    humidity = relative_humidity(surface, ratio, pressure)
    if abs(margin) > 0.01:  # water's formula and ice's differ by a hair where they meet
        assert (margin < 0.0) == (humidity > 1.0)


@given(ratios, st.floats(0.3, 1.0), pressures)
def test_a_surface_at_that_temperature_has_that_humidity(ratio: float, share: float, pressure: float) -> None:
    surface = temperature_at_humidity(ratio, share, pressure)
    assert relative_humidity(surface, ratio, pressure) == pytest.approx(share, rel=1e-4)
    assert margin_over_dew(surface, ratio, pressure) >= -1e-9


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRange):
        condensate(-1.0, 12.0)
    for drain in ((0.0, 0.01), (0.016, -0.01), (0.016, 1.1)):
        with pytest.raises(OutOfRange):
            drain_flow(*drain)
    for share in (0.0, 1.1, 80.0):
        with pytest.raises(OutOfRange):
            temperature_at_humidity(0.01, share, 101_325.0)
    with pytest.raises(OutOfRange):
        temperature_at_humidity(0.03, 0.001, 101_325.0)
