"""Laws of the solar panels."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.solar import cell_temperature, panel_power

IRRADIANCE = st.floats(0.0, 1300.0)


def test_standard_conditions_give_the_peak_power() -> None:
    assert panel_power(1000.0, 25.0, 600.0, -0.0035, 1.0) == 600.0


@given(IRRADIANCE, st.floats(0.0, 80.0), st.floats(0.0, 30.0))
def test_hotter_cells_give_no_more(irradiance: float, cell: float, more: float) -> None:
    cool = panel_power(irradiance, cell, 600.0, -0.0035, 0.7)
    assert 0.0 <= panel_power(irradiance, cell + more, 600.0, -0.0035, 0.7) <= cool


@given(st.floats(-10.0, 45.0), IRRADIANCE, st.floats(0.0, 40.0))
def test_cells_are_no_cooler_than_the_air(air: float, irradiance: float, rise: float) -> None:
    assert cell_temperature(air, irradiance, rise) >= air


def test_no_sun_no_power() -> None:
    assert panel_power(0.0, 25.0, 600.0, -0.0035, 0.7) == 0.0


def test_absurd_heat_gives_nothing_rather_than_less() -> None:
    assert panel_power(1000.0, 400.0, 600.0, -0.0035, 0.7) == 0.0


@pytest.mark.parametrize(
    "arguments",
    [
        (-1.0, 25.0, 600.0, -0.0035, 0.7),
        (800.0, 25.0, -600.0, -0.0035, 0.7),
        (800.0, 25.0, 600.0, 0.0035, 0.7),
        (800.0, 25.0, 600.0, -0.0035, 1.7),
    ],
)
def test_nonsense_is_refused(arguments: tuple[float, float, float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        panel_power(*arguments)
