"""Voltage and frequency against what is fed."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.design.specification import Fed, FedFrom, Shore, Specification
from tests.checks.changed import ONE_CABIN
from tests.checks.holds_and_fails.case import Case

AMERICAN, EUROPEAN = (108.0, 132.0), (207.0, 253.0)
EITHER = (90.0, 265.0)
UNTOLD = (math.nan, math.nan)


def device(voltages: tuple[float, float], frequencies: tuple[float, float] = (47.0, 63.0), at: str = "panel") -> Fed:
    return Fed("an invented hob", "ac.loads.hob.appliance", FedFrom(at), voltages, frequencies)


def boat(
    *devices: Fed,
    shore: tuple[float, float] = (120.0, 60.0),
    inverter: tuple[float, float] = (120.0, 60.0),
    secondary: float | None = None,
    legs: int = 1,
) -> Specification:
    made = ONE_CABIN
    assert made.transformer is not None
    transformer = None
    if secondary is not None:
        transformer = replace(made.transformer, primary_voltage=120.0, secondary_voltage=secondary)
        devices += (Fed("transformer", "ac.transformer.unit", FedFrom.TRANSFER, AMERICAN, (47.0, 63.0)),)
    return replace(
        made,
        fed=devices,
        shore=Shore("a service", shore[0], legs, shore[1], 30.0, 30.0, 2880.0, 0.87 * shore[0]),
        inverter=replace(made.inverter, output_voltage=inverter[0], output_frequency=inverter[1]),
        transformer=transformer,
    )


AT_HOME = boat(device(AMERICAN))
SILENT = boat(device(AMERICAN), device(UNTOLD, UNTOLD))
"""With a device that says nothing."""

CASES = {
    "shore-voltage-accepted": Case(AT_HOME, boat(device(AMERICAN), shore=(230.0, 50.0)), SILENT),
    "shore-frequency-accepted": Case(AT_HOME, boat(device(EITHER, (57.0, 63.0)), shore=(230.0, 50.0)), SILENT),
    "inverter-voltage-accepted": Case(AT_HOME, boat(device(AMERICAN), inverter=(230.0, 50.0)), SILENT),
    "inverter-frequency-accepted": Case(AT_HOME, boat(device(EITHER, (57.0, 63.0)), inverter=(120.0, 50.0)), SILENT),
}
