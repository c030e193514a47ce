"""Sun on a plane: the level plane, the side, the bottom, against pvlib's own chain and against laws."""

from __future__ import annotations

import datetime
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.climate import Weather, bow_bearing, irradiance_on, weather
from anchorwatt.climate.plane import beam_reflectance
from anchorwatt.climate.sun import sun_outside
from anchorwatt.design.specification import DesignDay, Place
from anchorwatt.physics.sun_and_sky import fresnel_sea_reflectance, incidence_cosine

TABLE = weather(
    Place(
        math.radians(25.8),
        math.radians(-80.2),
        -5.0,
        "",
        7,
        21,
        DesignDay(33.0, 8.0, 25.0, 3.0, 1.0, 3.5),
        (29.0,) * 12,
        math.nan,
    ),
    0,
    0,
    300.0,
)
UP = TABLE.sun_elevation > math.radians(2.0)


def test_a_deck_gets_the_level_sun() -> None:
    deck = irradiance_on(TABLE, 0.0, 0.7)
    assert (deck.beam + deck.diffuse)[UP] == pytest.approx(TABLE.global_horizontal[UP])


def test_a_bottom_gets_what_the_sea_sends_up() -> None:
    bottom = irradiance_on(TABLE, math.pi, 0.7)
    height = np.maximum(0.0, np.sin(TABLE.sun_elevation))
    mirrored = np.array(
        [fresnel_sea_reflectance(min(math.pi / 2, math.pi / 2 - each)) for each in TABLE.sun_elevation.tolist()]
    )
    wanted = TABLE.direct_normal * height * mirrored + 0.08 * TABLE.diffuse_horizontal
    assert bottom.beam.max() == 0.0
    assert bottom.cosine.max() == 0.0
    assert bottom.diffuse == pytest.approx(wanted, abs=0.05)


@pytest.mark.parametrize("bearing", [0.0, 90.0, 200.0, 315.0])
@pytest.mark.parametrize("tilt", [30.0, 90.0, 120.0])
def test_the_sky_and_the_beam_against_pvlibs_own_chain(tilt: float, bearing: float) -> None:
    from pvlib.irradiance import get_total_irradiance

    plane = irradiance_on(TABLE, math.radians(tilt), math.radians(bearing))
    parts = get_total_irradiance(
        tilt,
        bearing,
        90.0 - np.degrees(TABLE.sun_elevation),
        np.degrees(TABLE.sun_azimuth),
        TABLE.direct_normal,
        TABLE.global_horizontal,
        TABLE.diffuse_horizontal,
        dni_extra=sun_outside(datetime.date(TABLE.year, TABLE.month, TABLE.day)),
        albedo=0.0,
        model="haydavies",
    )
    black_sea = irradiance_on(TABLE, math.pi, 0.0).diffuse * 0.5 * (1.0 - math.cos(math.radians(tilt)))
    assert plane.beam == pytest.approx(parts["poa_direct"], abs=1e-6)
    assert (plane.diffuse - black_sea)[UP] == pytest.approx(parts["poa_sky_diffuse"][UP], abs=1e-6)


def test_the_angle_of_incidence_is_that_of_the_physics_room() -> None:
    tilt, bearing = 1.2, 4.0
    plane = irradiance_on(TABLE, tilt, bearing)
    for row in np.flatnonzero(UP)[::20].tolist():
        wanted = incidence_cosine(float(TABLE.sun_elevation[row]), float(TABLE.sun_azimuth[row]), tilt, bearing)
        assert plane.cosine[row] == pytest.approx(max(0.0, wanted), abs=1e-9)


def test_morning_sun_meets_an_eastern_side() -> None:
    east, west = (
        irradiance_on(TABLE, math.pi / 2, math.pi / 2),
        irradiance_on(TABLE, math.pi / 2, 1.5 * math.pi),
    )
    morning = TABLE.time < 11 * 3600.0
    assert east.beam[morning].sum() > 20.0 * west.beam[morning].sum()


def test_a_bearing_may_swing() -> None:
    swing = np.where(TABLE.time < 43_200.0, 0.5, 2.5)
    plane = irradiance_on(TABLE, math.pi / 2, swing)
    for bearing in (0.5, 2.5):
        steady = irradiance_on(TABLE, math.pi / 2, bearing)
        rows = swing == bearing
        assert plane.beam[rows] == pytest.approx(steady.beam[rows])
        assert plane.diffuse[rows] == pytest.approx(steady.diffuse[rows])


@pytest.mark.parametrize("zenith", [0.0, 33.3, 60.0, 75.25, 89.0, 90.0])
def test_the_seas_reflectance_between_its_rows(zenith: float) -> None:
    exact = fresnel_sea_reflectance(math.radians(zenith))
    assert beam_reflectance(np.array([zenith]))[0] == pytest.approx(exact, abs=5e-4)


@settings(max_examples=50, deadline=None)
@given(tilt=st.floats(0.0, math.pi), bearing=st.floats(-10.0, 10.0))
def test_no_plane_gets_more_than_the_sun_gives(tilt: float, bearing: float) -> None:
    plane = irradiance_on(TABLE, tilt, bearing)
    assert plane.beam.min() >= 0.0
    assert plane.diffuse.min() >= 0.0
    assert (plane.beam <= TABLE.direct_normal + 1e-9).all()
    assert plane.cosine.max() <= 1.0
    night = TABLE.sun_elevation <= 0.0
    assert plane.beam[night].max() == 0.0
    assert plane.diffuse[night].max() == 0.0
    # a whole turn of the bow changes nothing
    turned = irradiance_on(TABLE, tilt, bearing + 2.0 * math.pi)
    assert turned.beam == pytest.approx(plane.beam, abs=1e-6)


# ---- the bow


def test_a_typed_heading_holds() -> None:
    assert (bow_bearing(TABLE, 1.25) == 1.25).all()
    assert bow_bearing(TABLE, 1.25).shape == TABLE.time.shape


def test_without_a_heading_the_bow_lies_to_the_wind(real_place: Place) -> None:
    table: Weather = weather(real_place, 0, 0, 60.0)
    bow = bow_bearing(table, math.nan)
    assert (bow == table.wind_direction).all()
    bow[:] = 0.0  # a copy: the table stays as it is
    assert table.wind_direction.max() > 0.0
    turns = np.flatnonzero(np.diff(table.wind_direction)) + 1
    assert len(turns) <= 24
    assert set((table.time[turns] % 3600.0).tolist()) <= {1800.0}
