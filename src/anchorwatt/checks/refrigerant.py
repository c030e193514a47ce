"""Rules about the shared plant's refrigerant in the smallest cabin that it can leak into.

They point at a hazard; the standard in force and a certified refrigeration technician decide.
"""

from __future__ import annotations

import math

from anchorwatt.checks.registry import Evidence, Measured, at_most, rule

DEFER = "The standard in force (EN 378, ISO 5149, ASHRAE 15) and a certified refrigeration technician decide."


@rule(
    "refrigerant-concentration",
    "Is the whole charge, leaked into the smallest occupied cabin, within the refrigerant's practical limit?",
    "density",
    "EN 378-1, annex on permitted charge: practical limit; figures from memory where the catalogue says so",
    "Shorter lines, several smaller circuits, or chilled water with all refrigerant outside. Over the limit a cabin "
    "needs one measure up to QLMV and two up to QLAV: a low leak detector with an alarm, automatic shut-off valves, "
    f"ventilation or permanent openings. {DEFER}",
)
def refrigerant_concentration(evidence: Evidence) -> Measured | None:
    found = evidence.refrigerant
    return None if found is None else at_most(found.concentration, found.practical_limit)


@rule(
    "refrigerant-with-measures",
    "Is the same charge within what the standard allows with two measures (QLAV)?",
    "density",
    "EN 378-1, annex on permitted charge: QLAV; figures from memory where the catalogue says so",
    "No measure is enough beyond this: less refrigerant in one circuit, several circuits, or all refrigerant "
    f"outside the sleeping space. {DEFER}",
)
def refrigerant_with_measures(evidence: Evidence) -> Measured | None:
    found = evidence.refrigerant
    return None if found is None else at_most(found.concentration, found.limit_with_two_measures)


@rule(
    "flammable-charge",
    "Is the charge of a refrigerant that burns within what the smallest occupied cabin's floor allows?",
    "mass",
    "IEC 60335-2-40:2018, annex GG, release 0.6 m over the floor; that standard asks for no floor area under 6 m³ "
    "times the flammable limit, which is too much for a cabin, so it is not used here",
    "Several smaller circuits, all refrigerant outside the sleeping space, or a refrigerant that does not burn; else "
    "a low leak detector that alarms, shuts the lines and stirs the air, with permanent openings or ventilation. "
    f"{DEFER}",
)
def flammable_charge(evidence: Evidence) -> Measured | None:
    found = evidence.refrigerant
    if found is None or math.isnan(found.largest_charge):
        return None
    return at_most(found.charge, found.largest_charge)
