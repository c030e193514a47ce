"""Proportions of hulls, from which faces are estimated."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Angle, Share, within


@kind("hull_form")
class HullForm(Part):
    """The proportions of a kind of boat."""

    hulls: int = Field(ge=1, le=3, description="Number of hulls.")
    waterline_share: Annotated[Share, within("50 %", "100 %")] = Field(
        description="Length on the waterline over length."
    )
    draught_share: Annotated[Share, within("1 %", "30 %")] = Field(description="Draught of the hull body over length.")
    freeboard_share: Annotated[Share, within("2 %", "30 %")] = Field(
        description="Mean height of the topsides over length."
    )
    block_coefficient: Annotated[Share, within("15 %", "90 %")] = Field(
        description="Block coefficient of the hull body."
    )
    hull_beam_share: Annotated[Share, within("5 %", "100 %")] = Field(
        description="Beam of one hull over beam of the boat."
    )
    floor_beam_share: Annotated[Share, within("20 %", "100 %")] = Field(
        description="Usual width of a cabin floor below over beam of the hull."
    )
    superstructure_beam_share: Annotated[Share, within("20 %", "100 %")] = Field(
        description="Width of the deckhouse over beam of the boat."
    )
    flare: Annotated[Angle, within("0 deg", "45 deg")] = Field(description="Flare of the topsides from upright.")
    lean: Annotated[Angle, within("0 deg", "60 deg")] = Field(description="Lean of the deckhouse's sides from upright.")
    waterplane_coefficient: Annotated[Share, within("60 %", "100 %")] = Field(
        description="Area of a hull's waterplane over length by beam on the waterline."
    )
    waterline_beam_share: Annotated[Share, within("50 %", "100 %")] = Field(
        description="Beam of one hull on the waterline over its beam."
    )
    flotation_share: Annotated[Share, within("30 %", "60 %")] = Field(
        description="Centre of flotation forward of the aft end of the waterline over its length."
    )
    metacentric_share: Annotated[Share, within("5 %", "60 %")] | None = Field(
        default=None,
        description="Metacentric height over beam; left out, it is computed from the hulls' waterplanes.",
    )
    gravity_share: Annotated[Share, within("-10 %", "20 %")] = Field(
        description="Height of the centre of gravity over the waterline, over length."
    )
    speed_coefficient: float = Field(
        ge=0.5,
        le=6.0,
        description="Speed at rated engine speed, m/s, over the root of the waterline length in m.",
    )


HullFormSlot = Annotated[HullForm, Slot("hull_form")]
"""A hull form by name, by name with changes, or in full."""
