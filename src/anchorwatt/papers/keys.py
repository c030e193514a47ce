"""Keys of JSON and CSV: each ends in the unit of its figure."""

from __future__ import annotations

import math

from anchorwatt.units import convert

# The end of a key and the unit it stands for; longer ends before those that they end in.
_ENDS = {
    "_L_per_h": "L/h",
    "_kWh": "kWh",
    "_hours": "h",
    "_pct": "%",
    "_kg": "kg",
    "_kW": "kW",
    "_W": "W",
    "_V": "V",
    "_A": "A",
    "_C": "°C",
    "_L": "L",
    "_deg": "°",
    "_cm": "cm",
    "_m": "m",
}


def unit_of(key: str) -> str:
    """The unit that a key ends in; what follows a dot names whose figure it is.

    Example
    -------
    >>> unit_of("air_temperature_C.saloon"), unit_of("fuel_flow_L_per_h")
    ('°C', 'L/h')
    """
    quantity = key.split(".")[0]
    for end, unit in _ENDS.items():
        if quantity.endswith(end):
            return unit
    raise KeyError(f"the key {key} ends in no unit")


def figure(key: str, value: float, dimension: str) -> float | None:
    """The figure that stands under a key, to six digits; None when it is not known.

    Example
    -------
    >>> figure("hold_hours", 38_520.0, "time"), figure("hold_hours", float("nan"), "time")
    (10.7, None)
    """
    return in_unit(value, unit_of(key), dimension)


def in_unit(value: float, unit: str, dimension: str) -> float | None:
    """An SI value in a unit, to six digits; None when it is not known. A count, a ratio and money have none.

    Money is exact to the cent.
    """
    if math.isnan(value):
        return None
    if dimension == "count":
        return round(value)
    if dimension == "money":
        return round(value, 2)
    if dimension == "ratio":
        return float(f"{value:.6g}")
    return float(f"{convert(value, unit, dimension):.6g}")
