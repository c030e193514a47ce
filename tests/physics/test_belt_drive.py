"""Laws of a belt drive's forces."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.belt import belt_power_limit
from anchorwatt.physics.belt_drive import belt_speed, combined_load, effective_tension, shaft_load, side_tensions

FORCE = st.floats(1.0, 5000.0)
RATIO = st.floats(1.5, 10.0)
ANGLE = st.floats(-math.pi, math.pi)


@given(FORCE, RATIO)
def test_sides_differ_by_the_effective_tension_and_have_the_ratio(force: float, ratio: float) -> None:
    tight, slack = side_tensions(force, ratio)
    assert tight - slack == pytest.approx(force, rel=1e-9)
    assert tight / slack == pytest.approx(ratio, rel=1e-9)


@given(FORCE, RATIO)
def test_parallel_sides_pull_by_the_hub_load_formula(force: float, ratio: float) -> None:
    tight, slack = side_tensions(force, ratio)
    assert shaft_load(tight, slack, math.pi) == pytest.approx(force * (ratio + 1.0) / (ratio - 1.0), rel=1e-9)


@given(FORCE, RATIO, st.floats(0.0, math.pi))
def test_no_wrap_pulls_more_than_parallel_sides(force: float, ratio: float, wrap: float) -> None:
    tight, slack = side_tensions(force, ratio)
    assert tight - slack - 1e-6 <= shaft_load(tight, slack, wrap) <= tight + slack + 1e-6


@given(FORCE, RATIO, RATIO)
def test_a_belt_that_grips_better_bends_the_shaft_less(force: float, one: float, other: float) -> None:
    loads = [shaft_load(*side_tensions(force, ratio), math.pi) for ratio in sorted((one, other))]
    assert loads[0] >= loads[1] * (1.0 - 1e-12)


@given(st.floats(50.0, 500.0), st.floats(0.03, 0.2))
def test_below_the_reference_speed_the_belts_limit_is_one_pull(speed: float, diameter: float) -> None:
    """`belt_power_limit` holds the torque, so the effective tension must not depend on speed."""
    pull = effective_tension(belt_power_limit(5000.0, 500.0, speed), belt_speed(speed, diameter))
    assert pull == pytest.approx(5000.0 / (250.0 * diameter), rel=1e-9)


@given(FORCE, FORCE, ANGLE, ANGLE)
def test_loads_together_lie_between_difference_and_sum(one: float, other: float, a: float, b: float) -> None:
    assert abs(one - other) - 1e-6 <= combined_load((one, other), (a, b)) <= one + other + 1e-6


def test_opposite_loads_cancel() -> None:
    assert combined_load((300.0, 300.0), (0.0, math.pi)) == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize(
    ("function", "arguments"),
    [
        (belt_speed, (-1.0, 0.065)),
        (belt_speed, (1.0, 0.0)),
        (effective_tension, (-1.0, 10.0)),
        (effective_tension, (1.0, 0.0)),
        (side_tensions, (-1.0, 4.0)),
        (side_tensions, (1.0, 1.0)),
        (shaft_load, (-1.0, 1.0, 1.0)),
        (shaft_load, (1.0, 1.0, 3.2)),
        (combined_load, ((1.0,), ())),
        (combined_load, ((-1.0,), (0.0,))),
    ],
)
def test_nonsense_is_refused(function: Callable[..., object], arguments: tuple[object, ...]) -> None:
    with pytest.raises(OutOfRange):
        function(*arguments)
