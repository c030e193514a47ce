"""What reaches every device that takes alternating current, on shore power and on the inverter.

A fact that nobody has typed stays nan all the way: no voltage and no frequency is taken for granted here.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from anchorwatt.design.specification import Fed, FedFrom, Specification


@dataclass(frozen=True)
class Reaching:
    """A device and what reaches it."""

    device: Fed
    voltage: float  # V, nan = nobody has said
    frequency: float  # Hz, nan = nobody has said

    @property
    def voltage_left(self) -> float:
        """V to the nearer end of what it accepts, negative outside of it; nan = cannot tell."""
        return _left(self.voltage, self.device.voltages)

    @property
    def frequency_left(self) -> float:
        """Hz to the nearer end of what it accepts, likewise."""
        return _left(self.frequency, self.device.frequencies)


def ashore(specification: Specification) -> tuple[Reaching, ...]:
    """Every device while the boat is on shore power; none without a shore service."""
    shore = specification.shore
    if shore is None:
        return ()
    across = tuple(shore.voltage * (leg + 1) for leg in range(shore.legs))
    frequency = shore.frequency if shore.frequency_said else math.nan
    return tuple(_reaching(specification, device, across, frequency) for device in specification.fed)


def afloat(specification: Specification) -> tuple[Reaching, ...]:
    """Every device that the inverter feeds."""
    inverter = specification.inverter
    devices = [device for device in specification.fed if device.fed_from is not FedFrom.SHORE]
    return tuple(
        _reaching(specification, device, (inverter.output_voltage,), inverter.output_frequency) for device in devices
    )


def _reaching(specification: Specification, device: Fed, offered: tuple[float, ...], frequency: float) -> Reaching:
    unit = specification.transformer
    primary = next((one for one in specification.fed if one.fed_from is FedFrom.TRANSFER), None)
    if device.fed_from is not FedFrom.PANEL or primary is None or unit is None:
        return Reaching(device, _taken(device, offered), frequency)
    # Beside a primary side that nobody has typed, a secondary side tells no ratio, unless both are alike.
    told = unit.primary_said or unit.secondary_voltage == unit.primary_voltage
    ratio = unit.secondary_voltage / unit.primary_voltage if told else math.nan
    return Reaching(device, _taken(primary, offered) * ratio, frequency)


def _taken(device: Fed, offered: tuple[float, ...]) -> float:
    """V that a device is laid on: of a leg or across two, whichever it accepts; a leg where it accepts neither."""
    for voltage in offered:
        if _left(voltage, device.voltages) >= 0.0:
            return voltage
    return offered[0]


def _left(value: float, accepted: tuple[float, float]) -> float:
    lowest, highest = accepted
    return min(value - lowest, highest - value) if not math.isnan(value) else math.nan
