"""Round air ducts."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Conductivity, Length, within


@kind("duct")
class Duct(Part):
    """A kind of round duct, and how it is laid."""

    roughness: Annotated[Length, within("0 mm", "5 mm")] = Field(description="Roughness of the inside.")
    stretch_factor: float = Field(
        ge=1.0, le=20.0, description="On the friction, for how a flexible duct lies; 1 is stretched or rigid."
    )
    bend_loss: float = Field(ge=0.0, le=10.0, description="Loss coefficient of a right-angled bend.")
    insulation: Annotated[Length, within("0 mm", "100 mm")] = Field(description="Thickness of its insulation.")
    insulation_conductivity: Annotated[Conductivity, within("0.01 W/(m K)", "1 W/(m K)")] = Field(
        description="Thermal conductivity of its insulation."
    )


DuctSlot = Annotated[Duct, Slot("duct")]
"""A duct by name, by name with changes, or in full."""
