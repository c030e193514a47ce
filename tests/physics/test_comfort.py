"""Votes: laws, and what is refused."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.comfort import dissatisfied_share, operative_temperature, predicted_mean_vote

airs = st.floats(16.0, 32.0)
speeds = st.floats(0.05, 0.3)
humidities = st.floats(0.2, 0.9)
rates = st.floats(0.7, 1.6)
clothings = st.floats(0.3, 3.0)
warmer = st.floats(0.5, 4.0)


@settings(max_examples=40)
@given(airs, airs, speeds, humidities, rates, clothings, warmer)
def test_warmer_air_or_walls_feel_warmer(
    air: float, radiant: float, speed: float, humidity: float, rate: float, clothing: float, add: float
) -> None:
    now = predicted_mean_vote(air, radiant, speed, humidity, rate, clothing)
    assert predicted_mean_vote(air + add, radiant, speed, humidity, rate, clothing) > now
    assert predicted_mean_vote(air, radiant + add, speed, humidity, rate, clothing) > now


@settings(max_examples=40)
@given(st.floats(16.0, 27.0), speeds, humidities, rates, st.floats(0.3, 2.0))
def test_a_cover_warms_a_cool_sleeper(air: float, speed: float, humidity: float, rate: float, clothing: float) -> None:
    bare = predicted_mean_vote(air, air, speed, humidity, rate, clothing)
    assert predicted_mean_vote(air, air, speed, humidity, rate, clothing + 1.0) > bare


@given(st.floats(-4.0, 4.0), st.floats(0.01, 1.0))
def test_the_further_from_neutral_the_more_are_dissatisfied(vote: float, add: float) -> None:
    assert 0.05 - 1e-12 <= dissatisfied_share(vote) <= 1.0
    assert dissatisfied_share(vote) == pytest.approx(dissatisfied_share(-vote))
    assert dissatisfied_share(abs(vote) + add) >= dissatisfied_share(vote)


@given(airs, airs, st.floats(0.0, 1.0))
def test_operative_temperature_lies_between_air_and_walls(air: float, radiant: float, speed: float) -> None:
    found = operative_temperature(air, radiant, speed)
    assert min(air, radiant) - 1e-9 <= found <= max(air, radiant) + 1e-9


@pytest.mark.parametrize(
    "state",
    [
        (-1.0, 25.0, 0.1, 0.5, 1.0, 0.5),
        (25.0, 90.0, 0.1, 0.5, 1.0, 0.5),
        (25.0, 25.0, -0.1, 0.5, 1.0, 0.5),
        (25.0, 25.0, 0.1, 50.0, 1.0, 0.5),
        (25.0, 25.0, 0.1, 0.5, 58.2, 0.5),
        (25.0, 25.0, 0.1, 0.5, 1.0, -0.5),
    ],
    ids=["air", "walls", "speed", "humidity", "metabolic rate", "clothing"],
)
def test_what_the_vote_is_not_for_is_refused(state: tuple[float, float, float, float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        predicted_mean_vote(*state)


def test_operative_temperature_in_a_wind_is_refused() -> None:
    with pytest.raises(OutOfRange):
        operative_temperature(25.0, 25.0, 2.0)
