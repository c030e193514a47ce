"""Build-ups of hull, deck, superstructure and joinery."""

from __future__ import annotations

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field

from anchorwatt.catalogue.material import MaterialSlot
from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Length, within


class Layer(BaseModel):
    """One layer of a construction."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    material: MaterialSlot = Field(description="What it is made of.")
    thickness: Annotated[Length, within("0.05 mm", "1 m")] = Field(description="How thick it is.")


@kind("construction")
class Construction(Part):
    """Layers from outside to inside."""

    layers: tuple[Layer, ...] = Field(min_length=1, max_length=12, description="Outside first.")


ConstructionSlot = Annotated[Construction, Slot("construction")]
"""A construction by name, by name with changes, or in full."""
