"""The seawater circuit against hydraulics texts, a property library and trade rules."""

from __future__ import annotations

import math

import pytest

from anchorwatt.physics.condenser import SEAWATER_DENSITY, sea_out
from anchorwatt.physics.pipe import friction_gradient
from anchorwatt.physics.sea_circuit import SEAWATER_VISCOSITY, flow_for_rise, hydraulic_power

GALLON = 3.785411784e-3
BTU_PER_HOUR = 0.29307107
TON = 12_000.0 * BTU_PER_HOUR
GRAVITY = 9.81


def test_head_lost_in_a_textbook_pipe() -> None:
    """F. M. White, "Fluid Mechanics", example of oil in a cast-iron pipe: 0.2 m³/s through 500 m of 200 mm, roughness
    0.26 mm, 900 kg/m³, 1e-5 m²/s: 117 m; from memory."""
    lost = 500.0 * friction_gradient(0.2, 0.2, 0.00026, 900.0, 900.0 * 1e-5)
    assert lost / (900.0 * GRAVITY) == pytest.approx(117.0, abs=0.5)


def test_head_lost_in_a_water_main() -> None:
    """Supplementary problem 0.2 of a text on surge analysis: 6 m of 300 mm ductile iron, roughness 0.12 mm, water at
    2 m/s: friction factor 0.0169, 0.0689 m; its factor is an approximation within 1 %."""
    gradient = friction_gradient(2.0 * 0.25 * math.pi * 0.3**2, 0.3, 0.00012, 1000.0, 1e-3)
    assert gradient * 0.3 / (0.5 * 1000.0 * 2.0**2) == pytest.approx(0.0169, rel=0.01)
    assert 6.0 * gradient / (1000.0 * GRAVITY) == pytest.approx(0.0689, rel=0.01)


def test_laminar_flow_of_hagen_and_poiseuille() -> None:
    """Hagen and Poiseuille, any hydraulics text: 128 x viscosity x flow / (pi x diameter⁴)."""
    expected = 128.0 * 1e-3 * 1e-6 / (math.pi * 0.01**4)
    assert friction_gradient(1e-6, 0.01, 0.0, 1000.0, 1e-3) == pytest.approx(expected, rel=1e-9)


def test_seawater_is_coolprops() -> None:
    """CoolProp's incompressible seawater of 35 g/kg (MIT) at 25 °C."""
    from CoolProp.CoolProp import PropsSI

    published = PropsSI("V", "T", 298.15, "P", 101_325.0, "INCOMP::MITSW[0.035]")
    assert pytest.approx(published, rel=0.02) == SEAWATER_VISCOSITY


def test_trade_flow_for_a_ton() -> None:
    """Engineers' forum: 3 gal/min for each ton that rejects 15 000 Btu/h, with a rise of 10 °F."""
    flow = flow_for_rise(15_000.0 * BTU_PER_HOUR, 10.0 / 1.8)
    assert flow * 60.0 / GALLON == pytest.approx(3.0, rel=0.05)


# gal/min a ton, K of rise: heat rejected 1.25 times the cooling.
TRADE = [(3.0, 5.7, "engineers' forum, 3 gal/min a ton"), (200.0 / 60.0, 5.1, "cruisers' forum, 200 gal/h a ton")]


@pytest.mark.parametrize(("gallons", "rise", "source"), TRADE, ids=[row[2] for row in TRADE])
def test_rise_of_the_trades_flow(gallons: float, rise: float, source: str) -> None:
    """By hand, seawater of 3993 J/(kg K) and 1023 kg/m³: 5.7 K and 5.1 K."""
    found = sea_out(28.0, 1.25 * TON, gallons * GALLON / 60.0) - 28.0
    assert found == pytest.approx(rise, abs=0.05)


def test_balance_of_seawater_by_hand() -> None:
    """1 kW and 1 K by hand, 3993 J/(kg K) and 1023 kg/m³: 14.7 L/min; 5 K: 2.94 L/min."""
    assert flow_for_rise(1000.0, 1.0) * 60_000.0 == pytest.approx(14.7, abs=0.05)
    assert flow_for_rise(1000.0, 5.0) * 60_000.0 == pytest.approx(2.94, abs=0.005)


def test_power_of_a_litre_a_minute_by_hand() -> None:
    """3 m of seawater, 1 L/min: 0.5 W given to the water; at 10 % efficiency 5 W."""
    power = hydraulic_power(1.0 / 60_000.0, SEAWATER_DENSITY * GRAVITY * 3.0)
    assert power / 0.1 == pytest.approx(5.0, abs=0.05)
