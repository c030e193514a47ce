"""Rules about inverter, transformer, shore power and the engines' own battery."""

from __future__ import annotations

import math

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.sizing.shore import ACROSS
from anchorwatt.sizing.transformer import BREAKER_HOLDS, BREAKER_TRIPS

MAKER = "the part's own rating"
PRACTICE = "common practice, no source"

NOMINAL = (120.0, 230.0, 240.0)
"""V for which AC loads are made."""

BAND = 0.10
"""Share of the nominal voltage that loads bear either way."""

PUT_BACK = 3600.0
"""s in which a start's charge should be back in the engines' battery. Common practice, no source."""


@rule(
    "inverter-in-heat",
    "Does the inverter carry the highest step of night and day for long, in its compartment at its hottest?",
    "power",
    "the part's own rating and derating",
    "Bring cooler air to the inverter or move it, a larger inverter, or loads that do not run together.",
)
def inverter_in_heat(evidence: Evidence) -> Measured | None:
    found = evidence.ac_side.inverter
    if math.isnan(found.hottest_air):
        return None  # its bare rating is looked at by another rule
    return at_least(found.rating, max(step.power for step in found.steps))


@rule(
    "inverter-all-at-once",
    "Does the inverter bear for a minute that every load of a period runs at once, in full?",
    "power",
    "the part's own overload list; the minute is common practice, no source",
    "A larger inverter, loads on gas or on shore power only, or a habit: not all of them at once.",
)
def inverter_all_at_once(evidence: Evidence) -> Measured:
    found = evidence.ac_side.inverter
    return at_least(found.minute, found.at_once.power)


@rule(
    "inverter-surge",
    "Does the inverter's surge cover the cooling plant's start with all else running?",
    "power",
    "the part's own overload list; a start of the shared variable-speed plant draws no more than its running power",
    "A larger inverter, or one with more surge; soft starters for fixed-speed motors.",
)
def inverter_surge(evidence: Evidence) -> Measured:
    found = evidence.ac_side.inverter
    return at_least(found.surge, found.start)


@rule(
    "inrush-on-inverter",
    "Does the inverter bear being switched onto the transformer: first peak over the peak of its rated current?",
    "ratio",
    "the parts' own figures; peak against peak, from memory 8 to 12 times without a soft start",
    "An inverter that ramps its voltage up, or a soft starter before the transformer; then give the transformer the "
    "inrush that is left. Else switch the transformer first and the inverter after it.",
)
def inrush_on_inverter(evidence: Evidence) -> Measured | None:
    found = evidence.ac_side.transformer
    if found is None:
        return None
    shares = evidence.specification.inverter.overload_shares
    verdict = Verdict.HOLDS if found.inrush_survived else Verdict.FAILS
    return Measured(found.inrush_on_inverter, max((1.0, *shares)), verdict)


@rule(
    "inrush-on-shore-breaker",
    "Does the shore breaker hold when the transformer is switched on: first peak over that of its rated current?",
    "ratio",
    f"IEC 60898-1, type C, from memory: holds up to {BREAKER_HOLDS:g} times its rating, trips from {BREAKER_TRIPS:g}",
    "A soft starter before the transformer, or a slower breaker (type D) that the wiring ashore allows.",
)
def inrush_on_shore_breaker(evidence: Evidence) -> Measured | None:
    found = evidence.ac_side.transformer
    if found is None or math.isnan(found.breaker):
        return None
    return at_most(found.inrush_on_breaker, BREAKER_TRIPS, near=1.0 - BREAKER_HOLDS / BREAKER_TRIPS)


@rule(
    "transformer-secondary",
    "Do the loads get their voltage from the transformer at its highest step, and no more than it without load?",
    "voltage",
    "EN 50160 and ANSI C84.1: about 10 % either way of 120, 230 or 240 V; from memory",
    "A transformer whose ratio fits what it is fed with and what it feeds, or another tapping.",
)
def transformer_secondary(evidence: Evidence) -> Measured | None:
    found, shore = evidence.ac_side.transformer, evidence.specification.shore
    if found is None:
        return None
    supply = found.primary_voltage
    if shore is not None:
        across = shore.legs == 2 and found.primary_voltage > ACROSS * shore.voltage
        supply = 2.0 * shore.voltage if across else shore.voltage
    loaded = found.secondary_loaded * supply / found.primary_voltage
    idle = found.secondary_voltage * supply / found.primary_voltage
    nominal = min(NOMINAL, key=lambda volts: abs(volts - found.secondary_voltage))
    if idle > (1.0 + BAND) * nominal:
        return at_most(idle, (1.0 + BAND) * nominal, near=0.02)
    return at_least(loaded, (1.0 - BAND) * nominal, near=0.02)


@rule(
    "shore-legs",
    "Does each leg of the shore service carry for hours what a day on shore takes, the charger running?",
    "current",
    "80 % of the service's rating taken as continuous; from memory",
    "Lay loads on the other leg or across both, set the charger lower, or take a larger service.",
)
def shore_legs(evidence: Evidence) -> Measured | None:
    found = evidence.ac_side.shore
    if found is None:
        return None
    # A charger that shares the limit with the loads comes up to it: that is its work, not a near miss.
    return at_most(max(found.highest.legs), found.continuous_current * (1.0 + 1e-9), near=0.0)


@rule(
    "shore-sag",
    "Does the charger go on charging when the shore voltage sags by a tenth?",
    "voltage",
    "a sag of a tenth: common practice, no source; chargers should give way below 105 or 200 V, from memory",
    "A charger that works at a lower voltage, a heavier shore cable, or a boosting transformer.",
)
def shore_sag(evidence: Evidence) -> Measured | None:
    found = evidence.ac_side.shore
    if found is None or evidence.specification.charger is None:
        return None
    return at_least(found.sagged_voltage, found.gives_way_below, near=0.02)


@rule(
    "charger-refills-overnight",
    "Is the bank full after a night on shore, from its reserve, with the plant and all loads running?",
    "time",
    PRACTICE,
    "A larger charger, or a larger shore service where the page says that the limit holds it.",
)
def charger_refills_overnight(evidence: Evidence) -> Measured | None:
    found = evidence.ac_side.shore
    if found is None or evidence.specification.charger is None:
        return None
    taken = math.inf if math.isnan(found.refill_time) else found.refill_time
    return at_most(taken, evidence.specification.brief.hold)


@rule(
    "engine-battery-kept",
    "Does the DC-DC converter feed what stands on the engines' battery, and put a start back within an hour?",
    "power",
    "the part's own rating and derating; the hour is common practice, no source",
    "A larger DC-DC converter, or less that stands on the engines' battery.",
)
def engine_battery_kept(evidence: Evidence) -> Measured | None:
    found = evidence.ac_side.engine_battery
    if found is None:
        return None
    return at_least(found.rating, found.standing_load + found.start_energy / PUT_BACK)
