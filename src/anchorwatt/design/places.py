"""Where parts stand."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from anchorwatt.design.section import Name, Section
from anchorwatt.units.fields import Length, within

Along = Annotated[Length, within("-10 m", "70 m")]
Across = Annotated[Length, within("-12 m", "12 m")]
Height = Annotated[Length, within("-6 m", "60 m")]

Removed = Literal["generator", "replaced bank"]
GENERATOR: Removed = "generator"
REPLACED: Removed = "replaced bank"


class Spot(Section):
    """A place in the boat; what is left out is estimated."""

    forward: Along | None = Field(default=None, description="Forward of the aft end of the waterline.")
    starboard: Across | None = Field(default=None, description="Starboard of the centreline; negative to port.")
    up: Height | None = Field(default=None, description="Over the waterline; negative below it.")


class PlaceEntry(Spot):
    """Where the centre of a part stands, by its coordinates, by a space, or by a space with some of them."""

    space: Name | None = Field(default=None, description="The space that it stands in.")
