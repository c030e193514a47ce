"""Walls: steady state, periodic state, what a wall cut into nodes keeps of them; films."""

from __future__ import annotations

import cmath
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.envelope import (
    DAY,
    WallNodes,
    discretise,
    hull_film,
    inside_convection,
    layer_node_count,
    nodal_response,
    outside_convection,
    periodic_thermal_transmittance,
    radiative_film,
    thermal_admittance,
    transfer_matrix,
    u_value,
)

GRP = (0.40, 1900.0, 1100.0)
FOAM = (0.035, 80.0, 1400.0)
LINER = (0.13, 500.0, 1600.0)
PLY = (0.17, 700.0, 1600.0)
AIR_GAP = (0.18, 0.0, 0.0)

SOLID = [(0.010, *GRP)]
SANDWICH = [(0.003, *GRP), (0.020, *FOAM), (0.003, *GRP), (0.010, 0.040, 70.0, 1500.0), (0.006, *LINER)]
BULKHEAD = [(0.018, *PLY)]
LINED = [(0.010, *GRP), (0.030, *AIR_GAP), (0.006, *LINER)]
THICK = [(0.012, *GRP), (0.060, *FOAM), (0.012, *GRP), (0.025, *PLY)]
WALLS = {
    "solid GRP": SOLID,
    "sandwich with liner": SANDWICH,
    "ply bulkhead": BULKHEAD,
    "air gap": LINED,
    "thick": THICK,
}
walls = pytest.mark.parametrize("wall", WALLS.values(), ids=WALLS.keys())

layers = st.tuples(st.floats(0.002, 0.05), st.floats(0.03, 0.5), st.floats(30.0, 2000.0), st.floats(500.0, 2000.0))
films = st.floats(2.0, 600.0)


@walls
@pytest.mark.parametrize(("outside", "inside"), [(10.0, 7.9), (17.0, 7.9), (500.0, 7.9), (7.9, 7.9)])
def test_nodes_answer_the_day_as_iso_13786_does(
    wall: list[tuple[float, float, float, float]], outside: float, inside: float
) -> None:
    through, held = nodal_response(discretise(wall), DAY, outside, inside)
    exact_through = periodic_thermal_transmittance(wall, DAY, outside, inside)
    exact_held = thermal_admittance(wall, DAY, outside, inside)
    assert abs(through - exact_through) < 0.02 * abs(exact_through)
    assert abs(held - exact_held) < 0.02 * abs(exact_held)


@walls
def test_finer_nodes_come_to_the_exact_matrix(wall: list[tuple[float, float, float, float]]) -> None:
    """The matrix against finite differences, which know nothing of it: 120 cells a layer, four hours."""
    period, fine = 4 * 3600.0, 120
    capacities, conductances = [0.0], []
    for thickness, conductivity, density, specific_heat in wall:
        for _ in range(fine):
            half = 0.5 * thickness / fine * density * specific_heat
            capacities[-1] += half
            capacities.append(half)
            conductances.append(conductivity * fine / thickness)
    nodes = WallNodes(np.array(capacities), np.array(conductances))
    through, held = nodal_response(nodes, period, 15.0, 8.0)
    assert through == pytest.approx(periodic_thermal_transmittance(wall, period, 15.0, 8.0), rel=1e-4)
    assert held == pytest.approx(thermal_admittance(wall, period, 15.0, 8.0), rel=1e-4)


def test_very_thick_wall_is_a_half_space() -> None:
    """Surface admittance of a half space: sqrt(j omega k rho c) (Carslaw and Jaeger)."""
    conductivity, density, specific_heat = GRP
    expected = cmath.sqrt(2.0j * math.pi / DAY * conductivity * density * specific_heat)
    assert thermal_admittance([(2.0, *GRP)], DAY, math.inf, math.inf) == pytest.approx(expected, rel=1e-6)


@given(st.lists(layers, min_size=1, max_size=4), st.floats(3600.0, 1e6), films, films)
def test_matrix_has_determinant_one(
    wall: list[tuple[float, float, float, float]], period: float, outside: float, inside: float
) -> None:
    matrix = transfer_matrix(wall, period, outside, inside)
    products = abs(matrix[0, 0] * matrix[1, 1])
    assert np.linalg.det(matrix) == pytest.approx(1.0, abs=1e-9 * max(1.0, products))


@given(st.lists(layers, min_size=1, max_size=4), st.floats(3600.0, 1e6), films, films)
def test_transmittance_is_the_same_both_ways(
    wall: list[tuple[float, float, float, float]], period: float, outside: float, inside: float
) -> None:
    there = periodic_thermal_transmittance(wall, period, outside, inside)
    back = periodic_thermal_transmittance(wall[::-1], period, inside, outside)
    assert there == pytest.approx(back, rel=1e-9)


@given(st.lists(layers, min_size=1, max_size=4), films, films)
def test_slow_waves_pass_as_steady_heat_does(
    wall: list[tuple[float, float, float, float]], outside: float, inside: float
) -> None:
    steady = u_value(wall, outside, inside)
    assert periodic_thermal_transmittance(wall, 1e12, outside, inside) == pytest.approx(steady, rel=1e-5)
    assert nodal_response(discretise(wall), 1e12, outside, inside)[0] == pytest.approx(steady, rel=1e-5)


@given(st.lists(layers, min_size=1, max_size=4), st.floats(3600.0, 1e6), films, films)
def test_a_wave_never_passes_better_than_steady_heat(
    wall: list[tuple[float, float, float, float]], period: float, outside: float, inside: float
) -> None:
    steady = u_value(wall, outside, inside)
    assert abs(periodic_thermal_transmittance(wall, period, outside, inside)) <= steady * (1.0 + 1e-9)


@given(st.lists(layers, min_size=1, max_size=5))
def test_nodes_keep_capacity_and_resistance(wall: list[tuple[float, float, float, float]]) -> None:
    nodes = discretise(wall)
    assert len(nodes.capacities) == len(nodes.conductances) + 1
    assert nodes.capacities.sum() == pytest.approx(sum(d * rho * c for d, _, rho, c in wall))
    assert (1.0 / nodes.conductances).sum() == pytest.approx(sum(d / k for d, k, _, _ in wall))


def test_boundary_nodes_stand_between_layers() -> None:
    nodes = discretise([(0.003, *GRP), (0.020, *FOAM)])
    laminate, foam = 0.5 * 0.003 * 1900 * 1100, 0.5 * 0.020 * 80 * 1400
    assert nodes.capacities == pytest.approx([laminate, laminate + foam, foam])
    assert nodes.conductances == pytest.approx([0.40 / 0.003, 0.035 / 0.020])


def test_air_gap_is_one_cell_without_capacity() -> None:
    assert layer_node_count(0.030, *AIR_GAP) == 1
    assert discretise([(0.030, *AIR_GAP)]).capacities.sum() == 0.0


@given(st.floats(0.001, 0.2), st.floats(1.0, 5.0))
def test_thicker_layers_have_no_fewer_cells(thickness: float, times: float) -> None:
    assert layer_node_count(times * thickness, *PLY) >= layer_node_count(thickness, *PLY)


def test_u_value_adds_resistances() -> None:
    expected = 1.0 / (1 / 25 + 0.003 / 0.4 + 0.02 / 0.035 + 0.003 / 0.4 + 1 / 7.7)
    assert u_value(SANDWICH[:3], 25.0, 7.7) == pytest.approx(expected, rel=1e-12)


@given(st.floats(0.0, 99.0), st.floats(0.0, 1.0))
def test_more_wind_never_means_less_convection(wind: float, more: float) -> None:
    assert outside_convection(wind + more) >= outside_convection(wind)


def test_outside_convection_is_continuous_where_its_law_changes() -> None:
    assert outside_convection(7.0) == pytest.approx(outside_convection(7.0 + 1e-12))


@given(st.floats(0.0, math.pi))
def test_inside_convection_lies_between_the_standards_figures(tilt: float) -> None:
    assert 2.5 <= inside_convection(tilt) <= 2.85
    assert inside_convection(tilt) == pytest.approx(inside_convection(math.pi - tilt), abs=1e-12)


@given(st.floats(0.0, 1.0), st.floats(-50.0, 100.0))
def test_radiative_film_is_the_slope_of_the_fourth_power(emittance: float, temperature: float) -> None:
    def emitted(kelvin: float) -> float:
        return emittance * 5.670374e-8 * kelvin**4

    kelvin = temperature + 273.15
    slope = (emitted(kelvin + 0.5) - emitted(kelvin - 0.5)) / 1.0
    assert radiative_film(emittance, temperature) == pytest.approx(slope, rel=1e-4)


def test_hull_film_leaves_a_thin_hull_in_charge() -> None:
    assert 1.0 / hull_film() < 0.1 * 0.010 / 0.40


@pytest.mark.parametrize(
    "layer",
    [
        (0.0, *GRP),
        (-0.01, *GRP),
        (11.0, *GRP),
        (0.01, 0.0, 1.0, 1.0),
        (0.01, 1.0, -1.0, 1.0),
        (math.nan, *GRP),
    ],
)
def test_impossible_layers_are_refused(layer: tuple[float, float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        layer_node_count(*layer)


def test_wall_without_layers_is_refused() -> None:
    with pytest.raises(OutOfRange, match="at least one layer"):
        discretise([])
    with pytest.raises(OutOfRange, match="at least one layer"):
        u_value([], 25.0, 7.7)
    with pytest.raises(OutOfRange, match="at least one layer"):
        transfer_matrix([], DAY)


@pytest.mark.parametrize(("period", "outside", "inside"), [(0.0, 10.0, 8.0), (DAY, 0.0, 8.0), (DAY, 10.0, -8.0)])
def test_impossible_periods_and_films_are_refused(period: float, outside: float, inside: float) -> None:
    with pytest.raises(OutOfRange):
        transfer_matrix(SOLID, period, outside, inside)
    with pytest.raises(OutOfRange):
        nodal_response(discretise(SOLID), period, outside, inside)


@pytest.mark.parametrize("wind", [-0.1, 101.0, math.nan])
def test_impossible_winds_are_refused(wind: float) -> None:
    with pytest.raises(OutOfRange, match="wind speed"):
        outside_convection(wind)


def test_impossible_tilts_and_emittances_are_refused() -> None:
    with pytest.raises(OutOfRange, match="tilt"):
        inside_convection(3.2)
    with pytest.raises(OutOfRange, match="emittance"):
        radiative_film(1.1, 20.0)
    with pytest.raises(OutOfRange, match="temperature"):
        radiative_film(0.9, 201.0)
