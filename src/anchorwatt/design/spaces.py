"""Lockers and other spaces where parts go."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from anchorwatt.design.places import Spot
from anchorwatt.design.section import Name, Section
from anchorwatt.units.fields import Length, ThermalConductance, VolumeFlow, within

Inside = Annotated[Length, within("5 cm", "20 m")]
Clear = Annotated[Length, within("2 cm", "10 m")]
Side = Literal["front", "end", "top"]


class OpeningEntry(Section):
    """A door or hatch, clear of its frame."""

    width: Clear = Field(description="Clear width; of a hatch, either way.")
    height: Clear = Field(description="Clear height; of a hatch, the other way.")


class SpaceEntry(Section):
    """A locker, a shelf or a part of a compartment."""

    cabin: Name | None = Field(default=None, description="The compartment that it is a part of.")
    at: Spot | None = Field(default=None, description="Where its centre is in the boat.")
    length: Inside = Field(description="Inside, fore and aft.")
    width: Inside = Field(description="Inside, across the boat.")
    height: Inside = Field(description="Inside.")
    opening: OpeningEntry | None = Field(
        default=None, description="Its door or hatch; the whole of that side if left out."
    )
    opens: Side = Field(
        default="front",
        description="Where the opening is: front looks across the boat, end looks along it, top looks down.",
    )
    ventilation: Annotated[VolumeFlow, within("0 L/s", "5 m3/s")] | None = Field(
        default=None, description="Air of its compartment that passes through it; none if left out."
    )
    walls: Annotated[ThermalConductance, within("0 W/K", "10 kW/K")] | None = Field(
        default=None, description="What its walls pass to its compartment, a kelvin."
    )
