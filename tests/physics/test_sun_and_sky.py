"""Sun and sky: limits, balances, monotony."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.envelope import radiative_film
from anchorwatt.physics.sun_and_sky import (
    equivalent_outside_temperature,
    fresnel_sea_reflectance,
    incidence_cosine,
    interface_reflectances,
    sky_share,
    sky_temperature,
    sky_view,
)

SEA_LEVEL = 101_325.0  # Pa
angles = st.floats(-math.pi, math.pi)
tilts = st.floats(0.0, math.pi)


@given(st.floats(-20.0, 45.0), st.floats(-60.0, 35.0))
def test_clear_sky_is_colder_than_the_air(dry_bulb: float, dew_point: float) -> None:
    assert sky_temperature(dry_bulb, dew_point, SEA_LEVEL) < dry_bulb


def test_the_dampest_air_hides_the_sky_altogether() -> None:
    assert sky_temperature(40.0, 38.0, SEA_LEVEL) == pytest.approx(40.0)


@given(st.floats(-20.0, 45.0), st.floats(-60.0, 39.0), st.floats(0.0, 1.0))
def test_damper_air_has_no_colder_sky(dry_bulb: float, dew_point: float, damper: float) -> None:
    assert sky_temperature(dry_bulb, dew_point + damper, SEA_LEVEL) >= sky_temperature(dry_bulb, dew_point, SEA_LEVEL)


def test_a_mountain_has_a_colder_sky() -> None:
    """At 1600 m, 835 hPa, the emissivity is lower by 0.02."""
    low, high = sky_temperature(20.0, 8.0, SEA_LEVEL), sky_temperature(20.0, 8.0, 83_500.0)
    emissivities = [((t + 273.15) / 293.15) ** 4 for t in (low, high)]
    assert emissivities[0] - emissivities[1] == pytest.approx(0.0214, abs=0.0001)


@given(tilts)
def test_a_face_and_the_one_behind_it_see_the_whole_sky_once(tilt: float) -> None:
    assert sky_view(tilt) + sky_view(math.pi - tilt) == pytest.approx(1.0)


@given(tilts)
def test_less_of_the_cold_than_of_the_sky(tilt: float) -> None:
    assert 0.0 <= sky_share(tilt) <= sky_view(tilt) <= 1.0


@given(st.floats(0.0, 45.0), tilts, st.floats(0.0, 1.0))
def test_without_sun_and_cold_sky_it_is_the_air(dry_bulb: float, tilt: float, emittance: float) -> None:
    found = equivalent_outside_temperature(dry_bulb, dry_bulb, 0.0, 0.5, emittance, 10.0, 5.0, tilt)
    assert found == pytest.approx(dry_bulb, abs=1e-9)


@given(
    st.floats(10.0, 40.0),
    st.floats(-10.0, 40.0),
    st.floats(0.0, 1100.0),
    st.floats(0.0, 1.0),
    st.floats(0.1, 1.0),
    st.floats(3.0, 40.0),
    tilts,
)
def test_film_to_the_equivalent_temperature_carries_the_flux_at_the_face(
    dry_bulb: float,
    sky: float,
    irradiance: float,
    absorptance: float,
    emittance: float,
    convection: float,
    tilt: float,
) -> None:
    """For a face at air temperature, where the linear film is exact: sun less what the cold sky draws."""
    radiation = radiative_film(emittance, dry_bulb)
    equivalent = equivalent_outside_temperature(
        dry_bulb, sky, irradiance, absorptance, emittance, convection, radiation, tilt
    )
    air, cold = dry_bulb + 273.15, sky + 273.15
    drawn = emittance * 5.670374e-8 * sky_share(tilt) * (air**4 - cold**4)
    flux = (convection + radiation) * (equivalent - dry_bulb)
    assert flux == pytest.approx(absorptance * irradiance - drawn, abs=1e-6)


def test_a_deck_by_night_falls_below_the_air_and_a_bottom_does_not() -> None:
    deck = equivalent_outside_temperature(27.0, 17.0, 0.0, 0.3, 0.9, 8.0, 5.0, 0.0)
    bottom = equivalent_outside_temperature(27.0, 17.0, 0.0, 0.3, 0.9, 8.0, 5.0, math.pi)
    assert deck < 25.0
    assert bottom == pytest.approx(27.0)


@given(st.floats(0.0, 1.0), st.floats(1.01, 4.0))
def test_reflectances_are_shares(cosine: float, index: float) -> None:
    across, along = interface_reflectances(cosine, index)
    assert -1e-12 <= along <= across + 1e-12 <= 1.0 + 2e-12


def test_brewsters_angle_lets_one_polarisation_through() -> None:
    index = 1.5
    assert interface_reflectances(math.cos(math.atan(index)), index)[1] == pytest.approx(0.0, abs=1e-12)


@given(st.floats(0.0, math.pi / 2), st.floats(0.0, 0.1))
def test_the_sea_mirrors_more_of_a_lower_sun(zenith: float, lower: float) -> None:
    assert fresnel_sea_reflectance(zenith + lower) >= fresnel_sea_reflectance(zenith) - 1e-9


def test_the_sea_mirrors_all_of_a_sun_on_the_horizon() -> None:
    assert fresnel_sea_reflectance(math.pi / 2) == 1.0
    assert fresnel_sea_reflectance(math.pi / 2 - 1e-9) == pytest.approx(1.0, abs=1e-6)


@given(angles, angles, tilts, angles)
def test_incidence_is_the_scalar_product_of_sun_and_normal(
    elevation: float, azimuth: float, tilt: float, bearing: float
) -> None:
    sun = (
        math.cos(elevation) * math.sin(azimuth),
        math.cos(elevation) * math.cos(azimuth),
        math.sin(elevation),
    )
    normal = (math.sin(tilt) * math.sin(bearing), math.sin(tilt) * math.cos(bearing), math.cos(tilt))
    expected = sum(a * b for a, b in zip(sun, normal, strict=True))
    assert incidence_cosine(elevation, azimuth, tilt, bearing) == pytest.approx(expected, abs=1e-12)


@pytest.mark.parametrize(
    "values", [(-61.0, 0.0, 1e5), (61.0, 0.0, 1e5), (30.0, 41.0, 1e5), (math.nan, 0.0, 1e5), (20.0, 10.0, 4e4)]
)
def test_impossible_air_is_refused(values: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        sky_temperature(*values)


@pytest.mark.parametrize(
    "values",
    [
        (30.0, 20.0, -1.0, 0.5, 0.9, 10.0, 5.0, 0.0),
        (30.0, 20.0, 1.0, 1.5, 0.9, 10.0, 5.0, 0.0),
        (30.0, 20.0, 1.0, 0.5, -0.9, 10.0, 5.0, 0.0),
        (30.0, 20.0, 1.0, 0.5, 0.9, 0.0, 0.0, 0.0),
        (30.0, 20.0, 1.0, 0.5, 0.9, -10.0, 20.0, 0.0),
        (30.0, 20.0, 1.0, 0.5, 0.9, 10.0, 5.0, 4.0),
        (30.0, -300.0, 1.0, 0.5, 0.9, 10.0, 5.0, 0.0),
    ],
)
def test_impossible_faces_are_refused(
    values: tuple[float, float, float, float, float, float, float, float],
) -> None:
    with pytest.raises(OutOfRange):
        equivalent_outside_temperature(*values)


def test_impossible_angles_are_refused() -> None:
    with pytest.raises(OutOfRange, match="zenith"):
        fresnel_sea_reflectance(-0.1)
    with pytest.raises(OutOfRange, match="cosine"):
        interface_reflectances(1.1, 1.5)
    with pytest.raises(OutOfRange, match="refractive"):
        interface_reflectances(0.5, 1.0)
