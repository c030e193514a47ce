"""Shore services."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Current, Share, Voltage, within


@kind("shore_service")
class ShoreService(Part):
    """What a shore connection gives."""

    voltage: Annotated[Voltage, within("90 V", "500 V")] = Field(description="Nominal voltage.")
    current: Annotated[Current, within("2 A", "400 A")] = Field(description="Rating.")
    continuous_share: Annotated[Share, within("10 %", "100 %")] = Field(
        description="Share of the rating that may be taken for hours."
    )


ShoreServiceSlot = Annotated[ShoreService, Slot("shore_service")]
"""A shore service by name, by name with changes, or in full."""
