"""Laws of an alternator: balance, heat, and the exact two-node solution."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.linalg import expm

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.alternator import (
    REFERENCE_SPEED,
    alternator_losses,
    alternator_temperatures,
    cold_current,
    copper_resistance,
    current_for_shaft_power,
    fold_back,
    frame_cooling,
    frame_heat,
    hot_factor,
    scaled_drop,
    shaft_power,
    steady_temperatures,
    turning_losses,
    winding_heat,
)

SPEEDS = tuple(rpm * math.pi / 30.0 for rpm in (1050.0, 1500.0, 2000.0, 3000.0, 6000.0))
SHARES = (0.0, 0.50, 0.77, 0.95, 1.0)

CURRENT = st.floats(0.0, 300.0)
VOLTAGE = st.sampled_from([14.2, 28.4, 56.8])
SPEED = st.floats(0.0, 1500.0)
WINDING = st.floats(-10.0, 220.0)
RATED = st.floats(50.0, 300.0)
EFFICIENCY = st.floats(0.40, 0.85)
HEAT = st.floats(0.0, 3000.0)
CONDUCTANCE = st.floats(2.0, 60.0)
CAPACITY = st.floats(500.0, 15000.0)
TEMPERATURE = st.floats(0.0, 150.0)
STEP = st.floats(0.0, 7200.0)


def test_nothing_below_the_first_speed() -> None:
    assert cold_current(SPEEDS[0] * 0.999, SPEEDS, SHARES, 150.0) == 0.0
    assert cold_current(SPEEDS[0] * 0.5, SPEEDS, (0.3, *SHARES[1:]), 150.0) == 0.0


@given(SPEED, st.floats(0.0, 100.0))
def test_faster_gives_no_less(speed: float, more: float) -> None:
    assert cold_current(speed + more, SPEEDS, SHARES, 150.0) >= cold_current(speed, SPEEDS, SHARES, 150.0)


@given(WINDING, st.floats(0.0, 1.0), st.floats(0.0, 50.0))
def test_hotter_gives_no_more(winding: float, loss: float, more: float) -> None:
    assert 0.2 <= hot_factor(winding + more, loss) <= hot_factor(winding, loss) <= 1.0


@pytest.mark.parametrize(("winding", "factor"), [(25.0, 1.0), (0.0, 1.0), (120.0, 0.75), (500.0, 0.2)])
def test_hot_factor_at_its_ends(winding: float, factor: float) -> None:
    assert hot_factor(winding, 0.25) == pytest.approx(factor)


@given(VOLTAGE, RATED, EFFICIENCY)
def test_efficiency_at_the_reference_point_is_the_stated_one(voltage: float, rated: float, efficiency: float) -> None:
    current = 0.5 * rated
    taken = shaft_power(current, voltage, REFERENCE_SPEED, 25.0, rated, efficiency)
    assert current * voltage / taken == pytest.approx(efficiency, rel=1e-12)


@given(CURRENT, VOLTAGE, SPEED, WINDING, RATED, EFFICIENCY)
def test_shaft_power_is_output_and_losses(
    current: float, voltage: float, speed: float, winding: float, rated: float, efficiency: float
) -> None:
    point = (current, voltage, speed, winding, rated, efficiency)
    assert shaft_power(*point) == pytest.approx(current * voltage + alternator_losses(*point), rel=1e-12)
    assert alternator_losses(*point) > 1.8 * current


@given(CURRENT, VOLTAGE, SPEED, WINDING, RATED, EFFICIENCY, st.floats(0.1, 50.0))
def test_losses_grow_with_current_speed_and_heat(
    current: float, voltage: float, speed: float, winding: float, rated: float, efficiency: float, more: float
) -> None:
    losses = alternator_losses(current, voltage, speed, winding, rated, efficiency)
    assert alternator_losses(current + more, voltage, speed, winding, rated, efficiency) > losses
    assert alternator_losses(current, voltage, speed + more, winding, rated, efficiency) > losses
    assert alternator_losses(current, voltage, speed, winding + more, rated, efficiency) >= losses


@given(CURRENT, VOLTAGE, SPEED, WINDING, RATED, EFFICIENCY)
def test_current_undoes_shaft_power(
    current: float, voltage: float, speed: float, winding: float, rated: float, efficiency: float
) -> None:
    power = shaft_power(current, voltage, speed, winding, rated, efficiency)
    found = current_for_shaft_power(power, voltage, speed, winding, rated, efficiency)
    assert found == pytest.approx(current, rel=1e-9, abs=1e-9)


@given(st.floats(1.0, 700.0))
def test_four_times_the_speed_is_eight_times_the_iron_and_windage(speed: float) -> None:
    excitation = turning_losses(14.3, 0.0, 100.0, 0.67)
    slow = turning_losses(14.3, speed, 100.0, 0.67) - excitation
    assert turning_losses(14.3, 4.0 * speed, 100.0, 0.67) - excitation == pytest.approx(8.0 * slow, rel=1e-6)


def test_a_shaft_that_cannot_turn_the_machine_gives_no_current() -> None:
    assert current_for_shaft_power(20.0, 14.2, REFERENCE_SPEED, 25.0, 100.0, 0.67) == 0.0


def test_an_efficiency_that_leaves_no_room_for_the_rectifier_is_refused() -> None:
    with pytest.raises(OutOfRange, match="rectifier"):
        shaft_power(50.0, 14.3, REFERENCE_SPEED, 25.0, 100.0, 0.89)


@given(st.floats(0.0, 1e4))
def test_all_heat_goes_to_winding_or_frame(losses: float) -> None:
    assert winding_heat(losses) + frame_heat(losses) == pytest.approx(losses, rel=1e-15)
    assert min(winding_heat(losses), frame_heat(losses)) >= 0.0


def test_winding_share_is_what_the_loss_split_gives_at_the_reference_point() -> None:
    """Copper and half of iron and windage, for the 14.3 V machine of 67 %."""
    losses = alternator_losses(50.0, 14.3, REFERENCE_SPEED, 25.0, 100.0, 0.67)
    copper = copper_resistance(14.3, 25.0, 100.0, 0.67) * 50.0**2
    excitation = turning_losses(14.3, 0.0, 100.0, 0.67)
    iron_and_windage = turning_losses(14.3, REFERENCE_SPEED, 100.0, 0.67) - excitation
    assert winding_heat(losses) / losses == pytest.approx((copper + 0.5 * iron_and_windage) / losses, abs=0.05)


@given(st.floats(1.0, 60.0), SPEED, st.floats(0.0, 500.0))
def test_faster_cools_no_less_within_its_floor_and_cap(conductance: float, speed: float, more: float) -> None:
    slow = frame_cooling(conductance, speed, REFERENCE_SPEED)
    fast = frame_cooling(conductance, speed + more, REFERENCE_SPEED)
    assert 0.12 * conductance <= slow <= fast <= 2.0 * conductance


def test_cooling_is_as_stated_at_rated_speed() -> None:
    assert frame_cooling(12.0, REFERENCE_SPEED, REFERENCE_SPEED) == pytest.approx(12.0)


@given(TEMPERATURE, TEMPERATURE, TEMPERATURE, HEAT, HEAT, CONDUCTANCE, CONDUCTANCE, CAPACITY, CAPACITY, STEP)
def test_temperatures_follow_scipy_and_conserve_energy(
    winding: float,
    frame: float,
    air: float,
    heat: float,
    frame_part: float,
    inner: float,
    outer: float,
    winding_capacity: float,
    frame_capacity: float,
    step: float,
) -> None:
    """scipy.linalg.expm of the system with its constant heat, and with the heat to the air summed."""
    matrix = np.zeros((4, 4))
    matrix[0] = [-inner / winding_capacity, inner / winding_capacity, 0.0, heat / winding_capacity]
    matrix[1] = [inner / frame_capacity, -(inner + outer) / frame_capacity, 0.0, frame_part / frame_capacity]
    matrix[2] = [0.0, outer, 0.0, 0.0]
    start = np.array([winding - air, frame - air, 0.0, 1.0])
    end = expm(matrix * step) @ start
    ours = alternator_temperatures(
        winding, frame, air, heat, frame_part, inner, outer, winding_capacity, frame_capacity, step
    )
    assert ours[0] == pytest.approx(air + end[0], abs=1e-7)
    assert ours[1] == pytest.approx(air + end[1], abs=1e-7)
    stored = winding_capacity * (ours[0] - winding) + frame_capacity * (ours[1] - frame)
    given_off = float(end[2])
    assert stored + given_off == pytest.approx((heat + frame_part) * step, rel=1e-8, abs=1e-2)


@given(TEMPERATURE, TEMPERATURE, HEAT, CONDUCTANCE, CONDUCTANCE, CAPACITY, CAPACITY, STEP, st.integers(2, 60))
def test_many_steps_end_where_one_does(
    start: float,
    air: float,
    losses: float,
    inner: float,
    outer: float,
    winding_capacity: float,
    frame_capacity: float,
    step: float,
    parts: int,
) -> None:
    constants = (
        *(air, winding_heat(losses), frame_heat(losses)),
        *(inner, outer, winding_capacity, frame_capacity),
    )
    at_once = alternator_temperatures(start, start, *constants, step)
    winding, frame = start, start
    for _ in range(parts):
        winding, frame = alternator_temperatures(winding, frame, *constants, step / parts)
    assert (winding, frame) == pytest.approx(at_once, abs=1e-8)


@given(TEMPERATURE, HEAT, HEAT, CONDUCTANCE, CONDUCTANCE, CAPACITY, CAPACITY)
def test_a_steady_machine_stays_and_any_other_ends_there(
    air: float,
    heat: float,
    frame_part: float,
    inner: float,
    outer: float,
    winding_capacity: float,
    frame_capacity: float,
) -> None:
    steady = steady_temperatures(air, heat, frame_part, inner, outer)
    constants = (air, heat, frame_part, inner, outer, winding_capacity, frame_capacity)
    assert alternator_temperatures(*steady, *constants, 600.0) == pytest.approx(steady, abs=1e-9)
    assert alternator_temperatures(air, air, *constants, 1e7) == pytest.approx(steady, abs=1e-6)


def test_steady_heat_leaves_through_the_frame() -> None:
    winding, frame = steady_temperatures(40.0, 700.0, 300.0, 25.0, 12.5)
    assert (winding - frame) * 25.0 == pytest.approx(700.0)
    assert (frame - 40.0) * 12.5 == pytest.approx(1000.0)


@pytest.mark.parametrize(("frame", "share"), [(90.0, 1.0), (100.0, 1.0), (102.5, 0.75), (110.0, 0.0), (140.0, 0.0)])
def test_fold_back(frame: float, share: float) -> None:
    assert fold_back(frame, 100.0, 10.0) == pytest.approx(share)


@pytest.mark.parametrize(("frame", "share"), [(100.0, 1.0), (100.001, 0.0)])
def test_fold_back_without_a_band_is_a_switch(frame: float, share: float) -> None:
    assert fold_back(frame, 100.0, 0.0) == share


@pytest.mark.parametrize(
    "call",
    [
        lambda: cold_current(-1.0, SPEEDS, SHARES, 100.0),
        lambda: cold_current(1.0, SPEEDS, SHARES, -100.0),
        lambda: hot_factor(25.0, 1.1),
        lambda: scaled_drop(0.0, 0.67),
        lambda: scaled_drop(14.3, 0.0),
        lambda: copper_resistance(14.3, 25.0, 0.0, 0.67),
        lambda: copper_resistance(14.3, 500.0, 100.0, 0.67),
        lambda: turning_losses(14.3, -1.0, 100.0, 0.67),
        lambda: turning_losses(14.3, 1.0, 0.0, 0.67),
        lambda: alternator_losses(-1.0, 14.3, 1.0, 25.0, 100.0, 0.67),
        lambda: frame_cooling(0.0, 1.0, 1.0),
        lambda: frame_cooling(1.0, -1.0, 1.0),
        lambda: frame_cooling(1.0, 1.0, 0.0),
        lambda: steady_temperatures(25.0, 1.0, 1.0, 0.0, 1.0),
        lambda: steady_temperatures(25.0, 1.0, 1.0, 1.0, 0.0),
        lambda: alternator_temperatures(25.0, 25.0, 25.0, 1.0, 1.0, 1.0, 1.0, 0.0, 1.0, 1.0),
        lambda: alternator_temperatures(25.0, 25.0, 25.0, 1.0, 1.0, 1.0, 1.0, 1.0, 0.0, 1.0),
        lambda: alternator_temperatures(25.0, 25.0, 25.0, 1.0, 1.0, 1.0, 1.0, 1.0, 1.0, -1.0),
        lambda: fold_back(100.0, 100.0, -1.0),
    ],
)
def test_nonsense_is_refused(call: Callable[[], object]) -> None:
    with pytest.raises(OutOfRange):
        call()
