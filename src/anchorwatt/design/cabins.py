"""Cabins, their faces and windows, and what lies between them."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from anchorwatt.catalogue.construction import ConstructionSlot
from anchorwatt.catalogue.cover import CoverSlot
from anchorwatt.catalogue.glazing import GlazingSlot
from anchorwatt.design.bearing import Face
from anchorwatt.design.places import Spot
from anchorwatt.design.section import Name, Section
from anchorwatt.design.skin import Skin
from anchorwatt.units.fields import (
    AirChanges,
    Angle,
    Area,
    HeatCapacity,
    Length,
    Share,
    Volume,
    VolumeFlow,
    above,
    within,
)

Use = Literal["sleeping", "saloon", "galley", "pilothouse", "head", "passage", "stowage", "machinery"]
Side = Literal["port", "starboard", "ahead", "astern"]
Door = Literal["none", "closed", "louvred", "open"]
SurfaceArea = Annotated[Area, above("0 m2", "1000 m2")]


class SurfaceEntry(Section):
    """A face of a cabin, where the estimate is not good enough."""

    area: SurfaceArea | None = Field(default=None, description="Area, windows included.")
    skin: Skin | None = Field(default=None, description="What it is built of, and its colour.")
    faces: Face | None = Field(default=None, description="Where it looks.")
    tilt: Annotated[Angle, within("0 deg", "180 deg")] | None = Field(
        default=None, description="From facing straight up: 0 a deck, 90 deg a side, 180 deg a bottom."
    )
    outside: Literal["air", "sea", "nothing"] | None = Field(
        default=None, description="What is on the other side; nothing lets no heat through."
    )
    cover: CoverSlot | None = Field(
        default=None, description="What stands over it, such as an awning; its windows are under it too."
    )


class WindowEntry(Section):
    """Windows, port lights or hatches of a kind in one surface."""

    surface: Name = Field(description="The surface that they sit in, such as port side or deck.")
    glazing: GlazingSlot = Field(description="Glazing.")
    area: SurfaceArea = Field(description="Area of one.")
    count: int = Field(default=1, ge=1, le=200, description="How many of them.")
    cover: CoverSlot | None = Field(default=None, description="What shades them.")
    blind: CoverSlot | None = Field(default=None, description="What shades them inside, besides the cover.")
    tilt: Annotated[Angle, within("0 deg", "180 deg")] | None = Field(
        default=None, description="From facing straight up, if it is not the surface's."
    )


class CabinEntry(Section):
    """A cabin or compartment."""

    use: Use = Field(description="What it is for.")
    deck: Literal["below", "main"] = Field(description="Below: in the hull. Main: a deckhouse.")
    floor_area: Annotated[Area, within("0.3 m2", "400 m2")] = Field(description="Floor, with furniture.")
    sides: tuple[Side, ...] = Field(
        default=("port", "starboard"), max_length=4, description="Where the cabin touches the outside of the boat."
    )
    height: Annotated[Length, within("0.4 m", "5 m")] | None = Field(default=None, description="Mean headroom.")
    length: Annotated[Length, within("0.3 m", "40 m")] | None = Field(default=None, description="Fore and aft.")
    at: Spot | None = Field(default=None, description="Where the centre of the cabin is in the boat.")
    volume: Annotated[Volume, within("0.2 m3", "1500 m3")] | None = Field(default=None, description="Volume of air.")
    open_deck: Annotated[Share, within("0 %", "100 %")] | None = Field(
        default=None, description="Share of the deckhead with nothing but the sky over it."
    )
    over_sea: Annotated[Share, within("0 %", "100 %")] | None = Field(
        default=None, description="Share of the sole with the sea under it."
    )
    surfaces: dict[Name, SurfaceEntry] = Field(
        default_factory=dict, description="Faces that are known better than the estimate."
    )
    windows: dict[Name, WindowEntry] | None = Field(
        default=None, description="Windows and hatches; {} for none; left out, they are estimated."
    )
    leakage: Annotated[AirChanges, within("0 ach", "60 ach")] | None = Field(
        default=None, description="Air changes with the outside, hatches shut."
    )
    fresh_air: Annotated[VolumeFlow, within("0 L/s", "1 m3/s")] | None = Field(
        default=None, description="Outdoor air that a fan brings in; none if left out."
    )
    fresh_air_per_person: Annotated[VolumeFlow, within("0 L/s", "0.1 m3/s")] | None = Field(
        default=None, description="Outdoor air that a fan brings in for each person there."
    )
    fresh_air_recovery: Annotated[Share, within("0 %", "90 %")] | None = Field(
        default=None,
        description="Share of heat and moisture that an exchanger between outgoing and fresh air takes back.",
    )
    furnishing_heat_capacity: Annotated[HeatCapacity, within("1 kJ/K", "50 MJ/K")] | None = Field(
        default=None, description="Heat capacity of furniture, bedding and fittings."
    )
    furnishing_area: Annotated[Area, within("0.1 m2", "2000 m2")] | None = Field(
        default=None, description="Face that the furnishings show to the air."
    )
    moisture_factor: Annotated[float, Field(ge=1.0, le=50.0)] | None = Field(
        default=None, description="Moisture that air and furnishings hold, over that of the air alone."
    )


class Neighbour(Section):
    """A bulkhead, sole or deck between two cabins, and the door in it."""

    between: Annotated[tuple[Name, Name], Field(description="The two cabins.")]
    through: ConstructionSlot | None = Field(
        default=None, description="What is between them, from the first to the second."
    )
    area: SurfaceArea | None = Field(default=None, description="Area, door included.")
    door: Door | None = Field(default=None, description="The door in it.")
    air_exchange: Annotated[VolumeFlow, within("0 L/s", "5 m3/s")] | None = Field(
        default=None, description="Air through the door, each way."
    )
