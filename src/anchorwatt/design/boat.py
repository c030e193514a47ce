"""The boat as a whole: size, form and what it is built of."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.construction import ConstructionSlot
from anchorwatt.catalogue.hull_form import HullFormSlot
from anchorwatt.design.section import Section
from anchorwatt.design.skin import Skin
from anchorwatt.units.fields import Length, Mass, within


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
    hull: Skin = Field(description="What the boat is built of, as far as nothing else is said below.")
    topsides: Skin | None = Field(default=None, description="Sides of the hull above the water.")
    bottom: Skin | None = Field(default=None, description="Hull under water and the sole over it.")
    deck: Skin | None = Field(default=None, description="Deck over cabins below.")
    superstructure: Skin | None = Field(default=None, description="Sides of the deckhouse.")
    roof: Skin | None = Field(default=None, description="Roof of the deckhouse.")
    bulkheads: ConstructionSlot | None = Field(default=None, description="Between cabins on one deck.")
    soles: ConstructionSlot | None = Field(default=None, description="Between cabins on two decks.")
