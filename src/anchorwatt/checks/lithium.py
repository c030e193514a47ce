"""Rules about installing a lithium bank: the subjects of ABYC E-13 and ISO 23625, in words of our own.

Both were read only through others' summaries; the source of each rule says so.
"""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.checks.vouched import vouched
from anchorwatt.design.specification import Regime

WATT_HOUR = 3600.0
THRESHOLDS = {Regime.CFR: 600.0 * WATT_HOUR, Regime.ABYC: 600.0 * WATT_HOUR, Regime.ISO: 500.0 * WATT_HOUR}
"""J of a bank from which the standards ask: ABYC E-13 600 Wh, ISO 23625:2025 500 Wh."""

RESTRAINT = {Regime.CFR: 0.0254, Regime.ABYC: 0.0254, Regime.ISO: 0.010}
"""m that a battery may give way: 33 CFR 183.420, 1 in; ISO 10133, a sample, 10 mm."""

PULL = 400.0  # N, or twice its weight where that is less: 33 CFR 183.420
GRAVITY = 9.80665  # m/s2

E_13 = "ABYC E-13 by a trade summary"
BOTH = "ABYC E-13 and ISO 23625 by trade summaries"

ENVELOPE = {
    "overvoltage": ("voltage", "charge"),
    "undervoltage": ("voltage", "discharge"),
    "overcurrent": ("current", "charge discharge"),
    "temperature": ("temperature", "charge discharge"),
}
"""What the management system must look after: dimension of a limit, and what it may take away."""


def applies(evidence: Evidence) -> bool:
    """Whether the bank is large enough for the standards."""
    bank = evidence.specification.bank
    return bank.capacity * bank.nominal_voltage >= THRESHOLDS[evidence.specification.wiring.regime]


def _asked(evidence: Evidence, key: str, note: str = "") -> Measured | None:
    return vouched(getattr(evidence.specification.installation, key), key, note) if applies(evidence) else None


@rule(
    "management-envelope",
    "Of voltage up, voltage down, current and temperature, how many does the management system not look after?",
    "count",
    BOTH,
    "A module whose management system looks after every cell's voltage, the current and the temperature.",
)
def management_envelope(evidence: Evidence) -> Measured | None:
    if not applies(evidence):
        return None
    limits = evidence.specification.bank.management
    missing = [
        name
        for name, (dimension, takes) in ENVELOPE.items()
        if not any(
            one.dimension == dimension and (one.disconnects == "both" or one.disconnects in takes.split())
            for one in limits
        )
    ]
    return replace(at_most(float(len(missing)), 0.0, near=0.0), note=", ".join(missing))


@rule(
    "charge-sources-suit-bank",
    "Does every alternator regulate below the voltage at which the management system stops charging?",
    "voltage",
    "ABYC E-13, that charging suits the chemistry; from memory",
    "A regulator with a setting for these cells, at the bank's absorb voltage.",
)
def charge_sources_suit_bank(evidence: Evidence) -> Measured | None:
    bank = evidence.specification.bank
    machines = [one for engine in evidence.specification.engines for one in engine.alternators]
    limits = [one.limit for one in bank.management if one.dimension == "voltage" and one.disconnects == "charge"]
    if not applies(evidence) or not machines or not limits:
        return None
    hardest = max(machines, key=lambda one: one.voltage)
    return replace(at_most(hardest.voltage, min(limits), near=0.005), note=hardest.name)


@rule(
    "bank-out-of-engine-space",
    "How many engines share the bank's compartment?",
    "count",
    "away from heat and sparks: common practice, no source",
    "Another compartment, or a closed and insulated box with air of its own.",
)
def bank_out_of_engine_space(evidence: Evidence) -> Measured | None:
    cabin = evidence.specification.bank.cabin
    if not applies(evidence) or not evidence.specification.engines:
        return None
    if cabin < 0:
        return Measured(math.nan, 0.0, Verdict.CANNOT_TELL, "nobody has said: dc.bank.cabin in the design file")
    shared = [engine.name for engine in evidence.specification.engines if engine.cabin == cabin]
    return replace(at_most(float(len(shared)), 0.0, near=0.0), note=", ".join(shared))


@rule(
    "bank-restrained",
    "Pulled with 400 N or twice its weight, whichever is less, how far does the battery give way?",
    "length",
    "33 CFR 183.420: 1 in; ISO 10133, a sample: 10 mm at twice its weight",
    "Straps or a frame bolted to structure, not to joinery. A loose module of this mass is a projectile.",
)
def bank_restrained(evidence: Evidence) -> Measured | None:
    if not applies(evidence):
        return None
    specification, moved = evidence.specification, evidence.specification.installation.battery_movement
    bank = specification.bank
    modules = max(1, bank.series * bank.parallel)
    pull = min(PULL, 2.0 * bank.mass / modules * GRAVITY)
    note = f"pull with {pull:.0f} N at one of {bank.mass / modules:.0f} kg"
    limit = RESTRAINT[specification.wiring.regime]
    if moved is None:
        return Measured(
            math.nan,
            limit,
            Verdict.CANNOT_TELL,
            f"{note}; say how far: installation.battery_movement in the design file",
        )
    return replace(at_most(float(moved), limit), note=note)


@rule(
    "battery-tested",
    "Have cells and battery passed a safety standard for them?",
    "count",
    f"{BOTH}: UL 1642 and 1973, IEC 62619 and 62620",
    "Ask the maker for the test report; a module without one cannot be vouched for.",
)
def battery_tested(evidence: Evidence) -> Measured | None:
    return _asked(evidence, "tested_battery")


@rule(
    "warning-before-shutdown",
    "Is a shutdown seen or heard at the helm before it comes?",
    "count",
    E_13,
    "Bring the management system's warning to an alarm at the helm.",
)
def warning_before_shutdown(evidence: Evidence) -> Measured | None:
    return _asked(evidence, "warning")


@rule(
    "charging-stops-before-disconnect",
    "Does the management system stop alternators and chargers before it opens?",
    "count",
    "ABYC E-13: opening must not damage charge sources; from memory",
    "Bring its charge-stop signal to regulators and chargers, 1 to 5 s ahead of the contactor.",
)
def charging_stops_before_disconnect(evidence: Evidence) -> Measured | None:
    machines = [one for engine in evidence.specification.engines for one in engine.alternators]
    return _asked(evidence, "charge_stop") if machines or evidence.specification.charger is not None else None


@rule(
    "battery-switch",
    "Can every ungrounded conductor of the bank be switched off by hand, within reach?",
    "count",
    "ABYC E-11 and ISO 13297, from memory",
    "A switch rated for the continuous load and for the inverter's peak, outside the battery's space.",
)
def battery_switch(evidence: Evidence) -> Measured | None:
    return _asked(evidence, "battery_switch", f"for {evidence.bank_state.peak_current:.0f} A at least")


@rule(
    "remote-switch-breaks-coil",
    "Does a remote switch break the coil of its contactor itself, rather than ask the management system?",
    "count",
    "ABYC E-13 13.6.7.1.1 of July 2025 by trade articles",
    "Lead the coil's supply through the switch; a contactor that opens when its coil is dead. No contactor: say true.",
)
def remote_switch_breaks_coil(evidence: Evidence) -> Measured | None:
    return _asked(evidence, "contactor_coil")


@rule(
    "cell-gas-led-away",
    "Is gas from a failing cell led where nobody breathes it?",
    "count",
    "ISO 23625:2025 by a notified body's page",
    "A vent from the battery's space to the outside, or a space that opens to no accommodation.",
)
def cell_gas_led_away(evidence: Evidence) -> Measured | None:
    return _asked(evidence, "vented")


@rule(
    "battery-papers-aboard",
    "Are limits, shutdown and the safety of the battery's space written down aboard?",
    "count",
    "ISO 23625:2025 by a notified body's page; ABYC E-13 by a trade summary",
    "Write them into the owner's manual: what trips when, what it takes away, what to do in smoke.",
)
def battery_papers_aboard(evidence: Evidence) -> Measured | None:
    return _asked(evidence, "safety_papers")


@rule(
    "vital-loads-second-source",
    "How many kinds of battery can feed what keeps the boat safe, if the management system opens?",
    "count",
    "ABYC E-13 recommends a second source for critical electronics; ISO 23625 keeps vital loads fed: trade summaries",
    "Put navigation, radio and bilge pumps where the engines' own battery can feed them.",
)
def vital_loads_second_source(evidence: Evidence) -> Measured | None:
    if not applies(evidence):
        return None
    second = evidence.specification.engine_battery is not None
    return at_least(2.0 if second else 1.0, 2.0, near=0.0)
