"""Alternators."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import (
    Current,
    HeatCapacity,
    Length,
    Mass,
    RotationalSpeed,
    Share,
    Temperature,
    ThermalConductance,
    Voltage,
    within,
)
from anchorwatt.units.refusal import Refused


@kind("alternator")
class Alternator(Part):
    """An alternator with its regulator and bracket."""

    rated_current: Annotated[Current, within("5 A", "1000 A")] = Field(description="Cold output at high speed.")
    voltage: Annotated[Voltage, within("10 V", "400 V")] = Field(description="Voltage at which that was measured.")
    speeds: tuple[Annotated[RotationalSpeed, within("100 rpm", "30000 rpm")], ...] = Field(
        min_length=2, max_length=100, description="Rotor speeds, rising; below the first it gives nothing."
    )
    currents: tuple[Annotated[Share, within("0 %", "120 %")], ...] = Field(
        min_length=2, max_length=100, description="Cold output at those speeds, share of the rated current."
    )
    hot_loss: Annotated[Share, within("0 %", "60 %")] = Field(description="Share of the output lost when hot.")
    efficiency: Annotated[Share, within("30 %", "95 %")] = Field(
        description="At half the rated current and 6000 rpm, cold."
    )
    winding_capacity: Annotated[HeatCapacity, within("50 J/K", "100 kJ/K")] = Field(
        description="Heat capacity of the windings."
    )
    frame_capacity: Annotated[HeatCapacity, within("100 J/K", "500 kJ/K")] = Field(
        description="Heat capacity of iron and frame."
    )
    winding_conductance: Annotated[ThermalConductance, within("0.5 W/K", "1 kW/K")] = Field(
        description="From windings to frame."
    )
    frame_conductance: Annotated[ThermalConductance, within("0.5 W/K", "1 kW/K")] = Field(
        description="From frame to air at rated rotor speed."
    )
    highest_winding: Annotated[Temperature, within("90 °C", "260 °C")] = Field(description="Limit of the insulation.")
    highest_speed: Annotated[RotationalSpeed, within("1000 rpm", "40000 rpm")] = Field(
        description="Highest rotor speed for long."
    )
    pulley_diameter: Annotated[Length, within("30 mm", "200 mm")] = Field(
        default="65 mm", validate_default=True, description="Of its own pulley; usual, from memory."
    )
    mass: Annotated[Mass, within("1 kg", "200 kg")] = Field(description="Mass with bracket and regulator.")

    @model_validator(mode="after")
    def _curve_fits(self) -> Alternator:
        if len(self.speeds) != len(self.currents):
            raise Refused(
                f"{len(self.speeds)} speeds and {len(self.currents)} currents", "two lists of the same length"
            )
        if any(b <= a for a, b in pairwise(self.speeds)):
            raise Refused("speeds that do not rise", "speeds that rise from point to point")
        for speed, (a, b) in zip(self.speeds[1:], pairwise(self.currents), strict=True):
            if b < a:
                raise Refused(
                    f"currents that fall from {a.text} to {b.text} at {speed.text}",
                    "currents that do not fall as the speed rises",
                )
        return self


AlternatorSlot = Annotated[Alternator, Slot("alternator")]
"""A alternator by name, by name with changes, or in full."""
