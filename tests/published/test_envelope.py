"""Surface films and transmittances against a standard and handbook figures."""

from __future__ import annotations

import math

import pytest

from anchorwatt.physics.envelope import (
    INSIDE_DOWNWARD,
    INSIDE_RADIATION,
    INSIDE_UPWARD,
    INSIDE_VERTICAL,
    Layer,
    discretise,
    nodal_response,
    outside_convection,
    radiative_film,
    u_value,
)

ISO = "ISO 6946:2017, annex on surface resistances; from memory"

BLACK_BODY = [(-10.0, 4.1), (0.0, 4.6), (10.0, 5.1), (20.0, 5.7), (30.0, 6.3)]


@pytest.mark.parametrize(
    ("temperature", "coefficient"),
    BLACK_BODY,
    ids=[f"{ISO}, black body at {row[0]:g} C" for row in BLACK_BODY],
)
def test_black_body_coefficient(temperature: float, coefficient: float) -> None:
    assert radiative_film(1.0, temperature) == pytest.approx(coefficient, abs=0.05)


SURFACES = [("up", INSIDE_UPWARD, 0.10), ("level", INSIDE_VERTICAL, 0.13), ("down", INSIDE_DOWNWARD, 0.17)]


@pytest.mark.parametrize(
    ("convection", "resistance"),
    [row[1:] for row in SURFACES],
    ids=[f"{ISO}, heat {row[0]}" for row in SURFACES],
)
def test_inside_surface_resistance(convection: float, resistance: float) -> None:
    assert 1.0 / (convection + radiative_film(0.9, 20.0)) == pytest.approx(resistance, abs=0.005)


def test_inside_radiation_is_that_of_ordinary_surfaces_in_a_cabin() -> None:
    """ISO 6946:2017: emittance 0.9; at the 20 to 30 °C of a cabin."""
    assert radiative_film(0.9, 20.0) < INSIDE_RADIATION < radiative_film(0.9, 30.0)


# Older handbook lines include the radiation of the plate that they were measured on.
WIND = [
    ("h = 5.7 + 3.8 v below 5 m/s (McAdams 1954; from memory)", 1.0, 9.5),
    ("h = 5.7 + 3.8 v below 5 m/s (McAdams 1954; from memory)", 3.0, 17.1),
    ("22.7 W/m2K at 3.4 m/s, ASHRAE outside film in summer; from memory", 3.4, 22.7),
    ("34 W/m2K at 6.7 m/s, ASHRAE outside film in winter; from memory", 6.7, 34.0),
]


@pytest.mark.parametrize(
    ("wind", "whole"), [row[1:] for row in WIND], ids=[f"{row[0]}, at {row[1]:g} m/s" for row in WIND]
)
def test_outside_film_with_radiation(wind: float, whole: float) -> None:
    """Formulas for wind scatter by far more than their printed digits: within a quarter."""
    assert outside_convection(wind) + radiative_film(0.9, 25.0) == pytest.approx(whole, rel=0.25)


def test_u_value_of_a_brick_wall() -> None:
    """ISO 6946, clause on resistances in series, by hand, with its surfaces 0.13 and 0.04.

    0.22 m of brick at 0.77 W/mK and 13 mm of plaster at 0.57: 0.13 + 0.2857 + 0.0228 + 0.04 = 0.4785.
    """
    wall = [(0.22, 0.77, 1700.0, 800.0), (0.013, 0.57, 1300.0, 1000.0)]
    assert u_value(wall, 1 / 0.04, 1 / 0.13) == pytest.approx(1 / 0.4785, rel=2e-4)


def standard_matrix(layers: list[Layer]) -> list[list[complex]]:
    """Heat transfer matrix of a component for a day, its elements written out as the standard writes them.

    ISO 13786:2017, clause on the heat transfer matrix, from memory: ξ is thickness over penetration depth δ; outside
    first in `layers`, the product begins inside.
    """
    product = [[1.0 + 0.0j, 0.0j], [0.0j, 1.0 + 0.0j]]
    for thickness, conductivity, density, specific_heat in reversed(layers):
        depth = math.sqrt(conductivity * 86_400.0 / (math.pi * density * specific_heat))
        xi = thickness / depth
        sh, ch, sn, cs = math.sinh(xi), math.cosh(xi), math.sin(xi), math.cos(xi)
        z11 = complex(ch * cs, sh * sn)
        z12 = -depth / (2.0 * conductivity) * complex(sh * cs + ch * sn, ch * sn - sh * cs)
        z21 = -conductivity / depth * complex(sh * cs - ch * sn, sh * cs + ch * sn)
        (a, b), (c, d) = product
        product = [[z11 * a + z12 * c, z11 * b + z12 * d], [z21 * a + z11 * c, z21 * b + z11 * d]]
    return product


WALLS: dict[str, list[Layer]] = {
    "cored deck with liner": [
        (0.003, 0.40, 1900.0, 1100.0), (0.025, 0.064, 150.0, 2000.0), (0.003, 0.40, 1900.0, 1100.0),
        (0.012, 0.05, 120.0, 1500.0),
    ],
    "concrete with insulation outside": [
        (0.005, 1.0, 1200.0, 1500.0), (0.10, 0.04, 30.0, 1400.0), (0.20, 1.8, 2400.0, 1000.0),
    ],
    "brick, foam and plywood": [(0.105, 0.77, 1700.0, 800.0), (0.05, 0.03, 30.0, 1470.0), (0.018, 0.13, 500.0, 1600.0)],
}  # fmt: skip


@pytest.mark.parametrize("wall", WALLS, ids=[f"ISO 13786:2017, {wall}, 24 h" for wall in WALLS])
def test_nodes_answer_the_day_as_the_standards_matrix_does(wall: str) -> None:
    """Size and lag of what comes through, within 2 % of a whole answer; films of the standard, 0.04 and 0.13 m²K/W."""
    layers = WALLS[wall]
    (a, b), (c, d) = standard_matrix(layers)
    inside, outside = 0.13, 0.04
    # The films stand on both sides of the layers' matrix.
    exact = -1.0 / ((b - a * inside) - outside * (d - c * inside))
    found, _ = nodal_response(discretise(layers), 86_400.0, 1.0 / outside, 1.0 / inside)
    assert abs(found - exact) < 0.02 * abs(exact) + 0.002 * u_value(layers, 1.0 / outside, 1.0 / inside)
    assert abs(found) == pytest.approx(abs(exact), rel=0.03)
