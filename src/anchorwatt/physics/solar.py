"""Solar panels on the coachroof or the arch."""

from __future__ import annotations

from anchorwatt.errors import OutOfRange


def cell_temperature(air: float, irradiance: float, rise: float) -> float:
    """Temperature of the cells of a panel.

    Parameters
    ----------
    air : °C
    irradiance : W/m² on the panel
    rise : K over the air at 1000 W/m²; 25 to 30 K on a deck (from memory)

    Returns
    -------
    °C

    Raises
    ------
    Nothing.

    Source
    ------
    Rise in proportion to irradiance, the form behind the nominal operating cell temperature.

    Example
    -------
    >>> cell_temperature(30.0, 800.0, 30.0)
    54.0
    """
    return air + rise * irradiance / 1000.0


def panel_power(
    irradiance: float, cell_temperature: float, peak_power: float, coefficient: float, delivered_share: float
) -> float:
    """Power that panels deliver to the bank.

    Parameters
    ----------
    irradiance : W/m² on the panels
    cell_temperature : °C
    peak_power : W at standard test conditions (1000 W/m², 25 °C)
    coefficient : 1/K of power, negative
    delivered_share : what shading, dirt, wiring and tracking leave, 0 to 1

    Returns
    -------
    W, 0 or more

    Raises
    ------
    OutOfRange
        irradiance or peak power negative, coefficient positive, or delivered share outside 0 to 1.

    Source
    ------
    Dobos, NREL/TP-6A20-62641, the direct-current model, without its low-light correction.

    Example
    -------
    >>> panel_power(800.0, 54.0, 600.0, -0.0035, 0.7)
    301.9
    """
    if irradiance < 0.0:
        raise OutOfRange("irradiance must not be negative; found", irradiance)
    if peak_power < 0.0:
        raise OutOfRange("peak power must not be negative; found", peak_power)
    if coefficient > 0.0:
        raise OutOfRange("temperature coefficient must not be positive; found", coefficient)
    if delivered_share < 0.0 or delivered_share > 1.0:
        raise OutOfRange("delivered share must be within 0 and 1; found", delivered_share)
    factor = max(0.0, 1.0 + coefficient * (cell_temperature - 25.0))
    return peak_power * irradiance / 1000.0 * factor * delivered_share
