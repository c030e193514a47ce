"""Chargers from shore power."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Mass, Power, Share, Voltage, within


@kind("charger")
class Charger(Part):
    """A charger: loss = no load + linear P + quadratic P²/rated."""

    output_voltage: Annotated[Voltage, within("10 V", "400 V")] = Field(description="Nominal voltage of its bank.")
    rated_power: Annotated[Power, within("50 W", "100 kW")] = Field(description="Output that it gives for long.")
    no_load_power: Annotated[Power, within("0 W", "2 kW")] = Field(description="Loss without load, switched on.")
    linear: Annotated[Share, within("0 %", "30 %")] = Field(description="Loss that grows with the output.")
    quadratic: Annotated[Share, within("0 %", "30 %")] = Field(
        description="Loss that grows with the square of the output, at rated output."
    )
    sleep_power: Annotated[Power, within("0 W", "500 W")] = Field(description="Taken when there is no load at all.")
    mass: Annotated[Mass, within("0.2 kg", "1000 kg")] = Field(description="Mass.")


ChargerSlot = Annotated[Charger, Slot("charger")]
"""A charger by name, by name with changes, or in full."""
