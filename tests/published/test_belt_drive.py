"""Belts against the mechanics that handbooks print and the trade's rules."""

from __future__ import annotations

import math

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue.belt import Belt
from anchorwatt.physics.belt import belt_power_limit
from anchorwatt.physics.belt_drive import belt_speed, effective_tension, shaft_load, side_tensions

RPM = math.pi / 30.0
PULLEY = 0.065  # m


def test_by_hand_from_p_is_tension_times_speed_a_65_mm_pulley_at_5000_rpm_runs_17_0_metres_a_second() -> None:
    assert belt_speed(5000.0 * RPM, PULLEY) == pytest.approx(17.0, abs=0.05)


@pytest.mark.parametrize(
    ("power", "rpm", "pull"),
    [
        pytest.param(5000.0, 5000.0, 294.0, id="by-hand-from-p-is-tension-times-speed-5-kW-at-5000-rpm"),
        pytest.param(3000.0, 3000.0, 294.0, id="by-hand-from-p-is-tension-times-speed-3-kW-at-3000-rpm"),
    ],
)
def test_pull_of_a_belt(power: float, rpm: float, pull: float) -> None:
    """The same pull: a belt limits torque, so amperes must come down with speed."""
    assert effective_tension(power, belt_speed(rpm * RPM, PULLEY)) == pytest.approx(pull, abs=0.5)
    assert belt_power_limit(5000.0, 5000.0 * RPM, rpm * RPM) == pytest.approx(power)


def test_from_memory_the_hub_of_that_belt_bears_440_n_at_a_tension_ratio_of_5() -> None:
    """Hub load = (T1 - T2)(K + 1)/(K - 1), K of 4 to 5; printed to ten newtons."""
    assert shaft_load(*side_tensions(294.0, 5.0), math.pi) == pytest.approx(440.0, abs=5.0)


RIBS = {"six-rib PK": 6, "eight-rib PK": 8, "ten-rib PK": 10, "twin eight-rib PK": 16}


@pytest.mark.parametrize("name", RIBS, ids=lambda name: f"from-memory-{name.replace(' ', '-')}")
def test_catalogue_ribs_pull_no_more_than_80_newtons_each(name: str) -> None:
    """60 to 80 N for each rib of a K section for long life."""
    made = catalogue.find("belt", name)
    assert isinstance(made, Belt)
    pull = effective_tension(made.power, belt_speed(made.reference_speed, PULLEY))
    assert pull / RIBS[name] <= 80.0
