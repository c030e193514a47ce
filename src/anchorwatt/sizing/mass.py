"""What a cooling plant weighs, for the comparison of its kinds; `sizing.weight` weighs the installation."""

from __future__ import annotations

from anchorwatt.design.specification import Specification


def cooling_mass(specification: Specification) -> float:
    """kg of the shared plant with its air handlers."""
    return specification.plant.mass + sum(handler.mass for handler in specification.plant.handlers)


def alternative_mass(specification: Specification) -> float:
    """kg of the self-contained units with their pump; 0 where the design names none."""
    alternative = specification.alternative
    return alternative.mass + sum(unit.mass for unit in alternative.units) if alternative else 0.0


def chilled_mass(specification: Specification) -> float:
    """kg of the chiller with its fan coils; 0 where the design names none."""
    chilled = specification.chilled
    return chilled.mass + sum(coil.mass for coil in chilled.fan_coils) if chilled else 0.0
