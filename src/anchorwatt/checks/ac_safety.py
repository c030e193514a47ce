"""Rules about earth faults, neutral and earth, galvanic isolation, polarity and transfer on the AC side."""

from __future__ import annotations

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, at_most, rule
from anchorwatt.checks.vouched import vouched
from anchorwatt.sizing.ac_safety import NEAR_INLET

NEEDLESS = 1.0
"""Told as the value of what a design has no need of, because something else does its work."""


@rule(
    "earth-fault-device",
    "Does 30 mA of leakage to earth trip shore power near the inlet, or does an isolation transformer stand there?",
    "count",
    "ABYC E-11 11.11.1 by a forum; ISO 13297, 30 mA or less, from memory",
    "A device of 30 mA at the main shore breaker. Leakage into the water kills swimmers: have it tested.",
)
def earth_fault_device(evidence: Evidence) -> Measured | None:
    found = evidence.ac_safety
    if not found.shore:
        return None
    if not found.earth_fault_needed:
        return Measured(NEEDLESS, 1.0, Verdict.HOLDS, found.earth_fault_why)
    return vouched(evidence.specification.installation.earth_fault_device, "earth_fault_device", found.earth_fault_why)


@rule(
    "galvanic-isolation",
    "Is the shore's earth kept from the boat's metal by an isolation transformer or a galvanic isolator?",
    "count",
    "ISO 13297, a sample page: an isolator must not fail open; ABYC A-28, from memory",
    "A fail-safe galvanic isolator in the shore's earth, or an isolation transformer before everything on shore power.",
)
def galvanic_isolation(evidence: Evidence) -> Measured | None:
    found = evidence.ac_safety
    if not found.shore:
        return None
    if not found.galvanic_needed:
        return Measured(NEEDLESS, 1.0, Verdict.HOLDS, found.galvanic_why)
    return vouched(evidence.specification.installation.galvanic_isolator, "galvanic_isolator", found.galvanic_why)


@rule(
    "reverse-polarity",
    "Is reversed shore polarity shown, or do branches open both poles, or does a transformer make its own polarity?",
    "count",
    "ISO 13297, a sample page (6.8 to 6.10)",
    "An indicator at the panel, or breakers that open both poles of every branch.",
)
def reverse_polarity(evidence: Evidence) -> Measured | None:
    found, said = evidence.ac_safety, evidence.specification.installation
    if not found.shore:
        return None
    if not found.polarity_needed:
        return Measured(NEEDLESS, 1.0, Verdict.HOLDS, found.polarity_why)
    if said.double_pole:
        return Measured(NEEDLESS, 1.0, Verdict.HOLDS, "branches open both poles")
    return vouched(said.polarity_indicator, "polarity_indicator", found.polarity_why)


@rule(
    "neutral-earth-bond",
    "Are neutral and earth joined at the source that feeds the boat, and nowhere else?",
    "count",
    "ISO 13297, a sample page (6.8 to 6.10): earthed only at its source",
    "A relay in the inverter that joins them while it inverts and parts them on shore power; one join at the secondary "
    "of an isolation transformer. A join that stays on shore power makes leakage devices trip and metal live.",
)
def neutral_earth_bond(evidence: Evidence) -> Measured:
    where = "; ".join(
        f"on {bond.source} {'at' if bond.joined else 'not aboard but'} {bond.where}"
        for bond in evidence.ac_safety.bonds
    )
    return vouched(evidence.specification.installation.neutral_bond, "neutral_bond", where)


@rule(
    "transfer-breaks-neutral",
    "Does the transfer open all conductors of one source, neutral too, before it closes another?",
    "count",
    "ABYC E-11 and ISO 13297, from memory",
    "A transfer switch or relay with a pole for neutral: sources that meet destroy each other, and a shared neutral "
    "trips the leakage device.",
)
def transfer_breaks_neutral(evidence: Evidence) -> Measured | None:
    if evidence.specification.shore is None:
        return None
    return vouched(evidence.specification.installation.transfer_breaks_neutral, "transfer_breaks_neutral")


@rule(
    "shore-breaker-near-inlet",
    "Does the main shore breaker sit within 3 m of the inlet, along the conductor?",
    "length",
    "ABYC E-11 (10 ft) and ISO 13297, from memory",
    "Move the breaker to the inlet, or put one there.",
)
def shore_breaker_near_inlet(evidence: Evidence) -> Measured | None:
    if evidence.specification.shore is None:
        return None
    first = [one.circuit for one in evidence.wiring.circuits if one.circuit.source == "shore"]
    if not first:
        return None
    return at_most(first[0].length, NEAR_INLET)


@rule(
    "autotransformer-isolates-nothing",
    "If the transformer's windings are one, is shore power guarded as if it were not there?",
    "count",
    "10 CFR 431.192: an autotransformer's sides are one winding",
    "An isolation transformer, or an earth-fault device and a galvanic isolator before the autotransformer.",
)
def autotransformer_isolates_nothing(evidence: Evidence) -> Measured | None:
    found, said = evidence.ac_safety, evidence.specification.installation
    if not (found.shore and found.autotransformer):
        return None
    both = (said.earth_fault_device, said.galvanic_isolator)
    told = False if False in both else None if None in both else True
    return vouched(told, "earth_fault_device and galvanic_isolator")
