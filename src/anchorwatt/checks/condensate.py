"""Rules about dew and mould on the insides of hull, bulkheads and furniture, and about what coils drain."""

from __future__ import annotations

import math

from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.sizing.condensate import DRAIN, SLOPE
from anchorwatt.sizing.dew import MOULD, SurfaceDew
from anchorwatt.sizing.refrigerant import OCCUPIED

DRY = (
    "More insulation where the surface is coldest, with no gaps for air behind it; less moisture (cook and wash with a "
    "hatch open, let cooling run before the cabin fills); or a set point nearer the sea's temperature."
)


def _looked_at(evidence: Evidence) -> tuple[SurfaceDew, ...]:
    """Cabins that people stay in or that the plan ever cools: a locker may be as damp as the day."""
    specification = evidence.specification
    cabins = {c for c, cabin in enumerate(specification.cabins) if cabin.use in OCCUPIED}
    for period in specification.plan:
        cabins |= {c for c, point in enumerate(period.set_points) if not math.isnan(point)}
    return tuple(surface for surface in evidence.surface_dew if surface.cabin in cabins)


@rule(
    "surfaces-dry",
    "Does the coldest inside surface stay over the dew point of its cabin's air, through the night and the day?",
    "temperature",
    "definition of the dew point; windows and cold ducts are left out here",
    DRY,
)
def surfaces_dry(evidence: Evidence) -> Measured | None:
    """The cabin nearest to dew, when it is nearest."""
    surfaces = _looked_at(evidence)
    if not surfaces:
        return None
    worst = min(surfaces, key=lambda surface: surface.margin)
    return at_least(worst.surface, worst.dew_point, near=0.04)


@rule(
    "surfaces-free-of-mould",
    "How damp is the air at the dampest inside surface, as the mean of the night and the day?",
    "share",
    "ISO 13788: mould is to be feared over 80 % as the mean of a month; here the design day stands for the month",
    DRY,
)
def surfaces_free_of_mould(evidence: Evidence) -> Measured | None:
    surfaces = _looked_at(evidence)
    return at_most(max(surface.humidity for surface in surfaces), MOULD, near=0.06) if surfaces else None


@rule(
    "condensate-drains",
    f"Does one hose of {1e3 * DRAIN:.0f} mm, laid to fall {SLOPE:.0%}, carry the water of the wettest hour?",
    "fuel flow",
    "flow half full under its own fall (physics.condensate); that all pans drain through one hose is ours",
    "A wider drain, or several; each with its fall, a trap where the fan sucks, its outlet clear of bilge and exhaust.",
)
def condensate_drains(evidence: Evidence) -> Measured | None:
    found = evidence.condensate
    return at_most(found.peak_flow, found.drain_volume) if found.day > 0.0 else None
