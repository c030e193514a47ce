"""Rules about the buses, the bank and the engines."""

from __future__ import annotations

import math

import numpy as np

from anchorwatt.checks.registry import Evidence, Measured, at_least, at_most, rule
from anchorwatt.design.specification import Doing
from anchorwatt.physics.inverter import converter_input

PRACTICE = "common practice, no source"
MAKER = "the part's own rating"


@rule(
    "inverter-carries-peak",
    "Does the inverter's rating cover the highest load of the night and the day?",
    "power",
    MAKER,
    "A larger inverter, or loads that do not run together.",
)
def inverter_carries_peak(evidence: Evidence) -> Measured:
    runs = (evidence.simulation.night, evidence.simulation.day)
    peak = max(float(run.summary.peak_inverter_power[0]) for run in runs)
    return at_least(evidence.specification.inverter.rated_power, peak)


@rule(
    "transformer-carries-peak",
    "Does the transformer's rating cover the highest AC load of the night and the day?",
    "power",
    MAKER,
    "A larger transformer, or loads that do not run together.",
)
def transformer_carries_peak(evidence: Evidence) -> Measured | None:
    transformer = evidence.specification.transformer
    if transformer is None:
        return None
    runs = (evidence.simulation.night, evidence.simulation.day)
    peak = max(float(run.summary.peak_ac_power[0]) for run in runs)
    return at_least(transformer.rated_power, peak)


@rule(
    "shore-carries-load",
    "Does the shore service carry what the plan runs on shore power?",
    "power",
    "80 % of the service's rating taken as continuous; from memory",
    "A larger service, or fewer loads at once on shore power.",
)
def shore_carries_load(evidence: Evidence) -> Measured | None:
    shore = evidence.specification.shore
    if shore is None or all(p.doing is not Doing.ON_SHORE_POWER for p in evidence.specification.plan):
        return None
    return at_least(shore.continuous_power, float(evidence.simulation.day.summary.peak_shore_power[0]))


@rule(
    "bank-carries-inverter",
    "Does the bank's discharge current cover the inverter at its full rating, the DC loads running?",
    "current",
    MAKER,
    "More modules in parallel, a higher voltage, or a smaller inverter.",
)
def bank_carries_inverter(evidence: Evidence) -> Measured:
    specification = evidence.specification
    inverter, bank = specification.inverter, specification.bank
    full = converter_input(
        inverter.rated_power, inverter.rated_power, inverter.no_load_power, inverter.linear, inverter.quadratic
    )
    loads = float(np.max(evidence.simulation.night.forcing.dc_load[0]))
    return at_most((full + loads) / bank.nominal_voltage, bank.discharge_current)


@rule(
    "alternator-winding",
    "Does the hottest alternator winding stay within its insulation class while recharging?",
    "temperature",
    MAKER,
    "Lower the regulator's held temperature or current limit, or bring cooler air to the alternator.",
)
def alternator_winding(evidence: Evidence) -> Measured | None:
    run = evidence.simulation.recharge
    machines = [m for engine in evidence.specification.engines for m in engine.alternators]
    if run is None or not machines:
        return None
    return at_most(float(run.summary.hottest_winding[0]), min(m.highest_winding for m in machines), near=0.05)


@rule(
    "alternator-overspeed",
    "Does no alternator turn faster than it may at rated engine speed?",
    "rotational speed",
    MAKER,
    "A larger pulley on the alternator.",
)
def alternator_overspeed(evidence: Evidence) -> Measured | None:
    worst, limit = math.nan, math.nan
    for engine in evidence.specification.engines:
        for machine in engine.alternators:
            speed = engine.rated_speed * machine.pulley_ratio
            if math.isnan(worst) or speed / machine.highest_speed > worst / limit:
                worst, limit = speed, machine.highest_speed
    return None if math.isnan(worst) else at_most(worst, limit, near=0.05)
