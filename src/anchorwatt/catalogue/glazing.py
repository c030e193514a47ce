"""Windows, port lights and hatches."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Share, ThermalTransmittance, within


@kind("glazing")
class Glazing(Part):
    """A glazing without frame."""

    u_value: Annotated[ThermalTransmittance, within("0.3 W/(m2 K)", "12 W/(m2 K)")] = Field(
        description="Thermal transmittance, films included."
    )
    solar_gain: Annotated[Share, within("0 %", "100 %")] = Field(
        description="Solar heat gain coefficient at normal incidence."
    )
    panes: int = Field(ge=1, le=2, description="Number of panes, 1 or 2: sets the loss with angle.")


GlazingSlot = Annotated[Glazing, Slot("glazing")]
"""A glazing by name, by name with changes, or in full."""
