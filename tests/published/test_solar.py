"""Solar panels against pvlib."""

from __future__ import annotations

import pvlib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.physics.solar import cell_temperature, panel_power

IRRADIANCE = st.floats(0.0, 1300.0)


@given(IRRADIANCE, st.floats(-10.0, 90.0), st.floats(10.0, 5000.0), st.floats(-0.006, 0.0))
def test_pvlib_pvwatts_dc(irradiance: float, cell: float, peak: float, coefficient: float) -> None:
    """The direct-current model of NREL/TP-6A20-62641."""
    expected = pvlib.pvsystem.pvwatts_dc(irradiance, cell, peak, coefficient)
    assert panel_power(irradiance, cell, peak, coefficient, 1.0) == pytest.approx(expected, rel=1e-9, abs=1e-9)


@given(IRRADIANCE, st.floats(-10.0, 45.0), st.floats(40.0, 55.0))
def test_pvlib_ross(irradiance: float, air: float, nominal: float) -> None:
    """Ross 1980: the nominal operating cell temperature is at 800 W/m² and 20 °C."""
    expected = pvlib.temperature.ross(irradiance, air, noct=nominal)
    ours = cell_temperature(air, irradiance, (nominal - 20.0) / 0.8)
    assert ours == pytest.approx(expected, rel=1e-9, abs=1e-9)
