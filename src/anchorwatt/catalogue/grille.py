"""Grilles of supply and return air."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Share, within


@kind("grille")
class Grille(Part):
    """A kind of grille."""

    free_share: Annotated[Share, within("5 %", "100 %")] = Field(description="Share of its face that is open.")
    loss: float = Field(
        ge=0.0, le=20.0, description="Loss coefficient on the velocity through the open part, the jet's own included."
    )


GrilleSlot = Annotated[Grille, Slot("grille")]
"""A grille by name, by name with changes, or in full."""
