"""Moist air as a mixture of ideal gases: humidity, enthalpy, density, dew point.

Against real-gas properties the humidity ratio of saturated air comes out 0.4 to 0.5 % low between 10 and
35 °C at sea level, because the enhancement factor of the mixture is left out.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

CP_AIR = 1006.0
"""J/(kg K), dry air."""

CP_VAPOUR = 1860.0
"""J/(kg K), water vapour."""

CP_WATER = 4186.0
"""J/(kg K), liquid water."""

EVAPORATION = 2.501e6
"""J/kg, heat of evaporation of water at 0 °C."""

GAS_CONSTANT_AIR = 287.042
"""J/(kg K), dry air (ASHRAE Handbook - Fundamentals 2017, chapter 1, equation 1)."""

MASS_RATIO = 0.621945
"""Molar mass of water over that of dry air (ASHRAE Handbook - Fundamentals 2017, chapter 1)."""

ZERO_CELSIUS = 273.15
"""K."""

TRIPLE_POINT = 0.01
"""°C, below which saturation is taken over ice."""


def _log_saturation(kelvin: float) -> float:
    """Natural logarithm of the saturation pressure in Pa; over ice below the triple point."""
    if kelvin < ZERO_CELSIUS + TRIPLE_POINT:
        return (
            -5.6745359e3 / kelvin
            + 6.3925247
            + kelvin * (-9.677843e-3 + kelvin * (6.2215701e-7 + kelvin * (2.0747825e-9 - 9.484024e-13 * kelvin)))
            + 4.1635019 * math.log(kelvin)
        )
    return (
        -5.8002206e3 / kelvin
        + 1.3914993
        + kelvin * (-4.8640239e-2 + kelvin * (4.1764768e-5 - 1.4452093e-8 * kelvin))
        + 6.5459673 * math.log(kelvin)
    )


def _log_saturation_slope(kelvin: float) -> float:
    """Derivative of `_log_saturation`, 1/K."""
    if kelvin < ZERO_CELSIUS + TRIPLE_POINT:
        return (
            5.6745359e3 / (kelvin * kelvin)
            - 9.677843e-3
            + kelvin * (2 * 6.2215701e-7 + kelvin * (3 * 2.0747825e-9 - 4 * 9.484024e-13 * kelvin))
            + 4.1635019 / kelvin
        )
    return (
        5.8002206e3 / (kelvin * kelvin)
        - 4.8640239e-2
        + kelvin * (2 * 4.1764768e-5 - 3 * 1.4452093e-8 * kelvin)
        + 6.5459673 / kelvin
    )


def saturation_pressure(temperature: float) -> float:
    """Pressure of saturated water vapour over water, or over ice below the triple point.

    Parameters
    ----------
    temperature : °C

    Returns
    -------
    Pa

    Raises
    ------
    OutOfRange
        temperature outside -100 to 200 °C, where the formulas end.

    Source
    ------
    R. W. Hyland and A. Wexler, "Formulations for the thermodynamic properties of the saturated phases of
    H2O from 173.15 K to 473.15 K", ASHRAE Transactions 89(2A), 1983; as printed in ASHRAE Handbook -
    Fundamentals 2017, chapter 1, equations 5 and 6.

    Example
    -------
    >>> saturation_pressure(25.0)
    3169.2
    """
    if not -100.0 <= temperature <= 200.0:
        raise OutOfRange("saturation pressure is known from -100 to 200 °C; found", temperature)
    return math.exp(_log_saturation(temperature + ZERO_CELSIUS))


def saturation_humidity_ratio(temperature: float, pressure: float) -> float:
    """Humidity ratio of saturated air.

    Parameters
    ----------
    temperature : °C
    pressure : Pa of the air

    Returns
    -------
    kg water per kg dry air

    Raises
    ------
    OutOfRange
        temperature outside -100 to 200 °C, or the air at its boiling pressure or below.

    Source
    ------
    ASHRAE Handbook - Fundamentals 2017, chapter 1, equation 21.

    Example
    -------
    >>> saturation_humidity_ratio(10.0, 101_325.0)
    0.00763
    """
    vapour = saturation_pressure(temperature)
    if not pressure > vapour:
        raise OutOfRange("the air's pressure must lie above that of saturated vapour; found Pa", pressure)
    return MASS_RATIO * vapour / (pressure - vapour)


def humidity_ratio(temperature: float, relative_humidity: float, pressure: float) -> float:
    """Humidity ratio from relative humidity.

    Parameters
    ----------
    temperature : °C
    relative_humidity : 0 to 1
    pressure : Pa of the air

    Returns
    -------
    kg water per kg dry air

    Raises
    ------
    OutOfRange
        relative humidity outside 0 to 1, temperature outside -100 to 200 °C, or boiling.

    Source
    ------
    ASHRAE Handbook - Fundamentals 2017, chapter 1, equations 12 and 20.

    Example
    -------
    >>> humidity_ratio(27.0, 0.5, 101_325.0)
    0.01114
    """
    if not 0.0 <= relative_humidity <= 1.0:
        raise OutOfRange("relative humidity lies between 0 and 1; found", relative_humidity)
    vapour = relative_humidity * saturation_pressure(temperature)
    if not pressure > vapour:
        raise OutOfRange("the air's pressure must lie above that of its vapour; found Pa", pressure)
    return MASS_RATIO * vapour / (pressure - vapour)


def vapour_pressure(humidity_ratio: float, pressure: float) -> float:
    """Partial pressure of the water vapour in air.

    Parameters
    ----------
    humidity_ratio : kg water per kg dry air
    pressure : Pa of the air

    Returns
    -------
    Pa

    Raises
    ------
    OutOfRange
        humidity ratio negative or pressure not positive.

    Source
    ------
    ASHRAE Handbook - Fundamentals 2017, chapter 1, equation 20.

    Example
    -------
    >>> vapour_pressure(0.01, 101_325.0)
    1603.4
    """
    if not humidity_ratio >= 0.0:
        raise OutOfRange("a humidity ratio is not negative; found", humidity_ratio)
    if not pressure > 0.0:
        raise OutOfRange("the air's pressure must be positive; found", pressure)
    return pressure * humidity_ratio / (MASS_RATIO + humidity_ratio)


def relative_humidity(temperature: float, humidity_ratio: float, pressure: float) -> float:
    """Relative humidity from humidity ratio; above 1 the air is fogged.

    Parameters
    ----------
    temperature : °C
    humidity_ratio : kg water per kg dry air
    pressure : Pa of the air

    Returns
    -------
    0 upward, 1 = saturated

    Raises
    ------
    OutOfRange
        humidity ratio negative, pressure not positive, temperature outside -100 to 200 °C.

    Source
    ------
    ASHRAE Handbook - Fundamentals 2017, chapter 1, equations 12 and 20.

    Example
    -------
    >>> relative_humidity(27.0, 0.01114, 101_325.0)
    0.500
    """
    return vapour_pressure(humidity_ratio, pressure) / saturation_pressure(temperature)


def enthalpy(temperature: float, humidity_ratio: float) -> float:
    """Enthalpy of moist air, counted from dry air and liquid water at 0 °C.

    Parameters
    ----------
    temperature : °C
    humidity_ratio : kg water per kg dry air

    Returns
    -------
    J per kg dry air

    Raises
    ------
    OutOfRange
        humidity ratio negative.

    Source
    ------
    ASHRAE Handbook - Fundamentals 2017, chapter 1, equation 30.

    Example
    -------
    >>> enthalpy(27.0, 0.01114) / 1000.0
    55.6
    """
    if not humidity_ratio >= 0.0:
        raise OutOfRange("a humidity ratio is not negative; found", humidity_ratio)
    return CP_AIR * temperature + humidity_ratio * (EVAPORATION + CP_VAPOUR * temperature)


def density(temperature: float, humidity_ratio: float, pressure: float) -> float:
    """Mass of dry air in a cubic metre of moist air.

    Parameters
    ----------
    temperature : °C
    humidity_ratio : kg water per kg dry air
    pressure : Pa of the air

    Returns
    -------
    kg dry air per m³

    Raises
    ------
    OutOfRange
        temperature at absolute zero or below, humidity ratio negative, pressure not positive.

    Source
    ------
    ASHRAE Handbook - Fundamentals 2017, chapter 1, equation 26, turned over.

    Example
    -------
    >>> 1.0 / density(27.0, 0.01114, 101_325.0)
    0.8655
    """
    if not temperature > -ZERO_CELSIUS:
        raise OutOfRange("a temperature lies above -273.15 °C; found", temperature)
    if not humidity_ratio >= 0.0:
        raise OutOfRange("a humidity ratio is not negative; found", humidity_ratio)
    if not pressure > 0.0:
        raise OutOfRange("the air's pressure must be positive; found", pressure)
    return pressure / (GAS_CONSTANT_AIR * (temperature + ZERO_CELSIUS) * (1.0 + humidity_ratio / MASS_RATIO))


def dew_point(humidity_ratio: float, pressure: float) -> float:
    """Temperature at which air of that humidity is saturated; the frost point below 0.01 °C.

    Parameters
    ----------
    humidity_ratio : kg water per kg dry air, above zero
    pressure : Pa of the air

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        no vapour at all, or a dew point outside -100 to 200 °C.

    Source
    ------
    `saturation_pressure`, solved by Newton's method.

    Example
    -------
    >>> dew_point(0.01114, 101_325.0)
    15.70
    """
    vapour = vapour_pressure(humidity_ratio, pressure)
    # What saturation_pressure gives at its two ends.
    if not 1.40510e-3 <= vapour <= 1.555074e6:
        raise OutOfRange("a dew point is known for vapour of 0.00141 Pa to 1.55 MPa; found Pa", vapour)
    wanted = math.log(vapour)
    triple = ZERO_CELSIUS + TRIPLE_POINT
    over_ice = wanted < _log_saturation(triple)
    # The formulas of water and ice differ by a hair at the triple point: stay on one of them.
    lowest = 173.15 if over_ice else triple
    highest = triple - 1e-9 if over_ice else 473.15
    kelvin = min(highest, max(lowest, 1.0 / (1.0 / 273.16 - (wanted - 6.4163) / 5420.0)))
    for _ in range(30):
        change = (wanted - _log_saturation(kelvin)) / _log_saturation_slope(kelvin)
        kelvin = min(highest, max(lowest, kelvin + change))
        if abs(change) < 1e-10:
            break
    return kelvin - ZERO_CELSIUS


def humidity_ratio_from_dew_point(dew_point: float, pressure: float) -> float:
    """Humidity ratio of air with that dew point.

    Parameters
    ----------
    dew_point : °C
    pressure : Pa of the air

    Returns
    -------
    kg water per kg dry air

    Raises
    ------
    OutOfRange
        dew point outside -100 to 200 °C, or boiling.

    Source
    ------
    Definition of the dew point; ASHRAE Handbook - Fundamentals 2017, chapter 1.

    Example
    -------
    >>> humidity_ratio_from_dew_point(15.70, 101_325.0)
    0.01114
    """
    return saturation_humidity_ratio(dew_point, pressure)


def latent_heat(temperature: float) -> float:
    """Heat given up when vapour becomes water at that temperature.

    Consistent with `enthalpy`: vapour's less liquid water's. At 0 to 40 °C within 0.2 % of steam tables.

    Parameters
    ----------
    temperature : °C of vapour and water

    Returns
    -------
    J/kg

    Raises
    ------
    OutOfRange
        temperature outside -100 to 200 °C.

    Source
    ------
    Kirchhoff's law with the constant specific heats of this module.

    Example
    -------
    >>> latent_heat(25.0) / 1e6
    2.443
    """
    if not -100.0 <= temperature <= 200.0:
        raise OutOfRange("latent heat is given from -100 to 200 °C; found", temperature)
    return EVAPORATION + (CP_VAPOUR - CP_WATER) * temperature
