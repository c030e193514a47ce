"""Laws of floating."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics import hydrostatics

MOMENTS = st.floats(-900.0, 900.0)
STIFF = st.floats(0.5, 20.0)


@given(MOMENTS, STIFF)
def test_heel_goes_to_the_side_of_the_moment(moment: float, stiffness: float) -> None:
    heel = hydrostatics.heel_angle(moment, 15_000.0, stiffness)
    assert heel * moment >= 0.0
    assert hydrostatics.heel_angle(-moment, 15_000.0, stiffness) == -heel


@given(MOMENTS.filter(lambda moment: abs(moment) > 1.0), STIFF)
def test_an_inclining_test_gives_the_height_back(moment: float, stiffness: float) -> None:
    heel = hydrostatics.heel_angle(moment, 15_000.0, stiffness)
    assert hydrostatics.metacentric_height_from_heel(moment, 15_000.0, heel) == pytest.approx(stiffness, rel=1e-9)


@given(st.floats(-0.5, 0.5), st.floats(1.0, 12.0))
def test_bow_and_stern_make_the_trim(trim: float, flotation: float) -> None:
    bow = hydrostatics.trim_at_bow(trim, flotation, 13.0)
    stern = bow - trim
    assert bow - stern == pytest.approx(trim)
    assert bow * (13.0 - (13.0 - flotation)) == pytest.approx(-stern * (13.0 - flotation), abs=1e-12)


@given(st.floats(1.0, 500.0), st.floats(-0.8, 4.0), st.floats(0.01, 2.0))
def test_higher_weight_costs_stability(mass: float, height: float, more: float) -> None:
    low, high = (
        hydrostatics.metacentric_height_after(1.1, 15_000.0, mass, mass * up, 38.0) for up in (height, height + more)
    )
    assert high < low


def test_weight_on_the_centre_of_gravity_leaves_it() -> None:
    assert hydrostatics.gravity_height(0.4, 15_000.0, 300.0, 300.0 * 0.4) == pytest.approx(0.4)


@pytest.mark.parametrize(
    ("function", "values"),
    [
        (hydrostatics.gravity_shift, (1.0, 0.0)),
        (hydrostatics.heel_angle, (1.0, 1.0, 0.0)),
        (hydrostatics.heel_angle, (9e3, 15_000.0, 1.0)),
        (hydrostatics.metacentric_height_from_heel, (1.0, 1.0, 0.0)),
        (hydrostatics.metacentric_height_from_heel, (1.0, 1.0, math.radians(11.0))),
        (hydrostatics.mass_per_immersion, (0.0,)),
        (hydrostatics.moment_to_trim, (1.0, 1.0, 0.0)),
        (hydrostatics.trim_at_bow, (0.1, 13.0, 13.0)),
        (hydrostatics.gravity_height, (0.4, 100.0, -100.0, 0.0)),
        (hydrostatics.metacentric_height_after, (1.0, 100.0, -100.0, 0.0, 10.0)),
        (hydrostatics.waterplane_inertia_along, (0.5, 10.0, 3.0)),
        (hydrostatics.waterplane_inertia_across, (0.7, 10.0, 0.0)),
    ],
)
def test_limits(function, values) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(OutOfRange):
        function(*values)
