"""What the trade's rules per volume and floor area would have said. Common practice, no source.

They are coarse: they know nothing of glass, covers, build or climate. They stand beside the computed load so that
whoever is used to them sees how far apart the two are, and why.
"""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.design.specification import Cabin, Specification
from anchorwatt.units import parse

SOURCE = "common practice, no source"

CUBIC_FOOT, SQUARE_FOOT = float(parse("1 ft3", "volume")), float(parse("1 ft2", "area"))
BTU_PER_HOUR = float(parse("1 Btu/h", "heat flow"))

BY_DAY = (16.0, 19.0)  # Btu/h for each ft³ of a pilothouse or a sunny saloon
BY_NIGHT = (10.0, 12.0)  # of cabins below, for the night or under cover
ON_AVERAGE = 14.0  # of a whole boat
BY_FLOOR = 100.0  # Btu/h for each ft² of floor

SUNNY = ("pilothouse", "saloon", "galley")


@dataclass(frozen=True)
class RuleOfThumb:
    """What the rules say of one cabin, W."""

    cabin: int
    low: float  # by volume
    high: float  # by volume
    by_floor: float


@dataclass(frozen=True)
class RulesOfThumb:
    """What the rules say of the cabins that are ever cooled."""

    cabins: tuple[RuleOfThumb, ...]
    boat: float  # W, the average rule on all of them
    by_floor: float  # W


def _volume(cabin: Cabin) -> float:
    """The trade measures floor times headroom, furniture and all."""
    return cabin.floor_area * cabin.height


def rule_for(cabin: Cabin) -> tuple[float, float]:
    """Btu/h for each cubic foot, from and to."""
    return BY_DAY if cabin.use in SUNNY else BY_NIGHT


def rules_of_thumb(specification: Specification, cooled: tuple[int, ...]) -> RulesOfThumb:
    """What the rules say of those cabins."""
    rows = []
    for c in cooled:
        cabin = specification.cabins[c]
        low, high = rule_for(cabin)
        feet = _volume(cabin) / CUBIC_FOOT
        rows.append(
            RuleOfThumb(
                c,
                low * feet * BTU_PER_HOUR,
                high * feet * BTU_PER_HOUR,
                BY_FLOOR * cabin.floor_area / SQUARE_FOOT * BTU_PER_HOUR,
            )
        )
    whole = sum(_volume(specification.cabins[c]) for c in cooled) / CUBIC_FOOT
    return RulesOfThumb(tuple(rows), ON_AVERAGE * whole * BTU_PER_HOUR, sum(row.by_floor for row in rows))
