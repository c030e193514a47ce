"""Rules about conductors: what they carry, what they lose, how thin they may be."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.sizing.circuits import FEEDER_DROP, ORDINARY_DROP
from anchorwatt.sizing.conductors import PARALLEL_FROM, SMALLEST_SINGLE
from anchorwatt.sizing.wiring import WiredCircuit

PEAK_DROP = 0.15
"""Share of the nominal voltage that a peak may lose before what starts gives way. Common practice, no source."""


def worst(circuits: list[WiredCircuit], measure: Callable[[WiredCircuit], float]) -> tuple[float, WiredCircuit] | None:
    """The highest of a figure, and the circuit that has it; None without circuits."""
    figures = [(measure(one), one) for one in circuits]
    known = [pair for pair in figures if not math.isnan(pair[0])]
    return max(known, key=lambda pair: pair[0]) if known else None


def told(found: Measured, one: WiredCircuit, more: str = "") -> Measured:
    """A finding that names its circuit."""
    circuit = one.circuit
    return replace(found, note=f"{one.tag}, {circuit.function}{more}")


def carrying(evidence: Evidence, *systems: str) -> list[WiredCircuit]:
    """Circuits of those systems that carry something."""
    return [one for one in evidence.wiring.circuits if one.circuit.system in systems and one.circuit.continuous > 0.0]


@rule(
    "conductors-carry-load",
    "How much of its ampacity, where it runs, does the hardest-worked conductor carry for long?",
    "share",
    "33 CFR 183.425 table 5 and its notes; metric sizes: ISO 13297, from memory",
    "A larger conductor, one more side by side, or a cooler and looser way for it.",
)
def conductors_carry_load(evidence: Evidence) -> Measured | None:
    found = worst(
        carrying(evidence, "dc", "ac"),
        lambda one: math.inf if not one.conductor.ampacity > 0.0 else one.circuit.continuous / one.conductor.ampacity,
    )
    return None if found is None else told(at_most(found[0], 1.0, near=0.0), found[1])


@rule(
    "drop-in-feeders",
    "What share of the voltage does the worst feeder or other 3 % circuit lose in its conductors?",
    "share",
    "ABYC E-11 by trade notes; ISO 10133, a sample: 3 % for panel mains, navigation lights, blowers, pumps",
    "A larger conductor or a shorter way.",
)
def drop_in_feeders(evidence: Evidence) -> Measured | None:
    return _drop(evidence, True)


@rule(
    "drop-elsewhere",
    "What share of the voltage does the worst of all other circuits lose in its conductors?",
    "share",
    "ABYC E-11 by trade notes, 10 %; ISO 13297, from memory",
    "A larger conductor or a shorter way.",
)
def drop_elsewhere(evidence: Evidence) -> Measured | None:
    return _drop(evidence, False)


def _drop(evidence: Evidence, feeders: bool) -> Measured | None:
    limit = FEEDER_DROP if feeders else ORDINARY_DROP
    among = [one for one in carrying(evidence, "dc", "ac") if (one.circuit.highest_drop <= FEEDER_DROP) == feeders]
    found = worst(among, lambda one: one.conductor.drop_share)
    return None if found is None else told(at_most(found[0], limit, near=0.0), found[1])


@rule(
    "drop-at-peak",
    "What share of the voltage does the worst DC circuit lose at its peak?",
    "share",
    "common practice, no source",
    "A larger conductor: an inverter on a sagging supply shuts down at its overload.",
)
def drop_at_peak(evidence: Evidence) -> Measured | None:
    found = worst(
        carrying(evidence, "dc"),
        lambda one: one.conductor.drop_share * one.circuit.peak / one.circuit.continuous,
    )
    return None if found is None else told(at_most(found[0], PEAK_DROP), found[1])


@rule(
    "conductors-thick-enough",
    "Is the thinnest conductor that is run singly no thinner than may be?",
    "cross-section",
    "16 AWG: 33 CFR 183.425; 1 mm²: ISO 10133, a sample",
    "The smallest size that may be laid, or cores in a common sheath.",
)
def conductors_thick_enough(evidence: Evidence) -> Measured | None:
    single = [one for one in carrying(evidence, "dc", "ac") if not one.conductor.circuit.sheathed]
    found = worst(single, lambda one: -one.conductor.conductor.area)
    if found is None:
        return None
    metric = found[1].conductor.conductor.gauge is None
    return told(at_least(-found[0], SMALLEST_SINGLE[metric] * (1.0 - 1e-9), near=0.0), found[1])


@rule(
    "parallel-conductors-large",
    "Are conductors that share one pole's current no smaller than 1/0 AWG or 50 mm²?",
    "cross-section",
    "NEC 310.10, from memory",
    "One larger conductor: small ones side by side do not share evenly, and each is guarded by a fuse made for all.",
)
def parallel_conductors_large(evidence: Evidence) -> Measured | None:
    several = [one for one in carrying(evidence, "dc", "ac") if one.conductor.parallel > 1]
    found = worst(several, lambda one: -one.conductor.conductor.area)
    return None if found is None else told(at_least(-found[0], PARALLEL_FROM * (1.0 - 1e-9), near=0.0), found[1])


@rule(
    "terminals-carry-load",
    "How much of what its terminals bear does the hardest-worked AC circuit carry?",
    "share",
    "terminals of 70 and 75 °C: NEC 110.14(C) and IEC 60947, from memory",
    "A larger conductor, which keeps its terminals cooler.",
)
def terminals_carry_load(evidence: Evidence) -> Measured | None:
    found = worst(carrying(evidence, "ac"), lambda one: one.circuit.continuous / one.terminal_ampacity)
    return None if found is None else told(at_most(found[0], 1.0, near=0.0), found[1])


@rule(
    "circuits-named-exist",
    "How many circuits does the design file say something of that there are not?",
    "count",
    "the design file, against the circuits that follow from it",
    "Look the tag up with `anchorwatt wiring`: tags move when a part is added or taken out. What was typed for a tag "
    "that there is not is used nowhere.",
)
def circuits_named_exist(evidence: Evidence) -> Measured | None:
    wishes = evidence.specification.wiring.wishes
    if not wishes:
        return None
    found = evidence.wiring
    lost = [wish for wish in wishes if wish.tag in found.unknown]
    if not lost:
        return Measured(0.0, 0.0, Verdict.HOLDS)
    tags = [one.tag for one in found.circuits]
    names = ", ".join(f"{wish.tag} at {wish.where}" if wish.where else wish.tag for wish in lost)
    return Measured(float(len(lost)), 0.0, Verdict.FAILS, f"{names}; there are {tags[0]} to {tags[-1]}")
