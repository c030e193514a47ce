"""The design beside a generating set, point by point, whoever comes out better."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import LONGEST_HOLD, Simulation
from anchorwatt.sizing.generator import GeneratorComparison, Way, compare

GENERATOR_CAUTIONS = (
    (
        "Every running engine gives off carbon monoxide, which kills without a smell: an alarm in each sleeping cabin, "
        "a sound exhaust, no swimmers near its outlet, and thought for the boat that lies to leeward."
    ),
    (
        "Exhaust, fuel lines, ventilation and seawater of a set can burn, flood or poison: people who are certified "
        "for it install and inspect them, and local codes decide, quiet hours of the anchorage among them."
    ),
)

ALIKE = 0.02
"""Share by which two figures may differ and still count as the same."""


class Better(Enum):
    """Who comes out better on a point."""

    DESIGN = "design"
    SET = "set"
    NEITHER = "neither"
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True)
class Point:
    """One figure of both."""

    key: str
    question: str
    design: float  # nan = not known
    set: float  # nan = not known, inf = without limit
    dimension: str  # of the units room, or "money" in the comparison's currency
    better: Better


@dataclass(frozen=True)
class GeneratorStory:
    """The comparison and what it comes to."""

    comparison: GeneratorComparison
    points: tuple[Point, ...]
    cautions: tuple[str, ...] = GENERATOR_CAUTIONS


def generator_story(specification: Specification, simulation: Simulation) -> GeneratorStory | None:
    """The comparison with the generating set; None where no set of the catalogue is large enough."""
    found = compare(specification, simulation)
    if found is None:
        return None
    reached = float(simulation.hold.summary.reserve_at[0])
    hold = LONGEST_HOLD if math.isnan(reached) else reached
    return GeneratorStory(found, points(found, hold))


def points(found: GeneratorComparison, hold: float) -> tuple[Point, ...]:
    """What a buyer asks; `hold` is s that the design's bank lasts. The set is told by its better way."""
    under_way, at_anchor = found.way("under-way"), found.way("at-anchor")
    sets = [way for way in found.ways if way.generator]
    fuel = _least(found.fuel_per_year(way) for way in sets)
    running = _least(found.running_per_year(way) for way in sets)
    rows = [
        _point("price", "Price", found.bank_price, found.generator.price, "money"),
        _point("mass", "Mass", found.bank_mass, found.generator.mass, "mass"),
    ]
    if under_way is not None:
        question = "Fuel a year, the boat moving every day"
        rows.append(_point("fuel-moving", question, found.fuel_per_year(under_way), fuel, "liquid volume"))
    if at_anchor is not None:
        question = "Fuel a year, the boat staying at anchor"
        rows.append(_point("fuel-staying", question, found.fuel_per_year(at_anchor), fuel, "liquid volume"))
        question = "Running a year, the boat staying at anchor"
        rows.append(_point("running-staying", question, found.running_per_year(at_anchor), running, "time"))
    services = _least(found.service_price_per_year(way) for way in sets)
    rows.append(_point("services", "Services a year that one has for this alone", 0.0, services, "money"))
    rows.append(_point("on-end", "Cooling on end without the main engine", hold, math.inf, "time", more_is_better=True))
    return tuple(rows)


def by_night(found: GeneratorComparison) -> tuple[Way, ...]:
    """Ways in which an engine runs while people sleep."""
    return tuple(way for way in found.ways if way.by_night > 0.0)


def _least(values: Iterable[float]) -> float:
    known = [value for value in values if not math.isnan(value)]
    return min(known, default=math.nan)


def _point(
    key: str, question: str, design: float, other: float, dimension: str, *, more_is_better: bool = False
) -> Point:
    return Point(key, question, design, other, dimension, _better(design, other, more_is_better))


def _better(design: float, other: float, more_is_better: bool) -> Better:
    if math.isnan(design) or math.isnan(other):
        return Better.CANNOT_TELL
    if design == other or abs(design - other) <= ALIKE * max(design, other) < math.inf:
        return Better.NEITHER
    return Better.DESIGN if (design > other) is more_is_better else Better.SET
