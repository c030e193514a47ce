"""Heat of people: the total stays."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.people import latent_from_person, sensible_from_person

watts = st.floats(0.0, 1000.0)
shifts = st.floats(0.0, 50.0)
temperatures = st.floats(-20.0, 60.0)


@given(watts, watts, shifts, temperatures)
def test_total_is_kept(sensible: float, latent: float, shift: float, temperature: float) -> None:
    total = sensible_from_person(sensible, latent, shift, temperature)
    total += latent_from_person(sensible, latent, shift, temperature)
    assert total == pytest.approx(sensible + latent)


@given(watts, watts, shifts, temperatures)
def test_neither_is_negative(sensible: float, latent: float, shift: float, temperature: float) -> None:
    assert sensible_from_person(sensible, latent, shift, temperature) >= 0.0
    assert latent_from_person(sensible, latent, shift, temperature) >= 0.0


@given(watts, watts, shifts)
def test_at_24_degrees_as_given(sensible: float, latent: float, shift: float) -> None:
    assert sensible_from_person(sensible, latent, shift, 24.0) == sensible
    assert latent_from_person(sensible, latent, shift, 24.0) == pytest.approx(latent)


@given(watts, watts, shifts, temperatures, st.floats(0.0, 5.0))
def test_warmer_is_less_sensible(
    sensible: float, latent: float, shift: float, temperature: float, warmer: float
) -> None:
    now = sensible_from_person(sensible, latent, shift, temperature)
    assert sensible_from_person(sensible, latent, shift, temperature + warmer) <= now + 1e-9


@pytest.mark.parametrize("values", [(-1.0, 40.0, 5.0), (75.0, -1.0, 5.0), (75.0, 40.0, -5.0), (math.nan, 40.0, 5.0)])
def test_impossible_people_are_refused(values: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        sensible_from_person(*values, 24.0)
