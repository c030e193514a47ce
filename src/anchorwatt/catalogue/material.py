"""What layers are made of."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Conductivity, Density, SpecificHeat, within


@kind("material")
class Material(Part):
    """A homogeneous material."""

    conductivity: Annotated[Conductivity, within("0.001 W/(m K)", "500 W/(m K)")] = Field(
        description="Thermal conductivity."
    )
    density: Annotated[Density, within("0.5 kg/m3", "20000 kg/m3")] = Field(description="Density.")
    specific_heat: Annotated[SpecificHeat, within("100 J/(kg K)", "5000 J/(kg K)")] = Field(
        description="Specific heat capacity."
    )


MaterialSlot = Annotated[Material, Slot("material")]
"""A material by name, by name with changes, or in full."""
