"""Refrigerants that circuits of the catalogue may hold, and the order of a circuit's limits."""

from __future__ import annotations

from typing import Literal

from anchorwatt.units.refusal import Refused

Refrigerant = Literal["R410A", "R32", "R134a"]
"""Names as CoolProp knows them."""


def check_limits(lowest: float, rated: float, highest: float, condensing: float) -> None:
    """Refuse temperatures of a circuit that are out of order, all in °C."""
    if not (lowest <= rated < condensing and lowest < highest < condensing):
        raise Refused(
            f"lowest {lowest:g}, rated {rated:g}, highest evaporating {highest:g} "
            f"and highest condensing {condensing:g} °C",
            "the lowest evaporating temperature under the rated and the highest, all under the highest condensing",
        )
