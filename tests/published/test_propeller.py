"""The propeller law against the emission test cycles that are built on it."""

from __future__ import annotations

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue.engine import Engine
from anchorwatt.physics.engine import full_load_power, spare_power
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


SPEEDS = (0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0)
FULL_LOAD = (0.20, 0.36, 0.53, 0.68, 0.81, 0.91, 0.97, 1.00)


@pytest.mark.parametrize(
    ("speed", "left"),
    [
        pytest.param(speed, left, id=f"from-memory-turbo-diesel-leftover-power-at-{speed}")
        for speed, left in zip(SPEEDS, (0.13, 0.22, 0.30, 0.33, 0.31, 0.23, 0.07, 0.0), strict=True)
    ],
)
def test_what_an_engine_leaves_beside_its_propeller(speed: float, left: float) -> None:
    """85 % of a generic turbo-diesel's full load less the demand with the exponent 2.7; printed to 0.01."""
    full = full_load_power(speed, 1.0, 1.0, SPEEDS, FULL_LOAD)
    assert spare_power(full, propeller_demand(speed, 1.0, 1.0, 2.7), 0.15) == pytest.approx(left, abs=0.0051)


@pytest.mark.parametrize("name", catalogue.names("engine"), ids=lambda name: f"common-practice-no-source-{name}")
def test_mid_range_is_where_an_engine_has_power_to_spare(name: str) -> None:
    """Little at idle, most in mid-range, none at full throttle; the propeller as it is estimated."""
    made = catalogue.find("engine", name)
    assert isinstance(made, Engine)

    def left(share: float) -> float:
        full = full_load_power(share, 1.0, made.rated_power, made.curve_speeds, made.curve_powers)
        return spare_power(full, propeller_demand(share, 1.0, 0.95 * made.rated_power, 2.7), 0.15)

    idle = made.idle_speed / made.rated_speed
    shares = [idle + (1.0 - idle) * step / 100.0 for step in range(101)]
    most = max(shares, key=left)
    assert 0.45 <= most <= 0.80
    assert left(idle) < 0.6 * left(most)
    assert left(1.0) == 0.0
