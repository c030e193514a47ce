"""Carbon dioxide in one cabin: laws of its balance."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.carbon_dioxide import (
    OUTDOOR,
    concentration_after,
    fresh_air_for,
    generation_rate,
    steady_concentration,
)

times = st.floats(0.0, 1e6)
generations = st.floats(0.0, 2e-5)
flows = st.floats(1e-5, 0.1)
volumes = st.floats(1.0, 60.0)
starts = st.floats(0.0, 0.05)


@given(times, starts, generations, flows, volumes)
def test_a_cabin_lies_between_its_start_and_its_steady_state(
    time: float, start: float, generation: float, flow: float, volume: float
) -> None:
    steady = steady_concentration(generation, flow, OUTDOOR)
    found = concentration_after(time, start, generation, flow, volume, OUTDOOR)
    hair = 1e-9 * max(start, steady)
    assert min(start, steady) - hair <= found <= max(start, steady) + hair


@given(times, generations, flows, volumes, st.floats(1.0, 1e5))
def test_in_a_cabin_that_people_have_entered_it_only_rises(
    time: float, generation: float, flow: float, volume: float, later: float
) -> None:
    now = concentration_after(time, OUTDOOR, generation, flow, volume, OUTDOOR)
    then = concentration_after(time + later, OUTDOOR, generation, flow, volume, OUTDOOR)
    assert then >= now * (1.0 - 1e-12)


@given(times, times, starts, generations, flows, volumes)
def test_two_times_after_each_other_are_one(
    first: float, second: float, start: float, generation: float, flow: float, volume: float
) -> None:
    between = concentration_after(first, start, generation, flow, volume, OUTDOOR)
    found = concentration_after(second, between, generation, flow, volume, OUTDOOR)
    assert found == pytest.approx(concentration_after(first + second, start, generation, flow, volume, OUTDOOR))


@given(st.floats(0.0, 1e5), starts, generations, volumes)
def test_without_outdoor_air_everything_stays(time: float, start: float, generation: float, volume: float) -> None:
    found = concentration_after(time, start, generation, 0.0, volume, OUTDOOR)
    assert found == pytest.approx(start + generation * time / volume)
    assert steady_concentration(generation, 0.0, OUTDOOR) == (math.inf if generation else OUTDOOR)


@given(st.floats(1e-7, 2e-5), st.floats(500e-6, 0.05))
def test_the_fresh_air_for_a_limit_brings_a_cabin_to_it(generation: float, limit: float) -> None:
    flow = fresh_air_for(generation, limit, OUTDOOR)
    assert steady_concentration(generation, flow, OUTDOOR) == pytest.approx(limit)


@given(st.floats(20.0, 200.0), st.floats(0.5, 10.0), st.floats(-20.0, 45.0), st.floats(80e3, 110e3))
def test_what_is_breathed_out_goes_with_the_heat_and_the_state_of_the_air(
    basal: float, rate: float, temperature: float, pressure: float
) -> None:
    found = generation_rate(basal, rate, 0.85, temperature, pressure)
    assert generation_rate(basal, 2.0 * rate, 0.85, temperature, pressure) == pytest.approx(2.0 * found)
    assert generation_rate(basal, rate, 0.85, temperature, 2.0 * pressure) == pytest.approx(0.5 * found)
    assert generation_rate(basal, rate, 1.0, temperature, pressure) > found


def test_what_cannot_be_is_refused() -> None:
    # A basal rate in MJ/day is not one in W.
    for person in (
        (7.73, 1.0, 0.85, 20.0, 1e5),
        (80.0, -1.0, 0.85, 20.0, 1e5),
        (80.0, 1.0, 0.0, 20.0, 1e5),
        (80.0, 1.0, 0.85, -274.0, 1e5),
        (80.0, 1.0, 0.85, 20.0, 0.0),
    ):
        with pytest.raises(OutOfRange):
            generation_rate(*person)
    for steady in ((-1e-6, 1e-3, OUTDOOR), (1e-6, -1e-3, OUTDOOR), (1e-6, 1e-3, 1.1)):
        with pytest.raises(OutOfRange):
            steady_concentration(*steady)
    for after in (
        (-1.0, 0.001, 1e-6, 1e-3, 12.0, OUTDOOR),
        (1.0, -0.001, 1e-6, 1e-3, 12.0, OUTDOOR),
        (1.0, 0.001, -1e-6, 1e-3, 12.0, OUTDOOR),
        (1.0, 0.001, 1e-6, -1e-3, 12.0, OUTDOOR),
        (1.0, 0.001, 1e-6, 1e-3, 0.0, OUTDOOR),
        (1.0, 0.001, 1e-6, 1e-3, 12.0, -0.1),
    ):
        with pytest.raises(OutOfRange):
            concentration_after(*after)
    for fresh in ((-1e-6, 1e-3, OUTDOOR), (1e-6, OUTDOOR, OUTDOOR), (1e-6, 1e-3, -0.1)):
        with pytest.raises(OutOfRange):
            fresh_air_for(*fresh)
