"""Surface films and transmittances against a standard and handbook figures."""

from __future__ import annotations

import pytest

from anchorwatt.physics.envelope import (
    INSIDE_DOWNWARD,
    INSIDE_RADIATION,
    INSIDE_UPWARD,
    INSIDE_VERTICAL,
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
