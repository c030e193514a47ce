"""Rules about voltage and frequency: what comes aboard or out of the inverter, against all that is fed from it.

A boat built for one continent and delivered on another fails here, device by device.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Evidence, Measured, rule
from anchorwatt.sizing.supply import Reaching, afloat, ashore

MAKER = "the parts' own ranges"
WOUND = f"{MAKER}; a transformer without one bears 10 % either way of its primary voltage, from memory"
CLOSE = 0.02
"""Share of a voltage to spare below which it is near: a crowded dock, a long cable."""


@rule(
    "shore-voltage-accepted",
    "Does every device fed from shore accept the voltage that reaches it, through the transformer where there is one?",
    "voltage",
    WOUND,
    "A device or a transformer for that voltage. Nothing may be plugged in before: too high a voltage burns.",
)
def shore_voltage_accepted(evidence: Evidence) -> Measured | None:
    return _voltage(ashore(evidence.specification), "type voltage_range of the part, or primary_voltage")


@rule(
    "shore-frequency-accepted",
    "Does every device fed from shore accept its frequency, which no transformer changes?",
    "frequency",
    MAKER,
    "A device for that frequency, or feed it from bank and inverter only: motors and iron made for 60 Hz grow hot on "
    "50 Hz.",
)
def shore_frequency_accepted(evidence: Evidence) -> Measured | None:
    return _frequency(ashore(evidence.specification), "type ac.shore.frequency, or frequency_range of the part")


@rule(
    "inverter-voltage-accepted",
    "Does every device fed from the inverter accept the voltage that reaches it?",
    "voltage",
    WOUND,
    "An inverter for the voltage of the loads, or a transformer between them.",
)
def inverter_voltage_accepted(evidence: Evidence) -> Measured | None:
    return _voltage(afloat(evidence.specification), "type ac.inverter.output_voltage, or voltage_range of the part")


@rule(
    "inverter-frequency-accepted",
    "Does every device fed from the inverter accept its frequency?",
    "frequency",
    MAKER,
    "An inverter that is made or set for the frequency of the loads.",
)
def inverter_frequency_accepted(evidence: Evidence) -> Measured | None:
    return _frequency(
        afloat(evidence.specification), "type ac.inverter.output_frequency, or frequency_range of the part"
    )


def _voltage(found: Sequence[Reaching], ask: str) -> Measured | None:
    return _held(
        found,
        left=lambda one: one.voltage_left,
        value=lambda one: one.voltage,
        accepted=lambda one: one.device.voltages,
        unit="V",
        near=CLOSE,
        ask=ask,
    )


def _frequency(found: Sequence[Reaching], ask: str) -> Measured | None:
    return _held(
        found,
        left=lambda one: one.frequency_left,
        value=lambda one: one.frequency,
        accepted=lambda one: one.device.frequencies,
        unit="Hz",
        near=0.0,
        ask=ask,
    )


def _held(
    found: Sequence[Reaching],
    *,
    left: Callable[[Reaching], float],
    value: Callable[[Reaching], float],
    accepted: Callable[[Reaching], tuple[float, float]],
    unit: str,
    near: float,
    ask: str,
) -> Measured | None:
    """The device with the least to spare; those that fail by name, else those that cannot be told."""
    if not found:
        return None
    known = [one for one in found if not math.isnan(left(one))]
    unknown = [one.device.name for one in found if math.isnan(left(one))]
    if not known:
        return Measured(math.nan, math.nan, Verdict.CANNOT_TELL, f"nobody has said, of {_listed(unknown)}: {ask}")
    worst = min(known, key=left)
    reached, (lowest, highest) = value(worst), accepted(worst)
    limit = lowest if reached - lowest <= highest - reached else highest
    wrong = [one for one in known if left(one) < 0.0]
    if wrong:
        told = (
            f"{one.device.name}: gets {value(one):.4g}, takes {accepted(one)[0]:.4g} to {accepted(one)[1]:.4g} {unit}"
            for one in wrong
        )
        return Measured(reached, limit, Verdict.FAILS, "; ".join(told))
    if unknown:
        return Measured(reached, limit, Verdict.CANNOT_TELL, f"nobody has said, of {_listed(unknown)}: {ask}")
    verdict = Verdict.NEAR if left(worst) < near * reached else Verdict.HOLDS
    return Measured(reached, limit, verdict, f"least to spare: {worst.device.name}")


def _listed(names: Sequence[str]) -> str:
    return ", ".join(names)
