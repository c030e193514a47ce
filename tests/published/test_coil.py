"""A cooling coil against the definition's example and against psychrometric libraries."""

from __future__ import annotations

import pytest

from anchorwatt.physics.coil import (
    leaving_humidity_ratio,
    leaving_temperature,
    moisture_removed,
    sensible_heat,
)
from anchorwatt.physics.moist_air import density, humidity_ratio, latent_heat, saturation_humidity_ratio

SEA_LEVEL = 101_325.0


def test_definition_of_the_bypass_factor() -> None:
    """Lecture notes on the bypass factor: 30 °C in, 14 °C out, apparatus dew point 10 °C -> 0.20."""
    assert leaving_temperature(0.20, 30.0, 10.0) == pytest.approx(14.0, abs=0.005)


# Entering °C and relative humidity, apparatus dew point, bypass; by whole-state energy balance of a real-gas
# library: enthalpy of air in, less air out, less the water that drains at the apparatus dew point.
STATES = [(26.7, 0.51, 9.0, 0.15), (24.0, 0.50, 8.0, 0.15), (24.0, 0.60, 12.0, 0.15), (24.0, 0.60, 5.0, 0.15)]


@pytest.mark.parametrize(
    ("entering", "relative", "apparatus", "bypass"),
    STATES,
    ids=[f"CoolProp HAPropsSI, {t:g} C {round(100 * r)} %, apparatus {a:g} C" for t, r, a, _ in STATES],
)
def test_coil_duty_is_the_enthalpy_that_the_air_lost(
    entering: float, relative: float, apparatus: float, bypass: float
) -> None:
    """Within 2 %: the vapour's own sensible heat is left out of ours, and the air is an ideal gas."""
    from CoolProp.CoolProp import HAPropsSI, PropsSI

    ratio = humidity_ratio(entering, relative, SEA_LEVEL)
    saturated = saturation_humidity_ratio(apparatus, SEA_LEVEL)
    flow = density(entering, ratio, SEA_LEVEL)
    water = moisture_removed(flow, bypass, ratio, saturated)
    ours = sensible_heat(flow, bypass, entering, apparatus) + latent_heat(apparatus) * water

    wet_in = HAPropsSI("W", "T", entering + 273.15, "R", relative, "P", SEA_LEVEL)
    wet_coil = HAPropsSI("W", "T", apparatus + 273.15, "R", 1.0, "P", SEA_LEVEL)
    enthalpies = [
        HAPropsSI("H", "T", t + 273.15, "W", w, "P", SEA_LEVEL) for t, w in ((entering, wet_in), (apparatus, wet_coil))
    ]
    # What meets the coil leaves saturated at its temperature; what goes by is unchanged.
    drained = (wet_in - wet_coil) * PropsSI("H", "T", apparatus + 273.15, "P", SEA_LEVEL, "Water")
    real_flow = 1.0 / HAPropsSI("V", "T", entering + 273.15, "R", relative, "P", SEA_LEVEL)
    theirs = real_flow * (1.0 - bypass) * (enthalpies[0] - enthalpies[1] - drained)
    assert ours == pytest.approx(theirs, rel=0.02)


@pytest.mark.parametrize(("entering", "relative", "apparatus", "bypass"), STATES)
def test_leaving_air_has_the_humidity_that_coolprop_gives_its_mixture(
    entering: float, relative: float, apparatus: float, bypass: float
) -> None:
    from CoolProp.CoolProp import HAPropsSI

    leaving = leaving_humidity_ratio(
        bypass, humidity_ratio(entering, relative, SEA_LEVEL), saturation_humidity_ratio(apparatus, SEA_LEVEL)
    )
    wet_in = HAPropsSI("W", "T", entering + 273.15, "R", relative, "P", SEA_LEVEL)
    wet_coil = HAPropsSI("W", "T", apparatus + 273.15, "R", 1.0, "P", SEA_LEVEL)
    # ASHRAE Handbook - Fundamentals 2017, chapter 1: perfect-gas errors below 0.7 %.
    assert leaving == pytest.approx(bypass * wet_in + (1.0 - bypass) * wet_coil, rel=0.007)
