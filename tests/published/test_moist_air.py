"""Moist air against two libraries, handbook tables and steam tables."""

from __future__ import annotations

import importlib.util
import sys
from types import ModuleType

import pytest

from anchorwatt.physics.moist_air import (
    density,
    dew_point,
    enthalpy,
    humidity_ratio,
    latent_heat,
    relative_humidity,
    saturation_humidity_ratio,
    saturation_pressure,
)

SEA_LEVEL = 101_325.0

IDEAL_GAS_ERROR = 0.007
"""ASHRAE Handbook - Fundamentals 2017, chapter 1, quotes Kuehn et al. 1998: errors of perfect-gas relations
are below 0.7 % for saturated air at sea level from -50 to 50 °C."""

AIR = [
    (35.0, 0.7),
    (35.0, 0.5),
    (32.0, 0.75),
    (30.0, 0.8),
    (27.0, 0.5),
    (24.0, 0.5),
    (20.0, 0.5),
    (10.0, 1.0),
]
AIR += [(13.0, 0.95), (0.0, 0.6), (-10.0, 0.8), (45.0, 0.3)]
PRESSURES = [SEA_LEVEL, 95_000.0]
air = pytest.mark.parametrize(("temperature", "share"), AIR, ids=[f"{t:g} C {round(100 * r)} %" for t, r in AIR])
at_pressure = pytest.mark.parametrize("pressure", PRESSURES, ids=["101325 Pa", "95000 Pa"])


@pytest.fixture(scope="module")
def psychrolib() -> ModuleType:
    """psychrolib as plain Python: with numba it compiles itself, which takes longer than these tests."""
    spec = importlib.util.find_spec("psychrolib")
    assert spec is not None
    assert spec.loader is not None
    plain = importlib.util.module_from_spec(spec)
    with pytest.MonkeyPatch.context() as patch:
        patch.setitem(sys.modules, "numba", None)
        spec.loader.exec_module(plain)
    plain.SetUnitSystem(plain.SI)
    return plain


@pytest.mark.parametrize("temperature", [-60.0, -20.0, -0.5, 0.5, 10.0, 25.0, 40.0, 60.0, 100.0, 150.0])
def test_saturation_pressure_is_psychrolibs(psychrolib: ModuleType, temperature: float) -> None:
    assert saturation_pressure(temperature) == pytest.approx(psychrolib.GetSatVapPres(temperature), rel=1e-9)


@at_pressure
@air
def test_state_is_psychrolibs(psychrolib: ModuleType, temperature: float, share: float, pressure: float) -> None:
    ratio = humidity_ratio(temperature, share, pressure)
    assert ratio == pytest.approx(psychrolib.GetHumRatioFromRelHum(temperature, share, pressure), rel=1e-9)
    assert enthalpy(temperature, ratio) == pytest.approx(
        psychrolib.GetMoistAirEnthalpy(temperature, ratio), rel=1e-9, abs=1e-6
    )
    volume = psychrolib.GetMoistAirVolume(temperature, ratio, pressure)
    assert 1.0 / density(temperature, ratio, pressure) == pytest.approx(volume, rel=1e-5)
    # psychrolib stops its own search at 0.001 K.
    dew = psychrolib.GetTDewPointFromHumRatio(temperature, ratio, pressure)
    assert dew_point(ratio, pressure) == pytest.approx(dew, abs=2e-3)
    assert relative_humidity(temperature, ratio, pressure) == pytest.approx(share, rel=1e-9)


@at_pressure
@air
def test_state_is_coolprops_but_for_real_gas_effects(temperature: float, share: float, pressure: float) -> None:
    from CoolProp.CoolProp import HAPropsSI

    given = ("T", temperature + 273.15, "R", share, "P", pressure)
    ratio = humidity_ratio(temperature, share, pressure)
    assert ratio == pytest.approx(HAPropsSI("W", *given), rel=IDEAL_GAS_ERROR)
    # Enthalpy changes sign near 0 °C: 0.7 % of what 35 °C 70 % air has.
    assert enthalpy(temperature, ratio) == pytest.approx(HAPropsSI("H", *given), rel=IDEAL_GAS_ERROR, abs=150.0)
    assert 1.0 / density(temperature, ratio, pressure) == pytest.approx(HAPropsSI("V", *given), rel=0.002)
    assert dew_point(ratio, pressure) == pytest.approx(HAPropsSI("D", *given) - 273.15, abs=0.03)


HANDBOOK = "ASHRAE Handbook - Fundamentals, table of moist air at 101325 Pa, from memory"
SATURATED = [
    (10.0, 7.661, 29.353),
    (20.0, 14.758, 57.555),
    (25.0, 20.170, 76.504),
    (30.0, 27.329, 100.006),
]


@pytest.mark.parametrize(
    ("temperature", "ratio", "heat"), SATURATED, ids=[f"{HANDBOOK}, {row[0]:g} C" for row in SATURATED]
)
def test_saturated_air_of_the_handbook(temperature: float, ratio: float, heat: float) -> None:
    found = saturation_humidity_ratio(temperature, SEA_LEVEL)
    assert 1e3 * found == pytest.approx(ratio, rel=IDEAL_GAS_ERROR)
    assert enthalpy(temperature, found) / 1e3 == pytest.approx(heat, rel=IDEAL_GAS_ERROR)


STEAM = [
    ("IAPWS-IF97, table 35, 300 K; from memory", 300.0, 3536.58941),
    ("IAPWS R14-08, sublimation pressure at 230 K; from memory", 230.0, 8.94735),
    ("IAPWS-95, triple point; from memory", 273.16, 611.657),
]


@pytest.mark.parametrize(("kelvin", "pressure"), [row[1:] for row in STEAM], ids=[row[0] for row in STEAM])
def test_saturation_pressure_of_the_steam_tables(kelvin: float, pressure: float) -> None:
    # Hyland and Wexler's formulas are older than IAPWS's and within 0.05 % of them here.
    assert saturation_pressure(kelvin - 273.15) == pytest.approx(pressure, rel=5e-4)


@pytest.mark.parametrize("temperature", [0.02, 10.0, 20.0, 30.0, 40.0])
def test_latent_heat_is_coolprops_for_water(temperature: float) -> None:
    from CoolProp.CoolProp import PropsSI

    vapour = PropsSI("H", "T", temperature + 273.15, "Q", 1, "Water")
    water = PropsSI("H", "T", temperature + 273.15, "Q", 0, "Water")
    assert latent_heat(temperature) == pytest.approx(vapour - water, rel=1e-3)


def test_outdoor_air_of_iso_7547_against_indoor_air() -> None:
    """ISO 7547:2002, summer 35 °C 70 % to 27 °C 50 % (training slides): about 48.7 W for each litre a second.

    The figure itself was computed once with two public libraries, not printed in the standard.
    """
    outside, inside = humidity_ratio(35.0, 0.7, SEA_LEVEL), humidity_ratio(27.0, 0.5, SEA_LEVEL)
    flow = 0.001 * density(35.0, outside, SEA_LEVEL)
    assert flow * (enthalpy(35.0, outside) - enthalpy(27.0, inside)) == pytest.approx(48.7, rel=0.006)
