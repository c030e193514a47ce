"""The air of a locker in which parts give off heat, in balance."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.moist_air import CP_AIR, GAS_CONSTANT_AIR, ZERO_CELSIUS

STANDARD_PRESSURE = 101_325.0
"""Pa."""


def locker_air(around: float, heat: float, wall_conductance: float, airflow: float) -> float:
    """Temperature of the air in a locker that takes its air from a compartment.

    Parameters
    ----------
    around : °C, of the compartment's air
    heat : W given off in the locker
    wall_conductance : W/K of its walls to the compartment
    airflow : m³/s of the compartment's air through it

    Returns
    -------
    °C; infinity where nothing carries the heat away

    Raises
    ------
    OutOfRange
        heat, conductance or airflow negative.

    Source
    ------
    Steady heat balance of a well-mixed space: T = T0 + Q / (G + rho cp V), rho of dry air at T0 and 101 325 Pa. Any
    text of building physics.

    Example
    -------
    >>> locker_air(35.0, 300.0, 5.0, 0.02)
    45.7
    """
    if not heat >= 0.0:
        raise OutOfRange("the heat in a locker is not negative; found W", heat)
    carried = _carried(around, wall_conductance, airflow)
    if heat == 0.0:
        return around
    return around + heat / carried if carried > 0.0 else float("inf")


def airflow_to_hold(around: float, heat: float, wall_conductance: float, highest: float) -> float:
    """Airflow that keeps a locker's air at a temperature.

    Parameters
    ----------
    around : °C, of the compartment's air
    heat : W given off in the locker
    wall_conductance : W/K of its walls to the compartment
    highest : °C at which the locker is kept

    Returns
    -------
    m³/s, 0 where its walls do; infinity where the compartment's own air is too warm

    Raises
    ------
    OutOfRange
        heat or conductance negative.

    Source
    ------
    The balance of `locker_air`, solved for the airflow.

    Example
    -------
    >>> airflow_to_hold(35.0, 300.0, 5.0, 45.0)
    0.0217
    """
    if not heat >= 0.0:
        raise OutOfRange("the heat in a locker is not negative; found W", heat)
    per_airflow = _carried(around, 0.0, 1.0)
    _carried(around, wall_conductance, 0.0)
    if heat == 0.0 and highest >= around:
        return 0.0
    if highest <= around:
        return float("inf")
    return max(0.0, (heat / (highest - around) - wall_conductance) / per_airflow)


def _carried(around: float, wall_conductance: float, airflow: float) -> float:
    if not min(wall_conductance, airflow) >= 0.0:
        raise OutOfRange("conductance and airflow are not negative; found", min(wall_conductance, airflow))
    density = STANDARD_PRESSURE / (GAS_CONSTANT_AIR * (around + ZERO_CELSIUS))
    return wall_conductance + density * CP_AIR * airflow
