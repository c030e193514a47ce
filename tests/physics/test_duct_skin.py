"""Heat through a duct's wall, and its outside against the dew point."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.duct import AIR_DENSITY
from anchorwatt.physics.duct_skin import (
    LAMINAR_NUSSELT,
    air_at_end,
    duct_conductance,
    inside_film,
    insulation_needed,
    skin_temperature,
)
from anchorwatt.physics.moist_air import CP_AIR

diameters = st.floats(0.05, 0.4)
insulations = st.floats(0.0, 0.06)
conductivities = st.floats(0.02, 0.1)
films = st.floats(1.0, 40.0)
cold = st.floats(2.0, 18.0)
warm = st.floats(20.0, 40.0)


@given(cold, warm, diameters, insulations, conductivities, films)
def test_skin_lies_between_air_and_surroundings(
    air: float, around: float, diameter: float, thick: float, k: float, film: float
) -> None:
    assert air < skin_temperature(air, around, diameter, thick, k, film) < around


@given(cold, warm, diameters, insulations, conductivities, films, st.floats(0.001, 0.03))
def test_more_insulation_makes_the_skin_warmer(
    air: float, around: float, diameter: float, thick: float, k: float, film: float, more: float
) -> None:
    thin = skin_temperature(air, around, diameter, thick, k, film)
    assert skin_temperature(air, around, diameter, thick + more, k, film) > thin


@given(cold, warm, diameters, insulations, conductivities, films)
def test_heat_that_reaches_the_skin_is_the_heat_that_passes(
    air: float, around: float, diameter: float, thick: float, k: float, film: float
) -> None:
    skin = skin_temperature(air, around, diameter, thick, k, film, 8.0)
    through = duct_conductance(diameter, thick, k, film, 8.0) * (around - air)
    assert 8.0 * math.pi * (diameter + 2.0 * thick) * (around - skin) == pytest.approx(through)


@given(cold, warm, st.floats(0.05, 0.95), diameters, conductivities, films)
def test_the_insulation_needed_brings_the_skin_to_the_dew_point(
    air: float, around: float, part: float, diameter: float, k: float, film: float
) -> None:
    dew = air + part * (around - air)
    needed = insulation_needed(air, around, dew, diameter, k, film)
    if needed == 0.0:
        assert skin_temperature(air, around, diameter, 0.0, k, film) >= dew
    elif math.isfinite(needed):
        assert skin_temperature(air, around, diameter, needed, k, film) == pytest.approx(dew, abs=1e-5)


def test_in_saturated_surroundings_no_insulation_is_enough() -> None:
    assert insulation_needed(10.0, 25.0, 25.0, 0.125, 0.038, 12.0) == math.inf


@given(cold, warm, st.floats(0.1, 3.0), st.floats(0.1, 20.0), st.floats(0.005, 0.3))
def test_air_warms_towards_its_surroundings(
    air: float, around: float, conductance: float, length: float, flow: float
) -> None:
    end = air_at_end(air, around, conductance, length, flow)
    assert air < end < around
    gained = AIR_DENSITY * flow * CP_AIR * (end - air)
    assert gained <= conductance * length * (around - air) * (1.0 + 1e-9)
    assert gained >= conductance * length * (around - end) * (1.0 - 1e-9)


@given(st.floats(0.0, 15.0), diameters, st.floats(0.1, 5.0))
def test_faster_air_has_at_least_the_film_of_slower(velocity: float, diameter: float, more: float) -> None:
    assert inside_film(velocity + more, diameter) >= inside_film(velocity, diameter)
    assert inside_film(velocity, diameter) >= LAMINAR_NUSSELT * 0.025 / diameter


def test_impossible_ducts_are_refused() -> None:
    for values in (
        (0.0, 0.01, 0.04, 10.0),
        (0.1, -0.01, 0.04, 10.0),
        (0.1, 0.01, 0.0, 10.0),
        (0.1, 0.01, 0.04, 0.0),
    ):
        with pytest.raises(OutOfRange):
            duct_conductance(*values)
        with pytest.raises(OutOfRange):
            skin_temperature(10.0, 28.0, *values)
    for film in ((-1.0, 0.1), (1.0, 0.0)):
        with pytest.raises(OutOfRange):
            inside_film(*film)
    for end in ((-1.0, 1.0, 0.1), (1.0, -1.0, 0.1), (1.0, 1.0, 0.0)):
        with pytest.raises(OutOfRange):
            air_at_end(10.0, 28.0, *end)
