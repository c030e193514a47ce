"""Layered walls and the films on their two sides.

A wall is a row of nodes joined by conductances. Each layer is cut into equal cells; half a cell's heat
capacity stands at each of its two end nodes, so that the first and the last node are the wall's surfaces.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from anchorwatt.errors import OutOfRange

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

Layer = tuple[float, float, float, float]
"""Thickness m, conductivity W/(m K), density kg/m³, specific heat J/(kg K)."""

STEFAN_BOLTZMANN = 5.670374e-8
"""W/(m² K⁴), CODATA 2018."""

DAY = 86_400.0
"""s."""

CELL_SHARE = 0.25
"""A cell is at most this share of the depth that a daily wave penetrates. Found by test."""

INSIDE_RADIATION = 5.4
"""W/(m² K), surfaces of emittance 0.9 at 25 °C to the mean radiant node of the cabin."""

INSIDE_VERTICAL = 2.5
"""W/(m² K) of convection on a vertical inside surface (ISO 6946, annex; from memory)."""

INSIDE_UPWARD, INSIDE_DOWNWARD = 5.0, 0.7
"""W/(m² K) of convection when heat flows up, and down (ISO 6946, annex; from memory)."""

SEA_FILM = 500.0
"""W/(m² K), wetted hull at anchor; from memory: 200 to 600 at anchor, above 1000 under way."""

LIGHT_WIND = 7.0
"""m/s up to which the linear wind formula was measured."""


def layer_node_count(thickness: float, conductivity: float, density: float, specific_heat: float) -> int:
    """Number of equal cells into which a layer is cut.

    Parameters
    ----------
    thickness : m
    conductivity : W/(m K)
    density : kg/m³, 0 for an air gap
    specific_heat : J/(kg K)

    Returns
    -------
    1 upward; enough that a boat's wall answers a 24-hour wave within 2 % of the exact solution

    Raises
    ------
    OutOfRange
        thickness or conductivity not positive, density or specific heat negative, layer thicker than 10 m.

    Source
    ------
    Penetration depth of a periodic wave, ISO 13786:2017, clause 3: sqrt(conductivity x period / (pi x
    density x specific heat)). The share of it for a cell is found by test.

    Example
    -------
    >>> layer_node_count(0.010, 0.40, 1900.0, 1100.0)
    1
    >>> layer_node_count(0.060, 0.13, 500.0, 1600.0)
    4
    """
    if not 0.0 < thickness <= 10.0:
        raise OutOfRange("a layer's thickness lies above 0 and not above 10 m; found", thickness)
    if not conductivity > 0.0:
        raise OutOfRange("a layer's conductivity must be positive; found", conductivity)
    if not (density >= 0.0 and specific_heat >= 0.0):
        raise OutOfRange("density and specific heat are not negative; found", min(density, specific_heat))
    depth_squared_inverse = math.pi * density * specific_heat / (conductivity * DAY)
    return max(1, math.ceil(thickness * math.sqrt(depth_squared_inverse) / CELL_SHARE - 1e-9))


def outside_convection(wind_speed: float) -> float:
    """Convection coefficient of an outside surface in the wind, without radiation.

    The older line 5.7 + 3.8 v was measured on a plate that also radiated; this one has its radiation and
    free convection taken out. Beyond `LIGHT_WIND` it goes on with the 0.8th power of the wind speed, as
    turbulent flow along a plate does.

    Parameters
    ----------
    wind_speed : m/s

    Returns
    -------
    W/(m² K)

    Raises
    ------
    OutOfRange
        wind speed outside 0 to 100 m/s.

    Source
    ------
    J. H. Watmuff, W. W. S. Charters, D. Proctor, "Solar and wind induced external coefficients - solar
    collectors", COMPLES 2, 1977: h = 2.8 + 3.0 v up to 7 m/s (from memory); continuation ours.

    Example
    -------
    >>> outside_convection(2.0)
    8.8
    """
    if not 0.0 <= wind_speed <= 100.0:
        raise OutOfRange("the wind speed lies between 0 and 100 m/s; found", wind_speed)
    if wind_speed <= LIGHT_WIND:
        return 2.8 + 3.0 * wind_speed
    return (2.8 + 3.0 * LIGHT_WIND) * math.pow(wind_speed / LIGHT_WIND, 0.8)


def inside_convection(tilt: float) -> float:
    """Convection coefficient of an inside surface, the same whichever way the heat flows.

    On a level surface it is the mean of heat flowing up and down: a deckhead is warmer than the cabin by
    day, often colder by night. A constant keeps the heat network linear.

    Parameters
    ----------
    tilt : rad, of the surface's outward normal from straight up

    Returns
    -------
    W/(m² K)

    Raises
    ------
    OutOfRange
        tilt outside 0 to pi.

    Source
    ------
    ISO 6946:2017, annex on surface resistances: 5.0 up, 2.5 level, 0.7 down (from memory); between them ours,
    with the square of the normal's upright part.

    Example
    -------
    >>> inside_convection(math.pi / 2)
    2.5
    >>> inside_convection(0.0)
    2.85
    """
    if not 0.0 <= tilt <= 3.1415927:
        raise OutOfRange("tilt lies between 0 and pi; found", tilt)
    upright = math.cos(tilt) * math.cos(tilt)
    return INSIDE_VERTICAL + upright * (0.5 * (INSIDE_UPWARD + INSIDE_DOWNWARD) - INSIDE_VERTICAL)


def hull_film() -> float:
    """Film coefficient of the wetted hull at anchor.

    So large beside the rest of any hull's resistance that its exact figure hardly counts.

    Parameters
    ----------
    none

    Returns
    -------
    W/(m² K)

    Source
    ------
    From memory: 200 to 600 W/(m² K) at anchor, above 1000 under way.

    Example
    -------
    >>> hull_film()
    500.0
    """
    return SEA_FILM


def radiative_film(emittance: float, mean_temperature: float) -> float:
    """Coefficient of long-wave radiation, linear about a mean temperature.

    Parameters
    ----------
    emittance : 0 to 1
    mean_temperature : °C, between the surface and what it faces

    Returns
    -------
    W/(m² K)

    Raises
    ------
    OutOfRange
        emittance outside 0 to 1, temperature outside -100 to 200 °C.

    Source
    ------
    4 emittance sigma T³, any heat-transfer text; ISO 6946:2017, annex on surface resistances.

    Example
    -------
    >>> radiative_film(0.9, 20.0)
    5.14
    """
    if not 0.0 <= emittance <= 1.0:
        raise OutOfRange("an emittance lies between 0 and 1; found", emittance)
    if not -100.0 <= mean_temperature <= 200.0:
        raise OutOfRange("the mean temperature lies between -100 and 200 °C; found", mean_temperature)
    kelvin = mean_temperature + 273.15
    return 4.0 * emittance * STEFAN_BOLTZMANN * kelvin * kelvin * kelvin


@dataclass(frozen=True)
class WallNodes:
    """A wall as a row of nodes, outside first, for each square metre."""

    capacities: NDArray[np.float64]  # J/(m² K) of each node
    conductances: NDArray[np.float64]  # W/(m² K) between neighbours, one fewer than nodes


def discretise(layers: Sequence[Layer]) -> WallNodes:
    """Cut a layered wall into nodes. Not for the kernel.

    Parameters
    ----------
    layers : (thickness m, conductivity W/(m K), density kg/m³, specific heat J/(kg K)), outside first

    Returns
    -------
    `WallNodes`; first and last node are the surfaces

    Raises
    ------
    OutOfRange
        no layer at all, or a layer that `layer_node_count` refuses.

    Source
    ------
    Finite differences with half cells at the surfaces, any heat-transfer text.

    Example
    -------
    >>> nodes = discretise([(0.010, 0.40, 1900.0, 1100.0)])
    >>> [float(capacity) for capacity in nodes.capacities]
    [10450.0, 10450.0]
    """
    import numpy as np

    if not layers:
        raise OutOfRange("a wall needs at least one layer; found", 0)
    capacities, conductances = [0.0], []
    for thickness, conductivity, density, specific_heat in layers:
        count = layer_node_count(thickness, conductivity, density, specific_heat)
        cell = thickness / count
        half = 0.5 * cell * density * specific_heat
        for _ in range(count):
            capacities[-1] += half
            capacities.append(half)
            conductances.append(conductivity / cell)
    return WallNodes(np.array(capacities), np.array(conductances))


def u_value(layers: Sequence[Layer], outside_film: float, inside_film: float) -> float:
    """Thermal transmittance of a layered wall. Not for the kernel.

    Parameters
    ----------
    layers : (thickness m, conductivity W/(m K), density kg/m³, specific heat J/(kg K)), outside first
    outside_film : W/(m² K), convection and radiation together; `math.inf` for none
    inside_film : W/(m² K), convection and radiation together; `math.inf` for none

    Returns
    -------
    W/(m² K)

    Raises
    ------
    OutOfRange
        no layer at all, conductivity or a film not positive, thickness negative.

    Source
    ------
    ISO 6946:2017: resistances of the layers and of the two surfaces in series.

    Example
    -------
    >>> u_value([(0.010, 0.40, 1900.0, 1100.0)], 25.0, 7.7)
    5.13
    """
    if not layers:
        raise OutOfRange("a wall needs at least one layer; found", 0)
    if not (outside_film > 0.0 and inside_film > 0.0):
        raise OutOfRange("films must be positive; found", min(outside_film, inside_film))
    resistance = 1.0 / outside_film + 1.0 / inside_film
    for thickness, conductivity, _, _ in layers:
        if not conductivity > 0.0:
            raise OutOfRange("a layer's conductivity must be positive; found", conductivity)
        if not thickness >= 0.0:
            raise OutOfRange("a layer's thickness is not negative; found", thickness)
        resistance += thickness / conductivity
    return 1.0 / resistance


def transfer_matrix(
    layers: Sequence[Layer],
    period: float,
    outside_film: float = math.inf,
    inside_film: float = math.inf,
) -> NDArray[np.complex128]:
    """Exact heat transfer matrix of a layered wall in a sinusoidal state. Not for the kernel.

    It turns temperature and heat flow density at the inside into those at the outside.

    Parameters
    ----------
    layers : (thickness m, conductivity W/(m K), density kg/m³, specific heat J/(kg K)), outside first
    period : s
    outside_film : W/(m² K); left out, the matrix ends at the outside surface
    inside_film : W/(m² K); left out, the matrix begins at the inside surface

    Returns
    -------
    2 by 2, complex

    Raises
    ------
    OutOfRange
        period, a conductivity or a film not positive, no layer at all.

    Source
    ------
    ISO 13786:2017, clauses on the heat transfer matrix of a layer, of plane air layers and of the component.

    Example
    -------
    >>> matrix = transfer_matrix([(0.010, 0.40, 1900.0, 1100.0)], 86_400.0)
    >>> float(abs(matrix[0, 0] * matrix[1, 1] - matrix[0, 1] * matrix[1, 0]))
    1.0000
    """
    import numpy as np

    if not period > 0.0:
        raise OutOfRange("a period must be positive; found", period)
    if not layers:
        raise OutOfRange("a wall needs at least one layer; found", 0)
    if not (outside_film > 0.0 and inside_film > 0.0):
        raise OutOfRange("films must be positive; found", min(outside_film, inside_film))

    def resistance(value: float) -> NDArray[np.complex128]:
        return np.array([[1.0, -value], [0.0, 1.0]], dtype=np.complex128)

    matrix = resistance(1.0 / inside_film)
    for thickness, conductivity, density, specific_heat in reversed(layers):
        if not (thickness > 0.0 and conductivity > 0.0):
            raise OutOfRange("thickness and conductivity must be positive; found", min(thickness, conductivity))
        if density * specific_heat == 0.0:
            matrix = resistance(thickness / conductivity) @ matrix
            continue
        depth = math.sqrt(conductivity * period / (math.pi * density * specific_heat))
        # The standard writes real and imaginary parts out; cosh and sinh of (1 + j) ξ say the same.
        reach = (1.0 + 1.0j) * thickness / depth
        admittance = conductivity * (1.0 + 1.0j) / depth
        cosh, sinh = cmath.cosh(reach), cmath.sinh(reach)
        matrix = np.array([[cosh, -sinh / admittance], [-admittance * sinh, cosh]]) @ matrix
    return resistance(1.0 / outside_film) @ matrix


def periodic_thermal_transmittance(
    layers: Sequence[Layer], period: float, outside_film: float, inside_film: float
) -> complex:
    """Heat flow into a cabin of constant temperature per kelvin of outside swing. Not for the kernel.

    Parameters
    ----------
    layers : (thickness m, conductivity W/(m K), density kg/m³, specific heat J/(kg K)), outside first
    period : s
    outside_film : W/(m² K)
    inside_film : W/(m² K)

    Returns
    -------
    W/(m² K), complex: its angle is the lag

    Raises
    ------
    OutOfRange
        as `transfer_matrix`.

    Source
    ------
    ISO 13786:2017, periodic thermal transmittance, -1/Z12; ours is counted positive into the cabin.

    Example
    -------
    >>> abs(periodic_thermal_transmittance([(0.010, 0.40, 1900.0, 1100.0)], 86_400.0, 25.0, 7.7))
    5.12
    """
    return complex(-1.0 / transfer_matrix(layers, period, outside_film, inside_film)[0, 1])


def thermal_admittance(layers: Sequence[Layer], period: float, outside_film: float, inside_film: float) -> complex:
    """Heat flow into a wall per kelvin of swing of the cabin, outside constant. Not for the kernel.

    Parameters
    ----------
    layers : (thickness m, conductivity W/(m K), density kg/m³, specific heat J/(kg K)), outside first
    period : s
    outside_film : W/(m² K)
    inside_film : W/(m² K)

    Returns
    -------
    W/(m² K), complex

    Raises
    ------
    OutOfRange
        as `transfer_matrix`.

    Source
    ------
    ISO 13786:2017, thermal admittance of side 1, -Z11/Z12.

    Example
    -------
    >>> abs(thermal_admittance([(0.010, 0.40, 1900.0, 1100.0)], 86_400.0, 25.0, 7.7))
    5.14
    """
    matrix = transfer_matrix(layers, period, outside_film, inside_film)
    return complex(-matrix[0, 0] / matrix[0, 1])


def nodal_response(nodes: WallNodes, period: float, outside_film: float, inside_film: float) -> tuple[complex, complex]:
    """Periodic transmittance and inside admittance of a wall cut into nodes. Not for the kernel.

    For comparison with `periodic_thermal_transmittance` and `thermal_admittance`, which are exact.

    Parameters
    ----------
    nodes : the wall
    period : s
    outside_film : W/(m² K)
    inside_film : W/(m² K)

    Returns
    -------
    periodic transmittance and inside admittance, W/(m² K), complex

    Raises
    ------
    OutOfRange
        period or a film not positive.

    Source
    ------
    Heat balance of each node in a sinusoidal state.

    Example
    -------
    >>> wall = discretise([(0.010, 0.40, 1900.0, 1100.0)])
    >>> abs(nodal_response(wall, 86_400.0, 25.0, 7.7)[0])
    5.13
    """
    import numpy as np

    if not period > 0.0:
        raise OutOfRange("a period must be positive; found", period)
    if not (outside_film > 0.0 and inside_film > 0.0):
        raise OutOfRange("films must be positive; found", min(outside_film, inside_film))
    joints = nodes.conductances
    balance = np.diag(2.0j * math.pi / period * nodes.capacities)
    balance[:-1, :-1] += np.diag(joints)
    balance[1:, 1:] += np.diag(joints)
    balance -= np.diag(joints, 1) + np.diag(joints, -1)
    balance[0, 0] += outside_film
    balance[-1, -1] += inside_film
    drives = np.zeros((len(nodes.capacities), 2), dtype=np.complex128)
    drives[0, 0] = outside_film
    drives[-1, 1] = inside_film
    swings = np.linalg.solve(balance, drives)
    return complex(inside_film * swings[-1, 0]), complex(inside_film * (1.0 - swings[-1, 1]))
