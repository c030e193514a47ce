"""Isolation transformers."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import ApparentPower, Mass, Power, within


@kind("transformer")
class Transformer(Part):
    """An isolation transformer."""

    rated_power: Annotated[ApparentPower, within("100 VA", "200 kVA")] = Field(description="Rating.")
    core_loss: Annotated[Power, within("0 W", "5 kW")] = Field(description="Loss without load.")
    copper_loss: Annotated[Power, within("0 W", "20 kW")] = Field(description="Loss in the windings at rated load.")
    mass: Annotated[Mass, within("0.5 kg", "2000 kg")] = Field(description="Mass.")


TransformerSlot = Annotated[Transformer, Slot("transformer")]
"""A transformer by name, by name with changes, or in full."""
