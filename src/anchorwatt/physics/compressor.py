"""A variable-speed compressor and the vapour-compression cycle it drives.

The cycle itself (`cycle`, `cycle_table`) asks CoolProp for refrigerant properties and is tabulated before a
run; the scalar functions are called by the compiled kernel too.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from anchorwatt.errors import OutOfRange

SPEED_POINTS = (0.10, 0.25, 0.35, 0.5, 0.75, 1.0)
"""Speed over full speed at which `SPEED_EFFICIENCIES` stand."""

SPEED_EFFICIENCIES = (0.41, 0.55, 0.62, 0.67, 0.66, 0.62)
"""Overall efficiency of a small inverter-driven compressor over speed. From memory, the first extended."""

BEST_PRESSURE_RATIO = 2.6
"""Where the efficiency peaks, near the built-in ratio of air-conditioning scrolls. From memory."""

PRESSURE_RATIO_CURVATURE = 0.25
"""Efficiency lost for each squared unit of ln(ratio over the best). From practice, no source."""

CLEARANCE_SHARE = 0.03
"""Clearance volume over swept volume, leakage counted in. From practice, no source."""

EXPANSION_EXPONENT = 1.15
"""Polytropic exponent of the vapour left in the clearance. From practice, no source."""

SATURATED = 0.001
"""K of superheat or subcooling below which a state is taken as saturated: closer, CoolProp cannot tell."""


def speed_shape(speed_share: float) -> float:
    """Efficiency of the compressor with motor and drive at a speed, over that at full speed.

    Motor and drive are at their best at medium speed; at low speed leakage and the drive's own needs weigh
    more, so that efficiency falls again.

    Parameters
    ----------
    speed_share : of full speed

    Returns
    -------
    1 at full speed

    Raises
    ------
    OutOfRange
        speed share outside 0 to 1.2.

    Source
    ------
    From memory: 0.62, 0.66, 0.67, 0.62, 0.55 at 1, 0.75, 0.5, 0.35, 0.25 of full speed; linear between,
    level beyond.

    Example
    -------
    >>> speed_shape(0.5)
    1.081
    """
    if not 0.0 < speed_share <= 1.2:
        raise OutOfRange("the share of full speed lies above 0 and not above 1.2; found", speed_share)
    if speed_share <= SPEED_POINTS[0]:
        return SPEED_EFFICIENCIES[0] / SPEED_EFFICIENCIES[5]
    for i in range(5):
        if speed_share <= SPEED_POINTS[i + 1]:
            part = (speed_share - SPEED_POINTS[i]) / (SPEED_POINTS[i + 1] - SPEED_POINTS[i])
            found = SPEED_EFFICIENCIES[i] + part * (SPEED_EFFICIENCIES[i + 1] - SPEED_EFFICIENCIES[i])
            return found / SPEED_EFFICIENCIES[5]
    return 1.0


def isentropic_efficiency(pressure_ratio: float, speed_share: float, scale: float) -> float:
    """Isentropic work over electric work: compressor, motor and drive together.

    Parameters
    ----------
    pressure_ratio : discharge over suction, absolute
    speed_share : of full speed
    scale : efficiency at full speed and the best pressure ratio, fitted to the rating

    Returns
    -------
    above 0, not above 1

    Raises
    ------
    OutOfRange
        pressure ratio outside 1 to 20, speed share outside 0 to 1.2, scale outside 0 to 1.5.

    Source
    ------
    Over speed: `speed_shape`. Over pressure ratio: our own mild parabola in ln(ratio); the peak near the
    built-in ratio is textbook behaviour of scroll compressors, its place and width are from practice.

    Example
    -------
    >>> isentropic_efficiency(2.6, 1.0, 0.62)
    0.62
    """
    if not 1.0 <= pressure_ratio <= 20.0:
        raise OutOfRange("the pressure ratio lies between 1 and 20; found", pressure_ratio)
    if not 0.0 < scale <= 1.5:
        raise OutOfRange("the scale of the efficiency lies above 0 and not above 1.5; found", scale)
    distance = math.log(pressure_ratio / BEST_PRESSURE_RATIO)
    ratio_shape = max(0.4, 1.0 - PRESSURE_RATIO_CURVATURE * distance * distance)
    return min(1.0, scale * speed_shape(speed_share) * ratio_shape)


def volumetric_efficiency(pressure_ratio: float) -> float:
    """Volume of suction vapour drawn in over volume swept.

    Parameters
    ----------
    pressure_ratio : discharge over suction, absolute

    Returns
    -------
    0 to 1

    Raises
    ------
    OutOfRange
        pressure ratio outside 1 to 20.

    Source
    ------
    1 - c (r^(1/n) - 1), re-expansion of the vapour in the clearance, any refrigeration text; c and n from
    practice, no source.

    Example
    -------
    >>> volumetric_efficiency(2.5)
    0.963
    """
    if not 1.0 <= pressure_ratio <= 20.0:
        raise OutOfRange("the pressure ratio lies between 1 and 20; found", pressure_ratio)
    return 1.0 - CLEARANCE_SHARE * (math.pow(pressure_ratio, 1.0 / EXPANSION_EXPONENT) - 1.0)


def part_load_factor(load_share: float, degradation: float) -> float:
    """Efficiency while cycling over efficiency while running steadily.

    Parameters
    ----------
    load_share : load over what the compressor gives when it runs, 0 to 1
    degradation : coefficient, 0 = starting and stopping cost nothing

    Returns
    -------
    above 0, not above 1

    Raises
    ------
    OutOfRange
        load share outside 0 to 1, degradation outside 0 to 1.

    Source
    ------
    1 - Cd (1 - x), the form of the rating standards for unitary air conditioners (AHRI 210/240; from memory).

    Example
    -------
    >>> part_load_factor(0.5, 0.25)
    0.875
    """
    if not 0.0 <= load_share <= 1.0:
        raise OutOfRange("the share of the load lies between 0 and 1; found", load_share)
    if not 0.0 <= degradation < 1.0:
        raise OutOfRange("the degradation coefficient lies between 0 and 1; found", degradation)
    return 1.0 - degradation * (1.0 - load_share)


def carnot_efficiency(evaporating: float, heat_rejected_at: float) -> float:
    """Highest coefficient of performance of cooling that the second law allows.

    Parameters
    ----------
    evaporating : °C of the cold side
    heat_rejected_at : °C of the warm side

    Returns
    -------
    W of cooling per W of work

    Raises
    ------
    OutOfRange
        cold side at absolute zero or below, warm side not warmer than the cold side.

    Source
    ------
    Second law of thermodynamics, any text.

    Example
    -------
    >>> carnot_efficiency(7.0, 40.0)
    8.49
    """
    if not evaporating > -273.15:
        raise OutOfRange("a temperature lies above -273.15 °C; found", evaporating)
    if not heat_rejected_at > evaporating:
        raise OutOfRange("heat is rejected above the evaporating temperature; found K", heat_rejected_at - evaporating)
    return (evaporating + 273.15) / (heat_rejected_at - evaporating)


@dataclass(frozen=True)
class Cycle:
    """One kilogram of refrigerant once round the ideal compression cycle."""

    suction_density: float  # kg/m³
    refrigerating_effect: float  # J/kg
    isentropic_work: float  # J/kg
    pressure_ratio: float
    evaporating_pressure: float  # Pa
    condensing_pressure: float  # Pa


def cycle(refrigerant: str, evaporating: float, condensing: float, superheat: float, subcooling: float) -> Cycle:
    """Vapour-compression cycle with isentropic compression. Not for the kernel.

    Evaporating and condensing temperatures are dew points; subcooling counts from the bubble point.

    Parameters
    ----------
    refrigerant : CoolProp's name, e.g. "R410A"
    evaporating : °C
    condensing : °C
    superheat : K at the compressor's inlet; all of it counts as useful cooling
    subcooling : K at the expansion valve

    Returns
    -------
    `Cycle`

    Raises
    ------
    OutOfRange
        refrigerant unknown, condensing not above evaporating or not below the critical point, superheat or
        subcooling negative.

    Source
    ------
    Any refrigeration text; properties from CoolProp (I. H. Bell et al., Ind. Eng. Chem. Res. 53, 2014).

    Example
    -------
    >>> ideal = cycle("R134a", 5.0, 40.0, 0.0, 0.0)
    >>> ideal.refrigerating_effect / ideal.isentropic_work
    6.547
    """
    return cycle_table(refrigerant, (evaporating,), (condensing,), superheat, subcooling)[0][0]


def cycle_table(
    refrigerant: str,
    evaporating: Sequence[float],
    condensing: Sequence[float],
    superheat: float,
    subcooling: float,
) -> tuple[tuple[Cycle, ...], ...]:
    """`cycle` over a grid, asking CoolProp for each side once. Not for the kernel.

    Parameters
    ----------
    refrigerant : CoolProp's name, e.g. "R410A"
    evaporating : °C, any number of temperatures
    condensing : °C, any number of temperatures
    superheat : K
    subcooling : K

    Returns
    -------
    `Cycle` for [evaporating][condensing]

    Raises
    ------
    OutOfRange
        as `cycle`, for any pair of the grid.

    Source
    ------
    As `cycle`.

    Example
    -------
    >>> table = cycle_table("R410A", (2.0, 7.0), (35.0, 40.0, 45.0), 5.0, 5.0)
    >>> table[1][1].pressure_ratio
    2.43
    """
    import CoolProp

    if not (superheat >= 0.0 and subcooling >= 0.0):
        raise OutOfRange("superheat and subcooling are not negative; found K", min(superheat, subcooling))
    try:
        state: Any = CoolProp.AbstractState("HEOS", refrigerant)
    except ValueError as error:
        raise OutOfRange("the refrigerant must be one that CoolProp knows; found", refrigerant) from error
    critical = state.T_critical() - 273.15
    coldest, warmest = state.Tmin() - 273.15, max(evaporating)
    if not min(evaporating) > coldest:
        raise OutOfRange("evaporating temperature is below the refrigerant's range; found °C", min(evaporating))
    if not min(condensing) > warmest:
        raise OutOfRange("condensing temperature must lie above the evaporating one; found °C", min(condensing))
    if not max(condensing) < critical - 1.0:
        raise OutOfRange("condensing temperature must stay below the critical point; found °C", max(condensing))

    warm = []
    for temperature in condensing:
        state.update(CoolProp.QT_INPUTS, 1.0, temperature + 273.15)
        pressure = state.p()
        state.update(CoolProp.PQ_INPUTS, pressure, 0.0)
        if subcooling > SATURATED:
            state.update(CoolProp.PT_INPUTS, pressure, state.T() - subcooling)
        warm.append((pressure, state.hmass()))
    rows = []
    for temperature in evaporating:
        state.update(CoolProp.QT_INPUTS, 1.0, temperature + 273.15)
        suction = state.p()
        if superheat > SATURATED:
            state.update(CoolProp.PT_INPUTS, suction, temperature + 273.15 + superheat)
        density, entropy, enthalpy = state.rhomass(), state.smass(), state.hmass()
        row = []
        for discharge, liquid in warm:
            state.update(CoolProp.PSmass_INPUTS, discharge, entropy)
            row.append(
                Cycle(
                    suction_density=density,
                    refrigerating_effect=enthalpy - liquid,
                    isentropic_work=state.hmass() - enthalpy,
                    pressure_ratio=discharge / suction,
                    evaporating_pressure=suction,
                    condensing_pressure=discharge,
                )
            )
        rows.append(tuple(row))
    return tuple(rows)
