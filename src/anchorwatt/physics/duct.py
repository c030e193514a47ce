"""Air in round ducts and through grilles: losses, the fan that must overcome them, branches side by side.

Air is taken at the density of the duct charts; the cold air of a supply duct is 2 % denser.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.pipe import dynamic_pressure, friction_gradient, pipe_velocity

AIR_DENSITY = 1.2
"""kg/m³, standard air of the handbooks' duct charts."""

AIR_VISCOSITY = 1.81e-5
"""Pa s, air at 20 °C; any heat-transfer text."""

TAKE_OFF_LOSS = 0.5
"""Loss coefficient where a duct leaves the handler's box with a sharp edge; any hydraulics text."""

SHUT_OFF_RATIO = 2.0
"""A handler's pressure at no airflow over what it has to spare at full airflow: its fan's own pressure is taken as
level, its coil and filter as taking half of it at full airflow. From practice, no source."""

Loss = Callable[[float], float]
"""Pressure lost, Pa, at a flow, m³/s; 0 at no flow, and more with more flow."""


def grille_velocity(flow: float, face_area: float, free_share: float) -> float:
    """Mean velocity of air through the open part of a grille.

    Parameters
    ----------
    flow : m³/s
    face_area : m²
    free_share : of the face that is open, above 0, not above 1

    Returns
    -------
    m/s

    Raises
    ------
    OutOfRange
        flow negative, area not positive, free share outside 0 to 1.

    Source
    ------
    Continuity.

    Example
    -------
    >>> grille_velocity(0.07, 0.06, 0.7)
    1.67
    """
    if not flow >= 0.0:
        raise OutOfRange("a flow is not negative; found", flow)
    if not face_area > 0.0:
        raise OutOfRange("a grille's area must be positive; found", face_area)
    if not 0.0 < free_share <= 1.0:
        raise OutOfRange("a grille's free share lies above 0 and not above 1; found", free_share)
    return flow / (face_area * free_share)


def grille_pressure(flow: float, face_area: float, free_share: float, loss: float) -> float:
    """Pressure that a grille takes.

    Parameters
    ----------
    flow : m³/s
    face_area : m²
    free_share : of the face that is open, above 0, not above 1
    loss : loss coefficient on the velocity through the free area

    Returns
    -------
    Pa

    Raises
    ------
    OutOfRange
        as `grille_velocity`, or loss coefficient negative.

    Source
    ------
    Definition of the loss coefficient.

    Example
    -------
    >>> grille_pressure(0.07, 0.06, 0.7, 1.5)
    2.5
    """
    if not loss >= 0.0:
        raise OutOfRange("a loss coefficient is not negative; found", loss)
    return loss * dynamic_pressure(grille_velocity(flow, face_area, free_share), AIR_DENSITY)


def duct_pressure(
    flow: float,
    length: float,
    diameter: float,
    roughness: float,
    stretch_factor: float,
    bends: float,
    bend_loss: float,
) -> float:
    """Pressure that a round duct with its take-off and bends takes, without its grille. Not for the kernel.

    Parameters
    ----------
    flow : m³/s
    length : m
    diameter : m, inside
    roughness : m
    stretch_factor : on the friction, for how a flexible duct lies; 1 = stretched or rigid
    bends : right-angled bends
    bend_loss : loss coefficient of one

    Returns
    -------
    Pa

    Raises
    ------
    OutOfRange
        as `friction_gradient`, or length, bends or loss coefficient negative, stretch factor below 1.

    Source
    ------
    Friction: `friction_gradient`. Stretch factor: a duct compressed by 15 to 30 % has about twice the friction of one
    that is stretched (trade, after laboratory tests of non-metallic flexible duct).

    Example
    -------
    >>> duct_pressure(0.05, 2.0, 0.125, 0.0009, 1.3, 2.0, 0.3)
    18.4
    """
    if not min(length, bends, bend_loss) >= 0.0:
        raise OutOfRange("length, bends and loss of a bend are not negative; found", min(length, bends, bend_loss))
    if not stretch_factor >= 1.0:
        raise OutOfRange("a stretch factor is at least 1; found", stretch_factor)
    friction = stretch_factor * length * friction_gradient(flow, diameter, roughness, AIR_DENSITY, AIR_VISCOSITY)
    local = TAKE_OFF_LOSS + bends * bend_loss
    return friction + local * dynamic_pressure(pipe_velocity(flow, diameter), AIR_DENSITY)


def fan_pressure(flow: float, full_flow: float, spare_pressure: float) -> float:
    """Pressure that a handler at full fan has to spare for ducts and grilles.

    It falls with the square of the flow, since coil and filter take theirs first, from `SHUT_OFF_RATIO` times the
    spare pressure at no flow; beyond √2 times the full airflow nothing is left.

    Parameters
    ----------
    flow : m³/s
    full_flow : m³/s at which the spare pressure is rated
    spare_pressure : Pa at full airflow

    Returns
    -------
    Pa; negative where the handler's own coil takes more than its fan gives

    Raises
    ------
    OutOfRange
        flow or spare pressure negative, full airflow not positive.

    Source
    ------
    Our own simplest form, from practice; a maker's fan curve says better.

    Example
    -------
    >>> fan_pressure(0.10, 0.10, 60.0), fan_pressure(0.0, 0.10, 60.0)
    (60.0, 120.0)
    """
    if not (flow >= 0.0 and spare_pressure >= 0.0):
        raise OutOfRange("flow and spare pressure are not negative; found", min(flow, spare_pressure))
    if not full_flow > 0.0:
        raise OutOfRange("a full airflow must be positive; found", full_flow)
    share = flow / full_flow
    return spare_pressure * (SHUT_OFF_RATIO - (SHUT_OFF_RATIO - 1.0) * share * share)


def branch_flow(loss: Loss, pressure: float) -> float:
    """Flow that a pressure drives through a branch. Not for the kernel.

    Parameters
    ----------
    loss : `Loss` of the branch
    pressure : Pa between its ends

    Returns
    -------
    m³/s

    Raises
    ------
    OutOfRange
        pressure negative, or a branch that 10 000 m³/s would not fill.

    Source
    ------
    The branch's own loss, turned over by Brent's method (scipy).

    Example
    -------
    >>> branch_flow(lambda flow: 4.0 * flow * flow, 1.0)
    0.5
    """
    from scipy.optimize import brentq

    if not pressure >= 0.0:
        raise OutOfRange("a pressure difference is not negative; found", pressure)
    if pressure == 0.0:
        return 0.0
    highest = 0.1
    while loss(highest) < pressure:
        highest *= 2.0
        if highest > 1e4:
            raise OutOfRange("a branch must take some pressure; found m³/s that do not fill it", highest)
    return float(brentq(lambda flow: loss(flow) - pressure, 0.0, highest, xtol=1e-12))


def balance(losses: Sequence[Loss], flow: float) -> tuple[float, ...]:
    """Flows through branches side by side that carry a given flow together. Not for the kernel.

    Parameters
    ----------
    losses : `Loss` of each branch
    flow : m³/s, all branches together

    Returns
    -------
    m³/s of each branch, all at the same pressure

    Raises
    ------
    OutOfRange
        no branch at all, or flow negative.

    Source
    ------
    Kirchhoff's laws of flow; Brent's method (scipy) on the pressure that they share.

    Example
    -------
    >>> balance([lambda flow: 4.0 * flow * flow, lambda flow: flow * flow], 0.3)
    (0.1, 0.2)
    """
    from scipy.optimize import brentq

    if not losses:
        raise OutOfRange("a flow needs at least one branch; found", 0)
    if not flow >= 0.0:
        raise OutOfRange("a flow is not negative; found", flow)
    if len(losses) == 1 or flow == 0.0:
        return (flow,) if len(losses) == 1 else (0.0,) * len(losses)
    # The easiest branch alone would take this pressure for the whole flow.
    highest = min(loss(flow) for loss in losses)
    pressure = float(brentq(lambda p: sum(branch_flow(loss, p) for loss in losses) - flow, 0.0, highest, xtol=1e-9))
    flows = [branch_flow(loss, pressure) for loss in losses]
    return tuple(each * flow / sum(flows) for each in flows)


def delivered(losses: Sequence[Loss], common: Loss, full_flow: float, spare_pressure: float) -> tuple[float, ...]:
    """Flows that a handler at full fan delivers through its branches. Not for the kernel.

    Parameters
    ----------
    losses : `Loss` of each branch, from the handler's box to the cabin
    common : `Loss` of what the whole flow passes, as the return grille
    full_flow : m³/s at which the spare pressure is rated
    spare_pressure : Pa at full airflow

    Returns
    -------
    m³/s of each branch

    Raises
    ------
    OutOfRange
        no branch at all, or as `fan_pressure`.

    Source
    ------
    Where `fan_pressure` meets the losses; Brent's method (scipy) on the pressure in the handler's box.

    Example
    -------
    >>> delivered([lambda flow: 6000.0 * flow * flow], lambda flow: 0.0, 0.1, 60.0)
    (0.1,)
    """
    from scipy.optimize import brentq

    if not losses:
        raise OutOfRange("a flow needs at least one branch; found", 0)

    def over(pressure: float) -> float:
        flow = math.fsum(branch_flow(loss, pressure) for loss in losses)
        return fan_pressure(flow, full_flow, spare_pressure) - common(flow) - pressure

    if spare_pressure == 0.0:
        return (0.0,) * len(losses)
    highest = fan_pressure(0.0, full_flow, spare_pressure)
    pressure = float(brentq(over, 0.0, highest, xtol=1e-9))
    return tuple(branch_flow(loss, pressure) for loss in losses)
