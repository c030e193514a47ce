"""Rules about fuses and breakers. Nothing electronic is counted on to interrupt a fault."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

from anchorwatt.checks.conductors import told
from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.sizing.fault_current import AMPERE_HOUR
from anchorwatt.sizing.protection import Protection, working_voltage
from anchorwatt.sizing.wiring import WiredCircuit

LARGE_BANK = 500.0 * AMPERE_HOUR
"""A s of a parallel bank above which each battery has a device of its own: ABYC E-11 11.10.1.4.1 of July 2025."""


Share = Callable[[WiredCircuit, Protection], float]


def hardest(evidence: Evidence, share: Share, *systems: str) -> tuple[float, WiredCircuit] | None:
    """The highest of a figure over all devices, and its circuit; None without devices."""
    found = [
        (share(one, one.protection), one)
        for one in evidence.wiring.circuits
        if one.protection is not None and one.circuit.system in (systems or ("dc", "ac"))
    ]
    known = [pair for pair in found if not math.isnan(pair[0])]
    return max(known, key=lambda pair: pair[0]) if known else None


@rule(
    "circuits-protected",
    "How many circuits that a fault could burn have no fuse or breaker that fits?",
    "count",
    "33 CFR 183.455(a); ABYC E-11; ISO 13297",
    "A fuse or breaker at the source of each; see “anchorwatt wiring” for what stands in the way.",
)
def circuits_protected(evidence: Evidence) -> Measured:
    bare = [
        one
        for one in evidence.wiring.circuits
        if one.circuit.needs_protection and (one.protection is None or math.isnan(one.protection.rating))
    ]
    return replace(at_most(float(len(bare)), 0.0, near=0.0), note=", ".join(one.tag for one in bare))


@rule(
    "rating-within-conductor",
    "How much of the highest rating that its conductors allow has the largest device for its circuit?",
    "share",
    "33 CFR 183.455(c); ABYC E-11 by trade notes; ISO 13297, from memory",
    "A larger conductor, or a smaller fuse where the load allows it.",
)
def rating_within_conductor(evidence: Evidence) -> Measured | None:
    def share(_: WiredCircuit, device: Protection) -> float:
        return device.rating / device.at_most if device.at_most > 0.0 else math.inf

    found = hardest(evidence, share)
    return None if found is None else told(at_most(found[0], 1.0, near=0.0), found[1])


@rule(
    "rating-carries-load",
    "How much of its rating does the load ask of the hardest-worked device, a quarter added where it lasts for hours?",
    "share",
    "125 % of a continuous load: NEC, from memory; peaks by what the family carries for a second, from memory",
    "The next larger fuse, if the conductor allows it: one that runs at its rating grows hot and opens by itself.",
)
def rating_carries_load(evidence: Evidence) -> Measured | None:
    def share(_: WiredCircuit, device: Protection) -> float:
        return device.at_least / device.rating

    found = hardest(evidence, share)
    return None if found is None else told(at_most(found[0], 1.0, near=0.0), found[1])


@rule(
    "interrupting-capacity",
    "How much of what its device interrupts may a fault draw, on the circuit where that is most?",
    "share",
    "ABYC E-11 by trade tables (1.5, 3, 5 kA; 20 kA beyond 10 kA); the bank's fault by cells, links and cables",
    "A family that interrupts more, a device for each string, or more cable before it. A fuse that cannot interrupt a "
    "fault feeds an arc.",
)
def interrupting_capacity(evidence: Evidence) -> Measured | None:
    def share(one: WiredCircuit, device: Protection) -> float:
        return one.prospective / device.interrupting if device.interrupting > 0.0 else math.inf

    found = hardest(evidence, share)
    if found is None:
        return None
    return told(at_most(found[0], 1.0, near=0.0), found[1], f", up to {found[1].prospective / 1e3:.1f} kA")


@rule(
    "device-voltage",
    "How much of the voltage that its device bears has the circuit where that is most, while charging?",
    "share",
    "33 CFR 183.455(d)",
    "A family for a higher voltage: a full bank stands well over its nominal one.",
)
def device_voltage(evidence: Evidence) -> Measured | None:
    def share(one: WiredCircuit, device: Protection) -> float:
        volts = working_voltage(one.circuit.voltage, one.circuit.system == "ac")
        return volts / device.highest_voltage

    found = hardest(evidence, share)
    return None if found is None else told(at_most(found[0], 1.0, near=0.0), found[1])


@rule(
    "string-devices",
    "How many strings of a parallel bank over 500 Ah have no device of their own that interrupts its fault?",
    "count",
    "ABYC E-11 11.10.1.4.1 of July 2025, by a forum",
    "A fuse at each string's positive post: all others feed a fault in one.",
)
def string_devices(evidence: Evidence) -> Measured | None:
    bank = evidence.specification.bank
    if bank.parallel < 2 or bank.capacity <= LARGE_BANK:
        return None
    tag = next((item.tag for item in evidence.specification.items if item.kind == "battery_module"), "")
    fitted = [
        one
        for one in evidence.wiring.circuits
        if one.circuit.source == "bank"
        and one.circuit.function.startswith("bank string")
        and one.protection is not None
        and not math.isnan(one.protection.rating)
        and one.protection.interrupting >= evidence.bank_fault.through_string_device
    ]
    found = at_most(float(max(0, bank.parallel - len(fitted))), 0.0, near=0.0)
    return replace(found, note=f"{bank.parallel} strings of {tag or bank.module}")


@rule(
    "faults-open-devices",
    "Does the weakest fault on a DC circuit, at its far end, draw enough to open its device within seconds?",
    "ratio",
    "opening within seconds by family, from memory",
    "A larger conductor or a smaller fuse: a fault that the fuse takes for a load burns the cable.",
)
def faults_open_devices(evidence: Evidence) -> Measured | None:
    def short(one: WiredCircuit, device: Protection) -> float:
        return -one.fault_at_end / device.trips_by

    found = hardest(evidence, short, "dc")
    return None if found is None else told(at_least(-found[0], 1.0), found[1])


@rule(
    "selective-devices",
    "Is every device that feeds several circuits rated enough above each of theirs to stay shut when one opens?",
    "ratio",
    "1.6 between fuses: IEC 60269, from memory; 2 with breakers: common practice, no source",
    "A larger fuse and conductor above, or a smaller one below; else a fault in one circuit darkens its neighbours.",
)
def selective_devices(evidence: Evidence) -> Measured | None:
    steps = [one for one in evidence.selectivity if one.branches and not math.isnan(one.ratio)]
    if not steps:
        return None
    least = min(steps, key=lambda one: one.ratio / one.needed)
    return replace(
        at_least(least.ratio, least.needed * (1.0 - 1e-9), near=0.0), note=f"{least.upstream} over {least.downstream}"
    )
