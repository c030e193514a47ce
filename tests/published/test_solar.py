"""Solar panels against pvlib."""

from __future__ import annotations

import numpy as np
import pvlib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt import design
from anchorwatt.physics.solar import cell_temperature, panel_power
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.sun import sun_day

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


def test_pvlib_pvwatts_day_of_the_catamarans_panels() -> None:
    """pvlib's own cell temperature and direct-current power, minute by minute over 24 h of real weather."""
    catamaran = design.specify(design.parse(design.starter_text("catamaran-13m")))
    simulation, solar = Simulation(catamaran), catamaran.solar
    found = sun_day(catamaran, simulation)
    assert found is not None
    assert solar is not None
    expected = 0.0
    for run in (simulation.night, simulation.day):
        sun, air = (
            0.5 * (values[:-1] + values[1:]) for values in (run.forcing.panel_irradiance[0], run.forcing.dry_bulb[0])
        )
        cells = pvlib.temperature.ross(sun, air, noct=20.0 + 0.8 * solar.rise)
        power = pvlib.pvsystem.pvwatts_dc(sun, cells, solar.peak_power, solar.temperature_coefficient)
        expected += float(np.sum(power)) * solar.delivered_share * run.step
    assert found.offered == pytest.approx(expected, rel=1e-9)
    # From memory: 0.65 to 0.75 of peak power times hours of full sun, afloat.
    assert 0.65 <= found.offered / (found.peak_power * found.full_sun) <= 0.75
