"""Generating sets, to compare with."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import (
    Frequency,
    LiquidVolume,
    Mass,
    Power,
    Pressure,
    Price,
    RotationalSpeed,
    Share,
    Time,
    within,
)


@kind("generator")
class Generator(Part):
    """A diesel generating set of constant speed in its enclosure."""

    rated_power: Annotated[Power, within("500 W", "200 kW")] = Field(description="Output that it gives for long.")
    frequency: Annotated[Frequency, within("40 Hz", "70 Hz")] = Field(description="Of its alternating current.")
    efficiency: Annotated[Share, within("40 %", "98 %")] = Field(description="Of its alternator.")
    speed: Annotated[RotationalSpeed, within("500 rpm", "4000 rpm")] = Field(description="Its constant speed.")
    displacement: Annotated[LiquidVolume, within("0.1 L", "50 L")] = Field(description="Swept volume of its engine.")
    indicated_efficiency: Annotated[Share, within("20 %", "60 %")] = Field(
        description="Of the Willans line: useful over added fuel."
    )
    friction_pressure: Annotated[Pressure, within("0.3 bar", "5 bar")] = Field(
        description="Of the Willans line: friction mean effective pressure."
    )
    lowest_load: Annotated[Share, within("0 %", "80 %")] = Field(
        description="Of its rating; below it should not run for hours."
    )
    noise: Annotated[float, Field(ge=30.0, le=120.0)] = Field(description="dB(A) at 1 m in its enclosure.")
    service_interval: Annotated[Time, within("10 h", "2000 h")] = Field(description="Running hours between services.")
    service_price: Price = Field(description="One service: oil, filters, impeller now and then, and labour.")
    life: Annotated[Time, within("500 h", "50000 h")] = Field(description="Running hours until an overhaul.")
    mass: Annotated[Mass, within("5 kg", "5 t")] = Field(description="Mass with exhaust, mounts and fuel lines.")


GeneratorSlot = Annotated[Generator, Slot("generator")]
"""A generating set by name, by name with changes, or in full."""
