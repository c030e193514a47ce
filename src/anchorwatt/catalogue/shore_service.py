"""Shore services."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Current, Frequency, Share, Voltage, within


@kind("shore_service")
class ShoreService(Part):
    """What a shore connection gives."""

    voltage: Annotated[Voltage, within("90 V", "500 V")] = Field(description="Nominal voltage, of a leg to neutral.")
    legs: Literal[1, 2] = Field(default=1, description="2 of split phase, else 1.")
    frequency: Annotated[Frequency, within("40 Hz", "70 Hz")] | None = Field(
        default=None, description="Left out: 60 Hz up to 130 V, else 50 Hz."
    )
    current: Annotated[Current, within("2 A", "400 A")] = Field(description="Rating, of each leg.")
    continuous_share: Annotated[Share, within("10 %", "100 %")] = Field(
        description="Share of the rating that may be taken for hours."
    )
    lowest_share: Annotated[Share, within("50 %", "100 %")] = Field(
        default="87 %",
        validate_default=True,
        description="Of the nominal voltage, below which chargers should give way; 105 or 200 V, from memory.",
    )


ShoreServiceSlot = Annotated[ShoreService, Slot("shore_service")]
"""A shore service by name, by name with changes, or in full."""
