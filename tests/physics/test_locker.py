"""The air of a locker: balance, laws and limits."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.locker import airflow_to_hold, locker_air

AROUND, HEAT = st.floats(-10.0, 60.0), st.floats(0.0, 3000.0)
WALLS, AIRFLOW = st.floats(0.1, 200.0), st.floats(0.0, 1.0)


def test_walls_alone_by_hand() -> None:
    assert locker_air(30.0, 100.0, 5.0, 0.0) == 50.0


def test_air_alone_by_hand() -> None:
    """20 L/s of air of 1.2 kg/m³, 1006 J/(kg K), take 483 W for 20 K, at 21 °C."""
    assert locker_air(20.96, 482.9, 0.0, 0.02) == pytest.approx(40.96, abs=0.05)


@given(AROUND, HEAT, WALLS, AIRFLOW)
def test_what_goes_in_goes_out(around: float, heat: float, walls: float, airflow: float) -> None:
    rise = locker_air(around, heat, walls, airflow) - around
    density = 101_325.0 / (287.042 * (around + 273.15))
    assert walls * rise + density * 1006.0 * airflow * rise == pytest.approx(heat, abs=1e-6)


@given(AROUND, st.floats(1.0, 3000.0), WALLS, st.floats(1.0, 50.0))
def test_the_airflow_holds_it(around: float, heat: float, walls: float, rise: float) -> None:
    airflow = airflow_to_hold(around, heat, walls, around + rise)
    assert locker_air(around, heat, walls, airflow) <= around + rise + 1e-6


@given(AROUND, HEAT, WALLS, AIRFLOW, st.floats(0.0, 0.5))
def test_more_air_never_warms_it(around: float, heat: float, walls: float, airflow: float, more: float) -> None:
    assert locker_air(around, heat, walls, airflow + more) <= locker_air(around, heat, walls, airflow) + 1e-9


def test_nothing_that_carries_heat_away() -> None:
    assert math.isinf(locker_air(20.0, 1.0, 0.0, 0.0))
    assert locker_air(20.0, 0.0, 0.0, 0.0) == 20.0
    assert math.isinf(airflow_to_hold(45.0, 10.0, 5.0, 40.0))


@pytest.mark.parametrize("wrong", [(-1.0, 1.0, 0.1), (1.0, -1.0, 0.1), (1.0, 1.0, -0.1)])
def test_limits(wrong: tuple[float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        locker_air(20.0, *wrong)
