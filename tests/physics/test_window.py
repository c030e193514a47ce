"""Windows: the sun's share falls with slant, and none is made from nothing."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.window import _gain, _sheet, angle_modifier, diffuse_modifier

panes_ = st.sampled_from([1, 2])


@given(st.floats(0.0, 1.0), panes_)
def test_modifier_is_a_share(cosine: float, panes: int) -> None:
    assert 0.0 <= angle_modifier(cosine, panes) <= 1.0


@given(st.floats(1e-6, 1.0), st.floats(0.0, 1.0), panes_)
def test_a_more_slanting_sun_gains_no_more(cosine: float, part: float, panes: int) -> None:
    assert angle_modifier(part * cosine, panes) <= angle_modifier(cosine, panes) + 1e-12


@pytest.mark.parametrize("panes", [1, 2])
def test_normal_incidence_is_the_reference(panes: int) -> None:
    assert angle_modifier(1.0, panes) == 1.0


@pytest.mark.parametrize("panes", [1, 2])
def test_grazing_sun_and_sun_behind_give_nothing(panes: int) -> None:
    assert angle_modifier(0.0, panes) == 0.0
    assert angle_modifier(-0.5, panes) == 0.0
    assert angle_modifier(1e-9, panes) == pytest.approx(0.0, abs=1e-6)


@given(st.floats(0.01, 0.99))
def test_two_panes_dim_a_slanting_sun_more_than_one(cosine: float) -> None:
    assert angle_modifier(cosine, 2) <= angle_modifier(cosine, 1) + 1e-12


@given(st.floats(0.0, 1.0), st.sampled_from([0, 1]))
def test_a_sheet_passes_reflects_and_absorbs_no_more_than_all(cosine: float, polarisation: int) -> None:
    transmittance, reflectance = _sheet(cosine, polarisation)
    assert transmittance >= 0.0
    assert reflectance >= 0.0
    assert transmittance + reflectance <= 1.0 + 1e-12


@pytest.mark.parametrize("panes", [1, 2])
def test_gain_is_a_share(panes: int) -> None:
    assert 0.5 < _gain(1.0, panes) < 1.0


@pytest.mark.parametrize("panes", [1, 2])
def test_diffuse_modifier_is_the_mean_over_the_half_sphere(panes: int) -> None:
    from scipy.integrate import quad

    integral, _ = quad(lambda a: 2 * math.sin(a) * math.cos(a) * angle_modifier(math.cos(a), panes), 0, math.pi / 2)
    assert diffuse_modifier(panes) == pytest.approx(integral, abs=1e-4)


@pytest.mark.parametrize("panes", [0, 3])
def test_other_numbers_of_panes_are_refused(panes: int) -> None:
    with pytest.raises(OutOfRange, match="1 or 2 panes"):
        angle_modifier(0.5, panes)


@pytest.mark.parametrize("cosine", [1.1, math.nan])
def test_impossible_cosines_are_refused(cosine: float) -> None:
    with pytest.raises(OutOfRange, match="cosine"):
        angle_modifier(cosine, 1)
