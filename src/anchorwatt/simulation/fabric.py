"""The heat network of the boat: one implicit stage of all walls and cabins, solved exactly.

Walls are chains of nodes and solved one by one; what couples them, the air and the radiant star of each
cabin, is a small dense system. Between changes of the outside film nothing in it changes, so that it is
factored once and used for hundreds of steps.

A step is the two-stage, stiffly accurate, L-stable diagonally implicit method (second order) with
γ = 1 − 1/√2: both stages are the same backward-Euler solve over γ·step, from two different bases.
(R. Alexander, "Diagonally implicit Runge-Kutta methods for stiff ODEs", SIAM J. Numer. Anal. 14, 1977.)
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from anchorwatt.physics.moist_air import CP_AIR
from anchorwatt.simulation.arrays import TO_CABIN, TO_OUTSIDE, Fabric, Floats

GAMMA = 1.0 - 1.0 / math.sqrt(2.0)

PEOPLE_RADIANT = 0.6
"""Radiant share of a person's sensible heat, about 0.6 in still air. From memory of handbook tables."""


class Factors(NamedTuple):
    """The factored network for one outside film and one step."""

    pivot: Floats  # (N,) one over the pivots of each wall's elimination
    upper: Floats  # (N,) back-substitution factors
    near: Floats  # (N,) °C at each node per W into the near surface
    far: Floats  # (N,) °C at each node per W into the far surface
    system: Floats  # (2C, 2C) the cabin system: air nodes, then radiant stars; used up
    cabins: Floats  # (2C, 2C) its inverse


def empty_factors(nodes: int, cabins: int) -> Factors:
    """Room for the factors of a network."""
    n = 2 * cabins
    return Factors(
        np.empty(nodes), np.empty(nodes), np.empty(nodes), np.empty(nodes), np.empty((n, n)), np.empty((n, n))
    )


def invert(matrix: Floats, inverse: Floats) -> None:
    """Invert a small matrix that is dominated by its diagonal, by Gauss-Jordan elimination; `matrix` is used up."""
    n = matrix.shape[0]
    for i in range(n):
        for j in range(n):
            inverse[i, j] = 1.0 if i == j else 0.0
    for i in range(n):
        scale = 1.0 / matrix[i, i]
        for j in range(n):
            matrix[i, j] *= scale
            inverse[i, j] *= scale
        for k in range(n):
            if k != i and matrix[k, i] != 0.0:
                part = matrix[k, i]
                for j in range(n):
                    matrix[k, j] -= part * matrix[i, j]
                    inverse[k, j] -= part * inverse[i, j]


def factor(fabric: Fabric, film: Floats, outdoor_flow: Floats, stage_step: float, factors: Factors) -> None:
    """Factor the network of one variant for stages of `stage_step` s.

    `film` is W/K of each wall to the outside, `outdoor_flow` kg/s of outdoor air into each cabin.
    """
    pivot, upper, near, far = factors.pivot, factors.upper, factors.near, factors.far
    capacity, conductance = fabric.node_capacity, fabric.node_conductance
    cabins = fabric.air_mass.shape[0]
    system = factors.system
    for i in range(2 * cabins):
        for j in range(2 * cabins):
            system[i, j] = 0.0
    for c in range(cabins):
        s = cabins + c
        convection, radiation = fabric.furnishing_convection[c], fabric.furnishing_radiation[c]
        held = fabric.furnishing_capacity[c] / stage_step + convection + radiation
        air = fabric.air_mass[c] * CP_AIR / stage_step + fabric.window_conductance[c]
        air += outdoor_flow[c] * CP_AIR + convection
        for d in range(cabins):
            exchanged = fabric.exchange[c, d] * CP_AIR
            air += exchanged
            system[c, d] -= exchanged
        system[c, c] += air - convection * convection / held
        system[c, s] -= convection * radiation / held
        system[s, c] -= radiation * convection / held
        system[s, s] += radiation - radiation * radiation / held
    for w in range(fabric.wall_kind.shape[0]):
        first, end = fabric.wall_first[w], fabric.wall_first[w + 1]
        kind, c, a = fabric.wall_kind[w], fabric.wall_cabin[w], fabric.wall_far_cabin[w]
        hc, hr = fabric.near_convection[w], fabric.near_radiation[w]
        fc, fr = fabric.far_convection[w], fabric.far_radiation[w]
        for i in range(first, end):
            diagonal = capacity[i] / stage_step
            if i == first:
                if kind == TO_OUTSIDE:
                    diagonal += film[w]
                elif kind == TO_CABIN:
                    diagonal += fc + fr
            else:
                diagonal += conductance[i - 1] * (1.0 - upper[i - 1])
            if i == end - 1:
                diagonal += hc + hr
                pivot[i] = 1.0 / diagonal
                upper[i] = 0.0
            else:
                pivot[i] = 1.0 / (diagonal + conductance[i])
                upper[i] = conductance[i] * pivot[i]
        near[end - 1] = pivot[end - 1]
        for i in range(end - 2, first - 1, -1):
            near[i] = upper[i] * near[i + 1]
        far[first] = pivot[first]
        for i in range(first + 1, end):
            far[i] = pivot[i] * conductance[i - 1] * far[i - 1]
        for i in range(end - 2, first - 1, -1):
            far[i] += upper[i] * far[i + 1]
        # The near surface, eliminated into its cabin's air and star.
        b, s = near[end - 1], cabins + c
        system[c, c] += hc - hc * b * hc
        system[c, s] -= hc * b * hr
        system[s, c] -= hr * b * hc
        system[s, s] += hr - hr * b * hr
        if kind == TO_CABIN:
            t = cabins + a
            z = far[first]
            system[a, a] += fc - fc * z * fc
            system[a, t] -= fc * z * fr
            system[t, a] -= fr * z * fc
            system[t, t] += fr - fr * z * fr
            x = far[end - 1]
            system[c, a] -= hc * x * fc
            system[c, t] -= hc * x * fr
            system[s, a] -= hr * x * fc
            system[s, t] -= hr * x * fr
            y = near[first]
            system[a, c] -= fc * y * hc
            system[a, s] -= fc * y * hr
            system[t, c] -= fr * y * hc
            system[t, s] -= fr * y * hr
    for s in range(cabins, 2 * cabins):
        if system[s, s] == 0.0:
            system[s, s] = 1.0  # a cabin without surfaces: nothing meets in its star
    invert(system, factors.cabins)


def sweep(
    fabric: Fabric,
    film: Floats,
    far_temperature: Floats,
    sun: Floats,
    base: Floats,
    stage_step: float,
    factors: Factors,
    node: Floats,
) -> None:
    """First half of a stage: eliminate each wall, its near surface taken as having no drive but the sun.

    `base` is the nodes' temperature that the stage starts from, `sun` W into each cabin; `node` holds the
    half-done elimination for walls to outside, and the whole answer without the cabins' drive for partitions.
    """
    pivot, upper = factors.pivot, factors.upper
    capacity, conductance = fabric.node_capacity, fabric.node_conductance
    rate = 1.0 / stage_step
    for w in range(fabric.wall_kind.shape[0]):
        first, end = fabric.wall_first[w], fabric.wall_first[w + 1]
        kind = fabric.wall_kind[w]
        known = capacity[first] * rate * base[first]
        if kind == TO_OUTSIDE:
            known += film[w] * far_temperature[w]
        last = known * pivot[first]
        node[first] = last
        for i in range(first + 1, end):
            last = (capacity[i] * rate * base[i] + conductance[i - 1] * last) * pivot[i]
            node[i] = last
        last += fabric.sun_wall[w] * sun[fabric.wall_cabin[w]] * pivot[end - 1]
        node[end - 1] = last
        if kind == TO_CABIN:
            for i in range(end - 2, first - 1, -1):
                last = node[i] + upper[i] * last
                node[i] = last


def gather(
    fabric: Fabric,
    node: Floats,
    base_air: Floats,
    base_furnishing: Floats,
    outdoor: float,
    outdoor_flow: Floats,
    air_gain: Floats,
    radiant_gain: Floats,
    furnishing_gain: Floats,
    stage_step: float,
    right: Floats,
) -> None:
    """The cabin system's right-hand side, without cooling. Gains in W, temperatures in °C."""
    cabins = fabric.air_mass.shape[0]
    for c in range(cabins):
        convection, radiation = fabric.furnishing_convection[c], fabric.furnishing_radiation[c]
        store = fabric.furnishing_capacity[c] / stage_step
        free = (store * base_furnishing[c] + furnishing_gain[c]) / (store + convection + radiation)
        outside = fabric.window_conductance[c] + outdoor_flow[c] * CP_AIR
        right[c] = (
            fabric.air_mass[c] * CP_AIR / stage_step * base_air[c] + outside * outdoor + air_gain[c] + convection * free
        )
        right[cabins + c] = radiant_gain[c] + radiation * free
    for w in range(fabric.wall_kind.shape[0]):
        c, end = fabric.wall_cabin[w], fabric.wall_first[w + 1]
        right[c] += fabric.near_convection[w] * node[end - 1]
        right[cabins + c] += fabric.near_radiation[w] * node[end - 1]
        if fabric.wall_kind[w] == TO_CABIN:
            a, first = fabric.wall_far_cabin[w], fabric.wall_first[w]
            right[a] += fabric.far_convection[w] * node[first]
            right[cabins + a] += fabric.far_radiation[w] * node[first]


def scatter(
    fabric: Fabric,
    cabin: Floats,
    base_furnishing: Floats,
    furnishing_gain: Floats,
    stage_step: float,
    factors: Factors,
    node: Floats,
    furnishing: Floats,
) -> None:
    """Second half of a stage: from the cabins' temperatures to furnishings and every node of every wall.

    `cabin` holds the air nodes and then the radiant stars, °C.
    """
    upper, near, far = factors.upper, factors.near, factors.far
    cabins = fabric.air_mass.shape[0]
    for c in range(cabins):
        convection, radiation = fabric.furnishing_convection[c], fabric.furnishing_radiation[c]
        store = fabric.furnishing_capacity[c] / stage_step
        known = store * base_furnishing[c] + furnishing_gain[c]
        known += convection * cabin[c] + radiation * cabin[cabins + c]
        furnishing[c] = known / (store + convection + radiation)
    for w in range(fabric.wall_kind.shape[0]):
        first, end = fabric.wall_first[w], fabric.wall_first[w + 1]
        c = fabric.wall_cabin[w]
        drive = fabric.near_convection[w] * cabin[c] + fabric.near_radiation[w] * cabin[cabins + c]
        if fabric.wall_kind[w] == TO_CABIN:
            a = fabric.wall_far_cabin[w]
            other = fabric.far_convection[w] * cabin[a] + fabric.far_radiation[w] * cabin[cabins + a]
            for i in range(first, end):
                node[i] += near[i] * drive + far[i] * other
        else:
            last = node[end - 1] + near[end - 1] * drive
            node[end - 1] = last
            for i in range(end - 2, first - 1, -1):
                last = node[i] + upper[i] * last
                node[i] = last
