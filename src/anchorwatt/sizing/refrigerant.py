"""The shared plant's refrigerant, should all of it leak into the smallest cabin that it can reach.

A figure of this module is a first look. The standard in force where the boat is built and used (EN 378, ISO 5149,
ASHRAE 15 and 34, IEC 60335-2-40) and a certified refrigeration technician decide. Cabins that a line merely passes
through are not known to the design: look at them too.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum

from anchorwatt.design.specification import RefrigerantSafety, Specification
from anchorwatt.physics.refrigerant_charge import (
    circuit_charge,
    largest_charge,
    leak_concentration,
    least_floor_area,
)

OCCUPIED = ("sleeping", "saloon", "galley", "pilothouse")
"""Uses of a cabin in which people stay."""


class Measures(Enum):
    """What EN 378 asks for, a cabin low in the hull taken as its lowest floor below ground. From memory."""

    NONE = "none"  # within the practical limit
    ONE = "one measure"  # within QLMV
    TWO = "two measures"  # within QLAV
    LESS_CHARGE = "less refrigerant"  # beyond QLAV no measure is enough


LESS = (
    "less refrigerant in one circuit: shorter lines, or several smaller circuits",
    "all refrigerant outside the sleeping space, with chilled water to its cabins",
)
"""What takes the hazard away."""

GUARDED = (
    "a leak detector low in the cabin, with an alarm that wakes",
    "automatic valves that shut the lines to the cabin when the detector trips",
    "mechanical ventilation, or permanent openings low and high to a larger space",
)
"""What guards against it."""

STIRRED = ("the handler's fan stirring the cabin's air as soon as the detector trips",)
"""The same, of a refrigerant that burns."""


@dataclass(frozen=True)
class RefrigerantLimits:
    """A circuit's charge against the cabins that it can leak into."""

    refrigerant: str
    safety_class: str
    charge: float  # kg, lines counted in
    line_length: float  # m, one way, all handlers together
    cabin: int  # the smallest by volume
    volume: float  # m3 of that cabin
    floor_area: float  # m2, the smallest of them all
    concentration: float  # kg/m3 of the whole charge in the smallest cabin
    practical_limit: float  # kg/m3
    limit_with_ventilation: float  # kg/m3, QLMV
    limit_with_two_measures: float  # kg/m3, QLAV
    largest_charge: float  # kg over the smallest floor, nan = does not burn
    least_floor_area: float  # m2 for the charge, nan = does not burn
    measures: Measures
    remedies: tuple[str, ...]  # none where no measure is needed


def cabins_reached(specification: Specification) -> tuple[int, ...]:
    """Occupied cabins with a handler, or an outlet of one, on the shared plant."""
    reached = {handler.cabin for handler in specification.plant.handlers}
    reached |= {outlet.cabin for handler in specification.plant.handlers for outlet in handler.outlets}
    return tuple(sorted(c for c in reached if specification.cabins[c].use in OCCUPIED))


def measures_needed(concentration: float, safety: RefrigerantSafety) -> Measures:
    """What a concentration, kg/m3, asks for."""
    if concentration <= min(safety.practical_limit, safety.limit_with_ventilation):
        return Measures.NONE
    if concentration <= safety.limit_with_ventilation:
        return Measures.ONE
    if concentration <= safety.limit_with_two_measures:
        return Measures.TWO
    return Measures.LESS_CHARGE


def refrigerant_limits(specification: Specification) -> RefrigerantLimits | None:
    """The shared plant's refrigerant; None where it reaches no occupied cabin."""
    plant, safety = specification.plant, specification.plant.safety
    reached = cabins_reached(specification)
    if not reached:
        return None
    lines = math.fsum(handler.line_length for handler in plant.handlers)
    charge = circuit_charge(plant.charge, plant.charged_length, lines, plant.charge_per_length)
    smallest = min(reached, key=lambda c: specification.cabins[c].volume)
    volume = specification.cabins[smallest].volume
    floor = min(specification.cabins[c].floor_area for c in reached)
    burns = not math.isnan(safety.flammable_limit)
    largest = largest_charge(safety.flammable_limit, floor) if burns else math.nan
    concentration = leak_concentration(charge, volume)
    measures = measures_needed(concentration, safety)
    remedies: tuple[str, ...] = ()
    if measures is not Measures.NONE or charge > largest:
        guards = () if measures is Measures.LESS_CHARGE else GUARDED + (STIRRED if burns else ())
        remedies = LESS + guards
    return RefrigerantLimits(
        refrigerant=safety.name,
        safety_class=safety.safety_class,
        charge=charge,
        line_length=lines,
        cabin=smallest,
        volume=volume,
        floor_area=floor,
        concentration=concentration,
        practical_limit=safety.practical_limit,
        limit_with_ventilation=safety.limit_with_ventilation,
        limit_with_two_measures=safety.limit_with_two_measures,
        largest_charge=largest,
        least_floor_area=least_floor_area(safety.flammable_limit, charge) if burns else math.nan,
        measures=measures,
        remedies=remedies,
    )
