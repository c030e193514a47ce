"""Temperature of the sea by month."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Temperature, within


@kind("sea")
class Sea(Part):
    """Surface temperature of a sea through the year."""

    temperatures: tuple[Annotated[Temperature, within("-2 °C", "40 °C")], ...] = Field(
        min_length=12, max_length=12, description="January to December."
    )


SeaSlot = Annotated[Sea, Slot("sea")]
"""A sea by name, by name with changes, or in full."""
