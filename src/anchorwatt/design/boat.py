"""The boat as a whole: size, form and what it is built of."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.construction import ConstructionSlot
from anchorwatt.catalogue.hull_form import HullFormSlot
from anchorwatt.design.places import Removed
from anchorwatt.design.section import Section
from anchorwatt.design.skin import Skin
from anchorwatt.units.fields import Area, Length, Mass, within


class Boat(Section):
    """Size, form and build of the boat."""

    length: Annotated[Length, within("4 m", "60 m")] = Field(description="Length of the hull.")
    beam: Annotated[Length, within("1 m", "20 m")] = Field(description="Beam over all hulls.")
    form: HullFormSlot | None = Field(default=None, description="Kind of hull, for estimates.")
    waterline: Annotated[Length, within("3 m", "60 m")] | None = Field(
        default=None, description="Length on the waterline."
    )
    draught: Annotated[Length, within("0.1 m", "6 m")] | None = Field(
        default=None, description="Draught of the hull body, without keel and rudder."
    )
    freeboard: Annotated[Length, within("0.2 m", "8 m")] | None = Field(
        default=None, description="Mean height of the topsides, waterline to deck."
    )
    displacement: Annotated[Mass, within("500 kg", "1000 t")] | None = Field(
        default=None, description="Mass of the boat, ready to sail."
    )
    metacentric_height: Annotated[Length, within("0.1 m", "60 m")] | None = Field(
        default=None, description="Transverse metacentric height, as from an inclining test."
    )
    longitudinal_metacentric_height: Annotated[Length, within("1 m", "300 m")] | None = Field(
        default=None, description="Longitudinal metacentric height."
    )
    waterplane: Annotated[Area, within("1 m2", "1000 m2")] | None = Field(
        default=None, description="Area of the waterplane, all hulls."
    )
    flotation: Annotated[Length, within("0.5 m", "50 m")] | None = Field(
        default=None, description="Centre of flotation, forward of the aft end of the waterline."
    )
    gravity_height: Annotated[Length, within("-5 m", "10 m")] | None = Field(
        default=None, description="Centre of gravity of the boat without the design's parts, over the waterline."
    )
    removed: tuple[Removed, ...] = Field(
        default=(), max_length=2, description="What is taken out of the boat that its displacement still counts."
    )
    hull: Skin = Field(description="What the boat is built of, as far as nothing else is said below.")
    topsides: Skin | None = Field(default=None, description="Sides of the hull above the water.")
    bottom: Skin | None = Field(default=None, description="Hull under water and the sole over it.")
    deck: Skin | None = Field(default=None, description="Deck over cabins below.")
    superstructure: Skin | None = Field(default=None, description="Sides of the deckhouse.")
    roof: Skin | None = Field(default=None, description="Roof of the deckhouse.")
    bulkheads: ConstructionSlot | None = Field(default=None, description="Between cabins on one deck.")
    soles: ConstructionSlot | None = Field(default=None, description="Between cabins on two decks.")
