"""Isolation transformers."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.fed import Fed
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import ApparentPower, Mass, Power, Temperature, Voltage, within


@kind("transformer")
class Transformer(Fed):
    """A transformer between inverter or shore and the AC loads."""

    rated_power: Annotated[ApparentPower, within("100 VA", "200 kVA")] = Field(description="Rating.")
    core_loss: Annotated[Power, within("0 W", "5 kW")] = Field(description="Loss without load.")
    copper_loss: Annotated[Power, within("0 W", "20 kW")] = Field(description="Loss in the windings at rated load.")
    primary_voltage: Annotated[Voltage, within("50 V", "1000 V")] | None = Field(
        default=None, description="Of the side of shore and inverter; left out, that of the shore service."
    )
    secondary_voltage: Annotated[Voltage, within("50 V", "1000 V")] | None = Field(
        default=None, description="Of the side of the loads; left out, the same."
    )
    isolating: bool = Field(
        default=True, description="Whether its windings are separate; false for an autotransformer, which isolates not."
    )
    inrush: Annotated[float, Field(ge=1.0, le=60.0)] = Field(
        default=10.0,
        description="Peak current when switched on, over the peak of the rated current; 8 to 12 usual, from memory.",
    )
    full_to: Annotated[Temperature, within("0 °C", "80 °C")] | None = Field(
        default=None, description="Air round it up to which it gives its rating; left out, unknown."
    )
    mass: Annotated[Mass, within("0.5 kg", "2000 kg")] = Field(description="Mass.")


TransformerSlot = Annotated[Transformer, Slot("transformer")]
"""A transformer by name, by name with changes, or in full."""
