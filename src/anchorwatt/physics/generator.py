"""Generating sets: what they burn for what they give, at one load and over the loads of a test cycle."""

from __future__ import annotations

from collections.abc import Sequence

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.engine import DIESEL_HEATING_VALUE, fuel_flow

D2_LOADS = (1.00, 0.75, 0.50, 0.25, 0.10)
D2_WEIGHTS = (0.05, 0.25, 0.30, 0.30, 0.10)
"""Test cycle D2 of the NOx Technical Code, chapter 3.2: auxiliary engines of constant speed."""


def generator_fuel_flow(
    output: float,
    efficiency: float,
    speed: float,
    displacement: float,
    friction_pressure: float,
    indicated_efficiency: float,
) -> float:
    """Fuel that a diesel set burns.

    Parameters
    ----------
    output : W at the set's terminals
    efficiency : of its alternator, one figure for all loads
    speed : rad/s, constant
    displacement : m³ swept
    friction_pressure : Pa, friction mean effective pressure, what the alternator takes without load included
    indicated_efficiency : share of the heating value that reaches the pistons

    Returns
    -------
    kg/s; a running set burns fuel at no load too

    Raises
    ------
    OutOfRange
        output negative, efficiency outside 0 to 1, or what `engine.fuel_flow` refuses.

    Source
    ------
    Willans's straight line at constant speed, as `engine.fuel_flow` has it; diesel of 42.84 MJ/kg (UK 2025).

    Example
    -------
    >>> 3600.0 * generator_fuel_flow(6000.0, 0.86, 157.0, 1.2e-3, 80e3, 0.40) / 0.83236
    2.06
    """
    if output < 0.0:
        raise OutOfRange("output must not be negative; found", output)
    if efficiency <= 0.0 or efficiency > 1.0:
        raise OutOfRange("efficiency must be within 0 and 1; found", efficiency)
    return fuel_flow(
        output / efficiency, speed, displacement, friction_pressure, indicated_efficiency, DIESEL_HEATING_VALUE
    )


def cycle_specific_fuel(
    flows: Sequence[float],
    powers: Sequence[float],
    weights: Sequence[float] = D2_WEIGHTS,
) -> float:
    """Fuel for each unit of work over a test cycle of steady loads.

    Parameters
    ----------
    flows : kg/s at the cycle's loads
    powers : W at the same loads
    weights : share of the time at each; those of cycle D2 where left out

    Returns
    -------
    kg/J, weighted fuel over weighted power

    Raises
    ------
    OutOfRange
        the three of different length, a weight negative, or no power at all.

    Source
    ------
    NOx Technical Code 2008, chapter 3.2, cycle D2, and 5.12 for weighing flow and power alike (the clause from memory).

    Example
    -------
    >>> 3.6e9 * cycle_specific_fuel((1.0e-3, 0.5e-3), (15e3, 5e3), (0.5, 0.5))
    270.0
    """
    if not len(flows) == len(powers) == len(weights):
        raise OutOfRange("flows, powers and weights must be as many; found flows", float(len(flows)))
    if min(weights) < 0.0:
        raise OutOfRange("weights must not be negative; found", min(weights))
    work = sum(weight * power for weight, power in zip(weights, powers, strict=True))
    if work <= 0.0:
        raise OutOfRange("weighted power must be positive; found", work)
    return sum(weight * flow for weight, flow in zip(weights, flows, strict=True)) / work
