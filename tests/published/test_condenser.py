"""The seawater condenser against trade rules and a property library."""

from __future__ import annotations

import pytest

from anchorwatt.physics.condenser import SEAWATER_DENSITY, SEAWATER_SPECIFIC_HEAT, effectiveness, sea_out

GALLON = 3.785411784e-3
BTU_PER_HOUR = 0.29307107


def test_trade_rule_for_the_rise_of_the_water() -> None:
    """Engineers' forum: 3 gallons a minute for each ton that rejects 15 000 Btu/h warm by 10 °F."""
    rise = sea_out(0.0, 15_000.0 * BTU_PER_HOUR, 3.0 * GALLON / 60.0)
    assert rise * 1.8 == pytest.approx(10.0, abs=0.5)


def test_effectiveness_of_a_textbook_chart() -> None:
    """Kays and London, heat capacity ratio 0: 0.632 at one transfer unit, 0.865 at two, 0.950 at three."""
    found = [effectiveness(ntu) for ntu in (1.0, 2.0, 3.0)]
    assert found == pytest.approx([0.632, 0.865, 0.950], abs=0.0005)


def test_seawater_is_coolprops() -> None:
    """CoolProp's incompressible seawater of 35 g/kg (MIT) at 25 °C; its specific heat is 0.2 % above ours."""
    from CoolProp.CoolProp import PropsSI

    state = ("T", 298.15, "P", 101_325.0, "INCOMP::MITSW[0.035]")
    assert pytest.approx(PropsSI("D", *state), rel=0.001) == SEAWATER_DENSITY
    assert pytest.approx(PropsSI("C", *state), rel=0.0025) == SEAWATER_SPECIFIC_HEAT
