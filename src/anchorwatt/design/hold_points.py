"""Hold points: where work on the boat stops until somebody competent has looked and signed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

HoldPointName = Literal[
    "taking out", "joinery", "bank", "alternators", "shore power", "seacock", "refrigerant", "leaving"
]


@dataclass(frozen=True)
class HoldPoint:
    """Where work stops, and what must hold before it goes on.

    Parameters
    ----------
    looks_at : usual tasks whose work is looked at; the first is what the point is about. It stands behind the last
        of them that a design has
    waits : what is left alone from that first task on until the stop; "" = nothing
    """

    name: HoldPointName
    stop: str
    holds: str
    looks_at: tuple[str, ...]
    waits: str = ""


SURVEY, TRIALS = "survey and drawings", "trials and papers"
COOLING, BANK, CONVERTERS = "cooling plant and air handlers", "bank and its boxes", "converters"
ALTERNATORS, SOLAR, WIRING = "alternators and belts", "solar panels", "wiring and protection"
"""Usual tasks by name."""

HOLD_POINTS = (
    HoldPoint(
        "taking out",
        "Stop before the old plant is taken out",
        "photographs of what is there; every circuit that stays is named",
        (SURVEY,),
    ),
    HoldPoint(
        "seacock",
        "Stop before the seacock is opened",
        "hoses clipped twice; strainer closed; somebody stands by the seacock",
        (COOLING,),
        "the seacock stays closed until its stop",
    ),
    HoldPoint(
        "refrigerant",
        "Stop before refrigerant is let in",
        "lines pressed and evacuated by a certified person, readings written down",
        (COOLING,),
        "the lines stay without refrigerant until its stop",
    ),
    HoldPoint(
        "joinery",
        "Stop before joinery is closed",
        "routes, supports and chafe looked at; ducts sealed; condensate runs by trial with water",
        (WIRING, COOLING),
        "joinery stays open until its stop",
    ),
    HoldPoint(
        "bank",
        "Stop before the bank is connected",
        "insulation and polarity measured; every torque signed; fuses in; covers on",
        (BANK, WIRING),
        "the bank stays unconnected until its stop",
    ),
    HoldPoint(
        "alternators",
        "Stop before an alternator is belted up",
        "regulator settings read back; stop of the field proved; belts aligned",
        (ALTERNATORS, WIRING),
        "belts stay off until their stop",
    ),
    HoldPoint(
        "shore power",
        "Stop before shore power is plugged in",
        "earth continuity measured; neutral bond at one place; earth-fault device tried",
        (CONVERTERS, WIRING),
        "shore power stays unplugged until its stop",
    ),
    HoldPoint(
        "leaving",
        "Stop before the boat leaves the yard",
        "the commissioning file filled in and signed; the hand-over file aboard",
        (TRIALS,),
    ),
)
"""In the order in which they come up in a usual job. Practice, from memory."""
