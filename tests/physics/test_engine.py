"""Laws of the engine."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.engine import (
    DIESEL_DENSITY,
    DIESEL_HEATING_VALUE,
    fuel_flow,
    fuel_volume,
    full_load_power,
    spare_power,
)

CURVE_SPEEDS = (0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0)
CURVE_POWERS = (0.20, 0.36, 0.53, 0.68, 0.81, 0.91, 0.97, 1.00)  # from memory, a generic turbo-diesel
RATED_SPEED = 250.0
RATED_POWER = 60e3
POWER = st.floats(0.0, 200e3)
SPEED = st.floats(0.0, 400.0)


@pytest.mark.parametrize(("share", "power"), list(zip(CURVE_SPEEDS, CURVE_POWERS, strict=True)))
def test_full_load_passes_through_the_curve(share: float, power: float) -> None:
    found = full_load_power(share * RATED_SPEED, RATED_SPEED, RATED_POWER, CURVE_SPEEDS, CURVE_POWERS)
    assert found == pytest.approx(power * RATED_POWER)


@given(st.floats(0.01, 0.3))
def test_torque_is_held_below_the_curve(share: float) -> None:
    speed = share * RATED_SPEED
    torque = full_load_power(speed, RATED_SPEED, RATED_POWER, CURVE_SPEEDS, CURVE_POWERS) / speed
    assert torque == pytest.approx(0.20 * RATED_POWER / (0.3 * RATED_SPEED), rel=1e-9)


def test_a_standing_engine_gives_nothing() -> None:
    assert full_load_power(0.0, RATED_SPEED, RATED_POWER, CURVE_SPEEDS, CURVE_POWERS) == 0.0


@given(POWER, POWER, st.floats(0.0, 1.0))
def test_spare_power_is_never_negative_and_never_passes_the_margin(
    full_load: float, demand: float, margin: float
) -> None:
    spare = spare_power(full_load, demand, margin)
    assert spare >= 0.0
    if spare > 0.0:
        assert demand + spare == pytest.approx((1.0 - margin) * full_load, rel=1e-9, abs=1e-6)


@given(POWER, POWER, SPEED, st.floats(0.2, 0.5))
def test_fuel_is_a_straight_line_over_power(one: float, other: float, speed: float, efficiency: float) -> None:
    engine = (speed, 0.0025, 150e3, efficiency, DIESEL_HEATING_VALUE)
    middle = fuel_flow(0.5 * (one + other), *engine)
    assert middle == pytest.approx(0.5 * (fuel_flow(one, *engine) + fuel_flow(other, *engine)), rel=1e-12)


@given(POWER, SPEED, st.floats(0.2, 0.5))
def test_an_engine_never_gives_more_than_its_fuel_holds(power: float, speed: float, efficiency: float) -> None:
    flow = fuel_flow(power, speed, 0.0025, 150e3, efficiency, DIESEL_HEATING_VALUE)
    assert power <= efficiency * flow * DIESEL_HEATING_VALUE * (1.0 + 1e-12)


def test_a_four_stroke_loses_its_friction_every_second_turn() -> None:
    """At 1200 rpm there are ten working strokes a second in each cylinder: pressure x displacement x 10."""
    flow = fuel_flow(0.0, 1200.0 * math.pi / 30.0, 0.002, 150e3, 0.4, 40e6)
    assert flow * 0.4 * 40e6 == pytest.approx(150e3 * 0.002 * 10.0)


@given(st.floats(0.0, 1e3))
def test_volume_and_density_give_the_mass_back(mass: float) -> None:
    assert fuel_volume(mass) * DIESEL_DENSITY == pytest.approx(mass, rel=1e-12)


@pytest.mark.parametrize(
    "call",
    [
        lambda: full_load_power(-1.0, 250.0, 60e3, CURVE_SPEEDS, CURVE_POWERS),
        lambda: full_load_power(1.0, 0.0, 60e3, CURVE_SPEEDS, CURVE_POWERS),
        lambda: full_load_power(1.0, 250.0, -60e3, CURVE_SPEEDS, CURVE_POWERS),
        lambda: spare_power(1.0, 1.0, 1.5),
        lambda: fuel_flow(-1.0, 200.0, 0.0025, 150e3, 0.42, 42.84e6),
        lambda: fuel_flow(1.0, -200.0, 0.0025, 150e3, 0.42, 42.84e6),
        lambda: fuel_flow(1.0, 200.0, -0.0025, 150e3, 0.42, 42.84e6),
        lambda: fuel_flow(1.0, 200.0, 0.0025, -150e3, 0.42, 42.84e6),
        lambda: fuel_flow(1.0, 200.0, 0.0025, 150e3, 0.0, 42.84e6),
        lambda: fuel_flow(1.0, 200.0, 0.0025, 150e3, 0.42, 0.0),
    ],
)
def test_nonsense_is_refused(call: Callable[[], object]) -> None:
    with pytest.raises(OutOfRange):
        call()
