"""Ducts against handbook charts, other formulas for the same friction, and condensation rules."""

from __future__ import annotations

import math

import pytest

from anchorwatt.physics.duct import AIR_DENSITY, AIR_VISCOSITY
from anchorwatt.physics.duct_skin import insulation_needed, skin_temperature
from anchorwatt.physics.pipe import dynamic_pressure, friction_gradient, pipe_velocity

INCH = 0.0254
CFM = 0.3048**3 / 60.0
FPM = 0.3048 / 60.0
CHART = 249.089 / 30.48
"""Pa/m for an inch of water in 100 ft."""
STEEL = 0.00009
OLD_CHART = 0.0005 * 0.3048


def test_six_inch_duct_of_the_handbook_chart() -> None:
    """Handbook duct chart, 6 in and 100 cfm: 0.08 in of water in 100 ft; from memory."""
    found = friction_gradient(100.0 * CFM, 6.0 * INCH, STEEL, AIR_DENSITY, AIR_VISCOSITY)
    assert found / CHART == pytest.approx(0.08, abs=0.005)


# Inches, cfm, inches of water in 100 ft, ft/min. Older charts were drawn for a roughness of 0.0005 ft.
READINGS = [(20.0, 4000.0, 0.23, 1850.0), (60.0, 100_000.0, 0.40, 5000.0)]
ONLINE = "engineeringtoolbox.com, ductwork friction loss diagram, example"


@pytest.mark.parametrize(
    ("diameter", "flow", "loss", "velocity"), READINGS, ids=[f"{ONLINE}, {d:g} in" for d, *_ in READINGS]
)
def test_readings_of_the_older_chart(diameter: float, flow: float, loss: float, velocity: float) -> None:
    """Read off by eye ("approximately"): within 0.02 in, velocities within 2 %."""
    found = friction_gradient(flow * CFM, diameter * INCH, OLD_CHART, AIR_DENSITY, AIR_VISCOSITY)
    assert found / CHART == pytest.approx(loss, abs=0.02)
    assert pipe_velocity(flow * CFM, diameter * INCH) / FPM == pytest.approx(velocity, rel=0.02)


def altshul_tsal(reynolds: float, roughness_ratio: float) -> float:
    """Friction factor of the simplified equation that the handbook's chapter on ducts gives; from memory."""
    first = 0.11 * math.pow(roughness_ratio + 68.0 / reynolds, 0.25)
    return first if first >= 0.018 else 0.85 * first + 0.0028


SIZES = [(4.0, 40.0), (5.0, 70.0), (6.0, 100.0), (8.0, 200.0)]
SIMPLIFIED = "ASHRAE Handbook - Fundamentals, duct design, Altshul and Tsal's equation, from memory"


@pytest.mark.parametrize(("diameter", "flow"), SIZES, ids=[f"{SIMPLIFIED}, {d:g} in {q:g} cfm" for d, q in SIZES])
def test_friction_of_the_handbooks_simplified_equation(diameter: float, flow: float) -> None:
    """Within 3 %: the equation is an approximation of Colebrook's."""
    wide, velocity = diameter * INCH, pipe_velocity(flow * CFM, diameter * INCH)
    factor = altshul_tsal(AIR_DENSITY * velocity * wide / AIR_VISCOSITY, STEEL / wide)
    published = factor / wide * dynamic_pressure(velocity, AIR_DENSITY)
    found = friction_gradient(flow * CFM, wide, STEEL, AIR_DENSITY, AIR_VISCOSITY)
    assert found == pytest.approx(published, rel=0.03)


# Air in the duct, surroundings and dew point, °C; conductivity W/(m K); resistance of the surface m²K/W.
PLANES = [(10.0, 28.0, 24.0, 0.038, 0.125), (12.8, 32.2, 26.7, 0.036, 0.125), (6.0, 30.0, 27.0, 0.040, 0.125)]


@pytest.mark.parametrize(
    ("air", "surroundings", "dew", "conductivity", "surface"),
    PLANES,
    ids=[f"engineering bulletin 80-1, air {a:g} C, dew {d:g} C" for a, _, d, *_ in PLANES],
)
def test_insulation_of_the_bulletins_formula(
    air: float, surroundings: float, dew: float, conductivity: float, surface: float
) -> None:
    """Insulation makers' bulletin on condensation on ducts: k R (dew - air) / (surroundings - dew), on a flat wall
    without a film inside."""
    published = conductivity * surface * (dew - air) / (surroundings - dew)
    found = insulation_needed(air, surroundings, dew, 1e4, conductivity, 1e9, 1.0 / surface)
    assert found == pytest.approx(published, rel=1e-4)


def test_skin_of_an_insulated_duct_by_hand() -> None:
    """125 mm duct, 13 mm at 0.038 W/(m K), films 13.6 and 8, 10 °C inside, 28 °C outside; by hand from cylinders in
    series: 0.1872 + 0.7913 and 0.2635 K m/W, so 10 + 18 x 0.7878."""
    assert skin_temperature(10.0, 28.0, 0.125, 0.013, 0.038, 13.6, 8.0) == pytest.approx(24.18, abs=0.005)
