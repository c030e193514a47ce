"""Temperature of the sea by month."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Temperature, within

COLDEST_SEA, WARMEST_SEA = -2.0, 40.0  # °C; the sea freezes at -1.9 °C, and plants are computed up to 40 °C


@kind("sea")
class Sea(Part):
    """Surface temperature of a sea through the year."""

    temperatures: tuple[Annotated[Temperature, within(f"{COLDEST_SEA:g} °C", f"{WARMEST_SEA:g} °C")], ...] = Field(
        min_length=12, max_length=12, description="January to December."
    )


SeaSlot = Annotated[Sea, Slot("sea")]
"""A sea by name, by name with changes, or in full."""
