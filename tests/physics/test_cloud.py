"""Clouds warm the sky, up to the air's own temperature."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.cloud import cloudy_sky_temperature

AIR = st.floats(-20.0, 45.0)
BELOW = st.floats(0.0, 40.0)
COVER = st.floats(0.0, 1.0)


@given(AIR, BELOW, COVER, COVER)
def test_more_cloud_is_never_colder(air: float, below: float, one: float, other: float) -> None:
    less, more = sorted((one, other))
    assert cloudy_sky_temperature(air - below, air, less) <= cloudy_sky_temperature(air - below, air, more) + 1e-9


@given(AIR, BELOW, COVER)
def test_the_sky_lies_between_clear_and_air(air: float, below: float, cover: float) -> None:
    sky = cloudy_sky_temperature(air - below, air, cover)
    assert air - below - 1e-6 <= sky <= air + 1e-6


@pytest.mark.parametrize("cover", [-0.1, 1.1])
def test_cover_is_a_share(cover: float) -> None:
    with pytest.raises(OutOfRange, match="cloud cover"):
        cloudy_sky_temperature(10.0, 25.0, cover)


@pytest.mark.parametrize(("sky", "air"), [(-280.0, 20.0), (10.0, -280.0)])
def test_nothing_is_colder_than_absolute_zero(sky: float, air: float) -> None:
    with pytest.raises(OutOfRange, match=r"-273.15"):
        cloudy_sky_temperature(sky, air, 0.5)
