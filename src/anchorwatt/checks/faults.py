"""Rules about what is left when something fails."""

from __future__ import annotations

import math

import numpy as np

from anchorwatt.checks.registry import Evidence, Measured, at_least, rule
from anchorwatt.simulation.faults import LONGEST_HOLD, SHOWN

PRACTICE = "common practice, no source"


@rule(
    "night-holds-without-a-string",
    "With one string lost in the middle of the night, does the bank last until dawn?",
    "time",
    PRACTICE,
    "More strings of smaller modules, or a larger bank.",
)
def night_holds_without_a_string(evidence: Evidence) -> Measured:
    fault = evidence.faults.module_lost
    hold = fault.figure("hold").value
    return at_least(LONGEST_HOLD if math.isnan(hold) else hold, evidence.simulation.dawn - fault.at)


@rule(
    "direct-current-without-the-inverter",
    "With the inverter off for two hours of the night, what share of the DC loads is served?",
    "share",
    PRACTICE,
    "A bank that is not empty by then; essential loads on the DC side with their own way to the bank.",
)
def direct_current_without_the_inverter(evidence: Evidence) -> Measured | None:
    run = evidence.faults.inverter_trips.runs.broken
    part = slice(0, round(SHOWN / run.step))
    asked, served = float(np.sum(run.forcing.dc_load[0, part])), float(np.sum(run.series.dc_load[0, part]))
    if asked <= 0.0:
        return None
    return at_least(served / asked, 1.0 - 1e-9, near=0.0)


@rule(
    "inverter-takes-over-from-shore",
    "When shore power sags by night, how long do all loads go on from the bank?",
    "time",
    PRACTICE,
    "An inverter and a bank that carry what runs on shore power, or loads that wait.",
)
def inverter_takes_over_from_shore(evidence: Evidence) -> Measured | None:
    fault = evidence.faults.shore_sags
    if fault is None:
        return None
    lost = float(fault.runs.broken.summary.lost_at[0])
    return at_least(SHOWN if math.isnan(lost) else lost, SHOWN, near=0.0)
