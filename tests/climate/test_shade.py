"""Overhangs and fins: limits, laws, and the ground's reflectance on a plane."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.climate import irradiance_on, weather_year
from anchorwatt.climate.shade import ground_left, sky_left, sunlit_share
from anchorwatt.errors import OutOfRange

LENGTH = st.floats(0.0, 3.0)


def lit(elevation: float, aside: float, **shade: float) -> float:
    sizes = {"height": 2.0, "width": 3.0, "overhang": 0.0, "above": 0.0, "fins": 0.0, "beside": 0.0, **shade}
    return float(sunlit_share(np.array([elevation]), np.array([math.pi + aside]), math.pi, **sizes)[0])


def test_the_shadow_of_an_overhang() -> None:
    """At 45° straight ahead the shadow of 1 m is 1 m long, of which the gap takes half."""
    assert lit(math.pi / 4, 0.0, overhang=1.0, above=0.5) == pytest.approx(0.75)


def test_the_shadow_of_a_fin() -> None:
    """At 45° aside the shadow of 1 m is 1 m wide."""
    assert lit(0.3, math.pi / 4, fins=1.0) == pytest.approx(2.0 / 3.0)
    assert lit(0.3, -math.pi / 4, fins=1.0) == pytest.approx(2.0 / 3.0)


@given(elevation=st.floats(-0.5, math.pi / 2), aside=st.floats(-4.0, 4.0), overhang=LENGTH, fins=LENGTH)
def test_shares_are_shares_and_more_shade_is_less_sun(
    elevation: float, aside: float, overhang: float, fins: float
) -> None:
    share = lit(elevation, aside, overhang=overhang, fins=fins)
    assert 0.0 <= share <= 1.0
    assert lit(elevation, aside, overhang=overhang + 0.5, fins=fins + 0.5) <= share
    assert lit(elevation, aside, above=0.2, beside=0.2) == 1.0


@given(overhang=LENGTH, above=LENGTH, fins=LENGTH, beside=LENGTH)
def test_the_sky_left_is_a_share(overhang: float, above: float, fins: float, beside: float) -> None:
    left = sky_left(2.0, 3.0, overhang, above, fins, beside)
    assert 0.0 <= left <= 1.0
    assert sky_left(2.0, 3.0, overhang + 0.5, above, fins, beside) <= left
    assert ground_left(3.0, fins, beside) >= left


def test_the_sky_under_an_overhang_by_view_factors() -> None:
    """Crossed strings of two strips at right angles, edge to edge: window h, overhang d, F = (h + d - s) / 2h."""
    height, depth = 2.0, 1.0
    hidden = (height + depth - math.hypot(height, depth)) / (2.0 * height)
    assert sky_left(height, 3.0, depth, 0.0, 0.0, 0.0) == pytest.approx(1.0 - 2.0 * hidden, abs=1e-3)


# ---- the ground on a plane


def test_land_throws_back_its_share() -> None:
    from pvlib.irradiance import get_ground_diffuse

    year = weather_year("pvlib:723170TYA.CSV")
    black, green = (irradiance_on(year, math.pi / 2, 1.0, share) for share in (0.0, 0.2))
    wanted = get_ground_diffuse(90.0, year.global_horizontal, 0.2)
    assert green.diffuse - black.diffuse == pytest.approx(wanted, abs=0.5)
    assert green.beam == pytest.approx(black.beam)
    assert green.from_below == pytest.approx(green.diffuse - black.diffuse)


@pytest.mark.parametrize("share", [-0.1, 1.1, math.nan])
def test_a_reflectance_is_a_share(share: float) -> None:
    with pytest.raises(OutOfRange, match="reflectance"):
        irradiance_on(weather_year("pvlib:723170TYA.CSV"), 0.0, 0.0, share)
