"""Flow in round pipes: laws that hold for any fluid."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.pipe import dynamic_pressure, friction_gradient, pipe_velocity

flows = st.floats(1e-6, 1.0)
diameters = st.floats(0.01, 0.5)
AIR, WATER = (1.2, 1.81e-5), (1023.0, 0.96e-3)


@given(flows, st.floats(1.01, 3.0), diameters, st.sampled_from([AIR, WATER]))
def test_more_flow_loses_more(flow: float, more: float, diameter: float, fluid: tuple[float, float]) -> None:
    assert friction_gradient(flow * more, diameter, 1e-5, *fluid) > friction_gradient(flow, diameter, 1e-5, *fluid)


@given(flows, diameters, st.floats(1.01, 3.0), st.sampled_from([AIR, WATER]))
def test_a_larger_pipe_loses_less(flow: float, diameter: float, more: float, fluid: tuple[float, float]) -> None:
    assert friction_gradient(flow, diameter * more, 1e-5, *fluid) < friction_gradient(flow, diameter, 1e-5, *fluid)


@given(flows, diameters, st.floats(0.0, 0.04), st.floats(0.001, 0.01))
def test_a_rougher_pipe_loses_at_least_as_much(flow: float, diameter: float, rough: float, more: float) -> None:
    smooth, rougher = (friction_gradient(flow, diameter, e * diameter, *AIR) for e in (rough, rough + more))
    assert rougher >= smooth


@given(flows, diameters)
def test_velocity_times_area_is_the_flow(flow: float, diameter: float) -> None:
    assert pipe_velocity(flow, diameter) * math.pi * diameter**2 / 4.0 == pytest.approx(flow)


def test_still_fluid_loses_nothing() -> None:
    assert friction_gradient(0.0, 0.1, 1e-5, *AIR) == 0.0
    assert dynamic_pressure(0.0, 1.2) == 0.0


@pytest.mark.parametrize(
    "values",
    [
        (-1.0, 0.1, 0.0, 1.2, 1.8e-5),
        (0.1, 0.0, 0.0, 1.2, 1.8e-5),
        (0.1, 0.1, -1e-6, 1.2, 1.8e-5),
        (0.1, 0.1, 0.006, 1.2, 1.8e-5),
        (0.1, 0.1, 0.0, 0.0, 1.8e-5),
        (0.1, 0.1, 0.0, 1.2, 0.0),
        (math.nan, 0.1, 0.0, 1.2, 1.8e-5),
    ],
)
def test_impossible_pipes_are_refused(values: tuple[float, ...]) -> None:
    with pytest.raises(OutOfRange):
        friction_gradient(*values)
