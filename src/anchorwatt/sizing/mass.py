"""What the installation weighs, part by part."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.design.specification import Specification


@dataclass(frozen=True)
class PartMass:
    name: str
    mass: float  # kg, all of the kind together


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


def parts(specification: Specification) -> tuple[PartMass, ...]:
    """Every part that the design adds to the boat; engines are there already, cables are not sized yet."""
    rows = [
        PartMass(specification.plant.name, specification.plant.mass),
        *(PartMass(handler.name, handler.mass) for handler in specification.plant.handlers),
        PartMass(
            f"bank, {specification.bank.series} × {specification.bank.parallel} {specification.bank.module}",
            specification.bank.mass,
        ),
        PartMass(specification.inverter.name, specification.inverter.mass),
    ]
    rows += [PartMass(x.name, x.mass) for x in (specification.charger, specification.transformer) if x is not None]
    if specification.solar is not None:
        rows.append(PartMass("solar panels", specification.solar.mass))
    if specification.engine_battery is not None:
        converter = specification.engine_battery.converter
        rows.append(PartMass(converter.name, converter.mass))
    rows += [PartMass(m.name, m.mass) for engine in specification.engines for m in engine.alternators]
    return tuple(rows)


def mass_added(specification: Specification) -> float:
    """kg of all parts that the design adds, cables, ducts and pipes left out."""
    return sum(part.mass for part in parts(specification))
