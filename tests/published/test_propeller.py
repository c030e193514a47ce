"""The propeller law against the emission test cycles that are built on it."""

from __future__ import annotations

import pytest

from anchorwatt.physics.propeller import propeller_demand


@pytest.mark.parametrize(
    ("speed", "power"),
    [
        pytest.param(1.00, 1.00, id="NOx-Technical-Code-3.2-cycle-E3-100"),
        pytest.param(0.91, 0.75, id="NOx-Technical-Code-3.2-cycle-E3-91"),
        pytest.param(0.80, 0.50, id="NOx-Technical-Code-3.2-cycle-E3-80"),
        pytest.param(0.63, 0.25, id="NOx-Technical-Code-3.2-cycle-E3-63"),
    ],
)
def test_e3_points_lie_on_the_cube(speed: float, power: float) -> None:
    """Printed in whole per cents; 1.3 points covers 80 %, where the cube root of half is 79.4 %."""
    assert propeller_demand(speed, 1.0, 1.0, 3.0) == pytest.approx(power, abs=0.013)


@pytest.mark.parametrize(
    ("speed", "torque"),
    [
        pytest.param(0.80, 71.6, id="40-CFR-1045-appendix-II-cycle-E4-80"),
        pytest.param(0.60, 46.5, id="40-CFR-1045-appendix-II-cycle-E4-60"),
        pytest.param(0.40, 25.3, id="40-CFR-1045-appendix-II-cycle-E4-40"),
    ],
)
def test_small_craft_cycle_e4_torque_is_the_exponent_two_and_a_half(speed: float, torque: float) -> None:
    """ICOMIA 36-88: torque by the power 1.5 of speed. Printed to 0.1 %."""
    assert 100.0 * propeller_demand(speed, 1.0, 1.0, 2.5) / speed == pytest.approx(torque, abs=0.051)
